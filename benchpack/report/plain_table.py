"""Tables as text for a terminal."""

from __future__ import annotations

from collections.abc import Sequence

_SPACES = {"\u2009": " ", "\u00a0": " "}


def aligned(rows: Sequence[Sequence[str]]) -> list[str]:
    """Give rows as lines with the cells under each other, the first to the left.

    Parameters
    ----------
    rows : sequence of sequence of str
        The cells, the heads first; each row has as many.
    """
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    return [
        "  ".join(
            cell.ljust(width) if place == 0 else cell.rjust(width)
            for place, (cell, width) in enumerate(zip(row, widths, strict=True))
        ).rstrip()
        for row in rows
    ]


def plain_spaces(text: str) -> str:
    """Give a text with plain spaces in place of thin ones and those that bind.

    Parameters
    ----------
    text : str
        A text as the screen shows it.
    """
    for fancy, plain in _SPACES.items():
        text = text.replace(fancy, plain)
    return text
