"""Derived worth against a worked table, a loop gone round, and numpy-financial."""

from __future__ import annotations

import numpy as np
import numpy_financial as npf
import pint
import pytest

from benchpack.calc.derived_worth import (
    battery_saved_kg_per_kg,
    charged_kwh_per_kg,
    driver_saving_per_kg,
    energy_saved_kwh_per_kg,
    range_gain_share,
    worth_at_equal_range,
)

# Per 100 km and 100 kg, range, cost of a kWh; dE, g, V without and with the loop.
ROWS = [
    (0.30, 400.0, 80.0, 0.0126, 0.079, 1.01, 1.10),
    (0.47, 400.0, 100.0, 0.0198, 0.124, 1.98, 2.26),
    (0.60, 400.0, 100.0, 0.0253, 0.158, 2.53, 3.00),
    (0.60, 500.0, 80.0, 0.0316, 0.197, 2.53, 3.15),
    (0.60, 500.0, 100.0, 0.0316, 0.197, 3.16, 3.93),
    (0.60, 500.0, 140.0, 0.0316, 0.197, 4.42, 5.51),
    (0.70, 500.0, 100.0, 0.0368, 0.230, 3.68, 4.79),
    (1.17, 500.0, 140.0, 0.0616, 0.385, 8.62, 14.0),
]


@pytest.mark.parametrize("row", ROWS)
def test_a_worked_table(row: tuple[float, ...]) -> None:
    """Usable share 0.95, 0.16 kWh/kg; worked by hand, to the digits printed."""
    energy, way, cost, saved, loop, plain, worth = row
    given = energy_saved_kwh_per_kg(energy / 100.0, way, usable_share=0.95)
    assert float(given) == pytest.approx(saved, abs=5.1e-5)
    battery = battery_saved_kg_per_kg(given, 0.16)
    assert float(battery) == pytest.approx(loop, abs=5.1e-4)
    assert float(given) * cost == pytest.approx(plain, abs=5.1e-3)
    found = worth_at_equal_range(given, cost, pack_density_kwh_per_kg=0.16)
    assert float(found) == pytest.approx(worth, abs=0.05 if worth > 10 else 5.1e-3)


@pytest.mark.parametrize("secondary", [0.0, 0.3])
def test_the_loop_gone_round(secondary: float) -> None:
    """Lighter by a kilogram and what goes with it; each round saves its battery."""
    energy, way, usable, density, cost = 0.006, 500.0, 0.95, 0.16, 100.0
    lighter, money = 1.0 + secondary, 0.0
    for _ in range(200):
        kwh = energy * lighter * way / 100.0 / usable
        money += kwh * cost
        lighter = kwh / density
    saved = energy_saved_kwh_per_kg(energy, way, usable_share=usable)
    given = worth_at_equal_range(
        saved, cost, pack_density_kwh_per_kg=density, secondary_share=secondary
    )
    assert float(given) == pytest.approx(money, rel=1e-12)


def test_the_battery_in_the_units_of_pint() -> None:
    units: pint.UnitRegistry[float] = pint.UnitRegistry()
    energy = units.Quantity(0.6, "kWh") / (units.Quantity(100, "km") * 100 * units.kg)
    saved = energy * units.Quantity(500.0, "km") / 0.95
    given = energy_saved_kwh_per_kg(0.006, 500.0, usable_share=0.95)
    assert float(given) == pytest.approx(saved.to("kWh/kg").magnitude, rel=1e-12)
    share = saved / units.Quantity(160.0, "Wh/kg")
    battery = battery_saved_kg_per_kg(given, 0.16)
    assert float(battery) == pytest.approx(share.to("").magnitude, rel=1e-12)
    charged = energy * units.Quantity(200e3, "km") / 0.88
    bought = charged_kwh_per_kg(0.006, 200e3, charging_efficiency=0.88)
    assert float(bought) == pytest.approx(charged.to("kWh/kg").magnitude, rel=1e-12)


def test_range_by_two_vehicles() -> None:
    """70 kWh at 17 and at 17 less 0.006 a kilogram; to second order by hand."""
    before = 70.0 / 17.0
    for saved in (1.0, 10.0, 50.0):
        gained = 70.0 / (17.0 - 0.006 * saved) / before - 1.0
        given = float(range_gain_share(0.006, saved, consumption_kwh=17.0))
        assert given == pytest.approx(gained, rel=1.01 * gained)
        assert given / (1.0 - given) == pytest.approx(gained, rel=1e-9)


def test_what_the_driver_saves() -> None:
    """By hand: 13.6 kWh/kg over 200,000 km, 3.4 per kg, 2.4 as present value."""
    life = charged_kwh_per_kg(0.006, 200_000.0, charging_efficiency=0.88)
    assert float(life) == pytest.approx(13.6, abs=0.05)
    assert float(life) * 0.25 == pytest.approx(3.4, abs=0.05)
    a_year = charged_kwh_per_kg(0.006, 15_000.0, charging_efficiency=0.88)
    given = driver_saving_per_kg(a_year, 0.25, years=13.0, rate=0.05)
    assert float(given) == pytest.approx(2.4, abs=0.05)


@pytest.mark.parametrize("rate", [0.0, 0.05, 0.12])
@pytest.mark.parametrize("years", [1, 13])
def test_the_driver_against_numpy_financial(rate: float, years: int) -> None:
    """Present value of level payments, pv, and of the years one by one, npv."""
    given = driver_saving_per_kg(1.02, 0.25, years=float(years), rate=rate)
    # Its pv warns where there is no interest, and npv has the word there.
    if rate > 0.0:
        level = -npf.pv(rate, years, 1.02 * 0.25)
        assert float(given) == pytest.approx(level, rel=1e-12)
    flows = np.full(years + 1, 1.02 * 0.25)
    flows[0] = 0.0
    assert float(given) == pytest.approx(npf.npv(rate, flows), rel=1e-12)
