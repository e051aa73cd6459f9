"""Fields, forms and entry lines that several pages use."""

from __future__ import annotations
