"""What must hold for every section and beam."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc.beams import (
    Spread,
    Support,
    beam_deflection_mm,
    beam_moment_n_mm,
    beam_stress_mpa,
)
from benchpack.calc.sections import hollow_rectangle, rectangle
from benchpack.errors import RequestError

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

untimed = settings(deadline=None, max_examples=50)

NAN = float("nan")
SUPPORTS: list[Support] = ["cantilever", "simply supported", "fixed"]
SPREADS: list[Spread] = ["point", "uniform"]

sizes = st.floats(5.0, 300.0)
factors = st.floats(0.2, 5.0)
supports = st.sampled_from(SUPPORTS)
spreads = st.sampled_from(SPREADS)


def bend(support: Support, spread: Spread, **others: float) -> float:
    """Give a deflection, with what is told otherwise."""
    usual = {
        "load_n": 500.0,
        "length_mm": 1000.0,
        "modulus_gpa": 70.0,
        "second_moment_mm4": 5e5,
    }
    return float(
        beam_deflection_mm(**{**usual, **others}, support=support, spread=spread)
    )


@untimed
@given(sizes, sizes, st.floats(0.01, 0.5))
def test_a_hollow_section_is_between_nothing_and_solid(
    width: float, height: float, share: float
) -> None:
    hollow = hollow_rectangle(width, height, wall_mm=share * min(width, height))
    solid = rectangle(width, height)
    assert 0.0 < hollow.area_mm2 <= solid.area_mm2
    assert 0.0 < hollow.second_moment_mm4 <= solid.second_moment_mm4
    # For its area it is never worse than the solid bar.
    saved = hollow.second_moment_mm4 / hollow.area_mm2
    assert saved >= solid.second_moment_mm4 / solid.area_mm2 * (1.0 - 1e-9)
    outer = hollow.second_moment_mm4 / (height / 2.0)
    assert float(hollow.modulus_mm3) == pytest.approx(float(outer), rel=1e-12)


@untimed
@given(sizes, sizes)
def test_half_of_the_smaller_side_closes_a_section(width: float, height: float) -> None:
    half = min(width, height) / 2.0
    closed, solid = (
        hollow_rectangle(width, height, wall_mm=half),
        rectangle(width, height),
    )
    assert float(closed.area_mm2) == pytest.approx(float(solid.area_mm2), rel=1e-12)
    given = hollow_rectangle(width, height, wall_mm=[half * 1.001, NAN, 0.0, -1.0])
    assert np.isnan(given.area_mm2).all()
    assert np.isnan(given.modulus_mm3).all()


def test_sections_of_unknown_sizes_are_unknown() -> None:
    section = rectangle([10.0, 0.0, -1.0, NAN], 20.0)
    assert_array_equal(np.isfinite(section.modulus_mm3), [True, False, False, False])
    masses = rectangle(10.0, 20.0).mass_kg_m([2700.0, 0.0, NAN])
    assert_array_equal(np.isfinite(masses), [True, False, False])


@untimed
@given(supports, spreads, factors)
def test_deflection_has_its_powers(
    support: Support, spread: Spread, factor: float
) -> None:
    one = bend(support, spread)
    longer = bend(support, spread, length_mm=1000.0 * factor)
    assert longer == pytest.approx(factor**3 * one, rel=1e-12)
    stiffer = bend(support, spread, modulus_gpa=70.0 * factor)
    assert stiffer * factor == pytest.approx(one, rel=1e-12)
    deeper = bend(support, spread, second_moment_mm4=5e5 * factor)
    assert deeper * factor == pytest.approx(one, rel=1e-12)
    assert bend(support, spread, load_n=-500.0) == -one


@pytest.mark.parametrize("spread", SPREADS)
def test_the_better_held_the_stiffer(spread: Spread) -> None:
    bent = [bend(support, spread) for support in SUPPORTS]
    assert bent == sorted(bent, reverse=True)


@pytest.mark.parametrize("support", SUPPORTS)
def test_a_spread_load_is_kinder(support: Support) -> None:
    assert bend(support, "uniform") < bend(support, "point")
    moments = [
        float(beam_moment_n_mm(1.0, length_mm=1.0, support=support, spread=spread))
        for spread in SPREADS
    ]
    assert moments[1] < moments[0]


def test_what_is_unknown_or_not_above_zero_gives_no_figure() -> None:
    bad = [1.0, 0.0, -1.0, NAN]
    good = [True, False, False, False]
    usual: dict[str, ArrayLike] = {
        "length_mm": 1.0,
        "modulus_gpa": 1.0,
        "second_moment_mm4": 1.0,
    }
    for name in usual:
        given = beam_deflection_mm(
            1.0, **{**usual, name: bad}, support="fixed", spread="point"
        )
        assert_array_equal(np.isfinite(given), good)
    moment = beam_moment_n_mm(1.0, length_mm=bad, support="fixed", spread="point")
    assert_array_equal(np.isfinite(moment), good)
    assert_array_equal(np.isfinite(beam_stress_mpa(1.0, bad)), good)


def test_other_beams_are_refused() -> None:
    support = cast("Support", "hanging")
    with pytest.raises(RequestError, match="No beam is known that is 'hanging'"):
        beam_moment_n_mm(1.0, length_mm=1.0, support=support, spread="point")


def test_beams_and_loads_broadcast() -> None:
    moments = beam_moment_n_mm(
        [[1.0], [2.0]], length_mm=[1.0, 2.0, 3.0], support="fixed", spread="uniform"
    )
    assert moments.shape == (2, 3)
    sections = hollow_rectangle([[40.0], [60.0]], 80.0, wall_mm=[2.0, 3.0, 4.0])
    stress = beam_stress_mpa(moments, sections.modulus_mm3)
    assert_allclose(stress * sections.modulus_mm3, moments, rtol=1e-12)
