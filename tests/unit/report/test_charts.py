"""What the charts are told: the study's units and mark, and findings that are true."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from benchpack.model.boundary import parse_boundary
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.model.words import Basis, EnergyBasis, Subsystem, TrendKind
from benchpack.report.display import Display
from benchpack.report.gap_charts import (
    energy_mass_spec,
    gap_bars_spec,
    waterfall_spec,
)
from benchpack.report.worth_charts import fan_spec, value_bars_spec
from benchpack.results.results import compute
from tests.unit.results.packs import bench, library, pack, part

BUILDERS = (energy_mass_spec, gap_bars_spec, waterfall_spec, fan_spec, value_bars_spec)


@pytest.mark.parametrize("build", BUILDERS, ids=lambda build: build.__name__)
def test_every_chart_follows_the_study(build: object) -> None:
    records, study = bench(decimal_mark=",", mass_unit="lb")
    spec = build(compute(records, study))  # type: ignore[operator]  # a builder
    assert not spec.is_empty
    assert spec.decimal_mark == ","
    assert spec.title
    labels = f"{getattr(spec, 'axis_label', '')} {getattr(spec, 'y_label', '')}"
    assert "[lb]" in labels or "[EUR]" in labels


@pytest.mark.parametrize("build", BUILDERS, ids=lambda build: build.__name__)
def test_nothing_to_compare_is_one_sentence(build: object) -> None:
    spec = build(compute(library(), Study()))  # type: ignore[operator]  # a builder
    assert spec.is_empty
    assert spec.empty_sentence.startswith("No subject is chosen.")


def test_steps_add_up_to_the_gap_as_weighed() -> None:
    records, study = bench()
    results = compute(records, study)
    spec = waterfall_spec(results)
    assert spec.kinds[-1] == "sum"
    assert_allclose(spec.values[:-1].sum(), spec.values[-1], rtol=1e-9)
    assert_allclose(spec.values[-1], -10)


def test_pounds_leave_the_densities_alone() -> None:
    records, study = bench(mass_unit="lb")
    spec = energy_mass_spec(compute(records, study))
    assert_allclose(spec.ray_factor * spec.energy / spec.mass, 1000 * 70 / 460, atol=50)
    first = spec.ray_factor * spec.energy[0] / spec.mass[0]
    assert_allclose(first, 1000 * 70 / 460)


def test_the_trend_basis_shows_one_bar() -> None:
    records, study = bench(basis=Basis.TREND)
    spec = gap_bars_spec(compute(records, study))
    assert spec.names == ("trend of 3 peers",)
    assert len(spec.gap) == 1


@pytest.mark.parametrize(
    ("count", "title"),
    [(1, "1 of 1 peer is denser than Heron"), (2, "2 of 2 peers are denser than")],
)
def test_titles_count_right(count: int, title: str) -> None:
    peers = [pack(f"Egret {i}", 80, 400) for i in range(count)]
    records = library(pack("Heron", 70, 460), *peers)
    results = compute(records, Study(subject="Heron", reference="Egret 0"))
    assert energy_mass_spec(results).title.startswith(title)


def test_the_fan_passes_through_gap_and_target() -> None:
    records, study = bench(target_kg=20.0, share_captured=0.5)
    spec = fan_spec(compute(records, study))
    likely = np.interp(48.75, spec.saved, spec.likely)
    whole = next(point for point in spec.points if point.name == "whole gap")
    assert_allclose(whole.value, likely)
    assert spec.target is not None
    assert_allclose(spec.target.value, 60)
    assert any("50" in point.name for point in spec.points)


def test_no_gap_and_no_target_say_what_to_do() -> None:
    records, study = bench(subject="Egret 80", reference="Heron 70")
    spec = fan_spec(compute(records, study))
    assert spec.is_empty
    assert "nothing to save" in spec.empty_sentence


def test_titles_and_notes_of_peers_that_cannot_be_compared() -> None:
    records = library(
        pack("Heron", 70, 460),
        pack("Egret", 80, 400, energy_basis=EnergyBasis.USABLE),
    )
    results = compute(records, Study(subject="Heron", reference="Egret"))
    title = energy_mass_spec(results).title
    assert title == "Heron and its peers cannot be compared in energy"
    bars = gap_bars_spec(results)
    assert bars.title == "No gap can be counted at equal energy"
    assert bars.note == "Not counted: 1 on another energy basis."
    steps = waterfall_spec(results)
    assert steps.title == "The gap as weighed, its energy share not known"
    assert "Hatched" not in steps.note
    assert value_bars_spec(results).title == "No gap can be valued"


def test_a_peer_on_another_energy_basis_is_not_called_denser() -> None:
    records = library(
        pack("Heron", 70, 460),
        pack("Egret", 80, 400, energy_basis=EnergyBasis.USABLE),
        pack("Ibis", 60, 410),
    )
    results = compute(records, Study(subject="Heron", reference="Ibis"))
    title = energy_mass_spec(results).title
    assert title == "No peer is denser than Heron"


def test_a_trend_through_few_peers_gives_its_wide_range() -> None:
    records, study = bench(basis=Basis.TREND, trend=TrendKind.THEIL_SEN)
    results = compute(records, study)
    low, high = results.gap_range_kg()
    note = gap_bars_spec(results).note.replace("\u00a0", " ").replace("\u2212", "-")
    assert f"95 % range by Student t: {low:+.1f} kg to {high:+.1f} kg." in note
    assert "with about 95 % chance" in energy_mass_spec(results).note
    assert value_bars_spec(results).title.startswith("The gap to the trend is")


def test_the_gap_as_weighed_is_valued_with_what_it_carries() -> None:
    records = library(pack("Heron", 82, 489), pack("Egret", 75, 439))
    question = Study(subject="Heron", reference="Egret", basis=Basis.AS_WEIGHED)
    note = fan_spec(compute(records, question)).note.replace("\u00a0", " ")
    assert note.endswith(
        "41.0 kg of the gap as weighed carries energy and is no saving."
    )
    none = replace(question, share_captured=0.0)
    assert fan_spec(compute(records, none)).title.startswith("None of the gap")


def test_steps_name_what_was_taken_out_and_what_has_no_mass() -> None:
    records = library(
        pack("Heron", 70, 460, boundary=parse_boundary("coolant=in 6")),
        pack("Egret", 80, 470, boundary=parse_boundary("coolant=out")),
        parts=(
            part("Heron", "tray", 60, Subsystem.TRAY),
            Part("Heron", "foil"),
            part("Egret", "tray", 50, Subsystem.TRAY),
        ),
    )
    results = compute(records, Study(subject="Heron", reference="Egret"))
    note = waterfall_spec(results).note.replace("\u00a0", " ")
    assert "Taken out for the boundary: 6.0 kg of coolant (Heron)." in note
    assert "Unaccounted holds 1 part or joint without a mass." in note


def test_a_range_of_money_starts_with_its_lower_end() -> None:
    text = Display(Study()).money_range_text(-311.0, -104.0, -623.0)
    assert text == "\u2212311\u00a0EUR (\u2212623 to \u2212104)"
