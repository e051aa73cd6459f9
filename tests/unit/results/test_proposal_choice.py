"""Choosing changes: a suggestion under budget, conflicts and requirements."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

import pytest
from numpy.testing import assert_allclose

from benchpack.errors import CancelledError
from benchpack.model.change import Change, ChangeKind, ProgrammeKind
from benchpack.model.ranges import Range
from benchpack.results.proposal import ProposalResults, with_changes
from benchpack.results.proposal_choice import expected, suggest
from tests.unit.results.proposal_samples import (
    FLOOR_IN_PP,
    NO_BRACKETS,
    ONE_LID,
    RIM_BEAD,
    STUDY,
    change,
    proposal_of,
)


def adjusted(name: str, part: str, after: float, cost: float, tooling: float) -> Change:
    return change(
        name,
        ChangeKind.ADJUST,
        parts=(part,),
        mass_kg=Range.exactly(after),
        part_cost=Range.exactly(cost),
        tooling=Range.exactly(tooling),
        validation_cost=Range.exactly(0.0),
    )


SIDE = adjusted("side", "side frame", 8.0, 2.0, 4e5)
LID = adjusted("lid", "lid", 8.0, 3.0, 5e5)
COOL = adjusted("cool", "cooling plate", 4.0, 1.0, 2e5)
DEAR = adjusted("dear", "floor", 9.0, 40.0, 1e5)
OFF = replace(COOL, is_on=False)


def whole(results: ProposalResults) -> float:
    return sum(expected(one) for one in results.effects)


@pytest.mark.parametrize("budget", [0.0, 2e5, 5e5, 7e5, 1e6, math.inf])
def test_the_best_subset_is_that_of_trying_all(budget: float) -> None:
    results = proposal_of(SIDE, LID, OFF, DEAR, NO_BRACKETS)
    found = suggest(results, budget=budget)
    best = -math.inf
    for names in itertools.chain.from_iterable(
        itertools.combinations([one.name for one in results.changes], k)
        for k in range(6)
    ):
        tried = with_changes(
            results,
            [replace(one, is_on=one.name in names) for one in results.changes],
        )
        if tried.totals.tooling.likely <= budget:
            best = max(best, whole(tried))
    assert_allclose(whole(found.results), best, rtol=1e-9)
    assert found.results.totals.tooling.likely <= budget
    assert found.chosen == tuple(one.name for one in found.results.effects)
    assert "dear" not in found.chosen


def test_the_budget_of_the_study_is_the_default() -> None:
    study = replace(STUDY, tooling_budget=2e5)
    found = suggest(proposal_of(SIDE, LID, OFF, study=study))
    assert found.budget == 2e5
    assert found.chosen == ("cool",)


def test_nothing_is_changed_by_a_suggestion() -> None:
    results = proposal_of(SIDE, OFF)
    before = results.changes
    suggest(results)
    assert results.changes is before
    assert results.effect("cool") is None


def test_of_two_that_clash_one_is_chosen() -> None:
    rival = replace(NO_BRACKETS, name="rival")
    found = suggest(proposal_of(NO_BRACKETS, rival, SIDE))
    assert len({"rival", "no brackets"} & set(found.chosen)) == 1
    assert found.results.ledger.refused == ()
    apart = replace(LID, excludes=("side",))
    found = suggest(proposal_of(SIDE, apart))
    assert found.chosen == ("side",)


def test_two_new_masses_of_one_part_are_alternatives() -> None:
    better = replace(SIDE, name="better", mass_kg=Range.exactly(7.0))
    found = suggest(proposal_of(SIDE, better))
    assert found.chosen == ("better",)


def test_what_a_change_needs_comes_along() -> None:
    ribs = adjusted("ribs", "whole lid", 3.0, 0.0, 0.0)
    lid = replace(
        ONE_LID,
        mass_kg=Range.exactly(13.0),
        part_cost=Range.exactly(1.0),
        tooling=Range.exactly(0.0),
        waived=tuple(
            (key, "test")
            for key in (
                "shield foil",
                "bonding straps",
                "compression limiters",
                "fire barrier",
                "seal groove",
            )
        ),
    )
    found = suggest(proposal_of(lid, ribs))
    assert found.chosen == ("one lid", "ribs")
    alone = suggest(proposal_of(replace(lid, part_cost=Range.exactly(500.0)), ribs))
    assert alone.chosen == ()


def test_what_cannot_count_is_named_with_its_reason() -> None:
    late = replace(SIDE, programme=ProgrammeKind.NEW)
    mount = change("mount", ChangeKind.REMOVE, parts=("mount",))
    study = replace(STUDY, programme=ProgrammeKind.RUNNING)
    found = suggest(proposal_of(late, mount, NO_BRACKETS, study=study))
    reasons = {name: problem.what for name, problem in found.not_possible}
    assert reasons["side"].startswith("It fits a new programme")
    assert "carry-over" in reasons["mount"]
    assert found.chosen == ("no brackets",)


def test_what_makes_the_pack_heavier_is_not_suggested() -> None:
    found = suggest(proposal_of(FLOOR_IN_PP, RIM_BEAD))
    assert found.chosen == ("rim bead",)


def test_a_low_chance_and_its_validation_count() -> None:
    risky = replace(
        SIDE, release_chance=0.05, validation_cost=Range.exactly(1_000_000.0)
    )
    assert suggest(proposal_of(risky)).chosen == ()
    assert suggest(proposal_of(replace(risky, release_chance=1.0))).chosen == ("side",)


def test_it_can_be_cancelled() -> None:
    with pytest.raises(CancelledError):
        suggest(proposal_of(SIDE), cancelled=lambda: True)
