"""The parts of the selected pack: closure, tree, weigh-in."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from benchpack.errors import Problem
from benchpack.model.library import Library
from benchpack.model.part import PART_FIELDS, Part
from benchpack.model.words import Subsystem
from benchpack.results.busbar_conductors import is_conductor
from benchpack.results.closure import closure_of
from benchpack.session.record_edits import with_new_part, without_parts
from benchpack.session.state import State
from benchpack.ui.charts.closure_bar import ClosureBar
from benchpack.ui.forms.record_dialog import RecordDialog
from benchpack.ui.forms.weighing import Weighing
from benchpack.ui.pages.packs.closure_words import closure_sentence, closure_spec
from benchpack.ui.pages.packs.part_groups import grouped
from benchpack.ui.pages.packs.parts_model import PartsModel
from benchpack.ui.pages.packs.parts_tree import PartsTree
from benchpack.ui.pages.packs.weigh_in import WeighIn, known_parts
from benchpack.ui.tables.columns import recorded_columns
from benchpack.ui.tables.edits import attempt
from benchpack.ui.theme import set_text_role
from benchpack.ui.workspace import Workspace
from benchpack.units.formatting import NumberStyle, format_mass

_MOST_NAMES = 5000
_BUSBAR_TIP = (
    "What a part of the subsystem conductors, or a busbar of copper or aluminium, "
    "carries, and how it grows."
)


class PartsTab(QWidget):
    """Shows and edits the parts of one pack."""

    def __init__(self, workspace: Workspace, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Parts")
        self._workspace = workspace
        self._style = NumberStyle()
        self._pack = ""
        self.model = PartsModel(workspace, self)
        # Tab goes in the order in which they are made.
        self.bar = ClosureBar(self)
        self.busbar_button = QPushButton("Busbar figures", self)
        self.tree = PartsTree(self.model, self)
        self.bar.setAccessibleName("Closure")
        self.bar.said.connect(workspace.notifier.say)
        self.sentence = QLabel()
        self.sentence.setWordWrap(True)
        set_text_role(self.sentence, "note")
        self.weigh_in = WeighIn(self)
        self.weigh_in.hide()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(16, 12, 0, 0)
        layout.setSpacing(8)
        layout.addWidget(self.bar)
        # Beside the sentence, as a fourth button below does not fit a narrow window.
        self.busbar_button.setToolTip(_BUSBAR_TIP)
        self.busbar_button.clicked.connect(self.show_busbar)
        above = QHBoxLayout()
        above.addWidget(self.sentence, 1)
        above.addWidget(self.busbar_button)
        layout.addLayout(above)
        layout.addWidget(self.tree, 1)
        layout.addWidget(self.weigh_in)
        self._buttons = QWidget(self)
        self._buttons.setLayout(self._made_buttons())
        layout.addWidget(self._buttons)
        self.tree.refused.connect(self._on_entry_refused)
        self.tree.part_dialog_requested.connect(self.edit_part)
        self.weigh_in.weighed.connect(self._on_part_weighed)
        self.weigh_in.left.connect(self._on_weigh_in_left)
        self.tree.selectionModel().currentChanged.connect(self._on_current_changed)

    def _made_buttons(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setContentsMargins(0, 0, 0, 8)
        row.setSpacing(8)
        self.add_button = QPushButton("Add part")
        self.edit_button = QPushButton("Edit part")
        self.remove_button = QPushButton("Remove part")
        calls = (self.add_part, self.edit_part, self.remove_parts)
        buttons = (self.add_button, self.edit_button, self.remove_button)
        for button, call in zip(buttons, calls, strict=True):
            button.clicked.connect(call)
            row.addWidget(button)
        row.addStretch(1)
        self._on_current_changed()
        return row

    def show_pack(self, library: Library, pack: str, style: NumberStyle) -> None:
        """Show the parts of a pack.

        Parameters
        ----------
        library : Library
            The records.
        pack : str
            Name of the pack.
        style : NumberStyle
            Decimal mark and mass unit.
        """
        if pack != self._pack and self.weigh_in.isVisible():
            self.weigh_in.taken("")
        self._pack, self._style = pack, style
        groups = grouped(library.parts_of(pack), library.joints_of(pack))
        closure = closure_of(library, pack)
        self.tree.show_groups(
            pack, groups, pack_mass_kg=closure.pack_mass_kg, style=style
        )
        spec = closure_spec(closure, style)
        self.bar.show_spec(spec)
        self.sentence.setText(closure_sentence(closure, style))
        self._on_current_changed()

    def begin_weigh_in(self) -> None:
        """Open the weigh-in bar with the focus in it."""
        library = self._workspace.state.library
        known = known_parts(library.parts.values(), most=_MOST_NAMES)
        self._buttons.hide()
        self.weigh_in.begin(known, self._style)

    def go_to(self, part: str, key: str) -> bool:
        """Make a part the current one; False when the pack has no such part."""
        found = self.tree.go_to(part, key)
        if found:
            self.tree.setFocus()
        return found

    def add_part(self) -> None:
        """Ask for a new part."""
        dialog = self._dialog("Add part", self._added)
        dialog.show_record(Part(self._pack, "new part"))
        dialog.form.rows["name"].set_text("")
        dialog.open()
        dialog.form.focus_field("name")

    def edit_part(self) -> None:
        """Ask for all fields of the current part."""
        part = self.tree.current_part()
        if part is None:
            return

        def changed(values: Mapping[str, Any]) -> tuple[Problem, ...]:
            new = {k: v for k, v in values.items() if v != getattr(part, k)}
            if new.get("count", 1) is None:
                new["count"] = 1
            label = f"{'part' if len(new) != 1 else _title(next(iter(new)))}"
            return self.model.change(f"{label} of {part.name}", part.name, new)

        dialog = self._dialog(f"Part {part.name}", changed)
        dialog.show_record(part)
        dialog.open()

    def _dialog(self, title: str, submit: Any) -> RecordDialog:
        fields = [field for field in PART_FIELDS if field.name != "pack"]
        columns = recorded_columns(fields, self._style)
        return RecordDialog(
            title, columns, style=self._style, submit=submit, parent=self.window()
        )

    def _added(self, values: Mapping[str, Any]) -> tuple[Problem, ...]:
        pack = self._pack
        known = {key: value for key, value in values.items() if value is not None}

        def make(state: State) -> State:
            return with_new_part(state, Part(pack, **known))

        problems = attempt(self._workspace, f"part {values['name']}", make)
        if not problems:
            self.tree.go_to(str(values["name"]))
        return problems

    def show_busbar(self) -> None:
        """Open the busbar calculator, filled from the current part."""
        from benchpack.ui.dialogs.busbar import open_busbar

        part = self.tree.current_part()
        if part is not None:
            open_busbar(self._workspace, self.window(), pack=self._pack, part=part.name)

    def remove_parts(self) -> None:
        """Remove the selected parts; undo brings them back."""
        names = self.tree.selected_parts()
        if not names:
            return
        pack = self._pack

        def make(state: State) -> State:
            return without_parts(state, pack, names)

        what = names[0] if len(names) == 1 else f"{len(names)} parts"
        attempt(self._workspace, f"removal of {what}", make)

    def _on_part_weighed(
        self, name: str, subsystem: str, weighing: Weighing, count: int
    ) -> None:
        part = Part(
            self._pack,
            name,
            subsystem=Subsystem(subsystem),
            count=count,
            mass_each_kg=weighing.mass_each_kg,
            known_by=weighing.known_by,
        )

        def make(state: State) -> State:
            return with_new_part(state, part)

        problems = attempt(self._workspace, f"weigh-in of {name}", make)
        if problems:
            self.weigh_in.show_problem(problems[0])
            return
        self.tree.go_to(name)
        each = format_mass(weighing.mass_each_kg, style=self._style)
        self.weigh_in.taken(f"Added {count} × {name}, {each} each.")

    def _on_weigh_in_left(self) -> None:
        self._buttons.show()
        self.tree.setFocus()

    def _on_entry_refused(self, text: str, problems: tuple[Problem, ...]) -> None:
        self._workspace.notifier.show_problems(f"Not taken: {text}", problems)

    def _on_current_changed(self) -> None:
        part = self.tree.current_part()
        self.edit_button.setEnabled(part is not None)
        self.remove_button.setEnabled(part is not None)
        self.busbar_button.setEnabled(part is not None and is_conductor(part))


def _title(key: str) -> str:
    return next(field.title for field in PART_FIELDS if field.name == key)
