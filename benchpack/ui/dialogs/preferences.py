"""The person's settings, made from their declarations, and the study's units."""

from __future__ import annotations

from dataclasses import Field, fields
from functools import partial
from typing import Any

from PySide6.QtWidgets import QComboBox, QHBoxLayout, QWidget

from benchpack.session.settings import Settings
from benchpack.session.state import State
from benchpack.ui.dialogs.frame import FormDialog, FormRows, in_a_row
from benchpack.ui.dialogs.study_text import attempt
from benchpack.ui.dialogs.unit_choice import UnitChoice
from benchpack.ui.widgets.controls import named, plain_button, text_label
from benchpack.ui.workspace import Workspace


class ClearableList(QWidget):
    """How many entries a list has, and a button that clears it.

    Parameters
    ----------
    name : str
        What is listed.
    values : tuple of str
        The entries.
    """

    def __init__(self, name: str, values: tuple[str, ...]) -> None:
        super().__init__()
        self.values = values
        self.clear_button = named(plain_button("Clear"), f"Clear {name.lower()}")
        self._count = text_label()
        self._count.setWordWrap(False)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(self._count)
        row.addWidget(self.clear_button)
        row.addStretch(1)
        self.clear_button.clicked.connect(self._on_clear_clicked)
        self._refresh()

    def _on_clear_clicked(self) -> None:
        self.values = ()
        self._refresh()

    def _refresh(self) -> None:
        number = len(self.values)
        self._count.setText(f"{number}" if number else "none")
        self.clear_button.setEnabled(bool(number))


class PreferencesDialog(FormDialog):
    """Edits the settings, and the study's units as one step of undo.

    Parameters
    ----------
    workspace : Workspace
        The open document and the settings.
    parent : QWidget, optional
        The window it belongs to.
    """

    def __init__(self, workspace: Workspace, parent: QWidget | None = None) -> None:
        super().__init__("Preferences", "Keep changes", parent=parent)
        self.workspace = workspace
        self.widgets: dict[str, QComboBox | ClearableList] = {}
        own, study = FormRows(), FormRows()
        for setting in fields(Settings):
            self._add_setting(own, setting)
        self.units = UnitChoice(workspace.state.study)
        self.units.add_rows(study)
        self.units.units_changed.connect(self._on_units_changed)
        self._study_rows = study
        self.body.setSpacing(8)
        self.body.addWidget(text_label("This machine", "section"))
        self.body.addWidget(own)
        self.body.addSpacing(8)
        name = workspace.state.study.name
        self.body.addWidget(text_label(f"Study “{name}”", "section"))
        self.body.addWidget(study)
        self.body.addStretch(1)
        self.setMinimumWidth(460)

    def _add_setting(self, rows: FormRows, setting: Field[Any]) -> None:
        label = str(setting.metadata["label"])
        value = getattr(self.workspace.settings, setting.name)
        choices = setting.metadata["choices"]
        widget: QComboBox | ClearableList
        field: QWidget
        focus: QWidget
        if choices:
            widget = QComboBox()
            widget.addItems(list(choices))
            widget.setCurrentText(str(value))
            field, focus = in_a_row(widget), widget
        else:
            widget = ClearableList(label, tuple(value))
            field, focus = widget, widget.clear_button
        self.widgets[setting.name] = widget
        tip = str(setting.metadata["help"])
        rows.add_row(setting.name, label, field=field, focus=focus, tip=tip)

    def settings_values(self) -> dict[str, object]:
        """Give the settings as they are in the dialog, by name."""
        return {
            name: widget.currentText()
            if isinstance(widget, QComboBox)
            else widget.values
            for name, widget in self.widgets.items()
        }

    def accept(self) -> None:
        """Keep the settings, and the study's units as an edit."""
        errors = self._errors()
        self._study_rows.show_errors(errors)
        if errors:
            self._study_rows.focus_first(errors)
            return
        study = self.workspace.state.study
        values = self.units.values()
        if any(getattr(study, name) != value for name, value in values.items()):
            change = partial(_with_units, values=values)
            if not self.workspace.edit(f"units of {study.name}", change):
                return
        changed = {
            name: value
            for name, value in self.settings_values().items()
            if value != getattr(self.workspace.settings, name)
        }
        if changed:
            self.workspace.change_settings(**changed)
        super().accept()

    def _errors(self) -> dict[str, str]:
        return dict(attempt(self.workspace.state.study, self.units.values(), {}).errors)

    def _on_units_changed(self) -> None:
        self._study_rows.show_errors(self._errors())


def _with_units(state: State, *, values: dict[str, str]) -> State:
    return state.with_study(**values)
