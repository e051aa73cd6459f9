"""The kinds of changes as a row of buttons; each takes what is dropped on it."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from benchpack.model.change import ChangeKind
from benchpack.ui.pages.changes.subject_model import items_of
from benchpack.ui.widgets.key_text import key_text

KIND_KEYS = {
    ChangeKind.REMOVE: "Alt+R",
    ChangeKind.SUBSTITUTE: "Alt+S",
    ChangeKind.INTEGRATE: "Alt+I",
    ChangeKind.MOULD_IN: "Alt+M",
    ChangeKind.ADD: "Alt+A",
    ChangeKind.SWAP_JOINTS: "Alt+W",
    ChangeKind.ADJUST: "Alt+J",
}
"""The key of each kind."""
HELP = {
    ChangeKind.REMOVE: "Parts and joints go",
    ChangeKind.SUBSTITUTE: "Parts are made of another material",
    ChangeKind.INTEGRATE: "Several parts become one, the joints between them go",
    ChangeKind.MOULD_IN: "A piece becomes part of its neighbour",
    ChangeKind.ADD: "A part comes",
    ChangeKind.SWAP_JOINTS: "Joints are swapped for others",
    ChangeKind.ADJUST: "Masses and costs of one's own",
}
"""What each kind does, in a few words."""
_SLIM = "QPushButton { padding: 4px 7px; } QPushButton:focus { padding: 3px 6px; }"


class KindButton(QPushButton):
    """Makes a change of one kind.

    Signals
    -------
    kind_chosen(object)
        It was pressed: its `ChangeKind`.
    dropped(object, object)
        Parts and joints were dropped on it: `ChangeKind` and `Selection`.

    Parameters
    ----------
    kind : ChangeKind
        The kind.
    parent : QWidget
        Owner.
    """

    kind_chosen = Signal(object)
    dropped = Signal(object, object)

    def __init__(self, kind: ChangeKind, parent: QWidget) -> None:
        super().__init__(kind.capitalize(), parent)
        self.kind = kind
        self.setAcceptDrops(True)
        # Seven of them stand in one row of a narrow window.
        self.setStyleSheet(_SLIM)
        self.setToolTip(f"{HELP[kind]} ({key_text(KIND_KEYS[kind])})")
        self.setAccessibleName(f"New change: {kind}")
        self.setAccessibleDescription(HELP[kind])
        self.clicked.connect(self._on_clicked)

    def _on_clicked(self) -> None:
        self.kind_chosen.emit(self.kind)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take parts and joints."""
        if items_of(event.mimeData()) is not None:
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Make a change of what is dropped."""
        found = items_of(event.mimeData())
        if found is not None:
            event.acceptProposedAction()
            self.dropped.emit(self.kind, found)


class KindsBar(QWidget):
    """The seven kinds.

    Signals
    -------
    kind_chosen(object), dropped(object, object)
        As of `KindButton`.
    """

    kind_chosen = Signal(object)
    dropped = Signal(object, object)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Kinds of changes")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(4)
        self.buttons = {kind: KindButton(kind, self) for kind in ChangeKind}
        for button in self.buttons.values():
            button.kind_chosen.connect(self.kind_chosen)
            button.dropped.connect(self.dropped)
            row.addWidget(button)
        row.addStretch(1)
