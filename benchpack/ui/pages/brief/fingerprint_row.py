"""The fingerprint of the study: shown, explained, copied."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QGridLayout, QWidget

from benchpack.results.fingerprint import short_fingerprint
from benchpack.ui.theme import SPACE_BETWEEN, SPACE_INSIDE
from benchpack.ui.widgets.controls import named, plain_button, text_label

WORKED_OUT = "being worked out"
_EXPLAINED = (
    "Whoever opens the study with this fingerprint has the same data, and so gets the "
    "same figures."
)


class FingerprintRow(QWidget):
    """Shows the first digits; all of them are copied.

    Signals
    -------
    said(str)
        A remark for the status line.
    """

    said = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self._whole = ""
        self.digits = named(text_label(WORKED_OUT), "Fingerprint of the study")
        self.copy_button = named(
            plain_button("Copy", "Copy all 64 digits"), "Copy the fingerprint"
        )
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(SPACE_BETWEEN)
        grid.setVerticalSpacing(SPACE_INSIDE)
        grid.setColumnStretch(0, 1)
        grid.addWidget(text_label("Fingerprint", "strong"), 0, 0, 1, 2)
        grid.addWidget(self.digits, 1, 0)
        grid.addWidget(self.copy_button, 1, 1)
        grid.addWidget(text_label(_EXPLAINED, "note"), 2, 0, 1, 2)
        self.copy_button.clicked.connect(self._on_copy_clicked)
        self.show_fingerprint("")

    def show_fingerprint(self, fingerprint: str) -> None:
        """Show a fingerprint, or that it is being worked out.

        Parameters
        ----------
        fingerprint : str
            All digits, empty for none.
        """
        self._whole = fingerprint
        self.digits.setText(short_fingerprint(fingerprint) or WORKED_OUT)
        self.digits.setToolTip(fingerprint)
        self.copy_button.setEnabled(bool(fingerprint))

    def _on_copy_clicked(self) -> None:
        QGuiApplication.clipboard().setText(self._whole)
        self.said.emit("Copied the fingerprint")
