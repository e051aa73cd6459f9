"""Problems as a table model that stays quick with a hundred thousand of them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
)
from PySide6.QtGui import QColor, QIcon

from benchpack.errors import Problem, Severity
from benchpack.ui.assets import icon
from benchpack.ui.theme import theme
from benchpack.ui.widgets.controls import plain_tip

AnyIndex = QModelIndex | QPersistentModelIndex

KIND, WHERE, WHAT, REMEDY = range(4)
HEADS = ("Kind", "Where", "What is wrong", "What to do")

TEXT_HEADS = (
    "kind",
    "source",
    "row",
    "column",
    "value",
    "record",
    "what is wrong",
    "what to do",
)
"""Column heads of problems as text, see `problem_rows`."""

_SIGNS = {Severity.ERROR: ("fail", "fail"), Severity.WARNING: ("warning", "look")}
_BREAKS = re.compile(r"[\t\r\n]+")


def problem_rows(problems: tuple[Problem, ...]) -> Iterator[list[str]]:
    """Give problems as rows of text under `TEXT_HEADS`."""
    for problem in problems:
        yield [
            str(problem.severity),
            problem.source,
            "" if problem.row is None else str(problem.row),
            problem.column,
            problem.value,
            problem.record,
            problem.what,
            problem.remedy,
        ]


def problems_text(problems: tuple[Problem, ...]) -> str:
    """Give problems as tab-separated lines with a head, for a spreadsheet."""
    rows = [list(TEXT_HEADS), *problem_rows(problems)]
    return "\n".join("\t".join(map(_on_one_line, row)) for row in rows)


def _on_one_line(cell: str) -> str:
    return cell if cell.isprintable() else _BREAKS.sub(" ", cell)


def count_text(problems: tuple[Problem, ...]) -> str:
    """Give how many problems there are, ``3 errors, 1 warning``."""
    errors = sum(problem.severity is Severity.ERROR for problem in problems)
    warnings = len(problems) - errors
    counts = ((errors, "error"), (warnings, "warning"))
    words = [
        f"{number:,}".replace(",", "\u2009") + f" {word}{'' if number == 1 else 's'}"
        for number, word in counts
        if number
    ]
    return ", ".join(words) or "nothing"


class ProblemsTableModel(QAbstractTableModel):
    """Problems, one a row; text is made for the cells that are looked at."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._problems: tuple[Problem, ...] = ()
        self._icons: dict[Severity, QIcon] = {}

    @property
    def problems(self) -> tuple[Problem, ...]:
        """The problems shown."""
        return self._problems

    def set_problems(self, problems: tuple[Problem, ...]) -> None:
        """Show other problems."""
        self.beginResetModel()
        self._problems = problems
        self.endResetModel()

    def cell_text(self, row: int, column: int) -> str:
        """Give the text of a cell."""
        problem = self._problems[row]
        if column == KIND:
            return str(problem.severity)
        if column == WHERE:
            return problem.place()
        return problem.what if column == WHAT else problem.remedy

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:
        """Give the number of problems."""
        return 0 if parent.isValid() else len(self._problems)

    def columnCount(self, parent: AnyIndex = QModelIndex()) -> int:
        """Give the number of columns."""
        return 0 if parent.isValid() else len(HEADS)

    def headerData(
        self,
        section: int,
        orientation: Qt.Orientation,
        role: int = Qt.ItemDataRole.DisplayRole,
    ) -> object:
        """Give the column heads; rows have none."""
        across = orientation is Qt.Orientation.Horizontal
        if across and role == Qt.ItemDataRole.DisplayRole:
            return HEADS[section]
        if across and role == Qt.ItemDataRole.TextAlignmentRole:
            return Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
        return None

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Give text, sign and colour of a cell."""
        if not index.isValid():
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return self.cell_text(index.row(), index.column())
        if role == Qt.ItemDataRole.ToolTipRole:
            return plain_tip(self.cell_text(index.row(), index.column()))
        if index.column() != KIND:
            return None
        severity = self._problems[index.row()].severity
        sign, colour = _SIGNS[severity]
        if role == Qt.ItemDataRole.DecorationRole:
            if severity not in self._icons:
                self._icons[severity] = icon(sign, colour)
            return self._icons[severity]
        if role == Qt.ItemDataRole.ForegroundRole:
            return QColor(getattr(theme().roles, colour))
        return None
