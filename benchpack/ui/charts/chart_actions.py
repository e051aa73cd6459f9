"""What the menu of a chart does: reset, copy, save."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import Protocol, cast

from PySide6.QtCore import QObject, SignalInstance
from PySide6.QtGui import QAction, QGuiApplication, QKeySequence
from PySide6.QtWidgets import QFileDialog, QMenu, QWidget

from benchpack.errors import BenchpackError
from benchpack.report.chart_specs import ChartSpec
from benchpack.ui.assets import icon
from benchpack.ui.export.picture import (
    SCALES,
    PictureSource,
    copy_picture,
    picture_size,
    render_png,
    render_svg,
)
from benchpack.ui.tables.clipboard import to_text

USUAL_SCALE = 2
_NOT_IN_NAMES = re.compile(r"[^\w \-]+")


class Owner(PictureSource, Protocol):
    """What the menu asks of its chart."""

    @property
    def said(self) -> SignalInstance:
        """Takes remarks for the status line."""
        ...

    @property
    def spec(self) -> ChartSpec:
        """What is shown."""
        ...

    def title_text(self) -> str:
        """Give the title."""
        ...

    def accessibleName(self) -> str:
        """Give the kind of chart in words."""
        ...


def data_text(spec: ChartSpec) -> str:
    """Write the data of a chart for a spreadsheet, tab-separated and exact.

    Parameters
    ----------
    spec : ChartSpec
        What a chart shows.
    """
    from benchpack.report.chart_table import chart_table

    return to_text(chart_table(spec))


class ChartActions(QObject):
    """The menu of a chart and what its entries do.

    It keeps no reference to the chart but Qt's: a chart in a reference cycle
    could be collected while it is being painted, which ends the process.

    Parameters
    ----------
    owner : QWidget
        The chart, an `Owner` as well; parent of menu and dialogs.
    reset : callable or None
        Shows everything again; None for a chart that has no other view.
    """

    copy_keys = QKeySequence.StandardKey.Copy

    def __init__(self, owner: QWidget, *, reset: Callable[[], None] | None) -> None:
        super().__init__(owner)
        self.menu = QMenu(owner)
        if reset is not None:
            self._add("Reset view", "reset", reset)
            self.menu.addSeparator()
        self._add("Copy as picture", "picture", self.copy_picture)
        self._add("Copy data", "copy", self.copy_data)
        self.menu.addSeparator()
        self.scales = QMenu("Save as PNG", self.menu)
        self.scales.setIcon(icon("export", "second"))
        self.menu.addMenu(self.scales)
        for scale in SCALES:
            action = QAction(self.scales)
            action.setData(scale)
            action.triggered.connect(self._on_scale_chosen)
            self.scales.addAction(action)
        self.scales.aboutToShow.connect(self.name_scales)
        self.name_scales()
        self._add("Save as SVG…", "export", self.ask_and_save_svg)

    @property
    def _owner(self) -> Owner:
        return cast("Owner", self.parent())

    def _add(self, text: str, icon_name: str, slot: Callable[[], None]) -> None:
        action = QAction(icon(icon_name, "second"), text, self.menu)
        action.triggered.connect(slot)
        self.menu.addAction(action)

    def name_scales(self) -> None:
        """Say of each scale how many pixels the picture would have."""
        for action in self.scales.actions():
            size = picture_size(self._owner, scale=action.data())
            pixels = f"{size.width()} × {size.height()} pixels"
            action.setText(f"{action.data()}×, {pixels}…")

    def copy_picture(self) -> None:
        """Put a picture of the chart onto the clipboard."""
        copy_picture(self._owner, scale=USUAL_SCALE)
        self._owner.said.emit("Copied the chart as a picture")

    def copy_data(self) -> None:
        """Put the data onto the clipboard, for a spreadsheet."""
        QGuiApplication.clipboard().setText(data_text(self._owner.spec))
        self._owner.said.emit("Copied the data of the chart")

    def save(self, path: Path, *, scale: int = USUAL_SCALE) -> None:
        """Save the chart, as SVG or PNG by the ending of the file's name.

        Parameters
        ----------
        path : Path
            File to write.
        scale : int
            Pixels of a PNG per pixel of the screen, 1 to 4.
        """
        try:
            if path.suffix.lower() == ".svg":
                render_svg(self._owner, path, title=self._owner.title_text())
            else:
                render_png(self._owner, path, scale=scale)
        except BenchpackError as error:
            self._owner.said.emit(str(error))
            return
        self._owner.said.emit(f"Saved {path.name}")

    def ask_and_save_png(self, scale: int) -> None:
        """Ask for a place and save a PNG there."""
        self._ask_and_save("png", scale=scale)

    def ask_and_save_svg(self) -> None:
        """Ask for a place and save an SVG there."""
        self._ask_and_save("svg", scale=USUAL_SCALE)

    def _on_scale_chosen(self) -> None:
        action = self.sender()
        if isinstance(action, QAction):
            self.ask_and_save_png(int(action.data()))

    def _ask_and_save(self, ending: str, *, scale: int) -> None:
        kind = ending.upper()
        offered = _NOT_IN_NAMES.sub("", self._owner.accessibleName()).strip()
        name, _ = QFileDialog.getSaveFileName(
            self.menu.parentWidget(),
            f"Save as {kind}",
            f"{offered or 'Chart'}.{ending}",
            f"{kind} (*.{ending})",
        )
        if name:
            path = Path(name)
            right = path.suffix.lower() in (".png", ".svg")
            path = path if right else path.with_name(f"{path.name}.{ending}")
            self.save(path, scale=scale)
