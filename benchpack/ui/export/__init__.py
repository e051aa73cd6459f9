"""Pictures of charts for the clipboard, PNG and SVG."""

from __future__ import annotations
