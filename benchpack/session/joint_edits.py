"""Edits of joints as pure functions: single rows and pasted rows."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from typing import Any

from benchpack.errors import DataError, Problem
from benchpack.model.joint import JOINT_FIELDS, Joint
from benchpack.session.change_names import with_renamed_joints
from benchpack.session.edits import with_joints
from benchpack.session.record_edits import ADDED
from benchpack.session.state import State

_HEADS = {field.name: field.header() for field in JOINT_FIELDS}


def with_new_joint(state: State, joint: Joint) -> State:
    """Give the state with one more joint at the end of its pack's.

    Raises
    ------
    DataError
        When there is no such pack, or the pack has a joint of that name.
    """
    _require_pack(state, joint.pack)
    joints = state.library.joints_of(joint.pack)
    if any(old.name == joint.name for old in joints):
        raise DataError(_taken(joint.name))
    return with_joints(state, joint.pack, (*joints, joint))


def with_joint_values(
    state: State, pack: str, joint: str, values: Mapping[str, Any]
) -> State:
    """Give the state in which some attributes of one joint are changed.

    Parameters
    ----------
    state : State
        The state before.
    pack, joint : str
        Names of the pack and of the joint.
    values : mapping of str to object
        New attribute values. A new name is carried through to the changes that act
        on it.

    Raises
    ------
    DataError
        When the joint cannot be so, the name is taken, or there is no such joint.
    """
    names = [old.name for old in state.library.joints_of(pack)]
    if joint not in names:
        raise DataError(Problem(f"{pack} has no joint {joint!r}.", record=joint))
    try:
        return with_joint_rows(state, pack, [(names.index(joint), values)], ())
    except DataError as error:
        found = (replace(p, row=None, record=joint) for p in error.problems)
        raise DataError(*found) from error


def without_joints(state: State, pack: str, names: Collection[str]) -> State:
    """Give the state in which a pack lacks some joints, by name."""
    joints = state.library.joints_of(pack)
    kept = [joint for joint in joints if joint.name not in names]
    return with_joints(state, pack, kept)


def free_joint_name(joints: Collection[Joint], wanted: str) -> str:
    """Give a name that no joint has yet: the wanted one, or one with a number.

    Parameters
    ----------
    joints : collection of Joint
        The joints of the pack.
    wanted : str
        What it is, "socket screw M6x16" for instance.
    """
    return _free(_names(joints), wanted)


def with_joint_rows(
    state: State,
    pack: str,
    changes: Sequence[tuple[int, Mapping[str, Any]]],
    added: Sequence[Mapping[str, Any]],
) -> State:
    """Give the state in which joints are changed and new ones added, all or none.

    Parameters
    ----------
    state : State
        The state before.
    pack : str
        The pack they belong to.
    changes : sequence of (row, values)
        New attribute values by place among the joints of the pack, from 0.
    added : sequence of dict
        Attribute values of new joints, in order. One without a name is called by its
        family and designation.

    Raises
    ------
    DataError
        With every problem; a changed row is named by its place from 1, a new one has
        the source `ADDED` and its place from 0.
    """
    _require_pack(state, pack)
    before = state.library.joints_of(pack)
    joints = list(before)
    problems = _change(joints, pack, changes)
    taken = _names(joints)
    for place, values in enumerate(added):
        try:
            joint = _new(pack, values, taken)
        except DataError as error:
            problems += [p.at(source=ADDED, row=place) for p in error.problems]
            continue
        if joint.name in taken:
            problems.append(_taken(joint.name).at(source=ADDED, row=place))
        taken.add(joint.name)
        joints.append(joint)
    if problems:
        raise DataError(*problems)
    state = with_joints(state, pack, joints)
    renamed = {
        old.name: new.name
        for old, new in zip(before, joints, strict=False)
        if old.name != new.name
    }
    library = with_renamed_joints(state.library, pack, renamed)
    return replace(state, library=library)


def _change(
    joints: list[Joint], pack: str, changes: Sequence[tuple[int, Mapping[str, Any]]]
) -> list[Problem]:
    """Change joints in place and give what cannot be."""
    problems: list[Problem] = []
    renamed = False
    for row, values in changes:
        old = joints[row]
        try:
            joints[row] = replace(old, **_own(pack, values))
        except DataError as error:
            problems += [p.at(row=row + 1, record=old.name) for p in error.problems]
            continue
        renamed |= joints[row].name != old.name
    if not renamed:
        return problems
    seen: set[str] = set()
    rows = {row for row, _ in changes}
    # A row that was not touched keeps its name; the other one has to give way.
    for row in sorted(range(len(joints)), key=lambda row: (row in rows, row)):
        if joints[row].name in seen:
            problems.append(_taken(joints[row].name).at(row=row + 1))
        seen.add(joints[row].name)
    return problems


def _own(pack: str, values: Mapping[str, Any]) -> dict[str, Any]:
    """Give the values of a joint of this pack; a row of another is refused."""
    other = str(values.get("pack") or pack)
    if other != pack:
        what = f"The row belongs to {other}, not to {pack}."
        remedy = f"Choose {other} before it is entered."
        raise DataError(Problem(what, remedy, column="pack", value=other))
    return {**values, "pack": pack}


def _new(pack: str, values: Mapping[str, Any], taken: Collection[str]) -> Joint:
    own = _own(pack, {k: v for k, v in values.items() if v is not None})
    if not str(own.get("name") or "").strip():
        said = (own.get("family", ""), own.get("designation", ""))
        wanted = " ".join(str(text).strip() for text in said if str(text).strip())
        if not wanted:
            what = "The row has no joint, no family and no designation."
            raise DataError(Problem(what, "Fill in one of them.", column="joint"))
        own["name"] = _free(taken, wanted)
    return Joint(**own)


def _free(taken: Collection[str], wanted: str) -> str:
    name, number = wanted, 2
    while name in taken:
        name, number = f"{wanted} {number}", number + 1
    return name


def _names(joints: Collection[Joint]) -> set[str]:
    return {joint.name for joint in joints}


def _taken(name: str) -> Problem:
    what = f"A joint is already called {name!r}."
    remedy = "Give this one another name."
    return Problem(what, remedy, record=name, column="joint", value=name)


def _require_pack(state: State, pack: str) -> None:
    if not state.library.packs.has(pack):
        raise DataError(Problem(f"There is no pack {pack!r}.", record=pack))
