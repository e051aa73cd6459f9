"""The plot itself: a view box with margins, and nothing that is not used."""

from __future__ import annotations

import pyqtgraph as pg
from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QColor, QMouseEvent
from PySide6.QtWidgets import QGraphicsGridLayout, QWidget

from benchpack.ui.theme import theme


class Plot(pg.GraphicsWidget):  # type: ignore[misc]  # pyqtgraph is untyped
    """A view box within margins.

    pyqtgraph's own plot item brings sixty hidden widgets for menus and axes
    that these charts draw themselves.

    Parameters
    ----------
    view : ViewBox
        Where the data lies.
    """

    def __init__(self, view: pg.ViewBox) -> None:
        super().__init__()
        self.vb = view
        self._grid = QGraphicsGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.addItem(view, 0, 0)
        self._margins = (0.0, 0.0, 0.0, 0.0)

    def add_item(self, item: object) -> None:
        """Put an item into the view."""
        self.vb.addItem(item)

    def set_margins(
        self, left: float, top: float, *, right: float, bottom: float
    ) -> None:
        """Leave room around the view, in pixels."""
        margins = (left, top, right, bottom)
        if margins != self._margins:
            self._margins = margins
            self._grid.setContentsMargins(*margins)
            self._grid.activate()


class Canvas(pg.GraphicsView):  # type: ignore[misc]  # pyqtgraph is untyped
    """The widget that shows a plot.

    Signals
    -------
    double_clicked(QPointF)
        A double click with the left button, and where.
    """

    double_clicked = Signal(QPointF)

    def __init__(self, plot: Plot, *, parent: QWidget) -> None:
        super().__init__(parent, background=QColor(theme().roles.panel))
        self.enableMouse(b=False)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.NoContextMenu)
        self.setAntialiasing(True)
        # A chart that moves does so as a whole, over a ground of its own: nothing
        # below it is drawn again, and no list of changed places is kept.
        self.setCacheMode(pg.GraphicsView.CacheModeFlag.CacheNone)
        self.setViewportUpdateMode(
            pg.GraphicsView.ViewportUpdateMode.FullViewportUpdate
        )
        self.viewport().setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setCentralItem(plot)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Tell of it; the scene would take it for a press."""
        if event.button() == Qt.MouseButton.LeftButton:
            self.double_clicked.emit(event.position())
        event.accept()
