"""All assumptions of a study as one narrow form: edited one undo step at a time."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QShowEvent
from PySide6.QtWidgets import (
    QFrame,
    QLabel,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from benchpack.errors import DataError
from benchpack.model.study import Study
from benchpack.report.display import Display, number_style
from benchpack.report.worth_figures import years_text
from benchpack.results.change_supply import planned_volumes
from benchpack.session.state import State
from benchpack.ui.pages.worth.assumption_fields import (
    form_column,
    is_range,
    read_row,
    row_of,
    row_text,
    value_of,
)
from benchpack.ui.pages.worth.assumption_row import AssumptionRow
from benchpack.ui.pages.worth.assumption_sections import (
    CYCLE,
    EMPTY,
    SECTIONS,
    VOLUMES,
    matters,
)
from benchpack.ui.pages.worth.cycle_row import CycleRow
from benchpack.ui.pages.worth.volumes_table import VolumesTable
from benchpack.ui.theme import SPACE_BETWEEN, set_text_role
from benchpack.ui.workspace import Workspace

_LEAST_WIDTH = 280
_NEVER = object()


class AssumptionPanel(QScrollArea):
    """Shows and edits what a study reckons with; follows the document by itself.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    parent : QWidget, optional
        Owner.
    """

    def __init__(self, workspace: Workspace, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.workspace = workspace
        self.setAccessibleName("Assumptions")
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setMinimumWidth(_LEAST_WIDTH)
        self.setAcceptDrops(True)
        self.rows: dict[str, AssumptionRow] = {}
        self._shown: dict[str, Any] = {}
        self._look: tuple[str, ...] = ()
        self._refused: QWidget | None = None
        # Built from the outside in: each later change of parent is styled anew.
        body = QWidget(self.viewport())
        body.setAccessibleName("Assumptions")
        self._column = QVBoxLayout(body)
        self._column.setContentsMargins(SPACE_BETWEEN, 0, SPACE_BETWEEN, SPACE_BETWEEN)
        self._column.setSpacing(6)
        for heading, keys in SECTIONS:
            self._add_section(body, heading, keys)
        self._column.addStretch(1)
        self.setWidget(body)
        self.volumes.volumes_entered.connect(self._on_volumes_entered)
        self.volumes.said.connect(workspace.notifier.say)
        self.volumes.refused.connect(self._on_volumes_refused)
        workspace.changed.connect(self._on_workspace_changed)
        workspace.opened.connect(self._on_workspace_opened)

    def _add_section(self, body: QWidget, heading: str, keys: tuple[str, ...]) -> None:
        head = QLabel(heading, body)
        set_text_role(head, "strong")
        head.setContentsMargins(0, SPACE_BETWEEN, 0, 0)
        self._column.addWidget(head)
        study = self.workspace.state.study
        for key in keys:
            if key in (VOLUMES, CYCLE):
                self._column.addWidget(self._own_part(body, key))
                continue
            row = AssumptionRow(
                form_column(key, study),
                body,
                is_range=is_range(key),
                placeholder=EMPTY.get(key, ""),
            )
            row.entered.connect(self._on_entered)
            self.rows[key] = row
            self._column.addWidget(row)

    def _own_part(self, body: QWidget, key: str) -> QWidget:
        """Make what is no plain row, in its place: Tab goes as things were made."""
        if key == VOLUMES:
            self.volumes = VolumesTable(body)
            return self.volumes
        self.cycle = CycleRow(self.workspace, body)
        return self.cycle

    # What is shown

    def refresh(self) -> None:
        """Show what differs from what is shown; the rest is left alone."""
        study = self.workspace.state.study
        look = (study.currency, study.mass_unit, study.decimal_mark, study.name)
        if look != self._look:
            self._look = look
            self._shown.clear()
        style = number_style(study)
        for key, row in self.rows.items():
            value = value_of(study, key)
            enabled = matters(key, study)
            if row.isEnabled() != enabled:
                row.setEnabled(enabled)
            if self._shown.get(key, _NEVER) == value:
                continue
            if key not in self._shown:
                row.set_column(form_column(key, study))
            self._shown[key] = value
            row.set_text(row_text(row.column, value, style))
        self._show_volumes(study)
        self.cycle.show_cycle(study.drive_cycle)

    def _show_volumes(self, study: Study) -> None:
        library = self.workspace.state.library
        own = None
        if library.packs.has(study.subject):
            own = library.packs[library.packs.position(study.subject)].yearly_volume
        packs = planned_volumes(study, own).tolist()
        years = float(len(packs)) if study.volumes else study.programme_years
        value = (packs, years, study.start_year, bool(study.volumes))
        if self._shown.get(VOLUMES, _NEVER) == value:
            return
        self._shown[VOLUMES] = value
        self.volumes.show_volumes(
            packs,
            span=years_text(years, Display(study)),
            start_year=study.start_year,
            given=bool(study.volumes),
            style=number_style(study),
        )

    def focus_field(self, column: str) -> bool:
        """Put the focus into a field; False when the panel has no such field.

        Parameters
        ----------
        column : str
            Attribute, title or head of a column of a study.
        """
        key = row_of(column)
        target: QWidget
        if key == VOLUMES:
            target = self.volumes.view
        elif key == CYCLE:
            target = self.cycle.read
        elif key in self.rows:
            target = self.rows[key].editor
        else:
            return False
        self.ensureWidgetVisible(target)
        target.setFocus()
        return True

    def _on_workspace_changed(self, change: object) -> None:
        del change
        if self.isVisible():
            self.refresh()

    def _on_workspace_opened(self) -> None:
        self._look = ()
        if self.isVisible():
            self.refresh()

    # What is entered

    def _on_entered(self, key: str, text: str) -> None:
        row = self.rows[key]
        study = self.workspace.state.study
        try:
            values = read_row(key, text, study)
            self.workspace.state.with_study(**values)
        except DataError as error:
            row.show_problem(error.problems[0])
            self._bring_into_view(row)
            return
        if all(getattr(study, name) == value for name, value in values.items()):
            # The same value, written in another way.
            value = value_of(study, key)
            row.set_text(row_text(row.column, value, number_style(study)))
            return
        self._edit(row.column.title, values)

    def _edit(self, label: str, values: dict[str, Any]) -> None:
        def change(state: State) -> State:
            return state.with_study(**values)

        self.workspace.edit(label, change)

    def _on_volumes_entered(
        self, words: str, packs: tuple[int, ...], first_year: int | None
    ) -> None:
        values: dict[str, Any] = {"volumes": packs}
        if first_year is not None:
            values["start_year"] = first_year
        try:
            self.workspace.state.with_study(**values)
        except DataError as error:
            self.volumes.show_problem(error.problems[0])
            return
        self._edit(words, values)

    def _on_volumes_refused(self) -> None:
        self._bring_into_view(self.volumes)

    def _bring_into_view(self, part: QWidget) -> None:
        """Scroll to what is said below a field, once the layout has made room."""
        self._refused = part
        QTimer.singleShot(0, self._scroll_to_refused)

    def _scroll_to_refused(self) -> None:
        if self._refused is not None:
            bottom = self._refused.geometry().bottom()
            self.ensureVisible(0, bottom, 0, SPACE_BETWEEN)
            self._refused = None

    # Qt's own

    def showEvent(self, event: QShowEvent) -> None:
        """Bring the panel up to date when it comes into view."""
        super().showEvent(event)
        self.refresh()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take one file from outside."""
        if len(_files(event)) == 1:
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Read the drive cycle that was dropped."""
        files = _files(event)
        if files:
            event.acceptProposedAction()
            self.cycle.read_file(files[0])


def _files(event: QDropEvent) -> list[Path]:
    urls = event.mimeData().urls()
    return [Path(url.toLocalFile()) for url in urls if url.isLocalFile()]
