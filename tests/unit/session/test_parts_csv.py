"""Tables that are handed over: parts as recorded, and every table beside its schema."""

from __future__ import annotations

import csv
import json
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from frictionless import Resource, Schema

from benchpack.errors import DataError
from benchpack.files.demo import demo_library
from benchpack.files.reading import read_any
from benchpack.model.joint import Joint
from benchpack.model.library import Library, by_pack
from benchpack.model.pack_table import PackTable
from benchpack.model.part import PART_FIELDS, Part
from benchpack.results.inventory import inventory
from benchpack.results.proposal import proposal
from benchpack.results.results import compute
from benchpack.results.study_scope import library_of_study
from benchpack.session.handover import (
    write_gap_csv,
    write_joints_csv,
    write_parts_csv,
)
from benchpack.session.proposal_request import write_ledger_csv

SUBJECT = "Avocet 81"
ODD = ("=1+1", "+1", "-1", "@SUM(A1)", "\tlid", "\rlid", " =1", "\u200b \ufeff=1")
"""Texts that a spreadsheet would run, or take for the start of one."""


def rows_of(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def gaps(library: Library, path: Path) -> None:
    write_gap_csv(compute(library, library.studies[0]), path)


def parts(library: Library, path: Path) -> None:
    write_parts_csv(library, library.packs.names.tolist(), path)


def joints(library: Library, path: Path) -> None:
    write_joints_csv(inventory(library, library.studies[0], SUBJECT), path)


def ledger(library: Library, path: Path) -> None:
    write_ledger_csv(proposal(library, library.studies[0]), path)


TABLES = (gaps, parts, joints, ledger)


def with_odd_names(library: Library) -> Library:
    """Give a library with packs, parts, joints and changes of names that would run."""
    crooked = {
        name: f"{odd} {n}"
        for n, (name, odd) in enumerate(
            zip(library.packs.names[1:].tolist(), ODD, strict=False)
        )
    }
    packs = [replace(p, name=crooked.get(p.name, p.name)) for p in library.packs]
    more = [Part(SUBJECT, f"{odd} {n}", note=odd) for n, odd in enumerate(ODD)]
    held = [Joint(SUBJECT, f"{odd} {n}", note=odd) for n, odd in enumerate(ODD)]
    study = replace(library.studies[0], reference=packs[1].name)
    changes = tuple(
        replace(one, name=f"{odd} {one.name}", requires=(), excludes=())
        for one, odd in zip(library.changes_of(study.name), ODD, strict=False)
    )
    return replace(
        library,
        packs=PackTable.from_packs(packs),
        parts=by_pack((*library.parts_of(SUBJECT), *more)),
        joints=by_pack((*library.joints_of(SUBJECT), *held)),
        studies=(study,),
        changes={study.name: changes},
    )


@pytest.mark.parametrize("write", TABLES, ids=lambda write: write.__name__)
@pytest.mark.parametrize("is_odd", [False, True], ids=["demo", "odd names"])
def test_the_schema_beside_it_validates_each_table(
    tmp_path: Path, write: Callable[[Library, Path], None], *, is_odd: bool
) -> None:
    # Independent package: frictionless.
    library = demo_library()
    path = tmp_path / "table.csv"
    write(with_odd_names(library) if is_odd else library, path)
    described = json.loads(path.with_suffix(".schema.json").read_text("utf-8"))
    report = Resource(
        path=path.name, basepath=str(tmp_path), schema=Schema.from_descriptor(described)
    ).validate()
    assert report.valid, report.flatten(["title", "message"])
    rows = rows_of(path)
    assert len(rows) > 5
    assert all(field["description"] for field in described["fields"])
    texts = [f["name"] for f in described["fields"] if f["type"] == "string"]
    cells = [row[name] for row in rows for name in texts]
    # No cell of text starts with a sign that runs, whatever is not seen before it.
    assert not [c for c in cells if c.strip(" \u200b\ufeff")[:1] in tuple("=+-@\t\r")]
    if is_odd:
        assert sum(cell.startswith("'") for cell in cells) >= 5


def test_the_columns_are_those_of_parts_in_every_file(tmp_path: Path) -> None:
    library = demo_library()
    path = tmp_path / "parts.csv"
    write_parts_csv(library, [SUBJECT], path)
    rows = rows_of(path)
    assert list(rows[0]) == [field.header() for field in PART_FIELDS]
    assert [row["part"] for row in rows] == [
        part.name for part in library.parts_of(SUBJECT)
    ]
    total = sum(int(r["count"]) * float(r["mass each [kg]"] or 0) for r in rows)
    known = [part.mass_kg or 0.0 for part in library.parts_of(SUBJECT)]
    assert total == pytest.approx(sum(known), rel=1e-12)


def test_parts_of_every_pack_of_a_study(tmp_path: Path) -> None:
    library = demo_library()
    scope = library_of_study(library, library.studies[1])
    path = tmp_path / "parts.csv"
    write_parts_csv(scope, scope.packs.names.tolist(), path)
    rows = rows_of(path)
    assert len(rows) == scope.part_count
    assert {row["pack"] for row in rows} == set(scope.parts)


def test_it_reads_back_as_a_table_of_parts(tmp_path: Path) -> None:
    library = demo_library()
    path = tmp_path / "parts.csv"
    write_parts_csv(library, [SUBJECT], path)
    reading = read_any(path)
    assert reading.problems == ()
    assert reading.library.parts_of(SUBJECT) == library.parts_of(SUBJECT)


def test_packs_without_parts_have_no_table(tmp_path: Path) -> None:
    with pytest.raises(DataError, match=r"No parts of Snipe 61 are recorded"):
        write_parts_csv(Library(), ["Snipe 61"], tmp_path / "parts.csv")
    with pytest.raises(DataError, match=r"No parts of these packs"):
        write_parts_csv(Library(), ["Snipe 61", "Knot 42"], tmp_path / "parts.csv")
    assert list(tmp_path.iterdir()) == []
