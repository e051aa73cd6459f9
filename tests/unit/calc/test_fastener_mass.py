"""Masses of fasteners: parts that add up, scaling, and what is unknown."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc import fastener_mass, threads

if TYPE_CHECKING:
    from collections.abc import Callable

    from numpy.typing import ArrayLike

    from benchpack.calc._arrays import FloatArray

NAN = float("nan")
# A busy machine is no failure.
untimed = settings(deadline=None)
lengths = st.floats(1.0, 300.0)

M8_HEX: dict[str, ArrayLike] = {"across_flats_mm": 13.0, "head_height_mm": 5.3}
M8_SOCKET: dict[str, ArrayLike] = {
    "head_diameter_mm": 13.0,
    "head_height_mm": 8.0,
    "drive_size_mm": 6.0,
    "drive_depth_mm": 4.0,
}
M8_BUTTON: dict[str, ArrayLike] = {
    "head_diameter_mm": 14.0,
    "head_height_mm": 4.4,
    "drive_size_mm": 5.0,
    "drive_depth_mm": 2.6,
}
M8_FLANGE: dict[str, ArrayLike] = {
    "across_flats_mm": 13.0,
    "head_height_mm": 8.1,
    "flange_diameter_mm": 18.0,
    "flange_thickness_mm": 1.2,
}
SCREWS = [
    pytest.param(fastener_mass.hex_screw_mass_g, M8_HEX, id="hex"),
    pytest.param(fastener_mass.socket_screw_mass_g, M8_SOCKET, id="socket"),
    pytest.param(fastener_mass.button_screw_mass_g, M8_BUTTON, id="button"),
    pytest.param(fastener_mass.flange_screw_mass_g, M8_FLANGE, id="flange"),
]


@pytest.mark.parametrize(("mass_g", "head"), SCREWS)
def test_length_adds_thread_and_nothing_else(
    mass_g: Callable[..., FloatArray], head: dict[str, ArrayLike]
) -> None:
    masses = mass_g(8.0, 1.25, length_mm=[20.0, 30.0], **head)
    more = 10.0 * threads.solid_area_mm2(8.0, 1.25) * 7.85e-3
    assert float(masses[1] - masses[0]) == pytest.approx(float(more), rel=1e-12)
    assert masses[0] > fastener_mass.stud_mass_g(8.0, 1.25, length_mm=20.0)


@pytest.mark.parametrize(("mass_g", "head"), SCREWS)
def test_an_unknown_or_impossible_dimension_gives_no_mass(
    mass_g: Callable[..., FloatArray], head: dict[str, ArrayLike]
) -> None:
    for name in head:
        masses = mass_g(8.0, 1.25, length_mm=20.0, **{**head, name: [NAN, 0.0, -1.0]})
        assert np.isnan(masses).all(), name
    masses = mass_g([8.0, NAN], 1.25, length_mm=[[20.0], [0.0]], **head)
    assert_array_equal(np.isfinite(masses), [[True, False], [False, False]])


@pytest.mark.parametrize(("mass_g", "head"), SCREWS)
@untimed
@given(length=lengths, factor=st.floats(0.2, 5.0))
def test_a_screw_twice_the_size_weighs_eight_times_as_much(
    mass_g: Callable[..., FloatArray],
    head: dict[str, float],
    length: float,
    factor: float,
) -> None:
    one = mass_g(8.0, 1.25, length_mm=length, **head)
    scaled = {name: factor * size for name, size in head.items()}
    other = mass_g(8.0 * factor, 1.25 * factor, length_mm=length * factor, **scaled)
    assert float(other) == pytest.approx(factor**3 * float(one), rel=1e-9)


@untimed
@given(lengths, lengths)
def test_a_plain_shank_weighs_more_than_thread(length: float, threaded: float) -> None:
    throughout = fastener_mass.hex_screw_mass_g(8.0, 1.25, length_mm=length, **M8_HEX)
    partly = fastener_mass.hex_screw_mass_g(
        8.0, 1.25, length_mm=length, thread_length_mm=threaded, **M8_HEX
    )
    plain = max(0.0, length - threaded)
    section = fastener_mass.round_section_mm2(8.0) - threads.solid_area_mm2(8.0, 1.25)
    more = plain * float(section) * 7.85e-3
    assert float(partly - throughout) == pytest.approx(more, rel=1e-9, abs=1e-9)


def test_a_titanium_screw_weighs_what_its_density_says() -> None:
    steel = fastener_mass.hex_screw_mass_g(8.0, 1.25, length_mm=25.0, **M8_HEX)
    light = fastener_mass.hex_screw_mass_g(
        8.0, 1.25, length_mm=25.0, density_kg_m3=[4430.0, NAN], **M8_HEX
    )
    assert_allclose(light, [float(steel) * 4430.0 / 7850.0, NAN], rtol=1e-12)


def test_screw_and_nut_of_one_hexagon_fill_it() -> None:
    """A nut is the hexagon less the rod that goes through it."""
    nut = fastener_mass.nut_mass_g(8.0, 1.25, across_flats_mm=13.0, height_mm=5.3)
    screw = fastener_mass.hex_screw_mass_g(8.0, 1.25, length_mm=20.0, **M8_HEX)
    rod = fastener_mass.stud_mass_g(8.0, 1.25, length_mm=20.0 + 5.3)
    assert float(screw) == pytest.approx(float(nut + rod), rel=1e-12)


def test_nuts_with_and_without_a_flange_in_one_call() -> None:
    nuts = fastener_mass.nut_mass_g(
        8.0,
        1.25,
        across_flats_mm=13.0,
        height_mm=8.0,
        flange_diameter_mm=[0.0, 17.9, NAN],
        flange_thickness_mm=[0.0, 1.2, 1.2],
    )
    assert nuts[1] > nuts[0] > 0
    assert np.isnan(nuts[2])


def test_a_flange_as_thick_as_its_head_is_no_head() -> None:
    head = {**M8_FLANGE, "flange_thickness_mm": 8.1}
    assert np.isnan(
        fastener_mass.flange_screw_mass_g(8.0, 1.25, length_mm=20.0, **head)
    )


def test_a_bored_rivet_is_lighter_by_its_bore() -> None:
    solid = fastener_mass.rivet_mass_g(5.3, length_mm=5.0)
    bored = fastener_mass.rivet_mass_g(
        5.3, length_mm=5.0, bore_diameter_mm=3.4, bore_depth_mm=4.0
    )
    bore = fastener_mass.line_mass_g(
        fastener_mass.round_section_mm2(3.4), 4.0, density_kg_m3=7850.0
    )
    assert float(solid - bored) == pytest.approx(float(bore), rel=1e-12)


def test_the_head_of_a_rivet_is_what_was_given_or_what_is_usual() -> None:
    usual = fastener_mass.rivet_mass_g([4.0, 6.0], length_mm=12.0)
    given_heads = fastener_mass.rivet_mass_g(
        [4.0, 6.0], length_mm=12.0, head_diameter_mm=[7.0, 10.5], head_height_mm=2.4
    )
    assert float(given_heads[0]) == pytest.approx(float(usual[0]), rel=1e-12)
    assert given_heads[1] < usual[1]


def test_sections_and_lines() -> None:
    assert_allclose(fastener_mass.fillet_section_mm2([3.0, 0.0, NAN]), [9.0, NAN, NAN])
    assert np.isnan(fastener_mass.rectangle_section_mm2(8.0, -3.0))
    no_filler = fastener_mass.line_mass_g(0.0, 7400.0, density_kg_m3=2700.0)
    assert no_filler == 0.0
    beads = fastener_mass.line_mass_g(
        fastener_mass.round_section_mm2(5.0), [1000.0, NAN], density_kg_m3=1340.0
    )
    assert_allclose(beads, [26.3, NAN], rtol=1e-3)
