"""What must hold whatever the busbar is."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc import busbar, busbar_growth

NAN = float("nan")
untimed = settings(deadline=None)

widths = st.floats(1.0, 300.0)
thicknesses = st.floats(0.1, 30.0)
lengths = st.floats(5.0, 3000.0)
factors = st.floats(0.1, 10.0)
moduli = st.floats(40.0, 220.0)
expansions = st.floats(1.0, 30.0)
rises = st.floats(-80.0, 150.0).map(lambda kelvin: round(kelvin, 6))
currents = st.floats(1.0, 50_000.0)
travels = st.floats(0.01, 5.0)
foil_counts = st.integers(1, 40)


@untimed
@given(widths, thicknesses, factors)
def test_ampacity_grows_with_size_to_the_power_1_39(
    width: float, thickness: float, factor: float
) -> None:
    """A^0.5 p^0.39: both sides times f give f^(1 + 0.39)."""
    one = busbar.ampacity_a(width, thickness)
    other = busbar.ampacity_a(factor * width, factor * thickness)
    assert_allclose(other, one * factor**1.39, rtol=1e-12)
    assert_allclose(busbar.ampacity_a(thickness, width), one, rtol=1e-12)


@untimed
@given(widths, thicknesses, st.floats(5.0, 60.0))
def test_metals_of_equal_current_lose_equal_heat(
    width: float, thickness: float, conductivity: float
) -> None:
    """I^2 / (s A) is the same for copper and for another metal of the same section."""
    copper = busbar.ampacity_a(width, thickness)
    other = busbar.ampacity_a(width, thickness, conductivity_ms_m=conductivity)
    assert_allclose(other**2 / conductivity, copper**2 / 58.0, rtol=1e-12)


@untimed
@given(currents, currents, st.floats(1.0, 500.0), lengths, factors)
def test_bars_pull_alike_and_less_the_farther_they_are(
    first: float, second: float, distance: float, length: float, factor: float
) -> None:
    force = busbar.bar_force_n_m(first, second, distance_mm=distance)
    swapped = busbar.bar_force_n_m(second, first, distance_mm=distance)
    against = busbar.bar_force_n_m(first, -second, distance_mm=distance)
    farther = busbar.bar_force_n_m(first, second, distance_mm=factor * distance)
    whole = busbar.bar_force_n(first, second, distance_mm=distance, length_mm=length)
    assert_allclose([swapped, -against, factor * farther], force, rtol=1e-12)
    assert_allclose(whole, force * length / 1000.0, rtol=1e-12)


@untimed
@given(st.floats(0.5, 2000.0), st.floats(1e-3, 10.0), st.floats(10.0, 200.0), factors)
def test_a_short_circuit_bears_the_same_heat_however_long(
    section: float, duration: float, constant: float, factor: float
) -> None:
    """I^2 t is constant."""
    one = busbar.short_time_current_a(section, duration, constant=constant)
    other = busbar.short_time_current_a(section, factor * duration, constant=constant)
    assert_allclose(other**2 * factor * duration, one**2 * duration, rtol=1e-12)


@untimed
@given(st.floats(-40.0, 150.0), st.floats(0.0, 100.0), st.floats(0.0, 100.0))
def test_warming_in_two_steps_is_warming_in_one(
    start: float, first: float, second: float
) -> None:
    """Squares of k add: the heat of 70 to 200 is that of 70 to 100 and 100 to 200."""

    def squared(before: float, after: float) -> float:
        constant = busbar.adiabatic_constant(
            before, after, metal_constant=226.0, zero_resistance_k=234.5
        )
        return float(constant) ** 2

    middle, end = start + first, start + first + second
    steps = squared(start, middle) + squared(middle, end)
    assert squared(start, end) == pytest.approx(steps, rel=1e-9, abs=1e-9)


@untimed
@given(lengths, widths, thicknesses, moduli, expansions, rises)
def test_a_held_bar_is_its_free_growth_pressed_back(
    length: float,
    width: float,
    thickness: float,
    modulus: float,
    expansion: float,
    rise: float,
) -> None:
    warm = {"expansion_1e6_k": expansion, "rise_k": rise}
    section = width * thickness
    growth = busbar_growth.free_growth_mm(length, **warm)
    stress = busbar_growth.held_stress_mpa(modulus, **warm)
    force = busbar_growth.held_force_n(section, modulus_gpa=modulus, **warm)
    spring = modulus * 1000.0 * section / length
    assert_allclose(force, spring * growth, rtol=1e-12)
    assert_allclose(force, stress * section, rtol=1e-12)


@untimed
@given(travels, lengths, widths, thicknesses, moduli, foil_counts)
def test_force_and_stress_of_a_leg_are_one_bending_moment(
    travel: float,
    leg: float,
    width: float,
    thickness: float,
    modulus: float,
    foils: int,
) -> None:
    """F L / 2 = n s b h^2 / 6 at each end of the leg."""
    bar = {"thickness_mm": thickness, "modulus_gpa": modulus, "foils": foils}
    force = busbar_growth.leg_force_n(travel, leg_mm=leg, width_mm=width, **bar)
    stress = busbar_growth.leg_stress_mpa(travel, leg_mm=leg, **bar)
    resisting = foils * stress * width * (thickness / foils) ** 2 / 6.0
    assert_allclose(force * leg / 2.0, resisting, rtol=1e-12)
    least = busbar_growth.least_leg_mm(travel, allowed_stress_mpa=stress, **bar)
    assert_allclose(least, leg, rtol=1e-12)


@untimed
@given(travels, lengths, widths, thicknesses, moduli, foil_counts)
def test_foils_divide_the_stiffness_by_their_square(
    travel: float,
    leg: float,
    width: float,
    thickness: float,
    modulus: float,
    foils: int,
) -> None:
    bar = {"width_mm": width, "thickness_mm": thickness, "modulus_gpa": modulus}
    solid, laminated = busbar_growth.leg_force_n(
        travel, leg_mm=leg, **bar, foils=[1, foils]
    )
    assert_allclose(laminated * foils**2, solid, rtol=1e-12)
    solid, laminated = busbar_growth.bowing_force_n(leg, **bar, foils=[1, foils])
    assert_allclose(laminated * foils**2, solid, rtol=1e-12)


@untimed
@given(travels, thicknesses, moduli, st.floats(5.0, 300.0))
def test_a_u_loop_needs_legs_shorter_by_the_root_of_two(
    growth: float, thickness: float, modulus: float, allowed: float
) -> None:
    offset, loop = busbar_growth.least_leg_mm(
        busbar_growth.leg_travel_mm(growth, [1, 2]),
        allowed_stress_mpa=allowed,
        thickness_mm=thickness,
        modulus_gpa=modulus,
    )
    assert_allclose(loop * np.sqrt(2.0), offset, rtol=1e-12)


def test_a_bar_that_cools_needs_the_same_leg() -> None:
    bar = {"allowed_stress_mpa": 60.0, "thickness_mm": 2.0, "modulus_gpa": 115.0}
    warm, cold = busbar_growth.least_leg_mm([0.5, -0.5], **bar)
    assert warm == cold > 0


@pytest.mark.parametrize("wrong", [NAN, 0.0, -1.0])
def test_sizes_that_are_unknown_or_not_above_zero_give_nothing(wrong: float) -> None:
    leg = {"leg_mm": 80.0, "thickness_mm": 2.0, "modulus_gpa": 115.0}
    found = [
        busbar.ampacity_a(wrong, 2.0),
        busbar.ampacity_a(20.0, wrong),
        busbar.ampacity_a(20.0, 2.0, conductivity_ms_m=wrong),
        busbar.current_density_a_mm2(100.0, wrong),
        busbar.bar_force_n_m(1.0, 1.0, distance_mm=wrong),
        busbar.short_time_current_a(wrong, 1.0, constant=135.0),
        busbar.short_time_current_a(60.0, wrong, constant=135.0),
        busbar_growth.leg_travel_mm(1.0, wrong),
        busbar_growth.leg_force_n(0.5, **{**leg, "leg_mm": wrong}, width_mm=20.0),
        busbar_growth.leg_stress_mpa(0.5, **{**leg, "thickness_mm": wrong}),
        busbar_growth.held_force_n(
            wrong, modulus_gpa=115.0, expansion_1e6_k=17.0, rise_k=60.0
        ),
        busbar_growth.bowing_force_n(
            wrong, width_mm=20.0, thickness_mm=2.0, modulus_gpa=115.0
        ),
    ]
    assert np.isnan(found).all()


def test_a_metal_that_cools_in_a_short_circuit_is_no_case() -> None:
    given = busbar.adiabatic_constant(
        [70.0, 70.0, 70.0, -240.0],
        [200.0, 70.0, 60.0, 200.0],
        metal_constant=226.0,
        zero_resistance_k=234.5,
    )
    assert_array_equal(np.isnan(given), [False, False, True, True])
    assert given[1] == 0.0


def test_single_figures_and_tables_of_sizes() -> None:
    singles: list[object] = [
        busbar.ampacity_a(20.0, 2.0),
        busbar.short_time_current_a(60.0, 1.0, constant=135.0),
        busbar_growth.least_leg_mm(
            0.5, allowed_stress_mpa=60.0, thickness_mm=2.0, modulus_gpa=115.0
        ),
    ]
    assert [type(single) for single in singles] == [np.float64] * len(singles)
    widths_mm, thicknesses_mm = [[20.0], [40.0]], [2.0, 3.0, 5.0]
    assert busbar.ampacity_a(widths_mm, thicknesses_mm).shape == (2, 3)
    legs = busbar_growth.least_leg_mm(
        0.5, allowed_stress_mpa=60.0, thickness_mm=thicknesses_mm, modulus_gpa=115.0
    )
    assert legs.shape == (3,)
