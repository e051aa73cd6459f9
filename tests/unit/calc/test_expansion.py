"""What must hold for every panel on a frame."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc.busbar_growth import free_growth_mm, held_stress_mpa
from benchpack.calc.expansion import (
    mismatch_strain,
    panel_stress_mpa,
    shared_force_n,
    travel_mm,
)

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

untimed = settings(deadline=None, max_examples=50)

NAN = float("nan")
BAD = [1.0, 0.0, -1.0, NAN]
GOOD = [True, False, False, False]

expansions = st.floats(-5.0, 200.0).map(lambda value: round(value, 6))
rises = st.floats(-80.0, 120.0).map(lambda kelvin: round(kelvin, 6))
moduli = st.floats(0.5, 300.0)
areas = st.floats(10.0, 10_000.0)


@untimed
@given(expansions, expansions, rises)
def test_turned_round_the_mismatch_changes_its_sign(
    panel: float, frame: float, rise: float
) -> None:
    one = float(mismatch_strain(panel, frame, panel_rise_k=rise))
    other = float(mismatch_strain(frame, panel, panel_rise_k=rise))
    assert one == -other
    assert float(mismatch_strain(panel, panel, panel_rise_k=rise)) == 0.0


@untimed
@given(expansions, rises, rises)
def test_a_frame_that_does_not_grow_leaves_the_growth_of_the_panel(
    expansion: float, rise: float, frame_rise: float
) -> None:
    strain = mismatch_strain(expansion, 0.0, panel_rise_k=rise, frame_rise_k=frame_rise)
    grown = free_growth_mm(1500.0, expansion_1e6_k=expansion, rise_k=rise)
    assert float(travel_mm(1500.0, strain)) == pytest.approx(float(grown), abs=1e-12)
    stress = panel_stress_mpa(strain, modulus_gpa=70.0)
    held = held_stress_mpa(70.0, expansion_1e6_k=expansion, rise_k=rise)
    assert float(stress) == pytest.approx(float(held), abs=1e-9)


@untimed
@given(moduli, st.floats(0.0, 0.5))
def test_held_all_around_is_never_less_than_held_one_way(
    modulus: float, poisson: float
) -> None:
    one, both = panel_stress_mpa(
        1e-3, modulus_gpa=modulus, poisson_ratio=[0.0, poisson]
    )
    assert one == pytest.approx(modulus, rel=1e-12)
    assert one <= both <= 2.0 * one * (1.0 + 1e-12)


@untimed
@given(moduli, areas, moduli, areas)
def test_a_frame_that_gives_way_holds_less(
    panel_e: float, panel_a: float, frame_e: float, frame_a: float
) -> None:
    force = float(
        shared_force_n(
            1e-3,
            panel_modulus_gpa=panel_e,
            panel_area_mm2=panel_a,
            frame_modulus_gpa=frame_e,
            frame_area_mm2=frame_a,
        )
    )
    rigid = float(panel_stress_mpa(1e-3, modulus_gpa=panel_e)) * panel_a
    assert 0.0 < force < rigid
    # What the panel is pressed and the frame is drawn make up the mismatch.
    pressed, drawn = (
        force / (1000.0 * e * a) for e, a in ((panel_e, panel_a), (frame_e, frame_a))
    )
    assert pressed + drawn == pytest.approx(1e-3, rel=1e-9)


def test_what_is_unknown_or_not_above_zero_gives_no_figure() -> None:
    assert_array_equal(np.isfinite(travel_mm(BAD, 1e-3)), GOOD)
    assert_array_equal(np.isfinite(panel_stress_mpa(1e-3, modulus_gpa=BAD)), GOOD)
    odd = panel_stress_mpa(1e-3, modulus_gpa=1.0, poisson_ratio=[0.5, 0.6, -1.0, NAN])
    assert_array_equal(np.isfinite(odd), GOOD)
    usual: dict[str, ArrayLike] = {
        "panel_modulus_gpa": 1.0,
        "panel_area_mm2": 1.0,
        "frame_modulus_gpa": 1.0,
        "frame_area_mm2": 1.0,
    }
    for name in usual:
        given = shared_force_n(1e-3, **{**usual, name: BAD})
        assert_array_equal(np.isfinite(given), GOOD)
    unknown = mismatch_strain([20.0, NAN], 23.4, panel_rise_k=60.0)
    assert_array_equal(np.isnan(unknown), [False, True])


def test_panels_and_rises_broadcast() -> None:
    strain = mismatch_strain([[20.0], [50.0]], 23.4, panel_rise_k=[-60.0, 0.0, 60.0])
    travel = travel_mm(750.0, strain)
    assert travel.shape == (2, 3)
    assert_allclose(travel[:, 0], -travel[:, 2], rtol=1e-12)
    assert_array_equal(np.sign(travel), [[1.0, 0.0, -1.0], [-1.0, 0.0, 1.0]])
