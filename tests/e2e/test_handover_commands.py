"""The commands bundle, workbook and brief on the demo, judged by what they write."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from benchpack.files.reading import read_any
from benchpack.files.workbook_reading import Workbook
from benchpack.results.fingerprint import fingerprint_of, short_fingerprint
from tests.e2e.test_command_line import benchpack

pytestmark = pytest.mark.e2e

DEMO = Path(__file__).parents[2] / "datasets" / "demo"
SECOND = "Avocet 81 among gross NMC packs"


def demo_fingerprint(place: int) -> str:
    library = read_any(DEMO).library
    return short_fingerprint(fingerprint_of(library, library.studies[place]))


@pytest.mark.parametrize(("named", "place"), [((), 0), (("--study", SECOND), 1)])
def test_a_bundle_says_its_fingerprint_and_answers_the_same(
    tmp_path: Path, named: tuple[str, ...], place: int
) -> None:
    out = tmp_path / "study.bundle.zip"
    done = benchpack("bundle", DEMO, *named, "--out", out, home=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    first, second = done.stdout.splitlines()
    assert first.endswith(f": fingerprint {demo_fingerprint(place)}")
    assert second == f"written to {out}"
    found: list[list[list[str]]] = []
    for file in (DEMO, out):
        csv = tmp_path / f"{len(found)}.csv"
        call = ("gaps", file, "--subject", "Avocet 81", "--reference", "Dunlin 74")
        answered = benchpack(*call, "Stint 53", "--out", csv, home=tmp_path)
        assert answered.returncode == 0, answered.stderr
        # Behind them stands the gap to the trend, through every pack of a file.
        rows = [line.split(",")[:13] for line in csv.read_text("utf-8").splitlines()]
        found.append(rows)
    assert found[0] == found[1]
    checked = benchpack("check", out, home=tmp_path)
    assert checked.returncode == 0
    assert "fingerprint" not in checked.stderr


def test_a_bundle_goes_round_through_every_form(tmp_path: Path) -> None:
    """Bundle, library file, workbook, package, each bundled again: one fingerprint."""
    source = first = tmp_path / "first.bundle.zip"
    done = benchpack("bundle", DEMO, "--out", first, home=tmp_path)
    assert done.returncode == 0, done.stderr
    for name in ("a.benchpack", "b.xlsx", "c"):
        done = benchpack("convert", source, tmp_path / name, home=tmp_path)
        assert done.returncode == 0, done.stderr
        source = tmp_path / name
        again = benchpack(
            "bundle", source, "--out", tmp_path / "again.zip", home=tmp_path
        )
        assert again.stdout.splitlines()[0].endswith(demo_fingerprint(0))


def test_a_bundle_that_was_cut_off_is_said_in_one_line(tmp_path: Path) -> None:
    out = tmp_path / "study.bundle.zip"
    assert benchpack("bundle", DEMO, "--out", out, home=tmp_path).returncode == 0
    out.write_bytes(out.read_bytes()[:-100])
    done = benchpack("check", out, home=tmp_path)
    assert done.returncode == 1
    (line,) = done.stderr.splitlines()
    assert "no zip archive, or it is damaged or cut off" in line


def test_a_workbook_holds_formulas_and_the_fingerprint(tmp_path: Path) -> None:
    out = tmp_path / "study.xlsx"
    done = benchpack("workbook", DEMO, "--out", out, home=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout == f"written to {out}\n"
    book = Workbook(out)
    cells = [
        str(cell) for name in book.names for row in book.rows(name) for cell in row
    ]
    assert any(
        demo_fingerprint(0).replace(" ", "") in c.replace(" ", "") for c in cells
    )
    assert "Avocet 81" in cells
    assert {"Programme", "By year", "Price", "Vehicle"} <= set(book.names)


def test_a_workbook_of_a_study_without_changes(tmp_path: Path) -> None:
    out = tmp_path / "study.xlsx"
    done = benchpack("workbook", DEMO, "--study", SECOND, "--out", out, home=tmp_path)
    assert done.returncode == 0, done.stderr
    assert out.stat().st_size > 10_000


def test_a_brief_as_a_page_of_the_web(tmp_path: Path) -> None:
    out = tmp_path / "brief.html"
    done = benchpack("brief", DEMO, "--out", out, home=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    text = out.read_text(encoding="utf-8")
    assert "Avocet 81" in text
    assert "To be validated again" in text
    assert demo_fingerprint(0)[:4] in text
    other = tmp_path / "other.html"
    chosen = ("--leave-out", "assumptions", "checks", "--add", "target")
    done = benchpack("brief", DEMO, "--out", other, *chosen, home=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    rest = other.read_text(encoding="utf-8")
    for title in ("Assumptions and sources", "Checks that ask for a look"):
        assert title in text
        assert title not in rest
    assert "What the target hangs on" in rest
    assert "What the target hangs on" not in text


def test_only_colleagues_see_what_the_making_costs(tmp_path: Path) -> None:
    texts = []
    for audience in ("customer", "internal"):
        out = tmp_path / f"{audience}.html"
        call = ("brief", DEMO, "--out", out, "--audience", audience, "--add", "price")
        done = benchpack(*call, home=tmp_path)
        assert done.returncode == 0, done.stderr
        texts.append(out.read_text(encoding="utf-8"))
    for title in ("Money per pack", "What the new part may cost"):
        assert title not in texts[0]
        assert title in texts[1]


@pytest.mark.parametrize(
    ("paper", "width_pt"), [((), 595), (("--paper", "Letter"), 612)]
)
def test_a_brief_on_paper(
    tmp_path: Path, paper: tuple[str, ...], width_pt: int
) -> None:
    """A4 is 210 mm wide, Letter 8.5 in; a point is an inch over 72."""
    out = tmp_path / "brief.pdf"
    done = benchpack("brief", DEMO, "--out", out, *paper, home=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    data = out.read_bytes()
    assert data.startswith(b"%PDF-")
    boxes = re.findall(rb"/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)", data)
    assert boxes
    assert {round(float(width)) for width, _ in boxes} == {width_pt}


@pytest.mark.parametrize(
    ("arguments", "code", "said"),
    [
        (("bundle", "DEMO"), 2, "--out"),
        (("bundle", "DEMO", "--out", "a.csv"), 2, "NAME.bundle.zip"),
        (("bundle", "DEMO", "--out", "none/a.zip"), 2, "there is no folder none"),
        (("bundle", "DEMO", "--out", "."), 2, "NAME.bundle.zip"),
        (("bundle", "DEMO", "--out", "folder.zip"), 2, "is a folder"),
        (("bundle", "own.zip", "--out", "own.zip"), 2, "would overwrite"),
        (("bundle", "missing", "--out", "a.zip"), 1, "no such file"),
        (("bundle", "DEMO", "--out", "a.zip", "--study", "x"), 1, "no study 'x'"),
        (("bundle", "packs.csv", "--out", "a.zip"), 1, "and so no bundle"),
        (("workbook", "DEMO", "--out", "a.pdf"), 2, "NAME.xlsx"),
        (("workbook", "own.zip", "--out", "own.zip"), 2, "NAME.xlsx"),
        (("workbook", "packs.csv", "--out", "a.xlsx"), 1, "and so no workbook"),
        (("brief", "DEMO", "--out", "a.docx"), 2, "NAME.pdf or NAME.html"),
        (("brief", "DEMO", "--out", "a.pdf", "--audience", "all"), 2, "--audience"),
        (("brief", "DEMO", "--out", "a.pdf", "--paper", "A3"), 2, "--paper"),
        (
            ("brief", "DEMO", "--out", "a.pdf", "--leave-out", "cautions"),
            2,
            "cannot be left out",
        ),
        (
            ("brief", "DEMO", "--out", "a.pdf", "--leave-out", "programme"),
            2,
            "'programme' is out unless --add names it",
        ),
        (
            ("brief", "DEMO", "--out", "a.pdf", "--leave-out", "ledgers"),
            2,
            "Did you mean 'ledger'?",
        ),
        (("brief", "packs.csv", "--out", "a.pdf"), 1, "and so no brief"),
    ],
)
def test_a_call_that_cannot_be_so(
    tmp_path: Path, arguments: tuple[str, ...], code: int, said: str
) -> None:
    text = "pack,energy [kWh],mass [kg]\nHeron 70,70,460\n"
    (tmp_path / "packs.csv").write_text(text, encoding="utf-8")
    (tmp_path / "own.zip").write_bytes(b"x")
    (tmp_path / "folder.zip").mkdir()
    before = sorted(tmp_path.iterdir())
    call = [DEMO if word == "DEMO" else word for word in arguments]
    done = benchpack(*call, home=tmp_path)
    assert done.returncode == code, done.stderr
    assert said in done.stderr
    assert "Traceback" not in done.stderr
    assert done.stdout == ""
    assert sorted(tmp_path.iterdir()) == before
