"""The proposal: effects, totals, duties, and what is taken over from before."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from numpy.testing import assert_allclose

from benchpack.calc.worth import value_per_pack
from benchpack.errors import DataError
from benchpack.model.change import Change, ChangeKind
from benchpack.model.joint import Joint
from benchpack.model.library import by_pack
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.words import Basis
from benchpack.results.joint_facts import facts_of
from benchpack.results.joint_totals import Measure, totals_of
from benchpack.results.proposal import ProposalResults, proposal, with_changes
from benchpack.results.proposal_effect import Effect
from tests.unit.results.packs import library, pack
from tests.unit.results.proposal_samples import (
    FLOOR_IN_PP,
    JOINTS,
    LID_IN_PP,
    NO_BRACKETS,
    ONE_LID,
    PACK,
    RIM_BEAD,
    STUDY,
    bench,
    change,
    proposal_of,
)
from tests.unit.results.proposal_strategies import proposals


def effect(results: ProposalResults, name: str) -> Effect:
    found = results.effect(name)
    assert found is not None
    return found


def test_the_rim_of_a_pack_is_no_saving_in_mass() -> None:
    # A fact of the trade (common practice, no source): the screws of a pack's rim
    # together weigh about 1 kg.
    rim = Joint(
        PACK,
        "rim",
        family="flange screw",
        designation="EN 1665 M6x25",
        count=100,
        joins="lid",
        to="tray",
    )
    facts = facts_of([rim], STUDY)
    assert_allclose(totals_of(facts).of(Measure.MASS), 1.0, atol=0.15)
    gone = change("no rim", ChangeKind.REMOVE, joints=("rim",))
    results = proposal_of(gone, joints=by_pack([*JOINTS, rim]))
    found = effect(results, "no rim")
    worth = STUDY.worth_likely_per_kg * found.saved_kg.likely
    # It pays in money and time, not in kilograms.
    assert -found.joining_cost.likely > 5 * worth
    assert found.seconds.likely <= -300


def test_half_of_a_gap_of_50_kg_at_10_per_kg() -> None:
    # A fact of the trade (common practice, no source): half of a gap of 50 kg, 25 kg,
    # is worth 250 at 10 per kilogram, a cautious first promise.
    study = replace(
        STUDY,
        basis=Basis.AS_WEIGHED,
        worth_low_per_kg=10.0,
        worth_likely_per_kg=10.0,
        worth_high_per_kg=10.0,
        target_kg=25.0,
    )
    half = change(
        "half", ChangeKind.ADJUST, parts=("side frame",), mass_kg=Range.exactly(1.0)
    )
    rest = change("rest", ChangeKind.ADJUST, parts=("lid",), mass_kg=Range.exactly(0.0))
    records = bench(half, rest, study=study)
    packs = library(pack(PACK, 70, 500), pack("Egret 80", 80, 450)).packs
    results = proposal(replace(records, packs=packs), study)
    assert results.totals.gap_kg == 50.0
    assert_allclose(results.totals.saved_kg.likely, 25.0, rtol=1e-9)
    assert_allclose(results.totals.share_of_gap, 0.5, rtol=1e-9)
    assert_allclose(results.totals.gap_left_kg, 25.0, rtol=1e-9)
    worth = results.totals.net_worth.likely + results.totals.money.likely
    assert_allclose(worth, 250.0, rtol=1e-9)
    assert_allclose(worth, value_per_pack(50.0, 10.0, share_captured=0.5), rtol=1e-9)


def test_effects_add_up_to_the_totals() -> None:
    results = proposal_of(LID_IN_PP, RIM_BEAD, FLOOR_IN_PP, NO_BRACKETS)
    totals = results.totals
    assert_allclose(
        sum(one.saved_kg.likely for one in results.effects),
        totals.saved_kg.likely,
        rtol=1e-9,
    )
    assert_allclose(totals.proposed_kg.likely, 460 - totals.saved_kg.likely, rtol=1e-12)
    assert totals.saved_kg.low < totals.saved_kg.likely < totals.saved_kg.high
    by_hand = (
        STUDY.worth_likely_per_kg * totals.saved_kg.likely
        - totals.money.likely
        - totals.tooling_per_pack.likely
        - totals.validation_per_pack.likely
    )
    assert_allclose(totals.net_worth.likely, by_hand, rtol=1e-9)


def test_a_flat_swap_of_aluminium_comes_out_heavier_and_says_so() -> None:
    found = effect(proposal_of(FLOOR_IN_PP), "floor in PP")
    assert found.is_heavier
    assert found.saved_kg.likely < -10.0
    assert found.break_even_volume == math.inf


def test_what_the_person_gives_goes_before_the_cost_model() -> None:
    given_costs = replace(
        LID_IN_PP,
        part_cost=Range(1, 2, 3),
        joining_cost=Range(-2, -1, 0),
        seconds=Range(-9, -6, -3),
        tooling=Range.exactly(800_000),
        validation_cost=Range.exactly(0.0),
        lead_weeks=Range(20, 30, 40),
    )
    study = replace(STUDY, yearly_volume=50_000, programme_years=5.0)
    found = effect(proposal_of(given_costs, study=study), "lid in PP")
    assert found.part_cost == Range(1, 2, 3)
    assert found.joining_cost == Range(-2, -1, 0)
    assert found.seconds.likely == -6
    # Derived: 800,000 over 5 years of 50,000 packs at 8 % are 4.01 a pack.
    assert_allclose(found.tooling_per_pack.likely, 4.01, atol=0.005)
    assert found.lead_weeks == Range(20, 30, 40)
    assert found.unknown == ()


def test_the_cost_model_fills_what_is_not_given() -> None:
    found = effect(proposal_of(LID_IN_PP), "lid in PP")
    assert found.tooling.likely == 1_000_000
    assert found.lead_weeks == Range(26, 33, 40)
    new = found.cost.after[0]
    old = found.cost.before[0]
    assert new.total is not None
    assert old.total is not None
    assert_allclose(found.part_cost.likely, new.total.likely - old.total.likely)
    assert found.unknown == ("What validating it costs is not given.",)
    # The adds-backs are made and fitted, at usual prices.
    assert found.add_back_cost.likely > 0


def test_what_is_not_known_is_named() -> None:
    found = effect(proposal_of(ONE_LID), "one lid")
    assert "What its tools cost is not given." in found.unknown
    study = replace(STUDY, yearly_volume=None)
    volume = effect(proposal_of(LID_IN_PP, study=study), "lid in PP")
    assert "The yearly volume, and so its tooling per pack." in volume.unknown
    assert volume.tooling_per_pack == Range.exactly(0.0)
    results = proposal_of(LID_IN_PP, study=study)
    assert results.totals.unknown == ("lid in PP",)


def test_notes_on_values_and_volume() -> None:
    few = replace(STUDY, yearly_volume=500)
    found = effect(
        proposal_of(replace(LID_IN_PP, uses_data_sheet=True), study=few), "lid in PP"
    )
    said = " ".join(note.what for note in found.notes)
    assert "data-sheet values, design knock-downs are off" in said
    assert "injection moulding is not usual at 500 packs a year." in said
    bare = effect(proposal_of(replace(LID_IN_PP, material="bare PA")), "lid in PP")
    assert "bare PA has no design knock-down" in bare.notes[0].what


def test_a_chance_holds_those_of_the_changes_it_needs_once() -> None:
    lid = replace(ONE_LID, release_chance=0.8)
    ribs = change(
        "ribs",
        ChangeKind.ADJUST,
        parts=("whole lid",),
        mass_kg=Range(6, 7, 8),
        release_chance=0.5,
    )
    both = replace(NO_BRACKETS, requires=("one lid", "ribs"), release_chance=0.9)
    results = proposal_of(lid, ribs, both)
    chances = [one.release_chance for one in results.effects]
    assert_allclose(chances, (0.8, 0.4, 0.36))


def test_duties_name_the_changes_that_reopen_them() -> None:
    results = proposal_of(LID_IN_PP, RIM_BEAD, NO_BRACKETS)
    found = {one.duty.key: one.changes for one in results.duties}
    assert found["gas venting"] == ("lid in PP",)
    assert found["leak test"] == ("lid in PP", "rim bead")
    assert found["crush"] == ("no brackets",)
    # No add-back that is waived takes a function off the list.
    waived = replace(LID_IN_PP, waived=(("shield foil", "painted"),))
    again = {one.duty.key for one in proposal_of(waived).duties}
    assert "shielding" in again


def test_the_state_before_is_taken_over() -> None:
    first = proposal_of(LID_IN_PP, RIM_BEAD)
    again = proposal(first.library, first.study, previous=first)
    assert again.today is first.today
    assert again.gap.comparison is first.gap.comparison
    dearer = replace(first.study, worth_likely_per_kg=5.0)
    moved = proposal(first.library, dearer, previous=first)
    assert moved.today is first.today
    assert moved.totals.net_worth.likely > first.totals.net_worth.likely
    other_rate = replace(first.study, labour_rate_per_h=90.0)
    assert proposal(first.library, other_rate, previous=first).today is not first.today


def test_one_switched_off_shows_the_difference() -> None:
    results = proposal_of(LID_IN_PP, NO_BRACKETS)
    without = with_changes(
        results,
        [replace(one, is_on=one.name != "no brackets") for one in results.changes],
    )
    assert_allclose(
        results.totals.saved_kg.likely - without.totals.saved_kg.likely,
        effect(results, "no brackets").saved_kg.likely,
        rtol=1e-9,
    )
    assert results.refusal("no brackets") is None


def test_checks_come_with_each_change() -> None:
    results = proposal_of(LID_IN_PP, RIM_BEAD)
    assert set(results.checks_by_change) == {"lid in PP", "rim bead"}
    assert len(results.checks) == sum(map(len, results.checks_by_change.values()))
    assert results.checks


def test_without_a_subject_there_is_no_proposal() -> None:
    with pytest.raises(DataError, match="no pack 'Crow' for the study"):
        proposal(bench(), Study("x", subject="Crow"))
    with pytest.raises(DataError, match="has no subject"):
        proposal(bench(), Study("x"))


def test_without_a_reference_there_is_no_gap_but_a_saving() -> None:
    study = replace(STUDY, reference="", target_kg=None)
    totals = proposal_of(NO_BRACKETS, study=study).totals
    assert math.isnan(totals.gap_left_kg)
    assert math.isnan(totals.share_of_gap)
    assert math.isnan(totals.target_kg)
    assert totals.saved_kg.likely > 2.0


@settings(deadline=None, max_examples=40)
@given(proposals())
def test_the_sum_over_effects_is_the_saving(changes: tuple[Change, ...]) -> None:
    results = proposal_of(*changes)
    saved = [one.saved_kg.likely for one in results.effects]
    assert_allclose(
        results.totals.today_kg - sum(saved),
        results.totals.proposed_kg.likely,
        rtol=1e-9,
    )
    for one in results.effects:
        assert 0.0 <= one.release_chance <= 1.0
        assert math.isfinite(one.net_worth.likely)
