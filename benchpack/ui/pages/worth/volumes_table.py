"""Volumes by year: a small table to type into and to paste into."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from benchpack.errors import DataError, Problem
from benchpack.model.assumptions import MOST_YEARS
from benchpack.ui.dialogs.frame import ErrorLabel
from benchpack.ui.pages.worth.volumes_block import read_block
from benchpack.ui.pages.worth.volumes_view import VolumesView
from benchpack.ui.tables.clipboard import from_mime, to_mime, to_text
from benchpack.ui.theme import SPACE_INSIDE
from benchpack.ui.widgets.controls import plain_button, text_label
from benchpack.units.formatting import NumberStyle, format_number


class VolumesTable(QWidget):
    """Packs by year, with a sum, and buttons to add and remove years.

    Signals
    -------
    volumes_entered(str, object, object)
        What was done in words, all packs by year, and the calendar year of the first
        where a pasted block named it, else None.
    said(str)
        A remark for the status line.
    refused()
        An entry cannot stand; why is said below the table.

    Parameters
    ----------
    parent : QWidget
        Owner.
    """

    volumes_entered = Signal(str, object, object)
    said = Signal(str)
    refused = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.view = VolumesView(self)
        self.model = self.view.volumes
        self.sum = text_label(role="note")
        self.add = plain_button("Add year", "As many packs as in the last year (+)")
        self.remove = plain_button("Remove", "Remove the selected years (Del)")
        self.even = plain_button("Even", "Back to one volume for all years")
        self._error = ErrorLabel()
        buttons = QHBoxLayout()
        buttons.setSpacing(SPACE_INSIDE)
        for button in (self.add, self.remove, self.even):
            buttons.addWidget(button)
        buttons.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(SPACE_INSIDE)
        column.addWidget(self.view)
        column.addWidget(self.sum)
        column.addWidget(self._error)
        column.addLayout(buttons)
        self.add.clicked.connect(self.add_year)
        self.remove.clicked.connect(self.remove_years)
        self.even.clicked.connect(self.clear)
        self.model.entered.connect(self._on_packs_entered)
        self.view.paste_requested.connect(self.paste)
        self.view.copy_requested.connect(self.copy)
        self.view.add_requested.connect(self.add_year)
        self.view.remove_requested.connect(self.remove_years)
        self.view.refused.connect(self._on_entry_refused)

    def show_volumes(
        self,
        packs: Sequence[float],
        *,
        span: str,
        start_year: int | None,
        given: bool,
        style: NumberStyle,
    ) -> None:
        """Show packs by year, see `VolumesModel.show_volumes`.

        `span` says how long that is.
        """
        self.model.show_volumes(packs, start_year=start_year, given=given, style=style)
        self.even.setEnabled(given)
        self.remove.setEnabled(len(packs) > 1)
        self.show_problem(None)
        total = format_number(sum(packs), 0, style=style)
        words = f"{total} packs in {span}"
        if not packs:
            words = "No yearly volume is known. Add a year, or paste volumes."
        elif not given:
            words += ", evenly"
        self.sum.setText(words)

    def show_problem(self, problem: Problem | None) -> None:
        """Say below the table why an entry cannot stand, nothing with None."""
        said = ""
        if problem is not None:
            place = f"Row {problem.row} of the block: " if problem.row else ""
            said = f"{place}{problem.what} {problem.remedy}".strip()
        self._error.show_error(said)
        if said:
            self.refused.emit()

    @property
    def error_text(self) -> str:
        """What is said below the table, empty when nothing is wrong."""
        return "" if self._error.isHidden() else self._error.text()

    def _packs(self) -> list[int]:
        return [round(packs) for packs in self.model.packs]

    def _rows(self) -> list[int]:
        """Give the selected rows, else the current one."""
        chosen = {index.row() for index in self.view.selectionModel().selectedIndexes()}
        current = self.view.currentIndex().row()
        return sorted(chosen or {current} - {-1})

    def add_year(self) -> None:
        """Add a year with the packs of the last one."""
        packs = self._packs()
        if len(packs) >= MOST_YEARS:
            self.said.emit(f"A programme has {MOST_YEARS} years at most.")
            return
        self._enter("add a year", [*packs, packs[-1] if packs else 0])

    def remove_years(self) -> None:
        """Remove the selected years; those after them move up."""
        rows, packs = self._rows(), self._packs()
        left = [n for row, n in enumerate(packs) if row not in rows]
        if not rows:
            return
        if not left:
            self.said.emit("One year is left at least; Even brings one volume back.")
            return
        words = "remove a year" if len(rows) == 1 else f"remove {len(rows)} years"
        self._enter(words, left)

    def clear(self) -> None:
        """Go back to one volume for all years."""
        if self.model.is_given:
            self.volumes_entered.emit("even volume", (), None)

    def copy(self) -> None:
        """Put the selected years, or all of them, onto the clipboard."""
        rows = self._rows()
        taken = rows if len(rows) > 1 else range(len(self.model.packs))
        packs = self._packs()
        cells = [[self.model.year_at(row), str(packs[row])] for row in taken]
        if cells:
            QGuiApplication.clipboard().setMimeData(to_mime(to_text(cells)))
            self.said.emit(f"Copied {len(cells)} years")

    def paste(self) -> None:
        """Take packs from the clipboard, from the current year on."""
        block = from_mime(QGuiApplication.clipboard().mimeData())
        if not block.cells:
            self.said.emit("There is nothing to paste.")
            return
        try:
            found = read_block(block, style=self.model.style)
        except DataError as error:
            self.show_problem(error.problems[0])
            return
        top = max(0, self.view.currentIndex().row())
        first = found.first_year
        if first is not None:
            top = 0
        packs = self._packs() if first is None else []
        if not self.model.is_given and top == 0:
            # An even plan is no list of years that a pasted one would be part of.
            packs = []
        new = [*packs[:top], *found.packs, *packs[top + len(found.packs) :]]
        if len(new) > MOST_YEARS:
            what = f"That makes {len(new)} years."
            self.show_problem(Problem(what, f"Paste up to {MOST_YEARS}."))
            return
        self._enter("paste volumes", new, first_year=first)

    def _enter(
        self, words: str, packs: Sequence[int], *, first_year: int | None = None
    ) -> None:
        self.show_problem(None)
        self.volumes_entered.emit(words, tuple(packs), first_year)

    def _on_packs_entered(self, row: int, packs: int) -> None:
        new = self._packs()
        new[row] = packs
        self._enter(f"packs in {self.model.year_at(row)}", new)

    def _on_entry_refused(self, text: str, problems: tuple[Problem, ...]) -> None:
        del text
        self.show_problem(problems[0])
