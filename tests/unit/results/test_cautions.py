"""Each thing that spoils a comparison is said, and only then."""

from __future__ import annotations

from typing import Any

import pytest

from benchpack.model.boundary import parse_boundary
from benchpack.model.pack import Pack
from benchpack.model.study import Study
from benchpack.model.words import Basis, EnergyBasis, KnownBy, Subsystem
from benchpack.results.cautions import row_warnings
from benchpack.results.explain import explain
from benchpack.results.library_check import library_problems
from benchpack.results.results import compute
from tests.unit.results.packs import bench, library, pack, part

ALIKE = {
    "energy_tolerance_kwh": 0.1,
    "boundary": parse_boundary("coolant=out; bottom shield=out; onboard charger=out"),
}


def sound(name: str, energy_kwh: float, mass_kg: float, **more: Any) -> Pack:
    """Give a pack of which everything is known that a comparison asks for."""
    return pack(name, energy_kwh, mass_kg, **{**ALIKE, **more})


def cautions(*packs: Pack, **study: Any) -> dict[str, str]:
    """Give the cautions about the first pack against the second, by column."""
    question = {"subject": packs[0].name, "reference": packs[1].name, **study}
    results = compute(library(*packs), Study(**question))
    return {problem.column: problem.what for problem in results.cautions}


@pytest.mark.parametrize(
    ("column", "subject", "reference"),
    [
        ("year", {"year": 2018}, {"year": 2023}),
        ("voltage", {"voltage_v": 350}, {"voltage_v": 700}),
        ("chemistry", {"chemistry": "NMC 811"}, {"chemistry": "LFP"}),
        ("boundary", {}, {"boundary": parse_boundary("")}),
        ("boundary", {}, {"boundary": parse_boundary("coolant=out")}),
        ("energy basis", {}, {"energy_basis": EnergyBasis.UNKNOWN}),
        ("energy basis", {}, {"energy_basis": EnergyBasis.USABLE}),
        ("energy +-", {}, {"energy_tolerance_kwh": None}),
        ("mass known by", {}, {"mass_known_by": KnownBy.LITERATURE}),
        ("mass known by", {}, {"mass_known_by": KnownBy.UNSTATED}),
        ("mass +-", {}, {"mass_tolerance_kg": 60}),
        ("cells mass", {"cells_mass_kg": 140}, {}),
        ("state of health", {}, {"state_of_health_pct": 92}),
    ],
)
def test_a_doubt_is_said_once_and_alone(
    column: str, subject: dict[str, Any], reference: dict[str, Any]
) -> None:
    first, second = sound("Heron", 70, 440), sound("Egret", 69, 420)
    assert cautions(first, second) == {}
    found = cautions(
        sound("Heron", 70, 440, **subject), sound("Egret", 69, 420, **reference)
    )
    assert set(found) - {"mass +-"} == {column} - {"mass +-"}
    assert column in found


@pytest.mark.parametrize(
    ("subject", "reference"),
    [
        ({"year": 2020}, {"year": 2023}),
        ({"voltage_v": 350}, {"voltage_v": 400}),
        ({"chemistry": "NMC 811"}, {"chemistry": "nmc 622"}),
        ({"state_of_health_pct": 100}, {"state_of_health_pct": 99}),
    ],
)
def test_small_differences_are_no_doubt(
    subject: dict[str, Any], reference: dict[str, Any]
) -> None:
    assert not cautions(
        sound("Heron", 70, 440, **subject), sound("Egret", 69, 420, **reference)
    )


def test_a_pound_read_as_a_kilogram_is_suspected() -> None:
    """420 kg are 925.9 lb (NIST SP 811); both densities alone look usual."""
    found = cautions(sound("Heron", 70, 440), sound("Egret", 69, 925.9))
    assert found["mass"] == "Heron is 2.1 times as dense as Egret."


def test_energies_without_tolerance_matter_only_where_they_enter() -> None:
    loose = [
        sound("Heron", 70, 440, energy_tolerance_kwh=None),
        sound("Egret", 70, 420),
    ]
    assert cautions(*loose)
    assert not cautions(*loose, basis=Basis.AS_WEIGHED)


def test_a_range_over_zero_is_said_with_its_ends() -> None:
    first = sound("Heron", 70, 422, mass_tolerance_kg=3)
    found = cautions(first, sound("Egret", 70, 420, mass_tolerance_kg=0))
    # 2 kg of a range of twice sqrt(3) kg and what the energies add.
    assert "includes zero" in found["mass +-"]


def test_figures_in_cautions_follow_the_study() -> None:
    first = sound("Heron", 70, 460)
    second = sound("Egret", 80, 470)
    found = cautions(first, second, mass_unit="lb", decimal_mark=",")
    assert found["basis"] == (
        "The gap to Egret is as weighed \u221222,0\u00a0lb and at equal energy "
        "+107,5\u00a0lb."
    )


def test_files_hold_kilograms_points_and_hyphens() -> None:
    records = library(sound("Heron", 70, 14600), sound("Egret", 80, 15700))
    study = Study(subject="Heron", reference="Egret", mass_unit="lb", decimal_mark=",")
    comparison = compute(records, study).comparison
    assert comparison is not None
    text = next(row_warnings(records, comparison))
    assert "as weighed -1100.0 kg and at equal energy +862.5 kg" in text


def test_a_row_names_the_pack_that_each_warning_is_about() -> None:
    records = library(sound("Heron", 70, 460), sound("Egret", 80, 47, year=1950))
    comparison = compute(records, Study(subject="Heron", reference="Egret")).comparison
    assert comparison is not None
    text = next(row_warnings(records, comparison))
    assert "Egret: The pack comes to 1702 Wh/kg" in text
    assert "Egret: year is 1950" in text


def test_another_unit_is_followed_at_once() -> None:
    records, study = bench()
    first = compute(records, study)
    in_lb = Study(subject="Heron 70", reference="Egret 80", mass_unit="lb")
    assert "lb" in compute(records, in_lb, previous=first).cautions[0].what


def test_an_empty_figure_says_why_in_its_row() -> None:
    records = library(
        sound("Heron", 70, 440, cells_mass_kg=300),
        sound("Egret", 69, 420),
        sound("Ibis", 60, 380, cells_mass_kg=250),
    )
    comparison = compute(records, Study(subject="Heron", reference="Ibis")).comparison
    assert comparison is not None
    rows = dict(zip(comparison.names, row_warnings(records, comparison), strict=True))
    assert "cells of Egret is not known, so there is no scaled gap." in rows["Egret"]
    assert "A trend needs at least 3 peers" in rows["Ibis"]
    assert "is not known" not in rows["Ibis"]


def test_the_reason_of_another_reference_is_its_own() -> None:
    records = library(
        sound("Heron", 70, 440, cells_mass_kg=300),
        sound("Egret", 69, 420),
        sound("Ibis", 60, 380, energy_basis=EnergyBasis.USABLE),
    )
    results = compute(records, Study(subject="Heron", reference="Ibis"))
    assert "different bases" in explain(results, "gap").missing
    scaled = explain(results, "gap scaled", reference="Egret")
    assert "cells of Egret" in scaled.missing
    assert explain(results, "gap", reference="Egret").missing == ""


def test_cells_of_the_record_and_of_the_parts_have_to_agree() -> None:
    """The only identity of a pack's cells that the record can be held against."""

    def said(cells_kg: float) -> list[str]:
        records = library(
            pack("Heron", 70, 460, cells_mass_kg=300),
            parts=(
                part("Heron", "cell", cells_kg, Subsystem.CELLS),
                part("Heron", "rest", 460 - cells_kg, Subsystem.OTHER),
            ),
        )
        return [problem.what for problem in library_problems(records)]

    assert said(298) == []
    (text,) = said(290)
    assert text.startswith("The cells of Heron are recorded with 300.0 kg, its parts")
    assert text.endswith("with 290.0 kg.")


def test_a_subject_is_not_measured_against_itself() -> None:
    records, study = bench(reference="Heron 70")
    results = compute(records, study)
    assert results.missing is not None
    assert results.missing.what == "Heron 70 is measured against itself."


def test_a_trend_says_what_is_wrong_with_it() -> None:
    wet = parse_boundary("coolant=in 6; bottom shield=out; onboard charger=out")
    peers = [sound(f"Tern {i}", 50 + 5 * i, 330 + 31 * i) for i in range(3)]
    found = cautions(
        sound("Heron", 90, 560),
        sound("Egret", 52, 352, boundary=wet),
        *peers,
        sound("Knot", 60, 395, energy_basis=EnergyBasis.UNKNOWN),
        basis=Basis.TREND,
    )
    assert found["trend"] == "The trend rests on 5 peers only."
    assert found["energy"].startswith("The 90.0\u00a0kWh of Heron lie outside")
    assert found["energy basis"].endswith("4 gross and 1 unknown.")
    assert "1 of 5 peers was not weighed like Heron" in found["boundary"]
    assert not {"trend", "energy"} & set(cautions(sound("Heron", 90, 560), *peers))
