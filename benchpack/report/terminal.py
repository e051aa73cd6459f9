"""Text for a terminal: nothing in it steers the terminal, a problem is one line."""

from __future__ import annotations

from benchpack.errors import Problem

_CONTROLS = (*range(9), *range(11, 32), *range(127, 160))
_TURNERS = (*range(0x202A, 0x202F), *range(0x2066, 0x206A))
_SHOWN = {c: f"\\x{c:02x}" for c in _CONTROLS} | {c: f"\\u{c:04x}" for c in _TURNERS}
_MOST_LETTERS = 80


def shown(text: str) -> str:
    r"""Give a text in which what would steer a terminal is written out.

    Parameters
    ----------
    text : str
        Any text, names from a file in it.

    Examples
    --------
    >>> print(shown("red \x1b[31m"))
    red \x1b[31m
    """
    return text.translate(_SHOWN)


def complaint(problem: Problem) -> str:
    """Give a problem as one line, with the value as it was read.

    Parameters
    ----------
    problem : Problem
        What is wrong.
    """
    text = " ".join(str(problem).split())
    value = " ".join(problem.value.split())
    if len(value) > _MOST_LETTERS:
        value = f"{value[: _MOST_LETTERS - 1]}…"
    return f"{problem.severity}: {text}" + (f" (value: {value})" if value else "")
