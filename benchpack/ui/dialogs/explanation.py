"""Where does this come from? A small window that answers for one figure."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QCursor, QGuiApplication
from PySide6.QtWidgets import (
    QDialog,
    QHBoxLayout,
    QVBoxLayout,
    QWidget,
)

from benchpack.errors import RequestError
from benchpack.report.display import number_style
from benchpack.report.explanation import (
    explanation_table,
    explanation_text,
)
from benchpack.results.explain import explain
from benchpack.results.figure import Figure
from benchpack.ui.dialogs.explanation_rows import rows_widget
from benchpack.ui.widgets.controls import (
    fit_height,
    hairline,
    named,
    place_beside,
    plain_button,
    text_label,
)
from benchpack.ui.workspace import Workspace
from benchpack.units.formatting import NumberStyle

_WIDTH = 620


class ExplanationPanel(QDialog):
    """Shows formula, inputs and sources of a figure and follows the document.

    Parameters
    ----------
    workspace : Workspace
        The open document and its results.
    parent : QWidget, optional
        The window it belongs to.
    """

    def __init__(self, workspace: Workspace, parent: QWidget | None = None) -> None:
        super().__init__(parent, Qt.WindowType.Tool)
        self.workspace = workspace
        self._key = ""
        self._reference = ""
        self._figure: Figure | None = None
        self.setWindowTitle("Where does this come from?")
        named(self, "Where does this come from?")
        self._label = text_label(role="section")
        self._value = text_label(role="figure")
        self._rows = QWidget()
        self._copy = plain_button("Copy", "Copy with full precision")
        self._close = plain_button("Close", "Close (Esc)")
        self._copy.clicked.connect(self.copy_figure)
        self._close.clicked.connect(self.close)
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        buttons.addWidget(self._copy)
        buttons.addWidget(self._close)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(16, 16, 16, 16)
        self._column.setSpacing(8)
        for widget in (self._label, self._value, hairline(), self._rows):
            self._column.addWidget(widget)
        self._column.addStretch(1)
        self._column.addLayout(buttons)
        workspace.changed.connect(self._on_workspace_changed)
        workspace.opened.connect(self.close)

    def ask(self, key: str, reference: str = "") -> bool:
        """Explain a figure.

        Parameters
        ----------
        key : str
            Name of the figure, one of `results.explain.EXPLAINED`.
        reference : str
            The reference it belongs to, by default that of the study.

        Returns
        -------
        bool
            False when there is no such figure; the status line then says why.
        """
        try:
            figure = explain(self.workspace.results, key, reference=reference)
        except RequestError as error:
            self.workspace.notifier.say(str(error))
            return False
        self._key, self._reference = key, reference
        self.show_figure(figure, style=number_style(self.workspace.results.study))
        return True

    def forget(self) -> None:
        """Forget what was asked; the figure that is shown next stands alone."""
        self._key = self._reference = ""

    def show_figure(self, figure: Figure, *, style: NumberStyle) -> None:
        """Show a figure that is already worked out.

        Parameters
        ----------
        figure : Figure
            The figure.
        style : NumberStyle
            How numbers are shown.
        """
        self._figure = figure
        said = explanation_text(figure, style=style)
        self._label.setText(said.label)
        self._value.setText(said.value)
        rows = rows_widget(said)
        self._column.replaceWidget(self._rows, rows)
        self._rows.hide()
        self._rows.deleteLater()
        self._rows = rows
        # Qt shows it later, and what is not shown yet takes no room.
        rows.show()
        fit_height(self, _WIDTH)

    def copy_figure(self) -> None:
        """Put the figure and its inputs on the clipboard as tab-separated text."""
        if self._figure is None:
            return
        rows = explanation_table(self._figure)
        text = "\n".join("\t".join(row) for row in rows)
        QGuiApplication.clipboard().setText(text)
        self.workspace.notifier.say(f"Copied: {self._figure.label}")

    def _on_workspace_changed(self, _change: object) -> None:
        # A figure that was handed over cannot be asked for anew: it is out of date.
        if self.isVisible() and not (
            self._key and self.ask(self._key, self._reference)
        ):
            self.close()


def _asked_at(anchor: QWidget) -> QRect:
    """Give the place of what asks; of a whole window, the line under the pointer."""
    place = QRect(anchor.mapToGlobal(QPoint(0, 0)), anchor.size())
    if not anchor.isWindow():
        return place
    pointer = QCursor.pos()
    at = pointer if place.contains(pointer) else place.center()
    return QRect(at.x(), at.y() - 8, 1, 16)


def show_explanation(
    workspace: Workspace, key: str, reference: str, anchor: QWidget
) -> ExplanationPanel | None:
    """Explain a figure in the window's one explanation panel.

    Parameters
    ----------
    workspace : Workspace
        The open document and its results.
    key : str
        Name of the figure.
    reference : str
        The reference it belongs to; empty for that of the study.
    anchor : QWidget
        What shows the figure; the panel opens beside it.

    Returns
    -------
    ExplanationPanel or None
        None when there is no such figure.
    """
    panel = _panel(workspace, anchor)
    if not panel.ask(key, reference):
        return None
    _open(panel, anchor)
    return panel


def show_figure(
    workspace: Workspace, figure: Figure, *, style: NumberStyle, anchor: QWidget
) -> ExplanationPanel:
    """Explain a figure that is worked out, in the window's one explanation panel.

    Parameters
    ----------
    workspace : Workspace
        The open document; when it changes, the panel closes.
    figure : Figure
        The figure.
    style : NumberStyle
        How numbers are shown.
    anchor : QWidget
        What shows the figure; the panel opens beside it.
    """
    panel = _panel(workspace, anchor)
    panel.forget()
    panel.show_figure(figure, style=style)
    _open(panel, anchor)
    return panel


def _panel(workspace: Workspace, anchor: QWidget) -> ExplanationPanel:
    window = anchor.window()
    return window.findChild(ExplanationPanel) or ExplanationPanel(workspace, window)


def _open(panel: ExplanationPanel, anchor: QWidget) -> None:
    if not panel.isVisible():
        around = anchor.screen().availableGeometry()
        panel.move(place_beside(_asked_at(anchor), panel.rect(), around))
    panel.show()
    panel.raise_()
    panel.activateWindow()
