"""The problems panel: what it lists, where a row leads, what leaves it."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from PySide6.QtCore import QModelIndex, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog, QPushButton
from pytestqt.qtbot import QtBot

from benchpack.errors import Problem, Severity
from benchpack.ui.widgets.problems_model import REMEDY, WHAT, WHERE, ProblemsTableModel
from benchpack.ui.widgets.problems_panel import ProblemsPanel

MASS = Problem(
    "mass is empty.",
    "Fill it in.",
    source="packs.csv",
    row=4,
    column="mass [kg]",
    record="Avocet 81",
)
DOUBT = Problem(
    "voltage is 6 V, outside the usual 12 to 1500.",
    "Check the unit.",
    column="voltage [V]",
    record="Dunlin 74",
    severity=Severity.WARNING,
)
FORMULA = Problem("=1+1 is no number.", value="=1+1\tx\ny")


@pytest.fixture
def panel(qtbot: QtBot) -> ProblemsPanel:
    shown = ProblemsPanel()
    qtbot.addWidget(shown)
    shown.resize(1000, 240)
    return shown


def button(panel: ProblemsPanel, text: str) -> QPushButton:
    return next(b for b in panel.findChildren(QPushButton) if b.text() == text)


def texts(panel: ProblemsPanel, row: int) -> list[str]:
    model = panel.table.model()
    return [str(model.index(row, column).data()) for column in range(4)]


def test_rows_say_kind_place_complaint_and_remedy(panel: ProblemsPanel) -> None:
    panel.show_problems("packs.csv", (MASS, DOUBT))
    assert panel.isVisible()
    assert texts(panel, 0) == [
        "error",
        "packs.csv, row 4, column mass [kg]",
        "mass is empty.",
        "Fill it in.",
    ]
    assert texts(panel, 1)[:2] == ["warning", "Dunlin 74, column voltage [V]"]


def test_kind_is_told_by_sign_and_word(panel: ProblemsPanel) -> None:
    panel.show_problems("packs.csv", (MASS, DOUBT))
    model = panel.table.model()
    signs = [
        model.index(row, 0).data(Qt.ItemDataRole.DecorationRole).pixmap(16).toImage()
        for row in (0, 1)
    ]
    assert not signs[0].isNull()
    assert signs[0] != signs[1]


def test_enter_and_click_lead_to_the_place(qtbot: QtBot, panel: ProblemsPanel) -> None:
    panel.show_problems("packs.csv", (MASS, DOUBT))
    asked: list[tuple[str, str]] = []
    panel.place_requested.connect(lambda *place: asked.append(place))
    QTest.keyClick(panel.table, Qt.Key.Key_Down)
    QTest.keyClick(panel.table, Qt.Key.Key_Return)
    table = panel.table
    spot = table.visualRect(table.model().index(0, WHAT)).center()
    left = Qt.MouseButton.LeftButton
    QTest.mouseClick(table.viewport(), left, pos=spot)
    assert asked == [("Dunlin 74", "voltage [V]"), ("Avocet 81", "mass [kg]")]


def test_a_problem_without_a_record_leads_nowhere(
    qtbot: QtBot, panel: ProblemsPanel
) -> None:
    panel.show_problems("packs.csv", (FORMULA,))
    with qtbot.assertNotEmitted(panel.place_requested):
        QTest.keyClick(panel.table, Qt.Key.Key_Return)


def test_escape_and_an_empty_list_close_it(panel: ProblemsPanel) -> None:
    panel.show_problems("packs.csv", (MASS,))
    panel.table.setFocus()
    QTest.keyClick(panel.table, Qt.Key.Key_Escape)
    assert not panel.isVisible()
    panel.show_problems("packs.csv", (MASS,))
    panel.show_problems("packs.csv", ())
    assert not panel.isVisible()


def test_copy_all_gives_cells_without_breaks(
    qtbot: QtBot, panel: ProblemsPanel
) -> None:
    panel.show_problems("packs.csv", (MASS, FORMULA))
    QTest.mouseClick(button(panel, "Copy all"), Qt.MouseButton.LeftButton)
    lines = QGuiApplication.clipboard().text().split("\n")
    assert [len(line.split("\t")) for line in lines] == [8, 8, 8]
    assert lines[1].split("\t")[:4] == ["error", "packs.csv", "4", "mass [kg]"]
    assert lines[2].split("\t")[4] == "=1+1 x y"


def test_ctrl_c_copies_the_selected_rows(qtbot: QtBot, panel: ProblemsPanel) -> None:
    panel.show_problems("packs.csv", (MASS, DOUBT))
    panel.table.selectRow(1)
    QTest.keyClick(panel.table, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    text = QGuiApplication.clipboard().text()
    assert "Dunlin 74" in text
    assert "Avocet 81" not in text


def test_save_writes_a_table_that_no_spreadsheet_runs(
    qtbot: QtBot,
    panel: ProblemsPanel,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    path = tmp_path / "problems.csv"
    monkeypatch.setattr(
        QFileDialog, "getSaveFileName", lambda *_args, **_named: (str(path), "")
    )
    panel.show_problems("packs.csv", (MASS, FORMULA))
    QTest.mouseClick(button(panel, "Save as CSV…"), Qt.MouseButton.LeftButton)
    with path.open(encoding="utf-8", newline="") as file:
        head, first, second = csv.reader(file)
    assert head[:4] == ["kind", "source", "row", "column"]
    assert first[2] == "4"
    assert second[6] == "'=1+1 is no number."


def test_marks_in_a_file_are_shown_not_obeyed(panel: ProblemsPanel) -> None:
    panel.show_problems("x", (Problem("<b>bold</b> is no number."),))
    tip = panel.table.model().index(0, WHAT).data(Qt.ItemDataRole.ToolTipRole)
    assert "&lt;b&gt;" in tip


def test_text_is_made_for_visible_rows_only(
    qtbot: QtBot, panel: ProblemsPanel, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: set[int] = set()
    plain = ProblemsTableModel.cell_text

    def counted(model: ProblemsTableModel, row: int, column: int) -> str:
        asked.add(row)
        return plain(model, row, column)

    monkeypatch.setattr(ProblemsTableModel, "cell_text", counted)
    many = tuple(Problem(f"row {i} is bad.", row=i) for i in range(100_000))
    panel.show_problems("packs.csv", many)
    panel.grab()
    panel.table.scrollToBottom()
    panel.grab()
    assert 99_999 in asked
    assert len(asked) < 200
    assert texts(panel, 50_000)[WHERE] == "row 50000"
    assert texts(panel, 50_000)[REMEDY] == ""


def test_painting_does_not_ask_for_every_selected_row(
    qtbot: QtBot, panel: ProblemsPanel, monkeypatch: pytest.MonkeyPatch
) -> None:
    panel.show_problems("x", tuple(Problem("bad.", row=i) for i in range(100_000)))
    panel.table.selectAll()
    plain = ProblemsTableModel.rowCount
    calls: list[int] = []

    def counted(model: ProblemsTableModel, parent: QModelIndex | None = None) -> int:
        calls.append(1)
        return plain(model, parent or QModelIndex())

    monkeypatch.setattr(ProblemsTableModel, "rowCount", counted)
    panel.grab()
    assert len(calls) < 1000
    assert len(panel.table.selected_problems()) == 100_000


def test_the_whole_sentence_stands_under_the_list(panel: ProblemsPanel) -> None:
    panel.show_problems("packs.csv", (MASS, DOUBT))
    shown = [label.text() for label in panel.findChildren(type(panel._detail))]
    assert str(MASS) in shown
    assert "1 error, 1 warning" in shown


def test_a_list_that_is_withdrawn_closes_only_itself(panel: ProblemsPanel) -> None:
    panel.show_problems("Not changed: mass", (MASS,))
    panel.show_problems("Not changed: energy", ())
    assert panel.isVisible()
    panel.show_problems("Not changed: mass", ())
    assert not panel.isVisible()
