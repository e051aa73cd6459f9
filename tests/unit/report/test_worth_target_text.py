"""The target in words: what it comes to, how likely it is, what has to be true."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from benchpack.model.study import Study
from benchpack.model.words import Basis, KnownBy
from benchpack.report.worth_target import COMPUTING, target_figures
from benchpack.report.worth_target_text import target_readings
from benchpack.results.explain_worth import explain_worth
from benchpack.results.proposal_trials import ProposalChance, simulate
from benchpack.results.results import compute
from benchpack.results.worth_case import WorthCase, worth_case
from tests.unit.report.test_worth_figures import plain
from tests.unit.results.proposal_samples import PACK
from tests.unit.results.worth_samples import CHANGES, RICH, case_of


def words(case: WorthCase, chance: ProposalChance | None, *, known: bool = True) -> str:
    readings = target_readings(case, chance, is_known=known)
    return plain("\n".join("\n".join(one.sentences) for one in readings))


def trials(case: WorthCase) -> ProposalChance:
    assert case.proposal is not None
    found = simulate(case.proposal, trials=2_000)
    assert found is not None
    return found


def test_half_and_one_in_five_are_those_of_the_trials() -> None:
    case = case_of(*CHANGES)
    chance = trials(case)
    half, fifth = np.percentile(chance.saved_kg.values, [50, 80])
    said = words(case, chance)
    assert f"Half of the trials save {half:.1f} kg or more (P50)." in said
    assert f"One in five saves {fifth:.1f} kg or more (stretch)." in said
    texts = [shown.text for shown in target_figures(case, chance, is_known=True)]
    assert f"{half:.1f} kg" in map(plain, texts)
    assert f"{fifth:.1f} kg" in map(plain, texts)


def test_a_target_that_hangs_on_changes_names_them() -> None:
    case = case_of(*CHANGES, study=replace(RICH, target_kg=2.75))
    assert case.target.needed
    assert case.target.spare
    said = words(case, trials(case))
    for name, kg in case.target.needed:
        assert f"{name} ({kg:.1f} kg)" in said
    assert "has to be released" in said
    assert f"may fall away: {case.target.spare[0][0]}" in said


def test_a_target_with_room_hangs_on_no_single_change() -> None:
    case = case_of(*CHANGES, study=replace(RICH, target_kg=0.001))
    assert "any one may fall away" in words(case, trials(case))


def test_a_target_beyond_the_proposal_says_by_how_much() -> None:
    case = case_of(*CHANGES, study=replace(RICH, target_kg=50.0))
    said = words(case, trials(case))
    assert f"{case.target.short_kg:.1f} kg short of it" in said
    assert "under 1 %" in said


def test_least_worth_and_least_volume_are_conditions() -> None:
    case = case_of(*CHANGES)
    said = words(case, trials(case))
    least = case.target.least_worth_per_kg
    expected = f"A worth of {least:.2f} EUR/kg at least" if least else "worth nothing"
    assert expected in said
    assert "packs a year on." in said or "the first pack on." in said


@pytest.mark.parametrize("unit", ["kg", "lb"])
def test_masses_follow_the_unit_and_the_mark(unit: str) -> None:
    study = replace(RICH, mass_unit=unit, decimal_mark=",")
    said = words(case_of(*CHANGES, study=study), None, known=False)
    mass = "4,0 kg" if unit == "kg" else "8,8 lb"
    assert said.startswith(f"{mass} a pack are promised, worth 120 EUR (40 to 160)")


def test_while_trials_run_nothing_else_is_said() -> None:
    case = case_of(*CHANGES)
    said = words(case, None, known=False)
    assert "being worked out" in said
    assert "P50" not in said
    figures = target_figures(case, None, is_known=False)
    assert [one.text for one in figures].count(COMPUTING) == 3


def test_without_a_proposal_there_is_no_chance() -> None:
    case = case_of()
    said = words(case, None)
    assert said.count("There is no proposal") == 3
    assert said.count("so nothing says how likely it is") == 1
    assert "promised" in said
    shown = {one.key: one.why for one in target_figures(case, None, is_known=True)}
    assert shown["least worth"] == shown["gap left"] == "There is no proposal."
    assert "how likely" in shown["chance of the target"]


def test_without_anything_each_reading_is_a_sentence() -> None:
    case = case_of(study=Study())
    for reading in target_readings(case, None, is_known=True):
        assert reading.heading
        assert all(one.endswith(".") for one in reading.sentences)


def test_what_stays_open_is_the_gap_less_the_saving() -> None:
    case = case_of(*CHANGES)
    said = words(case, trials(case))
    found = case.target.left_range
    assert found is not None
    assert found.likely == case.target.left_kg > 0
    gap, saved = case.gap.gap_range_kg(), case.saving.saved_kg
    assert saved is not None
    assert_allclose((found.low, found.high), (gap[0] - saved.high, gap[1] - saved.low))
    whole = f"{found.likely:.1f} kg ({found.low:.1f} to {found.high:.1f})"
    assert f"After the proposal {whole} of the gap of" in said
    assert_allclose(found.likely, case.gap.gap_kg - saved.likely)


def test_share_and_open_gap_carry_their_ranges() -> None:
    case = case_of(*CHANGES)
    shown = {one.key: one for one in target_figures(case, None, is_known=False)}
    low, high = case.gap.gap_range_kg()
    share, left = shown["target share"], shown["gap left"]
    assert plain(share.span) == f"({400 / high:.0f} to {400 / low:.0f})"
    assert case.target.left_range is not None
    ends = (case.target.left_range.low, case.target.left_range.high)
    assert plain(left.span) == f"({ends[0]:.1f} to {ends[1]:.1f})"
    assert plain(left.whole).startswith(f"{case.target.left_kg:.1f} kg (")
    for key in ("target share", "gap left"):
        figure = explain_worth(case, key)
        assert "JCGM 100:2008" in figure.range_meaning
        assert {"gap low", "gap high"} <= {one.label for one in figure.inputs}


def without_tolerance(case: WorthCase, mass_kg: float) -> WorthCase:
    """Give the case with a reference of this mass, whose tolerance is not known."""
    packs = case.gap.library.packs
    place = packs.position(case.study.reference)
    packs = packs.with_cells("mass_kg", [place], [mass_kg])
    packs = packs.with_cells("mass_known_by", [place], [KnownBy.UNSTATED])
    packs = packs.with_cells("mass_tolerance_kg", [place], [math.nan])
    library = replace(case.gap.library, packs=packs)
    return worth_case(compute(library, case.study))


def test_a_gap_of_no_known_range_leaves_that_of_the_mass_saved() -> None:
    case = without_tolerance(case_of(*CHANGES), 470.0)
    assert math.isnan(case.gap.gap_range_kg()[0])
    shown = {one.key: one for one in target_figures(case, None, is_known=False)}
    assert shown["target share"].span == ""
    assert "is not known" in explain_worth(case, "gap left").range_meaning
    saved, left = case.saving.saved_kg, case.target.left_range
    assert saved is not None
    assert left is not None
    assert_allclose(left.width, saved.width)


def test_a_gap_whose_range_holds_zero_has_a_share_without_an_upper_end() -> None:
    case = case_of(*CHANGES)
    packs = case.gap.library.packs
    place = packs.position(case.study.reference)
    packs = packs.with_cells("mass_tolerance_kg", [place], [200.0])
    case = worth_case(compute(replace(case.gap.library, packs=packs), case.study))
    assert case.gap.gap_range_kg()[0] < 0 < case.gap.gap_kg
    shown = {one.key: one for one in target_figures(case, None, is_known=False)}
    assert shown["target share"].span == ""
    assert "no upper end" in shown["target share"].why
    assert math.isnan(explain_worth(case, "target share").low)
    # Of what stays open nothing is shown below zero.
    assert plain(shown["gap left"].span).startswith("(0.0 to ")


def test_a_gap_closed_by_likely_figures_alone_may_stay_open() -> None:
    case = case_of(*CHANGES)
    saved = case.saving.saved_kg
    assert saved is not None
    packs = case.gap.library.packs
    place = packs.position(case.study.reference)
    # At equal energy each kilogram of the reference counts by 70 of its 80 kWh.
    heavier = 470.0 + (case.gap.gap_kg - 0.9 * saved.likely) * 80 / 70
    packs = packs.with_cells("mass_kg", [place], [heavier])
    case = worth_case(compute(replace(case.gap.library, packs=packs), case.study))
    assert case.target.left_kg < 0
    said = words(case, None, known=False)
    assert case.target.left_range is not None
    most = case.target.left_range.high
    assert f"closes the gap; {most:.1f} kg may stay at most" in said


def test_a_subject_that_is_lighter_leaves_no_gap_to_close() -> None:
    case = case_of(*CHANGES, study=replace(RICH, basis=Basis.AS_WEIGHED))
    assert case.gap.gap_kg < 0
    said = words(case, trials(case))
    assert "closes the gap" not in said
    assert f"{PACK} is not heavier than {case.study.reference}, counted" in said
    left = target_figures(case, None, is_known=False)[-1]
    assert (left.key, left.text) == ("gap left", "\u2013")
    assert "There is no gap to close" in left.why
