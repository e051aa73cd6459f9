from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from benchpack.model.pack import PACK_FIELD
from benchpack.ui.forms.record_dialog import RecordDialog
from benchpack.ui.tables.columns import recorded_column
from benchpack.units.formatting import NumberStyle


def test_the_button_says_what_it_does(qtbot: QtBot) -> None:
    style = NumberStyle()
    columns = [recorded_column(PACK_FIELD["name"], style)]
    taken: list[object] = []

    def submit(values: object) -> tuple[()]:
        taken.append(values)
        return ()

    dialog = RecordDialog("Add pack", columns, style=style, submit=submit)
    qtbot.addWidget(dialog)
    dialog.show()
    assert dialog.accept_button.text() == "Add pack"
    assert dialog.accept_button.isDefault()
    QTest.mouseClick(dialog.cancel_button, Qt.MouseButton.LeftButton)
    assert not dialog.isVisible()
    assert taken == []
