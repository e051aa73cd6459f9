"""What must hold for energy over a trace of speed."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc.drive_cycle import mass_energy_per_100_kg, wheel_energy
from benchpack.calc.speed_trace import SpeedTrace, constant_speed_trace, urban_trace
from benchpack.errors import RequestError

untimed = settings(deadline=None, max_examples=50)

NAN = float("nan")
TOWN = urban_trace()
ROLLING = 9.80665 * 0.010 / 0.36

speeds = st.lists(st.floats(0.0, 160.0), min_size=1, max_size=40)


@untimed
@given(speeds, st.floats(0.0, 2.0), st.floats(0.0, 1e-3), st.floats(0.1, 10.0))
def test_from_stop_to_stop_both_add_up_to_rolling(
    between: list[float], rotating: float, drag: float, step_s: float
) -> None:
    trace = np.array([0.0, 30.0, *between, 0.0])
    found = wheel_energy(
        np.arange(trace.size) * step_s,
        trace,
        rotating=rotating,
        drag_area_m2_per_kg=drag,
    )
    both = float(found.traction_per_100_kg) + float(found.braking_per_100_kg)
    size = float(found.traction_per_100_kg) - float(found.braking_per_100_kg)
    assert both == pytest.approx(ROLLING, abs=1e-12 * (1.0 + abs(size)))


@untimed
@given(speeds)
def test_air_takes_some_of_the_braking(between: list[float]) -> None:
    trace = np.array([0.0, 30.0, *between, 0.0])
    areas = [0.0, 1e-4, 3e-4, 1e-3, 1.0]
    found = wheel_energy(np.arange(trace.size), trace, drag_area_m2_per_kg=areas)
    assert np.all(np.diff(found.braking_per_100_kg) >= -1e-12)
    assert np.all(np.diff(found.traction_per_100_kg) <= 1e-12)


def test_a_sample_between_on_the_line_changes_nothing_without_air() -> None:
    finer_s = np.arange(0.0, TOWN.time_s[-1] + 0.25, 0.25)
    finer = np.interp(finer_s, TOWN.time_s, TOWN.speed_kmh)
    coarse = wheel_energy(TOWN.time_s, TOWN.speed_kmh, drag_area_m2_per_kg=0.0)
    fine = wheel_energy(finer_s, finer, drag_area_m2_per_kg=0.0)
    assert fine.distance_km == pytest.approx(coarse.distance_km, rel=1e-12)
    assert_allclose(fine.traction_per_100_kg, coarse.traction_per_100_kg, rtol=1e-12)
    assert_allclose(fine.braking_per_100_kg, coarse.braking_per_100_kg, rtol=1e-12)


def test_thousands_of_samples_are_each_as_if_alone() -> None:
    rolling = np.linspace(0.006, 0.014, 1100)
    areas = np.linspace(0.0, 6e-4, 1100)[::-1]
    many = wheel_energy(
        TOWN.time_s,
        TOWN.speed_kmh,
        rolling_resistance=rolling,
        drag_area_m2_per_kg=areas,
    )
    assert many.traction_per_100_kg.shape == (1100,)
    for index in (0, 511, 512, 1099):
        one = wheel_energy(
            TOWN.time_s,
            TOWN.speed_kmh,
            rolling_resistance=rolling[index],
            drag_area_m2_per_kg=areas[index],
        )
        for name in ("traction_per_100_kg", "braking_per_100_kg"):
            alone, among = getattr(one, name), getattr(many, name)[index]
            assert float(among) == pytest.approx(float(alone), rel=1e-12)


def test_coefficients_of_two_shapes_make_a_table() -> None:
    found = wheel_energy(
        TOWN.time_s,
        TOWN.speed_kmh,
        rolling_resistance=[[0.008], [0.012]],
        rotating=[1.0, 1.03, 1.05],
    )
    assert found.braking_per_100_kg.shape == (2, 3)


@pytest.mark.parametrize(
    "name", ["rolling_resistance", "rotating", "drag_area_m2_per_kg"]
)
def test_an_unknown_or_negative_coefficient_gives_nothing(name: str) -> None:
    found = wheel_energy(TOWN.time_s, TOWN.speed_kmh, **{name: [0.01, NAN, -0.01]})
    for part in (found.traction_per_100_kg, found.braking_per_100_kg):
        assert_array_equal(np.isnan(part), [False, True, True])


BAD_TRACES = [
    pytest.param([0.0, 1.0, 2.0], [0.0, NAN, 0.0], id="unknown speed"),
    pytest.param([0.0, NAN, 2.0], [0.0, 9.0, 0.0], id="unknown time"),
    pytest.param([0.0, 1.0, 2.0], [0.0, -9.0, 0.0], id="backwards"),
    pytest.param([0.0, 1.0, 1.0], [0.0, 9.0, 0.0], id="no time"),
    pytest.param([0.0, 2.0, 1.0], [0.0, 9.0, 0.0], id="back in time"),
    pytest.param([0.0, 1.0, 2.0], [0.0, 0.0, 0.0], id="standstill"),
    pytest.param([0.0], [50.0], id="one sample"),
    pytest.param([], [], id="no sample"),
]


@pytest.mark.parametrize(("times", "trace"), BAD_TRACES)
def test_a_trace_that_cannot_be_driven_gives_nothing(
    times: list[float], trace: list[float]
) -> None:
    found = wheel_energy(times, trace, rolling_resistance=[0.01, 0.02])
    for part in (found.traction_per_100_kg, found.braking_per_100_kg):
        assert part.shape == (2,)
        assert np.isnan(part).all()


def test_a_speed_without_a_time_is_refused() -> None:
    with pytest.raises(RequestError, match="one speed for each"):
        wheel_energy([0.0, 1.0], [0.0, 1.0, 2.0])
    with pytest.raises(RequestError, match="one speed for each"):
        wheel_energy([[0.0, 1.0]], [[0.0, 1.0]])


def test_what_comes_back_from_the_battery() -> None:
    lossless = mass_energy_per_100_kg(
        0.6, -0.3, drive_efficiency=1.0, recuperated_share=[0.0, 0.5, 1.0]
    )
    assert_allclose(lossless, [0.6, 0.45, 0.3], rtol=1e-12)
    lossy = mass_energy_per_100_kg(
        0.6, -0.3, drive_efficiency=0.8, recuperated_share=0.5
    )
    assert float(lossy) == pytest.approx(0.75 - 0.12, rel=1e-12)


def test_energy_outside_of_its_range_gives_nothing() -> None:
    good = [True, False, False, False]
    usual = {"drive_efficiency": 0.9, "recuperated_share": 0.6}
    for values in (
        mass_energy_per_100_kg([0.6, -0.6, NAN, -1.0], -0.3, **usual),
        mass_energy_per_100_kg(0.6, [-0.3, 0.3, NAN, 1.0], **usual),
        mass_energy_per_100_kg(
            0.6, -0.3, drive_efficiency=[0.9, 0.0, 1.1, NAN], recuperated_share=0.6
        ),
        mass_energy_per_100_kg(
            0.6, -0.3, drive_efficiency=0.9, recuperated_share=[0.6, -0.1, 1.1, NAN]
        ),
    ):
        assert_array_equal(np.isfinite(values), good)


@untimed
@given(st.floats(5.0, 250.0), st.floats(0.1, 100.0), st.floats(0.1, 5.0))
def test_a_constant_speed_is_held_over_its_length(
    speed: float, length: float, acceleration: float
) -> None:
    trace = constant_speed_trace(
        speed, length_km=length, acceleration_m_s2=acceleration
    )
    assert np.all(np.diff(trace.time_s) > 0.0)
    assert trace.speed_kmh[0] == trace.speed_kmh[-1] == 0.0
    held = trace.speed_kmh == trace.speed_kmh.max()
    assert np.ptp(trace.time_s[held]) * speed / 3600.0 == pytest.approx(length)
    steepest = np.abs(np.diff(trace.speed_kmh) / np.diff(trace.time_s)).max() / 3.6
    assert steepest == pytest.approx(acceleration, rel=1e-6)


def test_our_town_scales_with_its_speed() -> None:
    slower = urban_trace(30.0)
    assert_array_equal(slower.time_s, TOWN.time_s)
    assert_allclose(slower.speed_kmh, 0.6 * TOWN.speed_kmh, rtol=1e-12)
    standing = (TOWN.speed_kmh == 0.0).mean()
    assert 0.25 <= standing <= 0.4


@pytest.mark.parametrize("figure", [0.0, -50.0, NAN, float("inf")])
def test_a_trace_of_nonsense_is_unknown(figure: float) -> None:
    traces: list[SpeedTrace] = [
        constant_speed_trace(figure),
        constant_speed_trace(90.0, length_km=figure),
        constant_speed_trace(90.0, acceleration_m_s2=figure),
        urban_trace(figure),
    ]
    for trace in traces:
        found = wheel_energy(trace.time_s, trace.speed_kmh)
        assert np.isnan(found.traction_per_100_kg)
        assert np.isnan(found.distance_km)
