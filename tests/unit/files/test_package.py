"""Data Packages: valid to others, read with and without a description."""

from __future__ import annotations

import json
import tempfile
import warnings
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from benchpack.errors import DataError, Severity
from benchpack.files.demo import demo_library
from benchpack.files.package import read_package, write_package
from benchpack.model.library import Library
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from tests.strategies.records import libraries
from tests.unit.files.libraries import small_library


def _validate(folder: Path) -> Any:
    """Validate with an independent package (frictionless)."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import frictionless

        return frictionless.validate(str(folder / "datapackage.json"))


def test_the_demo_reads_without_a_complaint() -> None:
    library = demo_library()
    assert len(library.packs) >= 14
    assert library.parts_of("Avocet 81")
    assert library.joints_of("Dunlin 74")
    assert any(joint.cost_each for joint in library.joints_of("Dunlin 74"))
    assert "invented" in library.note.casefold()


def test_a_written_package_is_valid_and_comes_back(tmp_path: Path) -> None:
    library = demo_library()
    write_package(library, tmp_path / "new" / "demo", currency="USD")
    report = _validate(tmp_path / "new" / "demo")
    assert report.valid, report.to_summary()
    reading = read_package(tmp_path / "new" / "demo" / "datapackage.json")
    assert reading.library == library
    assert reading.currency == "USD"
    assert (tmp_path / "new/demo/joints.csv").read_bytes().startswith(b"pack,joint,")
    heads = (tmp_path / "new/demo/joints.csv").read_text("utf-8").splitlines()[0]
    assert "cost each [USD]" in heads


@settings(max_examples=10, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(libraries())
def test_any_written_package_is_valid(library: Library) -> None:
    with tempfile.TemporaryDirectory() as folder:
        write_package(library, Path(folder), currency="EUR")
        report = _validate(Path(folder))
    assert report.valid, report.to_summary()


def test_formula_like_names_stay_as_they_are(tmp_path: Path) -> None:
    packs = PackTable.from_packs([Pack("=1+1", 50, 300), Pack("-x", 50, 300)])
    write_package(Library(packs=packs), tmp_path, currency="EUR")
    assert (tmp_path / "packs.csv").read_bytes().count(b"\r\n=1+1,") == 1
    assert read_package(tmp_path).library.packs == packs


def test_a_very_long_note_comes_back(tmp_path: Path) -> None:
    packs = PackTable.from_packs([Pack("a", 50, 300, note="long " * 40_000)])
    write_package(Library(packs=packs), tmp_path, currency="EUR")
    assert read_package(tmp_path).library.packs == packs


def test_a_folder_without_a_description_is_read(tmp_path: Path) -> None:
    write_package(small_library(), tmp_path, currency="CHF")
    (tmp_path / "datapackage.json").unlink()
    (tmp_path / "studies.csv").unlink()
    (tmp_path / "readme.csv").write_text("not ours")
    reading = read_package(tmp_path)
    expected = small_library()
    assert reading.library.packs == expected.packs
    assert reading.library.parts == expected.parts
    assert reading.library.joints == expected.joints
    assert reading.currency == "CHF"


def test_rows_of_unknown_packs_are_reported(tmp_path: Path) -> None:
    write_package(small_library(), tmp_path, currency="EUR")
    with (tmp_path / "parts.csv").open("a", encoding="utf-8") as stream:
        stream.write("Ghost,lid,,lid,,,1\r\n,rail,,frame,,,1\r\n")
    problems = read_package(tmp_path).problems
    assert [(p.source, p.row, p.column, p.value) for p in problems] == [
        ("parts.csv", 3, "pack", "Ghost"),
        ("parts.csv", 4, "pack", ""),
    ]


def test_money_in_two_currencies_is_refused(tmp_path: Path) -> None:
    (tmp_path / "packs.csv").write_text("pack,energy [kWh],mass [kg]\na,50,300\n")
    (tmp_path / "joints.csv").write_text("pack,joint,cost each [EUR]\na,clip,0.1\n")
    (tmp_path / "materials.csv").write_text(
        "material,price [USD/kg]\nsteel,1.2\nglue,\n"
    )
    reading = read_package(tmp_path)
    assert reading.currency == "EUR"
    assert [(p.row, p.column, p.severity) for p in reading.problems] == [
        (2, "price [USD/kg]", Severity.ERROR)
    ]
    assert [m.name for m in reading.library.materials] == ["glue"]


def test_a_character_no_text_file_holds_is_refused(tmp_path: Path) -> None:
    write_package(small_library(), tmp_path, currency="EUR")
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    for name in ("a\0b", "a\ud800b"):
        packs = PackTable.from_packs([Pack(name, 50, 300)])
        with pytest.raises(DataError, match="character"):
            write_package(Library(packs=packs), tmp_path, currency="EUR")
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == before


@pytest.mark.parametrize(
    ("descriptor", "words"),
    [
        ("{", "no valid JSON"),
        ("[]", "lists no resources"),
        ('{"resources": {}}', "lists no resources"),
        ('{"resources": [{"name": "packs"}]}', "names no file"),
        ('{"resources": [{"name": "packs", "path": "../packs.csv"}]}', "names no file"),
        ('{"resources": [{"name": "packs", "path": "/etc/hosts"}]}', "names no file"),
        ('{"resources": [{"name": "packs", "path": "none.csv"}]}', "no such file"),
        ("", "empty"),
    ],
)
def test_a_description_that_cannot_be_followed(
    tmp_path: Path, descriptor: str, words: str
) -> None:
    (tmp_path / "datapackage.json").write_text(descriptor)
    with pytest.raises(DataError, match=words):
        read_package(tmp_path)


def test_other_tables_are_named_and_left_out(tmp_path: Path) -> None:
    write_package(small_library(), tmp_path, currency="EUR")
    path = tmp_path / "datapackage.json"
    described = json.loads(path.read_text("utf-8"))
    described["resources"].append({"name": "drivers", "path": "drivers.csv"})
    path.write_text(json.dumps(described), "utf-8")
    reading = read_package(tmp_path)
    assert reading.library == small_library()
    assert [(p.severity, "drivers" in p.what) for p in reading.problems] == [
        (Severity.WARNING, True)
    ]


def test_folders_without_tables_are_refused(tmp_path: Path) -> None:
    with pytest.raises(DataError, match="neither"):
        read_package(tmp_path)
    with pytest.raises(DataError, match="no such file"):
        read_package(tmp_path / "none")
