"""The page: choices change the preview, which is never stale without saying so."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QGuiApplication, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from benchpack.model.library import Library
from benchpack.model.words import Basis
from benchpack.results.fingerprint import fingerprint_of, short_fingerprint
from benchpack.ui.pages.brief import desk
from benchpack.ui.pages.brief.desk import PREVIEW_KEY
from benchpack.ui.pages.brief.fingerprint_row import WORKED_OUT
from benchpack.ui.pages.brief.page import BriefPage
from benchpack.ui.pages.brief.preview_view import BEFORE, BEING_SET, STOPPED
from benchpack.ui.pages.brief.shortcuts import SHORTCUTS
from benchpack.ui.palette import Scheme
from benchpack.ui.tasks import BackgroundRunner
from benchpack.ui.theme import apply_theme
from benchpack.ui.workspace import Workspace
from tests.ui.brief_page.conftest import (
    MakePage,
    after,
    click,
    renders,
    with_study,
    words,
)
from tests.ui.conftest import Watch

KEY = Qt.Key
CTRL = Qt.KeyboardModifier.ControlModifier
MakeWorkspace = Callable[[Library], Workspace]


def test_the_first_brief_stands_at_once(page: BriefPage) -> None:
    said = words(page)
    assert said.startswith("Brief: Avocet 81 against Dunlin 74")
    for wanted in ("To be validated again", "Cautions", "trained and authorised"):
        assert wanted in said
    count = page.view.preview.page_count
    assert count >= 1
    assert page.view.number.text() == f"1 of {count}"
    assert page.view.note.text() == ""


def test_an_edit_and_its_undo_and_redo_set_it_anew(
    page: BriefPage, qtbot: QtBot
) -> None:
    workspace = page.workspace
    first = words(page)

    def edit() -> None:
        workspace.edit("target", with_study(target_kg=3.5))

    assert "3.5 kg" in after(page, qtbot, edit)
    assert after(page, qtbot, workspace.undo) == first
    assert "3.5 kg" in after(page, qtbot, workspace.redo)


def test_edits_that_follow_each_other_are_set_once(
    page: BriefPage, qtbot: QtBot
) -> None:
    found = renders(page)

    def edits() -> None:
        for target in (3.0, 3.1, 3.2):
            page.workspace.edit("target", with_study(target_kg=target))

    said = after(page, qtbot, edits)
    assert "3.2 kg" in said
    assert found == [0]


def test_until_it_is_set_the_old_one_says_that_it_is_old(
    page: BriefPage, qtbot: QtBot
) -> None:
    before = words(page)
    page.workspace.edit("target", with_study(target_kg=3.5))
    assert words(page) == before
    assert page.view.note.text() == BEING_SET
    assert page.side.fingerprint.digits.text() == WORKED_OUT
    assert not page.side.fingerprint.copy_button.isEnabled()
    qtbot.waitUntil(lambda: page.view.note.text() == "")
    assert words(page) != before
    assert page.side.fingerprint.copy_button.isEnabled()


def test_a_worth_that_is_dragged_sets_nothing_until_it_is_let_go(
    page: BriefPage, qtbot: QtBot
) -> None:
    found, before = renders(page), words(page)
    for step in range(20):
        passing = with_study(worth_likely_per_kg=4 + step / 10, worth_high_per_kg=9.0)
        page.workspace.preview("worth", passing)
        QTest.qWait(20)
    assert found == []
    assert words(page) == before
    assert page.view.note.text() == BEFORE

    def let_go() -> None:
        page.workspace.settle("worth")

    assert "5.90 EUR/kg" in after(page, qtbot, let_go)
    assert found == [0]
    assert page.view.note.text() == ""


def test_an_edit_just_before_a_drag_waits_for_its_end(
    page: BriefPage, qtbot: QtBot
) -> None:
    found = renders(page)
    page.workspace.edit("target", with_study(target_kg=3.5))
    page.workspace.preview(
        "worth", lambda state: state.with_study(worth_likely_per_kg=3.5)
    )
    QTest.qWait(400)
    assert found == []
    said = after(page, qtbot, lambda: page.workspace.settle("worth"))
    assert "3.5 kg" in said
    assert found == [0]


def test_a_hidden_page_sets_nothing(page: BriefPage, qtbot: QtBot) -> None:
    found = renders(page)
    page.hide()
    page.workspace.edit("target", with_study(target_kg=3.5))
    page.workspace.change_settings(brief_left_out=("comparison",))
    QTest.qWait(400)
    assert found == []
    assert "3.5 kg" in after(page, qtbot, page.show)


@pytest.fixture
def background(workspace: Workspace) -> Iterator[Workspace]:
    """Give the workspace with a runner that works in the background."""
    runner = BackgroundRunner()
    workspace.runner = runner
    yield workspace
    runner.shut_down()


def test_in_the_background_the_newest_wins(
    background: Workspace, make_page: MakePage, qtbot: QtBot
) -> None:
    page = make_page(background)
    qtbot.waitUntil(lambda: page.desk.is_current)
    page.desk._timer.setInterval(0)
    for target in (3.0, 4.0, 5.0):
        background.edit("target", with_study(target_kg=target))
        page.desk._on_time_up()
        QApplication.processEvents()
    qtbot.waitUntil(lambda: page.desk.is_current)
    assert page.desk.shown is not None
    assert page.desk.shown.state is background.state
    assert "5.0 kg" in words(page)
    assert page.view.note.text() == ""


def test_setting_that_is_stopped_is_said(
    background: Workspace, make_page: MakePage, qtbot: QtBot
) -> None:
    page = make_page(background)
    qtbot.waitUntil(lambda: page.desk.is_current)
    background.edit("target", with_study(target_kg=4.0))
    page.desk.hold()
    page.desk._on_time_up()
    background.runner.cancel(PREVIEW_KEY)
    qtbot.waitUntil(lambda: page.view.note.text() == STOPPED)
    assert not page.desk.is_current


def test_a_fault_of_ours_ends_the_setting(
    page: BriefPage, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    def fail(*_: object, **__: object) -> None:
        raise ZeroDivisionError

    reported: list[BaseException] = []
    workspace = page.workspace
    monkeypatch.setattr(workspace.notifier, "report", reported.append)
    monkeypatch.setattr(desk, "brief_of", fail)
    workspace.edit("target", with_study(target_kg=4.0))
    qtbot.waitUntil(lambda: bool(reported))
    assert isinstance(reported[0], ZeroDivisionError)
    assert page.view.note.text() == STOPPED


def test_the_fingerprint_is_shown_and_copied_whole(
    page: BriefPage, qtbot: QtBot
) -> None:
    state = page.workspace.state
    whole = fingerprint_of(state.library, state.study)
    assert page.side.fingerprint.digits.text() == short_fingerprint(whole)
    with qtbot.waitSignal(page.workspace.notifier.said):
        click(page.side.fingerprint.copy_button)
    assert QGuiApplication.clipboard().text() == whole
    assert whole in words(page)


def test_pages_are_gone_through_with_keys_and_buttons(
    page: BriefPage, qtbot: QtBot
) -> None:
    choices, view = page.side.choices, page.view
    after(page, qtbot, lambda: click(choices.audiences["internal"]))
    preview = view.preview
    count = preview.page_count
    assert count > 1
    preview.setFocus()
    QTest.keyClick(preview, KEY.Key_9, CTRL)
    assert (preview.zoom, view.page_button.isChecked()) == ("page", True)
    seen = [preview.page]
    for key in (KEY.Key_PageDown, KEY.Key_PageUp, KEY.Key_End, KEY.Key_Home):
        QTest.keyClick(preview, key)
        seen.append(preview.page)
    assert seen == [1, 2, 1, count, 1]
    click(view.on_button)
    assert view.number.text() == f"2 of {count}"
    click(view.back_button)
    assert view.number.text() == f"1 of {count}"
    assert not view.back_button.isEnabled()
    QTest.keyClick(preview, KEY.Key_0, CTRL)
    bar = preview.verticalScrollBar()
    QTest.keyClick(preview, KEY.Key_PageDown)
    # Wide pages are read by the screenful: nothing is skipped.
    assert 0 < bar.value() < preview.viewport().height()


def test_zooms_fit_the_view(page: BriefPage) -> None:
    preview, view = page.view.preview, page.view
    across = preview.viewport().width()
    assert preview._box(0).width() == pytest.approx(across - 32, abs=1)
    click(view.page_button)
    assert preview._box(0).height() <= preview.viewport().height() - 32 + 1
    click(view.full_button)
    assert preview._scale() == 1
    assert preview.horizontalScrollBar().maximum() > 0


def paper_at(page: BriefPage) -> QColor:
    """Give the colour of the paper near its corner."""
    viewport = page.view.preview.viewport()
    image: QImage = viewport.grab().toImage()
    corner = page.view.preview._box(0).topLeft().toPoint()
    return image.pixelColor(corner.x() + 5, corner.y() + 5)


def test_the_paper_stays_light_in_the_dark(page: BriefPage, qapp: QApplication) -> None:
    before = page.view.preview._image(0)
    try:
        apply_theme(qapp, Scheme.DARK)
        QApplication.processEvents()
        assert paper_at(page) == QColor("#FFFFFF")
        assert page.view.preview._image(0) == before
    finally:
        apply_theme(qapp, Scheme.LIGHT)


def test_f6_goes_round_and_comes_back(page: BriefPage) -> None:
    preview, side = page.view.preview, page.side
    preview.setFocus()
    stops = []
    for _ in range(4):
        QTest.keyClick(QApplication.focusWidget() or page, KEY.Key_F6)
        stops.append(QApplication.focusWidget())
    assert stops[0] is not None
    assert side.choices.isAncestorOf(stops[0])
    assert stops[1] is side.exports.buttons["pdf"]
    assert stops[2] is side.everything_button
    assert stops[3] is preview


def test_every_key_is_listed_once() -> None:
    keys = [key for key, _ in SHORTCUTS]
    assert len(keys) == len(set(keys))


def test_without_packs_or_subject_the_page_says_so(
    make_workspace: MakeWorkspace, make_page: MakePage, qtbot: QtBot, library: Library
) -> None:
    bare = make_page(make_workspace(Library()))
    assert bare.empty.isVisible()
    assert "no packs" in bare.empty.sentence.text()
    with qtbot.waitSignal(bare.demo_requested):
        click(bare.demo_button)
    study = replace(library.studies[0], subject="Heron 99")
    lost = make_page(make_workspace(replace(library, studies=(study,))))
    assert "Choose a subject" in lost.empty.sentence.text()
    assert lost.study_button.isVisible()
    assert not lost.demo_button.isVisible()


def test_without_a_reference_it_says_so_above_the_brief(
    make_workspace: MakeWorkspace, make_page: MakePage, library: Library
) -> None:
    study = replace(library.studies[0], reference="")
    page = make_page(make_workspace(replace(library, studies=(study,))))
    assert page.reference_button.isVisible()
    assert page.reference_note.text().startswith("No reference is chosen.")
    assert "Cautions" in words(page)
    page.workspace.edit(
        "basis", lambda state: state.with_study(basis=Basis.TREND, reference="")
    )
    assert not page.reference_button.isVisible()


def test_another_library_forgets_the_brief(
    page: BriefPage, make_workspace: MakeWorkspace
) -> None:
    page.workspace.open_document(make_workspace(Library()).document)
    assert page.desk.shown is None
    assert page.empty.isVisible()
    assert words(page) == ""


def test_the_page_lets_go(
    make_page: MakePage, workspace: Workspace, watch_leaks: Watch
) -> None:
    page = make_page(workspace)
    watch_leaks(page)
    QApplication.processEvents()
