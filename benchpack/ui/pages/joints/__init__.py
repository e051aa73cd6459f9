"""The Joints page."""

from __future__ import annotations
