"""Rows of the table of materials: new ones, names carried through, refusals."""

from __future__ import annotations

from dataclasses import replace

import pytest

from benchpack.errors import DataError
from benchpack.model.change import Change, ChangeKind
from benchpack.model.library import Library
from benchpack.model.material import Material
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.session.material_edits import without_materials
from benchpack.session.material_rows import with_material_rows
from benchpack.session.record_edits import ADDED
from benchpack.session.state import State

PACK = "Avocet 81"


@pytest.fixture
def state() -> State:
    """Give a pack with a part and a change that name materials."""
    library = Library(
        packs=PackTable.from_packs([Pack(PACK, 81.0, 498.1)]),
        parts={PACK: (Part(PACK, "lid", material="steel"), Part(PACK, "tray"))},
        materials=(Material("steel", density_kg_m3=7850), Material("PP")),
        studies=(Study(subject=PACK),),
        changes={
            "Study": (
                Change(
                    "Study",
                    "lid in PP",
                    ChangeKind.SUBSTITUTE,
                    parts=("lid",),
                    material="PP",
                ),
            )
        },
    )
    return State(library, "Study")


def test_a_value_is_changed_and_the_others_stay(state: State) -> None:
    new = with_material_rows(state, [(0, {"density_kg_m3": 7800.0})], ())
    assert new.library.materials[0].density_kg_m3 == 7800
    assert new.library.materials[1] is state.library.materials[1]
    assert new.library.parts is state.library.parts


def test_a_new_name_is_carried_through(state: State) -> None:
    values = [(0, {"name": "mild steel"}), (1, {"name": "PP-GF30"})]
    new = with_material_rows(state, values, ())
    assert new.library.parts_of(PACK)[0].material == "mild steel"
    assert new.library.parts_of(PACK)[1] is state.library.parts_of(PACK)[1]
    assert new.changes[0].material == "PP-GF30"


def test_two_names_that_are_swapped_at_once_are_swapped_everywhere(
    state: State,
) -> None:
    lid = replace(state.changes[0], name="lid in steel", material="steel")
    state = state.with_library(changes={"Study": (*state.changes, lid)})
    values = [(0, {"name": "PP"}), (1, {"name": "steel"})]
    new = with_material_rows(state, values, ())
    assert [one.name for one in new.library.materials] == ["PP", "steel"]
    assert new.library.parts_of(PACK)[0].material == "PP"
    assert [one.material for one in new.changes] == ["steel", "PP"]


def test_a_material_is_added_and_taken_away(state: State) -> None:
    new = with_material_rows(state, (), [{"name": "SMC", "density_kg_m3": 1850.0}])
    assert [one.name for one in new.library.materials] == ["steel", "PP", "SMC"]
    assert without_materials(new, ("SMC",)).library == state.library


@pytest.mark.parametrize("name", ["PP", " pp "])
def test_a_name_that_is_taken_is_refused(state: State, name: str) -> None:
    with pytest.raises(DataError) as told:
        with_material_rows(state, [(0, {"name": name})], ())
    assert "already called" in told.value.problems[0].what


def test_all_or_none_and_each_problem_has_its_place(state: State) -> None:
    with pytest.raises(DataError) as told:
        with_material_rows(
            state,
            [(0, {"density_kg_m3": -1.0})],
            [{"name": ""}, {"name": "SMC"}, {"name": "steel"}],
        )
    problems = told.value.problems
    assert [(one.source, one.row) for one in problems[1:]] == [(ADDED, 0), (ADDED, 1)]
    assert problems[0].record == "steel"
    assert replace(state) == state
