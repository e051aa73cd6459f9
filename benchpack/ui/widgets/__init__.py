"""Small widgets that pages share."""

from __future__ import annotations
