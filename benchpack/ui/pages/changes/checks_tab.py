"""The checks of the current change: sign and word, then words and numbers."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QFrame, QScrollArea, QVBoxLayout, QWidget

from benchpack.results.change_checks import CAUTION
from benchpack.results.check import Check
from benchpack.ui.checks.checks_model import ChecksModel
from benchpack.ui.checks.checks_view import ChecksView
from benchpack.ui.widgets.controls import text_label, unbroken

COMPUTING = "computing"
"""Stands where a figure is out of date and the new one is not there yet."""
_DETAIL_SHARE, _LEAST_DETAIL, _BESIDE = 0.36, 18, 2.0


class ChangeChecksModel(ChecksModel):
    """Names what was checked before the part it was checked on."""

    def heading(self, check: Check) -> str:
        """Give kind and record of a check."""
        return f"{check.kind}, {check.record}"


class ChecksTab(QWidget):
    """Lists checks and says everything about the one that is chosen."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Checks of the change")
        self.model = ChangeChecksModel(self)
        self.view = ChecksView(self.model, self)
        self.sentence = text_label(role="note")
        self.detail = text_label(role="note")
        self.detail.setAlignment(Qt.AlignmentFlag.AlignTop)
        self._scroll = QScrollArea(self)
        self._scroll.setAccessibleName("The chosen check in full")
        self._scroll.setWidgetResizable(True)
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setWidget(self.detail)
        self._column = QVBoxLayout()
        self._column.setSpacing(4)
        self._body = QBoxLayout(QBoxLayout.Direction.TopToBottom, self)
        self._body.setContentsMargins(8, 8, 8, 4)
        self._body.setSpacing(8)
        self._body.addWidget(self.view, 3)
        self._body.addLayout(self._column, 2)
        self._column.addWidget(self._scroll, 1)
        self._column.addWidget(self.sentence)
        self.setFocusProxy(self.view)
        self.view.selectionModel().currentRowChanged.connect(self._on_row_changed)

    def show_checks(self, checks: tuple[Check, ...] | None, *, reason: str) -> None:
        """Show checks, or that they are being worked out.

        Parameters
        ----------
        checks : tuple of Check or None
            The checks, None while they are worked out.
        reason : str
            What is said where there are none.
        """
        row = self.view.currentIndex().row()
        self.model.show(checks or ())
        self.view.setVisible(bool(checks))
        if checks is None:
            self.sentence.setText(COMPUTING)
        else:
            self.sentence.setText(CAUTION if checks else reason)
        if checks:
            row = min(max(row, 0), len(checks) - 1)
            self.view.setCurrentIndex(self.model.index(row, 0))
        self._show_detail(row if checks else -1)

    def _on_row_changed(self, current: QModelIndex, previous: QModelIndex) -> None:
        del previous
        self._show_detail(current.row() if current.isValid() else -1)

    def _show_detail(self, row: int) -> None:
        checks = self.model.checks
        check = checks[row] if 0 <= row < len(checks) else None
        said = "" if check is None else f"{check.words} {check.remedy}".strip()
        self.detail.setText(unbroken(said))
        self._scroll.setVisible(bool(said))
        self._fit_detail()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Put list and detail beside each other where there is little height."""
        super().resizeEvent(event)
        beside = event.size().width() >= _BESIDE * event.size().height()
        way = QBoxLayout.Direction
        self._body.setDirection(way.LeftToRight if beside else way.TopToBottom)
        self._fit_detail()

    def _fit_detail(self) -> None:
        beside = self._body.direction() is QBoxLayout.Direction.LeftToRight
        asked = self.detail.heightForWidth(self._scroll.viewport().width())
        most = self.height() if beside else round(_DETAIL_SHARE * self.height())
        self._scroll.setMaximumHeight(max(_LEAST_DETAIL, min(asked, most)))
        self._body.setStretch(1, 2 if beside else 0)
