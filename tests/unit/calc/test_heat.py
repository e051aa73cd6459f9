"""What must hold for every heat path."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc.heat import (
    adiabatic_rise_k,
    film_resistance_m2k_w,
    layer_resistance_m2k_w,
    least_plate_mm,
    plate_mass_kg,
    resistance_k_w,
    series_resistance_m2k_w,
    spreading_rise_k,
    temperature_rise_k,
)

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

untimed = settings(deadline=None, max_examples=50)

NAN = float("nan")
BAD = [1.0, 0.0, -1.0, NAN]
GOOD = [True, False, False, False]

thicknesses = st.floats(0.01, 20.0)
conductivities = st.floats(0.02, 400.0)
layers = st.lists(st.tuples(thicknesses, conductivities), min_size=1, max_size=6)
fluxes = st.floats(10.0, 20_000.0)
pitches = st.floats(5.0, 300.0)
contacts = st.lists(st.floats(0.0, 0.01), max_size=4)


@untimed
@given(layers, contacts)
def test_a_path_is_the_sum_of_its_layers_in_any_order(
    path: list[tuple[float, float]], touching: list[float]
) -> None:
    thick, k = np.array(path).T
    whole = float(series_resistance_m2k_w(thick, k, contact_m2k_w=touching))
    turned = series_resistance_m2k_w(thick[::-1], k[::-1], contact_m2k_w=touching)
    assert float(turned) == pytest.approx(whole, rel=1e-12)
    one_by_one = sum(float(layer_resistance_m2k_w(t, c)) for t, c in path)
    assert whole == pytest.approx(one_by_one + sum(touching), rel=1e-12)


@untimed
@given(fluxes, layers)
def test_rises_add_up_along_a_path(
    flux: float, path: list[tuple[float, float]]
) -> None:
    thick, k = np.array(path).T
    each = temperature_rise_k(flux, layer_resistance_m2k_w(thick, k))
    whole = temperature_rise_k(flux, series_resistance_m2k_w(thick, k))
    assert float(each.sum()) == pytest.approx(float(whole), rel=1e-12)
    # The same heat through twice the area is half the flux.
    heat, area = flux * 0.5, 0.5
    per_area = resistance_k_w(series_resistance_m2k_w(thick, k), area)
    assert heat * float(per_area) == pytest.approx(float(whole), rel=1e-12)


@untimed
@given(fluxes, pitches, conductivities, st.floats(0.5, 50.0))
def test_the_least_plate_just_holds(
    flux: float, pitch: float, conductivity: float, allowed: float
) -> None:
    plate = {"half_pitch_mm": pitch, "conductivity_w_mk": conductivity}
    least = least_plate_mm(flux, allowed_rise_k=allowed, **plate)
    rise = spreading_rise_k(flux, thickness_mm=least, **plate)
    assert float(rise) == pytest.approx(allowed, rel=1e-12)
    wider = spreading_rise_k(
        flux,
        thickness_mm=least,
        half_pitch_mm=2.0 * pitch,
        conductivity_w_mk=conductivity,
    )
    assert float(wider) == pytest.approx(4.0 * allowed, rel=1e-12)


@untimed
@given(st.floats(100.0, 20_000.0), st.floats(1.0, 3600.0), st.floats(1.0, 600.0))
def test_what_warms_up_evenly_counts_as_one(
    heat: float, seconds: float, mass: float
) -> None:
    one = adiabatic_rise_k(heat, seconds, mass_kg=mass, heat_capacity_j_kgk=1000.0)
    halves = adiabatic_rise_k(
        heat, seconds, mass_kg=[mass / 2.0] * 2, heat_capacity_j_kgk=1000.0
    )
    assert float(one) == pytest.approx(float(halves), rel=1e-12)
    assert float(one) * mass * 1000.0 == pytest.approx(heat * seconds, rel=1e-12)


def test_no_layer_no_resistance() -> None:
    assert float(layer_resistance_m2k_w(0.0, 0.3)) == 0.0
    empty: list[float] = []
    assert float(series_resistance_m2k_w(empty, empty)) == 0.0


def test_what_is_unknown_or_not_above_zero_gives_no_figure() -> None:
    assert_array_equal(np.isfinite(layer_resistance_m2k_w(1.0, BAD)), GOOD)
    thick = layer_resistance_m2k_w([1.0, 0.0, -1.0, NAN], 1.0)
    assert_array_equal(np.isfinite(thick), [True, True, False, False])
    assert_array_equal(np.isfinite(film_resistance_m2k_w(BAD)), GOOD)
    assert_array_equal(np.isfinite(resistance_k_w(1.0, BAD)), GOOD)
    plate: dict[str, ArrayLike] = {"half_pitch_mm": 1.0, "conductivity_w_mk": 1.0}
    for name in (*plate, "thickness_mm"):
        rise = spreading_rise_k(1.0, **{"thickness_mm": 1.0, **plate, name: BAD})
        assert_array_equal(np.isfinite(rise), GOOD)
    for name in (*plate, "allowed_rise_k"):
        least = least_plate_mm(1.0, **{"allowed_rise_k": 1.0, **plate, name: BAD})
        assert_array_equal(np.isfinite(least), GOOD)
    masses = plate_mass_kg(BAD, area_m2=1.0, density_kg_m3=2700.0)
    assert_array_equal(np.isfinite(masses), GOOD)


def test_one_unknown_layer_makes_a_path_unknown() -> None:
    thick = [[1.0, 2.0], [1.0, NAN]]
    paths = series_resistance_m2k_w(thick, [0.3, 3.0])
    assert_array_equal(np.isnan(paths), [False, True])
    touching = series_resistance_m2k_w(1.0, 0.3, contact_m2k_w=[[0.0], [-1.0], [NAN]])
    assert_array_equal(np.isnan(touching), [False, True, True])
    rise = adiabatic_rise_k(1.0, 1.0, mass_kg=[1.0, NAN], heat_capacity_j_kgk=1.0)
    assert np.isnan(rise)


def test_paths_before_and_after_a_change_broadcast() -> None:
    thick, k = [[2.0, 1.5], [3.0, 1.5]], [[190.0, 3.0], [0.3, 3.0]]
    rises = temperature_rise_k(
        [[1000.0], [2000.0]], series_resistance_m2k_w(thick, k, contact_m2k_w=[1e-3])
    )
    assert rises.shape == (2, 2)
    assert_allclose(rises[1], 2.0 * rises[0], rtol=1e-12)
    assert (rises[:, 1] > rises[:, 0]).all()
