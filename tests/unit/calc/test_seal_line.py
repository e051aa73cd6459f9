"""What must hold for every seal line."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_array_equal

from benchpack.calc.seal_line import (
    compression_loss_mm,
    greatest_pitch_mm,
    least_joint_count,
    lift_line_load_n_mm,
    line_load_n_mm,
    load_per_joint_n,
    water_pressure_kpa,
)

untimed = settings(deadline=None)

moduli = st.floats(500.0, 250_000.0)
thicknesses = st.floats(0.3, 20.0)
widths = st.floats(2.0, 60.0)
pressures = st.floats(0.005, 2.0)
losses = st.floats(0.02, 2.0)
factors = st.floats(0.1, 10.0)
pitches = st.floats(5.0, 500.0)


def pitch_of(modulus: float, thickness: float, **others: float) -> float:
    """Give a pitch under soft foam, with what is told otherwise."""
    usual = {
        "flange_width_mm": 20.0,
        "gasket_width_mm": 12.0,
        "pressure_low_mpa": 0.03,
        "pressure_high_mpa": 0.08,
        "allowed_loss_mm": 0.4,
    }
    return float(greatest_pitch_mm(modulus, thickness, **{**usual, **others}))


@untimed
@given(moduli, thicknesses, factors)
def test_pitch_goes_with_the_fourth_root_of_the_modulus(
    modulus: float, thickness: float, factor: float
) -> None:
    changed = pitch_of(factor * modulus, thickness)
    assert changed == pytest.approx(factor**0.25 * pitch_of(modulus, thickness))


@untimed
@given(moduli, thicknesses, factors)
def test_pitch_goes_with_thickness_to_three_quarters(
    modulus: float, thickness: float, factor: float
) -> None:
    changed = pitch_of(modulus, factor * thickness)
    assert changed == pytest.approx(factor**0.75 * pitch_of(modulus, thickness))


@untimed
@given(moduli, thicknesses, factors)
def test_only_the_ratio_of_the_widths_counts(
    modulus: float, thickness: float, factor: float
) -> None:
    wider = pitch_of(
        modulus, thickness, flange_width_mm=20.0 * factor, gasket_width_mm=12.0 * factor
    )
    assert wider == pytest.approx(pitch_of(modulus, thickness))


@untimed
@given(moduli, thicknesses, factors)
def test_pressure_and_loss_weigh_against_each_other(
    modulus: float, thickness: float, factor: float
) -> None:
    both = pitch_of(
        modulus,
        thickness,
        pressure_low_mpa=0.03 * factor,
        pressure_high_mpa=0.08 * factor,
        allowed_loss_mm=0.4 * factor,
    )
    assert both == pytest.approx(pitch_of(modulus, thickness))


@untimed
@given(moduli, thicknesses, widths, widths, pressures, pressures, losses)
def test_at_the_greatest_pitch_the_loss_is_the_allowed_one(
    modulus: float,
    thickness: float,
    flange: float,
    gasket: float,
    low: float,
    more: float,
    loss: float,
) -> None:
    line = {
        "flange_width_mm": flange,
        "gasket_width_mm": gasket,
        "pressure_low_mpa": low,
        "pressure_high_mpa": low + more,
    }
    pitch = greatest_pitch_mm(modulus, thickness, allowed_loss_mm=loss, **line)
    lost = compression_loss_mm(modulus, thickness, pitch_mm=pitch, **line)
    assert float(lost) == pytest.approx(loss, rel=1e-9)


@untimed
@given(st.floats(10.0, 50_000.0), pitches)
def test_the_least_count_holds_and_one_less_does_not(
    length: float, pitch: float
) -> None:
    count = float(least_joint_count(length, pitch))
    assert count == int(count) >= 1
    assert length / count <= pitch * (1 + 1e-9)
    assert count == 1 or length / (count - 1) > pitch


@pytest.mark.parametrize("count", [1, 3, 47, 84, 999])
def test_a_whole_number_of_pitches_needs_no_screw_more(count: int) -> None:
    length = 5920.0
    assert float(least_joint_count(length, length / count)) == count


@untimed
@given(pressures, widths, st.floats(100.0, 20_000.0), st.integers(1, 300))
def test_the_screws_carry_the_whole_line(
    pressure: float, width: float, length: float, count: int
) -> None:
    load = load_per_joint_n(line_load_n_mm(pressure, width), length / count)
    assert count * float(load) == pytest.approx(pressure * width * length)


@untimed
@given(st.floats(0.1, 50.0), st.floats(0.01, 4.0), st.floats(100.0, 20_000.0))
def test_the_line_carries_the_whole_cover(
    pressure_kpa: float, area_m2: float, length: float
) -> None:
    line_load = lift_line_load_n_mm(pressure_kpa, area_m2, length_mm=length)
    assert float(line_load) * length == pytest.approx(1000.0 * pressure_kpa * area_m2)


def test_what_is_unknown_or_not_above_zero_gives_no_figure() -> None:
    bad = [70_000.0, 0.0, -1.0, float("nan")]
    good = [True, False, False, False]
    line = {"flange_width_mm": 1.0, "gasket_width_mm": 1.0}
    pressed = {"pressure_low_mpa": 0.03, "pressure_high_mpa": 0.08}
    pitch = greatest_pitch_mm(bad, 1.5, allowed_loss_mm=0.4, **line, **pressed)
    assert_array_equal(np.isfinite(pitch), good)
    loss = compression_loss_mm(bad, 1.5, pitch_mm=70.0, **line, **pressed)
    assert_array_equal(np.isfinite(loss), good)
    assert_array_equal(np.isfinite(least_joint_count(6000.0, bad)), good)
    assert_array_equal(np.isfinite(line_load_n_mm(bad, 12.0)), good)
    assert_array_equal(np.isfinite(load_per_joint_n(1.0, bad)), good)
    lift = lift_line_load_n_mm(5.0, bad, length_mm=6000.0)
    assert_array_equal(np.isfinite(lift), good)


def test_flanges_and_gaskets_broadcast() -> None:
    pitches = greatest_pitch_mm(
        [[210_000.0], [70_000.0]],
        [0.8, 1.5, 3.0],
        flange_width_mm=20.0,
        gasket_width_mm=12.0,
        pressure_low_mpa=0.03,
        pressure_high_mpa=0.08,
        allowed_loss_mm=0.4,
    )
    assert pitches.shape == (2, 3)
    assert np.all(np.diff(pitches, axis=1) > 0)


def test_no_water_no_pressure() -> None:
    assert_array_equal(water_pressure_kpa([0.0, 2.0]), [0.0, 19.6133])
