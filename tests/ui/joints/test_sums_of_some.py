"""A click on a sum of some joints explains that sum, not the pack's."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from benchpack.results.explain import explain
from benchpack.results.explain_joints import joints_record
from benchpack.results.inventory import Measure
from benchpack.ui.pages.joints.page import JointsPage
from tests.ui.joints.conftest import SUBJECT
from tests.ui.showing import plain

LEFT = Qt.MouseButton.LeftButton
SOME = ("lid screws", "lid gasket")


@pytest.mark.parametrize("measure", Measure)
def test_a_sum_of_selected_joints_is_explained(
    page: JointsPage, measure: Measure, qtbot: QtBot
) -> None:
    page.table.select_rows([0, 1])
    button = page.totals.figures.get(measure, page.totals.counted)
    with qtbot.waitSignal(page.workspace.explain_requested) as asked:
        QTest.mouseClick(button, LEFT)
    key, record = asked.args
    assert record == joints_record(SUBJECT, SOME)
    figure = explain(page.workspace.results, key, reference=record)
    assert figure.label.endswith("of Avocet 81, 2 of 5 rows")
    assert [item.label.split(":")[0] for item in figure.inputs[:2]] == list(SOME)
    assert "where it comes from" in button.toolTip()


def test_a_sum_of_shown_joints_is_explained(page: JointsPage, qtbot: QtBot) -> None:
    QTest.keyClicks(page.bar.filter.line, "count > 60")
    qtbot.waitUntil(lambda: page.totals.which.text() == "Shown:")
    record = page.totals.figures[Measure.MASS].explain_record
    assert record == joints_record(SUBJECT, ("lid screws", "harness clips"))


def test_f1_on_a_count_explains_the_pieces_of_the_row(page: JointsPage) -> None:
    page.table.go_to_joint("connector plate screws", "count")
    key, record = page.table.explain_key, page.table.explain_record
    figure = explain(page.workspace.results, key, reference=record)
    assert (figure.value, plain(figure.inputs[0].label)) == (
        16,
        "connector plate screws: 16 pieces",
    )
