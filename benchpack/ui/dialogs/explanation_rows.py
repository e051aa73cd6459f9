"""What stands under a figure that is explained: formula, inputs, sources."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QLabel, QVBoxLayout, QWidget

from benchpack.report.explanation import Explanation
from benchpack.ui.dialogs.formula_markup import label_markup, symbols_markup
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.controls import hairline, text_label


def rows_widget(said: Explanation) -> QWidget:
    """Lay out what stands under a figure."""
    widget = QWidget()
    column = QVBoxLayout(widget)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(8)
    if said.missing:
        column.addWidget(text_label(said.missing))
    formula = _rich_label(symbols_markup(said.formula))
    formula.setAccessibleName(f"Formula: {said.formula}")
    column.addWidget(formula)
    if said.inputs:
        column.addLayout(_inputs_grid(said))
        column.addWidget(hairline())
    notes = (
        ("Range", said.range_meaning),
        ("Source of the formula", said.source),
    )
    for head, text in notes:
        if text:
            column.addWidget(text_label(f"{head}: {text}", "note"))
    return widget


def _inputs_grid(said: Explanation) -> QGridLayout:
    grid = QGridLayout()
    grid.setHorizontalSpacing(4)
    grid.setVerticalSpacing(4)
    grid.setColumnMinimumWidth(3, 12)
    grid.setColumnStretch(0, 3)
    grid.setColumnStretch(4, 2)
    right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop
    top = Qt.AlignmentFlag.AlignTop
    for row, given in enumerate(said.inputs):
        label = _rich_label(label_markup(given.label))
        label.setAccessibleName(
            " ".join(filter(None, (given.label, given.value, given.unit)))
        )
        number, unit = text_label(given.value), text_label(given.unit)
        number.setWordWrap(False)
        unit.setWordWrap(False)
        source = text_label(given.source, "note")
        source.setContentsMargins(0, 2, 0, 0)
        grid.addWidget(label, row, 0, top)
        grid.addWidget(number, row, 1, right)
        grid.addWidget(unit, row, 2, top)
        grid.addWidget(source, row, 4, top)
    return grid


def _rich_label(markup: str) -> QLabel:
    label = QLabel(markup)
    label.setTextFormat(Qt.TextFormat.RichText)
    label.setWordWrap(True)
    set_text_role(label, "body")
    return label
