"""The keys of the Brief page."""

from __future__ import annotations

SHORTCUTS = (
    ("PgDown", "Go on in the preview, page by page where it shows whole pages"),
    ("PgUp", "Go back in the preview"),
    ("Home", "Go to the first page"),
    ("End", "Go to the end of the last page"),
    ("Ctrl+0", "Fit the width of a page"),
    ("Ctrl+9", "Fit the whole page"),
    ("Ctrl+8", "Show the pages in full size"),
    ("F6", "Go on to the next part of the page"),
)
"""Keys of the page and what they do, for the shortcuts sheet."""
