"""The Gap page."""

from __future__ import annotations
