"""The frame of a dialog that asks for something, and its rows of fields."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import (
    QDialog,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QVBoxLayout,
    QWidget,
)

from benchpack.ui.theme import theme
from benchpack.ui.widgets.controls import named, plain_button, text_label

ERROR_SIGN = "\u2715"


class FormDialog(QDialog):
    """A dialog with a body and one button that does it, named by a verb.

    Parameters
    ----------
    title : str
        Title of the window.
    accept_text : str
        What the button does, "Keep changes" for instance.
    parent : QWidget, optional
        The window it belongs to.
    """

    def __init__(
        self, title: str, accept_text: str, *, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        named(self, title)
        self.body = QVBoxLayout()
        self.body.setSpacing(16)
        self.accept_button = plain_button(accept_text)
        self.accept_button.setDefault(True)
        self.cancel_button = plain_button("Cancel")
        self.accept_button.clicked.connect(self.accept)
        self.cancel_button.clicked.connect(self.reject)
        self.buttons = QHBoxLayout()
        self.buttons.setSpacing(8)
        self.buttons.addStretch(1)
        self.buttons.addWidget(self.cancel_button)
        self.buttons.addWidget(self.accept_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 24, 24, 16)
        column.setSpacing(16)
        column.addLayout(self.body, 1)
        column.addLayout(self.buttons)
        self._is_ordered = False

    def showEvent(self, event: QShowEvent) -> None:
        """Put the buttons last in the tab order, where they stand."""
        if not self._is_ordered:
            self._is_ordered = True
            self._put_buttons_last()
        super().showEvent(event)

    def _put_buttons_last(self) -> None:
        row: list[QWidget] = []
        for at in range(self.buttons.count()):
            item = self.buttons.itemAt(at)
            button = item.widget() if item is not None else None
            if button is not None:
                row.append(button)
        last: QWidget | None = self.previousInFocusChain()
        while last is not None and last in row:
            last = last.previousInFocusChain()
        for button in row:
            if last is not None:
                QWidget.setTabOrder(last, button)
            last = button


class ErrorLabel(QLabel):
    """Says under a field what is wrong with it; takes no room while nothing is."""

    def __init__(self) -> None:
        super().__init__()
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setWordWrap(True)
        self._recolour()
        theme().theme_changed.connect(self._recolour)
        self.hide()

    def show_error(self, text: str) -> None:
        """Show a complaint, or none."""
        self.setText(f"{ERROR_SIGN} {text}" if text else "")
        self.setAccessibleName(f"Error: {text}" if text else "")
        self.setVisible(bool(text))

    def _recolour(self) -> None:
        self.setStyleSheet(f"color: {theme().roles.fail}; font-size: 9pt;")


class FormRows(QWidget):
    """Labelled fields under each other, the complaint about each below it."""

    def __init__(self) -> None:
        super().__init__()
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(12)
        self._grid.setVerticalSpacing(4)
        self._grid.setColumnStretch(1, 1)
        self._grid.setColumnMinimumWidth(0, 140)
        self.errors: dict[str, ErrorLabel] = {}
        self.fields: dict[str, QWidget] = {}

    def add_row(
        self,
        key: str,
        label: str,
        *,
        field: QWidget,
        tip: str = "",
        focus: QWidget | None = None,
    ) -> None:
        """Add a row.

        Parameters
        ----------
        key : str
            Name by which `show_errors` knows the row.
        label : str
            What stands before the field.
        field : QWidget
            The field, or a widget that holds several.
        tip : str
            A sentence of help, shown on hover and read out.
        focus : QWidget, optional
            The field proper where `field` only holds it.
        """
        row = self._grid.rowCount()
        target = focus or field
        words = text_label(label)
        words.setWordWrap(False)
        words.setBuddy(target)
        words.setContentsMargins(0, 6, 0, 0)
        if not target.accessibleName():
            named(target, label)
        if tip:
            words.setToolTip(tip)
            target.setToolTip(tip)
            target.setAccessibleDescription(tip)
        error = ErrorLabel()
        self._grid.addWidget(words, row, 0, Qt.AlignmentFlag.AlignTop)
        self._grid.addWidget(field, row, 1)
        self._grid.addWidget(error, row + 1, 1)
        self.errors[key] = error
        self.fields[key] = target

    def add_heading(self, text: str) -> None:
        """Add a heading over the rows that follow."""
        heading = text_label(text, "strong")
        heading.setContentsMargins(0, 12, 0, 0)
        self._grid.addWidget(heading, self._grid.rowCount(), 0, 1, 2)

    def show_errors(self, errors: dict[str, str]) -> None:
        """Show complaints by key; rows without one are cleared."""
        for key, label in self.errors.items():
            label.show_error(errors.get(key, ""))

    def focus_first(self, errors: dict[str, str]) -> None:
        """Go to the first field that has a complaint."""
        for key, field in self.fields.items():
            if key in errors:
                field.setFocus(Qt.FocusReason.OtherFocusReason)
                return


def in_a_row(*widgets: QWidget, stretch: bool = True) -> QWidget:
    """Put widgets side by side; with `stretch` they keep to the left."""
    holder = QWidget()
    row = QHBoxLayout(holder)
    row.setContentsMargins(0, 0, 0, 0)
    row.setSpacing(8)
    for widget in widgets:
        row.addWidget(widget)
    if stretch:
        row.addStretch(1)
    return holder
