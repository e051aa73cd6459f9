"""How each column of a table is read: its head, first values, unit and meaning."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QComboBox, QGridLayout, QScrollArea, QWidget

from benchpack.files.sheet import Sheet
from benchpack.model.fields import Field, Kind
from benchpack.ui.dialogs.import_plan import Plan
from benchpack.ui.widgets.controls import named, text_label
from benchpack.units.labels import quantity, screen_label

KEPT_IN_NOTE = "kept in the note"
COLUMN_LIMIT = 200
"""Columns beyond this one are kept in the note without a row of their own."""

_SAMPLES = 3
_SAMPLE_LENGTH = 60


class ColumnChoice(QComboBox):
    """A choice for one column, which the wheel scrolls past.

    Signals
    -------
    column_chosen(int)
        The person made a choice for this column.
    """

    column_chosen = Signal(int)

    def __init__(self, column: int) -> None:
        super().__init__()
        self._column = column
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.activated.connect(self._on_activated)

    def _on_activated(self, _index: int) -> None:
        self.column_chosen.emit(self._column)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Leave the wheel to the area around."""
        event.ignore()


class ColumnsField(QScrollArea):
    """One row per column of the file.

    Signals
    -------
    plan_changed(object)
        The `Plan` after a choice.
    """

    plan_changed = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        named(self, "How each column is read")
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setMinimumHeight(140)
        self._plan: Plan | None = None
        self.units: list[ColumnChoice] = []
        self.meanings: list[ColumnChoice] = []

    def show_sheet(self, sheet: Sheet, plan: Plan) -> None:
        """Make the rows for a table.

        Parameters
        ----------
        sheet : Sheet
            The table.
        plan : Plan
            How it is read so far.
        """
        self._plan = plan
        self.units, self.meanings = [], []
        holder = QWidget()
        grid = QGridLayout(holder)
        grid.setContentsMargins(8, 4, 8, 4)
        grid.setHorizontalSpacing(16)
        grid.setVerticalSpacing(4)
        grid.setColumnStretch(0, 1)
        grid.setColumnStretch(1, 2)
        for at, head in enumerate(("Column", "First values", "Unit", "Reads as")):
            grid.addWidget(text_label(head, "note"), 0, at)
        records = sheet.head(_SAMPLES)
        for column, head in enumerate(sheet.header[:COLUMN_LIMIT]):
            self._add_row(grid, column, head=head, values=_samples(records, column))
        grid.setRowStretch(grid.rowCount(), 1)
        self.setWidget(holder)
        self.show_plan(plan)

    def _add_row(
        self, grid: QGridLayout, column: int, *, head: str, values: str
    ) -> None:
        shown = head.strip() or f"(column {column + 1})"
        unit = named(ColumnChoice(column), f"Unit of {shown}")
        unit.setMinimumContentsLength(6)
        meaning = named(ColumnChoice(column), f"{shown} reads as")
        meaning.setAccessibleDescription(f"First values: {values}")
        meaning.setMinimumContentsLength(18)
        meaning.setMaxVisibleItems(24)
        self.units.append(unit)
        self.meanings.append(meaning)
        unit.column_chosen.connect(self._on_unit_chosen)
        meaning.column_chosen.connect(self._on_meaning_chosen)
        row = column + 1
        grid.addWidget(text_label(shown), row, 0)
        grid.addWidget(text_label(values, "note"), row, 1)
        grid.addWidget(unit, row, 2)
        grid.addWidget(meaning, row, 3)

    def show_plan(self, plan: Plan) -> None:
        """Show how the columns are read, without telling anyone."""
        self._plan = plan
        by_name = {field.name: field for field in plan.fields}
        for column, (unit, meaning) in enumerate(
            zip(self.units, self.meanings, strict=True)
        ):
            name = plan.mapping.fields[column]
            field = by_name.get(name or "")
            meaning.clear()
            meaning.addItem(KEPT_IN_NOTE, None)
            for offered in plan.fields:
                title = offered.title.replace("+-", "±")
                word = f"{title} (needed)" if offered.required else title
                meaning.addItem(word, offered.name)
            meaning.setCurrentIndex(max(0, meaning.findData(name)) if name else 0)
            meaning.setToolTip(field.help if field else "")
            _offer_units(unit, field, plan.mapping.units[column])

    def _on_meaning_chosen(self, column: int) -> None:
        if self._plan is None:
            return
        name = self.meanings[column].currentData()
        self._tell(self._plan, column, name, "")

    def _on_unit_chosen(self, column: int) -> None:
        if self._plan is None:
            return
        name = self._plan.mapping.fields[column]
        self._tell(self._plan, column, name, self.units[column].currentData())

    def _tell(self, plan: Plan, column: int, name: str | None, unit: str) -> None:
        fields, units = list(plan.mapping.fields), list(plan.mapping.units)
        # Another column of that meaning keeps it: stepping through a list with the
        # arrow keys would take the meanings of all columns on the way.
        fields[column], units[column] = name, unit
        mapping = replace(plan.mapping, fields=tuple(fields), units=tuple(units))
        changed = replace(plan, mapping=mapping)
        self.show_plan(changed)
        self.plan_changed.emit(changed)


def _offer_units(box: ColumnChoice, field: Field | None, unit: str) -> None:
    """Offer the units of a quantity, the one found in the head chosen."""
    box.clear()
    measures = field is not None and field.kind is Kind.NUMBER and bool(field.unit)
    box.setVisible(measures)
    if field is None or not measures:
        return
    known = quantity(field.quantity)
    found = known.find(unit) if unit else None
    for label in known.labels():
        said = (
            screen_label(label) if unit or label != field.unit else f"{label}, assumed"
        )
        box.addItem(said, label)
    if found is None and unit:
        box.addItem(unit, unit)
    chosen = found.label if found else unit or field.unit
    box.setCurrentIndex(max(0, box.findData(chosen)))
    if unit and found is not None:
        box.setItemData(box.currentIndex(), unit)


def _samples(records: list[list[str]], column: int) -> str:
    values = [row[column].strip() for row in records if column < len(row)]
    text = "   ".join(filter(None, values)).replace("\n", " ")
    return text if len(text) <= _SAMPLE_LENGTH else text[: _SAMPLE_LENGTH - 1] + "…"
