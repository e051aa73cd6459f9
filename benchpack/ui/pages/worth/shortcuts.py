"""The keys of the Worth page."""

from __future__ import annotations

SHORTCUTS = (
    ("F6", "Go on to the next part of the page"),
    ("Alt+Right", "Next tab"),
    ("Alt+Left", "Previous tab"),
    ("F1", "Where the figure that has the focus comes from"),
    ("Return", "Map: take over both assumptions; sets: use the set"),
    ("Ctrl+Shift+K", "Keep the present assumptions as a set"),
    ("F2", "Sets: give the set another name"),
    ("Del", "Sets: remove the set"),
)
"""Keys of the page and what they do, for the shortcuts sheet."""
