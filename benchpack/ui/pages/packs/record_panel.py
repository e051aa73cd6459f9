"""The panel of the selected pack: record, parts, sources."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QPushButton,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from benchpack.model.library import Library
from benchpack.ui.pages.packs.parts_tab import PartsTab
from benchpack.ui.pages.packs.record_tab import RecordTab
from benchpack.ui.pages.packs.source_tab import SourceTab
from benchpack.ui.tables.marks import Mark
from benchpack.ui.tables.record_table import RecordTableModel
from benchpack.ui.theme import set_text_role
from benchpack.ui.workspace import Workspace
from benchpack.units.formatting import NumberStyle

LEAST_WIDTH = 424


class RecordPanel(QWidget):
    """Shows one pack in three tabs.

    Signals
    -------
    subject_requested(), reference_requested()
        The pack is to be the subject, or the reference.
    """

    subject_requested = Signal()
    reference_requested = Signal()

    def __init__(
        self, workspace: Workspace, table: RecordTableModel, parent: QWidget
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName("Selected pack")
        self.setMinimumWidth(LEAST_WIDTH)
        self._workspace = workspace
        self._table = table
        self._row = -1
        self.name = QLabel(self)
        set_text_role(self.name, "section")
        self.name.setMinimumWidth(80)
        self.subject_button = QPushButton("Use as subject", self)
        self.reference_button = QPushButton("Use as reference", self)
        self.subject_button.clicked.connect(self.subject_requested)
        self.reference_button.clicked.connect(self.reference_requested)
        self.tabs = QTabWidget(self)
        self.record = RecordTab(table, self.tabs)
        self.parts = PartsTab(workspace, self.tabs)
        self.source = SourceTab(workspace, self.tabs)
        self.tabs.setDocumentMode(True)
        for named in (self.tabs, self.tabs.tabBar()):
            named.setAccessibleName("Record, parts and sources of the pack")
        for widget, words in (
            (self.record, "Record"),
            (self.parts, "Parts"),
            (self.source, "Sources"),
        ):
            self.tabs.addTab(widget, words)
        self.source.source_chosen.connect(self._on_source_chosen)
        top = QHBoxLayout()
        top.setContentsMargins(16, 0, 0, 8)
        top.setSpacing(8)
        top.addWidget(self.name, 1)
        top.addWidget(self.subject_button)
        top.addWidget(self.reference_button)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addLayout(top)
        layout.addWidget(self.tabs, 1)

    def show_pack(
        self, library: Library, row: int, *, style: NumberStyle, mark: Mark | None
    ) -> None:
        """Show the pack in a row of the library.

        Parameters
        ----------
        library : Library
            The records.
        row : int
            Row of the pack.
        style : NumberStyle
            Decimal mark and mass unit.
        mark : Mark or None
            What the pack is in the study.
        """
        pack = library.packs[row]
        self._row = row
        self.name.setText(pack.name)
        self.name.setToolTip(pack.name)
        self.show_mark(mark)
        self.record.show_pack(pack, row=row, style=style)
        self.parts.show_pack(library, pack.name, style)
        self.source.show_source(library, pack.source)

    def show_mark(self, mark: Mark | None) -> None:
        """Say on the buttons what the pack already is."""
        is_subject, is_reference = mark is Mark.SUBJECT, mark is Mark.REFERENCE
        self.subject_button.setEnabled(not is_subject)
        self.reference_button.setEnabled(not is_reference)
        self.subject_button.setText(
            "Is the subject" if is_subject else "Use as subject"
        )
        self.reference_button.setText(
            "Is the reference" if is_reference else "Use as reference"
        )

    def begin_weigh_in(self) -> None:
        """Show the parts and open the weigh-in."""
        self.tabs.setCurrentWidget(self.parts)
        self.parts.begin_weigh_in()

    def go_to_field(self, key: str) -> bool:
        """Put the focus into a field of the record; False when there is none."""
        if key not in self.record.form.rows and key != "boundary":
            return False
        self.tabs.setCurrentWidget(self.record)
        return self.record.form.focus_field(key)

    def go_to_part(self, part: str, key: str) -> bool:
        """Show a part; False when the pack has no such part."""
        self.tabs.setCurrentWidget(self.parts)
        return self.parts.go_to(part, key)

    def _on_source_chosen(self, name: str) -> None:
        pack = self.name.text()
        problems = self._table.entries.edits.change(
            f"source of {pack}", [(self._row, {"source": name})]
        )
        if problems:
            self._workspace.notifier.show_problems("Not changed", problems)
