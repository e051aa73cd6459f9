"""The case as a whole: sets side by side, the target, what is taken over."""

from __future__ import annotations

import math
from dataclasses import fields, replace

import numpy as np
import pytest
from hypothesis import given, settings
from numpy.testing import assert_allclose

from benchpack.errors import Problem
from benchpack.model.assumptions import AssumptionSet, assumption_values
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.results.worth_case import WorthCase, case_with
from benchpack.results.worth_programme import Programme
from benchpack.results.worth_sets import IN_USE, set_outcomes
from tests.unit.results.worth_samples import (
    CHANGES,
    RICH,
    case_of,
    studies,
    with_assumed,
)

CASE = case_of(*CHANGES)


def same(one: object, other: object) -> bool:
    """Tell whether two parts of a case say the same figures."""
    if isinstance(one, Problem | Range) or one is None:
        return one == other
    found = []
    for field in fields(one):  # type: ignore[arg-type]  # all parts are dataclasses
        a, b = getattr(one, field.name), getattr(other, field.name)
        if isinstance(a, float | np.ndarray):
            found.append(bool(np.array_equal(a, b, equal_nan=True)))
        elif field.name == "cash":
            found.append(bool(np.array_equal(a.cumulative, b.cumulative)))
        else:
            found.append(a == b)
    return all(found)


def assert_same(one: WorthCase, other: WorthCase) -> None:
    for name in ("saving", "supply", "programme", "price", "derived", "target"):
        assert same(getattr(one, name), getattr(other, name)), name


@settings(max_examples=40, deadline=None)
@given(study=studies())
def test_what_is_taken_over_gives_what_a_new_start_gives(study: Study) -> None:
    study = replace(study, target_kg=RICH.target_kg)
    found = case_with(CASE, study)
    assert_same(found, case_of(*CHANGES, study=study))


@settings(max_examples=20, deadline=None)
@given(study=studies())
def test_each_set_comes_to_what_the_study_would_with_it(study: Study) -> None:
    kept = AssumptionSet(RICH.name, "other", **assumption_values(study))
    same_as_now = AssumptionSet(RICH.name, "as now", **assumption_values(RICH))
    now, other, again = set_outcomes(CASE, (kept, same_as_now))
    assert (now.name, now.case) == (IN_USE, CASE)
    assert now.is_in_use
    assert again.is_in_use
    assert other.is_in_use == (assumption_values(study) == assumption_values(RICH))
    assert other.case is not None
    assert_same(other.case, with_assumed(CASE, **assumption_values(study)))
    assert again.case is not None
    assert_same(again.case, CASE)


def test_a_tick_of_the_worth_takes_the_ledger_over() -> None:
    found = case_with(CASE, replace(RICH, worth_likely_per_kg=31.0))
    assert found.proposal is not None
    assert CASE.proposal is not None
    assert found.proposal.ledger is CASE.proposal.ledger
    assert found.gap.comparison is CASE.gap.comparison


def test_the_target_says_what_it_hangs_on() -> None:
    reached = with_assumed(CASE, target_kg=3.0).target
    assert reached.value == Range(30.0, 90.0, 120.0)
    assert reached.short_kg < 0
    saved = reached.proposed_kg
    assert [name for name, _ in reached.needed] == [
        "no brackets",
        "lid in PP",
        "rim bead",
    ]
    for _, kg in reached.needed:
        assert saved - kg < 3.0
    easy = with_assumed(CASE, target_kg=2.5).target
    assert [name for name, _ in easy.needed] == ["no brackets"]
    assert {name for name, _ in easy.spare} == {"lid in PP", "rim bead"}
    missed = CASE.target
    assert missed.short_kg > 0
    assert missed.needed == ()
    assert_allclose(missed.share_of_gap * CASE.gap.gap_kg, 4.0)
    assert_allclose(missed.left_kg + saved, CASE.gap.gap_kg)


def test_from_its_least_worth_on_a_proposal_pays() -> None:
    least = CASE.target.least_worth_per_kg
    assert least > 0
    for factor, sign in ((0.99, -1), (1.01, 1)):
        ends = {f"worth_{e}_per_kg": factor * least for e in ("low", "likely", "high")}
        plan = with_assumed(CASE, **ends).programme
        assert isinstance(plan, Programme)
        assert math.copysign(1, plan.npv.likely) == sign


def test_without_changes_there_is_no_proposal_in_the_target() -> None:
    found = case_of()
    assert found.proposal is None
    assert found.target.target_kg == 4.0
    assert math.isnan(found.target.left_kg)
    assert math.isnan(found.target.least_worth_per_kg)
    none = with_assumed(found, target_kg=None).target
    assert none.value is None
    assert math.isnan(none.share_of_gap)


@pytest.mark.parametrize("subject", ["", "nobody"])
def test_without_a_subject_everything_is_a_sentence(subject: str) -> None:
    found = case_of(*CHANGES, study=replace(RICH, subject=subject))
    assert found.proposal is None
    for part in (found.programme, found.price, found.derived.missing):
        assert isinstance(part, Problem)
        assert part.what.endswith(".")
