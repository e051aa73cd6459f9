"""The keys of the Changes page."""

from __future__ import annotations

from benchpack.ui.pages.changes.kinds_bar import HELP, KIND_KEYS

SHORTCUTS = (
    *((key, f"New change, {kind}: {HELP[kind]}") for kind, key in KIND_KEYS.items()),
    ("Space", "Switch the current change on or off"),
    ("Alt+Up", "Move the current change up"),
    ("Alt+Down", "Move the current change down"),
    ("Return", "Go to the fields of the current change"),
    ("Ctrl+Shift+D", "Add a copy of the current change"),
    ("Ctrl+Shift+Del", "Remove the current change"),
    ("F6", "Go on to the next part of the page"),
    ("Esc", "Choose nothing at the left"),
)
"""Keys of the page and what they do, for the shortcuts sheet."""
