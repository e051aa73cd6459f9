"""One random quantity, drawn block by block through the inverse of its distribution."""

from __future__ import annotations

import math
from typing import Protocol

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats
from benchpack.calc._pert_table import cubics, invert_pert, pert_exponents
from benchpack.calc._streams import random_stream
from benchpack.calc.change_ranges import Ranges
from benchpack.calc.distributions import Distribution


class Column(Protocol):
    """What a simulation needs of a random quantity."""

    def fill(self, out: FloatArray, work: FloatArray) -> None:
        """Put the values of the next trials into `out`; `work` is room as large."""


class Exact:
    """A quantity without spread: no random number is drawn for it."""

    def __init__(self, value: float) -> None:
        self.value = value

    def fill(self, out: FloatArray, work: FloatArray) -> None:
        """Put the value everywhere."""
        del work
        out.fill(self.value)


class Rectangular:
    """Any value between the ends."""

    def __init__(self, low: float, high: float, stream: np.random.Generator) -> None:
        self._low, self._width, self._stream = low, high - low, stream

    def fill(self, out: FloatArray, work: FloatArray) -> None:
        """Put the values of the next trials into `out`."""
        del work
        self._stream.random(out=out)
        out *= self._width
        out += self._low


class Triangular:
    """Rising from low to likely, falling to high.

    Without a branch: up to the likely value the second root stands still, above it the
    first one does.
    """

    def __init__(
        self, low: float, likely: float, high: float, stream: np.random.Generator
    ) -> None:
        width = high - low
        self._turn = (likely - low) / width
        self._below, self._above = width * (likely - low), width * (high - likely)
        self._start = low + math.sqrt(self._above * (1.0 - self._turn))
        self._stream = stream

    def fill(self, out: FloatArray, work: FloatArray) -> None:
        """Put the values of the next trials into `out`."""
        self._stream.random(out=out)
        np.maximum(out, self._turn, out=work)
        np.minimum(out, self._turn, out=out)
        out *= self._below
        np.sqrt(out, out=out)
        np.subtract(1.0, work, out=work)
        work *= self._above
        np.sqrt(work, out=work)
        out -= work
        out += self._start


class Pert:
    """The beta distribution of a PERT estimate."""

    def __init__(
        self, low: float, likely: float, high: float, stream: np.random.Generator
    ) -> None:
        ends = (as_floats(value) for value in (low, likely, high))
        rise, fall = pert_exponents(*ends)
        self._table = cubics(float(rise), float(fall))
        self._low, self._width, self._stream = low, high - low, stream

    def fill(self, out: FloatArray, work: FloatArray) -> None:
        """Put the values of the next trials into `out`."""
        self._stream.random(out=out)
        invert_pert(self._table, out, work)
        out *= self._width
        out += self._low


def columns(ranges: Ranges, seed: int, *, quantity: int) -> list[Column]:
    """Give a column for each range; range i draws from the stream (quantity, i)."""
    made: list[Column] = []
    for index in range(ranges.count):
        low, likely, high = (
            float(part[index]) for part in (ranges.low, ranges.likely, ranges.high)
        )
        if low == high:
            made.append(Exact(low))
            continue
        stream = random_stream(seed, quantity, index)
        kind = ranges.kinds[index]
        if kind is Distribution.RECTANGULAR:
            made.append(Rectangular(low, high, stream))
        elif kind is Distribution.PERT:
            made.append(Pert(low, likely, high, stream))
        else:
            made.append(Triangular(low, likely, high, stream))
    return made
