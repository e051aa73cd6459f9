"""One line of the register of outside checks."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Mark = Literal["published", "computed", "memory", "common practice"]


@dataclass(frozen=True, slots=True)
class Check:
    """One test of one function against something this project did not make.

    Parameters
    ----------
    function : str
        Dotted name below ``benchpack.calc``.
    check : str
        ``file::test`` below ``tests/outside``.
    source : str
        What the function is held against.
    tolerance : str
        How close it has to come.
    mark : str
        Seen in print, computed independently, recalled, or practice of the trade.
    """

    function: str
    check: str
    source: str
    tolerance: str
    mark: Mark


def checks(
    check: str, functions: str, *, source: str, tolerance: str, mark: Mark
) -> tuple[Check, ...]:
    """Give one record for each of the functions that a test holds to a source."""
    return tuple(
        Check(function, check, source, tolerance, mark)
        for function in functions.split()
    )
