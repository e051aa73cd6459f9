"""The Brief page."""

from __future__ import annotations
