"""Checks of the heat path from cells to coolant, and of what a material bears."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from benchpack.model.change import Change, ChangeKind
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.ranges import Range
from benchpack.model.words import Subsystem
from benchpack.results.change_checks import change_checks
from benchpack.results.change_checks_heat import (
    HeatCase,
    heat_path,
    sized_plate,
    spread_k,
)
from benchpack.results.change_checks_material import class_rank
from benchpack.results.change_checks_plate import HEAT_PATH
from benchpack.results.closure import Grade
from benchpack.results.heat_layers import Layers
from benchpack.results.ledger import build_ledger
from tests.unit.results.change_samples import (
    CELL,
    FLOOR,
    LONG_GLASS,
    MATERIALS,
    PARTS,
    SMC,
    STUDY,
    bench,
    change,
    checked,
    into,
    part,
    plain,
    swapped,
    without,
)

COLD_PLATE = part(
    "cold plate",
    3.0,
    inside="floor",
    subsystem=Subsystem.COOLING,
    material="aluminium",
    thickness_mm=2.0,
    area_m2=1.4,
)
FILLER_LAYER = part(
    "filler layer",
    4.0,
    inside="floor",
    subsystem=Subsystem.COOLING,
    material="filler",
    thickness_mm=1.0,
    area_m2=1.4,
)


def added(**values: object) -> Change:
    given = {
        "name": "plate",
        "into": "heat plate",
        "material": "aluminium",
        "mass_kg": Range.exactly(4.3),
        "subsystem": Subsystem.COOLING,
        "wall_mm": 1.0,
        **values,
    }
    return change(ChangeKind.ADD, **given)


@pytest.mark.parametrize(
    ("layer", "kelvin", "digit"),
    [
        ((3.0, 0.3), 20.0, 0.5),
        ((3.0, 0.4), 15.0, 0.5),
        ((2.0, 190.0), 0.02, 0.005),
    ],
)
def test_floors_at_two_kilowatts(
    layer: tuple[float, float], kelvin: float, digit: float
) -> None:
    """Trade reference 7 (derived): PP-GF 3 mm 20 K, SMC 3 mm 15 K, aluminium 0.02 K.

    Gap filler 1.5 mm of 3 W/(m K) 1.0 K, coolant film of 1000 W/(m2 K) 2.0 K.
    """
    path = heat_path(HeatCase(), today=(0.0, 1.0), after=layer, area_m2=1.6)
    assert path.layer_after_k == pytest.approx(kelvin, abs=digit)
    assert path.today_k == pytest.approx(1.0 + 2.0)
    assert path.added_k == pytest.approx(path.layer_after_k)


def test_the_plate_is_sized_as_in_the_table() -> None:
    """Trade reference 7 (derived): 2 mm at L = 60 mm rise 9.5 K; 2.7 kg per m2, mm."""
    wide = replace(HeatCase(), half_pitch_mm=60.0, allowed_rise_k=9.5)
    path = heat_path(wide, today=(2.0, 190.0), after=(3.0, 0.3), area_m2=1.6)
    assert path.plate_mm == pytest.approx(2.0, abs=0.01)
    assert path.plate_kg == pytest.approx(2.7 * 1.6 * path.plate_mm)
    assert spread_k(wide, path.plate_mm, 190.0) == pytest.approx(9.5)
    # Filler, through the plate, midway between the lines, film.
    through = 2000 * path.plate_mm * 1e-3 / 190
    assert path.with_plate_k == pytest.approx(1.0 + through + 9.5 + 2.0)


def test_a_polymer_floor_beneath_cells_fails_and_names_the_plate() -> None:
    check = checked(into("PP-LGF40", "floor"))["heat path"]
    figures = {one.label: one.value for one in check.figures}
    assert check.grade is Grade.FAIL
    said = plain(check.words)
    # 5.37 mm of 0.3 W/(m K) at 2 kW/m2.
    assert "35.8 K across 5.4 mm PP-LGF40, today 0.02 K" in said
    assert "38.8 K from coolant to cells, today 3.0 K" in said
    assert figures["spreading plate"] == pytest.approx(0.947, abs=0.001)
    assert figures["mass of the plate"] == pytest.approx(4.09, abs=0.01)
    assert "from 0.9 mm on, 4.1 kg of it" in said
    assert said.endswith("The proposal has it in the sum as an add-back.")
    assert check.remedy == "Add it as a part, or bring the coolant to the cells' side."


def test_a_plate_that_is_taken_out_of_the_sum_is_said_to_be() -> None:
    waived = into("PP-LGF40", "floor", waived=(("heat plate", "Cooled from above."),))
    check = checked(waived)["heat path"]
    assert check.grade is Grade.FAIL
    assert "The heat plate is taken out of the sum: Cooled from above." in check.words
    assert check.remedy.startswith("Put it back")


def test_the_add_back_weighs_what_the_check_asks_for() -> None:
    """Trade reference 7: t = q L^2 / (2 k dT), 2.7 kg per m2 and mm of aluminium."""
    floor = into("PP-LGF40", "floor")
    ledger = build_ledger(bench(), STUDY, (floor,))
    (back,) = (b for b in ledger.add_backs if b.add_back.key == "heat plate")
    least_mm = 1000 * 2000 * 0.03**2 / (2 * 190 * 5)
    assert back.plate is not None
    assert back.plate.wall_mm.ends == pytest.approx((0.8, least_mm, 1.5 * least_mm))
    assert back.mass_kg.likely == pytest.approx(2.7 * 1.6 * least_mm)
    (check,) = (c for c in change_checks(bench(), STUDY, floor) if c.kind == HEAT_PATH)
    figures = {one.label: one.value for one in check.figures}
    assert figures["mass of the plate"] == pytest.approx(back.mass_kg.likely)


@pytest.mark.parametrize(
    ("gone", "amount"),
    [(CELL, 1.6), (FLOOR, 0.0)],
)
def test_a_plate_that_no_heat_path_sizes_weighs_what_is_usual(
    gone: Part, amount: float
) -> None:
    """Without cells on the floor, and without its area."""
    left = replace(FLOOR, area_m2=None) if gone is FLOOR else replace(CELL, inside="")
    records = bench(parts=swapped(PARTS, gone, left))
    ledger = build_ledger(records, STUDY, (into("PP-LGF40", "floor"),))
    (back,) = (b for b in ledger.add_backs if b.add_back.key == "heat plate")
    assert (back.plate, back.amount) == (None, amount)
    assert back.mass_kg.likely in (pytest.approx(2 * 2.7 * 1.6), 8.6)


def test_no_plate_is_thinner_than_sheet() -> None:
    close = replace(HeatCase(), half_pitch_mm=15.0)
    assert sized_plate(close, 1.0).wall_mm.ends == (0.8, 0.8, 0.8)


def test_another_metal_floor_is_good() -> None:
    check = checked(into("steel", "floor"))["heat path"]
    assert (check.grade, check.remedy) == (Grade.GOOD, "")


def test_a_plate_that_is_added_takes_the_floor_out_of_the_path() -> None:
    floor = into("PP-LGF40", "floor", name="floor")
    ledger = build_ledger(bench(), STUDY, (floor, added()))
    found = change_checks(bench(), STUDY, floor, ledger=ledger)
    (check,) = (one for one in found if one.kind == "heat path")
    assert check.grade is Grade.GOOD
    assert "Heat plate is added" in check.words
    off = replace(added(), is_on=False)
    ledger = build_ledger(bench(), STUDY, (floor, off))
    found = change_checks(bench(), STUDY, floor, ledger=ledger)
    (check,) = (one for one in found if one.kind == "heat path")
    assert check.grade is Grade.FAIL


def test_a_plate_on_the_floor_leads_the_heat_already() -> None:
    library = bench(parts=(*PARTS, COLD_PLATE))
    check = checked(into("PP-LGF40", "floor"), library)["heat path"]
    assert check.grade is Grade.GOOD
    assert check.words.startswith("Cold plate leads the heat away on the cells' side")


def test_the_gap_filler_on_record_is_taken() -> None:
    library = bench(parts=(*PARTS, FILLER_LAYER))
    check = checked(into("PP-LGF40", "floor"), library)["heat path"]
    sources = {one.label: one for one in check.figures}
    assert sources["gap filler"].value == 1.0
    assert sources["k of the gap filler"].value == 2.0
    assert sources["gap filler"].source == "parts, filler layer; materials, filler"


def test_only_what_lies_beneath_cells_is_looked_at() -> None:
    library = bench(parts=swapped(PARTS, CELL, replace(CELL, inside="")))
    assert "heat path" not in checked(into("PP-LGF40", "floor"), library)
    assert "heat path" not in checked(into("SMC GF25", "lid"))
    layers = Layers(
        (*PARTS, COLD_PLATE, FILLER_LAYER), {m.name.casefold(): m for m in MATERIALS}
    )
    assert layers.beneath_cells(COLD_PLATE)
    assert layers.beneath_cells(FILLER_LAYER)
    assert not layers.beneath_cells(replace(COLD_PLATE, material="PP-LGF40"))


def test_a_circle_of_parts_inside_each_other_ends() -> None:
    one = part("one", 1.0, inside="two", subsystem=Subsystem.TRAY)
    two = part("two", 1.0, inside="one", subsystem=Subsystem.TRAY)
    assert not Layers((one, two), {}).beneath_cells(one)


def test_an_unknown_conductivity_is_asked_for() -> None:
    bare = without(LONG_GLASS, conductivity_w_mk=None)
    check = checked(into("PP-LGF40", "floor"), bench(materials=bare))["heat path"]
    assert check.grade is Grade.NONE
    assert check.remedy == "Record the conductivity of PP-LGF40."


@pytest.mark.parametrize(
    ("wall", "grade"),
    [(1.0, Grade.GOOD), (0.8, Grade.LOOK), (0.4, Grade.FAIL), (None, Grade.NONE)],
)
def test_an_added_plate_is_held_against_the_least(
    wall: float | None, grade: Grade
) -> None:
    check = checked(added(wall_mm=wall))["heat path"]
    assert check.grade is grade
    if wall is None:
        assert plain(check.remedy) == "Enter the wall of heat plate; 0.9 mm would do."
        return
    rise = next(one.value for one in check.figures if one.label == "rise midway")
    assert rise == pytest.approx(2000 * 0.03**2 / (2 * 200 * wall * 1e-3))


def test_an_added_part_that_does_not_conduct_is_no_plate() -> None:
    assert "heat path" not in checked(added(material="PP-LGF40"))
    assert "heat path" not in checked(added(subsystem=Subsystem.TRAY))


@pytest.mark.parametrize(
    ("text", "rank"),
    [
        ("not combustible", 4),
        ("V-0", 3),
        ("UL 94 V0 at 1.5 mm", 3),
        ("5VA", 3),
        ("V-1", 2),
        ("HB", 1),
        ("HBF", 1),
        ("option", 0),
        ("", 0),
    ],
)
def test_fire_classes_have_their_ranks(text: str, rank: int) -> None:
    assert class_rank(text) == rank


@pytest.mark.parametrize(
    ("said", "grade"),
    [
        ("not combustible", Grade.GOOD),
        ("V-0", Grade.GOOD),
        ("V-2", Grade.LOOK),
        ("option", Grade.LOOK),
        ("HB", Grade.FAIL),
        ("", Grade.NONE),
    ],
)
def test_the_fire_class_is_graded(said: str, grade: Grade) -> None:
    library = bench(materials=without(SMC, flammability=said))
    check = checked(into("SMC GF25"), library)["flammability"]
    assert check.grade is grade
    if said:
        assert f"SMC GF25: {said}, today not combustible" in check.words
    else:
        assert check.remedy == "Record the flammability of SMC GF25."


def test_a_class_that_is_no_worse_than_today_wants_a_look() -> None:
    polymer_floor = replace(FLOOR, material="PP-LGF40")
    library = bench(
        parts=swapped(PARTS, FLOOR, polymer_floor),
        materials=without(SMC, flammability="HB"),
    )
    assert checked(into("SMC GF25", "floor"), library)["flammability"].grade is (
        Grade.LOOK
    )


@pytest.mark.parametrize(
    ("bears", "grade"),
    [(150.0, Grade.GOOD), (85.0, Grade.LOOK), (70.0, Grade.FAIL), (None, Grade.NONE)],
)
def test_lasting_heat_is_graded(bears: float | None, grade: Grade) -> None:
    library = bench(materials=without(SMC, service_temperature_degc=bears))
    check = checked(into("SMC GF25"), library)["service temperature"]
    assert check.grade is grade
    assert ("today 200 °C" in plain(check.words)) == (bears is not None)


def test_a_material_that_is_not_in_the_library_is_asked_for() -> None:
    own = into("bamboo", mass_kg=Range.exactly(5.0))
    found = checked(own)
    for kind in ("flammability", "service temperature"):
        assert found[kind].grade is Grade.NONE
        assert found[kind].remedy == "Enter the material bamboo."


def test_a_path_that_is_not_known_gives_no_number() -> None:
    path = heat_path(HeatCase(), today=(math.nan, 1.0), after=(2.0, 0.3))
    assert math.isnan(path.today_k)
    assert math.isnan(path.added_k)
    assert math.isnan(path.plate_kg)
    assert Material("x").conductivity_w_mk is None
