"""One row of the panel of assumptions, narrow: label, editor, unit, what is wrong."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from benchpack.ui.forms.entries import EntryBox, EntryLine, EntryText
from benchpack.ui.forms.entry_row import EntryRow
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.theme import SPACE_BETWEEN, SPACE_INSIDE, font, set_text_role
from benchpack.ui.widgets.controls import plain_tip

_EDITOR, _UNIT = 88, 54
_WIDE = _EDITOR + _UNIT + SPACE_INSIDE
_LONGEST_UNIT = 7
_LONG = ("worth_reason",)
_SLIM = "QLineEdit { padding: 5px 4px; } QLineEdit:focus { padding: 4px 3px; }"


class AssumptionRow(EntryRow):
    """Edits one assumption.

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

    def __init__(
        self,
        column: TableColumn,
        parent: QWidget,
        *,
        is_range: bool = False,
        placeholder: str = "",
    ) -> None:
        super().__init__(column, parent)
        self._label.setWordWrap(True)
        set_text_role(self._unit, "note")
        editor = self._made_editor(_LONG)
        if isinstance(editor, EntryLine):
            editor.setPlaceholderText(placeholder)
            if column.is_numeric:
                editor.setAlignment(Qt.AlignmentFlag.AlignRight)
        self._take_editor(editor)
        # A unit that has no room beside the editor stands below the title.
        self._is_below = is_range or len(column.unit) > _LONGEST_UNIT
        self._lay_out(is_range=is_range)
        self.set_column(column)

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
