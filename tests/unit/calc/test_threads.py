"""Threads: order of the areas, scaling, and sizes that cannot be."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc import threads

NAN = float("nan")
# A busy machine is no failure.
untimed = settings(deadline=None)
diameters = st.floats(1.0, 100.0)
# Pitch per diameter of any standard thread, 0.02 to 0.3, and well beyond.
coarseness = st.floats(0.01, 0.6)


@untimed
@given(diameters, coarseness)
def test_core_flank_and_crest_lie_in_that_order(diameter: float, share: float) -> None:
    pitch = share * diameter
    core = float(threads.minor_diameter_mm(diameter, pitch))
    stressed = float(threads.stress_diameter_mm(diameter, pitch))
    flank = float(threads.pitch_diameter_mm(diameter, pitch))
    assert 0 < core < stressed < flank < diameter
    carries = float(threads.stress_area_mm2(diameter, pitch))
    weighs = float(threads.solid_area_mm2(diameter, pitch))
    assert math.pi / 4 * core**2 < carries < weighs < math.pi / 4 * diameter**2


@untimed
@given(diameters, coarseness, st.floats(0.1, 10.0))
def test_areas_grow_with_the_square_of_the_size(
    diameter: float, share: float, factor: float
) -> None:
    pitch = share * diameter
    for area in (threads.stress_area_mm2, threads.solid_area_mm2):
        one, other = area(diameter, pitch), area(factor * diameter, factor * pitch)
        assert float(other) == pytest.approx(factor**2 * float(one), rel=1e-12)


@untimed
@given(diameters, coarseness, coarseness)
def test_a_finer_thread_carries_and_weighs_more(
    diameter: float, one: float, other: float
) -> None:
    pitches = np.sort([one, other]) * diameter
    for area in (threads.stress_area_mm2, threads.solid_area_mm2):
        fine, coarse = area(diameter, pitches)
        assert fine >= coarse


@pytest.mark.parametrize(
    "of_thread",
    [
        threads.pitch_diameter_mm,
        threads.minor_diameter_mm,
        threads.stress_diameter_mm,
        threads.stress_area_mm2,
        threads.solid_area_mm2,
    ],
)
def test_a_thread_that_cannot_be_has_no_size(of_thread: object) -> None:
    assert callable(of_thread)
    diameter = [8.0, 0.0, -8.0, NAN, 8.0, 8.0, 8.0]
    pitch = [1.25, 1.25, 1.25, 1.25, 0.0, NAN, 100.0]
    known = np.isfinite(of_thread(diameter, pitch))
    assert_array_equal(known, [True, False, False, False, False, False, False])


def test_a_core_may_vanish_before_the_flank_does() -> None:
    assert np.isnan(threads.minor_diameter_mm(8.0, 7.0))
    assert np.isfinite(threads.pitch_diameter_mm(8.0, 7.0))
    assert np.isnan(threads.stress_area_mm2(8.0, 7.0))


def test_many_threads_in_many_classes() -> None:
    areas = threads.stress_area_mm2([[6.0], [8.0]], [[1.0], [1.25]])
    loads = threads.proof_load_n(areas, [580.0, 830.0, NAN])
    assert loads.shape == (2, 3)
    assert_allclose(loads[1, :2] / loads[0, :2], float(areas[1, 0] / areas[0, 0]))
    assert np.isnan(loads[:, 2]).all()
