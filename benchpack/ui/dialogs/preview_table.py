"""The preview of a table: rows as they will be recorded, refused cells marked."""

from __future__ import annotations

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView

from benchpack.errors import Problem, Severity
from benchpack.ui.assets import icon
from benchpack.ui.dialogs.import_preview import Preview
from benchpack.ui.theme import theme
from benchpack.ui.widgets.controls import named, plain_tip

AnyIndex = QModelIndex | QPersistentModelIndex
Role = Qt.ItemDataRole

_NOTHING = Preview((), (), 0, 0, is_whole=True)
_SIGNS = {Severity.ERROR: ("fail", "fail"), Severity.WARNING: ("warning", "look")}
_RIGHT = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
_LEFT = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter


class PreviewTableModel(QAbstractTableModel):
    """The rows of a `Preview`; the first column says whether a row is taken."""

    def __init__(self) -> None:
        super().__init__()
        self._preview = _NOTHING
        self._currency = ""

    def show_preview(self, preview: Preview | None, *, currency: str) -> None:
        """Show another preview, or none."""
        self.beginResetModel()
        self._preview = preview or _NOTHING
        self._currency = currency
        self.endResetModel()

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:
        """Give the number of rows."""
        return 0 if parent.isValid() else len(self._preview.rows)

    def columnCount(self, parent: AnyIndex = QModelIndex()) -> int:
        """Give the number of columns, the verdict included."""
        return 0 if parent.isValid() else len(self._preview.fields) + 1

    def headerData(
        self,
        section: int,
        orientation: Qt.Orientation,
        role: int = Role.DisplayRole,
    ) -> object:
        """Give the heads with their units."""
        if orientation is not Qt.Orientation.Horizontal:
            return None
        if role == Role.TextAlignmentRole:
            return self._alignment(section)
        if role != Role.DisplayRole:
            return None
        if section == 0:
            return "Row is"
        return self._preview.fields[section - 1].header(currency=self._currency)

    def data(self, index: AnyIndex, role: int = Role.DisplayRole) -> object:
        """Give the text of a cell, its sign, and the reason as a tooltip."""
        if not index.isValid():
            return None
        row, column = self._preview.rows[index.row()], index.column() - 1
        if role == Role.DisplayRole:
            if column < 0:
                verdict = "replaces" if row.replaces else "taken"
                return "refused" if row.is_refused else verdict
            return row.cells[column]
        if role == Role.TextAlignmentRole:
            return self._alignment(index.column())
        problem = self._problem(index.row(), column)
        if role == Role.ForegroundRole:
            tokens = theme().roles
            if problem is not None and problem.severity is Severity.ERROR:
                return QColor(tokens.fail)
            return QColor(tokens.second) if row.is_refused else None
        if problem is None:
            return None
        if role == Role.DecorationRole:
            return icon(*_SIGNS[problem.severity])
        text = f"{problem.what} {problem.remedy}".strip()
        if role == Role.ToolTipRole:
            return plain_tip(text)
        return text if role == Role.AccessibleDescriptionRole else None

    def _problem(self, row: int, column: int) -> Problem | None:
        """Give what marks a cell; the verdict bears the gravest mark of its row."""
        marks = self._preview.rows[row].marks
        if column >= 0:
            return marks.get(column)
        by_gravity = sorted(marks.values(), key=_is_warning)
        return by_gravity[0] if by_gravity else None

    def _alignment(self, section: int) -> Qt.AlignmentFlag:
        if section and self._preview.fields[section - 1].is_numeric:
            return _RIGHT
        return _LEFT


def _is_warning(problem: Problem) -> bool:
    return problem.severity is Severity.WARNING


class PreviewTable(QTableView):
    """The view of a preview; for looking at only."""

    def __init__(self, model: PreviewTableModel) -> None:
        super().__init__()
        self.setModel(model)
        named(self, "Rows as they will be recorded")
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setMinimumHeight(140)
        self.setStyleSheet("QTableView::item { padding: 0 4px; }")
        rows = self.verticalHeader()
        rows.hide()
        rows.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        rows.setDefaultSectionSize(self.fontMetrics().height() + 8)
        self.horizontalHeader().setHighlightSections(False)
        model.modelReset.connect(self._on_model_reset)

    def _on_model_reset(self) -> None:
        # At most fifty short rows, so measuring them is cheap.
        self.resizeColumnsToContents()
        for column in range(self.model().columnCount()):
            self.setColumnWidth(column, min(280, self.columnWidth(column) + 12))
