"""Tables of changes: written and read in every form, and no row dropped."""

from __future__ import annotations

import csv
import json
from dataclasses import replace
from pathlib import Path

import pytest

from benchpack.errors import DataError, Severity
from benchpack.files.demo import demo_library
from benchpack.files.library_file import LibraryFile
from benchpack.files.package import read_package, write_package
from benchpack.files.reading import Reading, read_any, write_any
from benchpack.model.change import Change, ChangeKind, ProgrammeKind
from benchpack.model.library import Library, by_study
from benchpack.model.part import Part
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from tests.unit.files.libraries import small_library

CHANGES = (
    Change(
        "Study",
        "tray in SMC",
        ChangeKind.SUBSTITUTE,
        parts=("tray",),
        material="SMC GF50",
        governs=("panel bending stiffness", "panel buckling"),
        wall_mm=2.5,
        mass_kg=Range(30.0, 32.5, 36.0),
        part_cost=Range(-4.0, -2.0, 1.5),
        lead_weeks=Range(20.0, 25.0, 30.0),
        release_chance=0.6,
        programme=ProgrammeKind.FACELIFT,
        waived=(("bottom shield", "there already; see note"),),
        rationale="=1+1",
    ),
    Change(
        "Study",
        "no tray",
        ChangeKind.REMOVE,
        is_on=False,
        parts=("tray",),
        excludes=("tray in SMC",),
    ),
)


def library() -> Library:
    study = Study(
        subject="Avocet 81",
        reference="Dunlin 74",
        programme=ProgrammeKind.FACELIFT,
        yearly_volume=60_000,
        tooling_budget=2e6,
    )
    found = replace(small_library(), studies=(study, Study("Second")))
    return replace(found, changes=by_study(CHANGES))


@pytest.mark.parametrize("name", ["a.benchpack", "folder", "a.xlsx"])
def test_a_proposal_comes_back_from_every_form(name: str, tmp_path: Path) -> None:
    path = tmp_path / name
    write_any(library(), path, currency="EUR")
    reading = read_any(path)
    assert reading.problems == ()
    assert reading.library.changes == library().changes
    assert reading.library.studies == library().studies


def test_the_description_names_columns_kinds_and_the_study(tmp_path: Path) -> None:
    write_package(library(), tmp_path, currency="EUR")
    described = json.loads((tmp_path / "datapackage.json").read_text("utf-8"))
    schema = next(r for r in described["resources"] if r["name"] == "changes")["schema"]
    kinds = {field["name"]: field["type"] for field in schema["fields"]}
    assert kinds["parts"] == "array"
    assert kinds["waived"] == "object"
    assert kinds["on"] == "boolean"
    assert kinds["mass likely [kg]"] == kinds["lead time low [weeks]"] == "number"
    bounds = {f["name"]: f.get("constraints", {}) for f in schema["fields"]}
    assert bounds["part cost low"]["minimum"] == -1_000_000
    assert bounds["mass low [kg]"]["minimum"] == 0
    assert schema["primaryKey"] == ["study", "change"]
    assert schema["foreignKeys"] == [
        {"fields": ["study"], "reference": {"resource": "studies", "fields": ["study"]}}
    ]


@pytest.mark.filterwarnings("ignore::DeprecationWarning")
def test_the_description_catches_a_change_of_no_study(tmp_path: Path) -> None:
    from frictionless import validate

    write_package(library(), tmp_path, currency="EUR")
    assert validate(str(tmp_path / "datapackage.json")).valid
    table = tmp_path / "changes.csv"
    text = table.read_text("utf-8")
    table.write_text(text.replace("Study,no tray", "Nobody's,no tray"), "utf-8")
    report = validate(str(tmp_path / "datapackage.json"))
    assert [error[0] for error in report.flatten(["type"])] == ["foreign-key"]


def _loose(folder: Path, *rows: dict[str, str]) -> Reading:
    write_package(library(), folder, currency="EUR")
    (folder / "datapackage.json").unlink()
    heads = list(dict.fromkeys(head for row in rows for head in row))
    with (folder / "changes.csv").open("w", encoding="utf-8", newline="") as stream:
        writer = csv.DictWriter(stream, heads, restval="")
        writer.writeheader()
        writer.writerows(rows)
    return read_package(folder)


def test_a_loose_table_is_read_as_people_write_it(tmp_path: Path) -> None:
    reading = _loose(
        tmp_path,
        {
            "Study": "Study",
            "Change name": "lighter tray",
            "Kind": "Adjust",
            "parts": "tray",
            "mass low [lb]": "60",
            "mass likely [lb]": "66",
            "mass high [lb]": "72",
            "time likely (s)": "-2 min",
            "excludes": "no tray; lighter tray 2",
            "Owner": "Body shop",
        },
        {"Study": "Study", "Change name": "no tray", "Kind": "remove", "parts": "tray"},
        {
            "Study": "Study",
            "Change name": "lighter tray 2",
            "Kind": "remove",
            "parts": '["tray"]',
        },
    )
    assert reading.problems == ()
    first, *others = reading.library.changes_of("Study")
    assert first.kind is ChangeKind.ADJUST
    assert first.mass_kg is not None
    assert first.mass_kg.high == pytest.approx(72 * 0.45359237)
    assert first.seconds == Range.exactly(-120.0)
    assert first.excludes == ("no tray", "lighter tray 2")
    assert first.note == "Owner: Body shop"
    assert all(change.is_on and change.parts == ("tray",) for change in others)


_GOOD = {"study": "Study", "change": "good", "kind": "remove", "parts": "tray"}


@pytest.mark.parametrize(
    ("bad", "column", "value", "said"),
    [
        ({"study": "None"}, "study", "None", "no study called 'None'"),
        ({"change": ""}, "change", "", "change is empty"),
        ({"change": "good"}, "change", "good", "already in row 2"),
        ({"kind": "melt"}, "kind", "melt", "kind “melt” is not known"),
        ({"on": "perhaps"}, "on", "perhaps", "neither yes nor no"),
        ({"parts": '["tray"'}, "parts", '["tray"', "no list of names"),
        ({"parts": "tray; tray"}, "parts", "tray; tray", "names 'tray' twice"),
        ({"governs": "looks"}, "governs", "looks", "'looks' is not known"),
        ({"waived": "all"}, "waived", "all", "no names with reasons"),
        ({"waived": '{"a": ""}'}, "waived", '{"a": ""}', "without a reason"),
        ({"mass likely [kg]": "many"}, "mass likely [kg]", "many", "many"),
        ({"mass low [kg]": "3"}, "mass likely [kg]", "", "no likely and high"),
        ({"mass likely [kg]": "-3"}, "mass likely [kg]", "-3", "-3 kg"),
        ({"release chance": "1.5"}, "release chance", "1.5", "more than can be meant"),
        ({"programme": "soon"}, "programme", "soon", "not known"),
        ({"requires": "bad"}, "requires", "bad", "requires itself"),
        ({"count": "1.5"}, "count", "1.5", "count is 1.5"),
    ],
)
def test_a_bad_row_is_reported_with_its_place(
    bad: dict[str, str], column: str, value: str, said: str, tmp_path: Path
) -> None:
    extra = {"mass likely [kg]": ""} if "mass low [kg]" in bad else {}
    reading = _loose(tmp_path, _GOOD | extra, {**_GOOD, "change": "bad", **bad})
    assert [c.name for c in reading.library.changes_of("Study")] == ["good"]
    (problem,) = [p for p in reading.problems if p.severity is Severity.ERROR]
    assert (problem.row, problem.column, problem.value) == (3, column, value)
    assert said in problem.what
    assert problem.remedy
    assert problem.source.endswith("changes.csv")


def test_names_that_are_not_there_are_doubted_not_dropped(tmp_path: Path) -> None:
    reading = _loose(
        tmp_path,
        {**_GOOD, "kind": "add", "into": "plate", "mass likely [kg]": "2", "parts": ""},
        {
            **_GOOD,
            "change": "b",
            "parts": "tray; tary; plate",
            "requires": "good; gone",
        },
    )
    assert len(reading.library.changes_of("Study")) == 2
    assert [(p.row, p.column, p.severity) for p in reading.problems] == [
        (3, "parts", Severity.WARNING),
        (3, "requires", Severity.WARNING),
    ]
    assert "'tary'" in reading.problems[0].what
    assert "'gone'" in reading.problems[1].what


def test_a_table_of_changes_without_studies_refuses_every_row(tmp_path: Path) -> None:
    write_package(library(), tmp_path, currency="EUR")
    (tmp_path / "datapackage.json").unlink()
    (tmp_path / "studies.csv").unlink()
    reading = read_package(tmp_path)
    assert reading.library.changes == {}
    assert [p.row for p in reading.problems] == [2, 3]


def test_a_package_of_before_has_no_proposal(tmp_path: Path) -> None:
    write_package(library(), tmp_path, currency="EUR")
    described = json.loads((tmp_path / "datapackage.json").read_text("utf-8"))
    described["resources"] = [
        r for r in described["resources"] if r["name"] != "changes"
    ]
    (tmp_path / "datapackage.json").write_text(json.dumps(described), "utf-8")
    reading = read_package(tmp_path)
    assert reading.problems == ()
    assert reading.library.changes == {}


def test_only_what_differs_is_written(tmp_path: Path) -> None:
    old = library()
    second = replace(CHANGES[1], study="Second", excludes=())
    old = replace(old, changes={**old.changes, "Second": (second,)})
    path = tmp_path / "a.benchpack"
    with LibraryFile.create(path, old) as store:
        before = _ids(path)
        worth = replace(old.studies[0], worth_likely_per_kg=4.0)
        new = old.with_study(worth)
        store.write(old, new)
        assert _ids(path) == before
        switched = (replace(CHANGES[0], is_on=False), CHANGES[1])
        newer = replace(new, changes={**new.changes, "Study": switched})
        store.write(new, newer)
        assert _ids(path)["no tray", 1] == before["no tray", 1]
        assert store.read() == newer
        turned = replace(newer, studies=newer.studies[::-1])
        store.write(newer, turned)
        assert store.read() == turned
        orphan = replace(turned, studies=turned.studies[:1])
        with pytest.raises(DataError, match="no study here"):
            store.write(turned, orphan)
        assert store.read() == turned


def _ids(path: Path) -> dict[tuple[str, int], int]:
    import sqlite3
    from contextlib import closing

    with closing(sqlite3.connect(path)) as connection:
        rows = connection.execute("SELECT name, study_id, id FROM changes").fetchall()
    return {(name, study): key for name, study, key in rows}


def test_the_demo_reads_without_a_doubt_and_its_changes_are_taken_in() -> None:
    found = demo_library()
    assert all(study.name in found.changes for study in found.studies[:1])
    for study, changes in found.changes.items():
        subject = next(s.subject for s in found.studies if s.name == study)
        parts = {part.name for part in found.parts_of(subject)}
        joints = {joint.name for joint in found.joints_of(subject)}
        brought = {change.into for change in changes}
        for change in changes:
            assert {*change.parts} <= parts | brought
            assert {*change.joints} <= joints | brought
    assert isinstance(found.parts_of("Avocet 81")[0], Part)
