"""Families of joints: their names, what is counted, gaskets and materials of lines."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.model.families import (
    FAMILIES,
    FAMILY_NAMES,
    GASKET_KINDS,
    Counted,
    FamilySort,
    JointFamily,
    family_of,
    gasket_kind,
    line_material,
)
from benchpack.model.gaskets import FORMED_IN_PLACE


def _name(text: str) -> str:
    found = family_of(text)
    return found.name if found else ""


@pytest.mark.parametrize("family", FAMILIES, ids=FAMILY_NAMES)
def test_a_family_is_found_by_every_spelling_of_its_names(family: JointFamily) -> None:
    for name in (family.name, *family.synonyms):
        for text in (name, f" {name.upper()} ", f"{name}s", name.replace(" ", "-")):
            assert _name(text) == family.name, text


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("Hex bolts", "hex screw"),
        ("flange  bolt", "flange screw"),
        ("flow drill screws", "flow-drill screw"),
        ("Self-piercing rivets", "self-piercing rivet"),
        ("clinches", "clinch"),
        ("rivet nut", "threaded insert"),
        ("FSW", "friction stir weld"),
        ("gasket beads", "gasket"),
        ("adhesive", "structural adhesive"),
        ("screw", ""),
        ("", ""),
        ("s", ""),
        ("washer", ""),
    ],
)
def test_family_of_other_words(text: str, name: str) -> None:
    assert _name(text) == name


@given(st.text(max_size=30))
def test_any_text_names_a_family_or_none(text: str) -> None:
    assert _name(text) in ("", *FAMILY_NAMES)


def test_no_name_means_two_families() -> None:
    names = [name for f in FAMILIES for name in (f.name, *f.synonyms)]
    assert len(names) == len(set(names))
    assert all(_name(name) for name in names)


def test_point_joints_count_pieces_and_line_joints_length() -> None:
    lines = {family.name for family in FAMILIES if family.counted is Counted.LINE}
    assert lines == {
        "friction stir weld",
        "arc weld",
        "laser weld",
        "structural adhesive",
        "sealant bead",
        "gasket",
    }
    assert {f.name for f in FAMILIES if f.threaded} == {
        "hex screw",
        "flange screw",
        "socket screw",
        "button head screw",
        "nut",
        "stud",
        "threaded insert",
        "flow-drill screw",
    }


def test_flow_drill_screws_are_set_from_one_side_without_a_hole() -> None:
    family = family_of("flow-drill screw")
    assert family is not None
    assert family.one_sided
    assert "no pilot hole" in family.note
    two_sided = {f.name for f in FAMILIES if f.sort is FamilySort.RIVET}
    assert {f.name for f in FAMILIES if f.name in two_sided and f.one_sided} == {
        "blind rivet"
    }


@pytest.mark.parametrize(
    ("family", "text", "name"),
    [
        ("gasket", "silicone foam 12x6", "foam"),
        ("gasket", "EPDM profile 8x6", "rubber profile"),
        ("gasket", "anaerobic bead 2 mm", "anaerobic between metal flanges"),
        ("gasket", "polyurethane foam cured in place 8x5", "cured in place"),
        ("gasket", "Cured-in-place bead 6x4", "cured in place"),
        ("gasket", "foam-in-place 10x6", "cured in place"),
        ("sealant bead", "silicone bead 5 mm", "formed in place"),
        ("sealant bead", "anaerobic 2 mm", "anaerobic between metal flanges"),
        ("gasket", "part 4711", ""),
        ("socket screw", "ISO 4762 M6x20", ""),
    ],
)
def test_the_kind_of_a_gasket_stands_in_its_designation(
    family: str, text: str, name: str
) -> None:
    kind = gasket_kind(family, text)
    assert (kind.name if kind else "") == name


def test_only_the_anaerobic_kind_asks_for_metal() -> None:
    assert [kind.name for kind in GASKET_KINDS if kind.metal_flanges_only] == [
        "anaerobic between metal flanges"
    ]
    for kind in GASKET_KINDS:
        assert 0 < kind.pressure_low_mpa < kind.pressure_high_mpa
        assert kind.allowed_loss_mm > 0
        assert kind.source
        assert kind.mark == "from memory"
    assert FORMED_IN_PLACE in GASKET_KINDS


@pytest.mark.parametrize(
    ("family", "text", "section_mm2", "g_per_m", "rel"),
    [
        # Masses per metre that the trade's table of beads derives, rounded there.
        ("structural adhesive", "epoxy bead 8x3", 24.0, 16.0, 0.01),
        ("sealant bead", "silicone bead 5 mm", 19.635, 26.0, 0.01),
        ("gasket", "silicone foam 12x6", 72.0, 18.0, 0.01),
        ("gasket", "EPDM profile 8x6", 48.0, 58.0, 0.01),
    ],
)
def test_beads_weigh_what_the_table_says(
    family: str, text: str, section_mm2: float, g_per_m: float, rel: float
) -> None:
    made_of = line_material(family, text)
    assert made_of is not None
    filled_mm2 = section_mm2 * made_of.fill
    assert filled_mm2 * made_of.density_kg_m3 / 1000 == pytest.approx(g_per_m, rel=rel)


def test_words_that_name_no_material_give_none() -> None:
    assert line_material("gasket", "part 4711") is None
    assert line_material("arc weld", "fillet a3") is None
    steel = line_material("arc weld", "steel fillet a3")
    assert steel is not None
    assert (steel.density_kg_m3, steel.fill) == (7850.0, 1.0)
