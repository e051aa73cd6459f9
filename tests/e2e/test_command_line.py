"""The real command line on real files, judged by what it prints and writes."""

from __future__ import annotations

import csv
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from numpy.testing import assert_allclose

pytestmark = pytest.mark.e2e

HAND_MADE = """\
pack;energy [MJ];mass [lb];cells mass [kg];colour
Alder 82;295,2;1078,06;310,5;green
Birch 75;270;967,83;;red
Cedar 57;57 kWh;0,429 t;260;blue
Dogwood 75;270;442 kg;280;
Elm 66;237,6;;250;grey
Alder 82;180;900;;twice
Fir 70;-252;930;;odd
"""

COLUMNS = [
    "pack",
    "energy [kWh]",
    "energy basis",
    "mass [kg]",
    "density [Wh/kg]",
    "reference",
    "reference energy [kWh]",
    "reference mass [kg]",
    "reference density [Wh/kg]",
    "gap as weighed [kg]",
    "energy share [kg]",
    "density share [kg]",
    "gap scaled [kg]",
    "gap to trend [kg]",
    "gap structure [kg]",
    "u(gap) [kg]",
    "basis",
    "gap [kg]",
    "worth low [EUR/kg]",
    "worth likely [EUR/kg]",
    "worth high [EUR/kg]",
    "value low [EUR]",
    "value likely [EUR]",
    "value high [EUR]",
    "warnings",
]


def benchpack(
    *arguments: str | Path, home: Path, display: bool = False
) -> subprocess.CompletedProcess[str]:
    environment = {**os.environ, "BENCHPACK_HOME": str(home)}
    if not display:
        for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
            environment.pop(name, None)
    return subprocess.run(
        [sys.executable, "-m", "benchpack", *map(str, arguments)],
        capture_output=True,
        text=True,
        check=False,
        env=environment,
        cwd=home,
    )


@pytest.fixture
def packs_csv(tmp_path: Path) -> Path:
    path = tmp_path / "packs.csv"
    path.write_text(HAND_MADE, encoding="utf-8")
    return path


def rows_of(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_gaps_of_a_hand_made_table(packs_csv: Path, tmp_path: Path) -> None:
    """Pounds, megajoules and decimal commas; three bad rows in other packs."""
    out = tmp_path / "gaps.csv"
    done = benchpack(
        "gaps",
        packs_csv,
        "--subject",
        "Alder 82",
        "--reference",
        "Birch 75",
        "--worth",
        "2:3:6",
        "--currency",
        "EUR",
        "--out",
        out,
        home=tmp_path,
    )
    assert done.returncode == 0, done.stderr
    (row,) = rows_of(out)
    assert list(row) == COLUMNS
    # Common practice, no source: 82 kWh and 489 kg against 75 kWh and 439 kg.
    expected = {
        "energy [kWh]": 82,
        "mass [kg]": 489,
        "reference energy [kWh]": 75,
        "reference mass [kg]": 439,
        "gap as weighed [kg]": 50,
        "energy share [kg]": 40.97,
        "density share [kg]": 9.03,
        "gap [kg]": 9.03,
        "value low [EUR]": 18.05,
        "value likely [EUR]": 27.08,
        "value high [EUR]": 54.16,
    }
    for name, value in expected.items():
        assert_allclose(float(row[name]), value, atol=0.01, err_msg=name)
    assert row["gap scaled [kg]"] == ""
    assert row["u(gap) [kg]"] == ""
    lines = [line for line in done.stderr.splitlines() if line.startswith("error")]
    assert len(lines) == 3
    assert "row 6" in lines[0]
    assert "mass [lb]" in lines[0]
    assert "row 7" in lines[1]
    assert "Alder 82" in lines[1]
    assert "row 8" in lines[2]
    assert "energy [MJ]" in lines[2]
    assert "-252" in lines[2]
    schema = json.loads((tmp_path / "gaps.schema.json").read_text(encoding="utf-8"))
    assert [field["name"] for field in schema["fields"]] == COLUMNS


def test_without_a_reference_every_other_pack_is_one(
    packs_csv: Path, tmp_path: Path
) -> None:
    out = tmp_path / "gaps.csv"
    done = benchpack(
        "gaps", packs_csv, "--subject", "Alder 82", "--out", out, home=tmp_path
    )
    assert done.returncode == 0
    assert [row["reference"] for row in rows_of(out)] == [
        "Birch 75",
        "Cedar 57",
        "Dogwood 75",
    ]
    assert_allclose(float(rows_of(out)[1]["reference mass [kg]"]), 429)


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--subject", "Elm 66"), "Elm 66"),
        (("--subject", "Alder 82", "--reference", "Fir 70"), "Fir 70"),
        (("--subject", "alder 82"), "Did you mean 'Alder 82'?"),
    ],
)
def test_a_request_the_data_cannot_answer(
    packs_csv: Path, tmp_path: Path, arguments: tuple[str, ...], said: str
) -> None:
    done = benchpack("gaps", packs_csv, *arguments, home=tmp_path)
    assert done.returncode == 1
    assert said in done.stderr
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize(
    "arguments",
    [
        ("gaps",),
        ("gaps", "packs.csv", "--subject", "Alder 82", "--worth", "6:3:2"),
        ("gaps", "packs.csv", "--subject", "Alder 82", "--worth", "cheap"),
        ("gaps", "packs.csv", "--subject", "Alder 82", "--currency", "euros"),
        ("gaps", "packs.csv", "--subject", "Alder 82", "--basis", "beauty"),
        ("gaps", "packs.csv", "--subject", "Alder 82", "--reference", "Alder 82"),
        ("gaps", "packs.csv", "--subject", "Alder 82", "--out", "packs.csv"),
        ("convert", "packs.csv", "out.odt"),
        ("pictures", "packs.csv", "--out", "x", "--size", "big"),
        ("no-such-file.csv",),
    ],
)
def test_a_call_that_cannot_be_so(
    packs_csv: Path, tmp_path: Path, arguments: tuple[str, ...]
) -> None:
    done = benchpack(*arguments, home=packs_csv.parent)
    assert done.returncode == 2, done.stderr
    assert "Traceback" not in done.stderr


def test_check_says_what_is_wrong(packs_csv: Path, tmp_path: Path) -> None:
    done = benchpack("check", packs_csv, home=tmp_path)
    assert done.returncode == 1
    assert len(done.stderr.splitlines()) >= 3
    assert "4 packs" in done.stdout
    assert "3 errors" in done.stdout


@pytest.mark.parametrize("name", ["missing.csv", "empty.csv", "noise.bin"])
def test_a_file_that_is_no_table(tmp_path: Path, name: str) -> None:
    if name == "empty.csv":
        (tmp_path / name).touch()
    elif name == "noise.bin":
        (tmp_path / name).write_bytes(bytes(range(256)) * 8)
    done = benchpack("check", tmp_path / name, home=tmp_path)
    assert done.returncode == 1
    assert name in done.stderr
    assert "Traceback" not in done.stderr


def test_convert_goes_round_and_comes_back(tmp_path: Path) -> None:
    """Demo to library, workbook and package again, and the gaps stay the same."""
    demo = Path(__file__).parents[2] / "datasets" / "demo"
    stops = ["one.benchpack", "two.xlsx", "three", "four.benchpack"]
    source: Path = demo
    for stop in stops:
        done = benchpack("convert", source, tmp_path / stop, home=tmp_path)
        assert done.returncode == 0, done.stderr
        source = tmp_path / stop
    found = []
    for place, file in enumerate((demo, source)):
        out = tmp_path / f"gaps{place}.csv"
        done = benchpack(
            "gaps", file, "--subject", "Avocet 81", "--out", out, home=tmp_path
        )
        assert done.returncode == 0, done.stderr
        found.append(out.read_bytes())
    assert found[0] == found[1]
    assert found[0].count(b"\r\n") == 18


def test_pictures_of_every_page_light_and_dark(tmp_path: Path) -> None:
    demo = Path(__file__).parents[2] / "datasets" / "demo"
    done = benchpack("pictures", demo, "--out", tmp_path / "shots", home=tmp_path)
    assert done.returncode == 0, done.stderr
    names = {path.name for path in (tmp_path / "shots").iterdir()}
    assert names == {
        f"{page}-{scheme}.png"
        for page in ("packs", "gap", "joints", "changes", "worth", "brief")
        for scheme in ("light", "dark")
    }
    assert all(path.stat().st_size > 20_000 for path in (tmp_path / "shots").iterdir())


@pytest.mark.parametrize(
    "arguments",
    [
        ("gaps", "DEMO", "--subject", "Avocet 81", "--currency", "USD"),
        ("convert", "DEMO", "out.xlsx", "--currency", "USD"),
        ("convert", "DEMO", "out.xlsx", "--currency", "x"),
    ],
)
def test_money_is_never_called_by_another_name(
    tmp_path: Path, arguments: tuple[str, ...]
) -> None:
    demo = str(Path(__file__).parents[2] / "datasets" / "demo")
    done = benchpack(*(demo if a == "DEMO" else a for a in arguments), home=tmp_path)
    assert done.returncode == 2
    assert "urrency" in done.stderr or "exchange rates" in done.stderr
    assert not (tmp_path / "out.xlsx").exists()


def test_a_terminal_without_the_signs_gets_a_table(
    packs_csv: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PYTHONIOENCODING", "ascii")
    done = benchpack("gaps", packs_csv, "--subject", "Birch 75", home=tmp_path)
    assert done.returncode == 0, done.stderr
    assert "?50.0" in done.stdout


def test_a_home_that_cannot_be_written_is_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").touch()
    environment = {
        **os.environ,
        "BENCHPACK_HOME": str(tmp_path / "file" / "home"),
        "QT_QPA_PLATFORM": "offscreen",
    }
    done = subprocess.run(
        [sys.executable, "-m", "benchpack"],
        capture_output=True,
        text=True,
        check=False,
        env=environment,
        cwd=tmp_path,
    )
    assert done.returncode == 2
    assert "Traceback" not in done.stderr
    assert "home" in done.stderr
