"""The best subset of changes against a published knapsack and against all subsets."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchpack.calc.choosing import Pair, choose_changes

VALUES, WEIGHTS = [60.0, 100.0, 120.0, 80.0], [10.0, 20.0, 30.0, 15.0]


def test_a_published_knapsack() -> None:
    """Values 60, 100, 120, 80, weights 10, 20, 30, 15, capacity 50: 240."""
    choice = choose_changes(VALUES, WEIGHTS, budget=50.0)
    assert choice.chosen == (0, 1, 3)
    assert choice.net_worth == 240.0
    assert choice.tooling == 45.0


def test_the_knapsack_with_a_conflict() -> None:
    """With the second and the fourth in conflict: 220 with the second and third."""
    choice = choose_changes(VALUES, WEIGHTS, budget=50.0, conflicts=[(1, 3)])
    assert choice.chosen == (1, 2)
    assert choice.net_worth == 220.0


def best_of_all(
    values: np.ndarray,
    costs: np.ndarray,
    budget: float,
    conflicts: list[Pair],
    requirements: list[Pair],
) -> float:
    """Give the highest net worth among all subsets that keep to the rules."""
    count = values.size
    subsets = (np.arange(1 << count)[:, np.newaxis] >> np.arange(count)) & 1
    # In whole cents, so that no sum is off by its last digit.
    spent = subsets @ np.rint(100.0 * costs).astype(np.int64)
    allowed = spent <= round(100.0 * budget)
    for one, other in conflicts:
        allowed &= (subsets[:, one] & subsets[:, other]) == 0
    for change, needed in requirements:
        allowed &= subsets[:, change] <= subsets[:, needed]
    return float((subsets[allowed] @ values).max())


@settings(deadline=None, max_examples=120)
@given(
    seed=st.integers(0, 100_000),
    count=st.integers(1, 15),
    share=st.floats(0.0, 1.0),
    dense=st.floats(0.0, 0.2),
)
def test_against_every_subset(
    seed: int, count: int, share: float, dense: float
) -> None:
    """Up to 15 changes, some of them costing more than they bring."""
    random = np.random.default_rng(seed)
    values = random.integers(-3000, 10_000, count) / 100.0
    costs = random.integers(0, 6000, count) / 100.0
    budget = round(share * float(costs.sum()), 2)
    drawn = random.random((2, count, count)) < dense
    pairs = [
        [(int(i), int(j)) for i, j in np.argwhere(each & ~np.eye(count, dtype=bool))]
        for each in drawn
    ]
    choice = choose_changes(
        values, costs, budget=budget, conflicts=pairs[0], requirements=pairs[1]
    )
    wanted = best_of_all(values, costs, budget, pairs[0], pairs[1])
    assert choice.net_worth == pytest.approx(wanted, abs=1e-6)
