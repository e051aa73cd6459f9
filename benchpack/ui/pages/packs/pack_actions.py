"""What can be done with the selected packs."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import numpy as np
from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from benchpack.errors import Problem
from benchpack.model.pack import PACK_FIELD
from benchpack.session.edits import without_packs
from benchpack.session.record_edits import with_pack_rows
from benchpack.session.state import State
from benchpack.ui.forms.record_dialog import RecordDialog
from benchpack.ui.tables.columns import recorded_column
from benchpack.ui.tables.edits import attempt
from benchpack.ui.tables.view import RecordTableView
from benchpack.ui.widgets.key_text import key_text
from benchpack.ui.workspace import Workspace
from benchpack.units.formatting import NumberStyle

_ASKED = ("name", "energy_kwh", "energy_basis", "mass_kg", "mass_known_by")
Entry = tuple[str, str, Callable[[], None]]


class PackActions(QObject):
    """Adds and removes packs, and makes one the subject or the reference.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    table : RecordTableView
        Where packs are selected.
    page : QWidget
        What dialogs belong to.
    """

    def __init__(
        self, workspace: Workspace, table: RecordTableView, page: QWidget
    ) -> None:
        super().__init__(page)
        self._workspace = workspace
        self._table = table
        self._page = page

    def entries(self) -> list[Entry]:
        """Give what the context menu offers: words, key and the call."""
        return [
            ("Use as subject", "Ctrl+Shift+S", self.use_as_subject),
            ("Use as reference", "Ctrl+Shift+R", self.use_as_reference),
            ("Add pack", "Ctrl+Shift+N", self.add_pack),
            ("Remove", "Ctrl+Shift+Del", self.remove_packs),
        ]

    def use_as_subject(self) -> None:
        """Make the selected pack the subject; it trades places with the reference."""
        self._use("subject", "reference")

    def use_as_reference(self) -> None:
        """Make the selected pack the reference; it trades places with the subject."""
        self._use("reference", "subject")

    def _use(self, role: str, other: str) -> None:
        name = self._workspace.selection
        if not name:
            return
        study = self._workspace.state.study
        changes = {role: name}
        if getattr(study, other) == name:
            changes[other] = getattr(study, role)

        def make(state: State) -> State:
            return state.with_study(**changes)

        self._workspace.edit(f"{name} as {role}", make)

    def add_pack(self) -> None:
        """Ask for a new pack."""
        study = self._workspace.state.study
        style = NumberStyle(study.decimal_mark, study.mass_unit)
        columns = [recorded_column(PACK_FIELD[name], style) for name in _ASKED]
        dialog = RecordDialog(
            "Add pack", columns, style=style, submit=self._added, parent=self._page
        )
        dialog.open()
        dialog.form.focus_field("name")

    def _added(self, values: Mapping[str, Any]) -> tuple[Problem, ...]:
        def make(state: State) -> State:
            return with_pack_rows(state, (), [values])

        name = str(values["name"])
        problems = attempt(self._workspace, f"pack {name}", make)
        if not problems:
            self._workspace.select(name)
        return problems

    def remove_packs(self) -> None:
        """Remove the selected packs; undo brings them back."""
        model = self._table.table
        ranges = self._table.selected_ranges()
        pieces = [model.order[one.top : one.bottom + 1] for one in ranges]
        if not pieces:
            return
        rows = np.unique(np.concatenate(pieces)).tolist()
        many = len(rows) > 1
        what = f"{len(rows)} packs" if many else model.name(rows[0])

        def make(state: State) -> State:
            return without_packs(state, rows)

        if self._workspace.edit(f"removal of {what}", make):
            it = "them" if many else "it"
            key = key_text("Ctrl+Z")
            self._workspace.notifier.say(f"Removed {what}. {key} brings {it} back.")
