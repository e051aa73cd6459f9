"""The order in which Tab goes through a window."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget


def focus_chain(window: QWidget) -> Iterator[QWidget]:
    """Give everything in a window in the order of Tab.

    Parameters
    ----------
    window : QWidget
        The window; it comes last.
    """
    widget = window.nextInFocusChain()
    while widget is not None and widget is not window:
        yield widget
        widget = widget.nextInFocusChain()
    yield window


def let_tab_reach_last(areas: Sequence[QWidget]) -> None:
    """Let Tab reach some areas after everything else in their window.

    What is made later joins the end of the order; so this is asked for again.

    Parameters
    ----------
    areas : sequence of QWidget
        The areas of one window, in the order in which Tab is to reach them.
    """
    for area in areas:
        stops = [one for one in focus_chain(area.window()) if _is_stop(one)]
        last = stops[-1]
        for widget in stops:
            if area.isAncestorOf(widget) and widget is not last:
                QWidget.setTabOrder(last, widget)
                last = widget


def _is_stop(widget: QWidget) -> bool:
    takes_focus = widget.focusPolicy() & Qt.FocusPolicy.TabFocus
    return bool(takes_focus) and widget.focusProxy() is None
