"""Candidate materials in words, as a table, and as a chart."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from benchpack.report.candidates_charts import CandidatesSpec, candidates_spec
from benchpack.report.candidates_table import (
    candidate_cells,
    candidate_columns,
    candidate_order,
)
from benchpack.report.candidates_text import (
    candidate_detail,
    candidates_headline,
    checks_text,
    failing_text,
)
from benchpack.results.candidate_record import Candidate, Candidates
from benchpack.results.candidates import compare_candidates
from benchpack.results.check import Check
from benchpack.results.closure import Grade
from benchpack.units.number_style import KG_PER_LB
from tests.unit.results.change_samples import (
    LID,
    PARTS,
    SMC,
    STEEL,
    STUDY,
    bench,
    plain,
    swapped,
    without,
)

NAMES = ("SMC GF25", "PP-LGF40", "aluminium")
LID_FOUND = compare_candidates(bench(), STUDY, "lid", materials=NAMES)
FLOOR_FOUND = compare_candidates(
    bench(), STUDY, "floor", materials=("PP-LGF40", "steel")
)


def cells(found: Candidates, row: Candidate) -> dict[str, str]:
    heads = [column.head for column in candidate_columns(found, STUDY)]
    return dict(zip(heads, map(plain, candidate_cells(row, found, STUDY)), strict=True))


def test_the_headline_names_the_lightest_and_what_it_fails_in() -> None:
    said = plain(candidates_headline(LID_FOUND, STUDY))
    assert said == (
        "Lid in aluminium weighs 5.3 kg at equal function, 5.4 kg less than today; "
        "most for its material at 3.00 EUR/kg gives PP-LGF40."
    )
    found = compare_candidates(bench(), STUDY, "lid", materials=("PP-LGF40",))
    said = plain(candidates_headline(found, STUDY))
    assert said.endswith(
        "it is worth its material at 3.00 EUR/kg; it fails in flammability."
    )


def test_the_headline_says_where_nothing_helps() -> None:
    assert candidates_headline(FLOOR_FOUND, STUDY) == (
        "No candidate makes floor lighter at equal function; saving would have to come "
        "from ribs, integration or deleted joints."
    )
    found = compare_candidates(bench(), STUDY, "lid", materials=("bamboo",))
    said = "What candidates for lid weigh is not known."
    assert candidates_headline(found, STUDY) == said


def test_a_worth_of_little_pays_for_no_dearer_material() -> None:
    poor = replace(
        STUDY, worth_low_per_kg=0.1, worth_likely_per_kg=0.2, worth_high_per_kg=0.3
    )
    said = plain(candidates_headline(LID_FOUND, poor))
    assert "none is worth its material at 0.20 EUR/kg" in said


def test_the_table_has_the_part_as_it_is_first() -> None:
    today, smc = cells(LID_FOUND, LID_FOUND.today), cells(LID_FOUND, LID_FOUND.rows[0])
    assert today["material"] == "steel (today)"
    assert today["mass [kg]"] == "10.7"
    assert today["less today's [kg]"] == "–"
    assert smc == {
        "material": "SMC GF25",
        "mass [kg]": "8.1",
        "less today's [kg]": "−2.5",
        "data sheet [kg]": "7.2",
        "wall [mm]": "2.5",
        "least wall [mm]": "2.2",
        "material [EUR]": "24.43",
        "less today's [EUR]": "+13.75",
        "deflection [mm]": smc["deflection [mm]"],
        "checks": "2 look",
    }
    assert "heat [K]" not in smc


def test_candidates_are_put_in_order_by_what_a_column_shows() -> None:
    rows = (LID_FOUND.today, *LID_FOUND.rows)
    for column in candidate_columns(LID_FOUND, STUDY):
        order = candidate_order(rows, column.key)
        assert order.shape == (len(rows),)
        shown = [cells(LID_FOUND, row)[column.head] for row in rows]
        if column.key in ("mass", "sheet", "least", "cost", "deflection"):
            figures = [math.nan if t == "–" else float(t) for t in shown]
            assert order == pytest.approx(figures, abs=0.06, nan_ok=True)
    names = [row.name.casefold() for row in rows]
    by_name = candidate_order(rows, "name")
    assert [names[i] for i in by_name.argsort()] == sorted(names)
    # Two that want a look come before one that fails; no checks, no place.
    bad = replace(rows[1], checks=(replace(rows[1].checks[0], grade=Grade.FAIL),))
    fails, looks, none = candidate_order((bad, rows[1], rows[0]), "checks")
    assert fails > looks
    assert math.isnan(none)


def test_a_heat_path_has_its_column() -> None:
    shown = cells(FLOOR_FOUND, FLOOR_FOUND.rows[0])
    assert shown["heat [K]"] == "35.8"
    assert cells(FLOOR_FOUND, FLOOR_FOUND.today)["heat [K]"] == "0.02"


def test_a_light_part_has_another_digit_and_pounds_are_pounds() -> None:
    small = replace(LID, mass_each_kg=0.412)
    found = compare_candidates(
        bench(parts=swapped(PARTS, LID, small)), STUDY, "lid", materials=NAMES
    )
    assert cells(found, found.today)["mass [kg]"] == "0.41"
    in_pounds = replace(STUDY, mass_unit="lb")
    columns = candidate_columns(LID_FOUND, in_pounds)
    assert columns[1].head == "mass [lb]"
    shown = candidate_cells(LID_FOUND.today, LID_FOUND, in_pounds)
    assert shown[1] == f"{LID_FOUND.today.mass_kg / KG_PER_LB:.1f}"


@pytest.mark.parametrize(
    ("grades", "said"),
    [
        ((Grade.GOOD, Grade.GOOD), "all good"),
        ((Grade.FAIL, Grade.LOOK, Grade.LOOK, Grade.NONE), "1 fail, 2 look, 1 unknown"),
        ((), "–"),
    ],
)
def test_checks_are_summed_up(grades: tuple[Grade, ...], said: str) -> None:
    checks = tuple(Check("kind", "lid", grade, "words") for grade in grades)
    assert checks_text(Candidate("x", checks=checks)) == said


def test_what_fails_is_named() -> None:
    row = LID_FOUND.rows[1]
    said = failing_text(row)
    assert said.startswith("fail: flammability; look: ")
    assert "panel deflection" in said


def test_the_read_out_of_one_candidate() -> None:
    lines = plain(candidate_detail(LID_FOUND.rows[0], STUDY)).split("\n")
    assert lines[0] == (
        "8.1 kg (7.7 to 9.1) at equal function, panel bending stiffness governs"
    )
    assert lines[1:4] == [
        "7.2 kg by the data sheet alone",
        "wall 2.5 mm",
        "material 24.43 EUR",
    ]
    assert lines[-1] == "checks: 2 look"


def test_the_chart_shows_differences_to_today() -> None:
    spec = candidates_spec(LID_FOUND, STUDY)
    assert spec.names == NAMES
    assert_allclose(spec.mass, LID_FOUND.of("mass_kg") - LID_FOUND.today.mass_kg)
    assert_allclose(spec.cost, LID_FOUND.of("cost") - LID_FOUND.today.cost)
    assert (spec.mass_low <= spec.mass).all()
    assert (spec.mass <= spec.mass_high).all()
    assert (spec.cost_low <= spec.cost).all()
    assert (spec.cost <= spec.cost_high).all()
    assert spec.worth_slopes == (1.0, 3.0, 6.0)
    assert spec.verdicts == ("look", "fail", "look")
    assert spec.subject_text == "lid, steel"
    assert spec.title == (
        "3 of 3 candidates are lighter, 2 worth the material at 3.00\u00a0EUR/kg"
    )
    assert plain(spec.format_mass(spec.mass[0])) == "−2.53 kg"
    assert plain(spec.format_cost(spec.cost[0])) == "+13.75 EUR"
    assert not spec.is_empty
    assert "Hollow: by the data sheet alone." in spec.note


def test_a_candidate_below_the_line_is_worth_its_material() -> None:
    """By hand at 3 EUR/kg: 3 times the mass saved less the dearer material.

    SMC saves 2.533 kg for 13.75 EUR, PP-LGF40 4.295 for 11.02, aluminium 5.367 for
    15.87.
    """
    spec = candidates_spec(LID_FOUND, STUDY)
    gain = -spec.worth_slopes[1] * spec.mass - spec.cost
    assert_allclose(gain, [-6.15, 1.86, 0.23], atol=0.01)


def test_in_pounds_the_line_of_a_worth_is_less_steep() -> None:
    spec = candidates_spec(LID_FOUND, replace(STUDY, mass_unit="lb"))
    assert_allclose(spec.worth_slopes, np.array([1.0, 3.0, 6.0]) * KG_PER_LB)
    changes = LID_FOUND.of("mass_kg") - LID_FOUND.today.mass_kg
    assert_allclose(spec.mass, changes / KG_PER_LB)
    assert spec.x_label == "Mass less today's [lb]"


def test_an_empty_chart_says_what_to_do() -> None:
    assert CandidatesSpec().is_empty
    none = compare_candidates(bench(), STUDY, "lid", materials=("bamboo",))
    spec = candidates_spec(none, STUDY)
    assert spec.is_empty
    assert spec.empty_sentence.startswith(
        "The material 'bamboo' is not in the library."
    )
    free = bench(materials=without(STEEL, price_per_kg=None))
    spec = candidates_spec(
        compare_candidates(free, STUDY, "lid", materials=("aluminium",)), STUDY
    )
    assert spec.is_empty
    assert spec.empty_sentence == "Record the price of steel to compare costs."
    assert "The price of steel is not recorded." in spec.note


def test_what_has_no_price_is_counted_and_not_drawn() -> None:
    library = bench(materials=without(SMC, price_per_kg=None))
    found = compare_candidates(library, STUDY, "lid", materials=NAMES)
    spec = candidates_spec(found, STUDY)
    assert not spec.is_empty
    assert np.isnan(spec.cost).tolist() == [True, False, False]
    assert spec.note.endswith("1 without mass or price: not drawn.")


def test_where_nothing_is_lighter_the_title_says_so() -> None:
    spec = candidates_spec(FLOOR_FOUND, STUDY)
    assert spec.title == "No candidate makes floor lighter at equal function"
