"""Packs by energy and mass, with rays of equal density and the trend."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pyqtgraph as pg
from numpy.typing import NDArray
from PySide6.QtCore import QPointF
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QWidget

from benchpack.report.chart_specs import EnergyMassSpec, FloatArray
from benchpack.ui.charts.density_rays import DensityRays
from benchpack.ui.charts.overlay import plot_area
from benchpack.ui.charts.pack_labels import PackLabels
from benchpack.ui.charts.trend_band import BandOverlay
from benchpack.ui.charts.zoom_chart import ZoomChart
from benchpack.ui.palette import Roles

_REACH = 12.0
_MANY = 500


class EnergyMassChart(ZoomChart):
    """Scatter of energy against mass: subject, reference, peers, trend."""

    top_margin = 40

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("Energy against mass", parent)
        self._spec = EnergyMassSpec()
        self._shown: FloatArray = np.empty(0)
        self.peers = pg.ScatterPlotItem(pxMode=True, symbol="o")
        self.marks = pg.ScatterPlotItem(pxMode=True)
        self.rays = DensityRays(self.plot)
        self.band = BandOverlay(self.plot)
        self.labels = PackLabels(self.plot)
        for item in (self.peers, self.marks):
            self.plot.add_item(item)
        for overlay in (self.rays, self.band, self.labels):
            self.add_overlay(overlay)
        self.recolour(self.tokens)

    @property
    def spec(self) -> EnergyMassSpec:
        """What is shown."""
        return self._spec

    def show_spec(self, spec: EnergyMassSpec) -> None:
        """Show packs; the view stays where it is while the data range stays."""
        before = self.home()
        self._spec = spec
        self.begin(spec)
        self.frame.x_label, self.frame.y_label = spec.x_label, spec.y_label
        self.rays.show_rays(spec)
        self.band.show_band(spec.trend)
        self._place_points()
        if not spec.is_empty and self.home() != before:
            self.reset_view()
        self.labels.show_packs(spec)
        self.mark_items()
        self.finish()

    def _index_of(self, name: str) -> int:
        return self.labels.index_of(name)

    def _place_points(self) -> None:
        spec = self._spec
        known = np.isfinite(spec.energy) & np.isfinite(spec.mass)
        self.labels.learn_names(spec.names)
        chosen = [self._index_of(spec.subject), self._index_of(spec.reference)]
        is_peer = known.copy()
        is_peer[[index for index in chosen if index >= 0]] = False
        self._move_peers(spec.energy[is_peer], spec.mass[is_peer])
        self._colour_marks(self.tokens)

    def _move_peers(self, x: FloatArray, y: FloatArray) -> None:
        if len(x) != len(self.peers.data):
            self._set_peers(x, y, self.tokens)
            return
        # Styles cost 3 us a point and stay; only the places are new.
        self.peers.data["x"], self.peers.data["y"] = x, y
        self.peers.viewTransformChanged()
        self.peers.invalidate()

    def _set_peers(self, x: FloatArray, y: FloatArray, tokens: Roles) -> None:
        many = len(x) > _MANY
        pen = pg.mkPen(tokens.peer, width=1.0 if many else 1.5)
        self.peers.setData(x=x, y=y, size=6 if many else 9, pen=pen, brush=None)

    def _colour_marks(self, tokens: Roles) -> None:
        spec = self._spec
        spots = [
            {
                "pos": (spec.energy[index], spec.mass[index]),
                "symbol": symbol,
                "size": size,
                "brush": QColor(ink),
                "pen": pg.mkPen(tokens.panel, width=1.5),
            }
            for name, symbol, size, ink in (
                (spec.reference, "d", 16, tokens.reference),
                (spec.subject, "o", 13, tokens.subject),
            )
            if (index := self._index_of(name)) >= 0
            and np.isfinite(spec.energy[index] + spec.mass[index])
        ]
        self.marks.setData(spots)

    def home(self) -> tuple[float, ...]:
        """Give what lies around all packs."""
        spec = self._spec
        if spec.is_empty:
            return ()
        x = spec.energy_range or _padded(spec.energy)
        y = spec.mass_range or _padded(spec.mass)
        return (*x, *y)

    def right_room(self) -> float:
        """Give the labels of the rays their room."""
        return self.rays.label_room()

    def take_colours(self, tokens: Roles) -> None:
        """Recolour the points."""
        x, y = self.peers.getData()
        self._set_peers(x, y, tokens)
        self._colour_marks(tokens)

    def mark_items(self) -> None:
        """Label and ring the selected and the current pack."""
        if hasattr(self, "labels"):
            self.labels.mark(self._index_of(self.selected), self.current)
        super().mark_items()

    def item_names(self) -> Sequence[str]:
        """Give the names of all packs, as the spec lists them."""
        return self._spec.names

    def readout_at(self, index: int) -> str:
        """Give name, energy, mass and density of a pack."""
        spec = self._spec
        energy, mass = float(spec.energy[index]), float(spec.mass[index])
        density = spec.ray_factor * energy / mass if mass > 0 else float("nan")
        role = {spec.subject: ", subject", spec.reference: ", reference"}
        name = spec.names[index]
        return (
            f"{name}{role.get(name, '')}\n{spec.format_energy(energy)}, "
            f"{spec.format_mass(mass)}, {spec.format_density(density)}"
        )

    def item_position(self, index: int) -> QPointF:
        """Give the pixel of a pack on the canvas."""
        spec = self._spec
        area = plot_area(self.plot)
        return area.point(float(spec.energy[index]), float(spec.mass[index]))

    def nearest(self, place: QPointF) -> int:
        """Give the pack within 12 pixels of a place, -1 for none."""
        spec = self._spec
        if spec.is_empty:
            return -1
        area = plot_area(self.plot)
        away = np.hypot(area.x(spec.energy) - place.x(), area.y(spec.mass) - place.y())
        away[~np.isfinite(away)] = np.inf
        index = int(np.argmin(away))
        return index if away[index] <= _REACH else -1

    def keyboard_order(self) -> NDArray[np.intp]:
        """Give the packs by rising energy."""
        spec = self._spec
        known = np.flatnonzero(np.isfinite(spec.energy) & np.isfinite(spec.mass))
        return known[np.argsort(spec.energy[known], kind="stable")]


def _padded(values: FloatArray) -> tuple[float, float]:
    low, high = float(np.nanmin(values)), float(np.nanmax(values))
    room = 0.12 * (high - low) if high > low else 0.15 * abs(high) or 1.0
    return low - room, high + room
