"""What must hold for every sheet that stretches."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc.membranes import (
    membrane_deflection_mm,
    stretch_stress_mpa,
    stretched_deflection_mm,
)
from benchpack.calc.plates import deflection_mm, rigidity_n_mm

untimed = settings(deadline=None, max_examples=50)
NAN = float("nan")

sides = st.floats(20.0, 3000.0)
loads = st.floats(0.01, 100.0)
walls = st.floats(0.1, 20.0)
factors = st.floats(1.1, 20.0)


def sag(pressure: float, length: float, width: float, wall: float) -> float:
    return float(
        membrane_deflection_mm(
            pressure,
            length_mm=length,
            width_mm=width,
            modulus_gpa=210.0,
            thickness_mm=wall,
        )
    )


@untimed
@given(loads, sides, sides, walls, factors)
def test_eight_times_the_load_deflects_twice_as_far(
    load: float, length: float, width: float, wall: float, factor: float
) -> None:
    once, more = sag(load, length, width, wall), sag(load * factor, length, width, wall)
    assert more == pytest.approx(once * factor ** (1 / 3))
    assert sag(load, length, width, wall * factor) == pytest.approx(
        once / factor ** (1 / 3)
    )
    assert sag(load, width, length, wall) == once
    assert sag(-load, length, width, wall) == -once


@untimed
@given(loads, sides, walls, factors)
def test_a_longer_sheet_gives_more_up_to_a_strip(
    load: float, width: float, wall: float, factor: float
) -> None:
    square, longer = (
        sag(load, width, width, wall),
        sag(load, width * factor, width, wall),
    )
    assert square < longer <= sag(load, 1e9, width, wall) * (1 + 1e-12)


@untimed
@given(st.floats(1e-6, 1e6), st.floats(1e-6, 1e6))
def test_bending_and_stretching_share_the_load(bent: float, stretched: float) -> None:
    given_mm = float(stretched_deflection_mm(bent, stretched))
    assert 0 < given_mm <= min(bent, stretched) * (1 + 1e-12)
    assert given_mm / bent + (given_mm / stretched) ** 3 == pytest.approx(
        1.0, rel=1e-12
    )
    assert float(stretched_deflection_mm(-bent, -stretched)) == -given_mm


@untimed
@given(sides, sides, walls)
def test_a_light_load_only_bends_and_a_heavy_one_only_stretches(
    length: float, width: float, wall: float
) -> None:
    rigidity = rigidity_n_mm(210.0, wall, poisson_ratio=0.3)
    for load, is_light in ((1e-12, True), (1e18, False)):
        bent = deflection_mm(
            load,
            length_mm=length,
            width_mm=width,
            rigidity_n_mm=rigidity,
            edges="supported",
        )
        stretched = sag(load, length, width, wall)
        expected = bent if is_light else stretched
        given_mm = stretched_deflection_mm(bent, stretched)
        assert float(given_mm) == pytest.approx(float(expected), rel=1e-3)


def test_the_pull_goes_with_the_square_of_the_deflection() -> None:
    sheet = {"length_mm": 900.0, "width_mm": 600.0, "modulus_gpa": 70.0}
    once, twice = stretch_stress_mpa([5.0, 10.0], **sheet)
    assert twice == pytest.approx(4 * once)
    assert float(stretch_stress_mpa(-5.0, **sheet)) == once


def test_what_is_unknown_stays_unknown() -> None:
    known = {"length_mm": 900.0, "width_mm": 600.0}
    modulus = [70.0, NAN, 0.0, -1.0]
    given_mm = membrane_deflection_mm(
        1.0, **known, modulus_gpa=modulus, thickness_mm=1.0
    )
    assert_array_equal(np.isnan(given_mm), [False, True, True, True])
    pull = stretch_stress_mpa(1.0, **known, modulus_gpa=modulus)
    assert_array_equal(np.isnan(pull), [False, True, True, True])
    bent, stretched = [1.0, NAN, NAN, 0.0, 1e300], [NAN, 1.0, NAN, 0.0, 1e-3]
    shared = stretched_deflection_mm(bent, stretched)
    assert_allclose(shared, [NAN, NAN, NAN, 0.0, 1e-3], rtol=1e-9)
