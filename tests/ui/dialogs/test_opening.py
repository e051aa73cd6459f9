"""Opening whatever is dropped on the window."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QComboBox, QWidget
from pytestqt.qtbot import QtBot

from benchpack.files.package import write_package
from benchpack.files.reading import write_any
from benchpack.model.joint import Joint
from benchpack.session.document import Document
from benchpack.session.opening import new_library
from benchpack.ui.dialogs.import_table import ImportDialog
from benchpack.ui.dialogs.opening import Opening, open_any
from benchpack.ui.dialogs.taking_in import IMPORT_KEY, Intake
from benchpack.ui.dialogs.whole_library import WholeLibraryDialog
from benchpack.ui.tasks import BackgroundRunner
from benchpack.ui.workspace import Workspace
from tests.ui.dialogs.small_library import Said, small_state


@pytest.fixture
def window(qtbot: QtBot) -> QWidget:
    made = QWidget()
    qtbot.addWidget(made)
    made.show()
    return made


def whole_dialog(window: QWidget) -> WholeLibraryDialog:
    dialog = window.findChild(WholeLibraryDialog)
    assert dialog is not None
    return dialog


def import_dialog(window: QWidget) -> ImportDialog:
    dialog = window.findChild(ImportDialog)
    assert dialog is not None
    return dialog


def test_a_library_file_opens_as_it_is(
    workspace: Workspace, window: QWidget, tmp_path: Path
) -> None:
    path = tmp_path / "bench.benchpack"
    new_library(small_state().library, path).close()
    open_any(workspace, path, window)
    assert workspace.document.path == path
    assert workspace.settings.recent_files[0] == str(path)


def test_the_open_library_is_not_opened_twice(
    workspace: Workspace, window: QWidget, tmp_path: Path, said: Said
) -> None:
    path = tmp_path / "bench.benchpack"
    new_library(small_state().library, path).close()
    open_any(workspace, path, window)
    document = workspace.document
    open_any(workspace, path, window)
    assert workspace.document is document
    assert said.remarks[-1] == "bench.benchpack is open already"


def test_a_package_is_added_or_opened(
    workspace: Workspace, window: QWidget, tmp_path: Path, said: Said
) -> None:
    write_package(small_state().library, tmp_path / "out", currency="EUR")
    open_any(workspace, tmp_path / "out", window)
    dialog = whole_dialog(window)
    QTest.mouseClick(dialog.add_button, Qt.MouseButton.LeftButton)
    assert len(workspace.state.library.packs) == 4
    assert workspace.document.undo_label == "import of out"
    assert said.remarks[-1] == "4\u00a0packs read from out"


@pytest.mark.parametrize(("currency", "may_add"), [("EUR", True), ("USD", False)])
def test_money_of_another_currency_is_not_added(
    workspace: Workspace, window: QWidget, tmp_path: Path, currency: str, may_add: bool
) -> None:
    joint = Joint("Avocet 81", "screw", mass_each_g=8.0, cost_each=0.2)
    library = replace(small_state().library, joints={"Avocet 81": (joint,)})
    write_package(library, tmp_path / "out", currency=currency)
    open_any(workspace, tmp_path / "out", window)
    dialog = whole_dialog(window)
    assert dialog.add_button.isEnabled() is may_add
    assert dialog.accept_button.isEnabled()


def test_a_library_that_is_stopped_while_it_opens_is_let_go(
    qtbot: QtBot,
    workspace: Workspace,
    window: QWidget,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    path = tmp_path / "bench.benchpack"
    new_library(small_state().library, path).close()
    before, runner = workspace.document, BackgroundRunner()
    workspace.runner = runner
    closed: list[Path | None] = []
    close = Document.close

    def noted_close(document: Document) -> None:
        closed.append(document.path)
        close(document)

    monkeypatch.setattr(Document, "close", noted_close)
    open_any(workspace, path, window)
    runner.cancel(IMPORT_KEY)
    qtbot.waitUntil(lambda: closed == [path])
    qtbot.waitUntil(lambda: window.findChildren(Opening) == [])
    runner.shut_down()
    assert workspace.document is before


def test_a_new_library_that_is_stopped_leaves_no_file(
    workspace: Workspace, tmp_path: Path
) -> None:
    intake = Intake(workspace, tmp_path / "list.csv", as_new=True)
    outcome = intake.made(small_state().library, (), sentence="", accepted=4)
    assert outcome.document is not None
    path = outcome.document.path
    assert path is not None
    assert path.is_file()
    intake.dropped(outcome)
    assert not path.exists()


def test_enter_opens_a_package_as_a_new_library(
    workspace: Workspace, window: QWidget, tmp_path: Path
) -> None:
    write_package(small_state().library, tmp_path / "out", currency="EUR")
    open_any(workspace, tmp_path / "out" / "datapackage.json", window)
    QTest.keyClick(whole_dialog(window), Qt.Key.Key_Return)
    assert workspace.document.path is not None
    assert workspace.state.library.packs == small_state().library.packs
    assert workspace.state.study == small_state().study


def test_a_workbook_of_a_library_is_taken_whole(
    workspace: Workspace, window: QWidget, tmp_path: Path
) -> None:
    path = tmp_path / "bench.xlsx"
    write_any(small_state().library, path, currency="EUR")
    open_any(workspace, path, window)
    assert whole_dialog(window).isVisible()


def test_a_loose_table_is_asked_about(
    workspace: Workspace, window: QWidget, tmp_path: Path
) -> None:
    path = tmp_path / "list.csv"
    path.write_text("pack,energy [kWh],mass [kg]\nRuff 70,70,448\n", encoding="utf-8")
    open_any(workspace, path, window)
    QTest.keyClick(import_dialog(window), Qt.Key.Key_Return)
    assert workspace.state.library.packs.has("Ruff 70")


def test_another_sheet_of_a_workbook_can_be_chosen(
    workspace: Workspace, window: QWidget, tmp_path: Path
) -> None:
    import xlsxwriter

    path = tmp_path / "lists.xlsx"
    with xlsxwriter.Workbook(path) as book:
        for name, pack in (("spring", "Ruff 70"), ("autumn", "Knot 55")):
            sheet = book.add_worksheet(name)
            sheet.write_row(0, 0, ["pack", "energy [kWh]", "mass [kg]"])
            sheet.write_row(1, 0, [pack, 70, 448])
    open_any(workspace, path, window)
    dialog = import_dialog(window)
    box = next(
        b
        for b in dialog.findChildren(QComboBox)
        if b.accessibleName() == "Sheet of the workbook"
    )
    box.setFocus()
    QTest.keyClick(box, Qt.Key.Key_Down)
    assert dialog.preview_table.model().index(0, 1).data() == "Knot 55"
    QTest.mouseClick(dialog.accept_button, Qt.MouseButton.LeftButton)
    assert workspace.state.library.packs.has("Knot 55")
    assert not workspace.state.library.packs.has("Ruff 70")


@pytest.mark.parametrize("name", ["missing.csv", "empty.csv", "picture.png", "x.json"])
def test_what_cannot_be_opened_is_listed(
    workspace: Workspace, window: QWidget, tmp_path: Path, said: Said, name: str
) -> None:
    contents = {"empty.csv": b"", "picture.png": b"\x89PNG\r\n", "x.json": b"{"}
    path = tmp_path / name
    if name in contents:
        path.write_bytes(contents[name])
    open_any(workspace, path, window)
    heading, problems = said.lists[-1]
    assert heading == f"Not opened: {name}"
    assert problems[0].what
    assert len(workspace.state.library.packs) == 4
