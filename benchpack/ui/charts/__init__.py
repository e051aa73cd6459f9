"""Charts of the window, each a widget that shows a frozen spec."""

from __future__ import annotations
