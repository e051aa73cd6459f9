"""A block from a spreadsheet: where it goes, and what is said of it."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from benchpack.errors import Problem
from benchpack.ui.pages.joints.page import JointsPage
from tests.ui.joints.conftest import joint, names

CTRL_SHIFT = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier


def paste(page: JointsPage, block: str) -> None:
    QApplication.clipboard().setText(block)
    page.table.setFocus()
    QTest.keyClick(page.table, Qt.Key.Key_V, CTRL_SHIFT)


def test_pasted_rows_are_selected_so_that_they_are_seen(page: JointsPage) -> None:
    page.table.go_to_joint("lid screws")
    paste(page, "joint\tcount\nhatch screws\t12\nhatch nuts\t12\n")
    selected = [facts.joint.name for facts in page.table.selected_facts()]
    assert selected == ["hatch screws", "hatch nuts"]
    assert page.totals.counted.text() == "24 pieces"


def test_without_heads_the_columns_are_those_shown(page: JointsPage) -> None:
    block = "hatch screws\tISO 4762 M5x16 8.8\t12\t\tlid panel\ttray floor\n"
    paste(page, block)
    new = joint(page, "hatch screws")
    assert (new.designation, new.count) == ("ISO 4762 M5x16 8.8", 12)
    assert (new.joins, new.to) == ("lid panel", "tray floor")


def test_a_block_that_is_taken_withdraws_the_refusal_before(page: JointsPage) -> None:
    listed: list[tuple[Problem, ...]] = []
    headings: list[str] = []

    def hear(heading: str, problems: tuple[Problem, ...]) -> None:
        headings.append(heading)
        listed.append(problems)

    page.workspace.notifier.problems_found.connect(hear)
    before = names(page)
    paste(page, "joint\tcount\nno screws\t0\n")
    assert names(page) == before
    assert [problem.what for problem in listed[-1]] == ["count is 0."]
    paste(page, "joint\tcount\nhatch screws\t12\n")
    assert headings[-1] == headings[0]
    assert listed[-1] == ()


@pytest.mark.parametrize("text", ["ISO 4017 M8x20 7.7", "ISO 4762 M6x20-99.9"])
def test_a_class_that_is_not_known_is_said_with_its_row(
    page: JointsPage, text: str
) -> None:
    paste(page, f"joint\tdesignation\tcount\nodd screws\t{text}\t4\n")
    facts = page.table.selected_facts()[0]
    (problem,) = facts.problems
    assert problem.record == "odd screws"
    assert problem.column == "designation"
    assert "is not known" in problem.what
