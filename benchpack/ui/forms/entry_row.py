"""What every row of a form does: tell of an entry, and say what is wrong with it."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLabel, QWidget

from benchpack.errors import Problem
from benchpack.model.fields import Kind
from benchpack.ui.dialogs.frame import ErrorLabel
from benchpack.ui.forms.entries import EntryBox, EntryLine, EntryText
from benchpack.ui.tables.cell_text import UNKNOWN
from benchpack.ui.tables.columns import TableColumn

Editor = EntryLine | EntryText | EntryBox
"""What a value is entered with."""


class EntryRow(QWidget):
    """Label, editor, unit and what is wrong; subclasses make the editor and lay out.

    Signals
    -------
    entered(str, str)
        Key of the row and the text that was entered: on Enter, or when the focus left.

    Parameters
    ----------
    column : TableColumn
        The row with its unit as shown.
    parent : QWidget, optional
        Owner.
    """

    entered = Signal(str, str)

    def __init__(self, column: TableColumn, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.column = column
        self._text = ""
        self._label = QLabel(self)
        self._unit = QLabel(self)
        self._error = ErrorLabel()
        self.editor: Editor

    def _take_editor(self, editor: Editor) -> None:
        self.editor = editor
        editor.entry_finished.connect(self._on_entry_finished)
        self._label.setBuddy(editor)

    def _made_editor(self, long: tuple[str, ...]) -> Editor:
        """Make what suits the kind of value; keys in `long` take several lines."""
        column = self.column
        if column.kind is Kind.CHOICE and column.field is not None:
            words = map(str, column.field.choices)
            return EntryBox({word: word or UNKNOWN for word in words}, self)
        return EntryText(self) if column.key in long else EntryLine(self)

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
        said = f"{problem.what} {problem.remedy}".strip() if problem else ""
        if said == self.error_text.partition(" ")[2]:
            return
        self._error.show_error(said)
        description = f"Not taken. {said}" if said else self.column.help
        self.editor.setAccessibleDescription(description)

    @property
    def error_text(self) -> str:
        """What is said below the editor, empty when nothing is wrong."""
        return "" if self._error.isHidden() else self._error.text()

    def _on_entry_finished(self) -> None:
        if self.text != self._text:
            self.entered.emit(self.column.key, self.text)
        elif self.error_text:
            # What stood there before was brought back.
            self.show_problem(None)
