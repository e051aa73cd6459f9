"""Editing of cells: lines and lists that stay open until the entry is taken."""

from __future__ import annotations

from typing import Protocol, runtime_checkable

from PySide6.QtCore import (
    QAbstractItemModel,
    QEvent,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
    Signal,
)
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QAbstractItemDelegate,
    QAbstractItemView,
    QComboBox,
    QCompleter,
    QLineEdit,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from benchpack.errors import Problem
from benchpack.model.fields import Kind
from benchpack.ui.tables.cell_text import UNKNOWN
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.tables.offers import is_choosing, offer
from benchpack.ui.tables.refusal_note import RefusalNote

Index = QModelIndex | QPersistentModelIndex
_NO_HINT = QAbstractItemDelegate.EndEditHint.NoHint
_STEPS = {
    Qt.Key.Key_Return: (1, 0),
    Qt.Key.Key_Enter: (1, 0),
    Qt.Key.Key_Tab: (0, 1),
    Qt.Key.Key_Backtab: (0, -1),
}


@runtime_checkable
class EntryModel(Protocol):
    """What the delegate needs of a model."""

    columns: tuple[TableColumn, ...]

    def enter(self, index: Index, text: str) -> tuple[Problem, ...]:
        """Take an entry; gives why it cannot be taken."""

    def name_at(self, index: Index) -> str:
        """Give the name of the record at an index."""


class EntryDelegate(QStyledItemDelegate):
    """Edits cells; an entry that cannot be taken stays open with the reason below it.

    Signals
    -------
    moved(int, int)
        An entry was taken; go on by so many rows and columns.
    dialog_requested(object)
        A persistent index whose value has a dialog of its own.
    refused(str, object)
        A text that could not be taken when the editor lost the focus, and problems.
    """

    moved = Signal(int, int)
    dialog_requested = Signal(object)
    refused = Signal(str, object)

    def __init__(self, view: QAbstractItemView) -> None:
        super().__init__(view)
        self._view = view
        self._note = RefusalNote(view.viewport())
        self._open: QPersistentModelIndex | None = None

    def _entry(self, editor: QWidget) -> str:
        if isinstance(editor, QComboBox):
            return str(editor.currentData())
        return editor.text() if isinstance(editor, QLineEdit) else ""

    def _enter(self, editor: QWidget) -> tuple[Problem, ...]:
        model = self._view.model()
        if self._open is None or not isinstance(model, EntryModel):
            return ()
        return model.enter(self._open, self._entry(editor))

    def _finish(self, editor: QWidget, step: tuple[int, int]) -> None:
        """Take the entry and go on, or say at the cell why it cannot be taken."""
        problems = self._enter(editor)
        if problems:
            self._note.show_problem(problems[0], editor)
            return
        self._note.hide()
        self.closeEditor.emit(editor, _NO_HINT)
        self.moved.emit(*step)

    def _on_choice_activated(self) -> None:
        editor = self.sender()
        if isinstance(editor, QWidget):
            self._finish(editor, (0, 0))

    def _on_line_returned(self) -> None:
        # Enter reaches the line itself only while its list of offers is open.
        line = self.sender()
        if isinstance(line, QLineEdit) and not is_choosing(line):
            self._finish(line, (1, 0))

    def _on_offer_taken(self) -> None:
        completer = self.sender()
        line = completer.widget() if isinstance(completer, QCompleter) else None
        if line is not None:
            self._finish(line, (1, 0))

    def createEditor(
        self, parent: QWidget, option: QStyleOptionViewItem, index: Index
    ) -> QWidget:
        """Give a line or a list; ask for the dialog where there is one."""
        model = self._view.model()
        if not isinstance(model, EntryModel):
            return super().createEditor(parent, option, index)
        column = model.columns[index.column()]
        self._open = QPersistentModelIndex(index)
        if column.kind in (Kind.BOUNDARY, Kind.FLAG):
            self.dialog_requested.emit(self._open)
            return None  # type: ignore[return-value]  # Qt takes it as "no editor"
        if column.kind is Kind.CHOICE and column.field is not None:
            box = QComboBox(parent)
            for choice in column.field.choices:
                box.addItem(str(choice) or UNKNOWN, str(choice))
            box.activated.connect(self._on_choice_activated)
            editor: QWidget = box
        else:
            line = QLineEdit(parent)
            line.setFrame(False)
            if column.is_numeric:
                line.setAlignment(Qt.AlignmentFlag.AlignRight)
            if column.offers:
                offer(line, column.offers).activated.connect(
                    self._on_offer_taken, Qt.ConnectionType.QueuedConnection
                )
                line.returnPressed.connect(self._on_line_returned)
            editor = line
        editor.setAccessibleName(f"{column.head} of {model.name_at(index)}")
        editor.destroyed.connect(self._note.hide)
        return editor

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        """Fill the editor with the full text, or with what was refused before."""
        text = str(index.data(Qt.ItemDataRole.EditRole))
        if isinstance(editor, QComboBox):
            editor.setCurrentIndex(editor.findData(text))
        elif isinstance(editor, QLineEdit) and not editor.isModified():
            editor.setText(text)
            editor.selectAll()

    def setModelData(
        self, editor: QWidget, model: QAbstractItemModel, index: Index
    ) -> None:
        """Take the entry when the focus leaves; a refused one stays with its cell."""
        if isinstance(model, EntryModel):
            problems = model.enter(index, self._entry(editor))
            if problems:
                self.refused.emit(self._entry(editor), problems)

    def eventFilter(self, editor: QObject, event: QEvent) -> bool:
        """Let Enter and Tab take the entry before the editor closes."""
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            step = _STEPS.get(Qt.Key(event.key()))
            if step is not None and isinstance(editor, QWidget):
                shifted = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
                if step[0] and shifted:
                    step = (-1, 0)
                self._finish(editor, step)
                return True
            self._note.hide()
        return super().eventFilter(editor, event)
