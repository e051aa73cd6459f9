"""A table of joints or parts alone that is opened or dropped on the window."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
import xlsxwriter
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QRadioButton, QWidget
from pytestqt.qtbot import QtBot

from benchpack.model.joint import Joint
from benchpack.model.part import Part
from benchpack.session.document import Document
from benchpack.session.opening import new_library, open_library
from benchpack.session.state import State
from benchpack.ui.catalogue import PAGES
from benchpack.ui.dialogs.import_table import ImportDialog
from benchpack.ui.dialogs.opening import open_any
from benchpack.ui.main_window import MainWindow
from benchpack.ui.workspace import Workspace
from tests.ui.dialogs.small_library import Said, small_state

JOINTS = """pack;joint;family;count;mass each [g]
Avocet 81;lid screws;flange screw;84;8,7
Avocet 81;clips;clip;12;1,5
Dunlin 74;clips;clip;10;1,5
Knot 1;clips;clip;10;1,5
"""
OLD = (
    Joint("Avocet 81", "lid screws", count=60, reason="as recorded"),
    Joint("Avocet 81", "bead", length_mm=900.0),
)
Drop = Callable[[Path], ImportDialog]


def stocked_state() -> State:
    """Give the small library, its first pack with joints and parts."""
    state = small_state()
    parts = (Part("Avocet 81", "tray", mass_each_kg=60.0), Part("Avocet 81", "lid"))
    return replace(
        state,
        library=replace(
            state.library, joints={"Avocet 81": OLD}, parts={"Avocet 81": parts}
        ),
    )


@pytest.fixture
def stocked(workspace: Workspace) -> Workspace:
    workspace.open_document(Document(stocked_state()))
    return workspace


@pytest.fixture
def drop(qtbot: QtBot, stocked: Workspace) -> Drop:
    """Drop a file on the real window and give the dialog that asks about it."""
    window = MainWindow(stocked, PAGES)
    qtbot.addWidget(window)
    window.show()

    def dropped(path: Path) -> ImportDialog:
        mime = QMimeData()
        mime.setUrls([QUrl.fromLocalFile(str(path))])
        event = QDropEvent(
            QPointF(300, 300),
            Qt.DropAction.CopyAction,
            mime,
            Qt.MouseButton.LeftButton,
            Qt.KeyboardModifier.NoModifier,
        )
        window.dropEvent(event)
        QApplication.processEvents()
        return dialog_of(window)

    return dropped


def dialog_of(window: QWidget) -> ImportDialog:
    dialog = window.findChild(ImportDialog)
    assert dialog is not None
    return dialog


def said_in(dialog: ImportDialog) -> str:
    labels = (w.text() for w in dialog.findChildren(QLabel) if w.isVisible())
    return " ".join(labels).replace("\u00a0", " ")


def names(workspace: Workspace, pack: str) -> list[tuple[str, int]]:
    joints = workspace.state.library.joints_of(pack)
    return [(joint.name, joint.count) for joint in joints]


def as_csv(folder: Path) -> Path:
    path = folder / "joints.csv"
    path.write_text(JOINTS, encoding="utf-8")
    return path


def as_tsv(folder: Path) -> Path:
    path = folder / "joints.tsv"
    path.write_text(JOINTS.replace(";", "\t"), encoding="utf-8")
    return path


def as_xlsx(folder: Path) -> Path:
    path = folder / "joints.xlsx"
    with xlsxwriter.Workbook(path) as book:
        sheet = book.add_worksheet("bench")
        for at, line in enumerate(JOINTS.splitlines()):
            sheet.write_row(at, 0, line.split(";"))
    return path


@pytest.mark.parametrize("write", [as_csv, as_tsv, as_xlsx])
def test_joints_that_are_dropped_join_their_packs(
    drop: Drop,
    stocked: Workspace,
    said: Said,
    tmp_path: Path,
    write: Callable[[Path], Path],
) -> None:
    path = write(tmp_path)
    dialog = drop(path)
    assert [b.text() for b in dialog.findChildren(QRadioButton) if b.isVisible()] == [
        "Add to this library"
    ]
    model = dialog.preview_table.model()
    verdicts = [model.index(row, 0).data() for row in range(model.rowCount())]
    assert verdicts == ["replaces", "taken", "taken", "refused"]
    words = said_in(dialog)
    assert "4 rows read, 1 will be refused. 1 replaces a joint of the same" in words
    assert "a joint whose name its pack has already takes that one's place" in words
    assert dialog.accept_button.text() == "Add 3\u00a0joints"
    QTest.keyClick(dialog, Qt.Key.Key_Return)
    assert names(stocked, "Avocet 81") == [
        ("lid screws", 84),
        ("bead", 1),
        ("clips", 12),
    ]
    assert names(stocked, "Dunlin 74") == [("clips", 10)]
    assert stocked.state.library.joints_of("Avocet 81")[0].reason == ""
    heading, problems = said.lists[-1]
    assert heading.replace("\u00a0", " ") == (
        f"3 joints read from {path.name}, 1 of them in place of another, 1 row refused"
    )
    assert [(p.row, p.column, p.value) for p in problems] == [(5, "pack", "Knot 1")]
    assert "no pack called 'Knot 1'" in problems[0].what
    stocked.undo()
    assert stocked.state.library == stocked_state().library
    assert stocked.document.undo_label == ""


def test_parts_that_are_opened_join_their_packs(
    qtbot: QtBot, stocked: Workspace, said: Said, tmp_path: Path
) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    path = tmp_path / "parts.csv"
    path.write_text("pack,part,mass each [kg]\nAvocet 81,lid,9\nAvocet 81,rib,1\n")
    open_any(stocked, path, window)
    QTest.keyClick(dialog_of(window), Qt.Key.Key_Return)
    parts = stocked.state.library.parts_of("Avocet 81")
    assert [(part.name, part.mass_each_kg) for part in parts] == [
        ("tray", 60.0),
        ("lid", 9.0),
        ("rib", 1.0),
    ]
    assert names(stocked, "Avocet 81") == [("lid screws", 60), ("bead", 1)]
    assert said.lists[-1:] == [] or said.lists[-1][1] == ()


@pytest.mark.parametrize("selected", ["", "Dunlin 74"])
def test_joints_without_a_pack_are_taken_for_the_one_that_is_shown(
    drop: Drop, stocked: Workspace, tmp_path: Path, selected: str
) -> None:
    """The selected pack, else the subject, as on the page of joints."""
    stocked.select(selected)
    pack = selected or "Avocet 81"
    path = tmp_path / "counted.csv"
    path.write_text("joint,family,count\nplate screws,socket screw,16\n")
    dialog = drop(path)
    assert f"all rows are taken for {pack}." in said_in(dialog)
    model = dialog.preview_table.model()
    assert model.headerData(1, Qt.Orientation.Horizontal) == "pack"
    assert model.index(0, 1).data() == pack
    QTest.keyClick(dialog, Qt.Key.Key_Return)
    assert names(stocked, pack)[-1] == ("plate screws", 16)


def test_a_row_that_is_refused_shows_the_pack_it_was_meant_for(
    drop: Drop, tmp_path: Path
) -> None:
    path = tmp_path / "counted.csv"
    path.write_text("joint,family,count\nnone,socket screw,0\n")
    dialog = drop(path)
    model = dialog.preview_table.model()
    assert [model.index(0, at).data() for at in range(3)] == [
        "refused",
        "Avocet 81",
        "none",
    ]
    assert not dialog.accept_button.isEnabled()


def test_what_was_added_is_on_disk(
    qtbot: QtBot, workspace: Workspace, tmp_path: Path
) -> None:
    library = tmp_path / "mine.benchpack"
    workspace.open_document(new_library(stocked_state().library, library))
    window = QWidget()
    qtbot.addWidget(window)
    open_any(workspace, as_csv(tmp_path), window)
    QTest.keyClick(dialog_of(window), Qt.Key.Key_Return)
    held = workspace.state.library.joints
    workspace.document.close()
    document = open_library(library)
    assert document.state.library.joints == held
    document.close()
