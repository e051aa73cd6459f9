"""What all charts share: title, plot, note, colours, pictures."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QPainter, QPalette, QPicture
from PySide6.QtWidgets import QWidget

from benchpack.report.chart_specs import ChartSpec
from benchpack.ui.charts.chart_actions import ChartActions
from benchpack.ui.charts.chart_layout import ChartLayout
from benchpack.ui.charts.overlay import Frame, Overlay
from benchpack.ui.charts.readout import Readout
from benchpack.ui.charts.view import RowView, ZoomView
from benchpack.ui.palette import Roles
from benchpack.ui.theme import theme


class ChartBase(QWidget):
    """A chart without its mouse and keys: words, plot, colours, pictures.

    Signals
    -------
    picked(str)
        Name of the item that was clicked, or chosen with Enter.
    explain_requested(str)
        F1: the key of the figure that the chart shows.
    empty_action_requested()
        The button of the empty chart.
    said(str)
        A remark for the status line, for instance where a picture was saved.
    spec_shown()
        Another spec is shown.

    Parameters
    ----------
    kind : str
        What the chart is, for the screen reader.
    view : ViewBox
        How the plot answers to wheel and drag.
    """

    picked = Signal(str)
    explain_requested = Signal(str)
    empty_action_requested = Signal()
    said = Signal(str)
    spec_shown = Signal()

    def __init__(
        self, kind: str, *, view: ZoomView | RowView, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._kind = kind
        self._common = ChartSpec()
        self._current = -1
        self._selected = ""
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAutoFillBackground(True)
        self.setBackgroundRole(QPalette.ColorRole.Base)
        self.setAccessibleName(kind)
        self.tokens = theme().roles
        self.parts = ChartLayout(self, view=view)
        self.plot = self.parts.plot
        self.view = view
        self.frame = Frame(self.plot)
        self._overlays: list[Overlay] = [self.frame]
        self.readout = Readout(self.parts.canvas)
        self.actions_of_chart = ChartActions(self, reset=self.reset_view)
        self.parts.menu_button.setMenu(self.actions_of_chart.menu)
        self._connect()

    def _connect(self) -> None:
        self.parts.reset_button.clicked.connect(self.reset_view)
        self.parts.empty_button.clicked.connect(self.empty_action_requested)
        self.parts.canvas.double_clicked.connect(self._on_canvas_double_clicked)
        self.view.sigRangeChanged.connect(self._on_view_range_changed)
        self.plot.geometryChanged.connect(self._on_plot_geometry_changed)
        theme().theme_changed.connect(self._on_theme_changed)

    # What a subclass says about its items. Qt's metaclass leaves no room for that of
    # ABC, so a chart that lacks an answer says so when it is asked.

    @property
    def spec(self) -> ChartSpec:
        """What is shown."""
        raise NotImplementedError

    def item_names(self) -> Sequence[str]:
        """Give the names of the items, as the spec lists them."""
        raise NotImplementedError

    def readout_at(self, index: int) -> str:
        """Give the figures of an item with their units, one line each."""
        raise NotImplementedError

    def item_position(self, index: int) -> QPointF:
        """Give the place of an item in the canvas's pixels."""
        raise NotImplementedError

    def nearest(self, place: QPointF) -> int:
        """Give the item within reach of a place on the canvas, -1 for none."""
        raise NotImplementedError

    def keyboard_order(self) -> NDArray[np.intp]:
        """Give the items in the order in which the arrow keys visit them."""
        raise NotImplementedError

    def reset_view(self) -> None:
        """Show everything again."""
        raise NotImplementedError

    def is_zoomed(self) -> bool:
        """Whether the view is another than `reset_view` shows."""
        raise NotImplementedError

    def take_colours(self, tokens: Roles) -> None:
        """Recolour the items that do not ask for colours when painted."""
        raise NotImplementedError

    def fit_margins(self) -> None:
        """Give the texts around the plot the room they need."""
        raise NotImplementedError

    def answer_double_click(self, place: QPointF) -> None:
        """Show everything again, unless a subclass has a use for the place."""
        del place
        self.reset_view()

    def hover_text(self, place: QPointF) -> str:
        """Give a read-out for a place on the canvas that has no item near it."""
        del place
        return ""

    # What a page asks for ------------------------------------------------------

    @property
    def selected(self) -> str:
        """Name of the selected item, "" for none."""
        return self._selected

    @property
    def current(self) -> int:
        """Index of the item that the keyboard or the pointer is at, -1 for none."""
        return self._current

    def set_selected(self, name: str) -> None:
        """Mark an item as selected; "" marks none."""
        if name != self._selected:
            self._selected = name
            self.mark_items()

    def mark_items(self) -> None:
        """Show which items are selected and current."""
        for overlay in self._overlays:
            overlay.update()

    @property
    def explain_key(self) -> str:
        """Key of the figure that F1 asks about."""
        return self._common.explain_key

    def title_text(self) -> str:
        """Give the finding that stands above the plot."""
        return self._common.title

    def record_picture(self, tokens: Roles) -> QPicture:
        """Record the chart in the colours of any scheme, for a picture."""
        if not self.isVisible():
            self.grab()  # lays out a chart that was never shown
        picture, own = QPicture(), self.tokens
        self.readout.hide()
        if tokens is not own:
            self.recolour(tokens)
        with self.parts.plot_in_front():
            painter = QPainter(picture)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self.parts.draw(painter, tokens)
            painter.end()
        if tokens is not own:
            self.recolour(own)
        return picture

    def text_summary(self) -> str:
        """Say in words what the chart shows, for the screen reader."""
        if self._common.is_empty:
            return self._common.empty_sentence
        count = len(self.item_names())
        said = f"{self._common.title}. {self._common.note}".strip(". ")
        return f"{said}. {count} items; the arrow keys step through them."

    def add_overlay(self, overlay: Overlay) -> None:
        """Keep an overlay and repaint it when the view changes."""
        overlay.tokens = self.tokens
        self._overlays.append(overlay)

    def begin(self, spec: ChartSpec) -> None:
        """Show the words of a spec; subclasses call it first in ``show_spec``."""
        self._common = spec
        self.frame.decimal_mark = spec.decimal_mark
        self.parts.show_words(spec)
        if self._current >= len(self.item_names()):
            self.leave_item()

    def finish(self) -> None:
        """Repaint and describe; subclasses call it last in ``show_spec``."""
        self.fit_margins()
        self.setAccessibleDescription(self.text_summary())
        if self._current >= 0 and self.readout.isVisible():
            self.readout.setText(self.readout_at(self._current))
            self.readout.adjustSize()
        self.mark_items()
        self.spec_shown.emit()

    def recolour(self, tokens: Roles) -> None:
        """Take the colours of a scheme."""
        self.tokens = tokens
        self.parts.recolour(tokens)
        self.view.recolour(tokens)
        self.readout.recolour(tokens)
        for overlay in self._overlays:
            overlay.tokens = tokens
        self.take_colours(tokens)
        self.mark_items()

    def leave_item(self) -> None:
        """Hide the read-out and forget which item is current."""
        self.readout.hide()
        if self._current != -1:
            self._current = -1
            self.mark_items()

    def after_zoom(self) -> None:
        """Follow a new view; the ticks may need another margin."""
        self.fit_margins()

    def _on_canvas_double_clicked(self, place: QPointF) -> None:
        self.answer_double_click(place)

    def _on_view_range_changed(self) -> None:
        self.after_zoom()
        for overlay in self._overlays:
            overlay.update()
        self.parts.reset_button.setEnabled(self.is_zoomed())

    def _on_plot_geometry_changed(self) -> None:
        for overlay in self._overlays:
            overlay.grown()
        self.fit_margins()

    def _on_theme_changed(self, tokens: Roles) -> None:
        self.recolour(tokens)
