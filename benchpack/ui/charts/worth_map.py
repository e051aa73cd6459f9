"""Money over any two assumptions: where it is a gain and where a loss."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from benchpack.report.worth_specs import WorthMapSpec
from benchpack.ui.charts.field import between, sampled
from benchpack.ui.charts.map_field import MapField
from benchpack.ui.charts.map_marks import MapMarks
from benchpack.ui.charts.overlay import PlotArea, plot_area
from benchpack.ui.charts.zoom_chart import ZoomChart, in_steps
from benchpack.ui.palette import Roles

_REACH = 10.0
_STEPS = 40
_FAR = 5
_TOWARDS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Down: (0, -1),
    Qt.Key.Key_Up: (0, 1),
}
_PICK = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space)


class WorthMapChart(ZoomChart):
    """The coloured area with its break-even lines; its one item is the study's place.

    The arrow keys move a cursor over the area, five times as far with Shift; Home puts
    it onto the study.

    Signals
    -------
    spot_picked(float, float)
        The two assumptions at a double click, or at the cursor on Enter.
    """

    spot_picked = Signal(float, float)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Map of two assumptions", parent)
        self._spec = WorthMapSpec()
        self._names: list[str] = []
        self.field = MapField(self.plot)
        self.marks = MapMarks(self.plot, self.field)
        for overlay in (self.field, self.marks):
            self.add_overlay(overlay)
        self.recolour(self.tokens)

    @property
    def spec(self) -> WorthMapSpec:
        """What is shown."""
        return self._spec

    @property
    def spot(self) -> tuple[float, float] | None:
        """The two assumptions that the keyboard is at, None for none."""
        return self.marks.spot

    def show_spec(self, spec: WorthMapSpec) -> None:
        """Show a map; the view and the cursor stay while the two axes do."""
        before = self.home()
        self._spec = self.field.spec = self.marks.spec = spec
        self._names = [] if spec.here is None else [spec.here_text]
        self.begin(spec)
        self.frame.x_label, self.frame.y_label = spec.x_label, spec.y_label
        if not spec.is_empty:
            greatest = float(np.nanmax(np.abs(spec.values)))
            self.field.limit = spec.limit or greatest or 1.0
        if self.home() != before:
            self.marks.spot = None
            self.reset_view()
        self.finish()

    def home(self) -> tuple[float, ...]:
        """Give the whole area."""
        spec = self._spec
        if spec.is_empty:
            return ()
        ends = (spec.x[0], spec.x[-1], spec.y[0], spec.y[-1])
        return tuple(float(end) for end in ends)

    def right_room(self) -> float:
        """Give the scale at the right its room."""
        return in_steps(self.field.label_room())

    def take_colours(self, tokens: Roles) -> None:
        """Need nothing: the overlays ask for their colours when painted."""

    def mark_items(self) -> None:
        """Ring the study where it is selected or current."""
        if hasattr(self, "marks"):
            self.marks.here_is_selected = self.selected in self._names
            self.marks.here_is_current = self.current == 0
        super().mark_items()

    def text_summary(self) -> str:
        """Say the range of the money and what it is for the study."""
        spec = self._spec
        if spec.is_empty:
            return spec.empty_sentence
        ends = (float(np.nanmin(spec.values)), float(np.nanmax(spec.values)))
        low, high = (spec.format_full(end) for end in ends)
        said = f"{spec.title}. {spec.note}".strip(". ")
        text = f"{said}. {spec.value_label} from {low} to {high}."
        if spec.here is not None:
            text += f" {spec.here_text}: {self.readout_over(*spec.here)}."
        return f"{text} The arrow keys move over it.".replace("\n", ", ")

    def item_names(self) -> Sequence[str]:
        """Give the words of the study's place, where it has one."""
        return self._names

    def value_at(self, x: float, y: float) -> float:
        """Give the money between the places of the grid, nan where it is not known."""
        spec = self._spec
        down = between(spec.y, np.array([y]))
        across = between(spec.x, np.array([x]))
        return float(sampled(spec.values, down=down, across=across)[0, 0])

    def readout_over(self, x: float, y: float) -> str:
        """Give both assumptions and the money there, with its side in words."""
        spec = self._spec
        value = self.value_at(x, y)
        text = f"{spec.format_x(x)}, {spec.format_y(y)}\n"
        if np.isnan(value):
            return f"{text}not known here"
        side = spec.gain_text if value > 0 else spec.loss_text
        return text + spec.format_full(value) + (f", {side}" if value and side else "")

    def readout_at(self, index: int) -> str:
        """Give the figures of the study's place."""
        here = self._spec.here
        if here is None:
            return ""
        return f"{self._names[index]}\n{self.readout_over(*here)}"

    def item_position(self, index: int) -> QPointF:
        """Give the pixel of the study's place on the canvas."""
        del index
        return plot_area(self.plot).point(*(self._spec.here or (np.nan, np.nan)))

    def nearest(self, place: QPointF) -> int:
        """Give the study's place within 10 pixels, -1 for none."""
        if self._spec.is_empty or self._spec.here is None:
            return -1
        at = self.item_position(0)
        away = np.hypot(at.x() - place.x(), at.y() - place.y())
        return 0 if away <= _REACH else -1

    def keyboard_order(self) -> NDArray[np.intp]:
        """Give the study's place; the arrow keys move a cursor instead."""
        return np.arange(len(self._names), dtype=np.intp)

    def place_under(self, place: QPointF) -> tuple[float, float] | None:
        """Give the two assumptions at a pixel of the canvas, None beside the area."""
        area = plot_area(self.plot)
        part = None if self._spec.is_empty else self.field.part_in_view(area)
        if part is None or not area.rect.contains(place):
            return None
        x, y = _under(area, place)
        inside = part[0] <= x <= part[1] and part[2] <= y <= part[3]
        return (x, y) if inside else None

    def hover_text(self, place: QPointF) -> str:
        """Give the figures under the pointer, "" beside the area."""
        under = self.place_under(place)
        return "" if under is None else self.readout_over(*under)

    def answer_double_click(self, place: QPointF) -> None:
        """Tell which two assumptions were chosen."""
        under = self.place_under(place)
        if under is not None:
            self.spot_picked.emit(*under)

    def leave_item(self) -> None:
        """Take the cursor away too."""
        if hasattr(self, "marks") and self.marks.spot is not None:
            self.marks.spot = None
            self.marks.update()
        super().leave_item()

    def move_cursor(self, x: float, y: float) -> None:
        """Put the cursor onto a place of the area and read out what is there."""
        home = self.home()
        x, y = min(max(x, home[0]), home[1]), min(max(y, home[2]), home[3])
        self.marks.spot = (x, y)
        self.marks.update()
        at = plot_area(self.plot).point(x, y)
        self.readout.show_near(at.toPoint(), self.readout_over(x, y))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move the cursor with the arrows, pick with Enter; else as every chart."""
        key, cursor = Qt.Key(event.key()), self.marks.spot
        if self._spec.is_empty:
            super().keyPressEvent(event)
        elif key in _TOWARDS:
            far = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self._step_towards(*_TOWARDS[key], times=_FAR if far else 1)
        elif key == Qt.Key.Key_Home:
            self.move_cursor(*self._start())
        elif key in _PICK and cursor is not None:
            self.spot_picked.emit(*cursor)
        elif key == Qt.Key.Key_Escape and cursor is not None:
            self.leave_item()
        else:
            super().keyPressEvent(event)

    def _start(self) -> tuple[float, float]:
        """Give where the cursor begins: the study, else the middle of the area."""
        home = self.home()
        return self._spec.here or ((home[0] + home[1]) / 2, (home[2] + home[3]) / 2)

    def _step_towards(self, right: int, up: int, *, times: int) -> None:
        if self.marks.spot is None:
            self.move_cursor(*self._start())
            return
        (x_low, x_high), (y_low, y_high) = self.view.viewRange()
        x, y = self.marks.spot
        share = times / _STEPS
        self.move_cursor(
            x + right * share * (x_high - x_low), y + up * share * (y_high - y_low)
        )


def _under(area: PlotArea, place: QPointF) -> tuple[float, float]:
    """Give the data coordinates of a pixel."""
    across = (place.x() - area.rect.left()) / area.rect.width()
    up = (area.rect.bottom() - place.y()) / area.rect.height()
    x = area.x_low + across * (area.x_high - area.x_low)
    return x, area.y_low + up * (area.y_high - area.y_low)
