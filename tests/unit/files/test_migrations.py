"""Libraries of older versions open, keep everything, and get the starting figures."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from dataclasses import replace
from pathlib import Path

import pytest
from sqlalchemy import Connection, create_engine

from benchpack.errors import DataError
from benchpack.files import migrations, schema, stored_columns
from benchpack.files.library_file import LibraryFile
from benchpack.files.package import read_package, write_package
from benchpack.files.reading import read_any
from benchpack.model.assumptions import AssumptionSet
from benchpack.model.boundary import Weighed
from benchpack.model.change import Change, ChangeKind, ProgrammeKind
from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.part import Part
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.words import Basis, KnownBy, Subsystem, TrendKind
from tests.unit.files.libraries import small_library
from tests.unit.files.version_1 import write_version_1
from tests.unit.files.version_2 import write_version_2
from tests.unit.files.version_3 import write_version_3


@pytest.fixture
def old(tmp_path: Path) -> Path:
    """A library file of version 1."""
    path = tmp_path / "old.benchpack"
    write_version_1(path)
    return path


@pytest.fixture
def newer(tmp_path: Path) -> Path:
    """A library file of version 2."""
    path = tmp_path / "newer.benchpack"
    write_version_2(path)
    return path


@pytest.fixture
def latest(tmp_path: Path) -> Path:
    """A library file of version 3."""
    path = tmp_path / "latest.benchpack"
    write_version_3(path)
    return path


def _columns(path: Path, table: str) -> list[tuple[object, ...]]:
    with closing(sqlite3.connect(path)) as connection:
        found = connection.execute(f"PRAGMA table_info({table})").fetchall()
    # The number of a column says where it stands, which no reader asks.
    return sorted(row[1:] for row in found)


def test_version_1_keeps_everything_and_gets_the_starting_figures(old: Path) -> None:
    before = old.read_bytes()
    with LibraryFile.open(old) as store:
        library = store.read()
    assert library.packs.names.tolist() == ["Avocet 81", "Dunlin 74"]
    assert library.packs[0].boundary.state("coolant") is Weighed.OUT
    assert library.packs[0].cell_count == 186
    assert library.parts_of("Avocet 81") == (
        Part(
            "Avocet 81",
            "tray",
            subsystem=Subsystem.TRAY,
            material="steel",
            mass_each_kg=40.0,
            known_by=KnownBy.WEIGHED,
        ),
    )
    assert library.joints_of("Dunlin 74") == (
        Joint(
            "Dunlin 74",
            "lid screws",
            "flange screw",
            "EN 1665 M6x20",
            "8.8",
            84,
            mass_each_g=8.7,
            known_by=KnownBy.WEIGHED_BATCH,
            role="clamp",
            tightening="torque",
            time_each_s=6.0,
            cost_each=0.07,
            carry_over=True,
            reason="pattern",
        ),
    )
    assert library.title == "Small"
    first, second = library.studies
    assert second == Study(name="Second")
    assert first == Study(
        name="First",
        subject="Avocet 81",
        reference="Dunlin 74",
        peers=("Dunlin 74",),
        basis=Basis.SCALED,
        exponent=0.7,
        trend=TrendKind.THEIL_SEN,
        worth_low_per_kg=2,
        worth_likely_per_kg=3,
        worth_high_per_kg=9,
        worth_reason="agreed",
        currency="USD",
        share_captured=0.8,
        target_kg=12,
        mass_unit="lb",
        decimal_mark=",",
    )
    assert old.with_name("old.version-1.benchpack").read_bytes() == before


@pytest.mark.parametrize("version", ["old", "newer", "latest"])
def test_an_older_file_is_brought_to_the_tables_of_a_new_one(
    version: str, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    path: Path = request.getfixturevalue(version)
    LibraryFile.open(path).close()
    new = tmp_path / "new.benchpack"
    LibraryFile.create(new, Library()).close()
    for table in schema.METADATA.tables:
        assert _columns(path, table) == _columns(new, table), table
        for said in ("foreign_key_list", "index_list"):
            assert _said(path, said, table) == _said(new, said, table), table
    assert _said(path, "foreign_key_check", "changes") == []
    with closing(sqlite3.connect(path)) as connection:
        names = {row[0] for row in connection.execute("SELECT name FROM sqlite_master")}
    assert not {"studies_before", "changes_before"} & names


def test_version_2_keeps_its_studies_and_gets_an_empty_proposal(newer: Path) -> None:
    before = newer.read_bytes()
    with LibraryFile.open(newer) as store:
        library = store.read()
    first, second = library.studies
    assert (first.name, second.name) == ("First", "Second")
    assert (first.labour_rate_per_h, first.takt_time_s) == (51.5, 95.0)
    assert (first.thread_friction, first.head_friction) == (0.1, 0.14)
    assert second == Study(name="Second")
    for study in library.studies:
        assert study.programme is ProgrammeKind.UNSTATED
        assert study.yearly_volume is None
        assert (study.programme_years, study.discount_rate) == (7.0, 0.08)
        assert study.tooling_budget is None
        assert library.changes_of(study.name) == ()
    assert newer.with_name("newer.version-2.benchpack").read_bytes() == before


def test_version_2_takes_changes_afterwards(newer: Path) -> None:
    with LibraryFile.open(newer) as store:
        library = store.read()
        change = Change("Second", "no service cover", ChangeKind.REMOVE, parts=("a",))
        changed = replace(library, changes={"Second": (change,)})
        store.write(library, changed)
    with LibraryFile.open(newer) as store:
        assert store.read() == changed
        store.write(changed, replace(changed, studies=changed.studies[:1], changes={}))
    with LibraryFile.open(newer) as store:
        assert store.read().changes == {}


def test_version_3_keeps_its_proposal_and_gets_usual_assumptions(latest: Path) -> None:
    before = latest.read_bytes()
    with LibraryFile.open(latest) as store:
        library = store.read()
    first, second = library.studies
    assert first == Study(
        name="First",
        subject="Avocet 81",
        reference="Dunlin 74",
        worth_low_per_kg=2,
        worth_likely_per_kg=3,
        worth_high_per_kg=9,
        worth_reason="agreed",
        currency="USD",
        share_captured=0.8,
        target_kg=12,
        programme=ProgrammeKind.NEW,
        yearly_volume=20_000,
        programme_years=5.0,
        discount_rate=0.06,
        tooling_budget=1e6,
    )
    assert second == Study(name="Second")
    assert library.changes == {
        "First": (
            Change(
                "First",
                "no tray",
                ChangeKind.REMOVE,
                parts=("tray",),
                mass_kg=Range(1.0, 2.0, 3.0),
                rationale="why",
            ),
        )
    }
    assert library.assumption_sets == {}
    assert latest.with_name("latest.version-3.benchpack").read_bytes() == before


def test_version_3_takes_sets_of_assumptions_afterwards(latest: Path) -> None:
    with LibraryFile.open(latest) as store:
        library = store.read()
        kept = AssumptionSet("First", "their view", worth_likely_per_kg=4.5)
        changed = replace(library, assumption_sets={"First": (kept,)})
        store.write(library, changed)
    with LibraryFile.open(latest) as store:
        assert store.read() == changed
        last = replace(
            changed, studies=changed.studies[1:], changes={}, assumption_sets={}
        )
        store.write(changed, last)
    with LibraryFile.open(latest) as store:
        assert store.read() == last


def _said(path: Path, what: str, table: str) -> list[tuple[object, ...]]:
    with closing(sqlite3.connect(path)) as connection:
        return sorted(connection.execute(f"PRAGMA {what}({table})").fetchall())


def test_version_1_is_written_to_afterwards(old: Path) -> None:
    with LibraryFile.open(old) as store:
        library = store.read()
        changed = library.with_study(Study(name="Second", takt_time_s=90.0))
        store.write(library, changed)
    with LibraryFile.open(old) as store:
        assert store.read() == changed


def test_version_1_read_only_is_left_alone(old: Path) -> None:
    before = old.read_bytes()
    with LibraryFile.open(old, read_only=True) as store:
        assert store.read().studies[1] == Study(name="Second")
    assert old.read_bytes() == before
    assert read_any(old).library.studies[1] == Study(name="Second")
    assert old.read_bytes() == before


def test_a_step_that_fails_leaves_version_1(
    old: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(connection: Connection) -> None:
        step(connection)
        connection.exec_driver_sql("UPDATE nothing SET value = 1")

    before = old.read_bytes()
    step = migrations.MIGRATIONS[1]
    monkeypatch.setitem(migrations.MIGRATIONS, 1, fail)
    with pytest.raises(DataError):
        LibraryFile.open(old)
    assert old.read_bytes() == before


def test_every_older_version_has_its_step() -> None:
    assert sorted(migrations.MIGRATIONS) == list(
        range(1, stored_columns.SCHEMA_VERSION)
    )
    engine = create_engine("sqlite://")
    with engine.begin() as connection, pytest.raises(LookupError):
        migrations.migrate(connection, found=0, wanted=1)
    engine.dispose()


def test_a_package_without_the_columns_gets_the_starting_figures(
    tmp_path: Path,
) -> None:
    write_package(small_library(), tmp_path, currency="EUR")
    table = tmp_path / "studies.csv"
    rows = [line.split(",")[:6] for line in table.read_text("utf-8").splitlines()]
    table.write_text("\n".join(",".join(row) for row in rows) + "\n", "utf-8")
    assert "takt" not in table.read_text("utf-8")
    (tmp_path / "datapackage.json").unlink()
    assert read_package(tmp_path).library.studies == small_library().studies
