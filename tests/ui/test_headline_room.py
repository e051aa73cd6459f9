"""The headline has room for the names of packs and writes numbers as the study does."""

from __future__ import annotations

from itertools import pairwise

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from tests.ui.test_headline_bar import headline_on

KEY = Qt.Key
LEAST_WIDTH, SMALL_WIDTH = 900, 1024


def type_worth(qtbot: QtBot, text: str, **study: object) -> float:
    bar = headline_on(qtbot, **study)
    bar.worth.setFocus()
    bar.worth.selectAll()
    QTest.keyClicks(bar.worth, text)
    QTest.keyClick(bar.worth, KEY.Key_Return)
    return bar.workspace.state.study.worth_likely_per_kg


def test_the_worth_has_the_decimal_mark_of_the_study(qtbot: QtBot) -> None:
    bar = headline_on(qtbot, decimal_mark=",", currency="CHF", mass_unit="lb")
    assert bar.worth.text() == "1,36 CHF/lb"
    bar.workspace.edit("mark", lambda state: state.with_study(decimal_mark="."))
    assert bar.worth.text() == "1.36 CHF/lb"


@pytest.mark.parametrize("mark", [".", ","])
@pytest.mark.parametrize("typed", ["4.25", "4,25"])
def test_point_and_comma_are_taken(qtbot: QtBot, mark: str, typed: str) -> None:
    assert type_worth(qtbot, typed, decimal_mark=mark) == 4.25


def test_the_arrow_keys_step_with_a_comma_too(qtbot: QtBot) -> None:
    bar = headline_on(qtbot, decimal_mark=",")
    bar.worth.setFocus()
    QTest.keyClick(bar.worth, KEY.Key_Up)
    assert bar.worth.text() == "3,10 EUR/kg"
    assert bar.workspace.state.study.worth_likely_per_kg == pytest.approx(3.1)


@pytest.mark.parametrize("typed", ["abc", "-3", "2000000", ","])
def test_what_is_no_worth_is_not_taken(qtbot: QtBot, typed: str) -> None:
    bar = headline_on(qtbot)
    bar.worth.setFocus()
    bar.worth.selectAll()
    bar.worth.lineEdit().insert(typed)
    QTest.keyClick(bar.worth, KEY.Key_Return)
    bar.basis.setFocus()
    assert 0 <= bar.workspace.state.study.worth_likely_per_kg <= 1e6
    assert bar.worth.text() == (
        f"{bar.workspace.state.study.worth_likely_per_kg:.2f} EUR/kg"
    )


@pytest.mark.parametrize("width", [LEAST_WIDTH, SMALL_WIDTH])
def test_nothing_in_the_headline_overlaps(qtbot: QtBot, width: int) -> None:
    bar = headline_on(qtbot)
    bar.resize(width, 120)
    QApplication.processEvents()
    row = bar.focus_order()[:6]
    for left, right in pairwise(row):
        assert left.geometry().right() < right.geometry().left()
    assert row[-1].geometry().right() < width


def test_a_name_as_long_as_most_is_whole_in_a_small_window(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    bar.subject.show_names(["Sandpiper 66", "Knot 42"])
    bar.subject.show_name("Sandpiper 66")
    bar.resize(SMALL_WIDTH, 120)
    QApplication.processEvents()
    assert not bar.subject.edit.is_cut
    assert bar.subject.toolTip() == ""


def test_a_name_that_is_cut_is_said_whole_on_hover(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    name = "A very long name of a pack that nobody can read in a line <b>"
    bar.subject.show_names([name])
    bar.subject.show_name(name)
    bar.resize(SMALL_WIDTH, 120)
    QApplication.processEvents()
    assert bar.subject.edit.is_cut
    assert bar.subject.currentText() == name
    assert "nobody can read in a line &lt;b&gt;" in bar.subject.toolTip()
    cut = bar.subject.edit.grab().toImage()
    bar.subject.edit.setText("A very long name")
    assert bar.subject.edit.grab().toImage() != cut
