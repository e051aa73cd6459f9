"""Designations as people write them: what is read, and what is left as text."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from benchpack.model.designation import Designation, read_designation
from benchpack.model.families import FAMILIES, FAMILY_NAMES
from benchpack.model.fastener_sizes import COARSE_PITCHES_MM
from tests.strategies.joining import SIZES, screws
from tests.strategies.records import AWKWARD_TEXTS

SCREW = {"diameter_mm": 6.0, "pitch_mm": 1.0, "length_mm": 20.0, "size": "M6x20"}


def _said(read: Designation) -> dict[str, Any]:
    """Give what a designation says, without what it does not say."""
    values = {name: getattr(read, name) for name in Designation.__slots__}
    del values["text"]
    return {name: value for name, value in values.items() if value not in ("", None)}


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            "ISO 4762 M6x20 8.8",
            SCREW
            | {
                "standard": "ISO 4762",
                "family": "socket screw",
                "property_class": "8.8",
            },
        ),
        (
            "DIN 912 M6x20",
            SCREW | {"standard": "DIN 912", "family": "socket screw"},
        ),
        ("M6 x 20 - 8.8", SCREW | {"property_class": "8.8"}),
        ("M6 × 20 – 8,8", SCREW | {"property_class": "8.8"}),
        ("M6\u2009×\u202f20", SCREW),
        ("\u041c6\u044520", SCREW),
        ("m6x20", SCREW),
        ("M6X20 mm", SCREW),
        ("M6 mm x 20 mm", SCREW),
        ("M6*20", SCREW),
        ("XYZ M6x20", SCREW),
        ("M6x20 T30 ZnNi", SCREW),
        ("M6x20-6g/A4-80", SCREW | {"property_class": "A4-80"}),
        ("M6x20 a2 70", SCREW | {"property_class": "A2-70"}),
        (
            "ISO 4017-M8x25",
            {
                "standard": "ISO 4017",
                "family": "hex screw",
                "size": "M8x25",
                "diameter_mm": 8.0,
                "pitch_mm": 1.25,
                "length_mm": 25.0,
            },
        ),
        (
            "EN 1665 M6x16 10.9",
            {
                "standard": "EN 1665",
                "family": "flange screw",
                "size": "M6x16",
                "diameter_mm": 6.0,
                "pitch_mm": 1.0,
                "length_mm": 16.0,
                "property_class": "10.9",
            },
        ),
        (
            "DIN EN ISO 4762:2004-06 M8x1,25x30",
            {
                "standard": "ISO 4762",
                "family": "socket screw",
                "size": "M8x30",
                "diameter_mm": 8.0,
                "pitch_mm": 1.25,
                "length_mm": 30.0,
            },
        ),
        (
            "M8x1x25",
            {
                "size": "M8x1x25",
                "diameter_mm": 8.0,
                "pitch_mm": 1.0,
                "length_mm": 25.0,
            },
        ),
        (
            "ISO 7380 M5x12",
            {
                "standard": "ISO 7380-1",
                "family": "button head screw",
                "size": "M5x12",
                "diameter_mm": 5.0,
                "pitch_mm": 0.8,
                "length_mm": 12.0,
            },
        ),
        (
            "ISO 4032-M8-8",
            {
                "standard": "ISO 4032",
                "family": "nut",
                "size": "M8",
                "diameter_mm": 8.0,
                "pitch_mm": 1.25,
                "property_class": "8",
            },
        ),
        (
            "hexagon nut M8, ISO 4032-8",
            {
                "standard": "ISO 4032",
                "family": "nut",
                "size": "M8",
                "diameter_mm": 8.0,
                "pitch_mm": 1.25,
                "property_class": "8",
            },
        ),
        (
            "polyurethane foam cured in place 8x5",
            {"family": "gasket", "size": "8x5", "width_mm": 8.0, "height_mm": 5.0},
        ),
        (
            "EN 1661 M8",
            {
                "standard": "EN 1661",
                "family": "nut",
                "size": "M8",
                "diameter_mm": 8.0,
                "pitch_mm": 1.25,
            },
        ),
        (
            "ISO 898-1 stud M8x25",
            {
                "standard": "ISO 898-1",
                "family": "stud",
                "size": "M8x25",
                "diameter_mm": 8.0,
                "pitch_mm": 1.25,
                "length_mm": 25.0,
            },
        ),
        (
            "ISO 15977 4,8x12",
            {
                "standard": "ISO 15977",
                "family": "blind rivet",
                "size": "4.8x12",
                "diameter_mm": 4.8,
                "length_mm": 12.0,
            },
        ),
        (
            "silicone bead 5 mm",
            {"family": "sealant bead", "size": "5 mm", "diameter_mm": 5.0},
        ),
        (
            "EPDM profile 8x6",
            {"family": "gasket", "size": "8x6", "width_mm": 8.0, "height_mm": 6.0},
        ),
        (
            "silicone foam 12 x 6 mm",
            {"family": "gasket", "size": "12x6", "width_mm": 12.0, "height_mm": 6.0},
        ),
        (
            "polyurethane bead 8x3",
            {
                "family": "structural adhesive",
                "size": "8x3",
                "width_mm": 8.0,
                "height_mm": 3.0,
            },
        ),
        (
            "polyurethane, 0.8 mm layer",
            {"family": "structural adhesive", "size": "0.8 mm", "height_mm": 0.8},
        ),
        (
            "ISO 2553 fillet a3",
            {
                "standard": "ISO 2553",
                "family": "arc weld",
                "size": "a3",
                "throat_mm": 3.0,
            },
        ),
        ("a3", {"family": "arc weld", "size": "a3", "throat_mm": 3.0}),
        (
            "fillet z4",
            {"family": "arc weld", "size": "z4", "throat_mm": 4 / math.sqrt(2)},
        ),
        ("lap seam 2.5 mm", {"size": "2.5 mm", "height_mm": 2.5}),
        ("spot 5 mm", {"family": "spot weld", "size": "5 mm", "diameter_mm": 5.0}),
        (
            "16 H7/r6",
            {"family": "press fit", "size": "16 H7/r6", "diameter_mm": 16.0},
        ),
        (
            "20 H7/m6",
            {"family": "press fit", "size": "20 H7/m6", "diameter_mm": 20.0},
        ),
        ("edge clip", {"family": "clip"}),
        ("moulded hook", {"family": "snap fit"}),
    ],
)
def test_usual_forms_are_understood(text: str, said: dict[str, Any]) -> None:
    assert _said(read_designation(text)) == {**said, "understood": True}


@pytest.mark.parametrize(
    ("text", "family", "said"),
    [
        ("5.3x6.5", "self-piercing rivet", {"diameter_mm": 5.3, "length_mm": 6.5}),
        ("6x20", "Socket screws", SCREW),
        ("6 x 20, 10.9", "hex bolt", SCREW | {"property_class": "10.9"}),
        ("M5x20", "flow-drill screw", {"diameter_mm": 5.0, "length_mm": 20.0}),
        ("lap seam 2 mm", "laser weld", {"height_mm": 2.0}),
        ("overlap, 24 mm wobble", "laser weld", {"length_mm": 24.0}),
        ("8x6", "gasket", {"width_mm": 8.0, "height_mm": 6.0}),
        ("8x6x900", "gasket", {"size": "8x6", "length_mm": 900.0}),
        ("a 3", "arc weld", {"throat_mm": 3.0, "size": "a3"}),
        ("spring clip 14", "clip", {"diameter_mm": 14.0}),
        ("blind rivet nut M6", "threaded insert", {"diameter_mm": 6.0}),
        ("M6", "nut", {"diameter_mm": 6.0, "size": "M6"}),
    ],
)
def test_the_family_tells_what_bare_numbers_mean(
    text: str, family: str, said: dict[str, Any]
) -> None:
    read = read_designation(text, family=family)
    assert read.understood
    assert said.items() <= _said(read).items()


@pytest.mark.parametrize(
    "text",
    [
        "",
        "ISO 4762",
        "M0x20",
        "M6x20 + M8x25",
        "M6x20x30",
        "M8x1x1",
        "M600x20",
        "M6x20 cm",
        "1/4-20 UNC",
        "3/8 in",
        "5.3x6.5",
        "silicone bead 5 cm",
        "silicone bead 5 mm or 6 mm",
        "EPDM profile 8",
        "silicone foam",
        "a 3 mm bead",
        "0x0 bead",
        "as drawing 4711",
        "special screw",
        "socket screw",
        "M6x20 " + "x" * 300,
    ],
)
def test_what_is_not_understood_stays_text(text: str) -> None:
    read = read_designation(text)
    assert not read.understood
    assert read.text == text


def test_the_family_that_is_given_goes_before_the_one_of_the_standard() -> None:
    read = read_designation("ISO 4762 M6x20", family="hex screws")
    assert (read.family, read.standard_family) == ("hex screw", "socket screw")
    assert read_designation("ISO 4762 M6x20", family="odd").family == "socket screw"


def test_a_thread_says_whether_it_is_fine() -> None:
    assert read_designation("M8x1x25").thread == "M8"
    assert read_designation("M8x1x25").is_fine
    assert not read_designation("M8x25").is_fine
    assert not read_designation("16 H7/r6").is_fine
    assert read_designation("5.3x6.5", family="self-piercing rivet").thread == ""


def test_an_equal_text_is_read_once() -> None:
    first = read_designation("ISO 4762 M6x20", family="socket screw")
    assert read_designation("ISO 4762 M6x20", family="socket screw") is first


@given(
    st.text(max_size=60)
    | st.sampled_from(AWKWARD_TEXTS)
    | st.text("0123456789.,xX×*-–/ mMaAzZHØ()ISODINE:", max_size=40),
    st.sampled_from(("", *FAMILY_NAMES)) | st.text(max_size=10),
)
@example("M" + "9" * 60, "")
@example("٣x٤", "gasket")
def test_any_text_is_read_and_kept(text: str, family: str) -> None:
    read = read_designation(text, family=family)
    assert read.text == text
    assert read.family in ("", *FAMILY_NAMES)
    for name in ("diameter", "pitch", "length", "width", "height", "throat"):
        value = getattr(read, f"{name}_mm")
        assert value is None or 0 < value < 1e4
    if read.size and read.understood:
        assert "x" not in read.size or len(read.size.split("x")) <= 3


@given(screws(), st.sampled_from(("x", " x ", "×", " × ")), st.booleans())
def test_a_screw_that_is_written_down_comes_back(
    screw: dict[str, Any], times: str, has_comma: bool
) -> None:
    pitch, is_coarse = (
        screw["pitch_mm"],
        screw["pitch_mm"] == COARSE_PITCHES_MM[screw["diameter_mm"]],
    )
    size = f"M{screw['diameter_mm']:g}"
    size += "" if is_coarse else f"{times}{pitch:g}"
    size += f"{times}{screw['length_mm']:g}"
    text = " ".join(filter(None, (screw["standard"], size, screw["property_class"])))
    read = read_designation(text.replace(".", ",") if has_comma else text)
    assert read.understood
    assert {name: getattr(read, name) for name in screw} == screw
    again = read_designation(f"{read.standard} {read.size}")
    assert (again.size, again.pitch_mm) == (read.size, read.pitch_mm)


@given(SIZES, SIZES, st.sampled_from(FAMILIES))
def test_two_numbers_come_back_by_their_family(
    first: float, second: float, family: Any
) -> None:
    read = read_designation(f"{first} x {second}", family=family.name)
    if family.sort == "rivet":
        assert (read.diameter_mm, read.length_mm) == (first, second)
        assert read_designation(read.size, family=family.name).size == read.size
    elif family.sort == "bead":
        assert (read.width_mm, read.height_mm) == (first, second)
    elif not family.threaded:
        assert not read.understood


@given(SIZES)
def test_one_number_comes_back_by_its_words(number: float) -> None:
    assert read_designation(f"a{number}").throat_mm == number
    assert read_designation(f"silicone bead {number} mm").diameter_mm == number
    assert read_designation(f"{number} H7/r6").diameter_mm == number
    assert read_designation(f"butt seam {number} mm").height_mm == number
