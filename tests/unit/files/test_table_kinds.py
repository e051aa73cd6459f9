"""Tables of joints or parts alone: told by their heads, read row by row."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
import xlsxwriter

from benchpack.errors import DataError, Severity
from benchpack.files.reading import read_any
from benchpack.files.sheet import Sheet
from benchpack.files.table_kinds import table_kind
from benchpack.files.tables import read_joints, read_parts, read_sheet
from benchpack.files.workbook_reading import WorkbookBody

Rows = list[list[str]]

JOINTS: Rows = [
    ["pack", "joint", "family", "designation", "count", "mass each [g]", "colour"],
    ["Heron 70", "plate screws", "", "ISO 4762 M6x16 8.8", "16", "5,8", "black"],
    ["Egret 80", "clips", "clip", "edge clip", "64", "", ""],
]


def sheet_of(*heads: str) -> Sheet:
    """Give a table of these heads alone."""
    return Sheet("a.csv", heads, 1, WorkbookBody([list(heads)], 1, len(heads)))


@pytest.mark.parametrize(
    ("kind", "heads"),
    [
        ("joints", "pack,joint,family,designation,count"),
        ("joints", "joint,count"),
        ("joints", "Battery;Joint name;Qty;Size"),
        ("joints", "name,family,designation,property class,tightening"),
        ("joints", "Verbindung;Anzahl;Einzelmasse [g]"),
        ("parts", "pack,part,inside,material,count,mass each [kg]"),
        ("parts", "part,mass [kg]"),
        ("parts", "Bauteil;Werkstoff;Anzahl"),
        ("packs", "pack,energy [kWh],mass [kg]"),
        ("packs", "pack,joint,family,designation,count,energy [kWh],mass [kg]"),
        ("packs", "pack,mass [kg]"),
        ("packs", "name,mass [kg],count"),
        ("packs", "name,mass [kg],note"),
        ("packs", "material,kind,density [kg/m3],price,note"),
        ("packs", "name,kind,density,price"),
        ("packs", "source,kind,date,reference,note"),
        ("packs", "study,change,kind,parts,joints,family,designation,count"),
        ("packs", "colour,shape"),
    ],
)
def test_the_heads_tell_what_a_table_holds(kind: str, heads: str) -> None:
    mark = ";" if ";" in heads else ","
    assert table_kind(sheet_of(*heads.split(mark))) == kind


def as_text(mark: str) -> Callable[[Path, Rows], None]:
    def write(path: Path, rows: Rows) -> None:
        path.write_text("\n".join(mark.join(row) for row in rows) + "\n", "utf-8")

    return write


def as_workbook(path: Path, rows: Rows) -> None:
    with xlsxwriter.Workbook(path) as book:
        sheet = book.add_worksheet("bench")
        for at, row in enumerate(rows):
            sheet.write_row(at, 0, row)


def as_opendocument(path: Path, rows: Rows) -> None:
    from odf.opendocument import OpenDocumentSpreadsheet
    from odf.table import Table, TableCell, TableRow
    from odf.text import P

    book = OpenDocumentSpreadsheet()
    table = Table(name="bench")
    for row in rows:
        line = TableRow()
        for cell in row:
            made = TableCell(valuetype="string")
            made.addElement(P(text=cell))
            line.addElement(made)
        table.addElement(line)
    book.spreadsheet.addElement(table)
    book.save(str(path))


@pytest.mark.parametrize(
    ("name", "write"),
    [
        ("joints.csv", as_text(";")),
        ("joints.tsv", as_text("\t")),
        ("joints.xlsx", as_workbook),
        ("joints.ods", as_opendocument),
    ],
)
def test_joints_alone_are_read_from_every_kind_of_table(
    tmp_path: Path, name: str, write: Callable[[Path, Rows], None]
) -> None:
    write(tmp_path / name, JOINTS)
    reading = read_any(tmp_path / name)
    assert reading.problems == ()
    assert (reading.alone, reading.rows_read) == (("joints",), 2)
    (screws,) = reading.library.joints_of("Heron 70")
    assert (screws.name, screws.count, screws.mass_each_g) == ("plate screws", 16, 5.8)
    assert screws.note == "colour: black"
    assert len(reading.library.joints_of("Egret 80")) == 1
    assert len(reading.library.packs) == 0


def test_parts_alone_are_read(tmp_path: Path) -> None:
    (tmp_path / "list.csv").write_text("pack,part,mass each [g]\nHeron 70,lid,4310\n")
    reading = read_any(tmp_path / "list.csv", needs="parts")
    assert reading.alone == ("parts",)
    assert reading.library.parts_of("Heron 70")[0].mass_each_kg == 4.31


def test_every_row_is_accepted_or_reported(tmp_path: Path) -> None:
    path = tmp_path / "joints.csv"
    path.write_text(
        "pack,joint,family,count\n"
        "Heron 70,screws,hex screw,4\n"
        "Heron 70,screws,hex screw,5\n"
        ",nuts,nut,4\n"
        "Heron 70,,nut,4\n"
        "Heron 70,none,nut,0\n"
        "Heron 70,many,nut,lots\n"
        "Heron 70,Total,,13\n"
        "Heron 70,wide,nut,4,left over\n",
        encoding="utf-8",
    )
    reading = read_any(path)
    said = [(p.row, p.column, p.value) for p in reading.problems]
    assert said == [
        (3, "joint", "screws"),
        (4, "pack", ""),
        (5, "joint", ""),
        (6, "count", "0"),
        (7, "count", "lots"),
        (8, "joint", "Total"),
        (9, "", ""),
    ]
    assert all(p.what for p in reading.problems)
    accepted = reading.library.joint_count
    assert accepted + len({p.row for p in reading.problems}) == reading.rows_read == 8


@pytest.mark.parametrize("kind", ["joints", "parts"])
def test_a_table_that_names_no_pack_is_refused_with_what_helps(
    tmp_path: Path, kind: str
) -> None:
    path = tmp_path / "list.csv"
    path.write_text(f"{kind[:-1]},count\nlid,1\n", encoding="utf-8")
    with pytest.raises(DataError) as caught:
        read_any(path)
    (problem,) = caught.value.problems
    assert f"table of {kind} does not say which pack" in problem.what
    assert "Add a column pack" in problem.remedy
    assert (problem.source, problem.row) == ("list.csv", 1)


def test_the_pack_of_all_rows_can_be_given(tmp_path: Path) -> None:
    path = tmp_path / "list.csv"
    path.write_text("joint,count\nlid screws,84\n", encoding="utf-8")
    found = read_joints(read_sheet(path), packs=["a"], pack="a")
    assert [(one.pack, one.name, one.count) for one in found.records] == [
        ("a", "lid screws", 84)
    ]
    path.write_text("pack,part\nb,lid\n", encoding="utf-8")
    named = read_parts(read_sheet(path), packs=["a", "b"], pack="a")
    assert [one.pack for one in named.records] == ["b"]


@pytest.mark.parametrize("needs", ["packs", "parts"])
def test_what_is_needed_and_not_there_is_said(tmp_path: Path, needs: str) -> None:
    as_workbook(tmp_path / "a.xlsx", JOINTS)
    with pytest.raises(DataError, match=f"holds joints and no {needs}"):
        read_any(tmp_path / "a.xlsx", needs=needs)
    assert read_any(tmp_path / "a.xlsx", needs="joints").library.joint_count == 2


def workbook(path: Path, sheets: dict[str, Rows]) -> Path:
    with xlsxwriter.Workbook(path) as book:
        for name, rows in sheets.items():
            sheet = book.add_worksheet(name)
            for at, row in enumerate(rows):
                sheet.write_row(at, 0, row)
    return path


def test_a_sheet_of_packs_goes_first_and_that_of_joints_is_named(
    tmp_path: Path,
) -> None:
    packs = [["pack", "energy [kWh]", "mass [kg]"], ["Heron 70", "70", "460"]]
    path = workbook(tmp_path / "a.xlsx", {"one": JOINTS, "two": packs})
    reading = read_any(path)
    assert reading.library.packs.names.tolist() == ["Heron 70"]
    assert reading.alone == ()
    (problem,) = reading.problems
    assert (problem.source, problem.severity) == (
        "a.xlsx, sheet one",
        Severity.WARNING,
    )
    assert "named packs, parts, joints" in problem.remedy


def test_parts_and_joints_of_one_workbook_are_read_together(tmp_path: Path) -> None:
    parts = [["pack", "part", "material"], ["Heron 70", "lid", "steel"]]
    more = [JOINTS[0], ["Heron 70", "nuts", "nut", "", "4", "", ""]]
    path = workbook(tmp_path / "a.xlsx", {"1": JOINTS, "2": parts, "3": more})
    reading = read_any(path)
    assert reading.alone == ("parts", "joints")
    assert (reading.library.part_count, reading.library.joint_count) == (1, 2)
    (problem,) = reading.problems
    assert problem.source == "a.xlsx, sheet 3"
    assert "into the sheet '1'" in problem.remedy
