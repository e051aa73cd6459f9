"""The commands of the program, one module each; every one works without a display."""

from __future__ import annotations
