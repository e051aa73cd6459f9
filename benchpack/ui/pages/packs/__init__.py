"""The page of the library: packs, one record, its parts and its sources."""

from __future__ import annotations
