"""Which changes to put forward: the highest net worth that a budget allows."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from benchpack.calc._arrays import FloatArray, as_floats
from benchpack.errors import RequestError

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

Pair = tuple[int, int]
Row = tuple[FloatArray, float]
Mask = NDArray[np.bool_]

IMPOSSIBLE = "What is kept cannot be had together within the budget."

# The solver stops within 1e-6 of the best in its own figures; these make that 1e-10.
_SCALE = 1e4


@dataclass(frozen=True, slots=True)
class Choice:
    """The changes that are chosen, and what they come to.

    Parameters
    ----------
    chosen : tuple of int
        Places of the chosen changes, rising.
    net_worth : float
        Sum of their net worths.
    tooling : float
        Sum of their tooling.
    """

    chosen: tuple[int, ...]
    net_worth: float
    tooling: float


def choose_changes(
    net_worth: ArrayLike,
    tooling: ArrayLike,
    *,
    budget: float = np.inf,
    conflicts: Iterable[Pair] = (),
    requirements: Iterable[Pair] = (),
    kept: Iterable[int] = (),
) -> Choice:
    """Give the subset of changes with the highest net worth under a tooling budget.

    ``max sum v_i x_i`` with ``x_i`` 0 or 1, ``sum t_i x_i <= budget``, ``x_i + x_j <=
    1`` for a conflict and ``x_i <= x_j`` where i requires j: a knapsack with
    precedence, solved to the end by branch and bound (HiGHS in scipy.optimize.milp).

    Parameters
    ----------
    net_worth : array_like, shape (n,)
        Money that each change is worth, its costs taken off; may be negative.
    tooling : array_like, shape (n,)
        Money for its tools, zero or more.
    budget : float
        Money for tools, zero or more; infinite where there is no limit.
    conflicts : iterable of pairs
        Places of two changes that exclude each other.
    requirements : iterable of pairs
        Places of a change and of one that it cannot do without.
    kept : iterable of int
        Places of changes that are in whatever they are worth.

    Returns
    -------
    Choice
        Of several subsets of the same net worth any one, always the same.

    Raises
    ------
    RequestError
        For unknown or negative figures, for pairs that name no change or one change
        twice, and where what is kept cannot be had together within the budget.

    Examples
    --------
    >>> choose_changes([60, 100, 120, 80], [10, 20, 30, 15], budget=50)
    Choice(chosen=(0, 1, 3), net_worth=240.0, tooling=45.0)
    """
    values, costs = as_floats(net_worth), as_floats(tooling)
    _check_figures(values, costs, budget)
    count = values.size
    needs = _pairs(requirements, count)
    rows = _pair_rows(_pairs(conflicts, count), needs, count)
    held = np.zeros(count, dtype=np.bool_)
    for place in kept:
        _check_place(place, count)
        held[place] = True
    affordable = costs <= budget
    if np.isfinite(budget) and budget > 0.0:
        rows.append((np.where(affordable, costs, 0.0) / budget, 1.0))
    while count:
        best = _solve(values, held, affordable, rows)
        picked = _without_idle(best, values, held, needs)
        total = float(costs[picked].sum())
        # The last digits of a sum may not decide.
        if total <= budget * (1.0 + 1e-12):
            places = tuple(int(place) for place in np.flatnonzero(picked))
            return Choice(places, float(values[picked].sum()), total)
        # Over the budget by less than the solver sees: not these, whatever comes along.
        paid = as_floats(picked & (costs > 0.0))
        rows.append((paid, float(paid.sum()) - 1.0))
    return Choice((), 0.0, 0.0)


def _solve(values: FloatArray, held: Mask, allowed: Mask, rows: list[Row]) -> Mask:
    """Give the best subset as far as the solver sees."""
    # Half a second to load, for the few who let the budget choose.
    from scipy.optimize import Bounds, LinearConstraint, milp

    if np.any(held & ~allowed):
        raise RequestError(IMPOSSIBLE)
    largest = float(np.abs(values).max())
    scale = _SCALE / largest if largest > 0.0 else 1.0
    constraints = None
    if rows:
        matrix, upper = zip(*rows, strict=True)
        constraints = LinearConstraint(np.array(matrix), ub=np.array(upper))
    solved = milp(
        -scale * values,
        integrality=np.ones(values.size),
        bounds=Bounds(held.astype(np.float64), allowed.astype(np.float64)),
        constraints=constraints,
        options={"mip_rel_gap": 0.0},
    )
    if solved.x is None:
        raise RequestError(IMPOSSIBLE)
    return np.asarray(solved.x > 0.5)


def _without_idle(
    picked: Mask, values: FloatArray, held: Mask, needs: list[Pair]
) -> Mask:
    """Leave out what brings nothing and nothing else needs."""
    left = picked.copy()
    while True:
        needed = np.zeros_like(left)
        for change, other in needs:
            needed[other] |= left[change]
        idle = left & (values <= 0.0) & ~held & ~needed
        if not idle.any():
            return left
        left &= ~idle


def _pair_rows(clashes: list[Pair], needs: list[Pair], count: int) -> list[Row]:
    """Give each pair as coefficients and an upper bound."""
    rows = []
    for pairs, of_other, upper in ((clashes, 1.0, 1.0), (needs, -1.0, 0.0)):
        for change, other in pairs:
            row = np.zeros(count)
            row[change], row[other] = 1.0, of_other
            rows.append((row, upper))
    return rows


def _pairs(pairs: Iterable[Pair], count: int) -> list[Pair]:
    checked = list(pairs)
    for change, other in checked:
        _check_place(change, count)
        _check_place(other, count)
        if change == other:
            raise RequestError("A change neither excludes nor requires itself.")
    return checked


def _check_place(place: int, count: int) -> None:
    if not 0 <= place < count:
        said = f"There is no change {place} among {count}."
        raise RequestError(said)


def _check_figures(values: FloatArray, costs: FloatArray, budget: float) -> None:
    if values.ndim != 1 or values.shape != costs.shape:
        raise RequestError("Each change needs one net worth and one tooling.")
    if not np.isfinite(values).all():
        raise RequestError("The net worth of a change is not known.")
    if not np.all(np.isfinite(costs) & (costs >= 0.0)) or not budget >= 0.0:
        raise RequestError("Tooling and budget are known and zero or more.")
