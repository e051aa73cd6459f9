"""The dialog that takes a loose table in."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QCheckBox, QComboBox, QLabel, QRadioButton
from pytestqt.qtbot import QtBot

from benchpack.files.tables import read_sheet
from benchpack.ui.dialogs.import_table import ImportDialog
from benchpack.ui.tasks import BackgroundRunner
from benchpack.ui.workspace import Workspace
from tests.ui.dialogs.small_library import Said

CLEAN = """pack;mass [lb];energy [MJ];bench remark
Ruff 70;987,6;252;dented
Godwit 66;950,5;237,6;
"""
TAKEN = """pack,mass [kg],energy [kWh]
Ruff 70,448,70
Avocet 81,490,80
"""
UNKNOWN = """thing,heavy,E1
Ruff 70,987.6,70
"""


class Asked:
    """Opens the dialog for a text as a file would."""

    def __init__(self, qtbot: QtBot, workspace: Workspace, folder: Path) -> None:
        self._qtbot, self._workspace, self._folder = qtbot, workspace, folder

    def __call__(self, text: str) -> ImportDialog:
        path = self._folder / "bench list.csv"
        path.write_text(text, encoding="utf-8")
        dialog = ImportDialog(self._workspace, path, sheet=read_sheet(path))
        self._qtbot.addWidget(dialog)
        dialog.show()
        return dialog


@pytest.fixture
def ask(qtbot: QtBot, workspace: Workspace, tmp_path: Path) -> Asked:
    return Asked(qtbot, workspace, tmp_path)


def labels(dialog: ImportDialog) -> list[str]:
    return [w.text() for w in dialog.findChildren(QLabel) if not w.isHidden()]


def choose(box: QComboBox, text: str) -> None:
    """Choose an entry with the keyboard."""
    box.setFocus()
    for _ in range(box.count()):
        QTest.keyClick(box, Qt.Key.Key_Up)
    for _ in range(box.findText(text)):
        QTest.keyClick(box, Qt.Key.Key_Down)
    assert box.currentText() == text


def radio(dialog: ImportDialog, text: str) -> QRadioButton:
    return next(b for b in dialog.findChildren(QRadioButton) if b.text() == text)


def test_a_clean_table_takes_one_key(
    ask: Asked, workspace: Workspace, said: Said
) -> None:
    dialog = ask(CLEAN)
    assert dialog.accept_button.text() == "Add 2\u00a0packs"
    QTest.keyClick(dialog, Qt.Key.Key_Return)
    assert not dialog.isVisible()
    packs = workspace.state.library.packs
    ruff = packs.get("Ruff 70")
    assert ruff is not None
    assert ruff.mass_kg == pytest.approx(987.6 * 0.45359237, rel=1e-15)
    assert ruff.energy_kwh == pytest.approx(70.0, rel=1e-15)
    assert ruff.note == "bench remark: dented"
    assert workspace.document.undo_label == "import of bench list.csv"
    assert said.remarks[-1] == ("2\u00a0packs read from bench list.csv, no row refused")
    assert said.lists == []
    workspace.undo()
    assert len(workspace.state.library.packs) == 4


def test_escape_takes_nothing(ask: Asked, workspace: Workspace) -> None:
    dialog = ask(CLEAN)
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    assert not dialog.isVisible()
    assert len(workspace.state.library.packs) == 4


def test_a_refused_row_is_counted_marked_and_listed(ask: Asked, said: Said) -> None:
    dialog = ask(TAKEN)
    assert "2\u00a0rows read, 1 will be refused." in labels(dialog)
    model = dialog.preview_table.model()
    assert [model.index(row, 0).data() for row in (0, 1)] == ["taken", "refused"]
    name = model.index(1, 1)
    assert name.data(Qt.ItemDataRole.DecorationRole) is not None
    assert "already" in name.data(Qt.ItemDataRole.ToolTipRole)
    QTest.mouseClick(dialog.accept_button, Qt.MouseButton.LeftButton)
    heading, problems = said.lists[-1]
    assert heading == "1\u00a0pack read from bench list.csv, 1\u00a0row refused"
    assert [(p.row, p.column) for p in problems] == [(3, "pack")]


def test_packs_of_the_same_name_can_be_replaced(
    ask: Asked, workspace: Workspace
) -> None:
    dialog = ask(TAKEN)
    QTest.mouseClick(dialog.findChildren(QCheckBox)[0], Qt.MouseButton.LeftButton)
    assert "2\u00a0rows read, none will be refused." in labels(dialog)
    QTest.mouseClick(dialog.accept_button, Qt.MouseButton.LeftButton)
    avocet = workspace.state.library.packs.get("Avocet 81")
    assert avocet is not None
    assert avocet.mass_kg == 490
    assert len(workspace.state.library.packs) == 5


def test_unknown_heads_are_assigned_by_hand(ask: Asked, workspace: Workspace) -> None:
    dialog = ask(UNKNOWN)
    assert not dialog.accept_button.isEnabled()
    assert any("as pack and as energy and as mass" in text for text in labels(dialog))
    columns = dialog.columns_field
    for at, meaning in enumerate(("pack", "mass", "energy")):
        choose(columns.meanings[at], f"{meaning} (needed)")
    choose(columns.units[1], "lb")
    assert dialog.accept_button.text() == "Add 1\u00a0pack"
    QTest.mouseClick(dialog.accept_button, Qt.MouseButton.LeftButton)
    ruff = workspace.state.library.packs.get("Ruff 70")
    assert ruff is not None
    assert ruff.mass_kg == pytest.approx(987.6 * 0.45359237, rel=1e-15)


def test_two_columns_of_one_meaning_have_to_be_settled(ask: Asked) -> None:
    dialog = ask(CLEAN)
    meanings = dialog.columns_field.meanings
    choose(meanings[3], "mass (needed)")
    assert any("Several columns are read as mass." in t for t in labels(dialog))
    assert not dialog.accept_button.isEnabled()
    choose(meanings[1], "kept in the note")
    assert dialog.plan.mapping.column_of("mass_kg") == 3
    assert dialog.plan.fault() == ""


def test_the_decimal_mark_can_be_overruled(ask: Asked) -> None:
    dialog = ask("pack;mass [kg];energy [kWh]\nRuff 70;1.448;70\n")
    model = dialog.preview_table.model()
    assert model.index(0, 2).data() == "1.4"
    box = next(
        b
        for b in dialog.findChildren(QComboBox)
        if b.accessibleName() == "Decimal mark"
    )
    choose(box, "comma")
    assert model.index(0, 2).data() == "1\u2009448.0"


def test_a_new_library_is_written_and_opened(ask: Asked, workspace: Workspace) -> None:
    dialog = ask(TAKEN)
    button = radio(dialog, "Open as a new library")
    button.setFocus()
    QTest.keyClick(button, Qt.Key.Key_Space)
    assert dialog.accept_button.text() == "Open with 2\u00a0packs"
    QTest.mouseClick(dialog.accept_button, Qt.MouseButton.LeftButton)
    path = workspace.document.path
    assert path is not None
    assert path.is_file()
    assert workspace.state.library.title == "bench list"
    assert workspace.state.library.packs.names.tolist() == ["Ruff 70", "Avocet 81"]
    assert workspace.settings.recent_files[0] == str(path)


def test_parts_go_to_the_open_library_only(ask: Asked, workspace: Workspace) -> None:
    dialog = ask("pack,part,mass each [kg],count\nAvocet 81,tray,20,1\n")
    assert not radio(dialog, "Open as a new library").isVisible()
    assert dialog.accept_button.text() == "Add 1\u00a0part"
    QTest.keyClick(dialog, Qt.Key.Key_Return)
    parts = workspace.state.library.parts_of("Avocet 81")
    assert [(part.name, part.mass_each_kg) for part in parts] == [("tray", 20)]


def test_what_the_table_holds_can_be_overruled(ask: Asked) -> None:
    dialog = ask("pack,part,mass each [kg],count\nAvocet 81,tray,20,1\n")
    box = next(
        b
        for b in dialog.findChildren(QComboBox)
        if b.accessibleName() == "What the table holds"
    )
    choose(box, "packs")
    assert dialog.plan.kind == "packs"
    assert not dialog.accept_button.isEnabled()


def test_many_rows_are_read_in_the_background(
    qtbot: QtBot, ask: Asked, workspace: Workspace, said: Said
) -> None:
    runner = BackgroundRunner()
    workspace.runner = runner
    rows = "".join(f"Pack {i},{400 + i % 50},{70 + i % 9}\n" for i in range(5_000))
    dialog = ask(f"pack,mass [kg],energy [kWh]\n{rows}")
    waiting = "Of the first 2\u2009000\u00a0rows, none will be refused."
    qtbot.waitUntil(lambda: waiting in labels(dialog), timeout=5000)
    assert dialog.accept_button.text() == "Add packs"
    QTest.keyClick(dialog, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: bool(said.remarks), timeout=10_000)
    runner.shut_down()
    assert len(workspace.state.library.packs) == 5_004
    assert said.remarks[-1].startswith("5\u2009000\u00a0packs read")
