"""The keys of the packs page."""

from __future__ import annotations

SHORTCUTS = (
    ("Ctrl+F", "Filter the packs"),
    ("Ctrl+Shift+N", "Add a pack"),
    ("Ctrl+Shift+Del", "Remove the selected packs"),
    ("Ctrl+Shift+S", "Use the pack as subject"),
    ("Ctrl+Shift+R", "Use the pack as reference"),
    ("Ctrl+Shift+W", "Start the weigh-in"),
    ("F6", "Go between table and record"),
    ("F2", "Edit the cell"),
    ("Ctrl+C", "Copy cells at full precision"),
    ("Ctrl+V", "Paste a block of cells"),
    ("Ctrl+Shift+V", "Paste a block as new packs"),
    ("Ctrl+D", "Fill down"),
    ("Del", "Clear cells"),
    ("Shift+Space", "Select the row"),
    ("Ctrl+Space", "Select the column"),
)
"""Keys of the page and what they do, for the shortcuts sheet."""
