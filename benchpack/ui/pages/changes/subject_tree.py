"""The view of what changes can act on."""

from __future__ import annotations

from PySide6.QtCore import (
    QItemSelectionModel,
    QModelIndex,
    QPersistentModelIndex,
    QPointF,
    QRect,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QColor, QKeyEvent, QPainter
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTreeView,
    QWidget,
)

from benchpack.report.display import Display
from benchpack.results.explain_joints import joint_record
from benchpack.ui.pages.changes.subject_model import MASS, NAME, Selection, SubjectModel
from benchpack.ui.pages.changes.subject_rows import Row, RowKind
from benchpack.ui.tables.cell_painting import paint_ground, paint_text
from benchpack.ui.tables.marks import draw_lock
from benchpack.ui.theme import font, theme

Index = QModelIndex | QPersistentModelIndex
_ONE, _TWO = 26, 42
_LINE, _INSET, _LOCK = 20, 4, 11
_MASS_WIDTH = 78
_LEFT = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
_RIGHT = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight
_MIDDLE = Qt.TextElideMode.ElideMiddle


class SubjectDelegate(QStyledItemDelegate):
    """Draws a row; what stays or was taken has a second line that says so."""

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Give room for the second line where there is one."""
        del option
        model = index.model()
        two = isinstance(model, SubjectModel) and bool(model.row_at(index).fate)
        return QSize(60, _TWO if two else _ONE)

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: Index
    ) -> None:
        """Draw name or mass, with a lock where it has to stay."""
        model = index.model()
        if not isinstance(model, SubjectModel):
            return
        row, roles = model.row_at(index), theme().roles
        paint_ground(painter, option, row_is_current=False)
        rect = option.rect.adjusted(_INSET, 2, -_INSET, -2)
        first = QRect(rect.left(), rect.top(), rect.width(), _LINE)
        painter.save()
        quiet = bool(row.fate) or row.kind is RowKind.JOINT
        strong = row.kind is RowKind.GROUP
        painter.setFont(font("strong" if strong else "body"))
        ink = QColor(roles.second if quiet else roles.text)
        text = str(index.data())
        if index.column() == MASS:
            paint_text(painter, first, text, ink, _RIGHT)
        else:
            paint_text(painter, first, text, ink, _LEFT, cut=_MIDDLE)
            self._paint_fate(painter, rect, row)
        painter.restore()

    def _paint_fate(self, painter: QPainter, rect: QRect, row: Row) -> None:
        if not row.fate:
            return
        second = QRect(rect.left(), rect.top() + _LINE, rect.width(), _LINE - 2)
        ink = QColor(theme().roles.second)
        if row.locked:
            place = QPointF(second.left() + 5, second.center().y())
            draw_lock(painter, place, _LOCK, ink)
            second.setLeft(second.left() + 16)
        painter.setFont(font("note"))
        paint_text(painter, second, row.fate, ink, _LEFT)


class SubjectTree(QTreeView):
    """Shows parts and joints; several may be chosen, and dragged onto a kind.

    Signals
    -------
    chosen()
        Another selection.

    Attributes
    ----------
    pack : str
        Name of the subject.
    """

    chosen = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.items = SubjectModel(self)
        self.pack = ""
        self.setAccessibleName("Parts and joints that can be changed")
        self.setModel(self.items)
        self.setItemDelegate(SubjectDelegate(self))
        self.setIndentation(12)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setDragEnabled(True)
        self.setDragDropMode(QAbstractItemView.DragDropMode.DragOnly)
        heads = self.header()
        heads.setAccessibleName("Columns of the parts and joints")
        heads.setStretchLastSection(False)
        heads.setSectionResizeMode(NAME, QHeaderView.ResizeMode.Stretch)
        heads.setSectionResizeMode(MASS, QHeaderView.ResizeMode.Fixed)
        heads.resizeSection(MASS, _MASS_WIDTH)
        self.selectionModel().selectionChanged.connect(self.chosen)

    def show_rows(self, rows: tuple[Row, ...], display: Display) -> None:
        """Show the subject; what is chosen and open stays so where it can."""
        before, closed = self.selection(), self._closed()
        if self.items.show(rows, display):
            for place in range(self.items.rowCount()):
                index = self.items.index(place, NAME)
                name = self.items.row_at(index).name
                self.setExpanded(index, name not in closed)
            self.choose(before)
        # Rows gain and lose their second line.
        self.scheduleDelayedItemsLayout()

    def _closed(self) -> set[str]:
        top = (self.items.index(i, NAME) for i in range(self.items.rowCount()))
        return {self.items.row_at(one).name for one in top if not self.isExpanded(one)}

    def selection(self) -> Selection:
        """Give the parts and joints that are chosen."""
        return self.items.selection_of(self.selectionModel().selectedRows(NAME))

    def choose(self, wanted: Selection) -> None:
        """Choose parts and joints by name, as far as they are there."""
        model, flag = self.selectionModel(), QItemSelectionModel.SelectionFlag
        found = [
            indexes[0]
            for kind, names in (
                (RowKind.PART, wanted.parts),
                (RowKind.JOINT, wanted.joints),
            )
            for name in names
            if (indexes := self.items.indexes_of(kind, name))
        ]
        model.clearSelection()
        for place, index in enumerate(found):
            if not place:
                model.setCurrentIndex(index, flag.NoUpdate)
            model.select(index, flag.Select | flag.Rows)
        if found:
            self.scrollTo(found[0])

    @property
    def explain_key(self) -> str:
        """Key of the figure in the current row, for F1."""
        return "joint mass" if self._current_joint() else "proposal mass"

    @property
    def explain_record(self) -> str:
        """The joint that the figure of `explain_key` belongs to, else nothing."""
        joint = self._current_joint()
        return joint_record(self.pack, joint) if joint else ""

    def _current_joint(self) -> str:
        index = self.currentIndex()
        if not index.isValid():
            return ""
        row = self.items.row_at(index)
        return row.name if row.kind is RowKind.JOINT else ""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Choose nothing with Esc."""
        if event.key() == Qt.Key.Key_Escape:
            self.clearSelection()
        else:
            super().keyPressEvent(event)
