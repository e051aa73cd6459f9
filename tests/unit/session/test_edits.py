"""Edits: pure, complete, refused with a reason."""

from __future__ import annotations

import pytest

from benchpack.errors import DataError
from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.material import Material, Source
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.session.edits import (
    with_pack_blocks,
    with_pack_values,
    with_records_joined,
    with_taken_in,
    without_packs,
)
from benchpack.session.record_edits import (
    ADDED,
    with_new_part,
    with_pack_rows,
    with_part_values,
    with_source,
    without_parts,
)
from benchpack.session.state import Changed, State, difference


@pytest.fixture
def state() -> State:
    packs = [
        Pack("A", 80.0, 400.0, source="sheet"),
        Pack("B", 60.0, 330.0, cells_mass_kg=200.0, source="sheet"),
    ]
    parts = (
        Part("A", "tray"),
        Part("A", "floor", inside="tray"),
        Part("A", "rib", inside="floor"),
    )
    library = Library(
        packs=PackTable.from_packs(packs),
        parts={"A": parts},
        joints={"A": (Joint("A", "screws", joins="tray", to="lid"),)},
        sources=(Source("sheet"), Source("log")),
        studies=(Study(subject="A", reference="B", peers=("A", "B")),),
    )
    return State(library, "Study")


def test_new_name_is_carried_through(state: State) -> None:
    new = with_pack_values(state, 0, {"name": "Avocet"}).library
    assert new.packs[0].name == "Avocet"
    assert {part.pack for part in new.parts_of("Avocet")} == {"Avocet"}
    assert [joint.pack for joint in new.joints_of("Avocet")] == ["Avocet"]
    assert new.studies[0].subject == "Avocet"
    assert new.studies[0].peers == ("Avocet", "B")
    assert "A" not in new.parts


def test_two_packs_can_trade_names(state: State) -> None:
    new = with_pack_blocks(state, [(0, {"name": "B"}), (1, {"name": "A"})])
    assert list(new.library.packs.names) == ["B", "A"]
    assert len(new.library.parts_of("B")) == 3


def test_taken_name_is_refused(state: State) -> None:
    with pytest.raises(DataError, match="already called 'B'"):
        with_pack_values(state, 0, {"name": "B"})
    with pytest.raises(DataError, match="already called 'B'"):
        with_pack_rows(state, [], [{"name": "B", "energy_kwh": 1.0, "mass_kg": 10.0}])


def test_block_with_one_fault_changes_nothing(state: State) -> None:
    with pytest.raises(DataError) as caught:
        with_pack_blocks(state, [(0, {"mass_kg": 410.0}), (1, {"mass_kg": 150.0})])
    problem = caught.value.problems[0]
    assert (problem.row, problem.record) == (2, "B")


def test_removed_pack_takes_its_parts_and_joints_along(state: State) -> None:
    new = without_packs(state, [0]).library
    assert list(new.packs.names) == ["B"]
    assert new.part_count == new.joint_count == 0


def test_taken_in_pack_replaces_the_one_of_its_name(state: State) -> None:
    packs = [Pack("C", 50.0, 300.0), Pack("B", 61.0, 320.0)]
    other = Library(
        packs=PackTable.from_packs(packs),
        parts={"B": (Part("B", "lid"),)},
        materials=(Material("steel"),),
    )
    new = with_taken_in(state, other).library
    assert list(new.packs.names) == ["A", "B", "C"]
    assert new.packs[1].mass_kg == 320.0
    assert new.packs.ids[1] == state.library.packs.ids[1]
    assert [part.name for part in new.parts_of("B")] == ["lid"]
    assert new.material_names == {"steel"}
    assert new.sources == state.library.sources


def test_records_join_those_of_their_pack(state: State) -> None:
    other = Library(
        parts={"A": (Part("A", "lid"), Part("A", "floor", count=2))},
        joints={"B": (Joint("B", "screws", count=4),)},
    )
    new = with_records_joined(state, other).library
    assert [(p.name, p.count) for p in new.parts_of("A")] == [
        ("tray", 1),
        ("floor", 2),
        ("rib", 1),
        ("lid", 1),
    ]
    assert [(j.name, j.count) for j in new.joints_of("B")] == [("screws", 4)]
    assert new.joints_of("A") == state.library.joints_of("A")
    assert new.packs is state.library.packs


def test_records_of_a_pack_that_is_gone_join_nothing(state: State) -> None:
    other = Library(joints={"Z": (Joint("Z", "screws"),)})
    with pytest.raises(DataError, match="no pack called 'Z'"):
        with_records_joined(state, other)


def test_rows_are_changed_and_added_together(state: State) -> None:
    added = [{"name": "C", "energy_kwh": 50.0, "mass_kg": 300.0}]
    new = with_pack_rows(state, [(0, {"mass_kg": 410.0})], added)
    assert new.library.packs[0].mass_kg == 410.0
    assert new.library.packs[2] == Pack("C", 50.0, 300.0)


def test_all_problems_of_rows_are_told_at_once(state: State) -> None:
    added = [
        {"name": "C", "energy_kwh": 50.0},
        {"name": "B", "energy_kwh": 50.0, "mass_kg": 300.0},
        {"name": "D", "energy_kwh": 50.0, "mass_kg": 300.0},
        {"name": "D", "energy_kwh": 50.0, "mass_kg": 300.0},
    ]
    with pytest.raises(DataError) as caught:
        with_pack_rows(state, [(0, {"mass_kg": -1.0})], added)
    told = [(p.source, p.row) for p in caught.value.problems]
    assert told == [("", 1), (ADDED, 0), (ADDED, 1), (ADDED, 3)]


def test_new_name_of_a_part_is_carried_through(state: State) -> None:
    new = with_part_values(state, "A", "tray", {"name": "pan"}).library
    assert [part.inside for part in new.parts_of("A")] == ["", "pan", "floor"]
    assert new.joints_of("A")[0].joins == "pan"


def test_part_edits_are_refused_with_a_reason(state: State) -> None:
    with pytest.raises(DataError, match="already called 'rib'"):
        with_part_values(state, "A", "tray", {"name": "rib"})
    with pytest.raises(DataError, match="already called 'rib'"):
        with_new_part(state, Part("A", "rib"))
    with pytest.raises(DataError, match="no part 'wing'"):
        with_part_values(state, "A", "wing", {"count": 2})
    with pytest.raises(DataError, match="count is 0"):
        with_part_values(state, "A", "rib", {"count": 0})


def test_parts_inside_a_removed_one_move_up(state: State) -> None:
    new = without_parts(state, "A", ["floor"]).library
    assert [(p.name, p.inside) for p in new.parts_of("A")] == [
        ("tray", ""),
        ("rib", "tray"),
    ]
    alone = without_parts(state, "A", ["tray", "floor"]).library
    assert [(p.name, p.inside) for p in alone.parts_of("A")] == [("rib", "")]


def test_source_is_replaced_renamed_or_added(state: State) -> None:
    dated = with_source(state, "sheet", Source("sheet", date="2026-02-10"))
    assert [s.date for s in dated.library.sources] == ["2026-02-10", ""]
    assert dated.library.packs is state.library.packs
    renamed = with_source(state, "sheet", Source("sheet 2"))
    assert list(renamed.library.packs.columns["source"]) == ["sheet 2", "sheet 2"]
    added = with_source(state, "new", Source("new"))
    assert [s.name for s in added.library.sources] == ["sheet", "log", "new"]
    with pytest.raises(DataError, match="already called 'log'"):
        with_source(state, "sheet", Source("log"))


def test_difference_names_what_an_edit_touched(state: State) -> None:
    touched = {
        Changed.PACKS: with_pack_values(state, 0, {"mass_kg": 410.0}),
        Changed.PARTS: with_new_part(state, Part("A", "lid")),
        Changed.SOURCES: with_source(state, "sheet", Source("sheet", date="2026")),
        Changed.STUDY: state.with_study(target_kg=25.0),
        Changed.NOTHING: state,
    }
    for flag, new in touched.items():
        assert difference(state, new) is flag
