"""Edits of joints: pure, complete, refused with a reason and the row."""

from __future__ import annotations

from dataclasses import replace

import pytest

from benchpack.errors import DataError
from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.session.joint_edits import (
    free_joint_name,
    with_joint_rows,
    with_joint_values,
    with_new_joint,
    without_joints,
)
from benchpack.session.record_edits import ADDED
from benchpack.session.state import Changed, State, difference


@pytest.fixture
def state() -> State:
    joints = (Joint("A", "screws", count=8), Joint("A", "clips"), Joint("A", "gasket"))
    packs = [Pack("A", 80.0, 400.0), Pack("B", 60.0, 330.0)]
    return State(Library(PackTable.from_packs(packs), joints={"A": joints}), "Study")


def names(state: State, pack: str = "A") -> list[str]:
    return [joint.name for joint in state.library.joints_of(pack)]


def test_a_new_joint_stands_last(state: State) -> None:
    new = with_new_joint(state, Joint("A", "rivets"))
    assert names(new) == ["screws", "clips", "gasket", "rivets"]
    assert difference(state, new) is Changed.JOINTS
    assert names(with_new_joint(state, Joint("B", "screws")), "B") == ["screws"]


@pytest.mark.parametrize("joint", [Joint("A", "clips"), Joint("C", "rivets")])
def test_a_taken_name_and_a_missing_pack_are_refused(
    state: State, joint: Joint
) -> None:
    with pytest.raises(DataError, match=r"already called|no pack"):
        with_new_joint(state, joint)


def test_values_change_and_everything_else_is_the_same_object(state: State) -> None:
    new = with_joint_values(state, "A", "clips", {"count": 3, "role": "hold"})
    before, after = (s.library.joints_of("A") for s in (state, new))
    assert (after[1].count, after[1].role) == (3, "hold")
    assert [a is b for a, b in zip(before, after, strict=True)] == [True, False, True]


def test_a_joint_can_take_a_free_name_only(state: State) -> None:
    assert names(with_joint_values(state, "A", "clips", {"name": "pins"}))[1] == "pins"
    with pytest.raises(DataError) as caught:
        with_joint_values(state, "A", "clips", {"name": "gasket"})
    (problem,) = caught.value.problems
    assert (problem.record, problem.row) == ("clips", None)
    with pytest.raises(DataError, match="has no joint 'pins'"):
        with_joint_values(state, "A", "pins", {"count": 2})


def test_a_count_of_nothing_is_refused_with_its_column(state: State) -> None:
    with pytest.raises(DataError) as caught:
        with_joint_values(state, "A", "screws", {"count": 0})
    (problem,) = caught.value.problems
    assert (problem.record, problem.column) == ("screws", "count")
    assert "above zero" in problem.remedy


def test_joints_are_removed_by_name(state: State) -> None:
    assert names(without_joints(state, "A", ["clips", "nothing"])) == [
        "screws",
        "gasket",
    ]


def test_rows_are_changed_and_added_at_once(state: State) -> None:
    new = with_joint_rows(
        state,
        "A",
        [(0, {"count": 12}), (2, {"name": "seal"})],
        [
            {"name": "rivets", "count": 4, "mass_each_g": None},
            {"family": "clip", "designation": "edge clip"},
            {"family": "clip", "designation": "edge clip", "pack": "A"},
        ],
    )
    assert names(new) == [
        "screws",
        "clips",
        "seal",
        "rivets",
        "clip edge clip",
        "clip edge clip 2",
    ]
    assert new.library.joints_of("A")[0].count == 12


def test_names_may_change_places(state: State) -> None:
    changes = [(0, {"name": "clips"}), (1, {"name": "screws"})]
    assert names(with_joint_rows(state, "A", changes, ())) == [
        "clips",
        "screws",
        "gasket",
    ]


def test_all_rows_or_none_and_every_problem_with_its_row(state: State) -> None:
    with pytest.raises(DataError) as caught:
        with_joint_rows(
            state,
            "A",
            [(0, {"count": 0}), (1, {"name": "gasket"})],
            [
                {"name": "screws"},
                {"name": "rivets", "count": 0},
                {"count": 3},
                {"name": "other", "pack": "B"},
                {"name": "fine"},
            ],
        )
    found = [(p.source, p.row, p.column) for p in caught.value.problems]
    assert found == [
        ("", 1, "count"),
        ("", 2, "joint"),
        (ADDED, 0, "joint"),
        (ADDED, 1, "count"),
        (ADDED, 2, "joint"),
        (ADDED, 3, "pack"),
    ]
    assert names(state) == ["screws", "clips", "gasket"]


def test_a_free_name_has_the_next_number() -> None:
    joints = [Joint("A", "nut"), Joint("A", "nut 2")]
    assert free_joint_name(joints, "nut") == "nut 3"
    assert free_joint_name(joints, "stud") == "stud"
    assert free_joint_name([replace(joints[0], name="stud")], "nut") == "nut"
