"""Edits of proposals, renames that reach them, and undo of any of it."""

from __future__ import annotations

import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from benchpack.errors import DataError
from benchpack.files.library_file import LibraryFile
from benchpack.model.change import Change, ChangeKind
from benchpack.model.joint import Joint
from benchpack.model.library import Library, by_study
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.part import Part
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.session.change_edits import (
    free_change_name,
    with_change_switched,
    with_change_values,
    with_changes,
    with_changes_chosen,
    with_changes_ordered,
    with_new_change,
    without_changes,
)
from benchpack.session.change_names import with_renamed_materials
from benchpack.session.document import Document
from benchpack.session.edits import with_pack_values, with_taken_in, without_packs
from benchpack.session.joint_edits import with_joint_rows, with_joint_values
from benchpack.session.record_edits import with_part_values, without_parts
from benchpack.session.state import Changed, State, difference
from benchpack.session.study_edits import with_stored_study, without_study

LID = Change(
    "First",
    "lid",
    ChangeKind.SUBSTITUTE,
    parts=("lid", "rib"),
    material="SMC",
    excludes=("no rib",),
)
NO_RIB = Change(
    "First", "no rib", ChangeKind.REMOVE, parts=("rib",), joints=("rib spots",)
)
BEAD = Change(
    "First",
    "bead",
    ChangeKind.SWAP_JOINTS,
    joints=("lid screws",),
    into="lid bead",
    requires=("lid",),
)
MOULDED = Change("First", "moulded", ChangeKind.MOULD_IN, parts=("rib",), into="lid")
OTHER = Change("Second", "lid", ChangeKind.REMOVE, parts=("lid",))


def start() -> State:
    packs = [Pack("A", 80.0, 400.0), Pack("B", 60.0, 330.0)]
    parts = tuple(Part(p, name) for p in ("A", "B") for name in ("lid", "rib"))
    joints = tuple(Joint("A", name) for name in ("lid screws", "rib spots"))
    library = Library(
        packs=PackTable.from_packs(packs),
        parts={"A": parts[:2], "B": parts[2:]},
        joints={"A": joints},
        studies=(Study("First", "A", "B"), Study("Second", "B", "A")),
        changes=by_study((LID, NO_RIB, BEAD, OTHER)),
    )
    return State(library, "First")


def names(state: State, study: str = "First") -> list[str]:
    return [change.name for change in state.library.changes_of(study)]


def change_of(state: State, name: str, study: str = "First") -> Change:
    return next(c for c in state.library.changes_of(study) if c.name == name)


def test_a_new_change_comes_last_or_where_it_is_put() -> None:
    state = with_new_change(start(), MOULDED)
    assert names(state) == ["lid", "no rib", "bead", "moulded"]
    assert names(with_new_change(start(), MOULDED, at=0))[0] == "moulded"
    assert state.changes == state.library.changes_of("First")
    assert difference(start(), state) & Changed.CHANGES


def test_a_new_change_stores_the_study_on_screen() -> None:
    packs = PackTable.from_packs([Pack("A", 80.0, 400.0), Pack("B", 60.0, 330.0)])
    change = replace(NO_RIB, study="Study")
    state = with_new_change(State(Library(packs=packs)), change)
    assert [study.subject for study in state.library.studies] == ["A"]
    assert state.changes == (change,)


@pytest.mark.parametrize(
    ("edit", "said"),
    [
        (lambda s: with_new_change(s, LID), "already called 'lid'"),
        (
            lambda s: with_new_change(s, replace(LID, study="none")),
            "no study called 'none'",
        ),
        (lambda s: with_changes(s, "none", []), "no study called 'none'"),
        (lambda s: with_changes(s, "First", [OTHER]), "belongs to Second"),
        (lambda s: with_changes(s, "First", [LID, LID]), "already called 'lid'"),
        (
            lambda s: with_change_values(s, "First", "none", {}),
            "First has no change 'none'",
        ),
        (
            lambda s: with_change_values(s, "First", "lid", {"name": "bead"}),
            "already called 'bead'",
        ),
        (
            lambda s: with_change_values(s, "First", "lid", {"study": "Second"}),
            "belongs to First",
        ),
        (
            lambda s: with_change_values(s, "First", "lid", {"release_chance": 2.0}),
            "release chance",
        ),
        (
            lambda s: with_changes_ordered(s, "First", ["lid", "bead"]),
            "each change of First once",
        ),
        (lambda s: with_changes_chosen(s, "First", ["none"]), "no change 'none'"),
    ],
)
def test_what_cannot_be_leaves_the_state(
    edit: Callable[[State], State], said: str
) -> None:
    with pytest.raises(DataError, match=said):
        edit(start())


def test_a_new_name_reaches_the_changes_that_point_to_it() -> None:
    state = with_change_values(start(), "First", "lid", {"name": "lid in SMC"})
    assert names(state) == ["lid in SMC", "no rib", "bead"]
    assert change_of(state, "bead").requires == ("lid in SMC",)
    assert names(state, "Second") == ["lid"]
    state = with_change_values(state, "First", "no rib", {"name": "ribless"})
    assert change_of(state, "lid in SMC").excludes == ("ribless",)


def test_changes_that_are_not_touched_stay_the_same_objects() -> None:
    state = with_change_switched(start(), "First", "no rib", is_on=False)
    assert not change_of(state, "no rib").is_on
    assert change_of(state, "lid") is LID
    assert state.library.changes_of("Second")[0] is OTHER
    again = with_change_switched(state, "First", "no rib", is_on=False)
    assert again is state
    assert difference(start(), with_changes(start(), "First", start().changes)) == (
        difference(start(), start())
    )


def test_a_removed_change_excludes_nothing_and_is_still_required() -> None:
    state = without_changes(start(), "First", ["no rib"])
    assert names(state) == ["lid", "bead"]
    assert change_of(state, "lid").excludes == ()
    state = without_changes(state, "First", ["lid"])
    assert change_of(state, "bead").requires == ("lid",)
    state = without_changes(state, "First", ["bead"])
    assert "First" not in state.library.changes


def test_order_and_choice() -> None:
    state = with_changes_ordered(start(), "First", ["bead", "lid", "no rib"])
    assert names(state) == ["bead", "lid", "no rib"]
    state = with_changes_chosen(state, "First", ["lid"])
    assert [c.is_on for c in state.changes] == [False, True, False]
    assert change_of(state, "lid") is LID
    assert free_change_name(state.changes, "lid") == "lid 2"
    assert free_change_name(state.changes, "floor") == "floor"


def test_renamed_parts_and_joints_are_carried_through_for_their_subject() -> None:
    state = with_new_change(start(), MOULDED)
    state = with_part_values(state, "A", "lid", {"name": "cover"})
    assert change_of(state, "lid").parts == ("cover", "rib")
    assert change_of(state, "moulded").into == "cover"
    assert change_of(state, "lid", "Second").parts == ("lid",)
    state = with_joint_values(state, "A", "lid screws", {"name": "rim screws"})
    assert change_of(state, "bead").joints == ("rim screws",)
    assert change_of(state, "bead").into == "lid bead"
    swapped = [(0, {"name": "rib spots"}), (1, {"name": "rim screws"})]
    state = with_joint_rows(state, "A", swapped, ())
    assert change_of(state, "bead").joints == ("rib spots",)
    assert change_of(state, "no rib").joints == ("rim screws",)


def test_renamed_packs_studies_and_materials_are_carried_through() -> None:
    state = with_pack_values(start(), 0, {"name": "Avocet"})
    assert state.library.changes == start().library.changes
    state = with_part_values(state, "Avocet", "rib", {"name": "bar"})
    assert change_of(state, "no rib").parts == ("bar",)
    study = replace(state.study, name="Renamed")
    state = with_stored_study(state, study, instead_of="First")
    assert names(state, "Renamed") == ["lid", "no rib", "bead"]
    assert {change.study for change in state.changes} == {"Renamed"}
    assert "First" not in state.library.changes
    library = with_renamed_materials(state.library, {"SMC": "SMC GF50"})
    assert library.changes_of("Renamed")[0].material == "SMC GF50"
    assert with_renamed_materials(library, {"none": "x"}) is library


def test_a_study_goes_with_its_changes_and_a_taken_in_one_brings_them() -> None:
    state = without_study(start(), "First")
    assert state.study.name == "Second"
    assert "First" not in state.library.changes
    with pytest.raises(DataError, match="only study"):
        without_study(state, "Second")
    brought = Library(studies=(Study("First", "B", "A"),), changes=by_study([LID]))
    state = with_taken_in(start(), brought)
    assert state.library.changes_of("First") == (LID,)
    assert state.library.changes_of("Second") == (OTHER,)


def subject(state: State) -> str:
    return str(state.library.packs.names[0])


Edit = Callable[[State, int], State]
EDITS: dict[str, Edit] = {
    "new": lambda s, n: with_new_change(s, replace(MOULDED, name=f"new {n}"), at=n % 2),
    "range": lambda s, n: with_change_values(
        s, "First", "lid", {"mass_kg": Range(1.0, 2.0, 3.0 + n), "name": f"lid {n}"}
    ),
    "switch": lambda s, n: with_change_switched(s, "First", "bead", is_on=n % 2 == 0),
    "remove": lambda s, n: without_changes(s, "First", names(s)[n % 3 : n % 3 + 1]),
    "order": lambda s, n: with_changes_ordered(
        s, "First", sorted(names(s), reverse=n % 2 == 0)
    ),
    "choose": lambda s, n: with_changes_chosen(s, "First", names(s)[: n % 3]),
    "part": lambda s, n: with_part_values(s, subject(s), "rib", {"name": f"rib {n}"}),
    "joint": lambda s, n: with_joint_values(
        s, subject(s), "lid screws", {"name": f"screws {n}"}
    ),
    "no part": lambda s, _: without_parts(s, subject(s), ["lid"]),
    "pack": lambda s, n: with_pack_values(s, 0, {"name": f"pack {n}"}),
    "no pack": lambda s, _: without_packs(s, range(1, len(s.library.packs))),
    "study": lambda s, n: with_stored_study(
        s, replace(s.study, name=f"study {n}"), instead_of=s.study.name
    ),
    "no study": lambda s, n: without_study(s, "Second" if n % 2 else "First"),
    "volume": lambda s, n: s.with_study(yearly_volume=n + 1, tooling_budget=1e5 * n),
    "take in": lambda s, n: with_taken_in(
        s,
        Library(
            studies=(Study("Second"),),
            changes=by_study([replace(OTHER, count=n + 1)]),
        ),
    ),
}


@contextmanager
def _stored(library: Library) -> Iterator[LibraryFile]:
    with (
        tempfile.TemporaryDirectory() as folder,
        LibraryFile.create(Path(folder) / "a.benchpack", library) as store,
    ):
        yield store


@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    st.lists(st.tuples(st.sampled_from(sorted(EDITS)), st.integers(0, 5)), max_size=8)
)
def test_any_edits_are_on_disk_and_undo_all_gives_the_start(
    edits: list[tuple[str, Any]],
) -> None:
    first = start()
    with _stored(first.library) as store:
        document = Document(first, store)
        for name, n in edits:
            try:
                document.apply(name, EDITS[name](document.state, n))
            except DataError:
                continue
            assert store.read() == document.state.library
        last = document.state
        while document.undo_label:
            document.undo()
        assert document.state == first
        assert store.read() == first.library
        while document.redo_label:
            document.redo()
        assert document.state == last
        assert store.read() == last.library
