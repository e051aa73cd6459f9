"""The document: one way to change the state, undo and redo, previews, the store."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchpack.errors import DataError, Problem
from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.material import Source
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.session.document import UNDO_LIMIT, Change, Document
from benchpack.session.edits import (
    with_joints,
    with_pack_values,
    with_taken_in,
    without_packs,
)
from benchpack.session.record_edits import (
    with_new_part,
    with_pack_rows,
    with_part_values,
    with_source,
    without_parts,
)
from benchpack.session.state import Changed, State


def start() -> State:
    packs = [Pack("A", 80.0, 400.0), Pack("B", 60.0, 330.0), Pack("C", 50.0, 300.0)]
    parts = (Part("A", "tray"), Part("A", "rib", inside="tray", mass_each_kg=0.4))
    library = Library(
        packs=PackTable.from_packs(packs),
        parts={"A": parts},
        joints={"A": (Joint("A", "screws", count=80, joins="tray"),)},
        sources=(Source("sheet"),),
        studies=(Study(subject="A", reference="B"),),
    )
    return State(library, "Study")


class Store:
    """Keeps what was written; refuses while `is_full`."""

    def __init__(self, library: Library) -> None:
        self.library = library
        self.is_full = False
        self.closed = False

    def write(self, old: Library, new: Library) -> None:
        if self.is_full:
            raise DataError(Problem("The disk is full.", "Make room."))
        assert old is self.library
        self.library = new

    def close(self) -> None:
        self.closed = True


def with_mass(state: State, mass_kg: float) -> State:
    return with_pack_values(state, 0, {"mass_kg": mass_kg})


def without_some_pack(state: State, n: int) -> State:
    count = len(state.library.packs)
    return without_packs(state, [n % count]) if count > 1 else state


Edit = Callable[[State, int], State]
EDITS: dict[str, Edit] = {
    "mass": lambda state, n: with_pack_values(state, 0, {"mass_kg": 300.0 + n}),
    "name": lambda state, n: with_pack_values(state, 0, {"name": f"pack {n}"}),
    "add": lambda state, n: with_pack_rows(
        state,
        [],
        [{"name": f"new {n}", "energy_kwh": 10.0 + n, "mass_kg": 99.0}],
    ),
    "remove": without_some_pack,
    "part": lambda state, n: with_new_part(state, Part("A", f"part {n}")),
    "count": lambda state, n: with_part_values(state, "A", "rib", {"count": n + 1}),
    "no part": lambda state, _: without_parts(state, "A", ["tray"]),
    "joints": lambda state, n: with_joints(state, "A", [Joint("A", f"clip {n}")]),
    "source": lambda state, n: with_source(
        state, "sheet", Source("sheet", date=f"{n}")
    ),
    "study": lambda state, n: state.with_study(worth_likely_per_kg=1.0 + n / 10),
    "take in": lambda state, n: with_taken_in(
        state, Library(packs=PackTable.from_packs([Pack("B", 61.0, 320.0 + n)]))
    ),
}


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(st.sampled_from(sorted(EDITS)), st.integers(0, 9))))
def test_any_edits_then_undo_all_equal_the_start(edits: list[tuple[str, int]]) -> None:
    first = start()
    store = Store(first.library)
    document = Document(first, store)
    for name, n in edits:
        try:
            document.apply(name, EDITS[name](document.state, n))
        except DataError:
            continue
    last = document.state
    labels = []
    while document.undo_label:
        labels.append(document.undo())
    assert document.state == first
    assert store.library == first.library
    while document.redo_label:
        document.redo()
    assert document.state == last
    assert store.library == last.library
    assert len(labels) <= len(edits)


def test_undo_and_redo_name_the_edit() -> None:
    document = Document(start())
    document.apply("mass of A", with_mass(document.state, 410.0))
    assert (document.undo_label, document.redo_label) == ("mass of A", "")
    assert document.undo() == "mass of A"
    assert (document.undo_label, document.redo_label) == ("", "mass of A")
    assert document.redo() == "mass of A"
    assert document.state.library.packs[0].mass_kg == 410.0
    assert document.redo() == ""


def test_new_edit_drops_what_could_be_redone() -> None:
    document = Document(start())
    document.apply("one", with_mass(document.state, 410.0))
    document.undo()
    document.apply("two", with_mass(document.state, 420.0))
    assert document.redo_label == ""


def test_merged_edits_are_one_step() -> None:
    document = Document(start())
    for mass_kg in (401.0, 402.0, 403.0):
        document.apply("mass", with_mass(document.state, mass_kg), merge="mass 0")
    document.undo()
    assert document.state.library.packs[0].mass_kg == 400.0
    assert document.undo_label == ""


def test_edit_after_undo_does_not_join_the_step_before() -> None:
    document = Document(start())
    document.apply("one", with_mass(document.state, 401.0), merge="m")
    document.apply("two", with_mass(document.state, 402.0))
    document.undo()
    document.apply("three", with_mass(document.state, 403.0), merge="m")
    document.undo()
    assert document.state.library.packs[0].mass_kg == 401.0


def test_preview_is_shown_and_not_stored() -> None:
    first = start()
    store = Store(first.library)
    document = Document(first, store)
    told: list[Change] = []
    document.subscribe(told.append)
    for worth in (3.5, 4.0):
        document.preview("worth", document.state.with_study(worth_likely_per_kg=worth))
    assert document.state.study.worth_likely_per_kg == 4.0
    assert store.library is first.library
    assert document.undo_label == ""
    assert [(c.changed, c.passing) for c in told] == [(Changed.STUDY, True)] * 2


def test_settle_keeps_the_preview_as_one_step() -> None:
    first = start()
    store = Store(first.library)
    document = Document(first, store)
    document.preview("worth", document.state.with_study(worth_likely_per_kg=3.5))
    document.preview("worth", document.state.with_study(worth_likely_per_kg=4.0))
    document.settle("worth")
    assert store.library.studies[0].worth_likely_per_kg == 4.0
    document.undo()
    assert document.state == first


def test_full_store_leaves_the_state_and_the_history() -> None:
    first = start()
    store = Store(first.library)
    document = Document(first, store)
    document.apply("one", with_mass(first, 410.0))
    kept = document.state
    store.is_full = True
    with pytest.raises(DataError, match="disk is full"):
        document.apply("two", with_mass(kept, 420.0))
    assert document.state is kept
    with pytest.raises(DataError, match="disk is full"):
        document.undo()
    assert document.state is kept
    assert document.undo_label == "one"
    store.is_full = False
    document.undo()
    assert store.library == first.library


def test_edit_that_changes_nothing_is_no_step() -> None:
    document = Document(start())
    told: list[Change] = []
    document.subscribe(told.append)
    document.apply("nothing", document.state)
    assert document.undo_label == ""
    assert told == []


def test_history_is_bounded() -> None:
    document = Document(start())
    for step in range(UNDO_LIMIT + 5):
        document.apply("mass", with_mass(document.state, 400.0 + step + 1))
    steps = 0
    while document.undo_label:
        document.undo()
        steps += 1
    assert steps == UNDO_LIMIT


def test_listener_can_stop_listening() -> None:
    document = Document(start())
    told: list[Change] = []
    stop = document.subscribe(told.append)
    stop()
    stop()
    document.apply("mass", with_mass(document.state, 410.0))
    assert told == []


def test_close_lets_go_of_the_store() -> None:
    first = start()
    store = Store(first.library)
    document = Document(first, store)
    document.close()
    document.close()
    assert store.closed
