"""Tightening: inverses, what grows with what, and what is unknown."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc import threads, tightening

NAN = float("nan")
# A busy machine is no failure.
untimed = settings(deadline=None)
COARSE = {5.0: 0.8, 6.0: 1.0, 8.0: 1.25, 10.0: 1.5, 12.0: 1.75, 16.0: 2.0}
sizes = st.sampled_from(sorted(COARSE))
frictions = st.floats(0.0, 0.5)
stresses = st.floats(100.0, 1500.0)
preloads = st.floats(1.0, 1e6)


def torque(preload: float, diameter: float, friction: float, head: float) -> float:
    """Give the torque of a screw of coarse pitch that rubs at 1.3 diameters."""
    return float(
        tightening.tightening_torque_nm(
            preload,
            diameter_mm=diameter,
            pitch_mm=COARSE[diameter],
            bearing_diameter_mm=1.3 * diameter,
            thread_friction=friction,
            head_friction=head,
        )
    )


@untimed
@given(sizes, preloads, frictions, frictions)
def test_the_preload_of_its_torque_is_the_preload(
    diameter: float, preload: float, friction: float, head: float
) -> None:
    back = tightening.preload_at_torque_n(
        torque(preload, diameter, friction, head),
        diameter_mm=diameter,
        pitch_mm=COARSE[diameter],
        bearing_diameter_mm=1.3 * diameter,
        thread_friction=friction,
        head_friction=head,
    )
    assert float(back) == pytest.approx(preload, rel=1e-12)


@untimed
@given(sizes, preloads, frictions, frictions, st.floats(0.1, 10.0))
def test_torque_is_in_step_with_preload_and_grows_with_friction(
    diameter: float, preload: float, one: float, other: float, factor: float
) -> None:
    low, high = sorted((one, other))
    given_nm = torque(preload, diameter, low, low)
    assert torque(factor * preload, diameter, low, low) == pytest.approx(
        factor * given_nm, rel=1e-12
    )
    assert torque(preload, diameter, high, low) >= given_nm
    assert torque(preload, diameter, low, high) >= given_nm


def test_without_friction_the_torque_only_climbs_the_thread() -> None:
    """One turn does the work of one pitch."""
    work_nm = 2.0 * math.pi * torque(1000.0, 8.0, 0.0, 0.0)
    assert work_nm == pytest.approx(1000.0 * 1.25e-3, rel=1e-12)


@untimed
@given(sizes, stresses, frictions, frictions)
def test_more_friction_in_the_thread_leaves_less_preload(
    diameter: float, stress: float, one: float, other: float
) -> None:
    low, high = sorted((one, other))
    preload = tightening.yield_preload_n(
        diameter,
        COARSE[diameter],
        yield_stress_mpa=stress,
        thread_friction=[low, high],
    )
    assert preload[1] <= preload[0]
    area = threads.stress_area_mm2(diameter, COARSE[diameter])
    assert 0 < preload[1] <= preload[0] < 0.9 * stress * area


@untimed
@given(sizes, stresses, frictions, st.floats(0.1, 1.0))
def test_the_preload_is_in_step_with_strength_and_degree(
    diameter: float, stress: float, friction: float, degree: float
) -> None:
    def preload(strength: float, share: float) -> float:
        given_n = tightening.yield_preload_n(
            diameter,
            COARSE[diameter],
            yield_stress_mpa=strength,
            thread_friction=friction,
            degree=share,
        )
        return float(given_n)

    whole = preload(stress, 1.0)
    assert preload(stress, degree) == pytest.approx(degree * whole, rel=1e-12)
    assert preload(2.0 * stress, 1.0) == pytest.approx(2.0 * whole, rel=1e-12)


def test_at_the_preload_pull_and_twist_together_are_the_share_of_yield() -> None:
    """Von Mises with the twist spread evenly over the stress area, as it yields."""
    diameter, pitch, friction = 8.0, 1.25, 0.12
    preload = tightening.yield_preload_n(
        diameter, pitch, yield_stress_mpa=640.0, thread_friction=friction
    )
    twist_nmm = 1000.0 * tightening.tightening_torque_nm(
        preload,
        diameter_mm=diameter,
        pitch_mm=pitch,
        bearing_diameter_mm=10.4,
        thread_friction=friction,
        head_friction=0.0,
    )
    pull = preload / threads.stress_area_mm2(diameter, pitch)
    stressed = threads.stress_diameter_mm(diameter, pitch)
    shear = twist_nmm / (math.pi / 12.0 * stressed**3)
    assert np.sqrt(pull**2 + 3.0 * shear**2) == pytest.approx(0.9 * 640.0, rel=1e-12)


@untimed
@given(preloads, st.floats(0.0, 0.95))
def test_the_least_preload_is_as_far_below_the_middle_as_the_greatest_above(
    greatest: float, spread: float
) -> None:
    least = tightening.least_preload_n(greatest, tightening.scatter_factor(spread))
    middle = (greatest + float(least)) / 2.0
    assert greatest == pytest.approx((1.0 + spread) * middle, rel=1e-9)


def test_no_spread_leaves_the_preload_as_it_is() -> None:
    assert tightening.scatter_factor(0.0) == 1.0
    assert tightening.least_preload_n(18_600.0, 1.0) == 18_600.0


def test_what_cannot_be_is_unknown() -> None:
    spread = tightening.scatter_factor([0.2, -0.1, 1.0, 1.5, NAN])
    assert_array_equal(np.isfinite(spread), [True, False, False, False, False])
    least = tightening.least_preload_n(100.0, [1.6, 0.9, 0.0, NAN])
    assert_array_equal(np.isfinite(least), [True, False, False, False])
    frictions_given = [0.1, -0.1, NAN]
    preload = tightening.yield_preload_n(
        8.0, 1.25, yield_stress_mpa=640.0, thread_friction=frictions_given
    )
    assert_array_equal(np.isfinite(preload), [True, False, False])
    for bearing, head, known in (
        (10.4, 0.1, True),
        (0.0, 0.1, False),
        (10.4, -1, False),
    ):
        given_nm = tightening.tightening_torque_nm(
            1000.0,
            diameter_mm=8.0,
            pitch_mm=1.25,
            bearing_diameter_mm=bearing,
            thread_friction=0.1,
            head_friction=head,
        )
        assert np.isfinite(given_nm) == known


def test_many_screws_at_once() -> None:
    diameter, pitch = np.array([6.0, 8.0, 10.0]), np.array([1.0, 1.25, 1.5])
    preload = tightening.yield_preload_n(
        diameter, pitch, yield_stress_mpa=[[640.0], [940.0]], thread_friction=0.12
    )
    assert preload.shape == (2, 3)
    bearing = tightening.friction_diameter_mm([8.88, 11.63, 14.63], [6.6, 9.0, 11.0])
    needed = tightening.tightening_torque_nm(
        preload,
        diameter_mm=diameter,
        pitch_mm=pitch,
        bearing_diameter_mm=bearing,
        thread_friction=0.12,
        head_friction=0.12,
    )
    assert_allclose(needed[1] / needed[0], 940.0 / 640.0)
    alone = torque(float(preload[0, 1]), 8.0, 0.12, 0.12)
    assert float(needed[0, 1]) == pytest.approx(alone, rel=0.01)
