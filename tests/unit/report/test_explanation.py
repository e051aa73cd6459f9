"""Where a figure comes from, as a reader sees it and as it is copied."""

from __future__ import annotations

import math

from benchpack.report.explanation import (
    explanation_table,
    explanation_text,
    value_text,
)
from benchpack.results.figure import Figure, Input
from benchpack.units.formatting import NumberStyle

GAP = Figure(
    key="density share",
    label="Gap at equal energy (density share)",
    value=11.256,
    unit="kg",
    formula="m_s - m_r E_s / E_r",
    inputs=(
        Input("m_s, mass of Avocet 81", 1431.04, "kg", "weighed, bench sheet"),
        Input("E_s, energy of Avocet 81", 81.0, "kWh", "gross energy"),
        Input("worth", 3.0, "EUR/kg", "agreed"),
        Input("n, peers", 12.0, "", "least squares"),
        Input("R2", 0.98349),
        Input("c_r, cells of Dunlin 74", math.nan, "kg"),
    ),
    source="common practice, no source",
    low=8.9,
    high=13.6,
    range_meaning="plus and minus two standard uncertainties",
)


def test_the_figure_carries_its_unit_once_and_its_range() -> None:
    said = explanation_text(GAP, style=NumberStyle())
    assert said.value == "11.3\u00a0kg (8.9 to 13.6)"
    assert said.range_meaning == GAP.range_meaning
    assert said.missing == ""


def test_a_formula_is_shown_with_a_true_minus() -> None:
    said = explanation_text(GAP, style=NumberStyle())
    assert said.formula == "m_s \u2212 m_r E_s / E_r"


def test_inputs_part_number_and_unit() -> None:
    rows = explanation_text(GAP, style=NumberStyle()).inputs
    assert [(row.value, row.unit) for row in rows] == [
        ("1\u2009431.0", "kg"),
        ("81.0", "kWh"),
        ("3.00", "EUR/kg"),
        ("12", ""),
        ("0.983", ""),
        ("\u2013", ""),
    ]
    assert rows[0].source == "weighed, bench sheet"


def test_pounds_and_commas_follow_the_study() -> None:
    """1431.04 kg / 0.45359237 kg/lb; worth is per pound as well (NIST SP 811)."""
    style = NumberStyle(decimal_mark=",", mass_unit="lb")
    rows = explanation_text(GAP, style=style).inputs
    assert (rows[0].value, rows[0].unit) == ("3\u2009154,9", "lb")
    assert (rows[2].value, rows[2].unit) == ("1,36", "EUR/lb")
    assert value_text(0.5, "", style=style) == "0,5"


def test_an_unknown_figure_says_why() -> None:
    unknown = Figure("x", "Gap", math.nan, "kg", "a - b", missing="No mass is known.")
    said = explanation_text(unknown, style=NumberStyle())
    assert said.value == "\u2013"
    assert said.missing == "No mass is known."
    silent = Figure("x", "Gap", math.nan, "kg", "a - b")
    assert explanation_text(silent, style=NumberStyle()).missing


def test_no_range_has_no_meaning() -> None:
    bare = Figure("x", "Share", 4.0, "kg", "a", range_meaning="two u")
    assert explanation_text(bare, style=NumberStyle()).range_meaning == ""


def test_money_and_odd_units() -> None:
    style = NumberStyle()
    assert value_text(1234.4, "EUR", style=style) == "1\u2009234\u00a0EUR"
    assert value_text(0.051, "of ln m", style=style) == "0.051\u00a0of ln m"
    assert value_text(162.6, "Wh/kg", style=style) == "163\u00a0Wh/kg"
    assert value_text(10_512.347, "N", style=style) == "10\u2009512\u00a0N"
    assert value_text(18.6432, "kN", style=style) == "18.643\u00a0kN"
    assert value_text(float("nan"), "N", style=style) == "–"


def test_copied_rows_hold_full_precision() -> None:
    rows = explanation_table(GAP)
    assert rows[0][:3] == ["Gap at equal energy (density share)", "11.256", "kg"]
    assert ["from", "8.9", "kg", GAP.range_meaning] in rows
    assert ["R2", "0.98349", "", ""] in rows
    assert ["formula", "m_s - m_r E_s / E_r", "", ""] in rows
    assert {len(row) for row in rows} == {4}
