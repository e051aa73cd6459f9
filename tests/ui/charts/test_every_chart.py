"""What all charts do alike."""

from __future__ import annotations

import gc
import weakref
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QAccessible, QGuiApplication, QImage, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from benchpack.report.chart_rows import chart_rows
from benchpack.ui.charts.chart import Chart
from benchpack.ui.charts.energy_mass import EnergyMassChart
from benchpack.ui.charts.fan import FanChart
from benchpack.ui.charts.gap_bars import GapBarsChart
from benchpack.ui.charts.pareto import ParetoChart
from benchpack.ui.charts.programme import ProgrammeChart
from benchpack.ui.charts.sets import SetsChart
from benchpack.ui.charts.shares import SharesChart
from benchpack.ui.charts.swings import SwingsChart
from benchpack.ui.charts.waterfall import WaterfallChart
from benchpack.ui.charts.worth_map import WorthMapChart
from benchpack.ui.palette import Scheme, roles
from benchpack.ui.theme import apply_theme
from tests.ui.charts import samples


@dataclass(frozen=True)
class Case:
    """A kind of chart, its spec, an item and what is read out there."""

    chart: Callable[..., Any]
    spec: Callable[[], Any]
    name: str
    readout: str


CASES = {
    "energy mass": Case(
        EnergyMassChart,
        samples.energy_mass,
        "Curlew 95",
        "Curlew 95\n95.0 kWh, 598.0 kg, 159 Wh/kg",
    ),
    "gap bars": Case(
        GapBarsChart,
        samples.gap_bars,
        "Dunlin 74",
        "Dunlin 74, reference\n8.5 kg, subject heavier\n4.5 kg to 12.5 kg (±2 u)",
    ),
    "waterfall": Case(
        WaterfallChart, samples.waterfall, "Tray", "Tray\n15.3 kg\n52.0 kg so far"
    ),
    "pareto": Case(
        ParetoChart,
        samples.pareto,
        "flange screw",
        "flange screw\n2.4 kg, 30 % of all\n1.2 kg of it has to stay\n"
        "90 % down to here\n3 rows",
    ),
    "fan": Case(
        FanChart,
        samples.fan,
        "gap as counted",
        "gap as counted\n11.3 kg saved, 34 EUR (23 EUR to 68 EUR)",
    ),
    "swings": Case(
        SwingsChart,
        samples.swings,
        "lid: release",
        "lid: release\nlow: −12 EUR, high: 8 EUR",
    ),
    "programme": Case(
        ProgrammeChart,
        samples.programme,
        "year 3",
        "year 3\n80 EUR (45 EUR to 115 EUR) in the year\n60 EUR present value so far",
    ),
    "worth map": Case(
        WorthMapChart,
        samples.worth_map,
        "this study",
        "this study\n3.00 EUR/kg, 50 %\n5 EUR, gain",
    ),
    "shares": Case(
        SharesChart,
        samples.shares,
        "lid: release",
        "lid: release\n21 % alone, standard error 2 %\n"
        "30 % with others, standard error 3 %\n84 % release",
    ),
    "sets": Case(
        SetsChart,
        samples.sets,
        "ours",
        "ours, in use\n34 EUR (20 EUR to 68 EUR)",
    ),
}
LISTED = [name for name in CASES if name != "worth map"]
"""The charts whose keys step from item to item; on a map they move a cursor."""


@pytest.fixture(params=list(CASES))
def case(request: pytest.FixtureRequest) -> Case:
    return CASES[request.param]


@pytest.fixture
def chart(qtbot: QtBot, case: Case) -> Chart:
    made: Chart = case.chart()
    qtbot.addWidget(made)
    made.resize(640, 420)
    made.show_spec(case.spec())  # type: ignore[attr-defined]  # each kind has its own
    made.show()
    qtbot.waitExposed(made)
    QCoreApplication.processEvents()
    return made


def place_of(chart: Chart, name: str) -> QPoint:
    return chart.item_position(list(chart.item_names()).index(name)).toPoint()


def turn_wheel(widget: QWidget, place: QPoint) -> None:
    event = QWheelEvent(
        QPointF(place),
        QPointF(widget.mapToGlobal(place)),
        QPoint(0, 0),
        QPoint(0, 120),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,  # noqa: FBT003  # Qt's signature
    )
    QCoreApplication.sendEvent(widget, event)


def test_a_click_picks(qtbot: QtBot, chart: Chart, case: Case) -> None:
    canvas = chart.parts.canvas.viewport()
    with qtbot.waitSignal(chart.picked) as heard:
        QTest.mouseClick(
            canvas, Qt.MouseButton.LeftButton, pos=place_of(chart, case.name)
        )
    assert heard.args == [case.name]


def test_hovering_reads_out_and_leaving_hides(
    qtbot: QtBot, chart: Chart, case: Case
) -> None:
    canvas = chart.parts.canvas.viewport()
    place = place_of(chart, case.name)
    QTest.mouseMove(canvas, place - QPoint(1, 0))
    QTest.mouseMove(canvas, place)
    qtbot.waitUntil(chart.readout.isVisible)
    assert chart.readout.text() == case.readout
    inside = chart.parts.canvas.rect()
    assert inside.contains(chart.readout.geometry())
    QCoreApplication.sendEvent(chart, QEvent(QEvent.Type.Leave))
    assert not chart.readout.isVisible()


@pytest.mark.parametrize("case", LISTED, indirect=True)
def test_arrows_step_and_enter_picks(qtbot: QtBot, chart: Chart) -> None:
    order = chart.keyboard_order().tolist()
    seen = []
    for _ in order:
        QTest.keyClick(chart, Qt.Key.Key_Down)
        seen.append(chart.current)
    assert seen == order
    QTest.keyClick(chart, Qt.Key.Key_Down)
    assert chart.current == order[-1]
    QTest.keyClick(chart, Qt.Key.Key_Home)
    assert chart.current == order[0]
    QTest.keyClick(chart, Qt.Key.Key_Right)
    with qtbot.waitSignal(chart.picked) as heard:
        QTest.keyClick(chart, Qt.Key.Key_Return)
    assert heard.args == [chart.item_names()[order[1]]]
    QTest.keyClick(chart, Qt.Key.Key_Escape)
    assert chart.current == -1


def test_f1_asks_for_the_explanation(qtbot: QtBot, chart: Chart, case: Case) -> None:
    with qtbot.waitSignal(chart.explain_requested) as heard:
        QTest.keyClick(chart, Qt.Key.Key_F1)
    assert heard.args == [case.spec().explain_key]


def test_empty_shows_a_sentence_and_a_button(qtbot: QtBot, case: Case) -> None:
    chart = case.chart()
    qtbot.addWidget(chart)
    empty = type(case.spec())(
        empty_sentence="No pack has a mass.", empty_action_text="Weigh in a pack"
    )
    chart.show_spec(empty)
    chart.show()
    assert chart.parts.is_empty
    assert chart.parts.empty_label.isVisible()
    assert chart.parts.empty_label.text() == "No pack has a mass."
    assert not chart.parts.canvas.isVisible()
    with qtbot.waitSignal(chart.empty_action_requested):
        QTest.mouseClick(chart.parts.empty_button, Qt.MouseButton.LeftButton)
    chart.show_spec(case.spec())
    assert chart.parts.canvas.isVisible()
    assert not chart.parts.empty_label.isVisible()


def test_an_empty_chart_without_an_action_has_no_button(
    qtbot: QtBot, case: Case
) -> None:
    chart = case.chart()
    qtbot.addWidget(chart)
    chart.show_spec(type(case.spec())())
    chart.show()
    assert not chart.parts.empty_button.isVisible()


def test_screen_readers_get_words(chart: Chart, case: Case) -> None:
    spoken = QAccessible.queryAccessibleInterface(chart)
    assert spoken.text(QAccessible.Text.Name) == chart.accessibleName() != ""
    assert case.spec().title in spoken.text(QAccessible.Text.Description)
    for button in (chart.parts.reset_button, chart.parts.menu_button):
        assert button.accessibleName()


def test_the_scheme_recolours_at_once(
    qapp: QApplication, chart: Chart, case: Case
) -> None:
    apply_theme(qapp, Scheme.DARK)
    QCoreApplication.processEvents()
    image = chart.grab().toImage()
    panel = roles(Scheme.DARK).panel
    assert image.pixelColor(4, image.height() - 4).name().upper() == panel
    middle = chart.parts.canvas.geometry().bottomRight() - QPoint(2, 2)
    canvas = chart.parts.canvas.grab().toImage()
    assert canvas.pixelColor(2, middle.y()).name().upper() == panel
    assert chart.frame.tokens is roles(Scheme.DARK)


def test_copying_data_keeps_full_precision(chart: Chart) -> None:
    chart.actions_of_chart.copy_data()
    lines = QGuiApplication.clipboard().text().splitlines()
    rows = chart_rows(chart.spec)
    assert lines[0].split("\t") == rows[0]
    for line, row in zip(lines[1:], rows[1:], strict=True):
        for text, cell in zip(line.split("\t"), row, strict=True):
            if isinstance(cell, str):
                assert text == cell
            else:
                assert text == "" if cell != cell else float(text) == cell


def test_ctrl_c_copies_data(qtbot: QtBot, chart: Chart) -> None:
    QGuiApplication.clipboard().clear()
    with qtbot.waitSignal(chart.said):
        QTest.keyClick(chart, Qt.Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert "\t" in QGuiApplication.clipboard().text()


def test_the_menu_is_ours(chart: Chart) -> None:
    texts = [one.text() for one in chart.actions_of_chart.menu.actions() if one.text()]
    assert texts == [
        "Reset view",
        "Copy as picture",
        "Copy data",
        "Save as PNG",
        "Save as SVG…",
    ]
    chart.actions_of_chart.scales.aboutToShow.emit()
    scales = [one.text() for one in chart.actions_of_chart.scales.actions()]
    assert scales[0] == "1×, 640 × 420 pixels…"
    assert scales[3] == "4×, 2560 × 1680 pixels…"


@pytest.mark.parametrize("case", LISTED, indirect=True)
def test_the_wheel_zooms_and_a_double_click_resets(qtbot: QtBot, chart: Chart) -> None:
    before = chart.view.viewRange()
    assert not chart.parts.reset_button.isEnabled()
    middle = chart.view.rect().center()
    place = chart.view.mapToScene(middle).toPoint()
    canvas = chart.parts.canvas.viewport()
    turn_wheel(canvas, place)
    low, high = chart.view.viewRange()[0]
    assert high - low < before[0][1] - before[0][0]
    assert chart.parts.reset_button.isEnabled()
    QTest.mouseClick(canvas, Qt.MouseButton.LeftButton, pos=place)
    QTest.mouseDClick(canvas, Qt.MouseButton.LeftButton, pos=place)
    for old, new in zip(before, chart.view.viewRange(), strict=True):
        assert new == pytest.approx(old)
    assert not chart.parts.reset_button.isEnabled()


def test_selecting_repaints(chart: Chart, case: Case) -> None:
    before: QImage = chart.grab().toImage()
    chart.set_selected(case.name)
    assert chart.selected == case.name
    assert chart.grab().toImage() != before
    chart.set_selected("")
    assert chart.grab().toImage() == before


def test_a_new_title_and_note_are_shown(chart: Chart, case: Case) -> None:
    other = replace(case.spec(), title="Another finding", note="Another note")
    chart.show_spec(other)  # type: ignore[attr-defined]  # each kind has its own
    assert chart.parts.title.text() == "Another finding"
    assert chart.parts.note.text() == "Another note"
    assert "Another finding" in chart.accessibleDescription()


@pytest.mark.parametrize("size", [(480, 300), (1600, 1000)])
def test_resizing_keeps_the_plot_filled(
    qtbot: QtBot, chart: Chart, size: tuple[int, int]
) -> None:
    chart.resize(*size)
    QCoreApplication.processEvents()
    assert chart.frame.boundingRect().width() == pytest.approx(
        chart.parts.canvas.width(), abs=3
    )
    assert chart.view.rect().width() > 0.5 * chart.parts.canvas.width()
    index = int(chart.keyboard_order()[0])
    assert chart.nearest(QPointF(chart.item_position(index))) == index


def test_a_chart_dies_with_its_last_reference(qapp: QApplication, case: Case) -> None:
    """A chart in a cycle could be collected while it is painted: a crash."""
    gc.collect()
    gc.disable()
    try:
        chart = case.chart()
        chart.resize(640, 420)
        chart.show_spec(case.spec())
        chart.show()
        QCoreApplication.processEvents()
        held = weakref.ref(chart)
        del chart
        assert held() is None
    finally:
        gc.enable()


def test_nothing_keeps_a_deleted_chart_alive(qapp: QApplication, case: Case) -> None:
    parent = QWidget()
    chart = case.chart(parent)
    chart.show_spec(case.spec())
    parent.show()
    QCoreApplication.processEvents()
    held = weakref.ref(chart)
    chart.deleteLater()
    del chart
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    QCoreApplication.processEvents()
    assert held() is None
    apply_theme(qapp, Scheme.DARK)  # a dead chart would be called here
    parent.close()
