"""Currency codes and signs. There are no exchange rates anywhere in the program."""

from __future__ import annotations

import re

CODES: tuple[str, ...] = (
    *("EUR", "USD", "GBP", "CHF", "JPY", "CNY", "KRW", "INR", "TWD", "HKD", "SGD"),
    *("SEK", "NOK", "DKK", "PLN", "CZK", "HUF", "RON", "BGN", "TRY", "UAH", "RSD"),
    *("CAD", "AUD", "NZD", "MXN", "BRL", "ARS", "CLP", "COP", "ZAR", "MAD", "EGP"),
    *("AED", "SAR", "ILS", "THB", "IDR", "MYR", "PHP", "VND"),
)
"""ISO 4217 codes that are understood without being stated first."""

SIGNS: dict[str, tuple[str, ...]] = {
    "€": ("EUR",),
    "$": ("USD", "CAD", "AUD", "NZD", "MXN", "SGD", "HKD", "TWD", "ARS", "CLP", "COP"),
    "£": ("GBP", "EGP"),
    "¥": ("JPY", "CNY"),
    "₩": ("KRW",),
    "₹": ("INR",),
}
"""Signs with the codes each may stand for."""

PLACEHOLDER = "CUR"
"""Stands for the study's currency, whichever it is."""

_SPELLINGS = {"eur": "EUR", "Eur": "EUR", "euro": "EUR", "Euro": "EUR", "US$": "USD"}
_HEAD = re.compile(r"\s*(US\$|[€$£¥₩₹＄￥]|[A-Za-z]+)(?=\s*(?:$|/|per\b))")
_WIDE = {"＄": "$", "￥": "¥"}


def split_currency(text: str, *, also: str = "") -> tuple[str, str]:
    """Take the currency out of a unit label.

    Parameters
    ----------
    text : str
        A label such as ``EUR/kg``, ``€`` or ``lb``.
    also : str
        A further code that counts as known.

    Returns
    -------
    tuple of str
        The code or sign, empty where there is none, and the label with ``CUR`` in its
        place.

    Examples
    --------
    >>> split_currency("EUR/kg"), split_currency("lb")
    (('EUR', 'CUR/kg'), ('', 'lb'))
    """
    match = _HEAD.match(text)
    if match is None:
        return "", text
    token = _WIDE.get(match[1], match[1])
    token = _SPELLINGS.get(token, token)
    if token not in (*CODES, *SIGNS, PLACEHOLDER) and (not also or token != also):
        return "", text
    return token, PLACEHOLDER + text[match.end() :].rstrip()


def same_currency(one: str, other: str) -> bool:
    """Tell whether two codes or signs can mean one currency.

    Parameters
    ----------
    one, other : str
        Codes, signs, or ``CUR`` for whichever currency is meant.

    Examples
    --------
    >>> same_currency("$", "CAD"), same_currency("EUR", "USD")
    (True, False)
    """
    if PLACEHOLDER in (one, other) or one == other:
        return True
    return other in SIGNS.get(one, ()) or one in SIGNS.get(other, ())
