"""A proposal of changes, simulated: what it saves and what it is worth.

Trials are drawn in blocks, each quantity from a random stream of its own (PCG64), so
that the same seed gives the same trials whatever the size of a block, and adding a
change leaves the numbers of the others as they were.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from benchpack.calc._arrays import FloatArray
from benchpack.calc._columns import columns
from benchpack.calc._streams import Cancelled, check_size, random_stream, stop_if
from benchpack.calc.change_ranges import ChangeRanges, CommonFactors
from benchpack.calc.trials import DEFAULT_BLOCK, DEFAULT_TRIALS, Trials, summarise

# First part of the key of each random stream; the kinds of money come last.
_SAVED, _RELEASE, _WORTH, _PRICE, _EXCHANGE, _MONEY = range(6)


@dataclass(frozen=True, slots=True, eq=False)
class Simulation:
    """What a proposal saves and is worth, over many trials.

    Parameters
    ----------
    saved_kg : Trials
        Mass saved per pack, kg.
    value : Trials
        Money per pack: worth of the mass saved plus the money of the changes.
    """

    saved_kg: Trials
    value: Trials

    def chance_of_both(self, least_saved_kg: float, least_value: float) -> float:
        """Give the share of the trials that reach a mass and a value at once.

        Parameters
        ----------
        least_saved_kg : float
            Target for the mass saved per pack, kg.
        least_value : float
            Target for the value per pack.

        Returns
        -------
        float
            Share, 0 to 1.

        Examples
        --------
        >>> from benchpack.calc.change_ranges import Ranges
        >>> one = ChangeRanges(Ranges.exactly(2.0), release_chance=1.0)
        >>> worth = CommonFactors(Ranges.exactly(3.0))
        >>> simulate_changes(one, worth, trials=100).chance_of_both(2.0, 6.0)
        1.0
        """
        enough = self.saved_kg.values >= least_saved_kg
        enough &= self.value.values >= least_value
        return float(enough.mean())


def simulate_changes(
    changes: ChangeRanges,
    factors: CommonFactors,
    *,
    trials: int = DEFAULT_TRIALS,
    seed: int = 1,
    block: int = DEFAULT_BLOCK,
    cancelled: Cancelled | None = None,
) -> Simulation:
    """Give the distributions of what a proposal saves and is worth.

    Of every trial: ``saved = sum r_i k_i`` and ``value = w saved + sum_j f_j sum_i
    r_i m_ij``, with ``r_i`` 1 where change i is released and 0 where not, its mass
    ``k_i``, its money ``m_ij`` of kind j, the worth ``w``, and ``f_j`` the product of
    the common factors that move money of that kind (JCGM 101:2008, 5.9 and clause 7).
    Memory grows with the trials, not with the changes.

    Parameters
    ----------
    changes : ChangeRanges
        Mass in kg and money per pack of n changes, and their chances of release.
    factors : CommonFactors
        Worth per kg, prices and exchange rate, drawn once for each trial.
    trials : int
        2 to 10,000,000.
    seed : int
        Zero or more; the same seed gives the same trials.
    block : int
        Trials at a time; changes nothing but speed and memory.
    cancelled : callable, optional
        Asked often whether to stop.

    Returns
    -------
    Simulation
        Trials of the mass saved, kg, and of the value, money.

    Raises
    ------
    RequestError
        For a number of trials, a block or a seed that is out of bounds.
    CancelledError
        Once `cancelled` says so.

    Examples
    --------
    >>> from benchpack.calc.change_ranges import MoneyRanges, Ranges
    >>> changes = ChangeRanges(
    ...     Ranges([2.0, 1.0], [4.0, 1.0], [6.0, 1.0]),
    ...     money=[MoneyRanges(Ranges.exactly([-5.0, 2.0]))],
    ...     release_chance=[0.8, 1.0],
    ... )
    >>> result = simulate_changes(changes, CommonFactors(Ranges(1.0, 3.0, 5.0)))
    >>> print(round(result.saved_kg.mean, 1), round(result.value.mean))
    4.2 11
    """
    check_size(trials, block)
    drawing = _Drawing(changes, factors, seed, min(block, trials))
    saved_kg, value = np.empty(trials), np.empty(trials)
    for start in range(0, trials, block):
        stop = min(start + block, trials)
        drawing.draw(saved_kg[start:stop], value[start:stop], cancelled)
    return Simulation(summarise(saved_kg), summarise(value))


class _Drawing:
    """The streams of one simulation, and room for one block of trials."""

    def __init__(
        self, changes: ChangeRanges, factors: CommonFactors, seed: int, block: int
    ) -> None:
        self._saved = columns(changes.saved_kg, seed, quantity=_SAVED)
        self._money = [
            columns(kind.ranges, seed, quantity=_MONEY + place)
            for place, kind in enumerate(changes.money)
        ]
        self._moves = [
            (kind.moves_with_price, kind.moves_with_exchange) for kind in changes.money
        ]
        self._chances = changes.release_chance.tolist()
        self._releases = [
            random_stream(seed, _RELEASE, index) for index in range(changes.count)
        ]
        (self._worth,) = columns(factors.worth_per_kg, seed, quantity=_WORTH)
        (self._price,) = columns(factors.price, seed, quantity=_PRICE)
        (self._exchange,) = columns(factors.exchange, seed, quantity=_EXCHANGE)
        # Drawn values, room to work in, releases; then one sum for each kind of money.
        self._room = np.empty((3 + len(changes.money), block))

    def draw(
        self, saved_kg: FloatArray, value: FloatArray, cancelled: Cancelled | None
    ) -> None:
        """Put the next trials into both arrays."""
        drawn, work, released, *sums = self._room[:, : saved_kg.size]
        saved_kg.fill(0.0)
        for total in sums:
            total.fill(0.0)
        for index, chance in enumerate(self._chances):
            stop_if(cancelled)
            if chance == 0.0:
                continue
            own = [self._saved[index], *(kind[index] for kind in self._money)]
            if chance < 1.0:
                self._releases[index].random(out=released)
                np.less(released, chance, out=released)
            for column, total in zip(own, (saved_kg, *sums), strict=True):
                column.fill(drawn, work)
                if chance < 1.0:
                    drawn *= released
                np.add(total, drawn, out=total)
        self._add_up(saved_kg, value)

    def _add_up(self, saved_kg: FloatArray, value: FloatArray) -> None:
        """Put the common factors, once for each trial, to the sums over changes."""
        drawn, work, price, *sums = self._room[:, : saved_kg.size]
        self._worth.fill(value, work)
        value *= saved_kg
        self._price.fill(price, work)
        self._exchange.fill(drawn, work)
        for total, (with_price, with_exchange) in zip(sums, self._moves, strict=True):
            if with_price:
                np.multiply(total, price, out=total)
            if with_exchange:
                np.multiply(total, drawn, out=total)
            value += total
