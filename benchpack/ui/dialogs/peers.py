"""Which packs are peers: all others, or those that are ticked."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QPersistentModelIndex,
    Qt,
    Signal,
)
from PySide6.QtWidgets import (
    QHBoxLayout,
    QHeaderView,
    QLineEdit,
    QRadioButton,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from benchpack.ui.widgets.controls import named, plain_button, text_label

AnyIndex = QModelIndex | QPersistentModelIndex
_CHECK = Qt.ItemDataRole.CheckStateRole


class PeersModel(QAbstractListModel):
    """Names with a tick each, filtered by a text."""

    def __init__(self, names: Sequence[str], *, ticked: Iterable[str]) -> None:
        super().__init__()
        self._names = list(names)
        self.ticked = set(ticked) & set(names)
        self._rows = list(self._names)

    @property
    def total(self) -> int:
        """Number of names, listed or not."""
        return len(self._names)

    def peers(self) -> tuple[str, ...]:
        """Give the ticked names in the order of the library."""
        return tuple(name for name in self._names if name in self.ticked)

    def filter_by(self, text: str) -> None:
        """List only names in which each word of a text occurs."""
        words = text.casefold().split()
        self.beginResetModel()
        self._rows = [n for n in self._names if all(w in n.casefold() for w in words)]
        self.endResetModel()

    def tick_listed(self) -> None:
        """Tick all names that are listed."""
        self.ticked.update(self._rows)
        self._tell()

    def untick_listed(self) -> None:
        """Take the ticks from all names that are listed."""
        self.ticked.difference_update(self._rows)
        self._tell()

    def _tell(self) -> None:
        if self._rows:
            last = self.index(len(self._rows) - 1)
            self.dataChanged.emit(self.index(0), last, [_CHECK])

    def rowCount(self, parent: AnyIndex = QModelIndex()) -> int:
        """Give the number of names listed."""
        return 0 if parent.isValid() else len(self._rows)

    def flags(self, index: AnyIndex) -> Qt.ItemFlag:
        """Let every name be ticked."""
        return super().flags(index) | Qt.ItemFlag.ItemIsUserCheckable

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """Give a name and whether it is ticked."""
        if not index.isValid():
            return None
        name = self._rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return name
        if role == _CHECK:
            on = name in self.ticked
            return Qt.CheckState.Checked if on else Qt.CheckState.Unchecked
        return None

    def setData(
        self, index: AnyIndex, value: object, role: int = Qt.ItemDataRole.EditRole
    ) -> bool:
        """Tick a name or take its tick."""
        if role != _CHECK or not index.isValid():
            return False
        # A view passes the state as a number, code passes the member.
        on = value in (Qt.CheckState.Checked, Qt.CheckState.Checked.value)
        name = self._rows[index.row()]
        (self.ticked.add if on else self.ticked.discard)(name)
        self.dataChanged.emit(index, index, [_CHECK])
        return True


class PeersField(QWidget):
    """Two choices, and under the second the list with its filter.

    Signals
    -------
    peers_changed()
        Others are chosen.
    """

    peers_changed = Signal()

    def __init__(self, names: Sequence[str], *, peers: tuple[str, ...]) -> None:
        super().__init__()
        self._model = PeersModel(names, ticked=peers or names)
        self._all = QRadioButton("All other packs of the library")
        self._some = QRadioButton("Only those ticked")
        self._choice = QWidget()
        self._filter = named(QLineEdit(), "Filter the peers")
        self._filter.setPlaceholderText("Filter")
        self._filter.setClearButtonEnabled(True)
        self.list = named(_list_of(self._model), "Peers")
        self._tick = plain_button("Tick listed")
        self._untick = plain_button("Untick listed")
        self._count = text_label(role="note")
        (self._some if peers else self._all).setChecked(True)
        self._lay_out()
        self._all.toggled.connect(self._refresh)
        self._filter.textChanged.connect(self._model.filter_by)
        self._tick.clicked.connect(self._model.tick_listed)
        self._untick.clicked.connect(self._model.untick_listed)
        self._model.dataChanged.connect(self._refresh)
        self._refresh()

    def _lay_out(self) -> None:
        tools = QHBoxLayout()
        tools.setSpacing(8)
        tools.addWidget(self._tick)
        tools.addWidget(self._untick)
        tools.addStretch(1)
        inside = QVBoxLayout(self._choice)
        inside.setContentsMargins(0, 4, 0, 0)
        inside.setSpacing(8)
        inside.addWidget(self._filter)
        inside.addWidget(self.list, 1)
        inside.addLayout(tools)
        inside.addWidget(self._count)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self._all)
        column.addWidget(self._some)
        column.addWidget(self._choice, 1)
        column.addStretch(0)

    def peers(self) -> tuple[str, ...]:
        """Give the peers as a study stores them: empty for all others."""
        return () if self._all.isChecked() else self._model.peers()

    def error(self) -> str:
        """Say what is wrong with the choice, empty when nothing is."""
        if self._some.isChecked() and not self._model.ticked:
            return "No pack is ticked. Tick at least one, or take all others."
        return ""

    def _refresh(self) -> None:
        some = self._some.isChecked()
        self._choice.setVisible(some)
        ticked, total = len(self._model.ticked), self._model.total
        self._count.setText(f"{ticked} of {total} ticked" if some else "")
        self.peers_changed.emit()


def _list_of(model: PeersModel) -> QTableView:
    """Make a list of rows of one height; a list view asks for each row on layout."""
    view = QTableView()
    view.setModel(model)
    view.setShowGrid(False)
    view.setWordWrap(False)
    view.setTabKeyNavigation(False)
    view.setMinimumHeight(120)
    view.setStyleSheet("QTableView::item { padding: 0 4px; }")
    heads = view.horizontalHeader()
    heads.hide()
    heads.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
    rows = view.verticalHeader()
    rows.hide()
    rows.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
    rows.setDefaultSectionSize(view.fontMetrics().height() + 8)
    return view
