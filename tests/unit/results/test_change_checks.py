"""Checks of changes: equal function, walls, and which checks a change has."""

from __future__ import annotations

from dataclasses import replace

import pytest

from benchpack.model.change import Change, ChangeKind
from benchpack.model.library import Library
from benchpack.model.ranges import Range
from benchpack.model.words import Subsystem
from benchpack.results.change_checks import (
    HEAVIER,
    KINDS,
    REFUSED,
    change_checks,
    proposal_checks,
)
from benchpack.results.closure import Grade
from benchpack.results.ledger import build_ledger
from tests.unit.results.change_samples import (
    LID,
    LONG_GLASS,
    PARTS,
    SMC,
    STUDY,
    bench,
    change,
    checked,
    into,
    plain,
    swapped,
    without,
)


@pytest.mark.parametrize(
    ("material", "kilograms", "wall", "printed"),
    [
        ("SMC GF25", 8.1, 2.54, "2.5 mm"),
        ("PP-LGF40", 6.4, 3.1, "3.1 mm"),
        ("aluminium", 5.3, 1.16, "1.2 mm"),
    ],
)
def test_the_worked_lid(
    material: str, kilograms: float, wall: float, printed: str
) -> None:
    """Worked example A: steel lid 0.8 mm, 1.7 m2, 10.7 kg, hot design values.

    Trade reference 6.2 (derived by hand from recalled values): SMC GF25 2.54 mm and
    8.1 kg, PP-LGF40 3.1 mm and 6.4 kg, aluminium 1.16 mm and 5.3 kg.
    """
    found = checked(into(material))
    check = found["equal function"]
    figures = {one.label: one.value for one in check.figures}
    assert figures["mass today"] == pytest.approx(10.7, abs=0.05)
    assert figures["mass by design values"] == pytest.approx(kilograms, abs=0.06)
    walls = {one.label: one.value for one in found["minimum wall"].figures}
    assert walls["wall"] == pytest.approx(wall, abs=0.01)
    assert check.grade is Grade.GOOD
    said = plain(check.words)
    assert f"{figures['mass by design values']:.1f} kg by design values" in said
    assert f"({printed}, panel bending stiffness governs), today 10.7 kg" in said


def test_the_worked_floor_is_heavier_and_says_so() -> None:
    """Worked example B: aluminium floor 2 mm, 1.6 m2, 8.6 kg, in flat PP-LGF40.

    Trade reference 6.2 (derived by hand): 5.4 mm and 10.4 kg, heavier.
    """
    found = checked(into("PP-LGF40", "floor"))
    check = found["equal function"]
    figures = {one.label: one.value for one in check.figures}
    assert figures["mass today"] == pytest.approx(8.6, abs=0.05)
    assert figures["mass by design values"] == pytest.approx(10.4, abs=0.05)
    walls = {one.label: one.value for one in found["minimum wall"].figures}
    assert walls["wall"] == pytest.approx(5.4, abs=0.05)
    assert check.grade is Grade.FAIL
    assert f"Floor is {HEAVIER}." in check.words
    # The data sheet alone would have promised a saving: 0.92 of today's mass.
    assert figures["mass by data sheet"] == pytest.approx(0.92 * 8.64, abs=0.05)
    assert "The data sheet alone would say 8.0 kg" in plain(check.words)


def test_ribs_make_the_floor_save() -> None:
    """Worked example B again: I raised five times at 25 % of mass saves 12 %."""
    ribbed = into("PP-LGF40", "floor", stiffness_shape=5.0, rib_allowance=0.25)
    check = checked(ribbed)["equal function"]
    figures = {one.label: one.value for one in check.figures}
    assert figures["mass by design values"] == pytest.approx(0.88 * 8.64, abs=0.06)
    assert check.grade is Grade.GOOD


def test_data_sheet_values_want_a_look() -> None:
    check = checked(into("SMC GF25", uses_data_sheet=True))["equal function"]
    assert check.grade is Grade.LOOK
    assert "The proposal counts the data sheet's." in check.words
    figures = {one.label: one.value for one in check.figures}
    assert figures["mass that counts"] == figures["mass by data sheet"]


def test_a_polymer_without_knock_downs_wants_a_look() -> None:
    bare = without(SMC, stiffness_knock_down=None, strength_knock_down=None)
    check = checked(into("SMC GF25"), bench(materials=bare))["equal function"]
    assert check.grade is Grade.LOOK
    assert check.remedy == "Record the knock-downs of SMC GF25."


def test_the_same_mass_saves_nothing_and_says_so() -> None:
    twin = replace(LONG_GLASS, name="twin steel", kind="metal", density_kg_m3=7860.0)
    twin = replace(twin, modulus_gpa=210.0, stiffness_knock_down=1.0)
    twin = replace(twin, minimum_wall_mm=0.5)
    library = bench(materials=(*bench().materials, twin))
    check = checked(into("twin steel"), library)["equal function"]
    assert check.grade is Grade.LOOK
    assert "about as heavy as today: it saves nothing" in check.words


@pytest.mark.parametrize(
    ("kilograms", "grade", "said"),
    [
        (6.0, Grade.LOOK, "26 % less than that"),
        (9.0, Grade.GOOD, "11 % more than that"),
        (11.0, Grade.FAIL, "heavier than today"),
    ],
)
def test_a_mass_of_ones_own_is_held_against_the_function(
    kilograms: float, grade: Grade, said: str
) -> None:
    check = checked(into("SMC GF25", mass_kg=Range.exactly(kilograms)))
    assert check["equal function"].grade is grade
    assert said in plain(check["equal function"].words)


def test_the_wall_goes_with_a_mass_of_ones_own() -> None:
    """8.14 kg are 2.55 mm of SMC; 6 kg are then 1.88 mm, thinner than is made."""
    own = into("SMC GF25", mass_kg=Range.exactly(6.0))
    check = checked(own)["minimum wall"]
    figures = {one.label: one.value for one in check.figures}
    assert figures["wall"] == pytest.approx(1000 * 6.0 / (1880 * 1.7), rel=1e-6)
    assert check.grade is Grade.FAIL
    assert "made from 2.2 mm on" in plain(check.words)


def test_the_least_wall_is_named_where_it_sets_the_mass() -> None:
    thick = bench(materials=without(SMC, minimum_wall_mm=3.0))
    check = checked(into("SMC GF25"), thick)["minimum wall"]
    assert check.grade is Grade.LOOK
    assert "asks for less than 3 mm" in plain(check.words)


@pytest.mark.parametrize(
    ("library", "kind", "asked"),
    [
        (
            bench(parts=swapped(PARTS, LID, replace(LID, thickness_mm=None))),
            "minimum wall",
            "Record the thickness of lid.",
        ),
        (
            bench(materials=without(SMC, minimum_wall_mm=None)),
            "minimum wall",
            "Record the minimum wall of SMC GF25.",
        ),
        (
            bench(parts=swapped(PARTS, LID, replace(LID, thickness_mm=None))),
            "panel deflection",
            "Record the thickness of lid.",
        ),
    ],
)
def test_what_is_missing_is_asked_for(library: Library, kind: str, asked: str) -> None:
    check = checked(into("SMC GF25"), library)[kind]
    assert check.grade is Grade.NONE
    assert check.remedy == asked


def test_a_mass_without_a_function_is_not_held_against_one() -> None:
    free = replace(LID, governs="")
    library = bench(parts=swapped(PARTS, LID, free))
    own = into("SMC GF25", mass_kg=Range.exactly(9.0))
    check = checked(own, library)["equal function"]
    assert check.grade is Grade.NONE
    assert check.remedy == "Record what sizes lid."


def test_several_parts_made_one_count_together() -> None:
    one = change(
        ChangeKind.INTEGRATE, parts=("lid", "floor"), into="shell", material="SMC GF25"
    )
    found = change_checks(bench(), STUDY, one)
    equal = next(check for check in found if check.kind == "equal function")
    figures = {one.label: one.value for one in equal.figures}
    assert equal.record == "shell"
    assert figures["mass today"] == pytest.approx(10.68 + 8.64, abs=0.01)
    alone = [
        checked(into("SMC GF25", name))["equal function"] for name in ("lid", "floor")
    ]
    both = sum(
        figure.value
        for check in alone
        for figure in check.figures
        if figure.label == "mass by design values"
    )
    assert figures["mass by design values"] == pytest.approx(both)


def test_checks_come_in_the_order_of_their_kinds() -> None:
    kinds = [check.kind for check in change_checks(bench(), STUDY, into("SMC GF25"))]
    assert kinds == sorted(kinds, key=KINDS.index)
    assert {"equal function", "minimum wall", "panel deflection"} <= set(kinds)
    assert {"flammability", "service temperature", "expansion"} <= set(kinds)
    assert {"seal line", "clamp retention"} <= set(kinds)


@pytest.mark.parametrize(
    "one",
    [
        change(ChangeKind.REMOVE, parts=("rail",)),
        change(ChangeKind.ADJUST, parts=("lid",), mass_kg=Range.exactly(9.0)),
    ],
)
def test_changes_that_remove_or_adjust_have_no_checks(one: Change) -> None:
    assert change_checks(bench(), STUDY, one) == ()


def test_a_refused_change_says_why() -> None:
    fixed = replace(LID, carry_over=True, reason="body tooling is fixed")
    library = bench(parts=swapped(PARTS, LID, fixed))
    (check,) = change_checks(library, STUDY, into("SMC GF25"))
    assert (check.kind, check.grade) == (REFUSED, Grade.NONE)
    assert "body tooling is fixed" in check.words
    assert check.remedy


def test_the_changes_of_a_proposal_are_checked_together() -> None:
    """The screws of one change clamp the lid of another."""
    lid = into("SMC GF25", name="SMC lid")
    fewer = change(
        ChangeKind.SWAP_JOINTS,
        name="fewer screws",
        joints=("lid screws",),
        into="new screws",
        count=40,
    )
    off = into("PP-LGF40", "floor", name="off", is_on=False)
    ledger = build_ledger(bench(), STUDY, (lid, fewer, off))
    found = proposal_checks(bench(), STUDY, ledger)
    assert list(found) == ["SMC lid", "fewer screws"]
    retained = [c for c in found["SMC lid"] if c.kind == "clamp retention"]
    assert [c.record for c in retained] == ["new screws"]
    (seal,) = (c for c in found["fewer screws"] if c.kind == "seal line")
    assert "SMC GF25" in seal.words
    assert found["SMC lid"] == change_checks(bench(), STUDY, lid, ledger=ledger)


def test_a_second_change_starts_from_the_first() -> None:
    first = into("SMC GF25", name="first")
    second = into("aluminium", name="second")
    ledger = build_ledger(bench(), STUDY, (first, second))
    found = proposal_checks(bench(), STUDY, ledger)["second"]
    equal = next(check for check in found if check.kind == "equal function")
    figures = {one.label: one.value for one in equal.figures}
    assert figures["mass today"] == pytest.approx(8.14, abs=0.01)


def test_figures_follow_the_units_of_the_study() -> None:
    in_pounds = replace(STUDY, mass_unit="lb", decimal_mark=",")
    found = change_checks(bench(), in_pounds, into("SMC GF25"))
    equal = next(check for check in found if check.kind == "equal function")
    assert "18,0 lb by design values (2,5 mm" in plain(equal.words)


def test_an_added_part_is_checked_for_what_is_known_of_it() -> None:
    added = change(
        ChangeKind.ADD,
        into="cover",
        material="PP-LGF40",
        mass_kg=Range.exactly(1.0),
        subsystem=Subsystem.LID,
    )
    found = checked(added)
    assert set(found) == {"minimum wall", "flammability", "service temperature"}
    assert found["minimum wall"].grade is Grade.NONE
    assert found["flammability"].grade is Grade.FAIL


def test_a_part_that_keeps_its_material_is_not_asked_about_it() -> None:
    thinner = into("aluminium", "floor", mass_kg=Range.exactly(6.0))
    assert "flammability" not in checked(thinner)
    assert "equal function" not in checked(thinner)
