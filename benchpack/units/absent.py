"""Signs and words that say in a cell that a figure is not known."""

from __future__ import annotations

_ABSENT = frozenset(
    (
        *("-", "--", "---", "\u2013", "\u2014", "?", "??", "???", "...", "\u2026", "."),
        *("n/a", "na", "n.a.", "n. a.", "n.a", "n/d", "n.d.", "none", "null"),
        *("tbd", "t.b.d.", "tba", "tbc", "unknown", "not known", "not available"),
        *("k.a.", "k. a.", "k.a", "k/a", "unbekannt", "inconnu", "inconnue"),
    )
)


def is_absent(text: str) -> bool:
    """Tell whether a text says that there is no figure: ``n/a``, a dash, ``tbd``.

    Parameters
    ----------
    text : str
        The text of a cell.

    Examples
    --------
    >>> is_absent("n/a"), is_absent(" \u2013 "), is_absent("0")
    (True, True, False)
    """
    word = text.strip()
    return not word or (len(word) < 16 and word.casefold() in _ABSENT)
