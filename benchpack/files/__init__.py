"""Everything on disk: libraries, packages, tables."""

from __future__ import annotations
