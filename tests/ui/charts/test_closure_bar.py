from __future__ import annotations

import gc
import weakref
from dataclasses import replace

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from benchpack.report.chart_specs import ClosureSpec, Verdict
from benchpack.ui.charts.closure_bar import ClosureBar
from benchpack.ui.charts.closure_drawing import bar_rect, segments
from benchpack.ui.palette import Scheme, roles
from benchpack.ui.theme import apply_theme
from tests.ui.charts import samples


@pytest.fixture
def bar(qtbot: QtBot) -> ClosureBar:
    made = ClosureBar()
    qtbot.addWidget(made)
    made.resize(600, 80)
    made.show_spec(samples.closure())
    made.show()
    QCoreApplication.processEvents()
    return made


def test_segments_are_to_scale(bar: ClosureBar) -> None:
    whole = bar_rect(600)
    boxes = segments(samples.closure(), whole)
    widths = [box.width() / whole.width() for box in boxes]
    assert widths == pytest.approx([0.75, 0.15, 0.015])
    assert boxes[0].left() == whole.left()


def test_a_sum_above_the_pack_fills_the_bar() -> None:
    spec = replace(samples.closure(), pack_mass=300.0)
    whole = bar_rect(600)
    assert segments(spec, whole)[-1].right() == pytest.approx(whole.right())


def test_an_unknown_pack_mass_is_no_obstacle(bar: ClosureBar) -> None:
    bar.show_spec(replace(samples.closure(), pack_mass=float("nan")))
    bar.grab()
    assert bar.readout_at(0) == "cells\n300.0 kg"


@pytest.mark.parametrize("verdict", ["good", "look", "fail"])
def test_the_verdict_has_its_colour_and_word(bar: ClosureBar, verdict: Verdict) -> None:
    bar.show_spec(
        replace(samples.closure(), verdict=verdict, verdict_text=f"{verdict}: a word")
    )
    image = bar.grab().toImage()
    wanted = getattr(roles(Scheme.LIGHT), verdict)
    seen = {image.pixelColor(x, y).name().upper() for x in range(90) for y in range(34)}
    assert wanted in seen
    assert f"{verdict}: a word" in bar.accessibleDescription()


def test_a_click_picks(qtbot: QtBot, bar: ClosureBar) -> None:
    with qtbot.waitSignal(bar.picked) as heard:
        QTest.mouseClick(
            bar, Qt.MouseButton.LeftButton, pos=bar.segment_centre(1).toPoint()
        )
    assert heard.args == ["tray"]


def test_hovering_reads_out(qtbot: QtBot, bar: ClosureBar) -> None:
    QTest.mouseMove(bar, bar.segment_centre(1).toPoint())
    qtbot.waitUntil(bar.readout.isVisible)
    assert bar.readout.text() == "tray\n60.0 kg, 15 % of the pack"


def test_keys_step_pick_and_explain(qtbot: QtBot, bar: ClosureBar) -> None:
    QTest.keyClick(bar, Qt.Key.Key_Right)
    QTest.keyClick(bar, Qt.Key.Key_Right)
    assert bar.current == 1
    with qtbot.waitSignal(bar.picked) as heard:
        QTest.keyClick(bar, Qt.Key.Key_Return)
    assert heard.args == ["tray"]
    with qtbot.waitSignal(bar.explain_requested) as asked:
        QTest.keyClick(bar, Qt.Key.Key_F1)
    assert asked.args == ["closure"]


def test_empty_says_so(bar: ClosureBar) -> None:
    bar.show_spec(ClosureSpec(empty_sentence="No part is recorded."))
    bar.grab()
    assert bar.accessibleDescription() == "No part is recorded."
    assert bar.nearest(bar.rect().center().toPointF()) == -1


def test_the_scheme_recolours(qapp: QApplication, bar: ClosureBar) -> None:
    before = bar.grab().toImage()
    apply_theme(qapp, Scheme.DARK)
    QCoreApplication.processEvents()
    assert bar.tokens is roles(Scheme.DARK)
    assert bar.grab().toImage() != before


def test_nothing_keeps_a_deleted_bar_alive(qapp: QApplication) -> None:
    bar = ClosureBar()
    bar.show_spec(samples.closure())
    bar.show()
    held = weakref.ref(bar)
    bar.close()
    bar.deleteLater()
    del bar
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    gc.collect()
    assert held() is None
