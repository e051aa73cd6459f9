"""Heads, pitches, strength classes, tightening and friction."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.model.fastener_masses import TABLE_MASSES, table_mass
from benchpack.model.fastener_sizes import (
    CLEARANCE_HOLES_MM,
    COARSE_PITCHES_MM,
    HEADS,
    PROPERTY_CLASSES,
    HeadSize,
    head_size,
    property_class,
)
from benchpack.model.tightening_words import (
    FRICTION_CLASSES,
    METHODS,
    TighteningMethod,
    friction_class,
    method_of,
)


def _head(standard: str, thread: str) -> HeadSize:
    found = head_size(standard, thread)
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("thread", "hexagon", "socket", "button", "nut"),
    [
        # ISO 4014 k, s; ISO 4762 dk, k, s, t; ISO 7380-1 dk, k; ISO 4032 m, s, as
        # published tables and the parameter tables of bd-warehouse have them.
        ("M5", (3.5, 8), (8.5, 5, 4, 2.5), (9.5, 2.75), (4.7, 8)),
        ("M6", (4, 10), (10, 6, 5, 3), (10.5, 3.3), (5.2, 10)),
        ("M8", (5.3, 13), (13, 8, 6, 4), (14, 4.4), (6.8, 13)),
        ("M10", (6.4, 16), (16, 10, 8, 5), (17.5, 5.5), (8.4, 16)),
        ("M12", (7.5, 18), (18, 12, 10, 6), (21, 6.6), (10.8, 18)),
        ("M16", (10, 24), (24, 16, 14, 8), (28, 8.8), (14.8, 24)),
    ],
)
def test_heads_of_published_tables(
    thread: str,
    hexagon: tuple[float, ...],
    socket: tuple[float, ...],
    button: tuple[float, ...],
    nut: tuple[float, ...],
) -> None:
    for standard in ("ISO 4014", "ISO 4017"):
        head = _head(standard, thread)
        assert (head.head_height_mm, head.across_flats_mm) == hexagon
    for standard in ("ISO 4762", "DIN 912"):
        head = _head(standard, thread)
        assert socket == (
            head.head_diameter_mm,
            head.head_height_mm,
            head.drive_size_mm,
            head.drive_depth_mm,
        )
    head = _head("ISO 7380-1", thread)
    assert (head.head_diameter_mm, head.head_height_mm) == button
    head = _head("ISO 4032", thread)
    assert (head.head_height_mm, head.across_flats_mm) == nut


def test_older_standards_are_wider_where_they_are() -> None:
    """DIN 933: M10 17 mm, M12 19 mm, as a handbook has them."""
    assert _head("DIN 933", "M8") == _head("ISO 4017", "M8")
    assert _head("DIN 933", "M10").across_flats_mm == 17
    assert _head("DIN 933", "M12").across_flats_mm == 19
    assert _head("DIN 985", "M12").across_flats_mm == 19


def test_small_flanges_take_a_smaller_wrench() -> None:
    """EN 1662 and EN 1665 in the parameter table of bd-warehouse."""
    assert (_head("EN 1662", "M6").across_flats_mm) == 8
    assert (_head("EN 1665", "M6").across_flats_mm) == 10
    assert _head("DIN 6921", "M8") == _head("EN 1665", "M8")
    assert (_head("EN 1661", "M8").head_height_mm) == 8


@pytest.mark.parametrize(("key", "head"), HEADS.items(), ids=map("-".join, HEADS))
def test_every_head_can_be(key: tuple[str, str], head: HeadSize) -> None:
    standard, thread = key
    diameter = float(thread[1:])
    assert diameter in COARSE_PITCHES_MM
    widest = head.head_diameter_mm or head.across_flats_mm
    assert widest is not None
    assert 1.3 * diameter <= widest <= 2.5 * diameter
    if head.bearing_diameter_mm is not None:
        assert CLEARANCE_HOLES_MM[thread] < head.bearing_diameter_mm < widest
    if head.across_flats_mm is not None and head.head_diameter_mm is not None:
        assert head.across_flats_mm < head.head_diameter_mm
    if head.drive_depth_mm is not None:
        assert head.drive_depth_mm < head.head_height_mm
    assert head.source
    assert math.isnan(head.head_height_mm) == (standard == "DIN 985")


def test_what_no_table_has_is_none() -> None:
    assert head_size("ISO 4762", "M7") is None
    assert head_size("", "M6") is None


@pytest.mark.parametrize(
    ("name", "tensile", "proof"),
    [
        # ISO 898-1 as a handbook reprints it, d up to 16 mm.
        ("4.6", 400, 225),
        ("4.8", 420, 310),
        ("5.6", 500, 280),
        ("5.8", 520, 380),
        ("6.8", 600, 440),
        ("8.8", 800, 580),
        ("9.8", 900, 650),
        ("10.9", 1040, 830),
        ("12.9", 1220, 970),
    ],
)
def test_classes_of_screws(name: str, tensile: float, proof: float) -> None:
    found = property_class(name)
    assert found is not None
    assert (found.tensile_mpa, found.proof_mpa) == (tensile, proof)
    assert proof < found.yield_mpa < tensile
    assert not found.is_nut


def test_classes_above_16_mm() -> None:
    classes = PROPERTY_CLASSES
    assert classes["8.8"].stresses_mpa(16) == (800, 640, 580)
    assert classes["8.8"].stresses_mpa(18) == (830, 660, 600)
    assert classes["10.9"].stresses_mpa(18) == (1040, 940, 830)
    assert all(map(math.isnan, classes["9.8"].stresses_mpa(18)))


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("8,8", "8.8"),
        ("class 10.9", "10.9"),
        ("Property class: 12.9", "12.9"),
        ("a2 70", "A2-70"),
        ("A4-80", "A4-80"),
        ("8", "8"),
        (" 10 ", "10"),
        ("11.9", ""),
        ("", ""),
        ("hard", ""),
    ],
)
def test_a_class_is_found_by_its_usual_spellings(text: str, name: str) -> None:
    found = property_class(text)
    assert (found.name if found else "") == name


@given(st.text(max_size=20))
def test_any_text_is_a_class_a_method_or_none(text: str) -> None:
    assert property_class(text) in (None, *PROPERTY_CLASSES.values())
    assert method_of(text) in (None, *METHODS)


@pytest.mark.parametrize("method", METHODS, ids=lambda method: method.name)
def test_factor_and_spread_of_a_method_agree(method: TighteningMethod) -> None:
    """alpha = (1 + s)/(1 - s) for a scatter of +-s; the tables round both."""
    low = (1 + method.spread_low) / (1 - method.spread_low)
    high = (1 + method.spread_high) / (1 - method.spread_high)
    assert method.factor_low == pytest.approx(low, rel=0.025)
    assert method.factor_high == pytest.approx(high, rel=0.025)
    assert method.factor == method.factor_high


def test_methods_stand_in_the_order_of_their_scatter() -> None:
    assert [m.factor_high for m in METHODS] == sorted(m.factor_high for m in METHODS)


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("torque", "torque"),
        ("Torque wrench 10 Nm", "torque"),
        ("torque and angle", "torque and angle"),
        ("torque-angle", "torque and angle"),
        ("yield-controlled", "yield-controlled"),
        (
            "torque, driver switched off by torque",
            "torque, driver switched off by torque",
        ),
        ("impact wrench", "impact"),
        ("ultrasonic elongation", "elongation by ultrasound"),
        ("hydraulic", "hydraulic"),
        ("by hand", ""),
        ("", ""),
    ],
)
def test_a_method_is_found_by_its_words(text: str, name: str) -> None:
    found = method_of(text)
    assert (found.name if found else "") == name


def test_friction_classes_overlap_without_a_hole() -> None:
    """Ends as two handbooks reprint VDI 2230-1 table A5."""
    ends = [(found.low, found.high) for found in FRICTION_CLASSES]
    assert ends[:4] == [(0.04, 0.1), (0.08, 0.16), (0.14, 0.24), (0.2, 0.35)]
    assert ends[4][0] == 0.3
    usual, slippery = friction_class(0.12), friction_class(0.03)
    assert usual is not None
    assert usual.letter == "B"
    assert slippery is None


def test_masses_of_the_table() -> None:
    """Weight charts of fastener handbooks: kg per 1000."""
    found = table_mass("DIN 912", "socket screw", "M8x25")
    assert found is not None
    assert (found.mass_g, found.mark) == (15.0, "confirmed")
    nut = table_mass("", "threaded insert", "M6", text="Blind rivet nut M6")
    assert nut is TABLE_MASSES["blind rivet nut", "M6"]
    assert table_mass("", "threaded insert", "M6", text="moulded-in bush M6") is None
    assert table_mass("ISO 15977", "blind rivet", "4.8x12") is not None
    assert table_mass("", "socket screw", "M6x20") is None
