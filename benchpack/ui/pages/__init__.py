"""The pages, one package each."""

from __future__ import annotations
