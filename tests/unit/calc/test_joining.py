"""Money, stations and shares of joints: sums, rounding, and what is refused."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra import numpy as st_numpy
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc import joining
from benchpack.errors import RequestError

NAN = float("nan")
# A busy machine is no failure.
untimed = settings(deadline=None)
amounts = st_numpy.arrays(
    np.float64,
    st.integers(1, 12),
    elements=st.floats(0.0, 1e6).map(lambda value: round(value, 6)),
)


@untimed
@given(st.integers(1, 10_000), st.floats(0, 100), st.floats(0, 1e4), st.floats(0, 500))
def test_money_is_pieces_and_work(
    count: int, cost: float, seconds: float, rate: float
) -> None:
    def money(piece: float, work: float) -> float:
        given_money = joining.joint_money(
            count,
            piece_cost=piece,
            time_each_s=work,
            labour_rate_per_h=rate,
            station_rate_per_h=rate / 2.0,
        )
        return float(given_money)

    together = money(cost, seconds)
    apart = money(cost, 0.0) + money(0.0, seconds)
    assert together == pytest.approx(apart, rel=1e-9, abs=1e-9)
    assert money(cost, 0.0) == pytest.approx(count * cost, rel=1e-12)


def test_an_unknown_cost_or_time_makes_the_money_unknown() -> None:
    money = joining.joint_money(
        [16, 16, 16],
        piece_cost=[0.07, NAN, 0.07],
        time_each_s=[6.0, 6.0, NAN],
        labour_rate_per_h=45.0,
        station_rate_per_h=60.0,
    )
    assert_array_equal(np.isnan(money), [False, True, True])


@untimed
@given(amounts, st.floats(1.0, 600.0))
def test_the_stations_hold_the_work_and_one_less_would_not(
    seconds: np.ndarray, takt: float
) -> None:
    stations = float(joining.station_count(seconds, takt))
    assert stations == math.floor(stations)
    slack = 1e-6 * max(1.0, float(seconds.sum()))
    assert stations * takt >= seconds.sum() - slack
    assert (stations - 1) * takt < seconds.sum() or stations == 0


def test_a_whole_number_of_takts_needs_no_station_more() -> None:
    """0.1 s six hundred times is 60.00000000000004 s in floats."""
    assert joining.station_count(np.full(600, 0.1), 60.0) == 1.0
    assert joining.station_count([60.001], 60.0) == 2.0


def test_no_work_needs_no_station() -> None:
    assert joining.station_count([], 60.0) == 0.0
    assert joining.station_count([0.0, 0.0], 60.0) == 0.0


def test_stations_of_several_packs() -> None:
    stations = joining.station_count([[420.0, 96.0], [30.0, NAN]], [60.0, 45.0])
    assert_array_equal(stations, [9.0, NAN])


@pytest.mark.parametrize("takt", [0.0, -60.0, NAN])
def test_a_takt_that_is_no_time_is_refused(takt: float) -> None:
    with pytest.raises(RequestError, match="takt time has to be above zero"):
        joining.station_count([10.0], takt)


@untimed
@given(amounts)
def test_shares_climb_to_the_whole(values: np.ndarray) -> None:
    shares = joining.cumulative_share(values)
    assert shares.shape == values.shape
    if values.sum() == 0.0:
        assert np.isnan(shares).all()
        return
    assert (np.diff(shares) >= 0.0).all()
    assert shares[-1] == 1.0
    assert shares[0] == pytest.approx(values[0] / values.sum(), rel=1e-12)


def test_the_unknown_adds_nothing_to_a_share() -> None:
    assert_allclose(joining.cumulative_share([3.0, NAN, 1.0, -5.0]), [0.75, 0.75, 1, 1])
    assert joining.cumulative_share([]).shape == (0,)
    rows = joining.cumulative_share([[1.0, 1.0], [NAN, 0.0]])
    assert_array_equal(rows, [[0.5, 1.0], [NAN, NAN]])
