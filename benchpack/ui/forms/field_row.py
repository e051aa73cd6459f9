"""One field of a form: label, editor, unit, and what is wrong below it."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from benchpack.model.fields import Kind
from benchpack.ui.forms.entries import EntryBox, EntryLine
from benchpack.ui.forms.entry_row import Editor, EntryRow
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.tables.offers import offer

_NUMBER_WIDTH = 120
_LONG = ("note", "reference", "rationale")


class FieldRow(EntryRow):
    """Edits one field of a record.

    Parameters
    ----------
    column : TableColumn
        The field with its unit as shown.
    parent : QWidget, optional
        Owner.
    """

    def __init__(self, column: TableColumn, parent: QWidget | None = None) -> None:
        super().__init__(column, parent)
        self._offered: tuple[str, ...] = ()
        self._take_editor(self._field_editor())
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(8)
        grid.setVerticalSpacing(2)
        grid.addWidget(self._label, 0, 0)
        grid.addWidget(self.editor, 0, 1)
        grid.addWidget(self._unit, 0, 2)
        grid.addWidget(self._error, 1, 1, 1, 2)
        grid.setColumnMinimumWidth(0, 128)
        grid.setColumnStretch(2 if column.is_numeric else 1, 1)
        self.set_column(column)

    def _field_editor(self) -> Editor:
        if self.column.kind is Kind.FLAG:
            return EntryBox({"false": "no", "true": "yes"}, self)
        editor = self._made_editor(_LONG)
        if isinstance(editor, EntryLine) and self.column.is_numeric:
            editor.setFixedWidth(_NUMBER_WIDTH)
            editor.setAlignment(Qt.AlignmentFlag.AlignRight)
        return editor

    def set_column(self, column: TableColumn) -> None:
        """Show the field in another unit, or with other offers."""
        self.column = column
        if isinstance(self.editor, EntryLine) and column.offers != self._offered:
            self._offered = column.offers
            offer(self.editor, column.offers)
        self._label.setText(column.title[:1].upper() + column.title[1:])
        self._unit.setText(column.unit)
        self._unit.setVisible(bool(column.unit) or column.is_numeric)
        self.editor.setToolTip(column.help)
        self._label.setToolTip(column.help)
        self.editor.setAccessibleName(column.head)
        self.editor.setAccessibleDescription(column.help)
