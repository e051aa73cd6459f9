"""Packs, tables of packs, boundaries, studies: what stands and what is refused."""

from __future__ import annotations

import pickle

import numpy as np
import pytest
from hypothesis import given, settings

from benchpack.errors import DataError, Severity
from benchpack.model.boundary import Boundary, Weighed, parse_boundary
from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.pack import Pack, pack_problems
from benchpack.model.pack_table import PackTable
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.model.words import Basis
from tests.strategies.records import boundaries, pack_tables


def test_pack_with_two_faults_names_both() -> None:
    with pytest.raises(DataError) as caught:
        Pack("Avocet", -1.0, 0.0)
    assert [p.column for p in caught.value.problems] == ["energy [kWh]", "mass [kg]"]


def test_cells_heavier_than_the_pack_are_refused() -> None:
    with pytest.raises(DataError, match="more than the pack's mass"):
        Pack("Avocet", 80.0, 400.0, cells_mass_kg=401.0)


def test_unusual_density_is_a_warning_only() -> None:
    problems = pack_problems(Pack("Avocet", 80.0, 4000.0))
    assert [p.severity for p in problems] == [Severity.WARNING]
    assert "20 Wh/kg" in problems[0].what


def test_part_without_mass_has_no_sum() -> None:
    assert Part("Avocet", "lid").mass_kg is None
    assert Part("Avocet", "lid", count=3, mass_each_kg=0.5).mass_kg == 1.5


def test_more_than_can_be_meant_asks_for_the_unit_where_there_is_one() -> None:
    with pytest.raises(DataError) as caught:
        Joint("Heron 70", "screws", count=2_000_000, mass_each_g=2e6)
    assert {p.column: p.remedy for p in caught.value.problems} == {
        "count": "It has to be at most 1e+06.",
        "mass each [g]": "It has to be at most 100000 g: check the unit.",
    }


def test_part_names_a_subsystem_that_is_not_known() -> None:
    with pytest.raises(DataError, match="'wing' is not known"):
        Part("Avocet", "lid", subsystem="wing")  # type: ignore[arg-type]


@settings(max_examples=50, deadline=None)
@given(boundaries())
def test_boundary_survives_text_and_pickle(boundary: Boundary) -> None:
    kept = pickle.loads(pickle.dumps(boundary))
    assert kept == boundary
    again = parse_boundary(boundary.to_text())
    assert dict(again.states) == dict(boundary.states)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("wheels=in", "no boundary item"),
        ("lid=perhaps", "no state"),
        ("lid=in; lid=out", "named twice"),
        ("lid=in many", "no mass"),
        ("lid=in -2", "no mass"),
        ("lid=in nan", "no mass"),
    ],
)
def test_boundary_text_is_refused_with_the_word(text: str, said: str) -> None:
    with pytest.raises(DataError, match=said) as caught:
        parse_boundary(text)
    assert caught.value.problems[0].value == text.rsplit("; ", maxsplit=1)[-1]


def test_unnamed_items_of_a_boundary_are_unknown() -> None:
    assert parse_boundary("coolant=out").state("lid") is Weighed.UNKNOWN
    assert not parse_boundary("").is_known


@settings(max_examples=30, deadline=None)
@given(pack_tables())
def test_table_gives_back_the_packs_it_was_made_of(table: PackTable) -> None:
    assert PackTable.from_packs(list(table)) == table
    for row, pack in enumerate(table):
        assert table.position(pack.name) == row


def test_changed_cells_leave_the_old_table_alone() -> None:
    old = PackTable.from_packs([Pack("A", 80.0, 400.0), Pack("B", 60.0, 330.0)])
    new = old.with_cells("mass_kg", [1], [320.0])
    assert old[1].mass_kg == 330.0
    assert new[1].mass_kg == 320.0
    assert new.columns["name"] is old.columns["name"]


def test_columns_cannot_be_written_to() -> None:
    table = PackTable.from_packs([Pack("A", 80.0, 400.0)])
    with pytest.raises(ValueError, match="read-only"):
        table.columns["mass_kg"][0] = 1.0


def test_ids_stay_with_their_packs_and_are_not_used_twice() -> None:
    table = PackTable.from_packs([Pack("A", 80.0, 400.0), Pack("B", 60.0, 330.0)])
    rest = table.without([0])
    both = rest.joined(PackTable.from_packs([Pack("C", 50.0, 300.0)]))
    assert both.ids.tolist() == [2, 3]
    assert list(both.names) == ["B", "C"]


def test_empty_table_takes_packs() -> None:
    table = PackTable({}).joined(PackTable.from_packs([Pack("A", 80.0, 400.0)]))
    assert table[0] == Pack("A", 80.0, 400.0)


def test_unequal_columns_are_refused() -> None:
    with pytest.raises(ValueError, match="differ in length"):
        PackTable({"mass_kg": np.ones(2), "energy_kwh": np.ones(3)})


@pytest.mark.parametrize(
    ("changes", "column"),
    [
        ({"name": " "}, "name"),
        ({"worth_low_per_kg": 4.0}, "worth"),
        ({"worth_high_per_kg": float("nan")}, "worth"),
        ({"exponent": 1.5}, "exponent"),
        ({"share_captured": -0.1}, "share captured"),
        ({"target_kg": -1.0}, "target"),
        ({"currency": "euro"}, "currency"),
        ({"mass_unit": "st"}, "mass unit"),
        ({"decimal_mark": ";"}, "decimal mark"),
        ({"labour_rate_per_h": -1.0}, "labour rate"),
        ({"station_rate_per_h": float("inf")}, "station rate"),
        ({"takt_time_s": 0.0}, "takt time"),
        ({"takt_time_s": 1e6}, "takt time"),
        ({"thread_friction": 0.0}, "thread friction"),
        ({"head_friction": 1.01}, "head friction"),
        ({"head_friction": float("nan")}, "head friction"),
    ],
)
def test_study_refuses_what_cannot_be(changes: dict[str, object], column: str) -> None:
    with pytest.raises(DataError) as caught:
        Study(**changes)  # type: ignore[arg-type]
    assert column in {problem.column for problem in caught.value.problems}


def test_basis_is_known_by_its_word_on_the_command_line() -> None:
    assert all(Basis.from_option(basis.option) is basis for basis in Basis)
    with pytest.raises(KeyError):
        Basis.from_option("by guess")


def test_library_replaces_a_study_in_its_place() -> None:
    library = Library(studies=(Study("one"), Study("two")))
    changed = library.with_study(Study("one", target_kg=25.0))
    assert [study.target_kg for study in changed.studies] == [25.0, None]


def test_first_study_compares_the_first_two_packs() -> None:
    packs = PackTable.from_packs([Pack("A", 80.0, 400.0), Pack("B", 60.0, 330.0)])
    study = Library(packs=packs).first_study()
    assert (study.subject, study.reference) == ("A", "B")
    assert Library().first_study().subject == ""
