"""Money, stations and shares of joints against pint, pandas and work by hand."""

from __future__ import annotations

import pandas as pd
import pint
import pytest

from benchpack.calc import joining


@pytest.mark.parametrize(
    ("count", "cost", "seconds"), [(16, 0.07, 6.0), (84, 0.15, 4.0), (1, 3.7, 370.0)]
)
def test_money_in_the_units_of_pint(count: int, cost: float, seconds: float) -> None:
    units: pint.UnitRegistry[float] = pint.UnitRegistry()
    units.define("EUR = [currency]")
    rate = units.Quantity(45.0, "EUR/hour") + units.Quantity(60.0, "EUR/hour")
    each = units.Quantity(cost, "EUR") + units.Quantity(seconds, "second") * rate
    wanted = (count * each).to("EUR").magnitude
    given = joining.joint_money(
        count,
        piece_cost=cost,
        time_each_s=seconds,
        labour_rate_per_h=45.0,
        station_rate_per_h=60.0,
    )
    assert given == pytest.approx(wanted, rel=1e-12)


def test_money_and_stations_by_hand() -> None:
    """88 screws at 5 s are 440 s, 7.3 minutes: at 36 per hour 4.40, pieces 8.80.

    In a takt of 60 s they fill 7.3 stations, that is 8; in one of 55 s exactly 8.
    """
    given = joining.joint_money(
        88,
        piece_cost=0.1,
        time_each_s=5.0,
        labour_rate_per_h=36.0,
        station_rate_per_h=0.0,
    )
    assert given == pytest.approx(8.80 + 4.40, rel=1e-12)
    assert joining.station_count([88 * 5.0], 60.0) == 8.0
    assert joining.station_count([200.0, 240.0], 55.0) == 8.0
    assert joining.station_count([200.0, 240.1], 55.0) == 9.0


def test_shares_against_pandas() -> None:
    masses = pd.Series([0.73, 0.52, 0.336, 0.107, 0.045, 0.0])
    wanted = (masses.cumsum() / masses.sum()).to_list()
    assert joining.cumulative_share(masses.to_numpy()) == pytest.approx(
        wanted, rel=1e-12
    )
