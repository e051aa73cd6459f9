"""The page in the window: its key, the menu, a small screen, a bundle dropped on it."""

from __future__ import annotations

import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QAccessible, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractScrollArea,
    QApplication,
    QFileDialog,
    QLabel,
    QPushButton,
    QWidget,
)
from pytestqt.qtbot import QtBot

from benchpack.files.bundle import write_bundle
from benchpack.model.library import Library
from benchpack.ui.catalogue import PAGES
from benchpack.ui.dialogs.whole_library import WholeLibraryDialog
from benchpack.ui.main_window import MainWindow
from benchpack.ui.pages.brief.page import BriefPage
from benchpack.ui.tasks import BackgroundRunner
from benchpack.ui.workspace import Workspace
from tests.ui.showing import shown_window

MakeWorkspace = Callable[[Library], Workspace]
TITLES = [entry.title for entry in PAGES]
KEY, CTRL, LEFT = Qt.Key, Qt.KeyboardModifier.ControlModifier, Qt.MouseButton.LeftButton


@pytest.fixture
def window(workspace: Workspace, qtbot: QtBot) -> MainWindow:
    """Give the window over the library with a proposal."""
    return shown_window(qtbot, workspace)


def brief_page(window: MainWindow) -> BriefPage:
    QTest.keyClick(window, KEY.Key_6, CTRL)
    for _ in range(3):
        QApplication.processEvents()
    page = window.stack.currentWidget()
    assert isinstance(page, BriefPage)
    return page


def test_the_page_is_the_last_and_its_keys_hold_at_once(window: MainWindow) -> None:
    assert TITLES[-1] == "Brief"
    page = brief_page(window)
    assert QApplication.focusWidget() is page.view.preview
    assert page.view.preview.page_count >= 1


def test_a_slider_that_is_dragged_sets_no_brief(
    window: MainWindow, qtbot: QtBot
) -> None:
    page = brief_page(window)
    found: list[int] = []

    def count() -> None:
        found.append(1)

    page.desk.found.connect(count)
    slider = window.headline.slider
    slider.setFocus()
    for step in range(10):
        slider._move(1, 3.0 + step / 5)
        QTest.qWait(40)
    assert found == []
    assert page.view.note.text() == "as of before the change"
    with qtbot.waitSignal(page.desk.found):
        slider.released.emit()
    assert found == [1]
    assert page.view.note.text() == ""


def test_everything_on_a_small_screen_can_be_reached(window: MainWindow) -> None:
    page = brief_page(window)
    assert (window.width(), window.height()) == (1024, 700)
    side, view = page.side, page.view
    assert view.preview.viewport().width() > 400
    assert view.preview.viewport().height() > 350
    assert side.area.horizontalScrollBar().maximum() == 0
    for widget in (side.everything_button, view.full_button, view.number):
        assert widget.isVisible()
        assert page.rect().contains(
            widget.mapTo(page, widget.rect().bottomRight()), proper=True
        )
    inner = side.area.widget()
    assert inner is not None
    for button in inner.findChildren(QAbstractButton):
        wanted = button.fontMetrics().horizontalAdvance(button.text())
        assert button.width() >= wanted, button.text()
        right = button.mapTo(inner, button.rect().topRight()).x()
        assert right < side.area.viewport().width()
    for label in inner.findChildren(QLabel):
        if not label.wordWrap():
            assert label.width() >= label.sizeHint().width(), label.text()


def test_every_control_has_a_name(window: MainWindow) -> None:
    page = brief_page(window)
    for widget in page.findChildren(QWidget):
        takes_focus = widget.focusPolicy() & Qt.FocusPolicy.TabFocus
        inner = isinstance(widget.parentWidget(), QAbstractScrollArea)
        if not widget.isVisible() or not takes_focus or inner:
            continue
        spoken = QAccessible.queryAccessibleInterface(widget)
        assert spoken.text(QAccessible.Text.Name), repr(widget)


@pytest.mark.parametrize(
    ("action", "typed", "written"),
    [
        ("export_brief", "mine.pdf", "mine.pdf"),
        ("export_brief", "mine.html", "mine.html"),
        ("export_brief", "mine", "mine.pdf"),
        ("export_workbook", "mine", "mine.xlsx"),
        ("export_bundle", "mine", "mine.bundle.zip"),
    ],
)
def test_the_menu_writes_from_any_page(
    window: MainWindow,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    action: str,
    typed: str,
    written: str,
) -> None:
    target, kind = str(tmp_path / typed), "PDF (*.pdf)"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (target, kind))
    window.menu_actions[action].trigger()
    assert [path.name for path in tmp_path.iterdir()] == [written]
    assert window.status.remark.text() == f"Written: {tmp_path / written}"
    head = (tmp_path / written).read_bytes()[:5]
    wanted = {".pdf": b"%PDF-", ".html": b"<!DOC"}.get(Path(written).suffix, b"PK")
    assert head.upper().startswith(wanted)


def test_the_kind_that_was_chosen_counts_for_a_bare_name(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    answer = (str(tmp_path / "mine"), "Web page (*.html)")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: answer)
    window.menu_actions["export_brief"].trigger()
    assert [path.name for path in tmp_path.iterdir()] == ["mine.html"]


def test_with_nothing_to_hand_over_the_menu_asks_for_no_name(
    make_workspace: MakeWorkspace, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    window = shown_window(qtbot, make_workspace(Library()))

    def never(*_: object) -> tuple[str, str]:
        pytest.fail("nothing can be written")

    monkeypatch.setattr(QFileDialog, "getSaveFileName", never)
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", never)
    for name in ("brief", "workbook", "gaps", "bundle", "everything"):
        window.problems.hide()
        window.menu_actions[f"export_{name}"].trigger()
        assert window.problems.isVisible()
        assert window.problems.problems[0].remedy


def test_the_strip_of_the_window_stops_everything(
    workspace: Workspace,
    qtbot: QtBot,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    runner = BackgroundRunner()
    workspace.runner = runner
    window = shown_window(qtbot, workspace)
    folder = str(tmp_path)
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: folder)
    window.menu_actions["export_everything"].trigger()
    (cancel,) = (
        button
        for button in window.statusBar().findChildren(QPushButton)
        if button.text() == "Cancel"
    )
    qtbot.waitUntil(lambda: cancel.isVisible() and bool(list(tmp_path.iterdir())))
    QTest.mouseClick(cancel, LEFT)
    qtbot.waitUntil(lambda: list(tmp_path.iterdir()) == [], timeout=10_000)
    window.close()
    assert list(tmp_path.iterdir()) == []
    assert "Written" not in window.status.remark.text()


def drop(window: MainWindow, path: Path) -> None:
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(path))])
    event = QDropEvent(
        QPointF(QPoint(400, 300)),
        Qt.DropAction.CopyAction,
        mime,
        LEFT,
        Qt.KeyboardModifier.NoModifier,
    )
    window.dropEvent(event)
    dialog = window.findChild(WholeLibraryDialog)
    assert dialog is not None
    QTest.mouseClick(dialog.accept_button, LEFT)
    for _ in range(4):
        QApplication.processEvents()


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("BENCHPACK_HOME", str(tmp_path / "home"))
    return tmp_path


def test_a_bundle_that_is_dropped_shows_its_fingerprint(
    window: MainWindow, home: Path
) -> None:
    state = window.workspace.state
    path = home / "tray.bundle.zip"
    write_bundle(state.library, state.study, path)
    before = brief_page(window).side.fingerprint.digits.text()
    drop(window, path)
    page = brief_page(window)
    assert window.workspace.document.path is not None
    assert page.side.fingerprint.digits.text() == before
    whats = [problem.what for problem in window.problems.problems]
    assert not [what for what in whats if "fingerprint" in what]
    window.workspace.document.close()


def test_a_bundle_that_was_changed_is_doubted_in_the_window(
    window: MainWindow, home: Path
) -> None:
    state = window.workspace.state
    path = home / "tray.bundle.zip"
    write_bundle(state.library, state.study, path)
    with zipfile.ZipFile(path) as archive:
        held = {name: archive.read(name) for name in archive.namelist()}
    held["packs.csv"] = held["packs.csv"].replace(b"498.1", b"488.1")
    with zipfile.ZipFile(path, "w") as archive:
        for name, data in held.items():
            archive.writestr(name, data)
    drop(window, path)
    assert window.problems.isVisible()
    whats = [problem.what for problem in window.problems.problems]
    assert any("fingerprint" in what and "it was changed" in what for what in whats)
    window.workspace.document.close()
