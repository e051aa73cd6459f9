"""The Changes page: a proposal, its materials, and candidates for a part."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import (
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
)

from benchpack.errors import Problem
from benchpack.model.change import Change, ChangeKind
from benchpack.report.display import Display
from benchpack.session.document import Change as Edit
from benchpack.session.state import Changed
from benchpack.ui.page import Page
from benchpack.ui.pages.changes.change_actions import ChangeActions
from benchpack.ui.pages.changes.change_lines import change_lines
from benchpack.ui.pages.changes.changes_layout import (
    CANDIDATES,
    MATERIALS,
    PROPOSAL,
    ChangesLayout,
)
from benchpack.ui.pages.changes.desk import ProposalDesk
from benchpack.ui.pages.changes.form_fields import field_of
from benchpack.ui.pages.changes.kinds_bar import KIND_KEYS
from benchpack.ui.pages.changes.proposal_edits import ProposalEdits
from benchpack.ui.pages.changes.shortcuts import SHORTCUTS
from benchpack.ui.pages.changes.subject_model import Selection
from benchpack.ui.pages.changes.subject_rows import subject_rows
from benchpack.ui.widgets.context_menu import open_menu
from benchpack.ui.widgets.empty_note import EmptyNote
from benchpack.ui.widgets.page_keys import bind_keys
from benchpack.ui.workspace import Workspace


class ChangesPage(Page):
    """Shows the proposal of the study on screen."""

    title = "Changes"
    shortcuts = SHORTCUTS

    def __init__(self, workspace: Workspace) -> None:
        super().__init__(workspace)
        self.desk = ProposalDesk(workspace, self)
        self.edits = ProposalEdits(workspace)
        self._stack = QStackedWidget(self)
        self.whole = ChangesLayout(workspace, self.desk, self.edits, self._stack)
        self.tabs, self.kinds = self.whole.tabs, self.whole.kinds
        self.view = self.whole.view
        self.materials, self.candidates = self.whole.materials, self.whole.candidates
        self.actions_of_change = ChangeActions(
            workspace, self.desk, edits=self.edits, view=self.view
        )
        self.study_button = QPushButton("Choose a subject")
        self.demo_button = QPushButton("Open the demo")
        self.empty = EmptyNote(
            "No proposal",
            "",
            buttons=(self.study_button, self.demo_button),
            parent=self._stack,
        )
        self._stack.addWidget(self.whole)
        self._stack.addWidget(self.empty)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(16, 12, 16, 4)
        layout.addWidget(self._stack)
        self.entry = self.view.tree
        self._connect()
        self._is_restored = False

    def _connect(self) -> None:
        actions, view, workspace = self.actions_of_change, self.view, self.workspace
        self.tabs.currentChanged.connect(self._on_tab_changed)
        self.kinds.kind_chosen.connect(actions.make)
        self.kinds.dropped.connect(actions.make)
        actions.change_made.connect(self._on_change_made)
        view.add_button.clicked.connect(self._on_add_clicked)
        view.tree.chosen.connect(self._on_items_chosen)
        table = view.table
        table.change_chosen.connect(self._on_change_chosen)
        table.moved.connect(actions.order)
        table.removal_requested.connect(actions.remove_change)
        table.form_requested.connect(self._on_form_requested)
        table.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        table.customContextMenuRequested.connect(self._on_menu_requested)
        view.totals.explain_requested.connect(workspace.explain_requested)
        view.outcome.explain_requested.connect(workspace.explain_requested)
        view.outcome.change_picked.connect(table.go_to)
        view.outcome.taken.connect(actions.take_suggestion)
        self.candidates.part_picked.connect(self._on_part_picked)
        self.candidates.change_requested.connect(self._on_candidate_requested)
        self.study_button.clicked.connect(self._on_study_requested)
        self.demo_button.clicked.connect(self.demo_requested)
        workspace.place_requested.connect(self.go_to_place)
        bind_keys(
            self,
            {
                **{key: self.kinds.buttons[k].click for k, key in KIND_KEYS.items()},
                "Ctrl+Shift+D": actions.copy_change,
                "Ctrl+Shift+Del": actions.remove_change,
                "F6": self._on_next_requested,
            },
        )

    # What is shown

    def refresh(self, changed: Changed) -> None:
        """Show the proposal; what is chosen stays chosen."""
        del changed
        self.desk.take()
        results = self.desk.results
        self._stack.setCurrentWidget(self.empty if results is None else self.whole)
        if results is None:
            has_packs = bool(len(self.workspace.state.library.packs))
            said = "Choose a subject, and its changes stand here."
            if not has_packs:
                said = "This library holds no packs yet, so there is nothing to change."
            self.empty.sentence.setText(said)
            self.study_button.setVisible(has_packs)
            return
        if not self._is_restored:
            self._is_restored = True
            self.view.restore_layout()
        self._show_proposal()
        self._show_tab()

    def _show_proposal(self) -> None:
        results = self.desk.results
        if results is None:
            return
        display, view = Display(results.study), self.view
        view.tree.pack = results.today.pack
        view.tree.show_rows(subject_rows(results.today, results.ledger), display)
        self._on_items_chosen()
        view.show_emptiness(is_empty=not results.changes)
        before, row = view.table.current, view.table.currentIndex().row()
        renamed = view.panel.name
        lines = change_lines(results, display)
        if view.table.changes.show(lines, results.study):
            names = [change.name for change in results.changes]
            wanted = before if before in names else renamed
            if wanted not in names and names:
                wanted = names[min(max(row, 0), len(names) - 1)]
            view.table.go_to(wanted)
        view.totals.show_desk(self.desk)
        view.panel.show_change(view.table.current)
        view.outcome.show_proposal()
        view.outcome.mark_change(view.table.current)

    def _show_tab(self) -> None:
        place = self.tabs.currentIndex()
        self.whole.show_tab(place)
        if place == MATERIALS:
            self.materials.show_state(self.workspace.state)
        elif place == CANDIDATES:
            self.candidates.show_part(self._current_part())

    def _current_part(self) -> str:
        """Give the part chosen at the left, else that of the current change."""
        chosen = self.view.tree.selection().parts
        change = self.edits.change(self.view.table.current)
        return next(iter((*chosen, *(change.parts if change else ()))), "")

    def _on_workspace_changed(self, change: Edit) -> None:
        if not change.passing:
            super()._on_workspace_changed(change)
        elif self.isVisible() and self.desk.results is not None:
            # Only what is said about the worth passes by.
            self.desk.pass_worth()
            self.view.table.changes.show_worth(self.desk.study)
            self.view.totals.show_worth(self.desk)
            self.view.outcome.show_worth()

    def _on_workspace_opened(self) -> None:
        self.desk.clear()
        super()._on_workspace_opened()

    def go_to_place(self, record: str, column: str) -> None:
        """Go to the change that a problem names, and to its field."""
        self.bring_up_to_date()
        if self.edits.change(record) is None:
            return
        self.tabs.setCurrentIndex(PROPOSAL)
        self.view.table.go_to(record)
        key = field_of(Problem("", column=column))
        if not self.view.panel.form.focus_field(key):
            self.view.table.setFocus()

    # What was chosen

    def _on_tab_changed(self) -> None:
        if self.desk.results is not None:
            self._show_tab()

    def _on_items_chosen(self) -> None:
        self.view.show_chosen(self.view.tree.selection())

    def _on_change_chosen(self, name: str) -> None:
        self.view.panel.show_change(name)
        self.view.outcome.mark_change(name)

    def _on_change_made(self, change: Change) -> None:
        self.tabs.setCurrentIndex(PROPOSAL)
        self.view.table.go_to(change.name)
        self.view.panel.begin_entry(change)

    def _on_form_requested(self) -> None:
        self.view.panel.setCurrentWidget(self.view.panel.form)
        self.view.panel.form.focus_field("name")

    def _on_add_clicked(self) -> None:
        self.actions_of_change.make(ChangeKind.ADD)

    def _on_part_picked(self, part: str) -> None:
        self.view.tree.choose(Selection((part,)))
        self.candidates.show_part(part)

    def _on_candidate_requested(self, part: str, material: str) -> None:
        self.actions_of_change.make_candidate(part, material)

    def _on_study_requested(self) -> None:
        from benchpack.ui.dialogs.study import StudyDialog

        StudyDialog(self.workspace, self.window()).exec()

    def _on_menu_requested(self, point: QPoint) -> None:
        table = self.view.table
        if table.current:
            place = table.viewport().mapToGlobal(point)
            open_menu(self, place, (self.actions_of_change.entries(),))

    def _on_next_requested(self) -> None:
        if self.tabs.currentIndex() == PROPOSAL:
            self.view.focus_next()
        else:
            self.whole.focus_tab()
