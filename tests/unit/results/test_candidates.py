"""Candidate materials for one part: figures, rows, and what is said of them."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from benchpack.errors import DataError
from benchpack.results.candidate_explained import CANDIDATE_COST, explain_candidate
from benchpack.results.candidates import (
    PRICE_SHARE,
    Candidates,
    Shape,
    compare_candidates,
    usual_candidates,
)
from benchpack.results.change_checks import HEAVIER, change_checks
from benchpack.results.closure import Grade
from tests.unit.results.change_samples import (
    FLOOR,
    LID,
    PARTS,
    SMC,
    STUDY,
    bench,
    into,
    swapped,
    without,
)

NAMES = ("SMC GF25", "PP-LGF40", "aluminium")


def lid_candidates(*, governs: tuple[str, ...] = ()) -> Candidates:
    return compare_candidates(bench(), STUDY, "lid", governs=governs, materials=NAMES)


def floor_candidates() -> Candidates:
    names = ("PP-LGF40", "SMC GF25", "steel")
    return compare_candidates(bench(), STUDY, "floor", materials=names)


def test_the_worked_lid_side_by_side() -> None:
    """Worked example A (trade reference 6.2, derived by hand): 8.1, 6.4, 5.3 kg."""
    found = lid_candidates()
    assert found.names == NAMES
    assert_allclose(found.of("mass_kg"), [8.1, 6.4, 5.3], atol=0.06)
    assert_allclose(found.of("wall_mm"), [2.54, 3.1, 1.16], atol=0.05)
    assert found.today.mass_kg == pytest.approx(10.7, abs=0.05)
    assert_allclose(found.mass_change_kg, found.of("mass_kg") - found.today.mass_kg)
    assert found.is_lighter.tolist() == [True] * 3
    # The data sheet promises more of the polymers, and the same of the metal.
    saved_too_much = found.of("sheet_mass_kg") < found.of("mass_kg") - 0.3
    assert saved_too_much.tolist() == [True, True, False]


def test_the_worked_floor_comes_out_heavier() -> None:
    """Worked example B (trade reference 6.2, derived by hand): 8.6 kg become 10.4."""
    found = floor_candidates()
    assert found.of("mass_kg")[0] == pytest.approx(10.4, abs=0.05)
    assert found.is_heavier.tolist() == [True, True, True]
    assert any(
        note.startswith("No candidate makes floor lighter.") and HEAVIER in note
        for note in found.notes
    )
    assert any(
        note.startswith("PP-LGF40 saves by the data sheet alone")
        for note in found.notes
    )


def test_material_is_mass_times_price_with_its_range() -> None:
    found = lid_candidates()
    prices = np.array([3.0, 3.4, 5.0])
    assert_allclose(found.of("cost"), found.of("mass_kg") * prices)
    low = found.of("mass_low_kg") * prices * (1 - PRICE_SHARE)
    high = found.of("mass_high_kg") * prices * (1 + PRICE_SHARE)
    assert_allclose(found.of("cost_low"), low)
    assert_allclose(found.of("cost_high"), high)
    assert (found.of("mass_low_kg") < found.of("mass_kg")).all()
    assert (found.of("mass_high_kg") > found.of("mass_kg")).all()
    assert_allclose(found.cost_change, found.of("cost") - 1.0 * found.today.mass_kg)


def test_deflection_and_checks_are_those_of_the_change() -> None:
    found = lid_candidates()
    for row in found.rows:
        checks = change_checks(bench(), STUDY, into(row.name, name="candidate"))
        assert row.checks == checks
        panel = next(one for one in checks if one.kind == "panel deflection")
        figures = {one.label: one.value for one in panel.figures}
        assert row.deflection_mm == pytest.approx(figures["1 m of water, after"])
        assert found.today.deflection_mm == pytest.approx(
            figures["1 m of water, today"]
        )
        assert row.deflection_kind == "under 1 m of water"
        assert (row.grade is Grade.FAIL) == (row.count(Grade.FAIL) > 0)
    # HB is the one thing that fails in the long-glass lid.
    assert found.rows[1].count(Grade.FAIL) == 1


def test_heat_is_told_of_what_lies_beneath_cells() -> None:
    found = floor_candidates()
    walls, k = found.of("wall_mm"), np.array([0.3, 0.4, 50.0])
    assert_allclose(found.of("heat_k"), 2000 * walls * 1e-3 / k)
    assert found.today.heat_k == pytest.approx(0.02, abs=0.005)
    assert np.isnan(lid_candidates().of("heat_k")).all()


def test_beams_are_compared_under_a_force() -> None:
    found = compare_candidates(bench(), STUDY, "rail", materials=("PP-LGF40", "steel"))
    assert_allclose(found.of("deflection_mm"), found.today.deflection_mm, rtol=1e-6)
    assert {row.deflection_kind for row in found.rows} == {"under 1 kN"}


def test_ribs_change_the_answer() -> None:
    ribbed = Shape(stiffness=5.0, rib_allowance=0.25)
    found = compare_candidates(
        bench(), STUDY, "floor", materials=("PP-LGF40",), shape=ribbed
    )
    assert found.of("mass_kg")[0] == pytest.approx(0.88 * 8.64, abs=0.06)
    assert found.is_lighter.tolist() == [True]


def test_what_governs_may_be_chosen() -> None:
    found = lid_candidates(governs=("geometry only",))
    densities = np.array([1880, 1210, 2700]) / 7850
    walls = np.maximum(0.8, [2.2, 2.5, 0.8]) / 0.8
    assert_allclose(found.of("mass_kg"), densities * walls * found.today.mass_kg)
    assert found.governs == ("geometry only",)
    assert [row.wall_is_minimum for row in found.rows] == [True, True, False]
    assert any("least that can be made" in note for note in found.notes)


def test_without_names_all_usual_materials_but_its_own_are_compared() -> None:
    assert usual_candidates(bench()) == ("steel", "aluminium", "SMC GF25", "PP-LGF40")
    found = compare_candidates(bench(), STUDY, "LID ")
    assert found.names == ("aluminium", "SMC GF25", "PP-LGF40")


def test_its_own_material_is_the_part_as_it_is() -> None:
    found = compare_candidates(bench(), STUDY, "lid", materials=("steel",))
    (row,) = found.rows
    assert row.mass_kg == row.sheet_mass_kg == found.today.mass_kg
    assert not found.is_lighter.any()
    assert not found.is_heavier.any()


def test_what_cannot_be_computed_says_why() -> None:
    bare = bench(materials=without(SMC, modulus_gpa=None))
    found = compare_candidates(bare, STUDY, "lid", materials=("SMC GF25", "bamboo"))
    assert np.isnan(found.of("mass_kg")).all()
    assert all(row.problem is not None for row in found.rows)
    assert any(
        note.startswith("Not computed: SMC GF25 and bamboo.") for note in found.notes
    )
    unsized = bench(parts=swapped(PARTS, LID, replace(LID, governs="")))
    found = compare_candidates(unsized, STUDY, "lid", materials=("aluminium",))
    assert found.notes[0] == "What sizes lid is not recorded: choose what governs."


def test_a_part_that_has_to_stay_is_compared_and_said_to() -> None:
    fixed = replace(LID, carry_over=True, reason="body tooling is fixed")
    library = bench(parts=swapped(PARTS, LID, fixed))
    found = compare_candidates(library, STUDY, "lid", materials=NAMES)
    assert_allclose(found.of("mass_kg"), lid_candidates().of("mass_kg"))
    assert found.notes[0].startswith("lid has to stay (body tooling is fixed)")
    assert found.part is fixed


def test_add_backs_and_recalled_prices_are_said() -> None:
    notes = " ".join(lid_candidates().notes)
    assert "the proposal adds it back" in notes
    assert "plus and minus 25 % (from memory)" in notes
    recalled = bench(materials=without(SMC, mark="from memory"))
    found = compare_candidates(
        recalled, replace(STUDY, currency="CHF"), "lid", materials=("SMC GF25",)
    )
    said = " ".join(found.notes)
    assert "Recalled prices are among them" in said
    assert "Prices count as CHF" in said
    # A part that is no metal today needs nothing back.
    polymer = replace(FLOOR, material="SMC GF25")
    library = bench(parts=swapped(PARTS, FLOOR, polymer))
    found = compare_candidates(library, STUDY, "floor", materials=("PP-LGF40",))
    assert not any("adds it back" in note for note in found.notes)


def test_a_part_that_is_not_there_is_refused() -> None:
    with pytest.raises(DataError, match="has no part 'bonnet'"):
        compare_candidates(bench(), STUDY, "bonnet")


def test_figures_say_where_they_come_from() -> None:
    found = lid_candidates()
    mass = explain_candidate(found, found.rows[0])
    assert mass.value == found.rows[0].mass_kg
    assert {one.label for one in mass.inputs} >= {"mass today", "density, new material"}
    assert "Ashby" in mass.source
    cost = explain_candidate(found, found.rows[0], key=CANDIDATE_COST)
    assert cost.value == pytest.approx(cost.inputs[0].value * cost.inputs[1].value)
    assert (cost.unit, cost.inputs[1].unit) == ("EUR", "EUR/kg")
    today = explain_candidate(found, found.today)
    assert [one.source for one in today.inputs] == ["weighed"]
    dear = bench(materials=without(SMC, price_per_kg=None))
    unknown = compare_candidates(dear, STUDY, "lid", materials=("SMC GF25",))
    figure = explain_candidate(unknown, unknown.rows[0], key=CANDIDATE_COST)
    assert figure.missing == "The price of SMC GF25 is not recorded."
