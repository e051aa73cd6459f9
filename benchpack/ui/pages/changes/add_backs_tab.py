"""What a change needs back: in the sum until a reason is given."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QFrame,
    QLabel,
    QLineEdit,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from benchpack.report.display import Display
from benchpack.report.proposal_text import mass_text, sized_text
from benchpack.results.ledger import AddedBack
from benchpack.results.wording import listed
from benchpack.ui.dialogs.frame import ErrorLabel
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.controls import text_label, unbroken


class AddBackRow(QWidget):
    """One add-back with its box; taking it out asks for a reason.

    Signals
    -------
    waived(str, str)
        Key of the add-back and why it is not needed, empty to put it back.

    Parameters
    ----------
    key : str
        Its name.
    parent : QWidget
        Owner.
    """

    waived = Signal(str, str)

    def __init__(self, key: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.key = key
        self._reason = ""
        self.box = QCheckBox(self)
        self.box.setAccessibleName(f"{key} is in the sum")
        self.words = text_label(role="note")
        self.words.setContentsMargins(24, 0, 0, 0)
        self.reason = QLineEdit(self)
        self.reason.setPlaceholderText("Why it is not needed, then Enter")
        self.reason.setAccessibleName(f"Why {key} is not needed")
        self.reason.hide()
        self._error = ErrorLabel()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 4)
        column.setSpacing(2)
        for widget in (self.box, self.words, self.reason, self._error):
            column.addWidget(widget)
        self.box.clicked.connect(self._on_box_clicked)
        self.reason.returnPressed.connect(self._on_reason_entered)

    def show_add_back(self, back: AddedBack, display: Display) -> None:
        """Show an add-back as it stands."""
        self._reason = back.waived
        with QSignalBlocker(self.box):
            self.box.setChecked(back.is_counted)
        self.box.setText(f"{self.key}, {mass_text(back.mass_kg, display)}")
        self.box.setEnabled(not back.covered_by)
        self.words.setText(unbroken(_words(back, display)))
        self.reason.setText(back.waived)
        self.reason.setVisible(bool(back.waived))
        self._error.show_error("")

    def _on_box_clicked(self) -> None:
        if self.box.isChecked():
            self.reason.hide()
            if self._reason:
                self.waived.emit(self.key, "")
            return
        # It stays in the sum until the reason stands.
        self.box.setChecked(True)
        self.reason.show()
        self.reason.setFocus(Qt.FocusReason.OtherFocusReason)

    def _on_reason_entered(self) -> None:
        reason = self.reason.text().strip()
        if not reason:
            self._error.show_error("A reason is needed. Say why, or press Esc.")
        elif reason != self._reason:
            self.waived.emit(self.key, reason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Leave it in the sum on Esc."""
        if event.key() == Qt.Key.Key_Escape and not self.reason.isHidden():
            self.reason.setText(self._reason)
            self.reason.setVisible(bool(self._reason))
            self._error.show_error("")
            self.box.setFocus()
        else:
            super().keyPressEvent(event)


def _words(back: AddedBack, display: Display) -> str:
    parts = listed(back.parts, most=3)
    held = f"For {parts}. " if parts else ""
    if back.covered_by:
        return f"{held}Not counted: {back.covered_by} is there already."
    if back.waived:
        return f"{held}Taken out of the sum: {back.waived}"
    sized = sized_text(back, display) or f"Mass {back.add_back.mark}."
    return f"{held}{back.add_back.rule} {sized}"


class AddBacksTab(QScrollArea):
    """The add-backs of the current change.

    Signals
    -------
    waived(str, str)
        As of `AddBackRow`.
    """

    waived = Signal(str, str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Add-backs")
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.rows: dict[str, AddBackRow] = {}
        self._body = QWidget(self.viewport())
        self._body.setAccessibleName("Add-backs of the change")
        self.sentence = QLabel(self._body)
        self.sentence.setWordWrap(True)
        set_text_role(self.sentence, "note")
        self._column = QVBoxLayout(self._body)
        self._column.setContentsMargins(8, 8, 8, 8)
        self._column.setSpacing(4)
        self._column.addWidget(self.sentence)
        self._column.addStretch(1)
        self.setWidget(self._body)

    def show_add_backs(
        self, backs: Sequence[AddedBack], display: Display, *, sentence: str
    ) -> None:
        """Show the add-backs of a change.

        Parameters
        ----------
        backs : sequence of AddedBack
            The add-backs.
        display : Display
            How masses are shown.
        sentence : str
            What stands above them.
        """
        self.sentence.setText(sentence)
        keys = [back.add_back.key for back in backs]
        if keys != list(self.rows):
            for row in self.rows.values():
                self._column.removeWidget(row)
                row.hide()
                row.deleteLater()
            self.rows = {key: AddBackRow(key, self._body) for key in keys}
            for place, row in enumerate(self.rows.values(), start=1):
                row.waived.connect(self.waived)
                self._column.insertWidget(place, row)
        for back in backs:
            self.rows[back.add_back.key].show_add_back(back, display)
