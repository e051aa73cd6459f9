"""The Worth page."""

from __future__ import annotations
