"""Unit labels made comparable: exponents, signs, dots and spaces in one spelling."""

from __future__ import annotations

import re

_CHARACTERS = str.maketrans(
    {
        "²": "2",
        "³": "3",
        "¹": "1",
        "⁰": "0",
        "⁶": "6",
        "⁻": "-",
        "\u2212": "-",
        "\u00b5": "u",
        "\u03bc": "u",
        "℃": "°C",
        "℉": "°F",
        "º": "°",
        "˚": "°",
        "″": '"',
        "“": '"',
        "”": '"',
        "＄": "$",
        "￥": "¥",
    }
)
_DROPPED = re.compile(r"[\s·⋅×*^()]+")
_PER = re.compile(r"\s+per\s+", re.IGNORECASE)


def plain_characters(text: str) -> str:
    """Write exponents, micro, degree and minus signs as plain characters.

    Parameters
    ----------
    text : str
        Any text.

    Examples
    --------
    >>> plain_characters("10⁻⁶/K")
    '10-6/K'
    """
    return text.translate(_CHARACTERS)


def label_key(text: str) -> str:
    """Give the key under which all spellings of a unit label meet.

    Parameters
    ----------
    text : str
        A unit label.

    Examples
    --------
    >>> label_key("W/(m·K)"), label_key("kg / m³"), label_key("Wh per kg")
    ('W/mK', 'kg/m3', 'Wh/kg')
    """
    return _DROPPED.sub("", _PER.sub("/", plain_characters(text).strip()))


def folded_key(key: str) -> str:
    """Give a key without case, apart from a leading m or M.

    The first letter keeps its case there because it tells milli from mega.

    Parameters
    ----------
    key : str
        What `label_key` gave.

    Examples
    --------
    >>> folded_key("KWH") == folded_key("kWh"), folded_key("mWh") == folded_key("MWh")
    (True, False)
    """
    return key[:1] + key[1:].casefold() if key[:1] in ("m", "M") else key.casefold()
