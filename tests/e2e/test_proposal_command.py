"""The command proposal on real files, judged by what it prints and writes."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from numpy.testing import assert_allclose

from benchpack.files.reading import read_any, write_any
from tests.e2e.test_command_line import benchpack
from tests.unit.results.proposal_samples import (
    FLOOR_IN_PP,
    LID_IN_PP,
    NO_BRACKETS,
    RIM_BEAD,
    bench,
)

pytestmark = pytest.mark.e2e

DEMO = Path(__file__).parents[2] / "datasets" / "demo"


@pytest.fixture
def library(tmp_path: Path) -> Path:
    """Give a library file with one study and four changes."""
    path = tmp_path / "heron.benchpack"
    write_any(bench(LID_IN_PP, RIM_BEAD, NO_BRACKETS), path, currency="EUR")
    return path


def rows_of(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_ledger_totals_and_chance_are_printed(library: Path, tmp_path: Path) -> None:
    out = tmp_path / "ledger.csv"
    done = benchpack("proposal", library, "--out", out, home=tmp_path)
    assert done.returncode == 0, done.stderr
    assert done.stderr == ""
    first, second = done.stdout.splitlines()[:2]
    assert first == "Study Heron: proposal for Heron 70."
    assert second.startswith("Heron 70 goes from 460.0 kg to 4")
    assert "The chance of saving the target of 5.0 kg or more is " in done.stdout
    assert "To be validated again, under the rules that apply:" in done.stdout
    assert f"written to {out}" in done.stdout
    rows = rows_of(out)
    saved = sum(float(row["saved [kg]"]) for row in rows if row["saved [kg]"])
    (total,) = [row for row in done.stdout.splitlines() if row.startswith("all, Heron")]
    assert_allclose(float(total.split()[-1]), saved, atol=5e-4)
    assert (tmp_path / "ledger.schema.json").exists()
    # The same seed: the same text again.
    again = benchpack("proposal", library, home=tmp_path)
    assert again.stdout == done.stdout.replace(f"written to {out}\n", "")


def test_the_demo_reaches_half_of_its_gap(tmp_path: Path) -> None:
    done = benchpack("proposal", DEMO, home=tmp_path)
    assert done.returncode == 0, done.stderr
    share = done.stdout.partition("That is ")[2].partition(" % of the gap")[0]
    assert 40 <= int(share) <= 60


def test_the_demo_has_a_swap_that_does_not_help(tmp_path: Path) -> None:
    records = read_any(DEMO).library
    _, other = [one.name for one in records.studies if records.changes_of(one.name)]
    done = benchpack("proposal", DEMO, "--study", other, home=tmp_path)
    assert done.returncode == 0, done.stderr
    assert "The proposal makes Avocet 81 heavier" in done.stdout
    assert "heavier in " in done.stdout
    assert "The saving has to come from ribs, from integration" in done.stdout
    assert "is under 1 %" in done.stdout or "no target" in done.stdout


def test_a_change_that_is_refused_is_said_and_makes_the_exit_code(
    tmp_path: Path,
) -> None:
    path = tmp_path / "folder"
    rival = bench(NO_BRACKETS, FLOOR_IN_PP)
    write_any(rival, path, currency="EUR")
    changes = path / "changes.csv"
    text = changes.read_text(encoding="utf-8")
    changes.write_text(text.replace('[""bracket""]', '[""mount""]'), encoding="utf-8")
    done = benchpack("proposal", path, home=tmp_path)
    assert done.returncode == 1
    (line,) = done.stderr.splitlines()
    assert line.startswith(
        "error: no brackets: mount is carry-over: body bolt pattern. Leave it as it is"
    )
    assert "1 of 2 changes count and 1 is refused." in done.stdout


@pytest.mark.parametrize(
    ("arguments", "code", "said"),
    [
        (("--study", "herom"), 1, "Did you mean 'Heron'?"),
        (("--chance",), 2, "unrecognized arguments: --chance"),
        (("--out", "nowhere/ledger.csv"), 2, "there is no folder nowhere"),
        (("--out", "heron.benchpack"), 2, "would overwrite"),
    ],
)
def test_a_call_that_cannot_be_so(
    library: Path, tmp_path: Path, arguments: tuple[str, ...], code: int, said: str
) -> None:
    done = benchpack("proposal", library, *arguments, home=tmp_path)
    assert done.returncode == code
    assert said in done.stderr
    assert "Traceback" not in done.stderr


def test_a_file_without_a_study_says_so(tmp_path: Path) -> None:
    packs = tmp_path / "packs.csv"
    packs.write_text("pack,energy [kWh],mass [kg]\nHeron 70,70,460\n", encoding="utf-8")
    done = benchpack("proposal", packs, home=tmp_path)
    assert done.returncode == 1
    assert "The file holds no study, and so no proposal." in done.stderr
