"""A busbar filled from a part, and its figures with inputs and sources."""

from __future__ import annotations

import csv
import math
from dataclasses import replace

import pytest

from benchpack.calc import busbar, busbar_growth
from benchpack.errors import DataError
from benchpack.model.library import Library
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.words import Subsystem
from benchpack.places import datasets_folder
from benchpack.results.busbar import ASSUMED, BusbarTrial, prefilled, with_conductor
from benchpack.results.busbar_conductors import (
    ALUMINIUM,
    COPPER,
    Metal,
    conductor_of,
    conductors,
    is_conductor,
    metal_of,
)
from benchpack.results.busbar_figures import busbar_figures

LIBRARY = Library(
    materials=(
        Material(
            "EN AW-6063-T6 extrusion",
            density_kg_m3=2700,
            modulus_gpa=69.5,
            strength_mpa=170,
            conductivity_w_mk=200,
            expansion_1e6_k=23.4,
            mark="confirmed",
        ),
        Material("copper of old stock", strength_mpa=45),
        Material("PBT-GF30", density_kg_m3=1550),
    )
)
BAR = Part(
    "Avocet 81",
    "long busbar",
    subsystem=Subsystem.CONDUCTORS,
    material="copper Cu-ETP",
    mass_each_kg=0.5358,
    thickness_mm=2.0,
    length_mm=1500.0,
)
SOLID = BusbarTrial(length_mm=1000.0, width_mm=20.0, thickness_mm=2.0)


def usual_rows() -> dict[str, dict[str, str]]:
    path = datasets_folder() / "materials.csv"
    with path.open(encoding="utf-8", newline="") as file:
        return {row["material"]: row for row in csv.DictReader(file)}


@pytest.mark.parametrize(
    ("usual", "name"), [(COPPER, "copper Cu-ETP"), (ALUMINIUM, "EN AW-1350 busbar")]
)
def test_usual_metals_are_those_of_the_shipped_table(usual: object, name: str) -> None:
    row = usual_rows()[name]
    heads = {
        "density_kg_m3": "density [kg/m3]",
        "modulus_gpa": "modulus [GPa]",
        "strength_mpa": "strength [MPa]",
        "expansion_1e6_k": "expansion [1e-6/K]",
    }
    for attribute, head in heads.items():
        assert getattr(usual, attribute) == float(row[head]), attribute


def test_shipped_metals_conduct_as_the_usual_ones() -> None:
    """Their thermal conductivity is the one the electrical one is scaled from."""
    rows = usual_rows()
    for name, usual in (("copper Cu-ETP", COPPER), ("EN AW-1350 busbar", ALUMINIUM)):
        heat = float(rows[name]["conductivity [W/(m K)]"])
        library = Library(materials=(Material(name, conductivity_w_mk=heat),))
        found = conductor_of(name, library)
        assert found is not None
        assert found.conductivity_ms_m == usual.conductivity_ms_m


@pytest.mark.parametrize(
    ("name", "metal"),
    [
        ("copper Cu-ETP", Metal.COPPER),
        ("Copper, tinned", Metal.COPPER),
        ("CuZn37", Metal.COPPER),
        ("EN AW-1350 busbar", Metal.ALUMINIUM),
        ("EN-AW 6101", Metal.ALUMINIUM),
        ("aluminum", Metal.ALUMINIUM),
        ("AlSi10MnMg die casting", Metal.ALUMINIUM),
        ("copper-clad aluminium", Metal.ALUMINIUM),
        ("PBT-GF30", None),
        ("Custom blend", None),
        ("alumina ceramic", None),
        ("stainless steel 1.4301", None),
        ("", None),
    ],
)
def test_the_metal_is_read_from_the_name(name: str, metal: Metal | None) -> None:
    assert metal_of(name) is metal


def test_a_conductor_is_of_its_subsystem_or_a_busbar_of_metal() -> None:
    box = replace(BAR, name="junction box Busbar", subsystem=Subsystem.ELECTRONICS)
    assert is_conductor(BAR)
    assert is_conductor(replace(BAR, name="fuse", material=""))
    assert is_conductor(box)
    assert is_conductor(replace(box, name="bus-bar", material="EN AW-1350"))
    assert not is_conductor(replace(box, name="earth strap"))
    assert not is_conductor(replace(box, name="busbar carrier", material="PBT-GF30"))


def test_the_library_comes_first_and_the_usual_metal_fills_the_rest() -> None:
    alloy = conductor_of("EN AW-6063-T6 extrusion", LIBRARY)
    assert alloy is not None
    assert (alloy.modulus_gpa, alloy.strength_mpa) == (69.5, 170)
    # 36 MS/m times 200 over 230 W/(m K); 31 to 33 MS/m is what such an alloy has.
    assert alloy.conductivity_ms_m == pytest.approx(31.3, abs=0.05)
    assert "derived" in alloy.conductivity_source
    assert alloy.source == "material EN AW-6063-T6 extrusion (confirmed)"
    old = conductor_of("copper of old stock", LIBRARY)
    assert old is not None
    assert (old.density_kg_m3, old.conductivity_ms_m) == (8930, 58)
    # A soft metal may not be bent harder than it yields.
    assert (old.strength_mpa, old.allowed_stress_mpa) == (45, 45)
    unlisted = conductor_of("copper Cu-OF", LIBRARY)
    assert unlisted == replace(COPPER, name="copper Cu-OF")
    assert conductor_of("PBT-GF30", LIBRARY) is None
    names = [one.name for one in conductors(LIBRARY)]
    assert names[2:] == ["copper", "aluminium"]


def test_the_width_comes_from_the_mass() -> None:
    """0.5358 kg / (8930 kg/m3 * 2 mm * 1500 mm) = 20.0 mm."""
    filled = prefilled(BAR, LIBRARY)
    assert filled.trial.width_mm == pytest.approx(20.0, rel=1e-12)
    assert filled.notes == (
        "The width is taken from mass, density, thickness and length.",
    )
    assert filled.trial.source("width_mm").startswith("from mass")
    assert filled.trial.source("length_mm") == "recorded with the part"
    assert filled.trial.source("rise_k") == ASSUMED


def test_the_width_comes_from_the_area_where_the_mass_is_not_known() -> None:
    part = replace(BAR, mass_each_kg=None, area_m2=0.045, material="")
    filled = prefilled(part, LIBRARY)
    assert filled.trial.width_mm == pytest.approx(30.0)
    assert filled.notes[0] == (
        "No material is recorded: the figures are those of copper."
    )
    assert filled.notes[1] == "The width is taken from area and length."


def test_what_is_not_recorded_is_said_and_not_guessed() -> None:
    stamped = replace(BAR, length_mm=None, area_m2=0.0038)
    filled = prefilled(stamped, LIBRARY)
    assert math.isnan(filled.trial.length_mm)
    assert math.isnan(filled.trial.width_mm)
    assert filled.notes == (
        "Not recorded: length and width.",
        "Its area, length times width, is 3800 mm².",
    )
    sleeve = replace(BAR, material="silicone rubber")
    filled = prefilled(sleeve, LIBRARY)
    # The density of rubber says nothing of a bar of copper.
    assert math.isnan(filled.trial.width_mm)
    assert filled.trial.conductor is COPPER
    assert "silicone rubber is neither copper nor aluminium" in filled.notes[0]


def test_a_width_beyond_meaning_is_not_taken() -> None:
    odd = replace(BAR, mass_each_kg=90_000.0, length_mm=1.0, thickness_mm=0.01)
    filled = prefilled(odd, LIBRARY)
    assert math.isnan(filled.trial.width_mm)
    assert filled.notes == ("Not recorded: width.",)


def test_figures_are_those_of_the_calculations() -> None:
    trial = replace(SOLID, legs=2, leg_mm=70.0, foils=2, current_a=300.0)
    figures = busbar_figures(trial)
    assert figures.ampacity.value == busbar.ampacity_a(20.0, 2.0)
    assert figures.density.value == 7.5
    assert figures.growth.value == pytest.approx(1.02)
    assert figures.held_stress.value == pytest.approx(120e3 * 17e-6 * 60)
    assert figures.held_force.value == pytest.approx(40 * 122.4)
    assert figures.yield_force_n == 40 * 70
    leg = {"thickness_mm": 2.0, "modulus_gpa": 120.0, "foils": 2}
    assert figures.leg_force.value == pytest.approx(
        busbar_growth.leg_force_n(0.51, leg_mm=70.0, width_mm=20.0, **leg)
    )
    assert figures.leg_stress.value == pytest.approx(
        busbar_growth.leg_stress_mpa(0.51, leg_mm=70.0, **leg)
    )
    assert figures.bar_force_m.value == pytest.approx(250.0)
    assert figures.bar_force.value == pytest.approx(250.0)
    assert figures.short_time.value == pytest.approx(134.8 * 40, rel=1e-3)
    bowing = busbar_growth.bowing_force_n(
        1000.0, width_mm=20.0, thickness_mm=2.0, modulus_gpa=120.0, foils=2
    )
    assert figures.bowing_force.value == bowing


def test_without_a_leg_the_shortest_one_is_tried() -> None:
    figures = busbar_figures(SOLID)
    assert figures.leg_stress.value == pytest.approx(60.0)
    leg = next(i for i in figures.leg_force.inputs if i.label == "l, leg")
    assert leg.value == figures.least_leg.value
    assert leg.source == "the shortest that the stress allows"
    assert figures.density.value == pytest.approx(figures.ampacity.value / 40.0)


def test_the_ampacity_says_how_far_it_holds() -> None:
    copper = busbar_figures(SOLID).ampacity
    assert copper.low == pytest.approx(0.9 * copper.value)
    assert copper.high == pytest.approx(1.1 * copper.value)
    assert "Publication 22" in copper.source
    assert "derived" not in copper.source
    other = busbar_figures(with_conductor(SOLID, ALUMINIUM)).ampacity
    assert other.value == pytest.approx(copper.value * math.sqrt(36 / 58))
    assert "derived" in other.source
    assert "s, conductivity" in [i.label for i in other.inputs]


def test_every_figure_has_formula_inputs_units_and_source() -> None:
    figures = busbar_figures(SOLID).every()
    assert len({figure.key for figure in figures}) == len(figures) == 12
    for figure in figures:
        assert math.isfinite(figure.value), figure.key
        assert figure.formula
        assert figure.unit
        assert figure.source
        assert figure.missing == ""
        assert figure.inputs
        assert all(math.isfinite(one.value) and one.source for one in figure.inputs)


def test_a_figure_without_its_inputs_says_which() -> None:
    figures = busbar_figures(replace(BusbarTrial(), allowed_stress_mpa=math.nan))
    assert figures.ampacity.missing == "Not known: width, thickness."
    assert figures.growth.missing == "Not known: length."
    assert figures.leg_force.missing == (
        "Not known: length, width, thickness, allowed stress."
    )
    assert math.isnan(figures.ampacity.low)
    assert math.isfinite(figures.bar_force_m.value)


def test_a_metal_that_does_not_grow_needs_no_leg() -> None:
    still = replace(COPPER, expansion_1e6_k=0.0)
    figures = busbar_figures(replace(SOLID, conductor=still))
    assert figures.least_leg.value == 0.0
    assert math.isnan(figures.leg_force.value)
    assert figures.leg_force.missing == "It does not come of these figures."


def test_figures_that_cannot_stand_are_refused() -> None:
    with pytest.raises(DataError) as refused:
        BusbarTrial(length_mm=-3.0, foils=1.5, duration_s=60.0)
    said = [problem.what for problem in refused.value.problems]
    assert said[0] == "length is -3 mm."
    assert len(said) == 3


def test_a_metal_brings_the_stress_it_may_be_bent_with() -> None:
    assert with_conductor(SOLID, ALUMINIUM).allowed_stress_mpa == 30.0
    assert with_conductor(SOLID, COPPER).allowed_stress_mpa == 60.0
