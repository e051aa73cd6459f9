"""How the joining of the pack compares with the reference's."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from benchpack.model.study import Study
from benchpack.report.joint_text import worth_text
from benchpack.results.inventory import Inventory
from benchpack.results.joint_comparison import compare_joints, fastener_worth
from benchpack.ui.pages.joints.compared_model import (
    DIFFERENCE,
    LABEL,
    REFERENCE,
    SUBJECT,
    ComparedModel,
)
from benchpack.ui.theme import font, set_text_role
from benchpack.ui.widgets.controls import text_label, unbroken

_ROW_HEIGHT = 24
_FIGURE_WIDTH = 70
_SLIM = "QTableView::item, QHeaderView::section { padding: 2px 4px; }"


class ReferenceTab(QWidget):
    """Shows both packs per pack, per kWh and per metre of seal."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Against the reference")
        self.model = ComparedModel(self)
        self.view = QTableView(self)
        self.sentence = text_label()
        self.worth = text_label()
        self.note = text_label(role="note")
        set_text_role(self.sentence, "body")
        self._set_look()
        layout = QVBoxLayout(self)
        layout.setContentsMargins(16, 12, 0, 8)
        layout.setSpacing(8)
        layout.addWidget(self.worth)
        layout.addWidget(self.sentence)
        layout.addWidget(self.view, 1)
        layout.addWidget(self.note)
        self._rest = QWidget(self)
        layout.addWidget(self._rest, 1)
        self.setFocusProxy(self.view)
        self.view.selectionModel().currentRowChanged.connect(self._on_row_changed)

    def _set_look(self) -> None:
        view = self.view
        view.setModel(self.model)
        view.setAccessibleName("Joining of both packs")
        view.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        view.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        view.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        view.setShowGrid(False)
        view.setWordWrap(False)
        view.setFont(font("note"))
        view.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        view.setTabKeyNavigation(False)
        view.setStyleSheet(_SLIM)
        rows = view.verticalHeader()
        rows.hide()
        rows.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        rows.setDefaultSectionSize(_ROW_HEIGHT)
        heads = view.horizontalHeader()
        heads.setAccessibleName("Columns of the comparison")
        heads.setHighlightSections(False)
        heads.setFont(font("note"))
        heads.setTextElideMode(Qt.TextElideMode.ElideMiddle)
        heads.setSectionResizeMode(LABEL, QHeaderView.ResizeMode.Stretch)
        for column in (SUBJECT, REFERENCE, DIFFERENCE):
            view.setColumnWidth(column, _FIGURE_WIDTH)

    def show_inventories(
        self, inventory: Inventory, reference: Inventory | None, study: Study
    ) -> None:
        """Show the joining of a pack beside the reference's.

        Parameters
        ----------
        inventory : Inventory
            The joints of the pack.
        reference : Inventory or None
            Those of the reference, None where the study has none.
        study : Study
            Worth per kilogram, and how numbers are shown.
        """
        self.show_worth(inventory, study)
        alone = ""
        if reference is None:
            alone = "The study has no reference. Choose one in the headline."
        elif reference.pack == inventory.pack:
            alone = f"{inventory.pack} is the reference itself. Show another pack."
        elif not reference.facts:
            alone = f"No joints of {reference.pack}, the reference, are recorded."
        self.sentence.setText(alone)
        self.sentence.setVisible(bool(alone))
        self.view.setVisible(not alone)
        self._rest.setVisible(bool(alone))
        self.note.setVisible(not alone)
        if alone or reference is None:
            return
        current = self.view.currentIndex().row()
        rows = compare_joints(inventory, reference)
        self.model.show(rows, (inventory.pack, reference.pack), study)
        if 0 <= current < len(rows):
            self.view.setCurrentIndex(self.model.index(current, 0))
        self._show_note(current)

    def show_worth(self, inventory: Inventory, study: Study) -> None:
        """Say what the fasteners weigh, are worth and cost."""
        self.worth.setText(
            unbroken(worth_text(fastener_worth(inventory, study), study))
        )

    def _on_row_changed(self, current: QModelIndex, previous: QModelIndex) -> None:
        del previous
        self._show_note(current.row())

    def _show_note(self, row: int) -> None:
        """Say what has to be known of the current row, else of all of them."""
        rows = self.model.rows
        if 0 <= row < len(rows):
            self.note.setText(rows[row].note)
        elif any(one.note for one in rows):
            self.note.setText("* has a note: choose the row to read it.")
        else:
            self.note.setText("")
