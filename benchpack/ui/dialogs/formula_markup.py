"""Formulas as rich text: indices low, powers raised. No Qt."""

from __future__ import annotations

import html
import re

_SYMBOL = re.compile(r"([A-Za-z]+(?=_[a-z])|\b[A-Za-z](?=_[0-9]))_([a-z]+|[0-9]+)")
_POWER = re.compile(r"\^(\w+)")
_R_SQUARED = re.compile(r"\bR2\b")


def symbols_markup(text: str) -> str:
    """Give a formula as rich text: ``m_s`` with its index low, ``x^b`` raised."""
    escaped = html.escape(text).replace("_hat", "\u0302")
    low = _SYMBOL.sub(r"\1<sub>\2</sub>", escaped)
    raised = _POWER.sub(r"<sup>\1</sup>", low)
    return _R_SQUARED.sub("R<sup>2</sup>", raised)


def label_markup(label: str) -> str:
    """Give the label of an input; a symbol is one word, alone or before a comma."""
    symbol, comma, rest = label.partition(",")
    if " " in symbol:
        return html.escape(label)
    return f"{symbols_markup(symbol)}{comma}{html.escape(rest)}"
