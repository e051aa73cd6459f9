"""The window: headline on top, pages at the side, status below. Only assembles."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from pathlib import Path

from PySide6.QtCore import QByteArray, QSize, Qt
from PySide6.QtGui import (
    QAction,
    QCloseEvent,
    QDragEnterEvent,
    QDropEvent,
    QKeySequence,
)
from PySide6.QtWidgets import (
    QHBoxLayout,
    QMainWindow,
    QMenu,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from benchpack.ui.actions import RECENT, build_menus
from benchpack.ui.catalogue import PageEntry
from benchpack.ui.commands import Commands
from benchpack.ui.finding import page_of
from benchpack.ui.page import Page
from benchpack.ui.tasks import BackgroundRunner
from benchpack.ui.widgets.controls import hairline
from benchpack.ui.widgets.headline_bar import HeadlineBar
from benchpack.ui.widgets.problems_panel import ProblemsPanel
from benchpack.ui.widgets.progress_strip import ProgressStrip
from benchpack.ui.widgets.side_list import SideList
from benchpack.ui.widgets.status_words import StatusWords
from benchpack.ui.widgets.tab_order import let_tab_reach_last
from benchpack.ui.window_memory import keep_place, remember, remembered
from benchpack.ui.workspace import Workspace


class MainWindow(QMainWindow):
    """The one main window.

    Parameters
    ----------
    workspace : Workspace
        The open document and its results.
    entries : sequence of PageEntry
        The pages in the order of the side list; each is made when it is first shown.
    """

    def __init__(self, workspace: Workspace, entries: Sequence[PageEntry]) -> None:
        super().__init__()
        self.workspace = workspace
        self.commands = Commands(self, workspace)
        self.menu_actions = build_menus(self.menuBar(), self.commands)
        self._entries = tuple(entries)
        self._pages: dict[int, Page] = {}
        self.headline = HeadlineBar(workspace)
        self.side = SideList(workspace, [entry.title for entry in entries])
        self.stack = QStackedWidget()
        self.problems = ProblemsPanel()
        self.status = StatusWords(workspace)
        self.setAcceptDrops(True)
        self.setMinimumSize(900, 560)
        self.resize(QSize(1280, 800).boundedTo(self.screen().availableSize()))
        self._lay_out()
        self._add_page_actions()
        self._connect()
        self.show_page(0)
        self._on_opened()

    def _lay_out(self) -> None:
        body = QWidget()
        row = QHBoxLayout(body)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(self.side)
        row.addWidget(self.stack, 1)
        split = QSplitter(Qt.Orientation.Vertical)
        split.addWidget(body)
        split.addWidget(self.problems)
        split.setChildrenCollapsible(False)
        split.setStretchFactor(0, 1)
        split.setSizes([10_000, self.problems.sizeHint().height()])
        centre = QWidget()
        column = QVBoxLayout(centre)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.headline)
        column.addWidget(hairline())
        column.addWidget(split, 1)
        self.setCentralWidget(centre)
        centre.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        centre.setFocus()
        self.problems.hide()
        self.statusBar().setSizeGripEnabled(False)
        self.statusBar().addWidget(self.status, 1)
        if isinstance(self.workspace.runner, BackgroundRunner):
            self.statusBar().addPermanentWidget(ProgressStrip(self.workspace.runner))
        for before, after in pairwise(self.headline.focus_order()):
            QWidget.setTabOrder(before, after)

    def _add_page_actions(self) -> None:
        self.page_actions = []
        for place, entry in enumerate(self._entries):
            action = QAction(f"Go to {entry.title}", self)
            action.setShortcut(QKeySequence(f"Ctrl+{place + 1}"))
            action.setData(place)
            action.triggered.connect(self._on_page_action)
            self.addAction(action)
            self.page_actions.append(action)

    def _connect(self) -> None:
        self.side.chosen.connect(self.go_to_page)
        self.side.target_requested.connect(self.commands.on_study)
        self.headline.study_requested.connect(self.commands.on_study)
        self.headline.cautions_requested.connect(self._on_warnings_requested)
        self.commands.warnings_requested.connect(self._on_warnings_requested)
        self.commands.search_requested.connect(self._on_search_requested)
        self.commands.shortcuts_requested.connect(self._on_shortcuts_requested)
        self.commands.quit_requested.connect(self.close)
        self.problems.place_requested.connect(self.workspace.place_requested)
        notifier = self.workspace.notifier
        notifier.problems_found.connect(self.problems.show_problems)
        self.problems.said.connect(notifier.say)
        notifier.failed_unexpectedly.connect(self._on_failed_unexpectedly)
        self.workspace.explain_requested.connect(self._on_explain_requested)
        self.workspace.place_requested.connect(self._on_place_requested)
        self.workspace.changed.connect(self._show_undo)
        self.workspace.opened.connect(self._on_opened)
        self.workspace.settings_changed.connect(self._show_recent)

    def show_page(self, place: int) -> None:
        """Show a page by its place in the side list."""
        self.stack.setCurrentWidget(self.page(place))
        self.side.show_page(place)

    def go_to_page(self, place: int) -> None:
        """Show a page and put the focus on it, so that its keys hold."""
        self.show_page(place)
        self.page(place).setFocus(Qt.FocusReason.OtherFocusReason)

    def page(self, place: int) -> Page:
        """Give a page by its place, made on first need."""
        if place not in self._pages:
            self._pages[place] = self._entries[place].make(self.workspace)
            self.stack.addWidget(self._pages[place])
            self._connect_page(self._pages[place])
            let_tab_reach_last((self.problems, self.statusBar()))
        return self._pages[place]

    def _connect_page(self, page: Page) -> None:
        page.open_requested.connect(self.commands.on_open)
        page.demo_requested.connect(self.commands.on_open_demo)

    def every_action(self) -> list[QAction]:
        """Give all actions, for the command search and the shortcuts sheet."""
        named = [a for name, a in self.menu_actions.items() if name != RECENT]
        return [*named, *self.page_actions]

    def _on_page_action(self) -> None:
        action = self.sender()
        if isinstance(action, QAction):
            self.go_to_page(action.data())

    def _on_opened(self) -> None:
        path = self.workspace.document.path
        if path is not None:
            settings = self.workspace.settings.with_recent(path)
            self.workspace.change_settings(recent_files=settings.recent_files)
        library = self.workspace.state.library
        name = library.title or (path.stem if path else "Library")
        self.setWindowTitle(f"{name} – Benchpack")
        self._show_undo()
        self._show_recent()

    def _show_undo(self) -> None:
        document = self.workspace.document
        for name, label in (
            ("undo", document.undo_label),
            ("redo", document.redo_label),
        ):
            action = self.menu_actions[name]
            words = name.capitalize()
            action.setText(f"&{words} “{label}”" if label else f"&{words}")
            action.setEnabled(bool(label))
            action.setProperty("reason", "" if label else f"nothing to {name}")

    def _show_recent(self) -> None:
        menu = self.menu_actions[RECENT].menu()
        if not isinstance(menu, QMenu):
            return
        menu.clear()
        for text in self.workspace.settings.recent_files:
            action = menu.addAction(Path(text).stem)
            action.setToolTip(text)
            action.setData(text)
            action.triggered.connect(self._on_recent_chosen)

    def _on_recent_chosen(self) -> None:
        action = self.sender()
        if isinstance(action, QAction):
            self.commands.open_path(Path(action.data()))

    def _on_warnings_requested(self) -> None:
        cautions = self.workspace.results.cautions
        if cautions:
            heading = "What to know before the figures are trusted"
            self.problems.show_problems(heading, cautions)
        else:
            self.workspace.notifier.say("There are no warnings.")

    def _on_place_requested(self, record: str, column: str) -> None:
        """Show the page that holds a record; the pages themselves go to its cell."""
        workspace = self.workspace
        title = page_of(
            workspace.state.library, record, column=column, first=workspace.selection
        )
        titles = [entry.title for entry in self._entries]
        if title not in titles:
            return
        place = titles.index(title)
        is_new = place not in self._pages
        self.show_page(place)
        if is_new:  # it was not there to hear of it
            self.page(place).go_to_place(record, column)

    def _on_explain_requested(self, key: str, reference: str) -> None:
        from benchpack.ui.dialogs.explanation import show_explanation

        show_explanation(self.workspace, key, reference, self)

    def _on_search_requested(self) -> None:
        from benchpack.ui.dialogs.command_search import CommandSearch

        CommandSearch(self.every_action(), self).exec()

    def _on_shortcuts_requested(self) -> None:
        from benchpack.ui.dialogs.shortcuts import ShortcutsDialog, action_pairs

        groups = [("Everywhere", action_pairs(self.every_action()))]
        for place, entry in enumerate(self._entries):
            shortcuts = self.page(place).shortcuts
            if shortcuts:
                groups.append((entry.title, list(shortcuts)))
        ShortcutsDialog(groups, self).exec()

    def _on_failed_unexpectedly(self, sentence: str, trace: str) -> None:
        from benchpack.ui.dialogs.unexpected import show_unexpected

        show_unexpected(sentence, trace, self)

    def restore_geometry(self) -> None:
        """Put the window where it was last, and remember its place from now on."""
        keep_place(self)
        stored = remembered(self, "geometry")
        if isinstance(stored, QByteArray):
            self.restoreGeometry(stored)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take files that are dragged onto the window."""
        if any(url.isLocalFile() for url in event.mimeData().urls()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Open the file that is dropped; of several, the first."""
        event.acceptProposedAction()
        paths = [
            Path(url.toLocalFile())
            for url in event.mimeData().urls()
            if url.isLocalFile()
        ]
        if len(paths) > 1:
            names = f"{paths[0].name} of {len(paths)} files"
            self.workspace.notifier.say(f"Opening {names}: drop one at a time")
        if paths:
            self.commands.open_path(paths[0])

    def closeEvent(self, event: QCloseEvent) -> None:
        """Stop work, keep the place of the window, let go of the library."""
        remember(self, "geometry", self.saveGeometry())
        runner = self.workspace.runner
        if isinstance(runner, BackgroundRunner):
            runner.shut_down()
        self.workspace.document.close()
        super().closeEvent(event)
