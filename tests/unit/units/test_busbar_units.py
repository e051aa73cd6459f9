"""Currents and differences of temperature, apart from the table of column heads."""

from __future__ import annotations

import pytest

from benchpack.errors import DataError
from benchpack.units.busbar_units import CURRENT, RISE, busbar_quantity
from benchpack.units.headers import split_header
from benchpack.units.parsing import parse_quantity


@pytest.mark.parametrize(
    ("text", "current_a"), [("5 kA", 5000), ("350", 350), ("0,3 kA", 300), ("9 A", 9)]
)
def test_currents_are_read(text: str, current_a: float) -> None:
    assert parse_quantity(text, CURRENT, decimal=",") == pytest.approx(current_a)


@pytest.mark.parametrize(
    ("text", "rise_k"), [("60", 60), ("60 K", 60), ("60 °C", 60), ("108 °F", 60)]
)
def test_a_rise_has_no_offset(text: str, rise_k: float) -> None:
    assert parse_quantity(text, RISE) == pytest.approx(rise_k, rel=1e-15)


def test_other_units_are_refused_by_name() -> None:
    with pytest.raises(DataError, match="a current is expected here"):
        parse_quantity("5 mm", CURRENT)


def test_a_head_with_an_a_stays_what_it_was() -> None:
    assert split_header("position (A)") == ("position (A)", None)
    assert busbar_quantity("length").unit == "mm"
