"""A chart with its data as a table behind it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QCoreApplication, QItemSelectionModel, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from benchpack.ui.charts.chart_or_table import ChartOrTable
from benchpack.ui.charts.data_table import copied_part
from benchpack.ui.charts.fan import FanChart
from benchpack.ui.charts.sets import SetsChart
from benchpack.ui.tables.clipboard import CellRange
from tests.ui.charts import samples

ROLE = Qt.ItemDataRole
TABLE = [["name", "a", "b"], ["x", "1", "2"], ["y", "3", "4"]]


@pytest.fixture
def both(qtbot: QtBot) -> ChartOrTable:
    chart = SetsChart()
    made = ChartOrTable(chart)
    qtbot.addWidget(made)
    made.resize(600, 400)
    chart.show_spec(samples.sets())
    made.show()
    QCoreApplication.processEvents()
    return made


def texts(both: ChartOrTable) -> list[list[object]]:
    model = both.table.table
    return [
        [model.index(row, column).data() for column in range(model.columnCount())]
        for row in range(model.rowCount())
    ]


def test_the_button_turns_to_the_table_and_back(
    qtbot: QtBot, both: ChartOrTable
) -> None:
    assert both.button.text() == "Table"
    assert both.button.accessibleName() == "Show as table"
    with qtbot.waitSignal(both.view_changed) as heard:
        both.button.click()
    assert heard.args == ["table"]
    assert both.table.isVisible()
    assert not both.chart.parts.canvas.isVisible()
    assert both.chart.parts.title.isVisible()
    assert both.button.text() == "Chart"
    both.button.click()
    assert both.chart.parts.canvas.isVisible()
    assert both.view == "chart"


def test_the_table_shows_aligned_numbers_with_units(both: ChartOrTable) -> None:
    both.show_view("table")
    model = both.table.table
    assert model.headerData(2, Qt.Orientation.Horizontal) == (
        "likely: Worth per pack [EUR]"
    )
    assert texts(both)[2] == ["worst case", "−60", "−22", "−5", ""]
    right = model.index(0, 1).data(ROLE.TextAlignmentRole)
    assert right & Qt.AlignmentFlag.AlignRight
    assert model.index(0, 0).data(ROLE.TextAlignmentRole) & Qt.AlignmentFlag.AlignLeft


def test_the_table_follows_the_chart_and_keeps_its_selection(
    both: ChartOrTable,
) -> None:
    both.show_view("table")
    both.table.setCurrentIndex(both.table.table.index(1, 2))
    spec = samples.sets()
    chart = both.chart
    assert isinstance(chart, SetsChart)
    chart.show_spec(replace(spec, likely=spec.likely + 0.25))
    assert texts(both)[0][2] == "34.25"
    assert both.table.currentIndex().row() == 1


def test_the_table_is_made_only_when_it_is_seen(both: ChartOrTable) -> None:
    assert both.table.table.rowCount() == 0
    both.show_view("table")
    assert both.table.table.rowCount() == 3


def test_an_empty_chart_shows_its_sentence_and_no_button(both: ChartOrTable) -> None:
    both.show_view("table")
    chart = both.chart
    assert isinstance(chart, SetsChart)
    chart.show_spec(type(samples.sets())(empty_sentence="There is no set."))
    assert chart.parts.empty_label.isVisible()
    assert not both.button.isVisible()
    chart.show_spec(samples.sets())
    assert both.table.isVisible()
    assert both.button.isVisible()


def test_cells_are_copied_exactly(qtbot: QtBot, both: ChartOrTable) -> None:
    chart = both.chart
    assert isinstance(chart, SetsChart)
    chart.show_spec(replace(samples.sets(), likely=np.array([1 / 3, 12.0, -22.0])))
    both.show_view("table")
    model = both.table.table
    assert texts(both)[0][2] == "0.33"
    select = QItemSelectionModel.SelectionFlag.ClearAndSelect
    both.table.selectionModel().select(model.index(0, 2), select)
    with qtbot.waitSignal(both.chart.said):
        QTest.keyClick(both.table, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert float(QGuiApplication.clipboard().text()) == 1 / 3
    both.table.selectAll()
    both.table.copy_selected()
    lines = QGuiApplication.clipboard().text().splitlines()
    assert lines[0].startswith("set\tlow: Worth per pack [EUR]\t")
    assert lines[3] == "worst case\t-60\t-22\t-5\t"
    both.table.clearSelection()
    both.table.copy_selected()
    assert QGuiApplication.clipboard().text().splitlines() == lines


def test_f1_in_the_table_asks_for_the_figure(qtbot: QtBot, both: ChartOrTable) -> None:
    both.show_view("table")
    with qtbot.waitSignal(both.chart.explain_requested) as heard:
        QTest.keyClick(both.table, Qt.Key.Key_F1)
    assert heard.args == ["value likely"]


@pytest.mark.parametrize(
    ("ranges", "cells"),
    [
        ([CellRange(0, 0, 1, 1)], [["1"]]),
        ([CellRange(0, 1, 1, 1)], [["a"], ["1"], ["3"]]),
        ([CellRange(1, 1, 0, 2)], [["name", "a", "b"], ["y", "3", "4"]]),
        (
            [CellRange(0, 0, 1, 1), CellRange(1, 1, 2, 2)],
            [["a", "b"], ["1", ""], ["", "4"]],
        ),
    ],
)
def test_a_part_has_its_heads_where_it_is_whole(
    ranges: list[CellRange], cells: list[list[str]]
) -> None:
    assert copied_part(TABLE, ranges) == cells


def test_a_chart_with_a_table_dies_with_it(qtbot: QtBot) -> None:
    chart = FanChart()
    both = ChartOrTable(chart)
    chart.show_spec(samples.fan())
    both.show_view("table")
    assert both.table.table.rowCount() == 44
    with qtbot.waitSignal(chart.destroyed):
        both.deleteLater()
