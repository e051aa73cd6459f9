"""Finding a command by words and running it with Enter."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QPersistentModelIndex,
    Qt,
    QTimer,
)
from PySide6.QtGui import QAction, QColor, QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QAbstractItemView,
    QDialog,
    QHeaderView,
    QLineEdit,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from benchpack.ui.theme import theme
from benchpack.ui.widgets.controls import named, text_label

AnyIndex = QModelIndex | QPersistentModelIndex

REASON = "reason"
"""Property of an action that says why it is disabled."""

_NATIVE = QKeySequence.SequenceFormat.NativeText


@dataclass(frozen=True, slots=True)
class Command:
    """One action as it is listed.

    Parameters
    ----------
    action : QAction
        What runs.
    words : str
        Its text without the mark of the access key.
    key : str
        Its key as this system writes it.
    """

    action: QAction
    words: str
    key: str

    @property
    def reason(self) -> str:
        """Why it cannot run now, empty when it can."""
        if self.action.isEnabled():
            return ""
        return str(self.action.property(REASON) or "not possible now")


def commands_of(actions: Iterable[QAction]) -> list[Command]:
    """Give the commands among some actions: no separators, menus or doubles.

    Parameters
    ----------
    actions : iterable of QAction
        The actions of a window.
    """
    found: dict[str, Command] = {}
    for action in actions:
        words = _without_access_key(action.text())
        if (
            action.isSeparator()
            or action.menu() is not None
            or not words
            or not action.isVisible()
        ):
            continue
        command = Command(action, words, action.shortcut().toString(_NATIVE))
        found.setdefault(words.casefold(), command)
    return sorted(found.values(), key=_by_words)


def _by_words(command: Command) -> str:
    return command.words.casefold()


def _without_access_key(text: str) -> str:
    return text.replace("&&", "\0").replace("&", "").replace("\0", "&").strip()


def matching(commands: Iterable[Command], text: str) -> list[Command]:
    """Give the commands in which each word of a text begins or lies, best first.

    Parameters
    ----------
    commands : iterable of Command
        All commands.
    text : str
        What was typed.
    """
    typed = text.casefold().split()
    ranked = []
    for place, command in enumerate(commands):
        said = f"{command.words} {command.key}".casefold()
        if all(word in said for word in typed):
            starts = f" {said}"
            inside = sum(f" {word}" not in starts for word in typed)
            ranked.append((bool(command.reason), inside, place, command))
    return [command for *_, command in sorted(ranked, key=_rank)]


def _rank(entry: tuple[bool, int, int, Command]) -> tuple[bool, int, int]:
    return entry[:3]


class CommandsTableModel(QAbstractTableModel):
    """Commands with their keys; disabled ones grey with the reason."""

    def __init__(self, commands: list[Command]) -> None:
        super().__init__()
        self._all = commands
        self.commands = commands

    def filter_by(self, text: str) -> None:
        """List only the commands that match a text."""
        self.beginResetModel()
        self.commands = matching(self._all, text)
        self.endResetModel()

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:
        """Give the number of commands listed."""
        return 0 if parent.isValid() else len(self.commands)

    def columnCount(self, parent: AnyIndex = QModelIndex()) -> int:
        """Give two: words and key."""
        return 0 if parent.isValid() else 2

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Give words, key, and the reason of a disabled command."""
        if not index.isValid():
            return None
        command = self.commands[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            if index.column() == 1:
                return command.key
            reason = command.reason
            return f"{command.words} ({reason})" if reason else command.words
        if role == Qt.ItemDataRole.TextAlignmentRole and index.column() == 1:
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        if role == Qt.ItemDataRole.ForegroundRole and (
            index.column() or command.reason
        ):
            return QColor(theme().roles.second)
        return None


class CommandSearch(QDialog):
    """A field and the list under it: type words, choose with arrows, run with Enter.

    Parameters
    ----------
    actions : iterable of QAction
        What is searched.
    parent : QWidget, optional
        The window it belongs to.
    """

    def __init__(
        self, actions: Iterable[QAction], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Find a command")
        named(self, "Find a command")
        self.field = named(QLineEdit(), "Words of the command")
        self.field.setPlaceholderText("Words of the command")
        self.model = CommandsTableModel(commands_of(actions))
        self.list = named(QTableView(), "Commands")
        self._none = text_label("No command has these words.", "note")
        self._none.hide()
        self._set_up_list()
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 16, 16, 16)
        column.setSpacing(8)
        column.addWidget(self.field)
        column.addWidget(self.list, 1)
        column.addWidget(self._none)
        self.field.textChanged.connect(self._on_text_changed)
        self.list.clicked.connect(self._on_clicked)
        self.resize(560, 380)
        self.field.setFocus()
        self._choose(0)

    def _set_up_list(self) -> None:
        self.list.setModel(self.model)
        self.list.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.list.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.list.setShowGrid(False)
        self.list.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.list.setStyleSheet("QTableView::item { padding: 0 8px; }")
        heads = self.list.horizontalHeader()
        heads.hide()
        heads.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        self.list.setColumnWidth(1, 140)
        rows = self.list.verticalHeader()
        rows.hide()
        rows.setDefaultSectionSize(self.fontMetrics().height() + 10)

    def run(self, row: int) -> None:
        """Close and run a command of the list; a disabled one stays where it is."""
        if 0 <= row < len(self.model.commands):
            command = self.model.commands[row]
            if not command.reason:
                self.accept()
                # The window has to be active again before its action runs.
                QTimer.singleShot(0, command.action.trigger)

    def _choose(self, row: int) -> None:
        last = len(self.model.commands) - 1
        if last >= 0:
            self.list.setCurrentIndex(self.model.index(min(max(row, 0), last), 0))

    def _on_text_changed(self, text: str) -> None:
        self.model.filter_by(text)
        self._none.setVisible(not self.model.commands)
        self._choose(0)

    def _on_clicked(self, index: QModelIndex) -> None:
        self.run(index.row())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move in the list while the field keeps the focus; run with Enter."""
        row = self.list.currentIndex().row()
        steps = {
            Qt.Key.Key_Down: 1,
            Qt.Key.Key_Up: -1,
            Qt.Key.Key_PageDown: 8,
            Qt.Key.Key_PageUp: -8,
        }
        key = Qt.Key(event.key())
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.run(row)
        elif key in steps:
            self._choose(row + steps[key])
        else:
            super().keyPressEvent(event)
