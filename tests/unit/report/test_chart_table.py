"""The data of each kind of chart as a table."""

from __future__ import annotations

import importlib
import pkgutil
from dataclasses import replace

import numpy as np
import pytest

from benchpack import report
from benchpack.report.candidates_charts import CandidatesSpec
from benchpack.report.chart_rows import chart_rows, unit_of
from benchpack.report.chart_specs import ChartSpec
from benchpack.report.chart_table import chart_table, number_columns, shown_table
from tests.ui.charts import samples

NAN = float("nan")
CANDIDATES = CandidatesSpec(
    names=("PP-GF30",),
    mass=np.array([-5.2]),
    mass_low=np.array([-6.0]),
    mass_high=np.array([-4.0]),
    sheet_mass=np.array([-7.0]),
    cost=np.array([12.0]),
    cost_low=np.array([9.0]),
    cost_high=np.array([NAN]),
    verdicts=("fail",),
)
SPECS: dict[str, ChartSpec] = {
    "energy mass": samples.energy_mass(),
    "gap bars": samples.gap_bars(),
    "waterfall": samples.waterfall(),
    "fan": samples.fan(),
    "closure": samples.closure(),
    "pareto": samples.pareto(),
    "swings": samples.swings(),
    "candidates": CANDIDATES,
    "programme": samples.programme(),
    "worth map": samples.worth_map(),
    "shares": samples.shares(),
    "sets": samples.sets(),
}


def kinds_of_spec() -> set[type[ChartSpec]]:
    for module in pkgutil.iter_modules(report.__path__):
        importlib.import_module(f"{report.__name__}.{module.name}")
    return set(ChartSpec.__subclasses__())


def test_every_kind_of_spec_has_a_table() -> None:
    assert kinds_of_spec() == {type(spec) for spec in SPECS.values()}


@pytest.mark.parametrize("spec", SPECS.values(), ids=SPECS)
def test_a_table_is_exact_and_its_numbers_have_units(spec: ChartSpec) -> None:
    rows, table = chart_rows(spec), chart_table(spec)
    assert len(table) > 1
    assert {len(row) for row in table} == {len(table[0])}
    assert len(set(table[0])) == len(table[0])
    for head, is_number in zip(table[0], number_columns(spec), strict=True):
        assert not is_number or unit_of(head), head
    for exact, row in zip(table, rows, strict=True):
        for text, cell in zip(exact, row, strict=True):
            if isinstance(cell, str):
                assert text == cell
            else:
                assert text == "" if cell != cell else float(text) == cell


@pytest.mark.parametrize("spec", SPECS.values(), ids=SPECS)
def test_an_empty_spec_gives_heads_alone(spec: ChartSpec) -> None:
    empty = type(spec)()
    assert len(chart_table(empty)) == 1
    assert shown_table(empty)[0] == chart_table(empty)[0]


def test_a_spec_of_no_kind_is_refused() -> None:
    with pytest.raises(TypeError, match="ChartSpec has no table"):
        chart_table(ChartSpec())


def test_bars_and_shares_are_listed_as_they_are_drawn() -> None:
    gaps = chart_table(samples.gap_bars())
    assert [row[0] for row in gaps[1:]] == [
        "Ruff 88",
        "Dunlin 74",
        "Curlew 95",
        "Knot 62",
        "Stint 70",
    ]
    assert gaps[-1] == ["Stint 70", "", ""]
    shares = chart_table(samples.shares())
    assert shares[1] == ["worth per kilogram", "0.55", "0.03", "0.62", "0.04"]


def test_a_target_and_the_pack_are_rows_of_their_own() -> None:
    steps = replace(samples.waterfall(), target=25.0)
    assert chart_table(steps)[-1] == ["target", "target", "25"]
    assert chart_table(samples.closure())[-1] == ["pack", "400"]


def test_rows_are_named_by_what_they_are() -> None:
    assert chart_table(samples.sets())[0][0] == "set"
    worths = replace(samples.sets(), row_head="worth of a kilogram")
    assert chart_table(worths)[0][0] == "worth of a kilogram"
    assert chart_table(samples.fan())[0][0] == "place"


def test_a_map_is_listed_place_by_place() -> None:
    spec = samples.worth_map()
    table = chart_table(spec)
    assert table[0] == [spec.x_label, spec.y_label, spec.value_label]
    assert len(table) == 1 + spec.values.size
    x, y, money = (float(text) for text in table[-1])
    assert money == pytest.approx(20 * x * y - 25)


def test_the_screen_gets_decimals_by_column() -> None:
    spec = replace(
        samples.sets(),
        low=np.array([20.0, -10.0, -12345.0]),
        likely=np.array([34.0, 1 / 3, NAN]),
        high=np.array([0.5, 0.00012345, 0.25]),
        decimal_mark=",",
    )
    shown = shown_table(spec)
    assert [row[1] for row in shown[1:]] == ["20", "−10", "−12\u2009345"]
    assert [row[2] for row in shown[1:]] == ["34,00", "0,33", "–"]
    assert [row[3] for row in shown[1:]] == ["0,5000", "0,0001", "0,2500"]
    assert chart_table(spec)[3][1:3] == ["-12345", ""]


@pytest.mark.parametrize(
    ("label", "unit"),
    [("Gap [kg]", "[kg]"), ("Money [EUR] per year [EUR/a]", "[EUR/a]"), ("Year", "")],
)
def test_the_unit_stands_at_the_end_of_a_label(label: str, unit: str) -> None:
    assert unit_of(label) == unit
