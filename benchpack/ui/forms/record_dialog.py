"""A dialog that asks for a new record, or for all fields of one."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QHBoxLayout, QVBoxLayout, QWidget

from benchpack.errors import DataError, Problem
from benchpack.model.entry import parse_value
from benchpack.ui.forms.field_form import FieldForm
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.widgets.controls import plain_button
from benchpack.units.formatting import NumberStyle

Submit = Callable[[Mapping[str, Any]], tuple[Problem, ...]]
"""Takes the values of a record; gives why they cannot be taken."""


class RecordDialog(QDialog):
    """Asks for fields and stays open until they can be taken.

    Parameters
    ----------
    title : str
        Title of the window and what its button does, "Add pack" for instance.
    columns : list of TableColumn
        The fields.
    style : NumberStyle
        Decimal mark and mass unit.
    submit : callable
        Makes the edit.
    parent : QWidget, optional
        Window the dialog belongs to.
    """

    def __init__(
        self,
        title: str,
        columns: list[TableColumn],
        *,
        style: NumberStyle,
        submit: Submit,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self._columns, self._style, self._submit = columns, style, submit
        self.form = FieldForm([("", columns)], title)
        self.accept_button = plain_button(title)
        self.accept_button.setDefault(True)
        self.cancel_button = plain_button("Cancel")
        self.accept_button.clicked.connect(self.accept)
        self.cancel_button.clicked.connect(self.reject)
        buttons = QHBoxLayout()
        buttons.setContentsMargins(16, 0, 16, 0)
        buttons.addStretch(1)
        buttons.addWidget(self.cancel_button)
        buttons.addWidget(self.accept_button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(8, 16, 8, 16)
        layout.addWidget(self.form)
        layout.addLayout(buttons)
        self.resize(460, min(140 + 40 * len(columns), 620))

    def show_record(self, record: Any) -> None:
        """Show what is recorded so far."""
        self.form.show_record(record, self._columns, self._style)

    def accept(self) -> None:
        """Make the edit and close, or say below the fields what is wrong."""
        values: dict[str, Any] = {}
        problems: list[tuple[str, Problem]] = []
        texts = self.form.texts()
        for column in self._columns:
            self.form.show_problem(column.key, None)
            if column.field is None:
                continue
            try:
                values[column.key] = parse_value(
                    column.field,
                    texts[column.key].strip(),
                    unit=column.entry_unit,
                    decimal=self._style.decimal_mark,
                )
            except DataError as error:
                problems.append((column.key, error.problems[0]))
        if not problems:
            problems = [(self._key(p), p) for p in self._submit(values)]
        for key, problem in problems:
            self.form.show_problem(key, problem)
        if problems:
            self.form.focus_field(problems[0][0])
        else:
            super().accept()

    def _key(self, problem: Problem) -> str:
        for column in self._columns:
            field = column.field
            if field and problem.column in (field.title, field.header()):
                return column.key
        return self._columns[0].key
