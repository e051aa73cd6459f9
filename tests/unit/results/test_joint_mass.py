"""The mass of a joint: entered, listed, or worked out, and how sure it is."""

from __future__ import annotations

import math
from typing import Any

import pytest
from numpy.testing import assert_allclose

from benchpack.model.words import RELATIVE_UNCERTAINTY, KnownBy
from benchpack.results.joint_mass import (
    joint_mass,
    joint_mass_each_g,
    joint_mass_kg,
    reading_of,
)
from tests.unit.results.joint_samples import joint

STEEL = 7.85e-3
"""Grams in a cubic millimetre of steel."""


def each(**values: Any) -> tuple[float, KnownBy, float]:
    return joint_mass_each_g(joint(**values))


def test_an_entered_mass_wins_over_geometry() -> None:
    mass_g, known_by, u_rel = each(
        designation="ISO 4762 M6x16", mass_each_g=5.5, known_by=KnownBy.WEIGHED_BATCH
    )
    assert (mass_g, known_by) == (5.5, KnownBy.WEIGHED_BATCH)
    assert u_rel == RELATIVE_UNCERTAINTY[KnownBy.WEIGHED_BATCH]


def test_an_entered_zero_is_a_mass() -> None:
    assert each(designation="ISO 4762 M6x16", mass_each_g=0.0)[0] == 0


def test_an_entered_mass_that_does_not_say_how_it_is_known_has_no_range() -> None:
    mass_g, known_by, u_rel = each(family="clip", mass_each_g=2.0)
    assert (mass_g, known_by) == (2.0, KnownBy.UNSTATED)
    assert math.isnan(u_rel)


def test_a_listed_screw_has_the_mass_of_the_published_table() -> None:
    """ISO 4762 M6x16: 5.8 kg per 1000 in a fastener handbook (trade table), +-7 %."""
    mass_g, known_by, u_rel = each(designation="ISO 4762 M6x16 8.8")
    assert (mass_g, known_by) == (5.8, KnownBy.STANDARD_TABLE)
    assert_allclose(u_rel, 0.07 / math.sqrt(3))


@pytest.mark.parametrize(
    ("designation", "published_g", "within"),
    [
        # CAD volumes of a parametric package; the head there is at its upper limit.
        ("ISO 4017 M8x25", 14.478, 0.07),
        ("ISO 4762 M8x18", 12.7, 0.07),  # between M8x16 and M8x20 of a DIN 912 chart
        # Derived in the trade tables: hexagon 0.866 s^2 k 0.975, thread by pitch line.
        ("ISO 4017 M6x20", 6.2, 0.07),
        ("ISO 4017 M10x30", 25.9, 0.07),
        ("ISO 4032 M8", 5.2, 0.07),
        ("EN 1665 M6x20", 8.7, 0.12),
        ("EN 1665 M8x25", 18.4, 0.12),
    ],
)
def test_geometry_stays_within_its_stated_tolerance(
    designation: str, published_g: float, within: float
) -> None:
    mass_g, known_by, u_rel = each(designation=designation)
    assert known_by is KnownBy.GEOMETRY
    assert_allclose(u_rel, within / math.sqrt(3))
    assert_allclose(mass_g, published_g, rtol=within)


def test_a_screw_without_a_standard_is_taken_as_usual_and_less_sure() -> None:
    named = joint_mass(joint(designation="ISO 4017 M8x25"))
    assumed = joint_mass(joint(family="hex screw", designation="M8x25"))
    assert assumed.mass_g == named.mass_g
    assert assumed.u_rel > named.u_rel
    assert "not named" in assumed.source


def test_a_fine_pitch_weighs_more_than_the_coarse_one() -> None:
    coarse, fine = (each(designation=f"ISO 4017 M8x{p}25")[0] for p in ("", "1x"))
    assert coarse < fine < 1.03 * coarse


def test_a_stud_and_a_solid_rivet_are_rods() -> None:
    """By hand: mean solid area of M8 is 41.36 mm2; DIN 660 head 1.75 d by 0.6 d."""
    assert_allclose(
        each(family="stud", designation="M8x25")[0], STEEL * 41.36 * 25, rtol=1e-3
    )
    head = math.pi * 3.6 / 6 * (0.75 * 10.5**2 + 3.6**2)
    shank = math.pi / 4 * 6**2 * 16
    assert_allclose(
        each(family="solid rivet", designation="6x16")[0], STEEL * (head + shank)
    )


@pytest.mark.parametrize(
    ("designation", "published_g"), [("5.3x5", 0.8), ("5.3x6.5", 1.0), ("3.35x5", 0.36)]
)
def test_an_unlisted_piercing_rivet_is_near_its_listed_neighbours(
    designation: str, published_g: float
) -> None:
    """Public joining data; a hundredth longer, so that the shape is asked."""
    diameter, length = designation.split("x")
    text = f"{diameter}x{float(length) + 0.01}"
    mass_g, known_by, _ = each(family="self-piercing rivet", designation=text)
    assert known_by is KnownBy.GEOMETRY
    assert_allclose(mass_g, published_g, rtol=0.25)


def test_a_flow_drill_screw_grows_by_its_thread() -> None:
    short, long = (
        each(family="flow-drill screw", designation=f"M5x{length}")[0]
        for length in (22, 24)
    )
    assert_allclose(long - short, STEEL * 16.08 * 2, rtol=1e-3)
    assert_allclose(short, 5.1 + STEEL * 16.08 * 2, rtol=0.15)


@pytest.mark.parametrize(
    ("family", "designation", "per_m_g", "within"),
    [
        # Trade tables: a3 in aluminium 29 g, 5 mm silicone 26 g, foam 12x6 18 g,
        # solid EPDM 8x6 58 g, adhesive bead 8x3 16 g to the metre.
        ("arc weld", "aluminium fillet a3", 29, 0.02),
        ("sealant bead", "silicone bead 5 mm", 26, 0.02),
        ("gasket", "silicone foam 12x6", 18, 0.02),
        ("gasket", "EPDM profile 8x6", 58, 0.02),
        ("structural adhesive", "polyurethane bead 8x3", 16, 0.02),
    ],
)
def test_a_line_weighs_by_section_length_and_density(
    family: str, designation: str, per_m_g: float, within: float
) -> None:
    mass_g, known_by, u_rel = each(
        family=family, designation=designation, length_mm=2500.0
    )
    assert known_by is KnownBy.GEOMETRY
    assert_allclose(mass_g, 2.5 * per_m_g, rtol=within)
    assert u_rel > 0.1


def test_a_steel_seam_is_not_taken_for_aluminium() -> None:
    steel, unnamed = (
        joint_mass(joint(family="arc weld", designation=text, length_mm=1000.0))
        for text in ("steel fillet a3", "fillet a3")
    )
    assert_allclose(steel.mass_g / unnamed.mass_g, 7850 / 2700)
    assert (steel.known_by, unnamed.known_by) == (KnownBy.GEOMETRY, KnownBy.ESTIMATE)
    assert unnamed.u_rel == 0.5


def test_a_bead_without_a_section_takes_the_usual_and_is_unsure() -> None:
    found = joint_mass(joint(family="sealant bead", length_mm=3000.0))
    assert (found.mass_g, found.known_by, found.u_rel) == (78.0, KnownBy.ESTIMATE, 0.5)


@pytest.mark.parametrize(
    "family", ["friction stir weld", "laser weld", "spot weld", "clinch", "snap fit"]
)
def test_what_adds_nothing_weighs_nothing_and_is_sure(family: str) -> None:
    assert each(family=family) == (0.0, KnownBy.GEOMETRY, 0.0)


@pytest.mark.parametrize(
    "values",
    [
        {},
        {"family": "hex screw"},
        {"family": "hex screw", "designation": "made to drawing 4711"},
        {"family": "magnet", "designation": "strong"},
        {"designation": "ISO 4762 M6"},
        {"family": "clip", "designation": "fir tree 6.5"},
        {"family": "threaded insert", "designation": "moulded-in bush M5"},
        {"family": "sealant bead", "designation": "silicone bead 5 mm"},
    ],
)
def test_what_cannot_be_worked_out_stays_unknown(values: dict[str, Any]) -> None:
    mass_g, known_by, u_rel = each(**values)
    assert math.isnan(mass_g)
    assert known_by is KnownBy.UNSTATED
    assert math.isnan(u_rel)
    assert math.isnan(joint_mass_kg(joint(**values)))


def test_a_worked_out_mass_can_be_computed_again_from_its_inputs() -> None:
    found = joint_mass(joint(designation="ISO 4017 M8x25"))
    given = {item.label.split(",")[0]: item.value for item in found.inputs}
    head = 0.866 * given["s"] ** 2 * given["k"] * 0.975
    thread = 41.36 * given["L"]
    assert_allclose(found.mass_g, given["rho"] * 1e-6 * (head + thread), rtol=1e-3)
    assert all(item.source for item in found.inputs)


def test_the_designation_names_the_family_where_no_other_is_known() -> None:
    for family in ("", "screw thing"):
        family_read, read = reading_of(family, "ISO 4762 M6x16")
        assert family_read is not None
        assert family_read.name == "socket screw"
        assert read.size == "M6x16"
