"""The form of the current change: all its fields, with what is computed in grey."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QApplication,
    QFrame,
    QLabel,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from benchpack.errors import Problem
from benchpack.model.change import RANGES, Change
from benchpack.model.change_needs import lacking
from benchpack.results.proposal_effect import Effect
from benchpack.ui.forms.field_row import FieldRow
from benchpack.ui.pages.changes.form_fields import (
    FIELDS,
    GROUPS,
    RANGE_FIELDS,
    computed_ranges,
    field_of,
    form_column,
    is_listed,
    is_shown,
    range_texts,
    range_unit,
)
from benchpack.ui.pages.changes.form_rows import NamesRow, RangeRow
from benchpack.ui.tables.cell_text import edited_text
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.controls import text_label, unbroken
from benchpack.units.formatting import NumberStyle

_STYLE = NumberStyle()
_AROUND = 40
"""Room kept above and below the field that is typed in, in pixels."""


class ChangeForm(QScrollArea):
    """Shows and edits one change.

    Signals
    -------
    entered(str, str)
        Key of a field, and the text that was entered in it.
    range_entered(str, object)
        Attribute of a range, and its three texts.
    """

    entered = Signal(str, str)
    range_entered = Signal(str, object)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Fields of the change")
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.rows: dict[str, FieldRow | NamesRow | RangeRow] = {}
        self._heads: dict[str, QLabel] = {}
        self._name = ""
        # Built from the outside in: each later change of parent is styled anew.
        body = QWidget(self.viewport())
        body.setAccessibleName("Fields of the change")
        self._column = QVBoxLayout(body)
        self._column.setContentsMargins(8, 8, 4, 16)
        self._column.setSpacing(6)
        self.said = text_label(role="note")
        self._column.addWidget(self.said)
        for heading, keys in GROUPS:
            self._add_group(body, heading, keys)
        self._column.addStretch(1)
        self.setWidget(body)
        self.verticalScrollBar().rangeChanged.connect(self._on_range_changed)

    def _add_group(self, body: QWidget, heading: str, keys: Sequence[str]) -> None:
        head = QLabel(heading, body)
        set_text_role(head, "strong")
        head.setContentsMargins(0, 8, 0, 0)
        self._heads[heading] = head
        self._column.addWidget(head)
        for key in keys:
            row = self._made_row(key, body)
            self.rows[key] = row
            self._column.addWidget(row)

    def _made_row(self, key: str, body: QWidget) -> FieldRow | NamesRow | RangeRow:
        if key in RANGES:
            first = RANGE_FIELDS[key][0]
            title = first.title.removesuffix(" low")
            help_text = first.help.removesuffix(": low.")
            line = RangeRow(key, title, help_text, parent=body)
            line.entered.connect(self.range_entered)
            return line
        column = form_column(key, _STYLE, currency="")
        if is_listed(FIELDS[key]):
            names = NamesRow(column, body)
            names.entered.connect(self.entered)
            return names
        row = FieldRow(column, body)
        row.entered.connect(self.entered)
        return row

    def show_change(
        self,
        change: Change,
        effect: Effect | None,
        *,
        style: NumberStyle,
        currency: str,
        offers: Mapping[str, tuple[str, ...]],
    ) -> None:
        """Show a change and say what it still lacks.

        Parameters
        ----------
        change : Change
            The change.
        effect : Effect or None
            What it comes to, None where it does not count.
        style : NumberStyle
            Decimal mark and mass unit.
        currency : str
            The study's currency.
        offers : mapping of str to tuple of str
            Names to choose from, by field; the materials of the library among them.
        """
        anew, self._name = change.name != self._name, change.name
        computed = computed_ranges(change, effect)
        for key, row in self.rows.items():
            row.setVisible(is_shown(change.kind, key))
            if isinstance(row, RangeRow):
                grey = range_texts(key, computed[key], style, plain=False)
                given = range_texts(key, getattr(change, key), style)
                row.show_texts(given, grey, range_unit(key, style, currency=currency))
            elif isinstance(row, NamesRow):
                row.show_names(getattr(change, key), offers.get(key, ()))
            else:
                materials = offers.get("material", ())
                column = form_column(key, style, currency=currency, materials=materials)
                row.set_column(column)
                row.set_text(edited_text(column, getattr(change, key), style))
        for heading, keys in GROUPS:
            wanted = any(is_shown(change.kind, key) for key in keys)
            self._heads[heading].setVisible(wanted)
        for problem in lacking(change):
            self.show_problem(field_of(problem), problem)
        if anew:
            self.verticalScrollBar().setValue(0)

    def show_words(self, words: str) -> None:
        """Say above the fields what the change comes to."""
        self.said.setText(unbroken(words))
        self.said.setVisible(bool(words))

    def _on_range_changed(self) -> None:
        """Keep the field that is typed in where it is seen, whatever grows above it."""
        body, focused = self.widget(), QApplication.focusWidget()
        if body is not None and focused is not None and body.isAncestorOf(focused):
            self.ensureWidgetVisible(focused, 0, _AROUND)

    def show_problem(self, key: str, problem: Problem | None) -> None:
        """Say below a field why its entry cannot stand."""
        if key in self.rows:
            self.rows[key].show_problem(problem)

    def focus_field(self, key: str) -> bool:
        """Put the focus into a field; False when the form shows no such field."""
        row = self.rows.get(key)
        if row is None or row.isHidden():
            return False
        self.ensureWidgetVisible(row)
        row.editor.setFocus()
        return True

    def focus_first_lack(self, change: Change) -> None:
        """Go to what a change still lacks, else to its name."""
        keys = [field_of(problem) for problem in lacking(change)]
        self.focus_field(keys[0] if keys else "name")
