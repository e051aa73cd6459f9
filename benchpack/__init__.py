"""Benchpack: compare traction battery packs and value a lighter one."""

from __future__ import annotations

__version__ = "0.1.0"
