"""What a cell says on hover and to a screen reader."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from benchpack.errors import Problem
from benchpack.model.fields import Kind
from benchpack.ui.tables.cell_text import is_unknown, shown_text
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.tables.marks import Mark
from benchpack.units.formatting import NumberStyle


@dataclass(frozen=True, slots=True)
class Refused:
    """What was entered in a cell and could not be taken."""

    text: str
    problem: Problem


@dataclass(frozen=True, slots=True)
class CellFacts:
    """All that is known about one cell.

    Parameters
    ----------
    column : TableColumn
        Its column.
    value : object
        The stored value.
    style : NumberStyle
        How numbers are shown.
    refused : Refused or None
        What was last entered and refused.
    mark : Mark or None
        What the record is in the study; for its name only.
    warnings : tuple of Problem
        What is unusual about the record; for its name only.
    remark : str
        How a figure that is not recorded was found, as a sentence.
    """

    column: TableColumn
    value: Any
    style: NumberStyle
    refused: Refused | None = None
    mark: Mark | None = None
    warnings: tuple[Problem, ...] = ()
    remark: str = ""


def cell_tip(cell: CellFacts) -> str | None:
    """Give the lines that are shown on hover, None where there are none."""
    lines = []
    if cell.refused:
        problem = cell.refused.problem
        said = f"{problem.what} {problem.remedy}"
        lines.append(f"Not taken: {cell.refused.text}. {said}")
    if cell.remark:
        lines.append(cell.remark)
    elif cell.column.kind is not Kind.FLAG and is_unknown(cell.value):
        lines.append(f"Not known. {cell.column.reason}")
    elif cell.column.kind is Kind.BOUNDARY:
        lines.append(cell.value.to_text())
    if cell.mark:
        stays = cell.mark is Mark.CARRY_OVER
        lines.append("It has to stay." if stays else f"This is the {cell.mark}.")
    lines += [f"Warning: {p.what} {p.remedy}" for p in cell.warnings]
    return "\n".join(lines) or None


def spoken_text(cell: CellFacts) -> str:
    """Give what a screen reader says of a cell."""
    if cell.column.kind is Kind.FLAG:
        return "yes" if cell.value else "no"
    if is_unknown(cell.value):
        return "not known"
    words = [shown_text(cell.column, cell.value, cell.style)]
    if cell.mark:
        words.append(str(cell.mark))
    words += [cell.remark] if cell.remark else []
    count = len(cell.warnings)
    if count:
        words.append(f"{count} warning{'s' if count > 1 else ''}")
    return ", ".join(words)
