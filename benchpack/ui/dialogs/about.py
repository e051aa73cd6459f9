"""What the program is, its licences, and the cautions that go with it."""

from __future__ import annotations

from PySide6.QtWidgets import QDialog, QHBoxLayout, QVBoxLayout, QWidget

from benchpack import __version__
from benchpack.places import log_file
from benchpack.report.cautions_text import CAUTIONS, DEMO_CAUTION
from benchpack.ui.widgets.controls import (
    fit_height,
    hairline,
    named,
    plain_button,
    text_label,
)

_WHAT = (
    "A desktop bench for comparing traction battery packs, finding where their mass "
    "sits, and valuing a lighter one."
)
_LICENCES = (
    "Benchpack is free software under the MIT licence. The typeface is Inter, under "
    "the SIL Open Font License 1.1; its text lies beside the font. Qt and Qt for "
    "Python are used under the LGPL version 3."
)


class AboutDialog(QDialog):
    """Name, version, licences and cautions.

    Parameters
    ----------
    parent : QWidget, optional
        The window it belongs to.
    """

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("About Benchpack")
        named(self, "About Benchpack")
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 24, 24, 16)
        column.setSpacing(8)
        column.addWidget(text_label("Benchpack", "figure"))
        column.addWidget(text_label(f"Version {__version__}", "note"))
        column.addWidget(text_label(_WHAT))
        column.addSpacing(8)
        column.addWidget(hairline())
        column.addSpacing(8)
        column.addWidget(text_label("Cautions", "section"))
        for caution in (*CAUTIONS, DEMO_CAUTION):
            column.addWidget(text_label(caution))
        column.addSpacing(8)
        column.addWidget(hairline())
        column.addSpacing(8)
        column.addWidget(text_label(_LICENCES, "note"))
        column.addWidget(text_label(f"Log file: {log_file()}", "note"))
        column.addStretch(1)
        close = plain_button("Close", "Close (Esc)")
        close.setDefault(True)
        close.clicked.connect(self.accept)
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        buttons.addWidget(close)
        column.addLayout(buttons)
        fit_height(self, 560)
