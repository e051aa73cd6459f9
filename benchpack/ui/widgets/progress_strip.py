"""A slim strip in the status line that shows work in the background."""

from __future__ import annotations

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QWidget

from benchpack.ui.tasks import BackgroundRunner
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.controls import named, plain_button, text_label

APPEARS_AFTER_MS = 200
"""Work that is over sooner is not worth a strip."""


class ProgressStrip(QWidget):
    """Words, a bar and a way to stop the work that was begun first.

    Parameters
    ----------
    runner : BackgroundRunner, optional
        Whose work is shown.
    parent : QWidget, optional
        Where the strip lies.

    Signals
    -------
    cancel_requested(str)
        Key of the work to stop.
    """

    cancel_requested = Signal(str)

    def __init__(
        self, runner: BackgroundRunner | None = None, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName("Work in the background")
        self._running: dict[str, str] = {}
        self._words = text_label(role="note")
        self._words.setWordWrap(False)
        self._bar = named(QProgressBar(), "Progress")
        self._bar.setTextVisible(False)
        self._bar.setFixedWidth(160)
        self._cancel = plain_button("Cancel", "Stop this work")
        set_text_role(self._cancel, "note")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        for widget in (self._words, self._bar, self._cancel):
            row.addWidget(widget)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(APPEARS_AFTER_MS)
        self._timer.timeout.connect(self._on_time_up)
        self._cancel.clicked.connect(self._on_cancel_clicked)
        self.hide()
        if runner is not None:
            self.watch(runner)

    def watch(self, runner: BackgroundRunner) -> None:
        """Show the work of a runner, and stop it when asked to."""
        runner.started.connect(self.on_started)
        runner.progressed.connect(self.on_progressed)
        runner.ended.connect(self.on_ended)
        self.cancel_requested.connect(runner.cancel)

    def on_started(self, key: str, words: str) -> None:
        """Remember work that began; the strip appears when it takes long."""
        first = not self._running
        self._running[key] = words
        if first:
            self._show(words, 0, 0)
            self._timer.start()

    def on_progressed(self, key: str, done: int, total: int, words: str) -> None:
        """Show how far the work is."""
        if key not in self._running:
            return
        self._running[key] = words or self._running[key]
        if key == next(iter(self._running)):
            self._show(self._running[key], done, total)

    def on_ended(self, key: str) -> None:
        """Forget work that is over."""
        self._running.pop(key, None)
        if not self._running:
            self._timer.stop()
            self.hide()
            return
        self._show(next(iter(self._running.values())), 0, 0)

    def _show(self, words: str, done: int, total: int) -> None:
        self._words.setText(words or "Working")
        # Qt counts in 32 bits, files in bytes do not.
        self._bar.setRange(0, 1000 if total > 0 else 0)
        if total > 0:
            self._bar.setValue(min(1000, 1000 * done // total))

    def _on_time_up(self) -> None:
        if self._running:
            self.show()

    def _on_cancel_clicked(self) -> None:
        if self._running:
            self.cancel_requested.emit(next(iter(self._running)))
