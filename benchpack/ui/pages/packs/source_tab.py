"""The source of the selected pack's figures."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from benchpack.errors import DataError, Problem
from benchpack.model.library import Library
from benchpack.model.material import SOURCE_FIELDS, Source
from benchpack.session.record_edits import with_source
from benchpack.session.state import State
from benchpack.ui.forms.field_form import FieldForm
from benchpack.ui.tables.choice_box import ChoiceBox
from benchpack.ui.tables.columns import recorded_columns
from benchpack.ui.tables.edits import attempt
from benchpack.ui.theme import set_text_role
from benchpack.ui.workspace import Workspace
from benchpack.units.formatting import NumberStyle

_STYLE = NumberStyle()


class SourceTab(QWidget):
    """Names the source of a pack and edits its record.

    Signals
    -------
    source_chosen(str)
        The pack is to name this source.
    """

    source_chosen = Signal(str)

    def __init__(self, workspace: Workspace, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Sources")
        self._workspace = workspace
        self._name = ""
        self._columns = recorded_columns(SOURCE_FIELDS, _STYLE)
        self.choice = ChoiceBox(self)
        self.choice.setEditable(True)
        self.choice.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        self.choice.setAccessibleName("Source of this pack")
        self.choice.setToolTip(
            "Choose a recorded source, or type the name of a new one."
        )
        label = QLabel("Source of this pack")
        label.setBuddy(self.choice)
        self.note = QLabel()
        self.note.setWordWrap(True)
        set_text_role(self.note, "note")
        self.form = FieldForm([("", self._columns)], "Source record", self)
        top = QHBoxLayout()
        top.setContentsMargins(16, 0, 16, 0)
        top.setSpacing(8)
        top.addWidget(label)
        top.addWidget(self.choice, 1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 12, 0, 0)
        layout.addLayout(top)
        self.note.setContentsMargins(16, 0, 16, 0)
        layout.addWidget(self.note)
        layout.addWidget(self.form, 1)
        self.form.entered.connect(self._on_field_entered)
        self.choice.activated.connect(self._on_choice_made)
        line = self.choice.lineEdit()
        if line is not None:
            line.setAccessibleName("Source of this pack")
            line.editingFinished.connect(self._on_choice_made)

    def show_source(self, library: Library, name: str) -> None:
        """Show the source of a name, recorded or not.

        Parameters
        ----------
        library : Library
            The records.
        name : str
            What the pack names as its source; may be empty.
        """
        self._name = name
        names = [source.name for source in library.sources]
        if names != [self.choice.itemText(i) for i in range(self.choice.count())]:
            self.choice.clear()
            self.choice.addItems(names)
        self.choice.setCurrentIndex(names.index(name) if name in names else -1)
        self.choice.setEditText(name)
        source = self._recorded(library)
        self.form.setVisible(bool(name))
        if not name:
            self.note.setText("The pack names no source. Choose one, or type a name.")
            return
        record = source or Source(name)
        self.form.show_record(record, self._columns, _STYLE)
        count = int((library.packs.columns["source"] == name).sum())
        shared = f"{count} packs name this source." if count > 1 else ""
        missing = "This source is not recorded yet: fill in what is known of it."
        self.note.setText(shared if source else missing)
        self.note.setVisible(bool(self.note.text()))

    def _recorded(self, library: Library) -> Source | None:
        return next((one for one in library.sources if one.name == self._name), None)

    def _on_choice_made(self) -> None:
        text = self.choice.currentText().strip()
        if text != self._name:
            self.source_chosen.emit(text)

    def _on_field_entered(self, key: str, text: str) -> None:
        name = self._name
        source = self._recorded(self._workspace.state.library) or Source(name)
        try:
            new = replace(source, **{key: text.strip()})
        except DataError as error:
            self.form.show_problem(key, error.problems[0])
            return

        def make(state: State) -> State:
            return with_source(state, name, new)

        title = next(field.title for field in SOURCE_FIELDS if field.name == key)
        problems: tuple[Problem, ...] = attempt(
            self._workspace, f"{title} of source {name}", make
        )
        self.form.show_problem(key, problems[0] if problems else None)
