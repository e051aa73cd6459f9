"""A chart that shows its data as a table when asked."""

from __future__ import annotations

from typing import Literal

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QToolButton, QVBoxLayout, QWidget

from benchpack.ui.charts.chart import Chart
from benchpack.ui.charts.data_table import ChartTableView

View = Literal["chart", "table"]


class ChartOrTable(QWidget):
    """Adds a button "Table" to the head of a chart, which then reads "Chart".

    Title, note and menu stay; specs are shown through the chart as ever, the table
    follows while it is seen.

    Signals
    -------
    view_changed(str)
        "chart" or "table".

    Parameters
    ----------
    chart : Chart
        Any chart; it becomes a child.
    """

    view_changed = Signal(str)

    def __init__(self, chart: Chart, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.chart = chart
        self.button = QToolButton(chart)
        self.table = ChartTableView(f"{chart.accessibleName()}, as a table", chart)
        chart.parts.add_button(self.button)
        chart.parts.add_view(self.table)
        QWidget.setTabOrder(chart, self.button)  # it stands before the others
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(chart)
        self.setFocusProxy(chart)
        self._view: View = "chart"
        self._name_button()
        self.button.clicked.connect(self._on_button_clicked)
        self.table.said.connect(chart.said)
        chart.spec_shown.connect(self._on_chart_spec_shown)
        self._on_chart_spec_shown()

    @property
    def view(self) -> View:
        """Which of the two is in front."""
        return self._view

    def show_view(self, view: View) -> None:
        """Bring the chart or the table to the front."""
        if view == self._view:
            return
        self._view = view
        self._name_button()
        self._on_chart_spec_shown()
        self.chart.leave_item()
        self.chart.parts.show_view(self.table if view == "table" else None)
        self.view_changed.emit(view)

    def _name_button(self) -> None:
        other = "Table" if self._view == "chart" else "Chart"
        self.button.setText(other)
        self.button.setAccessibleName(f"Show as {other.lower()}")
        self.button.setToolTip(f"Show as {other.lower()}")

    def _on_button_clicked(self) -> None:
        self.show_view("table" if self._view == "chart" else "chart")

    def _on_chart_spec_shown(self) -> None:
        spec = self.chart.spec
        self.button.setVisible(not spec.is_empty)
        if self._view == "table" and not spec.is_empty:
            self.table.table.show_spec(spec)
