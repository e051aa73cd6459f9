"""What must hold for worth derived from the vehicle."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc.derived_worth import (
    battery_saved_kg_per_kg,
    charged_kwh_per_kg,
    driver_saving_per_kg,
    energy_saved_kwh_per_kg,
    range_gain_share,
    worth_at_equal_range,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from numpy.typing import ArrayLike

    from benchpack.calc._arrays import FloatArray

untimed = settings(deadline=None, max_examples=50)

NAN = float("nan")


@untimed
@given(
    st.floats(0.0, 0.07), st.floats(0.0, 300.0), st.floats(0.0, 2.0), st.floats(0.1, 5)
)
def test_worth_is_linear_in_cost_and_grows_with_the_loop(
    saved: float, cost: float, secondary: float, times: float
) -> None:
    def worth(cost: float, density: float, secondary: float) -> float:
        found = worth_at_equal_range(
            saved, cost, pack_density_kwh_per_kg=density, secondary_share=secondary
        )
        return float(found)

    one = worth(cost, 0.16, secondary)
    assert worth(times * cost, 0.16, secondary) == pytest.approx(times * one, rel=1e-12)
    assert one >= worth(cost, 0.16, 0.0) >= saved * cost * (1.0 - 1e-12)
    assert worth(cost, 0.30, secondary) <= one * (1.0 + 1e-12)


def test_a_loop_of_a_half_or_more_is_refused() -> None:
    density, cost = 0.125, 100.0
    saved = [0.0, 0.0624, 0.0625, 0.1, 0.2]
    loop = battery_saved_kg_per_kg(saved, density)
    assert_allclose(loop, np.array(saved) / density, rtol=1e-15)
    found = worth_at_equal_range(saved, cost, pack_density_kwh_per_kg=density)
    assert_array_equal(np.isnan(found), [False, False, True, True, True])
    assert found[0] == 0.0


@untimed
@given(st.floats(0.0, 0.02), st.floats(-200.0, 200.0), st.floats(5.0, 60.0))
def test_range_lost_is_range_gained_turned_round(
    energy: float, saved: float, consumption: float
) -> None:
    gained = float(range_gain_share(energy, saved, consumption_kwh=consumption))
    lost = float(range_gain_share(energy, -saved, consumption_kwh=consumption))
    assert gained == -lost
    assert gained * consumption == pytest.approx(energy * saved, rel=1e-12, abs=1e-300)


@untimed
@given(st.floats(0.0, 3.0), st.floats(0.01, 1.0), st.floats(0.5, 30.0))
def test_without_interest_the_driver_saves_every_year_alike(
    a_year: float, price: float, years: float
) -> None:
    plain = float(driver_saving_per_kg(a_year, price, years=years, rate=0.0))
    assert plain == pytest.approx(a_year * price * years, rel=1e-12)
    later = float(driver_saving_per_kg(a_year, price, years=years, rate=0.05))
    assert later <= plain


def test_nobody_drives_nothing_saved() -> None:
    assert charged_kwh_per_kg(0.006, 0.0, charging_efficiency=0.9) == 0.0
    assert np.isnan(driver_saving_per_kg(1.0, 0.3, years=0.0, rate=0.05))


CASES: list[tuple[Callable[..., FloatArray], dict[str, float]]] = [
    (
        energy_saved_kwh_per_kg,
        {"mass_energy_per_kg": 0.006, "range_km": 400.0, "usable_share": 0.95},
    ),
    (
        battery_saved_kg_per_kg,
        {"energy_saved_kwh_per_kg": 0.03, "pack_density_kwh_per_kg": 0.16},
    ),
    (
        worth_at_equal_range,
        {
            "energy_saved_kwh_per_kg": 0.03,
            "battery_cost_per_kwh": 100.0,
            "pack_density_kwh_per_kg": 0.16,
            "secondary_share": 0.2,
        },
    ),
    (
        range_gain_share,
        {"mass_energy_per_kg": 0.006, "saved_kg": 20.0, "consumption_kwh": 17.0},
    ),
    (
        charged_kwh_per_kg,
        {"mass_energy_per_kg": 0.006, "distance_km": 1e5, "charging_efficiency": 0.9},
    ),
    (
        driver_saving_per_kg,
        {
            "charged_kwh_per_kg_year": 1.0,
            "energy_price": 0.3,
            "years": 10.0,
            "rate": 0.05,
        },
    ),
]
MAY_BE_NEGATIVE = {"saved_kg", "rate"}


@pytest.mark.parametrize(
    ("function", "figures", "name"),
    [
        pytest.param(function, figures, name, id=f"{function.__name__}-{name}")
        for function, figures in CASES
        for name in figures
    ],
)
def test_an_unknown_or_impossible_figure_gives_nothing(
    function: Callable[..., FloatArray], figures: dict[str, float], name: str
) -> None:
    bad = -0.5 if name in MAY_BE_NEGATIVE else -1.0
    values: dict[str, ArrayLike] = {**figures, name: [figures[name], NAN, bad]}
    first, second, *others = values
    found = function(
        values[first], values[second], **{key: values[key] for key in others}
    )
    known = [True, False, name in MAY_BE_NEGATIVE]
    assert_array_equal(np.isfinite(found), known)


def test_thousands_of_samples_at_once() -> None:
    energy = np.linspace(0.004, 0.009, 5000)
    saved = energy_saved_kwh_per_kg(energy, 400.0, usable_share=0.95)
    worth = worth_at_equal_range(saved, [[80.0], [140.0]], pack_density_kwh_per_kg=0.16)
    assert worth.shape == (2, 5000)
    assert np.all(np.diff(worth, axis=-1) > 0.0)
