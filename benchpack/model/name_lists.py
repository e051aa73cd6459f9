"""Lists of names or counts, and names with reasons, as the text of one cell."""

from __future__ import annotations

import json
from typing import Any

from benchpack.errors import DataError, Problem

Reasons = tuple[tuple[str, str], ...]
"""Names with the reason of each, in order."""


def names_text(names: tuple[str, ...]) -> str:
    """Give names as one text, a JSON array, empty where there are none."""
    return json.dumps(list(names), ensure_ascii=False) if names else ""


def parse_names(text: str, *, by_hand: bool = False) -> tuple[str, ...]:
    """Read names from their text.

    Parameters
    ----------
    text : str
        A JSON array of names; empty for none.
    by_hand : bool
        True to take ``lid panel; service cover`` as well.

    Raises
    ------
    DataError
        When the text is no list of names.
    """
    if not text.strip():
        return ()
    if by_hand and not text.lstrip().startswith(("[", "{")):
        return tuple(filter(None, map(str.strip, text.split(";"))))
    found = _json(text)
    if type(found) is not list or not all(isinstance(n, str) for n in found):
        raise DataError(
            Problem(
                "This is no list of names.",
                'Write it as ["lid panel", "service cover"] or leave the cell empty.',
                value=text,
            )
        )
    return tuple(found)


def reasons_text(reasons: Reasons) -> str:
    """Give names with reasons as one text, a JSON object; empty for none."""
    return json.dumps(dict(reasons), ensure_ascii=False) if reasons else ""


def parse_reasons(text: str) -> Reasons:
    """Read names with reasons from their text.

    Parameters
    ----------
    text : str
        A JSON object of reasons by name; empty for none.

    Raises
    ------
    DataError
        When the text is none, or names something twice.
    """
    if not text.strip():
        return ()
    found = _json(text)
    if not isinstance(found, _Pairs) or not all(isinstance(r, str) for _, r in found):
        raise DataError(
            Problem(
                "These are no names with reasons.",
                'Write them as {"fire barrier": "there already"} '
                "or leave the cell empty.",
                value=text,
            )
        )
    names = [name for name, _ in found]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        what = f"{twice!r} is named twice."
        raise DataError(Problem(what, "Keep one reason.", value=text))
    return tuple(found)


def counts_text(counts: tuple[int, ...]) -> str:
    """Give counts as one text, a JSON array, empty where there are none."""
    return json.dumps(list(counts)) if counts else ""


def parse_counts(text: str, *, by_hand: bool = False) -> tuple[int, ...]:
    """Read counts from their text.

    Parameters
    ----------
    text : str
        A JSON array of whole numbers; empty for none.
    by_hand : bool
        True to take ``20000; 40000`` as well.

    Raises
    ------
    DataError
        When the text is no list of whole numbers.

    Examples
    --------
    >>> parse_counts("20 000; 40000", by_hand=True)
    (20000, 40000)
    """
    if not text.strip():
        return ()
    if by_hand and not text.lstrip().startswith("["):
        plain = "".join(text.split())
        found: Any = [_count(item) for item in plain.split(";") if item]
    else:
        found = _json(text)
    if type(found) is not list or not all(type(n) is int and n >= 0 for n in found):
        raise DataError(
            Problem(
                "This is no list of whole numbers.",
                "Write it as [20000, 40000] or leave the cell empty.",
                value=text,
            )
        )
    return tuple(found)


def _count(text: str) -> int | None:
    return int(text) if text.isascii() and text.isdigit() and len(text) < 12 else None


class _Pairs(list[tuple[str, Any]]):
    """A JSON object with its names in order, also where one stands twice."""


def _json(text: str) -> Any:
    try:
        return json.loads(text, object_pairs_hook=_Pairs)
    except (ValueError, RecursionError):
        return None
