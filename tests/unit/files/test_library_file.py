"""The library file: what is written, how much of it, and what is refused."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from sqlalchemy import Connection, event
from sqlalchemy.dialects import postgresql
from sqlalchemy.schema import CreateTable

from benchpack.errors import DataError
from benchpack.files import library_file, migrations, schema, stored_columns
from benchpack.files.library_file import LibraryFile
from benchpack.model.library import Library
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.part import Part
from tests.unit.files.libraries import small_library


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A library file with the small library."""
    path = tmp_path / "small.benchpack"
    LibraryFile.create(path, small_library()).close()
    return path


@pytest.fixture
def store(path: Path) -> Iterator[LibraryFile]:
    """That library file, open."""
    with LibraryFile.open(path) as store:
        yield store


def _said(store: LibraryFile, old: Library, new: Library) -> list[str]:
    """Write a difference and give the statements that change records."""
    heard: list[str] = []

    def listen(_1: object, _2: object, sql: str, *_: object) -> None:
        if not sql.startswith(("SELECT", "BEGIN", "PRAGMA", "UPDATE about")):
            heard.append(sql)

    event.listen(store._engine, "before_cursor_execute", listen)
    store.write(old, new)
    event.remove(store._engine, "before_cursor_execute", listen)
    assert store.read() == new
    return heard


def _sql(path: Path, statement: str) -> list[tuple[object, ...]]:
    connection = sqlite3.connect(path)
    with connection:
        found = connection.execute(statement).fetchall()
    connection.close()
    return found


def test_the_file_says_what_it_is(path: Path) -> None:
    assert _sql(path, "PRAGMA application_id") == [(stored_columns.APPLICATION_ID,)]
    assert _sql(path, "PRAGMA user_version") == [(stored_columns.SCHEMA_VERSION,)]
    assert _sql(path, "PRAGMA journal_mode") == [("delete",)]
    assert _sql(path, "PRAGMA integrity_check") == [("ok",)]
    assert _sql(path, "PRAGMA foreign_key_check") == []
    assert [found.name for found in path.parent.iterdir()] == [path.name]


def test_connections_keep_every_promise(store: LibraryFile) -> None:
    with store._engine.connect() as connection:
        found = {
            name: connection.exec_driver_sql(f"PRAGMA {name}").scalar_one()
            for name in ("foreign_keys", "synchronous", "journal_mode")
        }
    assert found == {"foreign_keys": 1, "synchronous": 2, "journal_mode": "delete"}


def test_one_changed_cell_is_one_update(store: LibraryFile) -> None:
    old = store.read()
    packs = old.packs.with_cells("mass_kg", [1], [450.0])
    heard = _said(store, old, replace(old, packs=packs))
    assert heard == ['UPDATE "packs" SET "mass_kg" = ? WHERE "id" = ?']


def test_nothing_changed_is_nothing_written(store: LibraryFile) -> None:
    old = store.read()
    assert _said(store, old, old) == []
    assert _said(store, old, store.read()) == []


def test_parts_of_one_pack_leave_the_others_alone(store: LibraryFile) -> None:
    old = store.read()
    parts = {**old.parts, "Dunlin 74": (Part("Dunlin 74", "lid"),)}
    new = replace(old, parts=parts)
    assert len(_said(store, old, new)) == 1
    assert len(_said(store, new, old)) == 1


def test_a_pack_and_what_belongs_to_it_go_and_come_back(store: LibraryFile) -> None:
    old = store.read()
    gone = replace(old, packs=old.packs.without([0]), parts={})
    _said(store, old, gone)
    assert _sql(store.path, "SELECT count(*) FROM parts") == [(0,)]
    _said(store, gone, old)
    assert store.read().packs.ids.tolist() == [1, 2]


def test_packs_keep_their_order_through_adding_and_sorting(store: LibraryFile) -> None:
    old = store.read()
    more = PackTable.from_packs([Pack("Curlew", 60, 390), Pack("Knot", 50, 330)])
    new = replace(old, packs=old.packs.joined(more))
    assert len(_said(store, old, new)) == 1
    turned = replace(new, packs=new.packs.selected(np.array([3, 0, 2, 1])))
    _said(store, new, turned)
    names = ["Knot", "Avocet 81", "Curlew", "Dunlin 74"]
    assert store.read().packs.names.tolist() == names


def test_names_can_be_exchanged(store: LibraryFile) -> None:
    old = store.read()
    packs = old.packs.with_cells("name", [0, 1], ["Dunlin 74", "Avocet 81"])
    _said(store, old, replace(old, packs=packs))


def test_parts_of_a_missing_pack_are_refused_and_nothing_is_written(
    store: LibraryFile,
) -> None:
    old = store.read()
    new = replace(old, title="other", parts={"Ghost": (Part("Ghost", "lid"),)})
    with pytest.raises(DataError, match="Ghost"):
        store.write(old, new)
    assert store.read() == old


def test_a_text_that_no_file_holds_is_refused(store: LibraryFile) -> None:
    old = store.read()
    with pytest.raises(DataError, match="no character"):
        store.write(old, replace(old, title="\ud800"))
    assert store.read() == old


def test_create_takes_no_place_unasked(path: Path) -> None:
    with pytest.raises(DataError, match="there already"):
        LibraryFile.create(path, Library())
    path.with_name(path.name + "-journal").write_bytes(b"left behind")
    with LibraryFile.create(path, Library(title="new"), replace=True) as store:
        assert store.read() == Library(title="new")
    assert [found.name for found in path.parent.iterdir()] == [path.name]


def test_read_only_leaves_the_file_alone(path: Path) -> None:
    before = path.read_bytes()
    with LibraryFile.open(path, read_only=True) as store:
        old = store.read()
        with pytest.raises(DataError, match="read-only"):
            store.write(old, replace(old, title="other"))
    assert path.read_bytes() == before


def test_two_programs_do_not_overwrite_each_other(path: Path) -> None:
    with LibraryFile.open(path) as one, LibraryFile.open(path) as two:
        old = one.read()
        assert two.read() == old
        one.write(old, replace(old, title="mine"))
        with pytest.raises(DataError, match="changed elsewhere"):
            two.write(old, replace(old, title="theirs"))
        seen = two.read()
        assert seen.title == "mine"
        two.write(seen, replace(seen, title="theirs"))


def test_a_library_held_by_another_program_says_so(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(library_file, "BUSY_SECONDS", 0.05)
    other = sqlite3.connect(path, isolation_level=None)
    other.execute("BEGIN EXCLUSIVE")
    with pytest.raises(DataError, match="open elsewhere"):
        LibraryFile.open(path)
    other.execute("COMMIT")
    with LibraryFile.open(path) as store:
        old = store.read()
        other.execute("BEGIN IMMEDIATE")
        with pytest.raises(DataError, match="open elsewhere"):
            store.write(old, replace(old, title="x"))
        other.execute("COMMIT")
        store.write(old, replace(old, title="x"))
    other.close()


def test_a_full_disk_says_so_and_keeps_the_old_state(store: LibraryFile) -> None:
    old = store.read()
    with store._engine.connect() as connection:
        pages = connection.exec_driver_sql("PRAGMA page_count").scalar_one()
        connection.exec_driver_sql(f"PRAGMA max_page_count = {pages}")
    with pytest.raises(DataError, match="disk is full"):
        store.write(old, replace(old, note="x" * 100_000))
    assert store.read() == old


@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        (lambda _: b"", "empty"),
        (lambda _: b"pack,energy,mass\n", "no library"),
        (lambda data: data[: len(data) // 2], "cut short"),
        (lambda data: data[:100] + bytes(4096) + data[4196:], "damaged"),
        (lambda data: data[:68] + b"none" + data[72:], "no library"),
        (lambda data: data[:60] + b"\0\0\0\x63" + data[64:], "newer version"),
    ],
)
def test_what_is_no_library_is_refused(path: Path, spoil: object, words: str) -> None:
    assert callable(spoil)
    path.write_bytes(spoil(path.read_bytes()))
    with pytest.raises(DataError, match=words) as caught, LibraryFile.open(path) as it:
        it.read()
    problem = caught.value.problems[0]
    assert problem.source == str(path)
    assert problem.remedy


def test_places_that_are_not_there_are_refused(tmp_path: Path) -> None:
    with pytest.raises(DataError, match="no such file"):
        LibraryFile.open(tmp_path / "none.benchpack")
    with pytest.raises(DataError, match="no such file"):
        LibraryFile.create(tmp_path / "none" / "a.benchpack", Library())
    with pytest.raises(DataError, match="folder"):
        LibraryFile.open(tmp_path)


def test_a_row_that_the_model_refuses_says_which(path: Path) -> None:
    _sql(path, "UPDATE parts SET mass_each_kg = -1")
    with LibraryFile.open(path) as store, pytest.raises(DataError, match="mass each"):
        store.read()


def test_an_older_library_is_brought_up_to_date_beside_a_copy(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def to_next(connection: Connection) -> None:
        connection.exec_driver_sql("UPDATE about SET value = 'new' WHERE key = 'title'")

    def fail(connection: Connection) -> None:
        to_next(connection)
        connection.exec_driver_sql("UPDATE nothing SET value = 1")

    before = path.read_bytes()
    version = stored_columns.SCHEMA_VERSION
    monkeypatch.setattr(library_file, "SCHEMA_VERSION", version + 1)
    monkeypatch.setitem(migrations.MIGRATIONS, version, fail)
    with pytest.raises(DataError):
        LibraryFile.open(path)
    assert path.read_bytes() == before
    monkeypatch.setitem(migrations.MIGRATIONS, version, to_next)
    with LibraryFile.open(path, read_only=True) as store:
        assert store.read().title == "new"
    assert path.read_bytes() == before
    with LibraryFile.open(path) as store:
        assert store.read().title == "new"
    assert _sql(path, "PRAGMA user_version") == [(version + 1,)]
    assert path.with_name(f"small.version-{version}.benchpack").read_bytes() == before
    assert schema.PACKS.name == "packs"


def test_the_tables_compile_for_postgresql() -> None:
    dialect = postgresql.dialect()  # type: ignore[no-untyped-call]
    said = [
        str(CreateTable(table).compile(dialect=dialect))
        for table in schema.METADATA.sorted_tables
    ]
    assert len(said) == 9
    assert "id BIGSERIAL NOT NULL" in said[1] + said[2] + said[3]
    assert any("mass_kg DOUBLE PRECISION NOT NULL" in text for text in said)
