"""What stands in place of a figure: signs for none, dates, ranges, errors."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.errors import DataError
from benchpack.model.entry import parse_value
from benchpack.model.pack import PACK_FIELD
from benchpack.units.absent import is_absent
from benchpack.units.number_text import decimal_marks, peculiar
from benchpack.units.parsing import parse_quantity


@pytest.mark.parametrize(
    "text",
    ["", "  ", "-", "–", "—", "n/a", "N/A", "TBD", "?", "unknown", "k.A.", "..."],
)
def test_signs_for_nothing_known(text: str) -> None:
    assert is_absent(text)
    assert parse_value(PACK_FIELD["voltage_v"], text) is None
    with pytest.raises(DataError, match="mass is empty"):
        parse_value(PACK_FIELD["mass_kg"], text)


@pytest.mark.parametrize("text", ["0", "-1", "NaN", "inf", "#N/A", "x", "1/2", "nine"])
def test_other_texts_are_no_such_sign(text: str) -> None:
    assert not is_absent(text)


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("#DIV/0!", "formula"),
        ("#N/A", "formula"),
        ("1.Feb", "date"),
        ("2. Mrz", "date"),
        ("Feb 01", "date"),
        ("01-Feb-26", "date"),
        ("2026-02-01", "date"),
        ("2026-02-01 12:00:00", "date"),
        ("01.02.2026", "date"),
        ("1/2/26", "date"),
        ("12:30", "date"),
        ("~450", "one plain figure"),
        ("ca. 450 kg", "one plain figure"),
        ("approx. 450", "one plain figure"),
        ("<500", "one plain figure"),
        ("400-450", "one plain figure"),
        ("400 – 450 kg", "one plain figure"),
        ("450 ± 5", "one plain figure"),
        ("450 +/- 5 kg", "one plain figure"),
        ("450 kg?", "one plain figure"),
        ("450*", "one plain figure"),
        ("450 kg (est.)", "one plain figure"),
    ],
)
def test_what_is_said_of_a_text_that_is_no_figure(text: str, word: str) -> None:
    with pytest.raises(DataError, match=word) as caught:
        parse_quantity(text, "mass")
    problem = caught.value.problems[0]
    assert f"“{text}”" in problem.what
    assert problem.remedy


@pytest.mark.parametrize("text", ["450 kg", "0,45 t", "4.5e2", "-5", "950 lbs"])
def test_plain_figures_stay_plain(text: str) -> None:
    assert abs(parse_quantity(text, "mass")) > 0


@given(st.text(max_size=60))
def test_any_text_is_judged_without_a_fault(text: str) -> None:
    is_absent(text)
    said = peculiar(text)
    assert said is None or all(said)


def test_marks_of_a_column_that_disagrees() -> None:
    assert decimal_marks(["82,5", "75.5", "1"]) == {",", "."}
    assert decimal_marks(["1,082", "12"]) == frozenset()
