"""The choices of the page: each changes the preview and is kept."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from benchpack.report.brief.choices import CAUTIONS, VALIDATION
from benchpack.report.brief.worth_section import WORTH_KEYS, every_section
from benchpack.session.settings import load_settings
from benchpack.ui.pages.brief.choices_panel import INTERNAL_ONLY, LOCKED
from benchpack.ui.pages.brief.page import BriefPage
from tests.ui.brief_page.conftest import after, click, renders, words

KEY = Qt.Key


def test_the_audience_changes_the_preview_and_is_kept(
    page: BriefPage, qtbot: QtBot
) -> None:
    audiences = page.side.choices.audiences
    assert audiences["customer"].isChecked()
    assert "Money per pack" not in words(page)
    said = after(page, qtbot, lambda: click(audiences["internal"]))
    assert "Money per pack" in said
    assert load_settings().brief_audience == "internal"
    assert page.side.choices.sections["money"].isEnabled()
    said = after(page, qtbot, lambda: click(audiences["customer"]))
    assert "Money per pack" not in said
    assert not page.side.choices.sections["money"].isEnabled()


def test_the_paper_changes_the_sheet_and_is_kept(page: BriefPage, qtbot: QtBot) -> None:
    shown = page.desk.shown
    assert shown is not None
    before = shown.pages.paper.size
    after(page, qtbot, lambda: click(page.side.choices.papers["Letter"]))
    shown = page.desk.shown
    assert shown is not None
    assert shown.pages.paper.size.width() > before.width()
    assert shown.pages.paper.size.height() < before.height()
    assert load_settings().brief_paper == "Letter"


def test_a_section_is_left_out_and_comes_back(page: BriefPage, qtbot: QtBot) -> None:
    box = page.side.choices.sections["assumptions"]
    assert "Assumptions and sources" in words(page)
    assert "Assumptions and sources" not in after(page, qtbot, lambda: click(box))
    assert set(load_settings().brief_left_out) == {"assumptions", *WORTH_KEYS}
    box.setFocus()
    said = after(page, qtbot, lambda: QTest.keyClick(box, KEY.Key_Space))
    assert "Assumptions and sources" in said
    assert load_settings().brief_left_out == WORTH_KEYS


@pytest.mark.parametrize("key", [VALIDATION, CAUTIONS])
def test_a_locked_section_cannot_be_unticked(page: BriefPage, key: str) -> None:
    box = page.side.choices.sections[key]
    found = renders(page)
    click(box)
    QTest.keyClick(box, KEY.Key_Space)
    QTest.qWait(400)
    assert box.isChecked()
    assert not box.isEnabled()
    assert box.accessibleDescription() == LOCKED
    assert found == []
    assert page.workspace.settings.brief_left_out == WORTH_KEYS


def test_what_a_customer_does_not_see_says_so_and_keeps_its_choice(
    page: BriefPage, qtbot: QtBot
) -> None:
    choices = page.side.choices
    after(page, qtbot, lambda: click(choices.audiences["internal"]))
    after(page, qtbot, lambda: click(choices.sections["items"]))
    after(page, qtbot, lambda: click(choices.audiences["customer"]))
    for key in ("items", "money"):
        assert not choices.sections[key].isChecked()
        assert choices.sections[key].toolTip() == INTERNAL_ONLY
    after(page, qtbot, lambda: click(choices.sections["checks"]))
    assert set(load_settings().brief_left_out) == {"items", "checks", *WORTH_KEYS}
    after(page, qtbot, lambda: click(choices.audiences["internal"]))
    assert not choices.sections["items"].isChecked()
    assert choices.sections["money"].isChecked()


def test_every_section_of_a_brief_has_a_box(page: BriefPage) -> None:
    boxes = page.side.choices.sections
    assert [box.text() for box in boxes.values()] == [
        one.title for one in every_section()
    ]


def test_sections_on_the_worth_are_added(page: BriefPage, qtbot: QtBot) -> None:
    boxes = page.side.choices.sections
    assert not any(boxes[key].isChecked() for key in WORTH_KEYS)
    assert "over the programme" not in words(page)
    said = after(page, qtbot, lambda: click(boxes["programme"]))
    assert "over the programme" in said
    assert set(load_settings().brief_left_out) == {*WORTH_KEYS} - {"programme"}


def test_preferences_that_change_show_on_the_page(
    page: BriefPage, qtbot: QtBot
) -> None:
    def change() -> None:
        page.workspace.change_settings(brief_left_out=("comparison",))

    assert "\nComparison\n" in words(page)
    said = after(page, qtbot, change)
    assert not page.side.choices.sections["comparison"].isChecked()
    assert "\nComparison\n" not in said
