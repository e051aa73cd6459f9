"""The panel that says where a figure comes from."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QCursor, QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel, QPushButton, QWidget
from pytestqt.qtbot import QtBot

from benchpack.ui.dialogs.explanation import (
    ExplanationPanel,
    show_explanation,
)
from benchpack.ui.dialogs.formula_markup import symbols_markup
from benchpack.ui.widgets.controls import place_beside
from benchpack.ui.workspace import Workspace
from tests.ui.dialogs.small_library import Said


@pytest.fixture
def anchor(qtbot: QtBot) -> QWidget:
    window = QWidget()
    qtbot.addWidget(window)
    window.resize(400, 300)
    window.show()
    return window


def opened(workspace: Workspace, anchor: QWidget, key: str) -> ExplanationPanel:
    panel = show_explanation(workspace, key, "", anchor)
    assert panel is not None
    return panel


def texts(panel: ExplanationPanel) -> list[str]:
    return [w.text() for w in panel.findChildren(QLabel) if not w.isHidden()]


def test_it_shows_value_formula_inputs_and_source(
    workspace: Workspace, anchor: QWidget
) -> None:
    panel = opened(workspace, anchor, "gap as weighed")
    shown = texts(panel)
    assert "52.0\u00a0kg" in shown
    assert "m<sub>s</sub> \u2212 m<sub>r</sub>" in shown
    assert "m<sub>s</sub>, mass of Avocet 81" in shown
    assert {"500.0", "448.0", "weighed"} <= set(shown)
    assert panel.isVisible()
    assert not panel.isModal()


def test_one_panel_serves_all_questions(workspace: Workspace, anchor: QWidget) -> None:
    first = opened(workspace, anchor, "gap as weighed")
    second = opened(workspace, anchor, "density")
    assert first is second
    assert "162\u00a0Wh/kg" in texts(second)
    assert "52.0\u00a0kg" not in texts(second)


def test_another_reference_can_be_asked_for(
    workspace: Workspace, anchor: QWidget
) -> None:
    panel = show_explanation(workspace, "gap as weighed", "Curlew 60", anchor)
    assert panel is not None
    assert "108.0\u00a0kg" in texts(panel)


def test_a_figure_that_is_not_known_is_a_remark(
    workspace: Workspace, anchor: QWidget, said: Said
) -> None:
    assert show_explanation(workspace, "colour", "", anchor) is None
    assert said.remarks == ["There is no figure 'colour'."]


def test_it_follows_an_edit(workspace: Workspace, anchor: QWidget) -> None:
    panel = opened(workspace, anchor, "value likely")
    workspace.edit("worth", lambda state: state.with_study(currency="USD"))
    assert any(text.endswith("USD") for text in texts(panel))


def test_it_closes_when_its_figure_is_gone(
    workspace: Workspace, anchor: QWidget
) -> None:
    panel = opened(workspace, anchor, "density")
    workspace.edit("subject", lambda state: state.with_study(subject=""))
    assert not panel.isVisible()


def test_copy_takes_full_precision(
    workspace: Workspace, anchor: QWidget, said: Said
) -> None:
    panel = opened(workspace, anchor, "density share")
    copy = next(b for b in panel.findChildren(QPushButton) if b.text() == "Copy")
    QTest.mouseClick(copy, Qt.MouseButton.LeftButton)
    lines = QGuiApplication.clipboard().text().split("\n")
    value = float(lines[0].split("\t")[1])
    assert value == pytest.approx(500 - 448 * 81 / 74, rel=1e-14)
    assert said.remarks[-1].startswith("Copied: ")


def test_escape_closes_it(workspace: Workspace, anchor: QWidget) -> None:
    panel = opened(workspace, anchor, "density")
    QTest.keyClick(panel, Qt.Key.Key_Escape)
    assert not panel.isVisible()


def test_marks_in_a_name_are_shown_not_obeyed() -> None:
    assert symbols_markup("m_s <b>") == "m<sub>s</sub> &lt;b&gt;"
    assert symbols_markup("m_hat(E_s)") == "m\u0302(E<sub>s</sub>)"
    assert symbols_markup("(m_r - c_r) x^b").endswith("x<sup>b</sup>")


def test_it_opens_under_its_anchor_and_stays_on_the_screen() -> None:
    screen, size = QRect(0, 0, 1000, 700), QRect(0, 0, 600, 300)
    low = place_beside(QRect(700, 600, 80, 20), size, screen)
    assert (low.x(), low.y()) == (399, 292)
    high = place_beside(QRect(10, 10, 80, 20), size, screen)
    assert (high.x(), high.y()) == (10, 37)


def test_asked_from_a_window_it_opens_at_the_pointer(
    workspace: Workspace, anchor: QWidget
) -> None:
    pointer = anchor.mapToGlobal(QPoint(60, 40))
    QCursor.setPos(pointer)
    panel = opened(workspace, anchor, "gap as weighed")
    assert panel.y() > pointer.y()
