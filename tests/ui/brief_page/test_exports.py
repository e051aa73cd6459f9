"""What is handed over: every file is written whole, asked about once, or not at all."""

from __future__ import annotations

import csv
import json
import zipfile
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from pypdf import PdfReader
from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog, QWidget
from pytestqt.qtbot import QtBot

from benchpack.errors import Problem
from benchpack.files.reading import read_any
from benchpack.model.library import Library
from benchpack.results.fingerprint import fingerprint_of
from benchpack.ui.dialogs.replace_files import ReplaceDialog
from benchpack.ui.handover.handed_files import FILES
from benchpack.ui.handover.handing_over import EVERYTHING_KEY
from benchpack.ui.pages.brief.page import BriefPage
from benchpack.ui.tasks import BackgroundRunner
from benchpack.ui.workspace import Workspace
from tests.ui.brief_page.conftest import MakePage
from tests.ui.changes.conftest import changed_library

LEFT = Qt.MouseButton.LeftButton
MakeWorkspace = Callable[[Library], Workspace]
STUDY = "Study"


class Told(QObject):
    """Remembers what the person is told."""

    def __init__(self, workspace: Workspace) -> None:
        super().__init__()
        self.remarks: list[str] = []
        self.problems: list[Problem] = []
        workspace.notifier.said.connect(self._on_said)
        workspace.notifier.problems_found.connect(self._on_problems_found)

    def _on_said(self, text: str) -> None:
        self.remarks.append(text)

    def _on_problems_found(self, _heading: str, problems: tuple[Problem, ...]) -> None:
        self.problems.extend(problems)


@pytest.fixture
def told(workspace: Workspace) -> Told:
    return Told(workspace)


def answer_file(monkeypatch: pytest.MonkeyPatch, path: Path | str) -> list[str]:
    """Answer the file dialog; gives a list of the names it was opened with."""
    offered: list[str] = []

    def answer(_parent: QWidget, _title: str, name: str, kind: str) -> tuple[str, str]:
        offered.append(name)
        return str(path), kind

    monkeypatch.setattr(QFileDialog, "getSaveFileName", answer)
    return offered


def answer_folder(monkeypatch: pytest.MonkeyPatch, folder: Path | str) -> None:
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(folder))


def click(page: BriefPage, key: str) -> None:
    button = page.side.exports.buttons[key]
    page.side.area.ensureWidgetVisible(button)
    QTest.mouseClick(button, LEFT)


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def rows(path: Path) -> list[dict[str, str]]:
    schema = json.loads(path.with_suffix(".schema.json").read_text("utf-8"))
    with path.open(encoding="utf-8", newline="") as file:
        reader = csv.DictReader(file)
        assert reader.fieldnames == [field["name"] for field in schema["fields"]]
        return list(reader)


def test_the_brief_as_pdf(
    page: BriefPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, told: Told
) -> None:
    offered = answer_file(monkeypatch, tmp_path / "mine.pdf")
    click(page, "pdf")
    assert Path(offered[0]).name == f"{STUDY} brief.pdf"
    reader = PdfReader(tmp_path / "mine.pdf")
    assert len(reader.pages) == page.view.preview.page_count
    text = " ".join(sheet.extract_text() for sheet in reader.pages)
    assert "Avocet 81 against Dunlin 74" in text
    assert "Money per pack" not in text
    assert told.remarks == [f"Written: {tmp_path / 'mine.pdf'}"]


def test_the_brief_is_written_as_it_was_chosen(
    page: BriefPage, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    answer_file(monkeypatch, tmp_path / "mine")
    with qtbot.waitSignal(page.desk.found):
        page.workspace.change_settings(
            brief_audience="internal", brief_paper="Letter", brief_left_out=("checks",)
        )
    click(page, "pdf")
    reader = PdfReader(tmp_path / "mine.pdf")
    assert reader.pages[0].mediabox.width == pytest.approx(612, abs=1)
    text = " ".join(sheet.extract_text() for sheet in reader.pages)
    assert "Money per pack" in text
    assert "Checks that ask for a look" not in text


def test_the_brief_as_web_page(
    page: BriefPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    answer_file(monkeypatch, tmp_path / "mine.html")
    click(page, "web")
    text = (tmp_path / "mine.html").read_text("utf-8")
    assert "<svg" in text
    assert "To be validated again" in text


def test_the_workbook(
    page: BriefPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    answer_file(monkeypatch, tmp_path / "mine.xlsx")
    click(page, "workbook")
    with zipfile.ZipFile(tmp_path / "mine.xlsx") as archive:
        sheets = archive.read("xl/workbook.xml").decode()
    assert "Assumptions" in sheets


@pytest.mark.parametrize(
    ("key", "column", "first"),
    [
        ("gaps", "reference", "Dunlin 74"),
        ("parts", "part", "cell"),
        ("joints", "joint", "lid screws"),
        ("ledger", "change", "fewer lid screws"),
    ],
)
def test_the_tables(
    page: BriefPage,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    key: str,
    column: str,
    first: str,
) -> None:
    answer_file(monkeypatch, tmp_path / "mine.csv")
    click(page, key)
    assert rows(tmp_path / "mine.csv")[0][column] == first
    assert names(tmp_path) == ["mine.csv", "mine.schema.json"]


def test_the_bundle_yields_the_same_fingerprint(
    page: BriefPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    answer_file(monkeypatch, tmp_path / "mine")
    click(page, "bundle")
    reading = read_any(tmp_path / "mine.bundle.zip", needs="packs")
    assert not [one for one in reading.problems if "fingerprint" in one.what]
    study = reading.library.study(STUDY)
    assert study is not None
    shown = page.desk.shown
    assert shown is not None
    found = fingerprint_of(reading.library, study)
    assert found == shown.pages.brief.fingerprint


@pytest.mark.parametrize("key", [file.key for file in FILES])
def test_nothing_is_written_where_the_dialog_is_left(
    page: BriefPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, key: str
) -> None:
    monkeypatch.chdir(tmp_path)
    answer_file(monkeypatch, "")
    click(page, key)
    assert names(tmp_path) == []


@pytest.mark.parametrize("key", [file.key for file in FILES])
def test_a_place_that_is_not_there_is_said_with_a_remedy(
    page: BriefPage,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    told: Told,
    key: str,
) -> None:
    answer_file(monkeypatch, tmp_path / "gone" / "mine")
    click(page, key)
    (problem,) = told.problems
    assert str(tmp_path / "gone") in problem.source
    assert problem.remedy
    assert told.remarks == []
    assert names(tmp_path) == []


def bare_library() -> Library:
    """Give packs and a study of them, and nothing else."""
    return replace(changed_library(), parts={}, joints={}, changes={})


def test_what_cannot_be_written_says_why(
    make_workspace: MakeWorkspace, make_page: MakePage
) -> None:
    page = make_page(make_workspace(bare_library()))
    exports = page.side.exports
    for key, reason in (
        ("parts", "No parts of Avocet 81 are recorded."),
        ("joints", "No joints of Avocet 81 are recorded."),
        ("ledger", "The study has no changes."),
    ):
        assert not exports.buttons[key].isEnabled()
        assert exports.lines[key].text() == reason
        assert exports.buttons[key].accessibleDescription() == reason
    assert exports.buttons["pdf"].isEnabled()


def test_everything_goes_into_one_folder(
    page: BriefPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, told: Told
) -> None:
    answer_folder(monkeypatch, tmp_path)
    QTest.mouseClick(page.side.everything_button, LEFT)
    written = names(tmp_path)
    wanted = {name for file in FILES for name in file.names(STUDY)}
    charts = {name for name in written if " chart, " in name}
    assert set(written) == wanted | charts
    assert {Path(name).suffix for name in charts} == {".png", ".svg"}
    stems = {Path(name).stem for name in charts}
    assert len(charts) == 2 * len(stems)
    assert {f"{STUDY} chart, gaps", f"{STUDY} chart, proposal"} <= stems
    assert f"{STUDY} chart, programme" not in stems
    for name in charts:
        if name.endswith(".png"):
            image = QImage(str(tmp_path / name))
            assert image.width() == 1920
        else:
            assert "<svg" in (tmp_path / name).read_text("utf-8")
    assert told.problems == []
    assert told.remarks[-1].startswith(f"Written: {len(written)} files to {tmp_path}")
    assert "workbook, tables and bundle hold costs." in told.remarks[-1]


def test_internal_charts_go_with_an_internal_brief_alone(
    page: BriefPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, told: Told
) -> None:
    answer_folder(monkeypatch, tmp_path)
    outward = page.side.everything_line.text()
    assert "what a customer brief leaves out" in outward
    page.workspace.change_settings(brief_audience="internal")
    assert page.side.everything_line.text() in outward
    QTest.mouseClick(page.side.everything_button, LEFT)
    assert f"{STUDY} chart, programme.svg" in names(tmp_path)
    assert "left out" not in told.remarks[-1]


def ask_again(page: BriefPage) -> ReplaceDialog:
    QTest.mouseClick(page.side.everything_button, LEFT)
    dialog = page.findChild(ReplaceDialog)
    assert dialog is not None
    return dialog


def test_files_that_are_there_are_asked_about_once(
    page: BriefPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    answer_folder(monkeypatch, tmp_path)
    own = tmp_path / f"{STUDY} gaps.csv"
    own.write_text("mine")
    (tmp_path / f"{STUDY} brief.pdf").write_text("mine")
    dialog = ask_again(page)
    assert dialog.accept_button.text().replace("\u00a0", " ") == "Replace 2 files"
    QTest.mouseClick(dialog.cancel_button, LEFT)
    assert len(names(tmp_path)) == 2
    assert own.read_text() == "mine"
    qtbot.waitUntil(lambda: page.findChild(ReplaceDialog) is None)
    QTest.mouseClick(ask_again(page).accept_button, LEFT)
    assert rows(own)[0]["reference"] == "Dunlin 74"
    assert len(names(tmp_path)) > 20


def test_what_there_is_not_is_left_out_and_said(
    make_workspace: MakeWorkspace,
    make_page: MakePage,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    workspace = make_workspace(bare_library())
    told, page = Told(workspace), make_page(workspace)
    answer_folder(monkeypatch, tmp_path)
    QTest.mouseClick(page.side.everything_button, LEFT)
    written = names(tmp_path)
    assert f"{STUDY} gaps.csv" in written
    assert not [name for name in written if "joints" in name or "ledger" in name]
    assert "No joints of Avocet 81 are recorded." in told.remarks[-1]


def test_a_file_that_fails_leaves_nothing_of_the_others(
    page: BriefPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, told: Told
) -> None:
    (tmp_path / f"{STUDY} gaps.csv").mkdir()
    answer_folder(monkeypatch, tmp_path)
    QTest.mouseClick(ask_again(page).accept_button, LEFT)
    (problem,) = told.problems
    assert problem.source == str(tmp_path / f"{STUDY} gaps.csv")
    assert names(tmp_path) == [f"{STUDY} gaps.csv"]


@pytest.fixture
def background(workspace: Workspace) -> Iterator[BackgroundRunner]:
    """Give the runner that works in the background, in place of the direct one."""
    runner = BackgroundRunner()
    workspace.runner = runner
    yield runner
    runner.shut_down()


def test_everything_in_the_background_tells_how_far_it_is(
    background: BackgroundRunner,
    page: BriefPage,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    told: Told,
    qtbot: QtBot,
) -> None:
    steps: list[tuple[int, int, str]] = []

    def keep(key: str, done: int, total: int, said: str) -> None:
        if key == EVERYTHING_KEY:
            steps.append((done, total, said))

    background.progressed.connect(keep)
    answer_folder(monkeypatch, tmp_path)
    QTest.mouseClick(page.side.everything_button, LEFT)
    qtbot.waitUntil(lambda: bool(told.remarks), timeout=20_000)
    assert told.problems == []
    assert f"{STUDY} brief.pdf" in names(tmp_path)
    assert [done for done, _, _ in steps] == list(range(steps[0][1]))
    assert "Drawing the chart, gaps" in [said for _, _, said in steps]


def test_everything_that_is_stopped_leaves_nothing(
    background: BackgroundRunner,
    page: BriefPage,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    told: Told,
    qtbot: QtBot,
) -> None:
    (tmp_path / "own.txt").write_text("stays")
    reached: list[int] = []

    def stop(key: str, done: int, total: int, said: str) -> None:
        del total, said
        if key == EVERYTHING_KEY and done == 5:
            reached.append(done)
            background.cancel(key)

    background.progressed.connect(stop)
    answer_folder(monkeypatch, tmp_path)
    QTest.mouseClick(page.side.everything_button, LEFT)
    qtbot.waitUntil(lambda: bool(reached), timeout=20_000)
    qtbot.waitUntil(lambda: names(tmp_path) == ["own.txt"], timeout=20_000)
    background.shut_down()
    QApplication.processEvents()
    assert names(tmp_path) == ["own.txt"]
    assert told.remarks == []
    assert told.problems == []
