"""What is handed over, each file with a button and a line that says what it is."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QPushButton, QWidget

from benchpack.results.results import Results
from benchpack.ui.handover.handed_files import FILES, HandedFile
from benchpack.ui.theme import SPACE_BETWEEN, SPACE_INSIDE
from benchpack.ui.widgets.controls import named, plain_button, text_label


class ExportsPanel(QWidget):
    """Offers the files; one that cannot be written says why.

    Signals
    -------
    wanted(str)
        Key of the file that is asked for.
    """

    wanted = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self.buttons: dict[str, QPushButton] = {}
        self.lines: dict[str, QLabel] = {}
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(SPACE_BETWEEN)
        grid.setVerticalSpacing(SPACE_INSIDE)
        grid.setColumnStretch(1, 1)
        grid.addWidget(text_label("Hand over", "strong"), 0, 0, 1, 2)
        for row, file in enumerate(FILES, start=1):
            button, line = plain_button(file.button), text_label(role="note")
            named(button, file.button.rstrip("…"))
            button.setProperty("file", file.key)
            button.clicked.connect(self._on_button_clicked)
            self.buttons[file.key], self.lines[file.key] = button, line
            grid.addWidget(button, row, 0)
            grid.addWidget(line, row, 1)

    def show_results(self, results: Results) -> None:
        """Say of each file what it is, or why it cannot be written.

        Parameters
        ----------
        results : Results
            The results of the study.
        """
        for file in FILES:
            self._show_file(file, results)

    def _show_file(self, file: HandedFile, results: Results) -> None:
        reason = file.lacks(results)
        words = reason or file.what.format(subject=results.study.subject)
        self.lines[file.key].setText(words)
        button = self.buttons[file.key]
        button.setEnabled(not reason)
        button.setAccessibleDescription(words)

    def _on_button_clicked(self) -> None:
        button = self.sender()
        if isinstance(button, QPushButton):
            self.wanted.emit(str(button.property("file")))
