"""Everything of one study in one pass."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from benchpack.errors import RequestError
from benchpack.model.boundary import parse_boundary
from benchpack.model.words import Basis, EnergyBasis, KnownBy, Subsystem
from benchpack.results.cautions import row_warnings
from benchpack.results.closure import Grade, closure_of
from benchpack.results.explain import EXPLAINED, explain
from benchpack.results.library_check import library_problems
from benchpack.results.pair_cautions import bases_disagree
from benchpack.results.results import compute
from tests.unit.results.packs import bench, library, pack, part


def test_a_tick_of_the_worth_takes_the_gaps_over() -> None:
    records, study = bench()
    first = compute(records, study)
    second = compute(records, replace(study, worth_high_per_kg=9), previous=first)
    assert second.comparison is first.comparison
    assert second.valuation is not None
    assert second.comparison is not None
    assert_allclose(second.valuation.high, 9 * second.comparison.gap_kg)


@pytest.mark.parametrize(
    "change", [{"basis": Basis.SCALED}, {"exponent": 0.7}, {"reference": "Crane 100"}]
)
def test_any_other_change_computes_anew(change: dict[str, object]) -> None:
    records, study = bench()
    first = compute(records, study)
    other = replace(study, **change)  # type: ignore[arg-type]  # checked by Study
    again = compute(records, other, previous=first)
    fresh = compute(records, other)
    assert again.comparison is not first.comparison
    assert_allclose(again.gap_kg, fresh.gap_kg)


def test_edited_packs_are_never_answered_from_before() -> None:
    records, study = bench()
    first = compute(records, study)
    heavier = replace(records, packs=records.packs.with_cells("mass_kg", [0], [470.0]))
    second = compute(heavier, study, previous=first)
    assert_allclose(second.gap_kg, first.gap_kg + 10)


def test_what_joints_are_reckoned_with_leaves_the_gaps_alone() -> None:
    records, study = bench()
    first = compute(records, study)
    other = replace(
        study,
        labour_rate_per_h=80.0,
        station_rate_per_h=0.0,
        takt_time_s=240.0,
        thread_friction=0.1,
        head_friction=0.14,
    )
    second = compute(records, other, previous=first)
    assert second.comparison is first.comparison
    assert second.cautions is first.cautions
    assert second.study is other
    third = compute(records, replace(other, exponent=0.6), previous=second)
    assert third.comparison is not first.comparison


@given(worth=st.floats(0, 1000), share=st.floats(0, 1), factor=st.floats(0, 10))
@settings(deadline=None)
def test_value_is_linear_in_worth(worth: float, share: float, factor: float) -> None:
    records, study = bench()
    likely = replace(
        study,
        worth_low_per_kg=0,
        worth_likely_per_kg=worth,
        worth_high_per_kg=1e5,
        share_captured=share,
    )
    once = compute(records, likely).valuation
    more = compute(records, replace(likely, worth_likely_per_kg=factor * worth))
    assert once is not None
    assert more.valuation is not None
    assert_allclose(more.valuation.likely, factor * once.likely, atol=1e-9)


def test_half_captured_is_worth_half() -> None:
    records, study = bench()
    whole = compute(records, study).valuation
    half = compute(records, replace(study, share_captured=0.5)).valuation
    assert whole is not None
    assert half is not None
    assert_allclose(half.likely, whole.likely / 2)


def test_rows_of_the_subsystem_split_sum_to_the_gap() -> None:
    records = library(
        pack("Heron 70", 70, 460),
        pack("Egret 80", 80, 470),
        parts=(
            part("Heron 70", "cells", 300, Subsystem.CELLS),
            part("Heron 70", "tray", 60, Subsystem.TRAY),
            part("Egret 80", "cells", 310, Subsystem.CELLS),
            part("Egret 80", "lid", 20, Subsystem.LID),
        ),
    )
    results = compute(records, bench()[1])
    split, comparison = results.split, results.comparison
    assert split is not None
    assert comparison is not None
    assert split.is_recorded
    assert split.names[-1] == "unaccounted"
    assert_allclose(split.gaps.as_weighed_kg.sum(), -10, rtol=1e-9)
    assert_allclose(split.gaps.equal_energy_kg.sum(), 48.75, rtol=1e-9)
    by_name = dict(zip(split.names, split.gaps.as_weighed_kg, strict=True))
    assert_allclose(by_name["tray"], 60)
    assert_allclose(by_name["lid"], -20)


@pytest.mark.parametrize(
    ("mass_kg", "grade"),
    [(459, Grade.GOOD), (453, Grade.LOOK), (440, Grade.FAIL), (475, Grade.FAIL)],
)
def test_closure_is_graded_by_what_is_missing(mass_kg: float, grade: Grade) -> None:
    records = library(
        pack("Heron 70", 70, 460),
        parts=(part("Heron 70", "all of it", mass_kg, Subsystem.OTHER),),
    )
    closure = closure_of(records, "Heron 70")
    assert closure.grade is grade
    assert_allclose(closure.unaccounted_kg, 460 - mass_kg)


def test_a_pack_without_parts_has_no_grade() -> None:
    closure = closure_of(library(pack("Heron 70", 70, 460)), "Heron 70")
    assert closure.grade is Grade.NONE
    assert math.isnan(closure.ratio)


def test_no_reference_is_a_sentence_not_an_error() -> None:
    records, study = bench(reference="Stork 90")
    results = compute(records, study)
    assert results.missing is not None
    assert "Stork 90" in results.missing.what
    assert math.isnan(results.gap_kg)


def test_an_empty_library_is_a_sentence_not_an_error() -> None:
    results = compute(library(), bench(subject="", reference="")[1])
    assert results.comparison is None
    assert results.missing is not None


def test_missing_cells_are_named_for_the_bases_that_need_them() -> None:
    records = library(pack("Heron 70", 70, 460), pack("Egret 80", 80, 470))
    results = compute(records, bench(basis=Basis.STRUCTURE)[1])
    assert results.missing is not None
    assert "Heron 70 and Egret 80" in results.missing.what


def test_mixed_energy_bases_are_named() -> None:
    records = library(
        pack("Heron 70", 70, 460),
        pack("Egret 80", 80, 470, energy_basis=EnergyBasis.USABLE),
    )
    results = compute(records, bench()[1])
    assert results.missing is not None
    assert "gross" in results.missing.what
    assert any(p.column == "energy basis" for p in results.cautions)


def test_bases_that_disagree_are_told() -> None:
    records, study = bench()
    results = compute(records, study)
    comparison = results.comparison
    assert comparison is not None
    assert results.place is not None
    assert bases_disagree(comparison, results.place)
    assert "at equal energy +48.8\u00a0kg" in results.cautions[0].what


def test_troublesome_records_draw_cautions() -> None:
    records = library(
        pack("Heron 70", 70, 460, state_of_health_pct=92, year=2020),
        pack(
            "Egret 80",
            80,
            470,
            mass_known_by=KnownBy.ESTIMATE,
            cells_mass_kg=460,
            energy_basis=EnergyBasis.UNKNOWN,
            year=2026,
        ),
    )
    results = compute(records, bench()[1])
    columns = {problem.column for problem in results.cautions}
    assert {
        "state of health",
        "mass known by",
        "cells mass",
        "energy basis",
        "year",
    } <= columns
    comparison = results.comparison
    assert comparison is not None
    assert "92 % state of health" in next(row_warnings(records, comparison))


def test_a_sound_pair_draws_no_caution() -> None:
    known = {
        "energy_tolerance_kwh": 0.5,
        "boundary": parse_boundary(
            "coolant=out; bottom shield=out; onboard charger=out"
        ),
    }
    records = library(
        pack("Heron 70", 70, 460, **known), pack("Egret 69", 69, 430, **known)
    )
    results = compute(records, bench(reference="Egret 69")[1])
    assert results.cautions == ()


@pytest.mark.parametrize("key", EXPLAINED)
def test_every_figure_says_where_it_comes_from(key: str) -> None:
    records, study = bench(worth_reason="agreed with purchasing")
    figure = explain(compute(records, study), key)
    assert math.isfinite(figure.value)
    assert figure.unit
    assert figure.formula
    assert figure.inputs
    assert figure.source


def test_a_figure_can_be_computed_again_from_its_inputs() -> None:
    records, study = bench()
    figure = explain(compute(records, study), "density share")
    values = {item.label.split(",")[0]: item.value for item in figure.inputs}
    again = values["m_s"] - values["m_r"] * values["E_s"] / values["E_r"]
    assert_allclose(figure.value, again)
    assert figure.low < figure.value < figure.high


def test_an_unknown_key_is_refused() -> None:
    records, study = bench()
    with pytest.raises(RequestError, match="no figure"):
        explain(compute(records, study), "beauty")


def test_a_library_is_checked_as_a_whole() -> None:
    records = library(
        pack("Heron 70", 70, 460),
        pack("Egret 80", 80, 47),
        parts=(part("Heron 70", "tray", 60, Subsystem.TRAY),),
    )
    problems = library_problems(records)
    assert {problem.record for problem in problems} == {"Heron 70", "Egret 80"}
    assert any("13.0 %" in problem.what for problem in problems)
    assert any("Wh/kg" in problem.what for problem in problems)


def test_ten_thousand_packs_are_one_pass() -> None:
    rng = np.random.default_rng(1)
    energies = rng.uniform(40, 110, 10_000)
    records = library(
        *(
            pack(f"Tern {i}", float(energy), float(6 * energy + 30))
            for i, energy in enumerate(energies)
        )
    )
    results = compute(records, bench(subject="Tern 0", reference="Tern 1")[1])
    assert results.comparison is not None
    assert len(results.comparison) == 9_999
    assert np.all(np.isfinite(results.comparison.gap_kg))
