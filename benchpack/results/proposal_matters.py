"""What matters for a proposal: one input at a time, and shares of its variance."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.change_ranges import (
    ChangeRanges,
    CommonFactors,
    MoneyRanges,
    Ranges,
)
from benchpack.calc.change_sensitivity import FACTORS, value_indices
from benchpack.calc.distributions import Distribution, quantile_of_range
from benchpack.calc.sensitivity import SobolIndices, sobol_indices, swing_table
from benchpack.model.ranges import Range
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_trials import (
    USUAL_COMMON,
    CommonRanges,
    as_ranges,
    mass_after,
    mass_before,
    priced,
    unpriced,
    validation,
)

FloatArray = NDArray[np.float64]

WORTH, PRICE_LEVEL, MASS_BIAS = "worth per kilogram", "price level", "mass estimate"
"""Names of what is common to all changes."""
RELEASE = "release"
"""Which input of a change says whether it comes."""
_OF_CHANGE = ("present mass", "mass after", "part cost", "other cost", RELEASE)
_COMMON = (WORTH, PRICE_LEVEL, MASS_BIAS)


@dataclass(frozen=True, slots=True)
class Swing:
    """A proposal when one input goes to its ends.

    Parameters
    ----------
    name : str
        The change, or what is common to all.
    what : str
        Which of its inputs; empty for what is common.
    at_low, at_high : float
        Kilograms saved or money per pack with the input at its low and high end.
    """

    name: str
    what: str
    at_low: float
    at_high: float


@dataclass(frozen=True, slots=True)
class Share:
    """Share of the variance that a change or a common factor accounts for.

    Parameters
    ----------
    name : str
        The change, with all its inputs together, or the common factor.
    first, total : float
        First-order and total Sobol index, NaN where nothing varies.
    error : float
        Standard error of the total; 0 where it is exact.
    """

    name: str
    first: float
    total: float
    error: float


@dataclass(frozen=True, slots=True, eq=False)
class Matters:
    """What matters for one figure of a proposal.

    Parameters
    ----------
    base : float
        The figure with all inputs at their likely values, each change by its chance.
    swings : tuple of Swing
        Widest first; inputs without a width are left out.
    shares : tuple of Share
        Greatest total first.
    """

    base: float
    swings: tuple[Swing, ...]
    shares: tuple[Share, ...]


def mass_matters(
    results: ProposalResults, *, common: CommonRanges = USUAL_COMMON
) -> Matters | None:
    """Give what matters for the mass saved; exact, at once.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    common : CommonRanges
        What is common to all changes.

    Returns
    -------
    Matters or None
        Kilograms per pack; None where no change counts.
    """
    effects = results.effects
    if not effects:
        return None
    inputs = _Inputs(results, common)
    found = value_indices(
        ChangeRanges(
            mass_before(effects),
            money=[MoneyRanges(mass_after(effects), moves_with_exchange=True)],
            release_chance=[one.release_chance for one in effects],
        ),
        CommonFactors(Ranges.exactly(1.0), exchange=as_ranges([common.mass_bias])),
    )
    names = [*inputs.changes, *("" for _ in FACTORS)]
    names[len(inputs.changes) + FACTORS.index("exchange")] = MASS_BIAS
    return inputs.matters(inputs.saved, _shares(names, found))


def value_matters(
    results: ProposalResults,
    *,
    common: CommonRanges = USUAL_COMMON,
    points: int = 512,
    seed: int = 1,
    cancelled: Callable[[], bool] | None = None,
) -> Matters | None:
    """Give what matters for the net worth; sampled, for another thread.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    common : CommonRanges
        What is common to all changes.
    points : int
        Size of each sample, a power of two.
    seed : int
        Zero or more; the same seed gives the same shares.
    cancelled : callable, optional
        Asked often whether to stop.

    Returns
    -------
    Matters or None
        Money per pack; None where no change counts.

    Raises
    ------
    CancelledError
        Once `cancelled` says so.
    """
    if not results.effects:
        return None
    inputs = _Inputs(results, common)
    found = sobol_indices(
        inputs.value,
        inputs.quantiles(),
        groups=inputs.groups(),
        points=points,
        seed=seed,
        cancelled=cancelled,
    )
    return inputs.matters(inputs.value, _shares([*inputs.changes, *_COMMON], found))


def _shares(names: Sequence[str], found: SobolIndices) -> tuple[Share, ...]:
    columns = (found.first.tolist(), found.total.tolist(), found.total_error.tolist())
    shares = [
        Share(name, first, total, error)
        for name, first, total, error in zip(names, *columns, strict=True)
        if name
    ]
    return tuple(sorted(shares, key=lambda share: -share.total))


class _Inputs:
    """The inputs of a proposal as rows: five for each change, then what is common."""

    def __init__(self, results: ProposalResults, common: CommonRanges) -> None:
        effects = results.effects
        self.changes = [one.name for one in effects]
        self._count = len(effects)
        self._chances = np.array([one.release_chance for one in effects])
        self._validation = validation(effects).likely
        before = mass_before(effects)
        ends = (before.low.tolist(), before.likely.tolist(), before.high.tolist())
        self._ranges = [
            *(Range(*each) for each in zip(*ends, strict=True)),
            *(one.drawn_kg for one in effects),
            *(-priced(one) for one in effects),
            *(-unpriced(one) for one in effects),
        ]
        self._common = [
            Range(*results.study.worth_per_kg),
            common.price_level,
            common.mass_bias,
        ]

    def saved(self, inputs: FloatArray) -> FloatArray:
        """Give the mass saved, (n,), from inputs of shape (rows, n)."""
        before, after, _, _, release, common = self._split(inputs)
        each = release * (before - common[2] * after)
        return np.asarray(each.sum(axis=0), dtype=np.float64)

    def value(self, inputs: FloatArray) -> FloatArray:
        """Give the net worth, (n,), from inputs of shape (rows, n)."""
        before, after, part, other, release, common = self._split(inputs)
        worth, price, bias = common
        each = worth * (before - bias * after) - price * part - other
        whole = (release * each).sum(axis=0) + self._validation
        return np.asarray(whole, dtype=np.float64)

    def _split(self, inputs: FloatArray) -> list[FloatArray]:
        n = self._count
        return [*(inputs[i * n : (i + 1) * n] for i in range(5)), inputs[5 * n :]]

    def groups(self) -> list[list[int]]:
        """Give the rows of each change, and each common row alone."""
        n = self._count
        of_changes = [[i + k * n for k in range(5)] for i in range(n)]
        return [*of_changes, *([5 * n + k] for k in range(3))]

    def quantiles(self) -> list[Callable[[FloatArray], FloatArray]]:
        """Give each row as a function of a probability."""
        n = self._count
        kinds = [Distribution.RECTANGULAR] * n + [Distribution.TRIANGULAR] * (3 * n)
        found = [
            quantile_of_range(one.low, one.high, likely=one.likely, kind=kind)
            for one, kind in zip(self._ranges, kinds, strict=True)
        ]
        found += [_release(float(chance)) for chance in self._chances]
        return found + [
            quantile_of_range(one.low, one.high, likely=one.likely)
            for one in self._common
        ]

    def matters(
        self, model: Callable[[FloatArray], FloatArray], shares: tuple[Share, ...]
    ) -> Matters:
        """Give the swings of a model with the shares of its variance."""
        open_ended = (self._chances > 0) & (self._chances < 1)
        columns = np.array([one.ends for one in (*self._ranges, *self._common)])
        released = np.stack(
            [
                np.where(open_ended, 0.0, self._chances),
                self._chances,
                np.where(open_ended, 1.0, self._chances),
            ],
            axis=1,
        )
        at = len(self._ranges)
        low, likely, high = np.concatenate((columns[:at], released, columns[at:])).T
        table = swing_table(model, low=low, likely=likely, high=high)
        names = [(name, what) for what in _OF_CHANGE for name in self.changes]
        names += [(name, "") for name in _COMMON]
        swings = tuple(
            Swing(
                *names[place], float(table.at_low[place]), float(table.at_high[place])
            )
            for place in table.order
            if table.at_low[place] != table.at_high[place]
        )
        return Matters(table.base, swings, shares)


def _release(chance: float) -> Callable[[FloatArray], FloatArray]:
    def quantile(probability: FloatArray) -> FloatArray:
        return np.where(probability < chance, 1.0, 0.0)

    return quantile
