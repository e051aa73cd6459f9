"""Keys as this system writes them."""

from __future__ import annotations

from PySide6.QtGui import QKeySequence


def key_text(key: str) -> str:
    """Give a key as this system writes it; what is no key stays as it is.

    Parameters
    ----------
    key : str
        A key such as ``Ctrl+Z``, or words such as ``click``.
    """
    text = QKeySequence(key).toString(QKeySequence.SequenceFormat.NativeText)
    return text or key
