"""Own materials: added, changed, renamed with what they are used by, removed."""

from __future__ import annotations

import pytest

from benchpack.errors import DataError
from benchpack.model.change import Change, ChangeKind
from benchpack.model.library import Library, by_study
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.session.material_edits import (
    free_material_name,
    without_materials,
)
from benchpack.session.material_rows import with_material_rows
from benchpack.session.state import Changed, State, difference


def start() -> State:
    change = Change("S", "lid", ChangeKind.SUBSTITUTE, parts=("lid",), material="SMC")
    library = Library(
        parts={
            "A": (Part("A", "lid", material="steel"), Part("A", "rib")),
            "B": (Part("B", "lid", material="SMC"),),
        },
        materials=(Material("steel"), Material("SMC")),
        studies=(Study("S", "A", "B"),),
        changes=by_study([change]),
    )
    return State(library, "S")


def test_figures_are_changed_and_nothing_else() -> None:
    state = with_material_rows(start(), [(1, {"density_kg_m3": 1900.0})], [])
    assert [m.name for m in state.library.materials] == ["steel", "SMC"]
    assert state.library.materials[1].density_kg_m3 == 1900
    same = with_material_rows(state, [(1, {"density_kg_m3": None})], [])
    assert difference(state, same) is Changed.MATERIALS


def test_a_new_one_comes_last_with_a_name_of_its_own() -> None:
    name = free_material_name(start().library.materials, "SMC")
    state = with_material_rows(start(), [], [{"name": name}])
    assert [m.name for m in state.library.materials] == ["steel", "SMC", "SMC 2"]
    assert free_material_name(state.library.materials, "PP") == "PP"


def test_a_new_name_reaches_parts_and_changes() -> None:
    before = start()
    state = with_material_rows(before, [(1, {"name": "SMC GF50"})], [])
    assert state.library.parts_of("B")[0].material == "SMC GF50"
    assert state.library.parts["A"] is before.library.parts["A"]
    assert state.changes[0].material == "SMC GF50"


def test_a_name_in_use_is_refused() -> None:
    with pytest.raises(DataError, match="already called 'steel'"):
        with_material_rows(start(), [(1, {"name": "steel"})], [])
    with pytest.raises(DataError, match="already called 'steel'"):
        with_material_rows(start(), [], [{"name": "steel"}])


def test_what_is_removed_leaves_its_name_where_it_is_used() -> None:
    state = without_materials(start(), ["SMC"])
    assert [m.name for m in state.library.materials] == ["steel"]
    assert state.changes[0].material == "SMC"
