"""One field of a form: label, editor, unit, and what is wrong below it."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from benchpack.errors import Problem
from benchpack.model.fields import Kind
from benchpack.ui.dialogs.frame import ErrorLabel
from benchpack.ui.forms.entries import EntryBox, EntryLine, EntryText
from benchpack.ui.tables.cell_text import UNKNOWN
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.tables.offers import offer

_NUMBER_WIDTH = 120
_LONG = ("note", "reference", "rationale")


class FieldRow(QWidget):
    """Edits one field; tells of an entry on Enter and when the focus leaves.

    Signals
    -------
    entered(str, str)
        Key of the field and the text that was entered.

    Parameters
    ----------
    column : TableColumn
        The field with its unit as shown.
    parent : QWidget, optional
        Owner.
    """

    entered = Signal(str, str)

    def __init__(self, column: TableColumn, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.column = column
        self._label = QLabel(self)
        self._unit = QLabel(self)
        self._error = ErrorLabel()
        self._text = ""
        self._offered: tuple[str, ...] = ()
        self.editor = self._made_editor()
        self.editor.entry_finished.connect(self._on_entry_finished)
        self._label.setBuddy(self.editor)
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

    def _made_editor(self) -> EntryLine | EntryText | EntryBox:
        column = self.column
        if column.kind is Kind.FLAG:
            return EntryBox({"false": "no", "true": "yes"}, self)
        if column.kind is Kind.CHOICE and column.field is not None:
            words = map(str, column.field.choices)
            return EntryBox({word: word or UNKNOWN for word in words}, self)
        if column.key in _LONG:
            return EntryText(self)
        line = EntryLine(self)
        if column.is_numeric:
            line.setFixedWidth(_NUMBER_WIDTH)
            line.setAlignment(Qt.AlignmentFlag.AlignRight)
        return line

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

    @property
    def text(self) -> str:
        """What stands in the editor."""
        return self.editor.entry()

    def set_text(self, text: str) -> None:
        """Show a value, unless it stands there already; drops what was wrong."""
        self._text = text
        self.editor.set_entry(text)
        self.show_problem(None)

    def show_problem(self, problem: Problem | None) -> None:
        """Say below the editor why the entry cannot stand, nothing with None."""
        sentence = f"{problem.what} {problem.remedy}".strip() if problem else ""
        self._error.show_error(sentence)
        if problem is not None:
            self.editor.setAccessibleDescription(f"Not taken. {sentence}")
        else:
            self.editor.setAccessibleDescription(self.column.help)

    @property
    def error_text(self) -> str:
        """What is said below the editor, empty when nothing is wrong."""
        return "" if self._error.isHidden() else self._error.text()

    def _on_entry_finished(self) -> None:
        if self.text != self._text:
            self.entered.emit(self.column.key, self.text)
