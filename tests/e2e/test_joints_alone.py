"""A table of joints without packs on the real command line."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from benchpack.files.reading import read_any
from benchpack.results.joint_facts import joint_mass_each_g
from tests.e2e.test_command_line import benchpack

pytestmark = pytest.mark.e2e

DEMO = Path(__file__).parents[2] / "datasets" / "demo"
COUNTED = """\
pack;joint;family;designation;count;mass each [g];joins
Heron 70;plate screws;;ISO 4762 M6x16 8.8;16;;connector plate
Heron 70;clips;clip;edge clip;64;1,5;tray
Egret 80;clips;clip;edge clip;60;1,5;tray
"""


@pytest.fixture
def counted(tmp_path: Path) -> Path:
    path = tmp_path / "counted.csv"
    path.write_text(COUNTED, encoding="utf-8")
    return path


def test_check_reads_it_and_counts_the_joints(counted: Path, tmp_path: Path) -> None:
    done = benchpack("check", counted, home=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout == "3 joints of 2 packs; 0 errors, 0 warnings\n"


def test_check_reports_each_row_that_is_refused(counted: Path, tmp_path: Path) -> None:
    with counted.open("a", encoding="utf-8") as file:
        file.write("Heron 70;nuts;nut;;0;;\n;pins;nut;;1;2;\n")
    done = benchpack("check", counted, home=tmp_path)
    assert done.returncode == 1
    assert done.stdout == "3 joints of 2 packs; 2 errors, 0 warnings\n"
    first, second = done.stderr.splitlines()
    assert "counted.csv, row 5, column count: count is 0." in first
    assert "counted.csv, row 6, column pack: pack is empty." in second


def test_the_totals_of_a_pack_need_no_record_of_it(
    counted: Path, tmp_path: Path
) -> None:
    """16 screws of 5.8 g and 64 clips of 1.5 g: 92.8 g + 96 g = 188.8 g."""
    done = benchpack("joints", counted, "--pack", "Heron 70", home=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    lines = done.stdout.splitlines()
    assert lines[0] == "Joints of Heron 70: 2 rows, 80 pieces."
    (total,) = [line for line in lines if line.startswith("all ")]
    assert total.split()[1:5] == ["2", "80", "0.0", "0.189"]
    assert lines[-1].startswith("Per kWh, and as a share of the structure's mass: unkn")
    lacking = benchpack("joints", counted, "--pack", "heron 70", home=tmp_path)
    assert lacking.returncode == 1
    assert "Did you mean 'Heron 70'?" in lacking.stderr


@pytest.mark.parametrize(
    "call",
    [
        ("gaps", "FILE", "--subject", "Heron 70"),
        ("convert", "FILE", "out.benchpack"),
        ("convert", "FILE", "out"),
        ("proposal", "FILE"),
        ("pictures", "FILE", "--out", "pictures"),
    ],
)
def test_what_needs_packs_says_so(
    counted: Path, tmp_path: Path, call: tuple[str, ...]
) -> None:
    arguments = [counted if word == "FILE" else word for word in call]
    done = benchpack(*arguments, home=tmp_path)
    assert done.returncode == 1
    (line,) = done.stderr.splitlines()
    assert "The file holds joints and no packs. Open it in the window" in line
    assert done.stdout == ""
    assert not list(tmp_path.glob("out*"))
    assert not (tmp_path / "pictures").exists()


def test_a_table_that_names_no_pack_says_what_helps(tmp_path: Path) -> None:
    path = tmp_path / "counted.csv"
    path.write_text("joint,family,count\nclips,clip,4\n", encoding="utf-8")
    for call in (("check", path), ("joints", path, "--pack", "Heron 70")):
        done = benchpack(*call, home=tmp_path)
        assert done.returncode == 1
        (line,) = done.stderr.splitlines()
        assert "counted.csv, row 1: The table of joints does not say which" in line
        assert "Add a column pack" in line


def test_parts_hold_no_joints(tmp_path: Path) -> None:
    path = tmp_path / "parts.csv"
    path.write_text("pack,part,count\nHeron 70,lid,1\n", encoding="utf-8")
    done = benchpack("joints", path, "--pack", "Heron 70", home=tmp_path)
    assert done.returncode == 1
    assert "The file holds parts and no joints." in done.stderr


@pytest.mark.parametrize("pack", ["Avocet 81", "Dunlin 74"])
def test_what_joints_writes_is_read_back_alone(tmp_path: Path, pack: str) -> None:
    """Equal joints, with the masses that were worked out; the same totals again."""
    out, again = tmp_path / "joints.csv", tmp_path / "again.csv"
    done = benchpack("joints", DEMO, "--pack", pack, "--out", out, home=tmp_path)
    assert done.returncode == 0, done.stderr
    checked = benchpack("check", out, home=tmp_path)
    assert checked.returncode == 0, checked.stderr
    expected = []
    for joint in read_any(DEMO).library.joints_of(pack):
        mass_g, known_by, _ = joint_mass_each_g(joint)
        known = mass_g if mass_g == mass_g else None
        expected.append(replace(joint, mass_each_g=known, known_by=known_by))
    assert read_any(out).library.joints_of(pack) == tuple(expected)
    second = benchpack("joints", out, "--pack", pack, "--out", again, home=tmp_path)
    assert second.returncode == 0, second.stderr
    assert again.read_bytes() == out.read_bytes()
    totals = [
        [line for line in run.stdout.splitlines() if line.startswith("all ")]
        for run in (done, second)
    ]
    assert totals[0] == totals[1]
