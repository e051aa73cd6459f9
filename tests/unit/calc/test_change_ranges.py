"""Ranges, changes and factors: what is taken, and what is refused."""

from __future__ import annotations

import math

import numpy as np
import pytest

from benchpack.calc.change_ranges import (
    ChangeRanges,
    CommonFactors,
    MoneyRanges,
    Ranges,
)
from benchpack.calc.distributions import Distribution
from benchpack.errors import RequestError


def test_moments_follow_the_kind_of_each_range() -> None:
    kinds = [Distribution.TRIANGULAR, Distribution.PERT, Distribution.RECTANGULAR]
    ranges = Ranges([1.0] * 3, [2.0] * 3, [6.0] * 3, kinds=kinds)
    assert ranges.means == pytest.approx([3.0, 2.5, 3.5])
    assert ranges.variances == pytest.approx([21.0 / 18.0, 0.75, 25.0 / 12.0])


def test_a_range_keeps_what_it_was_given() -> None:
    low = np.array([1.0, 2.0])
    ranges = Ranges(low, low, low)
    low[0] = 9.0
    assert ranges.low.tolist() == [1.0, 2.0]
    with pytest.raises(ValueError, match="read-only"):
        ranges.low[0] = 9.0


@pytest.mark.parametrize(
    ("low", "likely", "high"),
    [
        ([1.0, 3.0], [2.0, 2.0], [3.0, 4.0]),
        ([1.0, 1.0], [2.0, 5.0], [3.0, 4.0]),
        ([1.0, math.nan], [2.0, 2.0], [3.0, 4.0]),
        ([1.0, 1.0], [2.0, 2.0], [3.0, math.inf]),
    ],
)
def test_the_range_at_fault_is_named(
    low: list[float], likely: list[float], high: list[float]
) -> None:
    with pytest.raises(RequestError, match="Range 2 is"):
        Ranges(low, likely, high)


def test_lengths_have_to_agree() -> None:
    with pytest.raises(RequestError, match="values"):
        Ranges([1.0], [1.0, 2.0], [3.0])
    with pytest.raises(RequestError, match="kinds"):
        Ranges([1.0], [1.0], [3.0], kinds=[Distribution.PERT] * 2)
    with pytest.raises(RequestError, match="row"):
        Ranges([[1.0]], [[1.0]], [[3.0]])
    two = Ranges.exactly([1.0, 2.0])
    with pytest.raises(RequestError, match="money"):
        ChangeRanges(two, money=[MoneyRanges(Ranges.exactly(1.0))])
    with pytest.raises(RequestError, match="chances"):
        ChangeRanges(two, release_chance=[0.5, 0.5, 0.5])
    with pytest.raises(RequestError, match="one range"):
        CommonFactors(two)


def test_a_chance_lies_between_0_and_1() -> None:
    for chance in (-0.1, 1.1, math.nan):
        with pytest.raises(RequestError, match="between 0 and 1"):
            ChangeRanges(Ranges.exactly([1.0, 2.0]), release_chance=[0.5, chance])


def test_no_change_is_no_proposal() -> None:
    with pytest.raises(RequestError, match="no change"):
        ChangeRanges(Ranges([], [], []))


def test_one_chance_goes_for_all() -> None:
    changes = ChangeRanges(Ranges.exactly([1.0, 2.0]), release_chance=0.7)
    assert changes.release_chance.tolist() == [0.7, 0.7]
