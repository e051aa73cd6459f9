"""The list of checks that several pages show."""

from __future__ import annotations
