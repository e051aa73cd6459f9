"""Three-point figures: low, likely, high."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from benchpack.errors import DataError, Problem
from benchpack.units.parsing import parse_number

_PLUS_MINUS = re.compile(r"\+\s*/?\s*[-\u2212]|\u00b1")
_WRITE = 'Write it as "8:10:14", as "10 +- 2" or as "10".'


@dataclass(frozen=True, slots=True)
class Range:
    """A figure with its range.

    Parameters
    ----------
    low, likely, high : float
        Finite and never falling in this order, in one unit.

    Raises
    ------
    DataError
        For figures that are not known or out of order.

    Examples
    --------
    >>> Range(1.0, 2.0, 4.0) + Range.exactly(1.0)
    Range(low=2.0, likely=3.0, high=5.0)
    """

    low: float
    likely: float
    high: float

    def __post_init__(self) -> None:
        if not all(map(math.isfinite, self.ends)):
            raise DataError(
                Problem(f"The range {self} is not known throughout.", _WRITE)
            )
        if not self.low <= self.likely <= self.high:
            raise DataError(
                Problem(
                    f"The range runs {self.low:g}, {self.likely:g}, {self.high:g}.",
                    "Give low, likely, high, each at least the one before.",
                )
            )

    @classmethod
    def exactly(cls, value: float) -> Range:
        """Give the range that has no width."""
        return cls(value, value, value)

    @property
    def ends(self) -> tuple[float, float, float]:
        """Low, likely, high."""
        return self.low, self.likely, self.high

    @property
    def width(self) -> float:
        """High less low."""
        return self.high - self.low

    def scaled(self, factor: float) -> Range:
        """Give the range times a factor; a negative one turns it round.

        Parameters
        ----------
        factor : float
            Any number.
        """
        ends = (self.low * factor, self.likely * factor, self.high * factor)
        return Range(*(ends if factor >= 0 else reversed(ends)))

    def text(self) -> str:
        """Give it as `parse_range` reads it, at full precision."""
        figures = [repr(float(end)) for end in self.ends]
        return figures[0] if self.width == 0 else ":".join(figures)

    def __add__(self, other: Range) -> Range:
        return Range(
            self.low + other.low, self.likely + other.likely, self.high + other.high
        )

    def __neg__(self) -> Range:
        return Range(-self.high, -self.likely, -self.low)

    def __sub__(self, other: Range) -> Range:
        return self + -other

    def __str__(self) -> str:
        return f"{self.low:g} to {self.high:g}, likely {self.likely:g}"


def parse_range(text: str, *, decimal: str | None = None) -> Range:
    """Read a range as people write it.

    Parameters
    ----------
    text : str
        ``8:10:14``, ``10 +- 2``, ``10 +- 20 %`` or ``10``.
    decimal : str, optional
        Decimal mark of the text, ``.`` or ``,``; found from the text by default.

    Returns
    -------
    Range
        In the unit of the text.

    Raises
    ------
    DataError
        When it is no range, or runs the wrong way.

    Examples
    --------
    >>> parse_range("10 +- 20 %")
    Range(low=8.0, likely=10.0, high=12.0)
    >>> parse_range("8:10:14").text()
    '8.0:10.0:14.0'
    """
    try:
        return _read(text, decimal)
    except DataError as error:
        problem = error.problems[0]
        raise DataError(
            Problem(problem.what, problem.remedy or _WRITE, value=text)
        ) from error


def _read(text: str, decimal: str | None) -> Range:
    pieces = text.split(":")
    if len(pieces) == 3:
        return Range(*(parse_number(piece, decimal=decimal) for piece in pieces))
    if len(pieces) != 1:
        raise DataError(Problem(f"{text.strip()!r} is no range.", _WRITE))
    middle, *widths = _PLUS_MINUS.split(text)
    if len(widths) > 1:
        raise DataError(Problem(f"{text.strip()!r} is no range.", _WRITE))
    likely = parse_number(middle, decimal=decimal)
    if not widths:
        return Range.exactly(likely)
    width = widths[0].strip()
    share = abs(likely) / 100 if width.endswith("%") else 1.0
    half = share * parse_number(width.removesuffix("%"), decimal=decimal)
    return Range(likely - half, likely, likely + half)
