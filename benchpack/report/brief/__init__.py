"""The brief: what is handed over, as sections of text, tables and chart specs."""

from __future__ import annotations
