"""Handing over: what is written of a study, from its figures to the files."""

from __future__ import annotations
