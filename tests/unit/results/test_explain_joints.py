"""Figures of joints say where they come from."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from numpy.testing import assert_allclose

from benchpack.errors import RequestError
from benchpack.model.joint import Joint
from benchpack.model.study import Study
from benchpack.report.explanation import explanation_text
from benchpack.results.explain import explain
from benchpack.results.explain_joints import JOINT_KEYS, joint_record, joints_record
from benchpack.results.figure import Figure
from benchpack.results.results import compute
from benchpack.units.formatting import NumberStyle
from tests.unit.results.joint_samples import EUR, PLATE, joint, stocked, weighed

GASKET = weighed("gasket", 106.6, family="gasket", length_mm=5920.0)
CLIPS = joint("clips", family="clip", designation="edge clip", count=64)


def ask(key: str, record: str = "", *joints: Joint, study: Study = EUR) -> Figure:
    library = stocked(*(joints or (PLATE, GASKET, CLIPS)))
    return explain(compute(library, study), key, reference=record)


def one(key: str, name: str, **changes: Any) -> Figure:
    study = replace(EUR, **changes)
    return ask(key, joint_record("Heron 70", name), study=study)


@pytest.mark.parametrize("key", JOINT_KEYS)
def test_every_figure_of_joints_says_where_it_comes_from(key: str) -> None:
    figure = ask(key, joint_record("Heron 70", "plate screws"))
    assert math.isfinite(figure.value)
    assert figure.key == key
    assert figure.formula
    assert figure.inputs
    assert figure.source
    assert all(item.source for item in figure.inputs)
    shown = explanation_text(figure, style=NumberStyle())
    assert shown.value
    assert not shown.missing


@pytest.mark.parametrize("key", ["joints count", "joints mass", "joints time"])
def test_a_total_is_the_sum_of_its_kinds(key: str) -> None:
    figure = ask(key)
    kinds = [i.value for i in figure.inputs if i.label.startswith(("so", "ga", "cl"))]
    known = [value for value in kinds if not math.isnan(value)]
    assert_allclose(math.fsum(known), figure.value)


def test_the_sum_says_how_each_kind_is_known_and_what_is_missing() -> None:
    figure = ask("joints mass", "Heron 70")
    sources = {item.label: item.source for item in figure.inputs}
    assert sources["socket screw, 16 pieces"] == "standard table"
    assert sources["gasket, 5.9 m"] == "weighed"
    assert sources["clip, 64 pieces"] == "without a mass"
    assert sources["rows that add nothing"] == "they have no mass"
    assert figure.low < figure.value < figure.high
    assert "quadrature" in figure.range_meaning


def test_more_kinds_than_can_be_read_are_one_row() -> None:
    families = "clip|nut|stud|gasket|clinch|spot weld|snap fit|press fit|hex screw|"
    families += "blind rivet|solid rivet|arc weld|laser weld"
    joints = [
        weighed(name, 10.0, family=name, length_mm=1000.0)
        for name in families.split("|")
    ]
    figure = ask("joints mass", "", *joints)
    assert len(figure.inputs) == 11
    assert figure.inputs[-1].label == "3 other kinds"
    assert_allclose(math.fsum(item.value for item in figure.inputs), figure.value)


def test_rates_stand_beside_the_money() -> None:
    inputs = {item.label: item for item in ask("joints money").inputs}
    assert inputs["r_l, labour rate"].value == 45
    assert inputs["r_s, station rate"].unit == "EUR/h"


def test_a_mass_from_geometry_can_be_computed_again() -> None:
    screws = replace(PLATE, designation="ISO 4017 M8x25")
    figure = ask("joint mass", joint_record("Heron 70", screws.name), screws)
    given = {item.label.split(",")[0]: item.value for item in figure.inputs}
    assert_allclose(given["n"] * given["m_1"] / 1000, figure.value)
    assert given["s"] == 13
    assert "0.866 s^2 k" in figure.formula
    assert "within 7 %" in figure.source
    half = 2 * figure.value * 0.07 / math.sqrt(3)
    assert_allclose(
        (figure.low, figure.high), (figure.value - half, figure.value + half)
    )


def test_a_listed_mass_names_its_table() -> None:
    figure = one("joint mass", "plate screws")
    assert "weight chart DIN 912/ISO 4762" in figure.source
    assert "(confirmed)" in figure.source


def test_a_usual_time_names_the_family_and_what_it_rests_on() -> None:
    figure = one("joint time", "plate screws")
    (time,) = [item for item in figure.inputs if item.label.startswith("t_1")]
    assert (time.value, time.unit) == (6, "s")
    assert "usual for a socket screw, 3 to 15 a piece" in time.source
    assert "recalled" in time.source


def test_a_line_says_the_length_its_usual_figures_go_by() -> None:
    figure = one("joint money", "gasket")
    given = {item.label.split(",")[0]: item for item in figure.inputs}
    assert given["L"].value == 5920
    assert "a metre" in given["c_1"].source
    rate = (given["r_l"].value + given["r_s"].value) / 3600
    again = given["n"].value * (given["c_1"].value + given["t_1"].value * rate)
    assert_allclose(figure.value, again)


def test_what_is_unknown_says_what_to_do() -> None:
    figure = one("joint mass", "clips")
    assert math.isnan(figure.value)
    assert figure.missing == (
        "What one 'edge clip' weighs cannot be worked out. Weigh 20 and divide."
    )
    assert one("joint money", "clips", currency="USD").missing == (
        "Usual costs are known in EUR only: enter the cost of one in USD."
    )
    clips = explain(compute(stocked(CLIPS), EUR), "joints mass")
    assert clips.missing == "No row of Heron 70 has a mass."
    empty = explain(compute(stocked(), EUR), "joints time")
    assert empty.missing == "No joints of Heron 70 are recorded."


def test_without_a_record_the_subject_is_meant() -> None:
    assert ask("joints mass").label == "Mass of the joints of Heron 70"
    assert ask("joints mass", "Egret 80").missing.startswith("No joints of Egret 80")


def test_names_with_line_breaks_are_found() -> None:
    odd = replace(PLATE, name="two\nlines")
    record = joint_record("Heron 70", "two\nlines")
    assert ask("joint mass", record, odd).label == "Mass of two\nlines, Heron 70"


@pytest.mark.parametrize(
    ("key", "record"),
    [
        ("joint mass", ""),
        ("joint mass", "Heron 70"),
        ("joint mass", "Heron 70\nnothing"),
        ("joints mass", "Snipe"),
        ("joints beauty", ""),
    ],
)
def test_what_is_not_there_is_refused(key: str, record: str) -> None:
    with pytest.raises(RequestError):
        ask(key, record)


def test_joints_need_no_reference() -> None:
    results = compute(stocked(PLATE), replace(EUR, reference=""))
    assert math.isfinite(explain(results, "joints mass").value)


def test_the_sum_of_some_joints_is_that_of_these_rows_alone() -> None:
    figure = ask("joints mass", joints_record("Heron 70", ["plate screws", "gasket"]))
    assert figure.label == "Mass of the joints of Heron 70, 2 of 3 rows"
    each = [ask("joint mass", joint_record("Heron 70", n)) for n in ("plate screws",)]
    assert_allclose(figure.value, each[0].value + 0.1066)
    rows = {item.label: (item.value, item.unit) for item in figure.inputs}
    assert rows["gasket: 5.9 m"] == (106.6, "g")
    assert set(rows) == {"plate screws: 16 pieces", "gasket: 5.9 m"}


def test_many_chosen_joints_are_told_by_their_kinds() -> None:
    many = [replace(CLIPS, name=f"clips {place}") for place in range(12)]
    record = joints_record("Heron 70", [one.name for one in many[:11]])
    figure = ask("joints count", record, *many)
    assert (figure.value, len(figure.inputs)) == (704, 1)
    assert figure.label.endswith("11 of 12 rows")


@pytest.mark.parametrize(
    ("pack", "said"),
    [("Heron 70", "no longer there"), ("Zebra", "needs a pack")],
)
def test_joints_that_are_gone_are_not_explained(pack: str, said: str) -> None:
    with pytest.raises(RequestError, match=said):
        ask("joints mass", joints_record(pack, ["bolts"]))


def test_the_stations_of_a_pack_are_not_those_of_some_joints() -> None:
    some = ask("joints time", joints_record("Heron 70", ["plate screws"]))
    whole = ask("joints time", "Heron 70")
    assert "stations that it fills" in {item.label for item in whole.inputs}
    assert "stations that it fills" not in {item.label for item in some.inputs}
