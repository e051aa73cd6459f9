"""What must hold for every plate."""

from __future__ import annotations

from typing import cast

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc._clamped_plate import SLENDEREST
from benchpack.calc.plate_factors import Edges, deflection_factor, moment_factor
from benchpack.calc.plates import (
    deflection_mm,
    greatest_moment_n,
    is_thin_plate,
    plate_stress_mpa,
    rigidity_n_mm,
)
from benchpack.errors import RequestError

untimed = settings(deadline=None, max_examples=50)

NAN = float("nan")
EDGES: list[Edges] = ["supported", "clamped"]

edges = st.sampled_from(EDGES)
ratios = st.floats(1.0, 40.0)
sides = st.floats(20.0, 2000.0)
factors = st.floats(0.2, 5.0)
poissons = st.floats(0.0, 0.5)


@untimed
@given(ratios)
def test_clamped_edges_hold_better(ratio: float) -> None:
    clamped = float(deflection_factor(ratio, "clamped"))
    supported = float(deflection_factor(ratio, "supported"))
    assert 3.2 < supported / clamped < 5.0 + 1e-6
    # The moment passes that of a strip, q a^2 / 12, by 0.8 % at two and a half squares.
    assert moment_factor(ratio, "clamped") < 1.00789 / 12.0


@untimed
@given(ratios, factors)
def test_a_longer_supported_plate_bends_more_up_to_a_strip(
    ratio: float, factor: float
) -> None:
    longer = ratio * (1.0 + factor)
    for factors_of in (deflection_factor, moment_factor):
        short, long, strip = factors_of([ratio, longer, np.inf], "supported")
        assert short <= long * (1.0 + 1e-12)
        assert long <= strip * (1.0 + 1e-12)


def test_the_deflection_of_a_clamped_plate_swings_into_that_of_a_strip() -> None:
    ratios = np.linspace(1.0, 12.0, 300)
    given = deflection_factor(ratios, "clamped")
    strip = float(deflection_factor(np.inf, "clamped"))
    assert strip == pytest.approx(1.0 / 384.0, rel=1e-12)
    # It passes that of a strip by 0.5 % and then settles.
    assert given.max() == pytest.approx(1.00539 * strip, rel=1e-5)
    assert 2.7 < ratios[given.argmax()] < 2.9
    assert_allclose(given[ratios > 6.0], strip, rtol=2e-5)


@pytest.mark.parametrize("given", [deflection_factor, moment_factor])
def test_nothing_jumps_where_the_strip_begins(given: object) -> None:
    assert callable(given)
    before, after = given(SLENDEREST * np.array([1.0 - 1e-9, 1.0 + 1e-9]), "clamped")
    assert float(before) == pytest.approx(float(after), rel=1e-5)


@untimed
@given(ratios, poissons)
def test_moments_of_a_supported_plate_grow_with_the_ratio_of_poisson(
    ratio: float, poisson: float
) -> None:
    least, more, most = moment_factor(
        ratio, "supported", poisson_ratio=[0.0, poisson, 0.5]
    )
    assert least <= more <= most
    assert more == pytest.approx(least + 2.0 * poisson * (most - least), rel=1e-9)


@untimed
@given(sides, sides, factors, edges)
def test_sides_have_no_order_and_sizes_have_their_powers(
    length: float, width: float, factor: float, held: Edges
) -> None:
    def bent(size: float, load: float, rigidity: float) -> float:
        return float(
            deflection_mm(
                load,
                length_mm=size * length,
                width_mm=size * width,
                rigidity_n_mm=rigidity,
                edges=held,
            )
        )

    one = bent(1.0, 2.0, 1e5)
    turned = deflection_mm(
        2.0, length_mm=width, width_mm=length, rigidity_n_mm=1e5, edges=held
    )
    assert float(turned) == one > 0.0
    assert bent(factor, 2.0, 1e5) == pytest.approx(factor**4 * one, rel=1e-6)
    assert bent(1.0, 2.0 * factor, 1e5 * factor) == pytest.approx(one, rel=1e-12)
    assert bent(1.0, -2.0, 1e5) == -one


@untimed
@given(factors, poissons)
def test_rigidity_goes_with_the_cube_of_the_thickness(
    factor: float, poisson: float
) -> None:
    thin, thick = rigidity_n_mm(70.0, [2.0, 2.0 * factor], poisson_ratio=poisson)
    assert float(thick) == pytest.approx(factor**3 * float(thin), rel=1e-12)


@untimed
@given(sides, sides, st.floats(0.5, 10.0), edges)
def test_stress_of_equal_load_goes_with_one_over_thickness_squared(
    length: float, width: float, thickness: float, held: Edges
) -> None:
    moment = greatest_moment_n(5.0, length_mm=length, width_mm=width, edges=held)
    stress = plate_stress_mpa(moment, [thickness, 2.0 * thickness])
    assert float(stress[0]) == pytest.approx(4.0 * float(stress[1]), rel=1e-12)
    # A strip that carries all of the load across the short side is the upper bound.
    strip = 6.0 * 5e-3 * min(length, width) ** 2 / 8.0 / thickness**2
    assert 0.0 < float(stress[0]) <= strip * (1.0 + 1e-9)


@pytest.mark.parametrize("held", EDGES)
def test_what_is_unknown_or_not_above_zero_gives_no_figure(held: Edges) -> None:
    bad = [300.0, 0.0, -1.0, NAN]
    good = [True, False, False, False]
    sunk = deflection_mm(
        2.0, length_mm=bad, width_mm=600.0, rigidity_n_mm=1e5, edges=held
    )
    assert_array_equal(np.isfinite(sunk), good)
    soft = deflection_mm(
        2.0, length_mm=300.0, width_mm=600.0, rigidity_n_mm=bad, edges=held
    )
    assert_array_equal(np.isfinite(soft), good)
    bent = greatest_moment_n(2.0, length_mm=bad, width_mm=600.0, edges=held)
    assert_array_equal(np.isfinite(bent), good)
    assert_array_equal(np.isfinite(plate_stress_mpa(10.0, bad)), good)
    assert_array_equal(np.isfinite(rigidity_n_mm(bad, 2.0, poisson_ratio=0.3)), good)
    assert_array_equal(np.isfinite(rigidity_n_mm(70.0, bad, poisson_ratio=0.3)), good)
    odd = rigidity_n_mm(70.0, 2.0, poisson_ratio=[0.3, 0.6, -1.0, NAN])
    assert_array_equal(np.isfinite(odd), good)
    below = deflection_factor([1.0, 0.99, -1.0, NAN], held)
    assert_array_equal(np.isfinite(below), good)
    assert_array_equal(np.isfinite(moment_factor([1.0, 0.5, 0, NAN], held)), good)


def test_other_edges_are_refused() -> None:
    held = cast("Edges", "glued")
    for function in (deflection_factor, moment_factor):
        with pytest.raises(RequestError, match="supported or clamped, not 'glued'"):
            function(1.0, held)


@pytest.mark.parametrize("held", EDGES)
def test_plates_and_loads_broadcast(held: Edges) -> None:
    sunk = deflection_mm(
        [[1.0], [2.0]],
        length_mm=[300.0, 600.0, 6000.0],
        width_mm=300.0,
        rigidity_n_mm=1e5,
        edges=held,
    )
    assert sunk.shape == (2, 3)
    assert_allclose(sunk[1], 2.0 * sunk[0], rtol=1e-12)
    bent = moment_factor([[1.0], [2.0]], "supported", poisson_ratio=[0.0, 0.3, 0.4])
    assert bent.shape == (2, 3)


def test_what_is_not_known_to_be_thin_is_not() -> None:
    thin = is_thin_plate([1.0, -1.0, 1.01, NAN, 0.1], [2.0, 2.0, 2.0, 2.0, NAN])
    assert_array_equal(thin, [True, True, False, False, False])
