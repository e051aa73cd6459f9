"""All fields of the selected pack as a form."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from benchpack.errors import DataError
from benchpack.model.boundary import Boundary
from benchpack.model.pack import PACK_FIELDS, Pack
from benchpack.ui.dialogs.boundary import BoundaryDialog
from benchpack.ui.forms.field_form import FieldForm
from benchpack.ui.tables.columns import TableColumn, recorded_columns
from benchpack.ui.tables.record_table import RecordTableModel
from benchpack.units.formatting import NumberStyle

_GROUPS = (
    ("", ("name",)),
    (
        "Energy and mass",
        (
            "energy_kwh",
            "energy_basis",
            "energy_tolerance_kwh",
            "mass_kg",
            "mass_known_by",
            "mass_tolerance_kg",
            "voltage_v",
            "state_of_health_pct",
        ),
    ),
    (
        "Cells",
        ("chemistry", "cell_format", "cell_count", "cells_mass_kg", "cells_volume_l"),
    ),
    ("Enclosure and cooling", ("volume_l", "enclosure_material", "cooling")),
    ("Boundary", ("boundary",)),
    ("Source and note", ("source", "year", "yearly_volume", "note")),
)


class RecordTab(QWidget):
    """Edits one pack through the table's own way of taking entries."""

    def __init__(self, table: RecordTableModel, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Record")
        self._table = table
        self._style = NumberStyle()
        self._row = -1
        self._pack: Pack | None = None
        self._columns: Sequence[TableColumn] = recorded_columns(
            PACK_FIELDS, self._style
        )
        by_key = {column.key: column for column in self._columns}
        groups = [(title, [by_key[key] for key in keys]) for title, keys in _GROUPS]
        self.form = FieldForm(groups, "Record of the pack", self)
        self.form.entered.connect(self._on_field_entered)
        self.form.boundary_requested.connect(self.edit_boundary)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.form)

    def show_pack(self, pack: Pack, *, row: int, style: NumberStyle) -> None:
        """Show a pack.

        Parameters
        ----------
        pack : Pack
            The record.
        row : int
            Its row in the library.
        style : NumberStyle
            Decimal mark and mass unit.
        """
        self._pack, self._row, self._style = pack, row, style
        self._columns = recorded_columns(PACK_FIELDS, style)
        self.form.show_record(pack, self._columns, style)

    def edit_boundary(self) -> None:
        """Open the dialog for what was on the scale."""
        if self._pack is None:
            return
        dialog = BoundaryDialog(
            self._pack.name,
            self._pack.boundary,
            style=self._style,
            parent=self.window(),
        )
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.accepted.connect(self._on_boundary_accepted)
        dialog.open()

    def _on_boundary_accepted(self) -> None:
        dialog = self.sender()
        if isinstance(dialog, BoundaryDialog) and self._pack is not None:
            boundary: Boundary = dialog.boundary()
            if boundary != self._pack.boundary:
                label = f"boundary of {self._pack.name}"
                self._table.entries.edits.change(
                    label, [(self._row, {"boundary": boundary})]
                )

    def _on_field_entered(self, key: str, text: str) -> None:
        if self._pack is None:
            return
        column = next(column for column in self._columns if column.key == key)
        label = f"{column.title} of {self._pack.name}"
        try:
            values = {key: self._table.entries.parsed(column, text)}
        except DataError as error:
            self.form.show_problem(key, error.problems[0])
            return
        problems = self._table.entries.edits.change(label, [(self._row, values)])
        self.form.show_problem(key, problems[0] if problems else None)
