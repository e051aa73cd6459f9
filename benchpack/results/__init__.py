"""Results: what the pages and files show, from a library and a study."""

from __future__ import annotations
