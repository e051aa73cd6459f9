"""Numbers as text: every spelling that is read, and every one that is refused."""

from __future__ import annotations

import contextlib
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.errors import DataError
from benchpack.units.formatting import NumberStyle, format_number, plain
from benchpack.units.parsing import detect_decimal, parse_number

FINITE = st.floats(allow_nan=False, allow_infinity=False)
NEAR_NUMBERS = st.text("0123456789.,+-\u2212eE \u00a0\u2009\u202f'\u2019x")


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("431", 431.0),
        ("431.5", 431.5),
        ("  431.5\t", 431.5),
        ("0,45", 0.45),
        ("0,450", 0.45),
        (",5", 0.5),
        (".5", 0.5),
        ("1234,567", 1234.567),
        ("12,3", 12.3),
        ("12,3456", 12.3456),
        ("1 234,5", 1234.5),
        ("1\u00a0234,5", 1234.5),
        ("1\u2009234,5", 1234.5),
        ("1\u202f234,5", 1234.5),
        ("1\u2007234", 1234.0),
        ("1 234 567,891", 1234567.891),
        ("1'234.5", 1234.5),
        ("1\u2019234.567", 1234.567),
        ("1.234,5", 1234.5),
        ("1,234.5", 1234.5),
        ("1.234.567,8", 1234567.8),
        ("1,234,567.8", 1234567.8),
        ("1,234,567", 1234567.0),
        ("1.234.567", 1234567.0),
        ("1.234", 1.234),
        ("\u2212431", -431.0),
        ("-431", -431.0),
        ("+431", 431.0),
        ("1e3", 1000.0),
        ("4.5E+2", 450.0),
        ("4,5e\u22122", 0.045),
        ("007", 7.0),
    ],
)
def test_reads(text: str, value: float) -> None:
    assert parse_number(text) == value


@pytest.mark.parametrize(
    ("text", "comma", "point"),
    [
        ("1,234", 1.234, 1234.0),
        ("1.234", 1234.0, 1.234),
        ("-12,345", -12.345, -12345.0),
        ("123.456", 123456.0, 123.456),
    ],
)
def test_hint_decides_what_is_open(text: str, comma: float, point: float) -> None:
    assert parse_number(text, decimal=",") == comma
    assert parse_number(text, decimal=".") == point


@pytest.mark.parametrize("decimal", [None, ".", ","])
@pytest.mark.parametrize(
    ("text", "value"),
    [("1.5", 1.5), ("0,45", 0.45), ("1.234,5", 1234.5), ("1 234.567", 1234.567)],
)
def test_hint_does_not_bend_what_is_plain(
    text: str, value: float, decimal: str | None
) -> None:
    assert parse_number(text, decimal=decimal) == value


def test_lone_comma_with_three_digits_asks_for_the_mark() -> None:
    with pytest.raises(DataError) as caught:
        parse_number("1,234")
    (problem,) = caught.value.problems
    assert problem.value == "1,234"
    assert "1.234 or 1234" in problem.what
    assert "decimal mark" in problem.remedy


@pytest.mark.parametrize(
    "text",
    [
        *("", "   ", ".", ",", "-", "+", "\u2212", "e3", "n/a", "\u2013"),
        *("nan", "NaN", "inf", "-Infinity", "1e999", "-1e999", "1e-999"),
        *("12 34x", "12 34", "1 23", "1  234", "- 5", "--5", "+-5", "5-", "\u22125+"),
        *("12,34,5", "1,23,456", "1234,567,890", "1.23.456", "1 2345", "1'23"),
        *("1,234.567,8", "1.234.567.8.9", "1,2.3,4", "1 234'567", "1'234,567.8"),
        *("1,,2", "1..2", "5.", "5,", "1e", "1e2.5", "1e3e4", "0x1F", "1_000"),
        *("\uff11\uff12", "\u0663", "12²", "½", "(12)", "12%", "1\n2"),
    ],
)
def test_refuses(text: str) -> None:
    with pytest.raises(DataError) as caught:
        parse_number(text)
    assert all(problem.remedy for problem in caught.value.problems)


def test_message_stays_short() -> None:
    with pytest.raises(DataError) as caught:
        parse_number("x" * 10_000)
    assert len(str(caught.value)) < 150


@pytest.mark.parametrize(
    ("texts", "mark"),
    [
        (["1,234", "0,45"], ","),
        (["1,234", "431.5"], "."),
        (["1.234", "12,5 kg", "n/a", ""], ","),
        (["1 234,567"], ","),
        (["1,234,567"], "."),
        (["1.234.567"], ","),
        (["EUR 3,20/kg", "€1,234"], ","),
        (["1,234", "2,345"], None),
        (["1.234", "12"], None),
        (["12,5", "12.5"], None),
        (["12.5.2024", "LFP"], None),
        ([], None),
    ],
)
def test_detects_the_mark_of_a_column(texts: list[str], mark: str | None) -> None:
    assert detect_decimal(texts) == mark


@given(st.text() | NEAR_NUMBERS, st.sampled_from([None, ".", ","]))
def test_any_text_is_a_finite_number_or_refused(text: str, decimal: str | None) -> None:
    value = None
    with contextlib.suppress(DataError):
        value = parse_number(text, decimal=decimal)
    assert value is None or math.isfinite(value)


@given(st.lists(st.text() | NEAR_NUMBERS))
def test_detection_takes_any_text(texts: list[str]) -> None:
    assert detect_decimal(texts) in (None, ".", ",")


@given(FINITE)
def test_file_text_reads_back_the_same(value: float) -> None:
    assert parse_number(plain(value), decimal=".") == value
    assert float(plain(value)) == value


@given(
    st.floats(-1e12, 1e12),
    st.integers(0, 6),
    st.sampled_from([".", ","]),
    st.booleans(),
)
def test_screen_text_reads_back_rounded(
    value: float, decimals: int, mark: str, grouped: bool
) -> None:
    style = NumberStyle(decimal_mark=mark)
    text = format_number(value, decimals, style=style, grouped=grouped)
    assert parse_number(text, decimal=mark) == float(f"{value:.{decimals}f}")


@given(st.integers(0, 10**12), st.sampled_from(" \u00a0\u2009\u202f'\u2019"))
def test_groups_of_three_are_read(value: int, mark: str) -> None:
    assert parse_number(f"{value:,}".replace(",", mark)) == value
