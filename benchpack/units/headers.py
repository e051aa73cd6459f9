"""Column heads with a unit in them: ``mass [lb]``, ``Mass (kg)``, ``energy_kWh``."""

from __future__ import annotations

import re

from benchpack.units.currencies import PLACEHOLDER, split_currency
from benchpack.units.labels import quantities_of
from benchpack.units.spelling import label_key

_BRACKETS = re.compile(r"\[([^\[\]]*)\]|\(((?:[^()]|\([^()]*\))*)\)")
_LEFT_OVER = re.compile(r"[\s_,;:]*(?:\bin|/)?[\s_,;:]*$")
_SEPARATOR = re.compile(r"[\s_]+in[\s_]+|\s*/\s*|\s*,\s+|[\s_]+")
_WORD = re.compile(r"[^\W\d_]+")
_MONEY_WORDS = frozenset(("price", "cost", "costs", "worth", "value", "preis"))
_COMMON_WORDS = frozenset(("in", "min", "ft", "bar", "cc", "second", "pound", "foot"))
_UNFINISHED = ("/", " per", "_per", " in", "_in")
_FARTHEST = 6
_PLAIN = ("1", "pcs", "pieces")


def split_header(text: str) -> tuple[str, str | None]:
    """Split a column head into title and unit.

    A unit counts only where it is known. In brackets any known unit does; behind a
    space, underscore or comma it must be longer than one letter and no common word
    (``in``, ``min``) unless the title names its quantity; behind a slash the title must
    name the quantity or be its symbol, as ``cost / kg`` is a cost per kilogram.

    Parameters
    ----------
    text : str
        The head as read.

    Returns
    -------
    title : str
        The head without the unit, or the whole of it where there is none.
    unit : str or None
        The unit's label as in files (``lb`` for ``lbs``), with the currency or sign
        that was written.

    Examples
    --------
    >>> split_header("mass [lb]"), split_header("mass / kg")
    (('mass', 'lb'), ('mass', 'kg'))
    >>> split_header("year (SOP)")
    ('year (SOP)', None)
    """
    whole = " ".join(text.split())
    return _bracketed(whole) or _trailing(whole) or (whole, None)


def _file_label(label: str) -> str | None:
    """Give a known unit as files write it, None where it is unknown."""
    found = quantities_of(label)
    if not found or label_key(label) in _PLAIN:
        return None
    unit = found[0].find(label)
    if unit is None:
        return None
    if not found[0].is_money:
        return unit.label or "-"
    return unit.label.replace(PLACEHOLDER, split_currency(label)[0])


def _bracketed(whole: str) -> tuple[str, str | None] | None:
    """Take the last bracket that holds a known unit out of a head."""
    for match in reversed(list(_BRACKETS.finditer(whole))):
        label = _file_label(match[1] or match[2] or "")
        title = _LEFT_OVER.sub("", whole[: match.start()])
        if label is not None and title:
            return f"{title} {whole[match.end() :].strip()}".strip(), label
    return None


def _trailing(whole: str) -> tuple[str, str | None] | None:
    """Take a known unit off the end of a head without brackets."""
    if quantities_of(whole):
        return None
    for match in list(_SEPARATOR.finditer(whole))[-_FARTHEST:]:
        title, tail = whole[: match.start()].rstrip(), whole[match.end() :]
        tail = tail.replace("_", " ")
        label = _file_label(tail)
        if label is not None and title and _fits(title, match[0].strip(), tail):
            return title, label
    return None


def _fits(title: str, joint: str, tail: str) -> bool:
    """Tell whether a unit behind a title is meant as one."""
    words = {word.casefold() for word in _WORD.findall(title)}
    named = any(
        not words.isdisjoint(one.words) or title in one.symbols
        for one in quantities_of(tail)
    )
    if joint == "/":
        return named and words.isdisjoint(_MONEY_WORDS)
    if joint.strip("_ ") == "in":
        return True
    if title.casefold().endswith(_UNFINISHED):
        return False
    return named or (
        tail not in _COMMON_WORDS and not (len(tail) == 1 and tail.isalpha())
    )
