"""Ranges: what stands, how they add up, how people write them."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.errors import DataError
from benchpack.model.families import Range as RangeOfFamilies
from benchpack.model.fields import Field, Kind
from benchpack.model.range_columns import range_fields, with_ranges
from benchpack.model.ranges import Range, parse_range

_ENDS = st.lists(st.floats(-1e9, 1e9), min_size=3, max_size=3).map(sorted)
RANGES = _ENDS.map(lambda ends: Range(*ends))


@pytest.mark.parametrize(
    ("ends", "said"),
    [
        ((2.0, 1.0, 3.0), "runs 2, 1, 3"),
        ((1.0, 3.0, 2.0), "runs 1, 3, 2"),
        ((math.nan, 1.0, 2.0), "not known"),
        ((0.0, 1.0, math.inf), "not known"),
    ],
)
def test_a_range_that_cannot_be_is_refused(
    ends: tuple[float, float, float], said: str
) -> None:
    with pytest.raises(DataError, match=said):
        Range(*ends)


def test_the_whole_program_has_one_range() -> None:
    assert RangeOfFamilies is Range


@given(RANGES, RANGES)
def test_sums_and_differences_hold_the_sums_of_any_two_values(
    one: Range, other: Range
) -> None:
    total, left = one + other, one - other
    assert total.likely == one.likely + other.likely
    assert total.ends == tuple(a + b for a, b in zip(one.ends, other.ends, strict=True))
    assert (left.low, left.high) == (one.low - other.high, one.high - other.low)
    assert left.likely == one.likely - other.likely


@given(RANGES, st.floats(-1e6, 1e6))
def test_a_factor_scales_every_end(found: Range, factor: float) -> None:
    scaled = found.scaled(factor)
    assert sorted(end * factor for end in found.ends) == list(scaled.ends)
    assert scaled.likely == found.likely * factor
    assert -found == found.scaled(-1.0)


@given(RANGES)
def test_a_written_range_is_read_again(found: Range) -> None:
    assert parse_range(found.text()) == found


@pytest.mark.parametrize(
    ("text", "ends"),
    [
        ("8:10:14", (8, 10, 14)),
        (" 8 : 10 : 14 ", (8, 10, 14)),
        ("10 +-2", (8, 10, 12)),
        ("10 ± 2", (8, 10, 12)),
        ("10 +/- 2", (8, 10, 12)),
        ("10 +- 20 %", (8, 10, 12)),
        ("-10 +- 20%", (-12, -10, -8)),
        ("10", (10, 10, 10)),
        ("-1.5:0:2.5", (-1.5, 0, 2.5)),
    ],
)
def test_ranges_are_read_as_people_write_them(
    text: str, ends: tuple[float, float, float]
) -> None:
    assert parse_range(text).ends == pytest.approx(ends)


def test_a_comma_marks_decimals_where_it_is_said_to() -> None:
    assert parse_range("0,5:1,5:2", decimal=",").ends == (0.5, 1.5, 2.0)


@pytest.mark.parametrize("text", ["", "1:2", "1:2:3:4", "a", "1 +- 2 +- 3", "3:2:1"])
def test_what_is_no_range_is_refused_with_the_text(text: str) -> None:
    with pytest.raises(DataError) as caught:
        parse_range(text)
    assert caught.value.problems[0].value == text
    assert caught.value.problems[0].remedy


COLUMNS: tuple[Field, ...] = (
    Field("name", "name"),
    *range_fields("cost", "cost", help_text="Cost", floor=-9.0, ceiling=9.0),
)


def test_three_columns_make_one_range() -> None:
    values = {"name": "a", "cost_low": -1.0, "cost_likely": 2.0, "cost_high": 3.0}
    assert with_ranges(COLUMNS, values) == {"name": "a", "cost": Range(-1.0, 2.0, 3.0)}
    likely = {"name": "a", "cost_likely": 2.0}
    assert with_ranges(COLUMNS, likely)["cost"] == Range.exactly(2.0)
    assert with_ranges(COLUMNS, {"name": "a"}) == {"name": "a"}


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"cost_low": 1.0}, "The cost has no likely and high"),
        ({"cost_low": 1.0, "cost_likely": 2.0}, "The cost has no high"),
        (
            {"cost_low": 5.0, "cost_likely": 2.0, "cost_high": 3.0},
            "The cost runs 5, 2, 3",
        ),
    ],
)
def test_a_range_with_one_end_is_refused_in_its_column(
    values: dict[str, float], said: str
) -> None:
    with pytest.raises(DataError, match=said) as caught:
        with_ranges(COLUMNS, values)
    assert caught.value.problems[0].column == "cost likely"


def test_a_column_below_zero_has_its_own_floor() -> None:
    low = COLUMNS[1]
    assert low.kind is Kind.NUMBER
    assert low.refusal(-9.0) is None
    refusal = low.refusal(-9.5)
    assert refusal is not None
    assert refusal.remedy == "It has to be at least -9."
    assert low.value_of(_Costed(Range(1.0, 2.0, 3.0))) == 1.0
    assert low.value_of(_Costed(None)) is None


class _Costed:
    def __init__(self, cost: Range | None) -> None:
        self.cost = cost
