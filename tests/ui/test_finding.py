"""Which record a name means."""

from __future__ import annotations

from dataclasses import replace

import pytest

from benchpack.model.joint import JOINT_FIELDS, Joint
from benchpack.model.library import Library
from benchpack.ui.finding import RecordKind, column_key, found_record, page_of


@pytest.fixture
def library(library: Library) -> Library:
    """Give the library with a part and a joint of one name."""
    twin = Joint("Avocet 81", "lid panel", count=2)
    lone = Joint("Dunlin 74", "lid screws", count=3)
    joints = (*library.joints_of("Avocet 81"), twin)
    return replace(library, joints={"Avocet 81": joints, "Dunlin 74": (lone,)})


@pytest.mark.parametrize(
    ("record", "column", "found"),
    [
        ("Knot 42", "mass [kg]", (RecordKind.PACK, "Knot 42")),
        ("tray floor", "", (RecordKind.PART, "Avocet 81")),
        ("lid inserts", "count", (RecordKind.JOINT, "Avocet 81")),
        ("lid panel", "", (RecordKind.PART, "Avocet 81")),
        ("lid panel", "count", (RecordKind.PART, "Avocet 81")),
        ("lid panel", "designation", (RecordKind.JOINT, "Avocet 81")),
        ("nothing", "", (RecordKind.NONE, "")),
    ],
)
def test_a_name_is_looked_for_in_packs_parts_and_joints(
    library: Library, record: str, column: str, found: tuple[RecordKind, str]
) -> None:
    assert found_record(library, record, column=column, first="Avocet 81") == found


def test_the_selected_pack_is_looked_into_first(library: Library) -> None:
    for first in ("Dunlin 74", "Avocet 81"):
        found = found_record(library, "lid screws", column="", first=first)
        assert found == (RecordKind.JOINT, first)


@pytest.mark.parametrize("said", ["mass each [g]", "Mass each", "mass_each_g"])
def test_columns_are_named_by_head_title_or_key(said: str) -> None:
    assert column_key(said, JOINT_FIELDS) == "mass_each_g"
    assert column_key("colour", JOINT_FIELDS) == ""


@pytest.mark.parametrize(
    ("record", "column", "title"),
    [
        ("Knot 42", "", "Packs"),
        ("Knot 42", "joints", "Joints"),
        ("tray floor", "", "Packs"),
        ("lid inserts", "", "Joints"),
        ("nothing", "", ""),
    ],
)
def test_every_record_has_its_page(
    library: Library, record: str, column: str, title: str
) -> None:
    assert page_of(library, record, column=column, first="") == title
