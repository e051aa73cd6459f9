"""Library files that another program wrote to, moved or took away."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest

from benchpack.errors import DataError
from benchpack.files.library_file import LibraryFile
from benchpack.model.change import Change, ChangeKind
from benchpack.model.library import by_study
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from tests.unit.files.libraries import small_library


@pytest.fixture
def path(tmp_path: Path) -> Path:
    path = tmp_path / "a.benchpack"
    lid = Change(
        "Study",
        "lid",
        ChangeKind.ADJUST,
        parts=("tray",),
        mass_kg=Range(1.0, 2.0, 3.0),
        tooling=Range.exactly(5e4),
    )
    studies = (*small_library().studies, Study("Second"))
    library = replace(small_library(), studies=studies, changes=by_study([lid]))
    LibraryFile.create(path, library).close()
    return path


def _sql(path: Path, *lines: str) -> None:
    with closing(sqlite3.connect(path)) as connection, connection:
        for line in lines:
            connection.execute(line)


@pytest.mark.parametrize(
    ("sql", "words"),
    [
        ("UPDATE packs SET energy_kwh = 'many'", "energy cannot be 'many'"),
        ("UPDATE packs SET energy_kwh = -5", "above zero"),
        ("UPDATE packs SET mass_kg = 9e999", "mass is not a number"),
        ("UPDATE packs SET voltage_v = 1e9", "more than can be meant"),
        ("UPDATE packs SET cells_mass_kg = 2 * mass_kg", "more than the pack"),
        ("UPDATE packs SET cell_count = 1.5", "whole number"),
        ("UPDATE packs SET energy_basis = 'net'", "energy basis cannot be 'net'"),
        ("UPDATE packs SET boundary = 'x=y'", "no boundary item"),
        ("UPDATE packs SET name = x'00ff'", "pack cannot be"),
        ("UPDATE packs SET name = 'a'", "Two packs are called 'a'"),
        ("ALTER TABLE packs DROP COLUMN chemistry", "no such column"),
        ("DROP TABLE joints", "no such table"),
        ("DELETE FROM packs", "a pack that is not there"),
        ("UPDATE parts SET material = x'00'", "material cannot be"),
        ("UPDATE parts SET known_by = 'heard'", "known by"),
        ("UPDATE studies SET peers = '{'", "no list of names"),
        ("UPDATE studies SET name = 'a'", "Two studies are called 'a'"),
        ("UPDATE studies SET programme = 'soon'", "programme"),
        ("UPDATE changes SET kind = 'melt'", "kind 'melt' is not known"),
        ("UPDATE changes SET parts = 'lid; rib'", "no list of names"),
        ("UPDATE changes SET waived = '[]'", "no names with reasons"),
        ("UPDATE changes SET mass_kg_low = 99", "runs 99"),
        ("UPDATE changes SET tooling_high = 'dear'", "cannot be"),
        ("UPDATE changes SET study_id = 99", "a study that is not there"),
        ("CREATE VIEW v AS SELECT 1", "would act on every edit"),
        (
            "CREATE TRIGGER t AFTER UPDATE ON packs BEGIN DELETE FROM parts; END",
            "would act on every edit",
        ),
    ],
)
def test_a_spoilt_library_says_what_is_wrong(path: Path, sql: str, words: str) -> None:
    _sql(path, "PRAGMA foreign_keys = OFF", sql)
    with pytest.raises(DataError, match=words) as caught, LibraryFile.open(path) as it:
        it.read()
    problem = caught.value.problems[0]
    assert problem.source == str(path)
    assert problem.remedy


def test_a_revision_that_is_no_number_does_no_harm(path: Path) -> None:
    _sql(path, "UPDATE about SET value = 'abc' WHERE key = 'revision'")
    with LibraryFile.open(path) as store:
        old = store.read()
        new = replace(old, title="new")
        store.write(old, new)
        store.write(new, replace(new, note="more"))
    with LibraryFile.open(path) as store:
        assert store.read().note == "more"


@pytest.mark.parametrize("fate", ["deleted", "moved", "replaced"])
def test_an_edit_is_not_written_into_a_file_that_is_gone(path: Path, fate: str) -> None:
    with LibraryFile.open(path) as store:
        old = store.read()
        moved = path.with_name("b.benchpack")
        if fate == "replaced":
            LibraryFile.create(path, replace(old, title="other"), replace=True).close()
        elif fate == "moved":
            path.rename(moved)
        else:
            path.unlink()
        with pytest.raises(DataError, match="moved, deleted or replaced"):
            store.write(old, replace(old, title="lost"))
        if fate == "moved":
            moved.rename(path)
            store.write(old, replace(old, title="found"))
    if fate == "moved":
        with LibraryFile.open(path) as store:
            assert store.read().title == "found"
