"""A form over the fields of one record, in groups."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QLabel, QScrollArea, QVBoxLayout, QWidget

from benchpack.errors import Problem
from benchpack.model.fields import Kind
from benchpack.ui.forms.boundary_row import BoundaryRow
from benchpack.ui.forms.field_row import FieldRow
from benchpack.ui.tables.cell_text import edited_text
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.theme import set_text_role
from benchpack.units.formatting import NumberStyle

Groups = Sequence[tuple[str, Sequence[TableColumn]]]


class FieldForm(QScrollArea):
    """Shows and edits the fields of one record.

    Signals
    -------
    entered(str, str)
        Key of a field and the text that was entered in it.
    boundary_requested()
        The boundary is to be edited.

    Parameters
    ----------
    groups : sequence of (str, columns)
        Headings, empty for none, with the fields below them.
    name : str
        What screen readers call it.
    """

    entered = Signal(str, str)
    boundary_requested = Signal()

    def __init__(
        self, groups: Groups, name: str, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.rows: dict[str, FieldRow] = {}
        self.boundary: BoundaryRow | None = None
        # Built from the outside in: each later change of parent is styled anew.
        body = QWidget(self.viewport())
        body.setAccessibleName(name)
        column = QVBoxLayout(body)
        column.setContentsMargins(16, 8, 16, 16)
        column.setSpacing(6)
        for heading, columns in groups:
            self._add_group(body, column, heading, columns)
        column.addStretch(1)
        self.setWidget(body)

    def _add_group(
        self,
        body: QWidget,
        layout: QVBoxLayout,
        heading: str,
        columns: Sequence[TableColumn],
    ) -> None:
        if heading:
            label = QLabel(heading, body)
            set_text_role(label, "strong")
            layout.addSpacing(10 if self.rows else 0)
            layout.addWidget(label)
        for column in columns:
            if column.kind is Kind.BOUNDARY:
                self.boundary = BoundaryRow(body)
                self.boundary.edit_requested.connect(self.boundary_requested)
                layout.addWidget(self.boundary)
                continue
            row = FieldRow(column, body)
            row.entered.connect(self.entered)
            self.rows[column.key] = row
            layout.addWidget(row)

    def show_record(
        self, record: Any, columns: Sequence[TableColumn], style: NumberStyle
    ) -> None:
        """Show a record; an editor that holds the focus and an entry keeps it.

        Parameters
        ----------
        record : object
            With the attributes that the columns name.
        columns : sequence of TableColumn
            The fields in the units to be shown.
        style : NumberStyle
            Decimal mark and mass unit.
        """
        for column in columns:
            value = getattr(record, column.key, None)
            if column.kind is Kind.BOUNDARY and self.boundary is not None:
                self.boundary.show_boundary(value)
            row = self.rows.get(column.key)
            if row is not None:
                row.set_column(column)
                row.set_text(edited_text(column, value, style))

    def texts(self) -> Mapping[str, str]:
        """Give what stands in every editor by key."""
        return {key: row.text for key, row in self.rows.items()}

    def show_problem(self, key: str, problem: Problem | None) -> None:
        """Say below a field why its entry cannot stand."""
        if key in self.rows:
            self.rows[key].show_problem(problem)

    def focus_field(self, key: str) -> bool:
        """Put the focus into a field; False when the form has no such field."""
        target: QWidget | None = None
        if key in self.rows:
            target = self.rows[key].editor
        elif key == "boundary" and self.boundary is not None:
            target = self.boundary.button
        if target is None:
            return False
        self.ensureWidgetVisible(target)
        target.setFocus()
        return True
