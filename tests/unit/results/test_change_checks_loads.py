"""Checks of panels and beams under load, before and after a change."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchpack.model.change import ChangeKind
from benchpack.model.ranges import Range
from benchpack.results.change_checks import LoadCase
from benchpack.results.change_checks_sag import LOADS, Panel, panel_of, sag_of
from benchpack.results.change_checks_section import section_of
from benchpack.results.change_checks_words import Sides, sides_of
from benchpack.results.check import Check
from benchpack.results.closure import Grade
from tests.unit.results.change_samples import (
    ALUMINIUM,
    FLOOR,
    LID,
    PARTS,
    RAIL,
    SMC,
    STEEL,
    bench,
    change,
    checked,
    into,
    part,
    plain,
    swapped,
    without,
)

LIGHT = (LoadCase("0.5 kPa", 0.5, "a test"),)


def figures(check: Check) -> dict[str, float]:
    return {one.label: one.value for one in check.figures}


def test_a_metre_of_water_is_the_first_load() -> None:
    assert LOADS[0].pressure_kpa == pytest.approx(9.8, abs=0.01)
    assert [load.name for load in LOADS] == ["1 m of water", "1 kPa spread evenly"]


def test_a_thin_plate_is_that_of_the_textbook() -> None:
    """Timoshenko: square, supported, 0.00406 q a^4 / D; well within half the wall."""
    square = Panel(Sides(300.0, 300.0, ""), 4.0, 70.0, 0.3, 200.0)
    sag = sag_of(square, 1.0)
    rigidity = 70_000 * 4.0**3 / (12 * (1 - 0.09))
    thin = 0.00406 * 1e-3 * 300.0**4 / rigidity
    assert sag.is_thin_plate
    assert sag.thin_plate_mm == pytest.approx(thin, rel=2e-3)
    assert sag.deflection_mm == pytest.approx(thin, rel=5e-3)
    # Six times the moment of 0.0479 q a^2 over t^2.
    assert sag.stress_mpa == pytest.approx(6 * 0.0479 * 1e-3 * 300**2 / 16, rel=0.02)


def test_a_lid_under_water_carries_as_a_membrane() -> None:
    """0.8 mm steel over 1.7 by 1 m: bending alone would say 6 m, the sheet gives 13 mm.

    It lies between a square of 1 m, ``1.994 (1 - 0.271 nu)`` of bulge tests
    (Maier-Schneider 1995, from memory), and an endless strip, which is exact.
    """
    sag = sag_of(panel_of(LID, STEEL), LOADS[0].pressure_kpa)
    load, half = LOADS[0].pressure_kpa / 1000, 500.0
    square = 1.994 * (1 - 0.271 * 0.3) * 210_000 * 0.8 / 0.7
    strip = 4 / 3 * 210_000 * 0.8 / (1 - 0.09)
    bounds = [
        half * (load * half / stiffness) ** (1 / 3) for stiffness in (square, strip)
    ]
    assert not sag.is_thin_plate
    assert sag.thin_plate_mm > 5000
    assert bounds[0] < sag.deflection_mm < bounds[1]
    assert 60 < sag.stress_mpa < 150


def test_equal_bending_stiffness_is_not_equal_deflection_far_out() -> None:
    """At equal E t^3 the sheet's E t falls: (147/14.6)^(1/3) times as far for SMC."""
    check = checked(into("SMC GF25"))["panel deflection"]
    found = figures(check)
    times = found["1 m of water, after"] / found["1 m of water, today"]
    stretch = (210.0 * 0.8) / (found["E after, design modulus of SMC GF25"] * 2.548)
    assert times == pytest.approx(stretch ** (1 / 3), rel=0.01)
    assert check.grade is Grade.LOOK
    said = plain(check.words)
    assert "1 m of water presses 2.5 mm SMC GF25 in by" in said
    assert "far beyond half the wall, where thin-plate theory ends" in said
    assert "Span 1700 by 1000 mm, by length and area" in said
    assert check.remedy.startswith("See that ")


def test_equal_stiffness_is_equal_deflection_of_a_thin_plate() -> None:
    small = replace(FLOOR, area_m2=0.04, length_mm=200.0)
    library = bench(parts=swapped(PARTS, FLOOR, small))
    check = checked(into("PP-LGF40", "floor"), library, loads=LIGHT)["panel deflection"]
    found = figures(check)
    assert found["0.5 kPa, after"] == pytest.approx(found["0.5 kPa, today"], rel=5e-3)
    assert check.grade is Grade.GOOD
    assert check.remedy == ""
    assert "thin-plate" not in check.words


def test_a_stress_above_the_design_strength_fails() -> None:
    weak = without(SMC, strength_mpa=20.0)
    check = checked(into("SMC GF25"), bench(materials=weak))["panel deflection"]
    assert check.grade is Grade.FAIL
    assert check.remedy == "Ribs, a closer span, or a stronger wall."


def test_more_mass_of_ones_own_bends_less() -> None:
    heavy = into("SMC GF25", mass_kg=Range.exactly(16.0))
    found = figures(checked(heavy)["panel deflection"])
    computed = figures(checked(into("SMC GF25"))["panel deflection"])
    assert found["wall after"] > 1.9 * computed["wall after"]
    assert found["1 m of water, after"] < computed["1 m of water, after"]


def test_without_a_length_a_part_counts_as_a_square() -> None:
    sides = sides_of(replace(LID, length_mm=None))
    assert sides.length_mm == pytest.approx(1303.8, abs=0.1)
    assert sides.words == "a square of its area"


def test_what_a_panel_lacks_is_asked_for() -> None:
    library = bench(parts=swapped(PARTS, LID, replace(LID, area_m2=None)))
    check = checked(into("SMC GF25"), library)["panel deflection"]
    assert (check.grade, check.remedy) == (Grade.NONE, "Record the area of lid.")
    library = bench(materials=without(SMC, strength_mpa=None))
    check = checked(into("SMC GF25"), library)["panel deflection"]
    assert check.grade is Grade.LOOK
    assert check.remedy.endswith("Record the strength of SMC GF25.")
    assert "its strength is not recorded" in check.words


@settings(deadline=None, max_examples=30)
@given(
    wall=st.floats(0.5, 10.0),
    side=st.floats(200.0, 2000.0),
    load=st.floats(0.1, 50.0),
    ribs=st.floats(1.0, 10.0),
)
def test_ribs_and_a_lighter_load_never_make_it_worse(
    wall: float, side: float, load: float, ribs: float
) -> None:
    plain_panel = Panel(Sides(1.5 * side, side, ""), wall, 6.5, 0.3, 28.0)
    ribbed = replace(plain_panel, stiffness_shape=ribs, strength_shape=ribs)
    flat, stiff = sag_of(plain_panel, load), sag_of(ribbed, load)
    assert stiff.deflection_mm <= flat.deflection_mm * (1 + 1e-9)
    assert sag_of(plain_panel, load / 2).deflection_mm < flat.deflection_mm
    assert flat.deflection_mm <= flat.thin_plate_mm * (1 + 1e-9)


def test_a_section_is_the_hollow_square_of_its_mass() -> None:
    """80 by 80 by 3 aluminium: 924 mm2, 2.495 kg/m, from which the side comes back."""
    square = part(
        "box", 924 * 1500 * 2700e-9, thickness_mm=3.0, length_mm=1500.0, governs=""
    )
    assert section_of(square, ALUMINIUM)[0] == pytest.approx(80.0)
    solid = replace(square, thickness_mm=30.0)
    side, wall = section_of(solid, ALUMINIUM)
    assert side == pytest.approx(924**0.5)
    assert wall == pytest.approx(side / 2)
    assert math.isnan(section_of(replace(square, thickness_mm=None), ALUMINIUM)[0])


def test_a_beam_of_equal_stiffness_bends_as_far_and_needs_more_room() -> None:
    """Beam bending stiffness hot: PP-LGF40 1.97 of the aluminium (trade table 6.2)."""
    found = checked(into("PP-LGF40", "rail"))
    check = found["beam"]
    numbers = figures(check)
    assert numbers["deflection after"] == pytest.approx(numbers["deflection today"])
    # The area grows by (E1/E2)^(1/2), so that each side grows by its root.
    assert numbers["side after"] / numbers["side today"] == pytest.approx(
        (69.5 / 3.6) ** 0.25
    )
    assert check.grade is Grade.LOOK
    assert check.remedy == "See that there is room for the larger section."
    masses = figures(found["equal function"])
    ratio = masses["mass by design values"] / masses["mass today"]
    assert ratio == pytest.approx(1.97, abs=0.01)
    assert found["equal function"].grade is Grade.FAIL


@pytest.mark.parametrize(
    ("kilograms", "grade"), [(3.9, Grade.LOOK), (2.0, Grade.FAIL), (3.6, Grade.LOOK)]
)
def test_a_lighter_beam_than_its_function_asks_for(
    kilograms: float, grade: Grade
) -> None:
    own = into("PP-LGF40", "rail", mass_kg=Range.exactly(kilograms))
    check = checked(own)["beam"]
    assert check.grade is grade
    share = (kilograms / (2.0 * 1.97)) ** 2
    numbers = figures(check)
    stiffness = numbers["deflection today"] / numbers["deflection after"]
    assert stiffness == pytest.approx(share, rel=0.01)


def test_a_beam_without_its_length_is_asked_for_it() -> None:
    library = bench(parts=swapped(PARTS, RAIL, replace(RAIL, length_mm=None)))
    check = checked(into("PP-LGF40", "rail"), library)["beam"]
    assert (check.grade, check.remedy) == (Grade.NONE, "Record the length of rail.")


def test_parts_made_one_and_pieces_moulded_in_are_no_beams() -> None:
    both = change(
        ChangeKind.INTEGRATE, parts=("rail", "rim"), into="frame", material="aluminium"
    )
    assert "beam" not in checked(both)
    moulded = change(
        ChangeKind.MOULD_IN, parts=("rail",), into="floor", material="PP-LGF40"
    )
    found = checked(moulded)
    assert not {"beam", "panel deflection", "minimum wall"} & set(found)
    assert found["equal function"].record == "rail"
