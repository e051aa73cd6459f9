"""One row of the panel of assumptions, narrow: label, editor, unit, what is wrong."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from benchpack.errors import Problem
from benchpack.model.fields import Kind
from benchpack.ui.dialogs.frame import ErrorLabel
from benchpack.ui.forms.entries import EntryBox, EntryLine, EntryText
from benchpack.ui.tables.cell_text import UNKNOWN
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.theme import SPACE_BETWEEN, SPACE_INSIDE, font, set_text_role
from benchpack.ui.widgets.controls import plain_tip

_EDITOR, _UNIT = 88, 54
_WIDE = _EDITOR + _UNIT + SPACE_INSIDE
_LONGEST_UNIT = 7
_LONG = ("worth_reason",)
_SLIM = "QLineEdit { padding: 5px 4px; } QLineEdit:focus { padding: 4px 3px; }"


class AssumptionRow(QWidget):
    """Edits one assumption; tells of an entry on Enter and when the focus leaves.

    Signals
    -------
    entered(str, str)
        Key of the row and the text that was entered.

    Parameters
    ----------
    column : TableColumn
        The row with its unit as shown.
    parent : QWidget
        Owner.
    is_range : bool
        True where one line holds low, likely and high.
    placeholder : str
        What stands in an empty line.
    """

    entered = Signal(str, str)

    def __init__(
        self,
        column: TableColumn,
        parent: QWidget,
        *,
        is_range: bool = False,
        placeholder: str = "",
    ) -> None:
        super().__init__(parent)
        self.column = column
        self._text = ""
        self._label = QLabel(self)
        self._label.setWordWrap(True)
        self._unit = QLabel(self)
        set_text_role(self._unit, "note")
        self._error = ErrorLabel()
        self.editor = self._made_editor(placeholder)
        self.editor.entry_finished.connect(self._on_entry_finished)
        self._label.setBuddy(self.editor)
        # A unit that has no room beside the editor stands below the title.
        self._is_below = is_range or len(column.unit) > _LONGEST_UNIT
        self._lay_out(is_range=is_range)
        self.set_column(column)

    def _made_editor(self, placeholder: str) -> EntryLine | EntryText | EntryBox:
        column = self.column
        if column.kind is Kind.CHOICE and column.field is not None:
            words = map(str, column.field.choices)
            return EntryBox({word: word or UNKNOWN for word in words}, self)
        if column.key in _LONG:
            return EntryText(self)
        line = EntryLine(self)
        line.setPlaceholderText(placeholder)
        if column.is_numeric:
            line.setAlignment(Qt.AlignmentFlag.AlignRight)
        return line

    def _lay_out(self, *, is_range: bool) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(SPACE_INSIDE)
        grid.setVerticalSpacing(2)
        grid.setColumnStretch(0, 1)
        grid.setColumnMinimumWidth(1, _EDITOR)
        grid.setColumnMinimumWidth(2, _UNIT)
        middle = Qt.AlignmentFlag.AlignVCenter
        if isinstance(self.editor, EntryText) or self._is_long_choice():
            grid.addWidget(self._label, 0, 0, 1, 3)
            grid.addWidget(self.editor, 1, 0, 1, 3)
        elif not self.column.is_numeric:
            grid.addWidget(self._label, 0, 0, middle)
            grid.addWidget(self.editor, 0, 1, 1, 2)
            self.editor.setFixedWidth(_WIDE)
        else:
            wide = (0, 1, 1, 2) if is_range else (0, 1, 1, 1)
            self.editor.setFixedWidth(_WIDE if is_range else _EDITOR)
            grid.addWidget(self._label, 0, 0, middle)
            grid.addWidget(self.editor, *wide)
            if self._is_below:
                grid.addWidget(self._unit, 1, 0, 1, 3)
            else:
                grid.addWidget(self._unit, 0, 2, middle)
        if is_range:
            # Three figures on one line need the room.
            self.editor.setFont(font("note"))
            self.editor.setStyleSheet(_SLIM)
        grid.addWidget(self._error, 2, 0, 1, 3)
        self._unit.setVisible(self.column.is_numeric)
        self.setContentsMargins(0, 0, 0, SPACE_BETWEEN if self._is_below else 0)

    def _is_long_choice(self) -> bool:
        """Tell whether the longest word would be cut beside the title."""
        is_choice = isinstance(self.editor, EntryBox)
        return is_choice and self.editor.sizeHint().width() > _WIDE

    def set_column(self, column: TableColumn) -> None:
        """Show the row in another unit."""
        self.column = column
        title = column.title[:1].upper() + column.title[1:]
        if self._label.text() != title:
            self._label.setText(title)
        if self._unit.text() != column.unit:
            self._unit.setText(column.unit)
        tip = plain_tip(column.help)
        self.editor.setToolTip(tip)
        self._label.setToolTip(tip)
        self._unit.setToolTip(tip)
        self.editor.setAccessibleName(column.head)
        self.editor.setAccessibleDescription(column.help)

    @property
    def text(self) -> str:
        """What stands in the editor."""
        return self.editor.entry()

    def set_text(self, text: str) -> None:
        """Show a value; drops what was wrong."""
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
