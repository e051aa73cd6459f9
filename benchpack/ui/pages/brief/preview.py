"""The pages of a brief under each other, as they would be printed."""

from __future__ import annotations

import math
from typing import Literal

from PySide6.QtCore import QEvent, QRectF, QSizeF, Signal
from PySide6.QtGui import (
    QColor,
    QImage,
    QKeyEvent,
    QKeySequence,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QAbstractScrollArea, QFrame, QWidget

from benchpack.ui.brief.pages import BriefPages
from benchpack.ui.brief.paper import FINENESS
from benchpack.ui.pages.brief.spoken_text import spoken_text
from benchpack.ui.theme import SPACE_AROUND, theme
from benchpack.ui.widgets.controls import named

Zoom = Literal["width", "page", "full"]

_MOST_SCALE = 2.0
"""Beyond this a page on a wide screen is coarse reading and many pixels."""
_STEP = 48


class BriefPreview(QAbstractScrollArea):
    """Shows the pages of a brief; paints those that are in view.

    The paper stays light whatever the window wears.

    Signals
    -------
    page_changed(int, int)
        Number from 1 of the page in view, 0 for none, and how many there are.

    Parameters
    ----------
    parent : QWidget, optional
        Owner.
    """

    page_changed = Signal(int, int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        named(self, "Preview of the brief")
        self.setFrameShape(QFrame.Shape.NoFrame)
        self._pages: BriefPages | None = None
        self._images: dict[int, QImage] = {}
        self._zoom: Zoom = "width"
        self._page = (0, 0)
        for bar in (self.verticalScrollBar(), self.horizontalScrollBar()):
            bar.setSingleStep(_STEP)
            bar.valueChanged.connect(self._on_scrolled)
        theme().theme_changed.connect(self._on_theme_changed)

    @property
    def zoom(self) -> Zoom:
        """What fits the view: the width of a page, the whole of it, or nothing."""
        return self._zoom

    @property
    def page(self) -> int:
        """Number from 1 of the page in view, 0 for none."""
        return self._page[0]

    @property
    def page_count(self) -> int:
        """How many pages there are."""
        return self._pages.page_count if self._pages is not None else 0

    def show_pages(self, pages: BriefPages | None) -> None:
        """Show another brief; the place stays where it can.

        Parameters
        ----------
        pages : BriefPages or None
            The pages, None for nothing.
        """
        bar = self.verticalScrollBar()
        place = bar.value() / max(1.0, self._pitch())
        self._pages = pages
        self._images.clear()
        self.setAccessibleDescription(spoken_text(pages.brief) if pages else "")
        self._lay_out()
        bar.setValue(round(place * self._pitch()))
        self._tell_page()
        self.viewport().update()

    def set_zoom(self, zoom: Zoom) -> None:
        """Fit the width of a page, or the whole of it, or show it in full size."""
        if zoom == self._zoom:
            return
        page = self.page
        self._zoom = zoom
        self._lay_out()
        self.go_to_page(page)

    def go_to_page(self, page: int) -> None:
        """Bring the top of a page into view.

        Parameters
        ----------
        page : int
            Its number from 1; beyond the ends the first or the last.
        """
        place = min(max(page, 1), max(1, self.page_count)) - 1
        self.verticalScrollBar().setValue(math.floor(place * self._pitch()))
        self._tell_page()

    # Where pages lie ------------------------------------------------------------

    def _paper(self) -> QSizeF:
        """Give the size of the sheet in painted pixels."""
        return self._pages.paper.size / FINENESS if self._pages else QSizeF(1, 1)

    def _scale(self) -> float:
        if self._zoom == "full":
            return 1.0
        paper, room = self._paper(), self.viewport().size()
        wide = (room.width() - 2 * SPACE_AROUND) / paper.width()
        high = (room.height() - 2 * SPACE_AROUND) / paper.height()
        fitting = wide if self._zoom == "width" else min(wide, high)
        return min(max(fitting, 0.05), _MOST_SCALE)

    def _pitch(self) -> float:
        """Give the distance from the top of a page to that of the next."""
        return self._paper().height() * self._scale() + SPACE_AROUND

    def _box(self, place: int) -> QRectF:
        """Give where a page lies in the view."""
        size = self._paper() * self._scale()
        left = max(SPACE_AROUND, (self.viewport().width() - size.width()) / 2)
        left -= self.horizontalScrollBar().value()
        top = SPACE_AROUND + place * self._pitch() - self.verticalScrollBar().value()
        return QRectF(round(left), round(top), size.width(), size.height())

    def _lay_out(self) -> None:
        self._images.clear()
        bar, high = self.verticalScrollBar(), self.viewport().height()
        whole = SPACE_AROUND + self.page_count * self._pitch()
        bar.setRange(0, max(0, math.ceil(whole - high)) if self._pages else 0)
        is_whole = self._zoom == "page"
        bar.setPageStep(round(self._pitch()) if is_whole else max(1, high - _STEP))
        room = self.viewport().width()
        wide = self._paper().width() * self._scale() + 2 * SPACE_AROUND
        is_wide = self._pages is not None and self._zoom == "full"
        self.horizontalScrollBar().setRange(
            0, max(0, math.ceil(wide - room)) if is_wide else 0
        )
        self.horizontalScrollBar().setPageStep(room)
        self.viewport().update()

    def _tell_page(self) -> None:
        count = self.page_count
        middle = self.verticalScrollBar().value() + self.viewport().height() / 2
        place = math.floor((middle - SPACE_AROUND / 2) / self._pitch())
        told = (min(max(place, 0), count - 1) + 1 if count else 0, count)
        if told != self._page:
            self._page = told
            self.page_changed.emit(*told)

    def _image(self, place: int) -> QImage:
        """Give a page as painted for this view, painted once."""
        found = self._images.get(place)
        if found is None:
            assert self._pages is not None
            fine = self.devicePixelRatioF()
            found = self._pages.image(place, scale=self._scale() * fine)
            found.setDevicePixelRatio(fine)
            self._images[place] = found
        return found

    def _on_scrolled(self) -> None:
        self._tell_page()
        self.viewport().update()

    def _on_theme_changed(self) -> None:
        self.viewport().update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the pages in view and forget the others."""
        del event
        painter = QPainter(self.viewport())
        view = QRectF(self.viewport().rect())
        painter.fillRect(view, QColor(theme().roles.ground))
        painter.setPen(QPen(QColor(theme().roles.hairline), 1))
        for place in range(self.page_count):
            box = self._box(place)
            if not box.intersects(view):
                self._images.pop(place, None)
                continue
            painter.drawImage(box.topLeft(), self._image(place))
            painter.drawRect(box)
        painter.end()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the page in view."""
        super().resizeEvent(event)
        bar = self.verticalScrollBar()
        place = bar.value() / max(1, bar.maximum())
        self._lay_out()
        bar.setValue(round(place * bar.maximum()))
        self._tell_page()

    def changeEvent(self, event: QEvent) -> None:
        """Paint anew where the screen is finer or coarser."""
        super().changeEvent(event)
        if event.type() is QEvent.Type.DevicePixelRatioChange:
            self._images.clear()
            self.viewport().update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go to the first or last page; the arrows and Page Up and Down scroll."""
        if event.matches(QKeySequence.StandardKey.MoveToStartOfLine):
            self.go_to_page(1)
        elif event.matches(QKeySequence.StandardKey.MoveToEndOfLine):
            self.verticalScrollBar().setValue(self.verticalScrollBar().maximum())
        else:
            super().keyPressEvent(event)
