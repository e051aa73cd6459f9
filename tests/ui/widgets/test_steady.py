"""A held label asks for another layout only when it needs more room."""

from __future__ import annotations

from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from benchpack.ui.widgets.steady import Steady

LONG = "The gap is worth more than a line of words can say. " * 6


class Counting(QWidget):
    """A page that counts how often it is laid out."""

    def __init__(self, steady: Steady) -> None:
        super().__init__()
        self.layouts = 0
        column = QVBoxLayout(self)
        column.addWidget(steady)
        column.addStretch(1)
        self.resize(400, 300)

    def event(self, event: QEvent) -> bool:
        if event.type() is QEvent.Type.LayoutRequest:
            self.layouts += 1
        return super().event(event)


def shown(qtbot: QtBot, steady: Steady) -> Counting:
    page = Counting(steady)
    qtbot.addWidget(page)
    page.show()
    qtbot.waitExposed(page)
    settle(qtbot)
    page.layouts = 0
    return page


def settle(qtbot: QtBot) -> None:
    qtbot.wait(20)


def wrapped(text: str) -> QLabel:
    label = QLabel(text)
    label.setWordWrap(True)
    return label


def test_another_text_of_the_same_height_lays_nothing_out(qtbot: QtBot) -> None:
    label = wrapped("worth 30 EUR")
    page = shown(qtbot, Steady(label))
    for figure in range(40, 60):
        label.setText(f"worth {figure} EUR")
        settle(qtbot)
    assert page.layouts == 0
    assert label.size() == page.findChildren(Steady)[0].size()


def test_a_longer_text_gets_its_lines_and_gives_them_back(qtbot: QtBot) -> None:
    label = wrapped("short")
    page = shown(qtbot, Steady(label))
    one_line = label.height()
    label.setText(LONG)
    settle(qtbot)
    assert page.layouts
    assert label.height() == label.heightForWidth(label.width()) > 2 * one_line
    label.setText("short")
    settle(qtbot)
    assert label.height() == one_line


def test_a_narrower_page_wraps_the_text(qtbot: QtBot) -> None:
    label = wrapped(LONG)
    page = shown(qtbot, Steady(label))
    before = label.height()
    page.resize(200, 500)
    settle(qtbot)
    assert label.height() == label.heightForWidth(label.width()) > before


def test_lines_are_kept_free(qtbot: QtBot) -> None:
    label = wrapped("short")
    page = shown(qtbot, Steady(label, least_lines=2))
    assert page.isVisible()
    assert label.height() == 2 * label.fontMetrics().lineSpacing()


def test_a_wider_figure_gets_its_width(qtbot: QtBot) -> None:
    button = QPushButton("1")
    steady = Steady(button)
    page = QWidget()
    qtbot.addWidget(page)
    column = QVBoxLayout(page)
    column.addWidget(steady)
    page.show()
    qtbot.waitExposed(page)
    button.setText("1 234 567 EUR (1 000 000 to 2 000 000)" * 3)
    settle(qtbot)
    assert button.width() >= button.sizeHint().width()


def test_the_focus_goes_to_what_is_held(qtbot: QtBot) -> None:
    button = QPushButton("figure")
    steady = Steady(button)
    page = shown(qtbot, steady)
    page.activateWindow()
    steady.setFocus()
    assert page.focusWidget() is button
