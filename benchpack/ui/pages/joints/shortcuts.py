"""The keys of the Joints page."""

from __future__ import annotations

SHORTCUTS = (
    ("Ctrl+F", "Filter the joints"),
    ("Ctrl+Shift+W", "Count in: family, designation, count, Enter, next"),
    ("Ctrl+Shift+N", "Add a joint"),
    ("Ctrl+Return", "Edit all fields of the joint"),
    ("Ctrl+Shift+Del", "Remove the selected joints"),
    ("Ctrl+Shift+P", "Show the part that the joint holds"),
    ("Ctrl+Shift+J", "Export the joints"),
    ("F6", "Go between table and pareto"),
    ("F2", "Edit the cell"),
    ("Ctrl+C", "Copy cells at full precision"),
    ("Ctrl+V", "Paste a block of cells"),
    ("Ctrl+Shift+V", "Paste a block as new joints"),
    ("Ctrl+D", "Fill down"),
    ("Del", "Clear cells"),
    ("Esc", "Select nothing: the totals are those of all joints"),
)
"""Keys of the page and what they do, for the shortcuts sheet."""
