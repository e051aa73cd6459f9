"""A drive cycle is read by the button and by dropping a file."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog
from pytestqt.qtbot import QtBot

from benchpack.errors import Problem
from benchpack.model.drive_cycle import parse_cycle
from benchpack.model.library import Library
from benchpack.model.worth_words import EnergyFrom
from benchpack.session.document import Document
from benchpack.session.settings import Settings
from benchpack.session.state import State
from benchpack.ui.notify import Notifier
from benchpack.ui.pages.worth.assumption_panel import AssumptionPanel
from benchpack.ui.tasks import Token
from benchpack.ui.workspace import Workspace
from tests.ui.changes.test_outcome import HeldRunner
from tests.ui.conftest import small_library
from tests.ui.worth.panels import shown_panel, study_of


@pytest.fixture
def library() -> Library:
    """Give the small library, whose study has no proposal and no volume."""
    return small_library()


@pytest.fixture
def panel(qtbot: QtBot, workspace: Workspace) -> AssumptionPanel:
    """Give the panel over the small library."""
    return shown_panel(qtbot, workspace)


def cycle_file(folder: Path, text: str = "") -> Path:
    path = folder / "hill road.csv"
    rows = "".join(f"{t},{v}\n" for t, v in ((0, 0), (10, 50), (20, 50), (30, 0)))
    path.write_text(text or "time [s],speed [km/h]\n" + rows, encoding="utf-8")
    return path


def test_a_file_that_is_read_takes_back_what_was_wrong_before(
    panel: AssumptionPanel, tmp_path: Path, qtbot: QtBot
) -> None:
    bad = cycle_file(tmp_path, "time [s],speed [km/h]\n0,0\n1,fast\n")
    told: list[tuple[str, int]] = []

    def note(heading: str, problems: tuple[Problem, ...]) -> None:
        told.append((heading, len(problems)))

    panel.workspace.notifier.problems_found.connect(note)
    panel.cycle.read_file(bad)
    assert told == [("Not read: hill road.csv", 1)]
    assert "fast" in panel.cycle.error_text
    panel.cycle.read_file(cycle_file(tmp_path))
    assert ("Not read: hill road.csv", 0) in told
    assert panel.cycle.error_text == ""


def test_the_button_reads_a_drive_cycle_in_one_step(
    panel: AssumptionPanel, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = str(cycle_file(tmp_path))
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (path, ""))
    QTest.mouseClick(panel.cycle.read, Qt.MouseButton.LeftButton)
    cycle = parse_cycle(study_of(panel).drive_cycle)
    assert cycle is not None
    assert (cycle.name, cycle.step_s) == ("hill road", 10.0)
    assert study_of(panel).energy_from is EnergyFrom.CYCLE
    assert "hill road" in panel.cycle.said.text()
    assert panel.workspace.document.undo_label == "drive cycle hill road"
    QTest.mouseClick(panel.cycle.forget, Qt.MouseButton.LeftButton)
    assert study_of(panel).drive_cycle == ""
    assert study_of(panel).energy_from is EnergyFrom.GIVEN
    assert panel.cycle.forget.isHidden()


def test_a_dropped_file_is_read(panel: AssumptionPanel, tmp_path: Path) -> None:
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(cycle_file(tmp_path)))])
    copy = Qt.DropAction.CopyAction
    no_keys = Qt.KeyboardModifier.NoModifier
    left = Qt.MouseButton.LeftButton
    entering = QDragEnterEvent(QPointF(20, 20).toPoint(), copy, mime, left, no_keys)
    panel.dragEnterEvent(entering)
    assert entering.isAccepted()
    panel.dropEvent(QDropEvent(QPointF(20, 20), copy, mime, left, no_keys))
    assert study_of(panel).energy_from is EnergyFrom.CYCLE


def test_what_is_done_to_a_cycle_is_told(
    panel: AssumptionPanel, tmp_path: Path
) -> None:
    told: list[tuple[str, tuple[Problem, ...]]] = []
    panel.workspace.notifier.problems_found.connect(
        lambda head, problems: told.append((head, problems))
    )
    panel.cycle.read_file(cycle_file(tmp_path, "time,speed\n0,0\n1,9\n5,0\n"))
    heading, (note,) = told[-1]
    assert heading == "Read from hill road.csv"
    assert "uneven" in note.what


def test_a_file_that_is_no_cycle_is_refused_where_it_was_asked_for(
    panel: AssumptionPanel, tmp_path: Path
) -> None:
    before = study_of(panel)
    panel.cycle.read_file(
        cycle_file(tmp_path, "time [s],speed [km/h]\n0,0\n1,fast\n2,0\n")
    )
    said = panel.cycle.error_text
    for words in ("hill road.csv, row 3, column speed [km/h]", "fast"):
        assert words in said
    assert study_of(panel) is before
    panel.cycle.read_file(cycle_file(tmp_path))
    assert panel.cycle.error_text == ""


def two_studies() -> Library:
    """Give the small library with a second study."""
    library = small_library()
    (first,) = library.studies
    return replace(library, studies=(first, replace(first, name="other")))


@pytest.fixture
def waiting(qtbot: QtBot, qapp: object) -> AssumptionPanel:
    """Give the panel whose work in the background waits."""
    library = two_studies()
    document = Document(State(library, library.first_study().name))
    workspace = Workspace(
        document, runner=HeldRunner(), notifier=Notifier(), settings=Settings()
    )
    return shown_panel(qtbot, workspace)


def held_by(panel: AssumptionPanel) -> HeldRunner:
    runner = panel.workspace.runner
    assert isinstance(runner, HeldRunner)
    return runner


def remarks_of(panel: AssumptionPanel) -> list[str]:
    """Give a list that grows with every remark."""
    said: list[str] = []
    panel.workspace.notifier.said.connect(said.append)
    return said


def test_a_cycle_read_for_another_study_is_not_taken(
    waiting: AssumptionPanel, tmp_path: Path
) -> None:
    workspace, said = waiting.workspace, remarks_of(waiting)
    asked = study_of(waiting).name
    waiting.cycle.read_file(cycle_file(tmp_path))
    workspace.document.apply("study", replace(workspace.state, study_name="other"))
    before = workspace.state.library
    held_by(waiting).let_go("drive cycle")
    assert workspace.state.library is before
    assert said == [f"hill road.csv was read for {asked}, which is no longer open"]


def test_a_cycle_read_for_another_document_is_not_taken(
    waiting: AssumptionPanel, tmp_path: Path
) -> None:
    """The other document has a study of the same name; the work ends all the same."""
    workspace, runner, said = waiting.workspace, held_by(waiting), remarks_of(waiting)
    waiting.cycle.read_file(cycle_file(tmp_path))
    work, done = runner.held["drive cycle"]
    other = two_studies()
    workspace.open_document(Document(State(other, other.first_study().name)))
    assert "drive cycle" not in runner.held
    done(work(Token(lambda *_: None)))
    assert workspace.state.library is other
    assert "no longer open" in said[-1]


def test_a_cycle_read_for_the_study_on_screen_is_taken(
    waiting: AssumptionPanel, tmp_path: Path
) -> None:
    waiting.cycle.read_file(cycle_file(tmp_path))
    waiting.workspace.edit("target", lambda state: state.with_study(target_kg=2.0))
    held_by(waiting).let_go("drive cycle")
    assert study_of(waiting).energy_from is EnergyFrom.CYCLE


def test_a_fault_of_another_library_s_file_goes_with_it(
    panel: AssumptionPanel, tmp_path: Path
) -> None:
    panel.cycle.read_file(cycle_file(tmp_path, "time [s],speed [km/h]\n0,0\n1,fast\n"))
    assert panel.cycle.error_text
    other = two_studies()
    panel.workspace.open_document(Document(State(other, other.first_study().name)))
    assert panel.cycle.error_text == ""
