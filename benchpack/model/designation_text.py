"""The text of a designation in one spelling, its standard and its strength class."""

from __future__ import annotations

import re
import unicodedata

from benchpack.model.designation_words import SAME_STANDARD, STANDARD_FAMILIES

_LONGEST = 200
_DASHES = re.compile("[\u2010-\u2015\u2212]")
_TIMES = re.compile(r"(?<=[0-9m])\s*[xX\u00d7\u2715\u2716\u0445\u0425*]\s*(?=[0-9])")
_COMMA = re.compile(r"(?<![0-9.,])([0-9]{1,4}),([0-9]{1,3})(?![0-9.,])")
_MM_BEFORE_X = re.compile(r"\s?mm(?=x[0-9])")
_TOLERANCE = re.compile(r"(?<=[0-9])\s?-?\s?[4-8][efghEFGH](?:[4-8][efghEFGH])?(?!\w)")
_CYRILLIC_M = re.compile(r"(?<!\w)\u041c(?=\s?[0-9])")
_DIAMETER_SIGN = re.compile("[\u00d8\u00f8\u2300]")
_STANDARD = re.compile(
    r"(?<!\w)((?:(?:BS|NF|UNI|DIN|EN|ISO)[\s-]{0,3}){1,4})([0-9]{2,5})"
    r"(?:-([0-9]{1,2})(?![0-9x.]))?(?::[0-9]{4})?(?![0-9x.])",
    re.IGNORECASE,
)
_SCREW_CLASS = re.compile(
    r"(?<![\w.])(4\.6|4\.8|5\.6|5\.8|6\.8|8\.8|9\.8|10\.9|12\.9)(?![\w.]|\s?mm)"
)
_STAINLESS = re.compile(r"(?<![\w.])(A[24])[\s-]?(50|70|80)(?!\w)", re.IGNORECASE)
_NUT_CLASS = re.compile(r"(?:^|[\s\-/|,;]|class)\s*(5|6|8|10|12)\s*$", re.IGNORECASE)


def plain_text(text: str) -> str | None:
    """Give a designation with one sort of blank, dash, times sign and decimal mark.

    Parameters
    ----------
    text : str
        As written.

    Returns
    -------
    str or None
        None for what is too long to be a designation.

    Examples
    --------
    >>> plain_text("M6 × 20 – 8,8")
    'M6x20 - 8.8'
    """
    if len(text) > _LONGEST:
        return None
    plain = " ".join((text if text.isascii() else _in_ascii(text)).split())
    plain = _TIMES.sub("x", plain)
    if "mm" in plain:
        plain = _MM_BEFORE_X.sub("", plain)
    return _COMMA.sub(r"\1.\2", plain) if "," in plain else plain


def _in_ascii(text: str) -> str:
    """Give a text with the usual signs for look-alikes of them."""
    plain = _DASHES.sub("-", unicodedata.normalize("NFKC", text))
    return _CYRILLIC_M.sub("M", _DIAMETER_SIGN.sub(" ", plain))


def without_tolerance(text: str) -> str:
    """Give a text without the tolerance class of a thread, ``-6g``."""
    return _TOLERANCE.sub("", text)


def standard_in(text: str) -> tuple[str, str]:
    """Give the first standard that a plain text names, and the text without any.

    Examples
    --------
    >>> standard_in("DIN EN ISO 4762:2004 M6x20")
    ('ISO 4762', '  M6x20')
    """
    found = _STANDARD.search(text)
    if found is None:
        return "", text
    return _named(found)[0], _STANDARD.sub(_rest, text)


def _named(found: re.Match[str]) -> tuple[str, str]:
    """Give the name of a standard, and what was taken for its part but is none."""
    bodies, number, part = found[1].upper(), found[2], found[3]
    body = next((body for body in ("ISO", "EN", "DIN") if body in bodies), "")
    bare = f"{body or bodies.strip(' -')} {number}"
    if part is None:
        return SAME_STANDARD.get(bare, bare), ""
    # In ISO 4032-8 the figure is the class of the nut: that standard has no parts.
    if bare in STANDARD_FAMILIES and f"{bare}-{part}" not in STANDARD_FAMILIES:
        return bare, f" {part}"
    return f"{bare}-{part}", ""


def _rest(found: re.Match[str]) -> str:
    return f" {_named(found)[1]}"


def class_in(text: str, *, is_nut: bool) -> tuple[str, str]:
    """Give the strength class that a plain text names, and the text without it.

    Parameters
    ----------
    text : str
        A plain text without its standard and its size.
    is_nut : bool
        True for a nut, whose class is a whole number at the end.

    Examples
    --------
    >>> class_in(" - 8.8", is_nut=False)
    ('8.8', ' - ')
    """
    stainless = _STAINLESS.search(text)
    if stainless is not None:
        name = f"{stainless[1].upper()}-{stainless[2]}"
        return name, _STAINLESS.sub("", text, count=1)
    pattern = _NUT_CLASS if is_nut else _SCREW_CLASS
    found = pattern.search(text)
    if found is None:
        return "", text
    return found[1], text[: found.start(1)] + text[found.end(1) :]


def number_text(value: float) -> str:
    """Give a number as it stands in a size, ``8`` or ``1.25``."""
    return repr(value).removesuffix(".0")
