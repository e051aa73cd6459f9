"""Words and tables for a reader. No Qt."""

from __future__ import annotations
