"""What must hold for every choice of changes."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchpack.calc.choosing import Pair, choose_changes
from benchpack.errors import RequestError

untimed = settings(deadline=None, max_examples=40)
Case = tuple[np.ndarray, np.ndarray, float, list[Pair], list[Pair]]


@st.composite
def cases(draw: st.DrawFn) -> Case:
    """Draw net worths and tooling in cents, a budget, conflicts, requirements."""
    random = np.random.default_rng(draw(st.integers(0, 10_000)))
    count = draw(st.integers(2, 12))
    values = random.integers(-2000, 10_000, count) / 100.0
    costs = random.integers(0, 5000, count) / 100.0
    budget = round(float(costs.sum()) * draw(st.floats(0.0, 1.1)), 2)
    pairs: list[list[Pair]] = []
    for share in (0.1, 0.08):
        upper = np.triu(random.random((count, count)) < share, k=1)
        pairs.append([(int(i), int(j)) for i, j in np.argwhere(upper)])
    return values, costs, budget, pairs[0], pairs[1]


@untimed
@given(cases())
def test_a_choice_keeps_to_every_rule(case: Case) -> None:
    values, costs, budget, conflicts, requirements = case
    choice = choose_changes(
        values, costs, budget=budget, conflicts=conflicts, requirements=requirements
    )
    chosen = set(choice.chosen)
    assert choice.chosen == tuple(sorted(chosen))
    assert choice.tooling == pytest.approx(math.fsum(costs[list(chosen)]))
    assert choice.net_worth == pytest.approx(math.fsum(values[list(chosen)]))
    assert choice.tooling <= budget * (1.0 + 1e-12)
    assert choice.net_worth >= 0.0
    assert not [pair for pair in conflicts if chosen.issuperset(pair)]
    for change, needed in requirements:
        assert change not in chosen or needed in chosen


@untimed
@given(cases(), st.floats(1.0, 2.0))
def test_a_larger_budget_is_never_worse(case: Case, factor: float) -> None:
    values, costs, budget, conflicts, requirements = case
    small, large, free = (
        choose_changes(
            values, costs, budget=limit, conflicts=conflicts, requirements=requirements
        )
        for limit in (budget, budget * factor, math.inf)
    )
    assert small.net_worth <= large.net_worth + 1e-6
    assert large.net_worth <= free.net_worth + 1e-6


@untimed
@given(cases(), st.integers(0, 1000))
def test_the_order_of_changes_does_not_matter(case: Case, seed: int) -> None:
    values, costs, budget, conflicts, _ = case
    order = np.random.default_rng(seed).permutation(values.size)
    place = np.argsort(order)
    moved = [(int(place[i]), int(place[j])) for i, j in conflicts]
    one = choose_changes(values, costs, budget=budget, conflicts=conflicts)
    two = choose_changes(values[order], costs[order], budget=budget, conflicts=moved)
    assert one.net_worth == pytest.approx(two.net_worth, abs=1e-6)


@untimed
@given(cases())
def test_what_is_kept_is_in(case: Case) -> None:
    values, costs, _, _, requirements = case
    choice = choose_changes(values, costs, requirements=requirements, kept=[0])
    assert 0 in choice.chosen


def test_a_sum_in_cents_may_reach_its_budget() -> None:
    """0.1 + 0.2 is 0.30000000000000004 in floating point."""
    assert choose_changes([1.0, 1.0], [0.1, 0.2], budget=0.3).chosen == (0, 1)


def test_a_budget_that_is_missed_by_little_is_missed() -> None:
    """By less than the solver's own tolerance, so that it has to be asked again."""
    choice = choose_changes([1.0, 2.0, 0.5], [50.0, 50.0 + 1e-7, 0.0], budget=100.0)
    assert choice.chosen == (1, 2)
    assert choice.tooling <= 100.0


def test_what_brings_nothing_is_left_out() -> None:
    choice = choose_changes([0.0, 5.0, 0.0, 0.0], [0.0] * 4, requirements=[(1, 2)])
    assert choice.chosen == (1, 2)
    assert choose_changes([0.0, -1.0], [0.0, 0.0]).chosen == ()


def test_nothing_to_choose_from_is_nothing() -> None:
    assert choose_changes([], []).chosen == ()


def test_without_money_only_what_is_free_comes() -> None:
    assert choose_changes([5.0, 3.0], [1.0, 0.0], budget=0.0).chosen == (1,)


@pytest.mark.parametrize(
    "asked",
    [
        {"kept": [0, 1], "conflicts": [(0, 1)]},
        {"kept": [1], "budget": 1.0},
        {"kept": [0, 1], "budget": 2.5},
        {"kept": [2]},
        {"conflicts": [(0, 2)]},
        {"requirements": [(-1, 0)]},
        {"requirements": [(1, 1)]},
        {"budget": -1.0},
        {"budget": math.nan},
    ],
)
def test_what_cannot_be_had_is_refused(asked: dict[str, Any]) -> None:
    with pytest.raises(RequestError):
        choose_changes([5.0, 3.0], [1.0, 2.0], **asked)


@pytest.mark.parametrize(
    ("values", "costs"),
    [
        ([1.0], [1.0, 2.0]),
        ([math.nan], [1.0]),
        ([1.0], [-1.0]),
        ([1.0], [math.inf]),
        ([[1.0]], [[1.0]]),
    ],
)
def test_figures_have_to_be_known(values: list[float], costs: list[float]) -> None:
    with pytest.raises(RequestError):
        choose_changes(values, costs)
