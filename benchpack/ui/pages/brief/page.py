"""The Brief page: what is handed over, and how the brief will look."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QApplication,
    QHBoxLayout,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from benchpack.errors import DataError
from benchpack.model.words import Basis
from benchpack.session.document import Change
from benchpack.session.state import Changed
from benchpack.ui.handover.handing_over import HandingOver
from benchpack.ui.page import Page
from benchpack.ui.pages.brief.desk import BriefDesk
from benchpack.ui.pages.brief.preview_view import (
    BEFORE,
    BEING_SET,
    STOPPED,
    PreviewView,
)
from benchpack.ui.pages.brief.shortcuts import SHORTCUTS
from benchpack.ui.pages.brief.side import BriefSide
from benchpack.ui.theme import SPACE_AROUND, SPACE_BETWEEN
from benchpack.ui.widgets.controls import plain_button, text_label
from benchpack.ui.widgets.empty_note import EmptyNote
from benchpack.ui.widgets.page_keys import bind_keys
from benchpack.ui.workspace import Workspace


class BriefPage(Page):
    """Shows the brief of the study on screen and writes what is handed over."""

    title = "Brief"
    shortcuts = SHORTCUTS

    def __init__(self, workspace: Workspace) -> None:
        super().__init__(workspace)
        self.desk = BriefDesk(workspace, self)
        self.handing_over = HandingOver(workspace, self)
        self.side = BriefSide(workspace)
        self.view = PreviewView()
        self.reference_note = text_label()
        self.reference_button = plain_button("Choose a reference")
        self.study_button = QPushButton("Choose a subject")
        self.open_button = QPushButton("Open a file…")
        self.demo_button = QPushButton("Open the demo")
        self._stack = QStackedWidget(self)
        self.empty = EmptyNote(
            "No brief",
            "",
            buttons=(self.study_button, self.open_button, self.demo_button),
            parent=self._stack,
        )
        self._lay_out()
        self.entry = self.view.preview
        self._connect()

    def _lay_out(self) -> None:
        self._no_reference = QWidget()
        line = QHBoxLayout(self._no_reference)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(SPACE_BETWEEN)
        line.addWidget(self.reference_note, 1)
        line.addWidget(self.reference_button, 0, Qt.AlignmentFlag.AlignTop)
        right = QVBoxLayout()
        right.setSpacing(SPACE_BETWEEN)
        right.addWidget(self._no_reference)
        right.addWidget(self.view, 1)
        whole = QWidget(self._stack)
        row = QHBoxLayout(whole)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(SPACE_AROUND)
        row.addWidget(self.side)
        row.addLayout(right, 1)
        self._whole = whole
        self._stack.addWidget(whole)
        self._stack.addWidget(self.empty)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(
            SPACE_AROUND, SPACE_AROUND, SPACE_AROUND, SPACE_BETWEEN
        )
        layout.addWidget(self._stack)

    def _connect(self) -> None:
        desk, side, workspace = self.desk, self.side, self.workspace
        desk.found.connect(self._on_desk_found)
        desk.failed.connect(self._on_desk_failed)
        desk.stopped.connect(self._on_desk_stopped)
        side.exports.wanted.connect(self._on_file_wanted)
        side.everything_button.clicked.connect(self._on_everything_clicked)
        side.fingerprint.said.connect(workspace.notifier.say)
        workspace.settings_changed.connect(self._on_settings_changed)
        self.study_button.clicked.connect(self._on_study_requested)
        self.reference_button.clicked.connect(self._on_study_requested)
        self.open_button.clicked.connect(self.open_requested)
        self.demo_button.clicked.connect(self.demo_requested)
        bind_keys(
            self,
            {
                "Ctrl+0": self.view.fit_width,
                "Ctrl+9": self.view.fit_page,
                "Ctrl+8": self.view.show_full_size,
                "F6": self._on_next_requested,
            },
        )

    def refresh(self, changed: Changed) -> None:
        """Have the brief set for the present results."""
        del changed
        results = self.workspace.results
        if results.comparison is None:
            self.desk.clear()
            has_packs = bool(len(results.library.packs))
            said = "Choose a subject, and the brief of the study stands here."
            if not has_packs:
                said = (
                    "This library holds no packs yet, so there is nothing to hand over."
                )
            self._show_empty(said, has_packs=has_packs)
            return
        self._stack.setCurrentWidget(self._whole)
        self.side.exports.show_results(results)
        self._show_missing()
        self._ask_for_brief()

    def _show_empty(self, sentence: str, *, has_packs: bool) -> None:
        self.empty.sentence.setText(sentence)
        self.study_button.setVisible(has_packs)
        self.open_button.setVisible(not has_packs)
        self.demo_button.setVisible(not has_packs)
        self._stack.setCurrentWidget(self.empty)

    def _show_missing(self) -> None:
        """Say that there is no reference, with which the brief would say more."""
        results = self.workspace.results
        is_missing = results.place is None and results.study.basis is not Basis.TREND
        self._no_reference.setVisible(is_missing)
        if is_missing and results.missing is not None:
            words = f"{results.missing.what} The brief can state no gap."
            self.reference_note.setText(words)

    def _ask_for_brief(self) -> None:
        self.desk.want()
        self._show_age(is_passing=False)

    def _show_age(self, *, is_passing: bool) -> None:
        """Say whether what is shown is the present state."""
        shown = self.desk.shown
        if self.desk.is_current and shown is not None:
            self.view.show_note("")
            self.side.fingerprint.show_fingerprint(shown.pages.brief.fingerprint)
            return
        self.side.fingerprint.show_fingerprint("")
        if shown is None:
            self.view.show_note("being set")
        else:
            self.view.show_note(BEFORE if is_passing else BEING_SET)

    def _on_workspace_changed(self, change: Change) -> None:
        if not change.passing:
            super()._on_workspace_changed(change)
        elif self.isVisible():
            self.desk.hold()
            self._show_age(is_passing=True)

    def _on_workspace_opened(self) -> None:
        self.desk.clear()
        self.view.preview.show_pages(None)
        super()._on_workspace_opened()

    def _on_settings_changed(self) -> None:
        self.side.show_settings()
        if not self.isVisible():
            self._stale = Changed.EVERYTHING
        elif self.workspace.results.comparison is not None:
            self._ask_for_brief()

    def _on_desk_found(self) -> None:
        shown = self.desk.shown
        if shown is not None:
            self.view.preview.show_pages(shown.pages)
            self._show_age(is_passing=False)

    def _on_desk_failed(self, error: DataError) -> None:
        self.view.preview.show_pages(None)
        self._show_empty(str(error.problems[0]), has_packs=True)

    def _on_desk_stopped(self) -> None:
        if not self.desk.is_current:
            self.view.show_note(STOPPED)

    def _on_file_wanted(self, key: str) -> None:
        self.handing_over.ask(key)

    def _on_everything_clicked(self) -> None:
        self.handing_over.ask_and_write_everything()

    def _on_study_requested(self) -> None:
        from benchpack.ui.dialogs.study import StudyDialog

        StudyDialog(self.workspace, self.window()).exec()

    def _on_next_requested(self) -> None:
        """Go on to the choices, the files, the preview, and round again."""
        side, focused = self.side, QApplication.focusWidget()
        stops: list[tuple[QWidget, QWidget]] = [
            (self.view, self.view.preview),
            (side.choices, _first_enabled(side.choices)),
            (side.exports, _first_enabled(side.exports)),
            (side, side.everything_button),
        ]
        at = next(
            (
                place
                for place, (area, _) in enumerate(stops)
                if focused is not None and area.isAncestorOf(focused)
            ),
            -1,
        )
        stops[(at + 1) % len(stops)][1].setFocus(Qt.FocusReason.TabFocusReason)


def _first_enabled(area: QWidget) -> QWidget:
    """Give the first control of an area that takes the focus."""
    return next(
        (
            widget
            for widget in area.findChildren(QWidget)
            if widget.isEnabled() and widget.focusPolicy() & Qt.FocusPolicy.TabFocus
        ),
        area,
    )
