"""Choosing the study on screen, adding one, removing one."""

from __future__ import annotations

from PySide6.QtCore import QStringListModel, Qt
from PySide6.QtWidgets import QAbstractItemView, QListView, QWidget

from benchpack.model.study import Study
from benchpack.session.state import State
from benchpack.session.study_edits import without_study
from benchpack.ui.dialogs.frame import FormDialog
from benchpack.ui.dialogs.study import StudyDialog
from benchpack.ui.widgets.controls import named, plain_button, text_label
from benchpack.ui.workspace import Workspace
from benchpack.units.formatting import UNKNOWN


class StudiesDialog(FormDialog):
    """Lists the studies of the library.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    parent : QWidget, optional
        The window it belongs to.
    """

    def __init__(self, workspace: Workspace, parent: QWidget | None = None) -> None:
        super().__init__("Studies", "Show this study", parent=parent)
        self.workspace = workspace
        self._model = QStringListModel()
        self.list = named(QListView(), "Studies")
        self.list.setModel(self._model)
        self.list.setUniformItemSizes(True)
        self.list.setStyleSheet("QListView::item { padding: 4px 8px; }")
        self.list.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.list.doubleClicked.connect(self.accept)
        self.new_button = plain_button("New study…")
        self.remove_button = plain_button("Remove")
        self.new_button.clicked.connect(self._on_new_clicked)
        self.remove_button.clicked.connect(self._on_remove_clicked)
        self.buttons.insertWidget(0, self.new_button)
        self.buttons.insertWidget(1, self.remove_button)
        self.body.setSpacing(8)
        text = "Each study has its own subject, reference, peers, worth and units."
        self.body.addWidget(text_label(text, "note"))
        self.body.addWidget(self.list, 1)
        self._refresh()
        self.resize(520, 360)
        self.list.setFocus()

    def _refresh(self) -> None:
        state = self.workspace.state
        self._names = [study.name for study in state.library.studies]
        self._model.setStringList([_line(study) for study in state.library.studies])
        if state.study.name in self._names:
            row = self._names.index(state.study.name)
            self.list.setCurrentIndex(self._model.index(row))
        self.accept_button.setEnabled(bool(self._names))
        self.remove_button.setEnabled(len(self._names) > 1)

    def chosen(self) -> str:
        """Give the name of the study that is marked in the list."""
        row = self.list.currentIndex().row()
        return self._names[row] if 0 <= row < len(self._names) else ""

    def accept(self) -> None:
        """Show the study that is marked."""
        name = self.chosen()
        if name and name != self.workspace.state.study.name:
            self.workspace.edit(f"choice of {name}", self._shown)
        super().accept()

    def _shown(self, state: State) -> State:
        return State(state.library, self.chosen())

    def _removed(self, state: State) -> State:
        return without_study(state, self.chosen())

    def _on_new_clicked(self) -> None:
        dialog = StudyDialog(self.workspace, self, as_new=True)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.accepted.connect(self._refresh)
        dialog.open()

    def _on_remove_clicked(self) -> None:
        if self.chosen():
            self.workspace.edit(f"removal of {self.chosen()}", self._removed)
            self._refresh()


def _line(study: Study) -> str:
    subject, reference = study.subject or UNKNOWN, study.reference or UNKNOWN
    return f"{study.name}: {subject} against {reference}"
