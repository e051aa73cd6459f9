"""The command joints on real files, judged by what it prints and writes."""

from __future__ import annotations

import csv
import json
import re
import shutil
from pathlib import Path

import pytest
from frictionless import Resource, Schema
from numpy.testing import assert_allclose

from benchpack.model.joint import JOINT_FIELDS
from tests.e2e.test_command_line import benchpack

pytestmark = pytest.mark.e2e

DEMO = Path(__file__).parents[2] / "datasets" / "demo"
PACKS = "pack,energy [kWh],mass [kg]\nHeron 70,70,460\nEgret 80,80,470\n"
JOINTS = """\
pack;joint;family;designation;count;length [mm];mass each [g];joins
Heron 70;plate screws;;ISO 4762 M6x16 8.8;16;;;connector plate
Heron 70;bead;sealant bead;silicone bead 5 mm;1;2,5 m;;tray
Heron 70;clips;clip;edge clip;64;;;
Heron 70;bad;magnet;;3;;;
Heron 70;none;hex screw;ISO 4017 M8x20;0;;;
"""


@pytest.fixture
def counted(tmp_path: Path) -> Path:
    """Give a folder as it is handed over: two tables, counted at the bench."""
    folder = tmp_path / "counted"
    folder.mkdir()
    (folder / "packs.csv").write_text(PACKS, encoding="utf-8")
    (folder / "joints.csv").write_text(JOINTS, encoding="utf-8")
    return folder


def rows_of(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_joints_counted_at_the_bench_are_answered(
    counted: Path, tmp_path: Path
) -> None:
    out = tmp_path / "joints.csv"
    done = benchpack(
        "joints", counted, "--pack", "Heron 70", "--out", out, home=tmp_path
    )
    assert done.returncode == 0, done.stderr
    first, second = done.stdout.splitlines()[:2]
    assert first == "Joints of Heron 70: 4 rows, 83 pieces and 2.5 m of seal."
    assert second.startswith("All 80 fasteners weigh at least 92.8 g: at 3.00 CUR/kg")
    assert "Usual costs are known in EUR only" in done.stdout
    assert f"written to {out}" in done.stdout
    lines = done.stderr.splitlines()
    assert len(lines) == 3
    assert "row 6, column count: count is 0. It has to be above zero." in lines[0]
    assert lines[1].startswith("warning: clips, column mass each [g]: What one")
    assert lines[2].startswith("warning: bad, column family: The family 'magnet'")
    rows = {row["joint"]: row for row in rows_of(out)}
    assert list(rows) == ["plate screws", "bead", "clips", "bad"]
    assert rows["plate screws"]["mass each [g]"] == "5.8"
    assert rows["plate screws"]["known by"] == "standard table"
    assert_allclose(float(rows["bead"]["mass each [g]"]), 64.8, atol=0.1)
    assert rows["bead"]["known by"] == "geometry"
    assert (rows["clips"]["mass each [g]"], rows["clips"]["known by"]) == ("", "")


def test_the_table_is_valid_and_its_totals_are_those_of_the_rows(
    tmp_path: Path,
) -> None:
    out = tmp_path / "joints.csv"
    done = benchpack("joints", DEMO, "--pack", "Avocet 81", "--out", out, home=tmp_path)
    assert done.returncode == 0, done.stderr
    rows = rows_of(out)
    heads = [field.header(currency="EUR") for field in JOINT_FIELDS]
    assert list(rows[0]) == heads
    described = json.loads((tmp_path / "joints.schema.json").read_text("utf-8"))
    report = Resource(
        path=out.name, basepath=str(tmp_path), schema=Schema.from_descriptor(described)
    ).validate()
    assert report.valid, report.flatten(["title", "message"])
    printed = {
        cells[0]: float(cells[4])
        for line in done.stdout.splitlines()
        if len(cells := re.split(" {2,}", line)) == 8 and cells[0] != "kind"
    }
    masses_kg = [
        int(row["count"]) * float(row["mass each [g]"] or 0) / 1000 for row in rows
    ]
    assert_allclose(printed["all"], sum(masses_kg), atol=0.001)
    staying = [row["carry-over"] == "true" for row in rows]
    kept_kg = sum(m for m, stays in zip(masses_kg, staying, strict=True) if stays)
    assert_allclose(printed["have to stay"], kept_kg, atol=0.001)


def test_the_written_table_gives_the_same_again(tmp_path: Path) -> None:
    """Out, in beside the packs, and out once more: byte for byte the same."""
    folder = tmp_path / "again"
    shutil.copytree(DEMO, folder)
    first, second = folder / "new.csv", tmp_path / "second.csv"
    done = benchpack(
        "joints", folder, "--pack", "Dunlin 74", "--out", first, home=tmp_path
    )
    assert done.returncode == 0, done.stderr
    (folder / "datapackage.json").unlink()
    first.replace(folder / "joints.csv")
    again = benchpack(
        "joints", folder, "--pack", "Dunlin 74", "--out", second, home=tmp_path
    )
    assert again.returncode == 0, again.stderr
    assert second.read_bytes() == (folder / "joints.csv").read_bytes()
    tables = [
        [line for line in done.stdout.splitlines() if line.startswith("all ")]
        for done in (done, again)
    ]
    assert tables[0] == tables[1]


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("Avocet 8", "Did you mean 'Avocet 81'?"),
        ("avocet 81", "Did you mean 'Avocet 81'?"),
        ("Zebra", "There is no pack 'Zebra'"),
        ("Snipe 61", "No joints of Snipe 61 are recorded."),
    ],
)
def test_a_pack_the_data_cannot_answer_for(
    tmp_path: Path, name: str, said: str
) -> None:
    out = tmp_path / "joints.csv"
    done = benchpack("joints", DEMO, "--pack", name, "--out", out, home=tmp_path)
    assert done.returncode == 1
    assert said in done.stderr
    assert done.stdout == ""
    assert not out.exists()


def test_a_call_that_cannot_be_so(counted: Path, tmp_path: Path) -> None:
    before = (counted / "joints.csv").read_bytes()
    calls = (
        ("joints",),
        ("joints", counted),
        ("joints", "no-such-file.csv", "--pack", "Heron 70", "--out", "no/where.csv"),
        ("joints", counted, "--pack", "Heron 70", "--out", counted / "joints.csv"),
        ("joints", counted, "--pack", "Heron 70", "--out", tmp_path),
    )
    for call in calls:
        done = benchpack(*call, home=tmp_path)
        assert done.returncode == 2, done.stderr
        assert "Traceback" not in done.stderr
    assert (counted / "joints.csv").read_bytes() == before


def test_check_names_each_row_with_pack_joint_column_and_remedy(
    counted: Path, tmp_path: Path
) -> None:
    done = benchpack("check", counted, home=tmp_path)
    assert done.returncode == 1
    lines = [line for line in done.stderr.splitlines() if "Heron 70, column" in line]
    clips = [line for line in lines if "clips:" in line]
    assert len(clips) == 1
    assert clips[0] == (
        "warning: Heron 70, column mass each [g]: clips: What one 'edge clip' weighs "
        "cannot be worked out. Weigh 20 and divide."
    )
    assert len([line for line in lines if " bad: " in line]) == 1
