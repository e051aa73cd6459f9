"""What is put into a simulation: changes with their ranges, and common factors."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import ArrayLike

from benchpack.calc._arrays import FloatArray
from benchpack.calc.distributions import Distribution, range_mean, range_variance
from benchpack.errors import RequestError


@dataclass(frozen=True, slots=True, eq=False, init=False)
class Ranges:
    """Three-point estimates of one quantity for n things.

    Parameters
    ----------
    low, likely, high : array_like, shape (n,)
        Finite and never falling in this order, in any unit; a number is one thing.
    kinds : Distribution or sequence of n
        How the values of each are spread; one stands for all of them.

    Raises
    ------
    RequestError
        For estimates that are unknown, out of order or not of one length.

    Examples
    --------
    >>> saved_kg = Ranges([2.0, 5.0], [3.0, 5.0], [7.0, 5.0])
    >>> saved_kg.count, saved_kg.means
    (2, array([4., 5.]))
    """

    low: FloatArray
    likely: FloatArray
    high: FloatArray
    kinds: tuple[Distribution, ...]

    def __init__(
        self,
        low: ArrayLike,
        likely: ArrayLike,
        high: ArrayLike,
        *,
        kinds: Distribution | Sequence[Distribution] = Distribution.TRIANGULAR,
    ) -> None:
        low, likely, high = (_row(part) for part in (low, likely, high))
        _check_order(low, likely, high)
        named = (kinds,) * low.size if isinstance(kinds, Distribution) else tuple(kinds)
        _check_count(len(named), low.size, "kinds of distribution")
        object.__setattr__(self, "low", low)
        object.__setattr__(self, "likely", likely)
        object.__setattr__(self, "high", high)
        object.__setattr__(self, "kinds", named)

    @classmethod
    def exactly(cls, values: ArrayLike) -> Ranges:
        """Give ranges that have no width."""
        return cls(values, values, values)

    @property
    def count(self) -> int:
        """How many things there are."""
        return self.low.size

    @property
    def means(self) -> FloatArray:
        """Mean of each range."""
        return self._of_each(range_mean)

    @property
    def variances(self) -> FloatArray:
        """Variance of each range."""
        return self._of_each(range_variance)

    def _of_each(self, figure: Callable[..., FloatArray]) -> FloatArray:
        kinds = np.array(self.kinds)
        figures = np.empty(self.count)
        for kind in Distribution:
            own = kinds == kind
            figures[own] = figure(
                self.low[own], self.high[own], likely=self.likely[own], kind=kind
            )
        return figures


@dataclass(frozen=True, slots=True, eq=False)
class MoneyRanges:
    """One kind of money that n changes save or, below zero, cost per pack.

    Parameters
    ----------
    ranges : Ranges
        Money per pack for each change, without what its mass is worth.
    moves_with_price : bool
        Whether the common factor on prices applies: money for material.
    moves_with_exchange : bool
        Whether the common exchange rate applies: money in another currency.
    """

    ranges: Ranges
    moves_with_price: bool = False
    moves_with_exchange: bool = False


@dataclass(frozen=True, slots=True, eq=False, init=False)
class ChangeRanges:
    """Ranges of n changes: each is released with its chance, or saves nothing.

    Parameters
    ----------
    saved_kg : Ranges
        Mass that each change takes out of a pack, kg; negative where it adds.
    money : sequence of MoneyRanges
        What each change saves in money per pack, apart from its mass; any number of
        kinds, each with one range for every change.
    release_chance : array_like, shape (n,)
        Chance that the change survives validation, 0 to 1; a number goes for all.

    Raises
    ------
    RequestError
        For no changes, lengths that differ, and a chance outside 0 to 1.

    Examples
    --------
    >>> changes = ChangeRanges(
    ...     Ranges([1.0, 2.0], [2.0, 3.0], [4.0, 4.0]),
    ...     money=[MoneyRanges(Ranges.exactly([-3.0, 0.5]), moves_with_price=True)],
    ...     release_chance=[0.9, 0.5],
    ... )
    >>> changes.count
    2
    """

    saved_kg: Ranges
    money: tuple[MoneyRanges, ...]
    release_chance: FloatArray

    def __init__(
        self,
        saved_kg: Ranges,
        *,
        money: Sequence[MoneyRanges] = (),
        release_chance: ArrayLike = 1.0,
    ) -> None:
        if saved_kg.count == 0:
            raise RequestError("There is no change to reckon with.")
        for kind in money:
            _check_count(kind.ranges.count, saved_kg.count, "ranges of money")
        chances = _row(release_chance)
        if chances.size == 1:
            chances = _row(np.repeat(chances, saved_kg.count))
        _check_count(chances.size, saved_kg.count, "chances of release")
        if not np.all((chances >= 0.0) & (chances <= 1.0)):
            raise RequestError("A chance of release lies between 0 and 1.")
        object.__setattr__(self, "saved_kg", saved_kg)
        object.__setattr__(self, "money", tuple(money))
        object.__setattr__(self, "release_chance", chances)

    @property
    def count(self) -> int:
        """How many changes there are."""
        return self.saved_kg.count


def _exactly_one() -> Ranges:
    return Ranges.exactly(1.0)


@dataclass(frozen=True, slots=True, eq=False)
class CommonFactors:
    """What is the same for all changes of one trial, and so drawn once for it.

    Drawn for each change apart, its spread would average out among many changes and
    the total would come out far too narrow.

    Parameters
    ----------
    worth_per_kg : Ranges
        One range: money per kilogram saved.
    price : Ranges
        One range about 1: factor on all money that moves with prices.
    exchange : Ranges
        One range about 1: factor on all money in another currency.

    Raises
    ------
    RequestError
        For anything but one range each.

    Examples
    --------
    >>> factors = CommonFactors(Ranges(1.0, 3.0, 6.0), price=Ranges(0.8, 1.0, 1.3))
    >>> factors.exchange.means
    array([1.])
    """

    worth_per_kg: Ranges
    price: Ranges = field(default_factory=_exactly_one)
    exchange: Ranges = field(default_factory=_exactly_one)

    def __post_init__(self) -> None:
        for ranges in (self.worth_per_kg, self.price, self.exchange):
            if ranges.count != 1:
                raise RequestError("A common factor is one range for all changes.")


def _row(values: ArrayLike) -> FloatArray:
    """Give a copy of its own, one-dimensional, that nobody can write to."""
    row = np.atleast_1d(np.array(values, dtype=np.float64))
    if row.ndim != 1:
        raise RequestError("Ranges are one row of numbers.")
    row.flags.writeable = False
    return row


def _check_count(given: int, wanted: int, what: str) -> None:
    if given != wanted:
        said = f"There are {given} {what} for {wanted}."
        raise RequestError(said)


def _check_order(low: FloatArray, likely: FloatArray, high: FloatArray) -> None:
    for part in (likely, high):
        _check_count(part.size, low.size, "values")
    known = np.isfinite(low) & np.isfinite(likely) & np.isfinite(high)
    sound = known & (low <= likely) & (likely <= high)
    if not sound.all():
        at = int(np.argmin(sound))
        said = (
            f"Range {at + 1} is {low[at]:g}, {likely[at]:g}, {high[at]:g}: "
            "low, likely and high have to be known and may not fall."
        )
        raise RequestError(said)
