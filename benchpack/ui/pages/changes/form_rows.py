"""Rows of the change form that hold a range, or a list of names."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QApplication,
    QGridLayout,
    QLabel,
    QMenu,
    QToolButton,
    QWidget,
)

from benchpack.errors import Problem
from benchpack.model.range_columns import ENDS
from benchpack.ui.assets import icon
from benchpack.ui.dialogs.frame import ErrorLabel
from benchpack.ui.forms.entries import EntryLine
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.theme import font

_LABEL = 128
_LEAST, _MOST, _UNIT = 58, 110, 40
_SLIM = "QLineEdit { padding: 5px 2px; } QLineEdit:focus { padding: 4px 1px; }"


class FormRow(QWidget):
    """Label, place for the editor, and what is wrong below it.

    Parameters
    ----------
    title, help_text : str
        What it is.
    parent : QWidget
        Owner.
    """

    def __init__(self, title: str, help_text: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.label = QLabel(title[:1].upper() + title[1:], self)
        self.label.setToolTip(help_text)
        self._error = ErrorLabel()
        self.grid = QGridLayout(self)
        self.grid.setContentsMargins(0, 0, 0, 0)
        self.grid.setHorizontalSpacing(4)
        self.grid.setVerticalSpacing(2)
        self.grid.addWidget(self.label, 0, 0)
        self.grid.addWidget(self._error, 1, 1, 1, 5)
        self.grid.setColumnMinimumWidth(0, _LABEL + 4)

    def show_problem(self, problem: Problem | None) -> None:
        """Say below the editor why the entry cannot stand, nothing with None."""
        said = f"{problem.what} {problem.remedy}".strip() if problem else ""
        self._error.show_error(said)

    @property
    def error_text(self) -> str:
        """What is said below the editor, empty when nothing is wrong."""
        return "" if self._error.isHidden() else self._error.text()


class RangeRow(FormRow):
    """Low, likely and high side by side; what is computed stands in grey.

    Signals
    -------
    entered(str, object)
        Attribute of the range, and the three texts.

    Parameters
    ----------
    attribute, title, help_text : str
        What it is.
    parent : QWidget
        Owner.
    """

    entered = Signal(str, object)

    def __init__(
        self, attribute: str, title: str, help_text: str, *, parent: QWidget
    ) -> None:
        super().__init__(title, help_text, parent)
        self.attribute = attribute
        self._unit = QLabel(self)
        self._unit.setMinimumWidth(_UNIT)
        self._kept: tuple[str, ...] = ("", "", "")
        self.lines = {end: EntryLine(self) for end in ENDS}
        for place, (end, line) in enumerate(self.lines.items(), start=1):
            line.setMinimumWidth(_LEAST)
            line.setMaximumWidth(_MOST)
            line.setFont(font("note"))
            line.setStyleSheet(_SLIM)
            line.setAlignment(Qt.AlignmentFlag.AlignRight)
            line.setAccessibleName(f"{title} {end}")
            line.setToolTip(f"{help_text}, {end}")
            line.entry_finished.connect(self._on_entry_finished)
            self.grid.addWidget(line, 0, place)
            self.grid.setColumnStretch(place, 3)
        self.grid.addWidget(self._unit, 0, 4)
        self.grid.setColumnStretch(5, 1)
        self.label.setBuddy(self.lines["likely"])

    def texts(self) -> tuple[str, ...]:
        """Give what stands in the three lines."""
        return tuple(line.text().strip() for line in self.lines.values())

    def show_texts(
        self, texts: Sequence[str], computed: Sequence[str], unit: str
    ) -> None:
        """Show a range, or in its place what is computed.

        Parameters
        ----------
        texts, computed : sequence of str
            Low, likely, high; empty where not given.
        unit : str
            Unit as shown.
        """
        self._kept = tuple(texts)
        self._unit.setText(unit)
        for line, text, grey in zip(self.lines.values(), texts, computed, strict=True):
            line.set_entry(text)
            line.setPlaceholderText(grey)
        self.show_problem(None)

    def _on_entry_finished(self) -> None:
        texts = self.texts()
        if texts == self._kept:
            return
        # Half a range is no mistake while the next figure is being typed.
        if all(texts) or not self._is_inside():
            self.entered.emit(self.attribute, texts)

    def _is_inside(self) -> bool:
        focused = QApplication.focusWidget()
        sender = self.sender()
        return focused is not sender and focused in self.lines.values()

    @property
    def editor(self) -> QWidget:
        """The line that stands for the row."""
        return self.lines["likely"]


class NamesRow(FormRow):
    """Names with semicolons between them, to be typed or taken from a list.

    Signals
    -------
    entered(str, str)
        Key of the field and the text that was entered.

    Parameters
    ----------
    column : TableColumn
        The field.
    parent : QWidget
        Owner.
    """

    entered = Signal(str, str)

    def __init__(self, column: TableColumn, parent: QWidget) -> None:
        super().__init__(column.title, column.help, parent)
        self.column = column
        self._offers: tuple[str, ...] = ()
        self._names: tuple[str, ...] = ()
        self.editor = EntryLine(self)
        self.editor.setAccessibleName(column.title)
        self.editor.setToolTip(f"{column.help} Names with ; between them.")
        self.button = QToolButton(self)
        self.button.setIcon(icon("arrow-down", "second"))
        self.button.setAccessibleName(f"Choose {column.title}")
        self.button.setToolTip(f"Choose {column.title} from a list")
        self.label.setBuddy(self.editor)
        self.grid.addWidget(self.editor, 0, 1)
        self.grid.addWidget(self.button, 0, 2)
        self.grid.setColumnStretch(1, 1)
        self.editor.entry_finished.connect(self._on_entry_finished)
        self.button.clicked.connect(self._on_list_requested)

    def show_names(self, names: tuple[str, ...], offers: tuple[str, ...]) -> None:
        """Show names, and offer some to choose from."""
        self._names, self._offers = names, offers
        self.editor.set_entry("; ".join(names))
        self.button.setEnabled(bool(offers))
        self.show_problem(None)

    def _on_entry_finished(self) -> None:
        if self.editor.text() != "; ".join(self._names):
            self.entered.emit(self.column.key, self.editor.text())

    def _on_list_requested(self) -> None:
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        for name in dict.fromkeys((*self._offers, *self._names)):
            action = QAction(name.replace("&", "&&"), menu, checkable=True)
            action.setChecked(name in self._names)
            action.setData(name)
            action.triggered.connect(self._on_name_toggled)
            menu.addAction(action)
        menu.popup(self.button.mapToGlobal(self.button.rect().bottomLeft()))

    def _on_name_toggled(self) -> None:
        action = self.sender()
        if not isinstance(action, QAction):
            return
        name = str(action.data())
        if action.isChecked():
            names = (*self._names, name)
        else:
            names = tuple(one for one in self._names if one != name)
        self.entered.emit(self.column.key, "; ".join(names))
