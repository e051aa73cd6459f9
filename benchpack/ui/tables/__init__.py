"""Table models and views."""

from __future__ import annotations
