"""What the menu of a chart does: reset, copy, save."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Protocol, cast

from PySide6.QtCore import QObject, SignalInstance
from PySide6.QtGui import QAction, QGuiApplication, QKeySequence
from PySide6.QtWidgets import QFileDialog, QMenu, QWidget

from benchpack.errors import BenchpackError
from benchpack.ui.assets import icon
from benchpack.ui.export.picture import (
    PictureSource,
    copy_picture,
    render_png,
    render_svg,
)

Rows = list[list[str | float]]
_PNG_SCALE = 3


def tab_separated(rows: Rows) -> str:
    """Write rows as tab-separated text, numbers in full precision."""
    return "".join(
        "\t".join(cell if isinstance(cell, str) else repr(float(cell)) for cell in row)
        + "\n"
        for row in rows
    )


class Owner(PictureSource, Protocol):
    """What the menu asks of its chart."""

    @property
    def said(self) -> SignalInstance:
        """Takes remarks for the status line."""
        ...

    def title_text(self) -> str:
        """Give the title."""
        ...

    def to_frame(self) -> Rows:
        """Give the data."""
        ...

    def reset_view(self) -> None:
        """Show everything again."""
        ...


class ChartActions(QObject):
    """The menu of a chart and what its entries do.

    It keeps no reference to the chart but Qt's: a chart in a reference cycle
    could be collected while it is being painted, which ends the process.

    Parameters
    ----------
    owner : QWidget
        The chart, an `Owner` as well; parent of menu and dialogs.
    """

    copy_keys = QKeySequence.StandardKey.Copy

    def __init__(self, owner: QWidget) -> None:
        super().__init__(owner)
        self.menu = QMenu(owner)
        self._add("Reset view", "reset", self._owner.reset_view)
        self.menu.addSeparator()
        self._add("Copy as picture", "picture", self.copy_picture)
        self._add("Copy data", "copy", self.copy_data)
        self.menu.addSeparator()
        self._add("Save as PNG…", "export", self.ask_and_save_png)
        self._add("Save as SVG…", "export", self.ask_and_save_svg)

    @property
    def _owner(self) -> Owner:
        return cast("Owner", self.parent())

    def _add(self, text: str, icon_name: str, slot: Callable[[], None]) -> None:
        action = QAction(icon(icon_name, "second"), text, self.menu)
        action.triggered.connect(slot)
        self.menu.addAction(action)

    def copy_picture(self) -> None:
        """Put a picture of the chart onto the clipboard."""
        copy_picture(self._owner)
        self._owner.said.emit("Copied the chart as a picture")

    def copy_data(self) -> None:
        """Put the data onto the clipboard, for a spreadsheet."""
        QGuiApplication.clipboard().setText(tab_separated(self._owner.to_frame()))
        self._owner.said.emit("Copied the data of the chart")

    def save(self, path: Path) -> None:
        """Save the chart, as SVG or PNG by the ending of the file's name."""
        try:
            if path.suffix.lower() == ".svg":
                render_svg(self._owner, path, title=self._owner.title_text())
            else:
                render_png(self._owner, path, scale=_PNG_SCALE)
        except BenchpackError as error:
            self._owner.said.emit(str(error))
            return
        self._owner.said.emit(f"Saved {path.name}")

    def ask_and_save_png(self) -> None:
        """Ask for a place and save a PNG there."""
        self._ask_and_save("png")

    def ask_and_save_svg(self) -> None:
        """Ask for a place and save an SVG there."""
        self._ask_and_save("svg")

    def _ask_and_save(self, ending: str) -> None:
        kind = ending.upper()
        name, _ = QFileDialog.getSaveFileName(
            self.menu.parentWidget(),
            f"Save as {kind}",
            f"chart.{ending}",
            f"{kind} (*.{ending})",
        )
        if name:
            path = Path(name)
            self.save(path if path.suffix else path.with_suffix(f".{ending}"))
