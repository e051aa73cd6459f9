"""The materials of the library: figures, knock-downs, where they come from."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from benchpack.errors import Problem
from benchpack.model.material import MATERIAL_FIELDS, Material
from benchpack.report.display import number_style
from benchpack.session.material_edits import free_material_name, without_materials
from benchpack.session.material_rows import with_material_rows
from benchpack.session.state import State
from benchpack.ui.forms.record_dialog import RecordDialog
from benchpack.ui.tables.columns import TableColumn, recorded_columns
from benchpack.ui.tables.edits import attempt
from benchpack.ui.tables.record_table import RecordTableModel
from benchpack.ui.tables.records import listed_records
from benchpack.ui.tables.view import RecordTableView
from benchpack.ui.widgets.controls import text_label
from benchpack.ui.widgets.entry_area import EntryArea
from benchpack.ui.workspace import Workspace

_WIDTHS = {"name": 236, "kind": 130, "flammability": 90, "source": 300, "mark": 124}
_NOTE = (
    "Design values are data-sheet values times their knock-downs. Figures marked from "
    "memory were not checked against a source: enter your own before they are promised."
)


class MaterialBook:
    """Changes and adds materials as the table and the dialogs hand them on.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    """

    def __init__(self, workspace: Workspace) -> None:
        self._workspace = workspace

    def change(
        self,
        label: str,
        changes: Sequence[tuple[int, Mapping[str, Any]]],
        *,
        added: Sequence[Mapping[str, Any]] = (),
    ) -> tuple[Problem, ...]:
        """Change materials by row and add new ones, see `TableEdits`."""

        def make(state: State) -> State:
            return with_material_rows(state, changes, added)

        return attempt(self._workspace, label, make)

    def add(self, values: Mapping[str, Any]) -> tuple[Problem, ...]:
        """Add one material; gives why it cannot be."""
        known = {key: value for key, value in values.items() if value is not None}
        return self.change(f"material {values['name']}", (), added=[known])

    def remove(self, names: Sequence[str]) -> bool:
        """Remove materials by name; True when they are gone."""
        what = names[0] if len(names) == 1 else f"{len(names)} materials"

        def make(state: State) -> State:
            return without_materials(state, names)

        return self._workspace.edit(f"removal of {what}", make)


class MaterialsTab(EntryArea):
    """Table of materials with what can be done with them.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    parent : QWidget
        Owner.
    """

    def __init__(self, workspace: Workspace, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Materials")
        self._workspace = workspace
        # Tab goes in the order in which they are made.
        self.add_button = QPushButton("Add material", self)
        self.copy_button = QPushButton("Add a copy", self)
        self.copy_button.setToolTip("A material of one's own that starts as this one")
        self.remove_button = QPushButton("Remove", self)
        self.book = MaterialBook(workspace)
        model = RecordTableModel(self.book)
        self.table = RecordTableView(
            model,
            "Materials of the library",
            runner=workspace.runner,
            widths=_WIDTHS,
            parent=self,
        )
        model.setParent(self.table)
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(text_label(_NOTE, "note"), 1)
        for button in (self.add_button, self.copy_button, self.remove_button):
            row.addWidget(button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(8)
        layout.addLayout(row)
        layout.addWidget(self.table, 1)
        self.entry = self.table
        self.add_button.clicked.connect(self.add_material)
        self.copy_button.clicked.connect(self.copy_material)
        self.remove_button.clicked.connect(self.remove_materials)
        self.table.problems_found.connect(workspace.notifier.show_problems)
        self.table.said.connect(workspace.notifier.say)

    def show_state(self, state: State) -> None:
        """Show the materials; order and selection stay."""
        materials, study = state.library.materials, state.study
        style = number_style(study)
        self.table.table.show(
            listed_records(materials, MATERIAL_FIELDS),
            self._columns(),
            style=style,
            currency=study.currency,
        )

    def _columns(self) -> list[TableColumn]:
        study = self._workspace.state.study
        columns = recorded_columns(
            MATERIAL_FIELDS, number_style(study), currency=study.currency
        )
        # How far a figure was checked is read before the figure.
        mark = columns.pop()
        return [*columns[:2], mark, *columns[2:]]

    def current_material(self) -> Material | None:
        """Give the material of the current row, None without one."""
        index = self.table.currentIndex()
        if not index.isValid():
            return None
        return self._workspace.state.library.materials[
            self.table.table.record_row(index)
        ]

    def go_to(self, name: str) -> bool:
        """Make a material the current one; False when it is not there."""
        names = [one.name for one in self._workspace.state.library.materials]
        return name in names and self.table.go_to(names.index(name))

    def add_material(self) -> None:
        """Ask for a material of one's own."""
        self._ask(Material("new material"), name="")

    def copy_material(self) -> None:
        """Ask for a material that starts as the current one."""
        material = self.current_material()
        if material is not None:
            # What was read of the original was not read of the copy.
            own = replace(material, mark="", source=f"after {material.name}")
            materials = self._workspace.state.library.materials
            name = free_material_name(materials, f"{material.name}, own")
            self._ask(own, name=name)

    def _ask(self, start: Material, *, name: str) -> None:
        dialog = RecordDialog(
            "Add material",
            self._columns(),
            style=number_style(self._workspace.state.study),
            submit=self._added,
            parent=self.window(),
        )
        dialog.show_record(start)
        dialog.form.rows["name"].set_text(name)
        dialog.open()
        dialog.form.focus_field("name")

    def _added(self, values: Mapping[str, Any]) -> tuple[Problem, ...]:
        problems = self.book.add(values)
        if not problems:
            self.go_to(str(values["name"]))
        return problems

    def remove_materials(self) -> None:
        """Remove the selected materials; undo brings them back."""
        materials = self._workspace.state.library.materials
        order = self.table.table.order.tolist()
        rows = {
            order[row]
            for one in self.table.selected_ranges()
            for row in range(one.top, one.bottom + 1)
        }
        names = tuple(materials[row].name for row in sorted(rows))
        if names and self.book.remove(names):
            what = names[0] if len(names) == 1 else f"{len(names)} materials"
            self._workspace.notifier.say(f"Removed {what}. Undo brings it back.")
