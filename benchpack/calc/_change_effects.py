"""How the variance of a proposal's value splits among changes and common factors."""

from __future__ import annotations

from itertools import product
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from benchpack.calc._arrays import FloatArray, as_floats
from benchpack.calc.change_ranges import ChangeRanges, CommonFactors


class Parts(NamedTuple):
    """Moments of a proposal; its quantities are mass and then each kind of money."""

    means: FloatArray
    """Of each change when it is released, (n, quantities)."""
    variances: FloatArray
    chances: FloatArray
    expected: FloatArray
    """Sum of the means by their chances, (quantities,)."""
    powers: NDArray[np.bool_]
    """Whether a common factor multiplies a quantity, (factors, quantities)."""


class Effects(NamedTuple):
    """The variance of a value by the set of common factors that act together.

    The first set is empty. With means ``E``, variances ``V`` and the factors q of a
    set, what multiplies quantity j has the effect ``prod V_q`` times the square of the
    product of the ``E`` of the others, where all of the set multiply j (analysis of
    variance of a product).
    """

    members: NDArray[np.bool_]
    """(sets, factors)."""
    multipliers: FloatArray
    """(sets, quantities)."""
    of_factors: FloatArray
    """Variance between trials with all changes at their mean, (sets,)."""
    of_changes: FloatArray
    """Variance from each change, (sets, n)."""

    @property
    def variance(self) -> float:
        """Variance of the value."""
        return float(self.of_factors[1:].sum() + self.of_changes.sum())


def parts_of(changes: ChangeRanges) -> Parts:
    """Give the moments of the changes."""
    quantities = [changes.saved_kg, *(kind.ranges for kind in changes.money)]
    means = np.stack([part.means for part in quantities], axis=1)
    return Parts(
        means,
        np.stack([part.variances for part in quantities], axis=1),
        changes.release_chance,
        changes.release_chance @ means,
        powers_of(changes),
    )


def powers_of(changes: ChangeRanges) -> NDArray[np.bool_]:
    """Tell which common factor multiplies which quantity, (factors, quantities)."""
    of_money = [
        [False, kind.moves_with_price, kind.moves_with_exchange]
        for kind in changes.money
    ]
    return np.array([[True, False, False], *of_money]).T


def products(values: FloatArray, powers: NDArray[np.bool_]) -> FloatArray:
    """Give what multiplies each quantity."""
    return as_floats(np.prod(np.where(powers, values[:, np.newaxis], 1.0), axis=0))


def effects_of(parts: Parts, factors: CommonFactors) -> Effects:
    """Give the variance of the value, split by sets of factors and changes."""
    given = (factors.worth_per_kg, factors.price, factors.exchange)
    means = np.concatenate([factor.means for factor in given])
    variances = np.concatenate([factor.variances for factor in given])
    members = np.array(list(product((False, True), repeat=len(given))))
    weights = np.prod(np.where(members, variances, 1.0), axis=1)
    multipliers = np.array(
        [
            products(np.where(own, 1.0, means), parts.powers)
            * parts.powers[own].all(axis=0)
            for own in members
        ]
    )
    of_factors = weights * (multipliers @ parts.expected) ** 2
    of_changes = weights[:, np.newaxis] * variances_of_changes(parts, multipliers)
    return Effects(members, multipliers, of_factors, of_changes)


def variances_of_changes(parts: Parts, multipliers: FloatArray) -> FloatArray:
    """Give ``p (Var[x] + (1 - p) E[x]^2)`` for each row of multipliers and change."""
    spread = multipliers**2 @ parts.variances.T
    of_release = (1.0 - parts.chances) * (multipliers @ parts.means.T) ** 2
    return parts.chances * (spread + of_release)
