"""Mean, spread and what matters of a proposal, exactly and without any trials.

The value of a proposal is a sum of products of independent quantities, so that its
variance splits in closed form: at once, and free of the noise of a simulation.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats
from benchpack.calc._change_effects import (
    Parts,
    effects_of,
    parts_of,
    powers_of,
    products,
    variances_of_changes,
)
from benchpack.calc.change_ranges import ChangeRanges, CommonFactors
from benchpack.calc.sensitivity import SobolIndices, Swings

FACTORS = ("worth", "price", "exchange")
"""The common factors, in the order in which they follow the changes."""


@dataclass(frozen=True, slots=True)
class ProposalMoments:
    """Mean and standard uncertainty of what a proposal saves and is worth.

    Parameters
    ----------
    saved_mean_kg, saved_u_kg : float
        Mass saved per pack, kg.
    value_mean, value_u : float
        Money per pack.
    """

    saved_mean_kg: float
    saved_u_kg: float
    value_mean: float
    value_u: float


def proposal_moments(changes: ChangeRanges, factors: CommonFactors) -> ProposalMoments:
    """Give mean and standard uncertainty of a proposal in closed form.

    What `simulate_changes` comes to with ever more trials: ``E[r x] = p E[x]``, ``Var[r
    x] = p Var[x] + p (1 - p) E[x]^2`` for a change with its chance p, and the moments
    of products of independent factors (common practice of probability, no source).

    Parameters
    ----------
    changes : ChangeRanges
        Mass in kg and money per pack of n changes.
    factors : CommonFactors
        Worth per kg, prices and exchange rate.

    Returns
    -------
    ProposalMoments
        Mass in kg and value in money, per pack.

    Examples
    --------
    >>> from benchpack.calc.change_ranges import Ranges
    >>> half = ChangeRanges(Ranges.exactly(2.0), release_chance=0.5)
    >>> moments = proposal_moments(half, CommonFactors(Ranges.exactly(3.0)))
    >>> moments.saved_mean_kg, moments.saved_u_kg, moments.value_mean, moments.value_u
    (1.0, 1.0, 3.0, 3.0)
    """
    parts = parts_of(changes)
    effects = effects_of(parts, factors)
    return ProposalMoments(
        float(parts.expected[0]),
        math.sqrt(_saved_variances(parts).sum()),
        float(parts.expected @ effects.multipliers[0]),
        math.sqrt(effects.variance),
    )


def saved_indices(changes: ChangeRanges) -> SobolIndices:
    """Give the share of each change in the variance of the mass saved.

    First and total are the same, since masses only add up.

    Parameters
    ----------
    changes : ChangeRanges
        Mass in kg of n changes and their chances of release.

    Returns
    -------
    SobolIndices
        Exact, one for each change with its range and its release together.

    Examples
    --------
    >>> from benchpack.calc.change_ranges import Ranges
    >>> changes = ChangeRanges(Ranges([0.0, 0.0], [1.0, 2.0], [2.0, 4.0]))
    >>> print(saved_indices(changes).total)
    [0.2 0.8]
    """
    variances = _saved_variances(parts_of(changes))
    return _exact(variances, variances, float(variances.sum()))


def value_indices(changes: ChangeRanges, factors: CommonFactors) -> SobolIndices:
    """Give the share of each change and common factor in the variance of the value.

    First-order and total Sobol indices in closed form (Sobol, Mathematics and Computers
    in Simulation 55, 2001, definitions).

    Parameters
    ----------
    changes : ChangeRanges
        Mass in kg and money per pack of n changes.
    factors : CommonFactors
        Worth per kg, prices and exchange rate.

    Returns
    -------
    SobolIndices
        Exact: the n changes, each with its mass, money and release together, then the
        common factors in the order of `FACTORS`.

    Examples
    --------
    >>> from benchpack.calc.change_ranges import Ranges
    >>> one = ChangeRanges(Ranges(1.0, 2.0, 3.0))
    >>> indices = value_indices(one, CommonFactors(Ranges(1.0, 2.0, 3.0)))
    >>> print(indices.first.round(2), indices.total.round(2))
    [0.49 0.49 0.   0.  ] [0.51 0.51 0.   0.  ]
    """
    effects = effects_of(parts_of(changes), factors)
    by_set = effects.of_factors + effects.of_changes.sum(axis=1)
    first, total = [*effects.of_changes[0]], [*effects.of_changes.sum(axis=0)]
    for own in effects.members.T:
        alone = own & (effects.members.sum(axis=1) == 1)
        first.append(effects.of_factors[alone].sum())
        total.append(by_set[own].sum())
    return _exact(np.array(first), np.array(total), effects.variance)


def value_swings(changes: ChangeRanges, factors: CommonFactors) -> Swings:
    """Give the value of a proposal when one input at a time goes to its ends.

    At the base everything is at its likely value, and each change counts by its chance;
    a release swings between not coming and coming. Common practice, no source.

    Parameters
    ----------
    changes : ChangeRanges
        Mass in kg and money per pack of n changes.
    factors : CommonFactors
        Worth per kg, prices and exchange rate.

    Returns
    -------
    Swings
        Money per pack: masses of the n changes, then each kind of money of the n
        changes, their releases, and the common factors in the order of `FACTORS`.

    Examples
    --------
    >>> from benchpack.calc.change_ranges import Ranges
    >>> changes = ChangeRanges(Ranges(1.0, 2.0, 4.0), release_chance=0.5)
    >>> swings = value_swings(changes, CommonFactors(Ranges(1.0, 3.0, 6.0)))
    >>> print(swings.base, swings.at_low, swings.at_high)
    3.0 [1.5 0.  1.  3.  3. ] [6. 6. 6. 3. 3.]
    """
    quantities = [changes.saved_kg, *(kind.ranges for kind in changes.money)]
    given = (factors.worth_per_kg, factors.price, factors.exchange)
    likely = np.array([factor.likely[0] for factor in given])
    powers, chances = powers_of(changes), changes.release_chance
    weights = products(likely, powers)
    each = np.stack([part.likely for part in quantities], axis=1)
    sums = chances @ each
    base = float(sums @ weights)
    released = each @ weights
    lows, highs = [], []
    for part, weight in zip(quantities, weights, strict=True):
        lows.append(base + chances * weight * (part.low - part.likely))
        highs.append(base + chances * weight * (part.high - part.likely))
    lows.append(base - chances * released)
    highs.append(base + (1.0 - chances) * released)
    for index, factor in enumerate(given):
        for ends, end in ((lows, factor.low), (highs, factor.high)):
            moved = likely.copy()
            moved[index] = end[0]
            ends.append(np.atleast_1d(sums @ products(moved, powers)))
    return Swings(base, np.concatenate(lows), np.concatenate(highs))


def _saved_variances(parts: Parts) -> FloatArray:
    only_mass = np.zeros((1, parts.powers.shape[1]))
    only_mass[0, 0] = 1.0
    (variances,) = variances_of_changes(parts, only_mass)
    return as_floats(variances)


def _exact(first: FloatArray, total: FloatArray, variance: float) -> SobolIndices:
    if variance == 0.0:
        unknown = np.full(first.size, np.nan)
        return SobolIndices(unknown, unknown, unknown, unknown, 0.0)
    none = np.zeros(first.size)
    return SobolIndices(first / variance, total / variance, none, none, variance)
