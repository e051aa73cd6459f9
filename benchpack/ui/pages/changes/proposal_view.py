"""How the proposal is laid out: what can be changed, the changes, what they come to."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QApplication,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from benchpack.ui.pages.changes.change_panel import ChangePanel
from benchpack.ui.pages.changes.changes_table import ChangesTable
from benchpack.ui.pages.changes.desk import ProposalDesk
from benchpack.ui.pages.changes.outcome import Outcome
from benchpack.ui.pages.changes.proposal_edits import ProposalEdits
from benchpack.ui.pages.changes.subject_model import Selection
from benchpack.ui.pages.changes.subject_tree import SubjectTree
from benchpack.ui.pages.changes.totals_bar import TotalsBar
from benchpack.ui.tables.layout_memory import keep_splitter, restore_splitter
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.controls import text_label
from benchpack.ui.workspace import Workspace

_MEMORY, _UPRIGHT = "changes", "changes/middle"
_LEFT_WIDTH, _MIDDLE_WIDTH = 196, 404
_NO_PARTS = "No parts of the subject are recorded. Add them on the Packs page."
_NO_CHANGES = (
    "This study has no changes yet. Choose parts or joints at the left, then a kind "
    "of change above."
)


class ProposalView(QWidget):
    """Tree, table with form, and outcome beside each other.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    desk : ProposalDesk
        The proposal.
    edits : ProposalEdits
        Where edits go.
    parent : QWidget
        Owner.
    """

    def __init__(
        self,
        workspace: Workspace,
        desk: ProposalDesk,
        edits: ProposalEdits,
        *,
        parent: QWidget,
    ) -> None:
        super().__init__(parent)
        self.splitter = QSplitter(Qt.Orientation.Horizontal, self)
        self.splitter.setChildrenCollapsible(False)
        left = QWidget(self.splitter)
        self.tree = SubjectTree(left)
        self.chosen = QLabel(left)
        self.chosen.setWordWrap(True)
        set_text_role(self.chosen, "note")
        middle = QWidget(self.splitter)
        self.upright = QSplitter(Qt.Orientation.Vertical, middle)
        self.upright.setChildrenCollapsible(False)
        upper = QWidget(self.upright)
        self.stack = QStackedWidget(upper)
        self.table = ChangesTable(edits.switch, self.stack)
        self.empty = QWidget(self.stack)
        self.add_button = QPushButton("Add a part", self.empty)
        self.totals = TotalsBar(upper)
        self.panel = ChangePanel(desk, edits, self.upright)
        self.outcome = Outcome(workspace, desk, self.splitter)
        self._lay_out(left, middle, upper)
        self.splitter.splitterMoved.connect(self._on_splitter_moved)
        self.upright.splitterMoved.connect(self._on_upright_moved)

    def _lay_out(self, left: QWidget, middle: QWidget, upper: QWidget) -> None:
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        column.addWidget(self.tree, 1)
        column.addWidget(self.chosen)
        left.setMinimumWidth(_LEFT_WIDTH)
        self.stack.addWidget(self.table)
        self.stack.addWidget(self.empty)
        self._lay_out_empty()
        rows = QVBoxLayout(upper)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(0)
        rows.addWidget(self.stack, 1)
        rows.addWidget(self.totals)
        self.upright.addWidget(upper)
        self.upright.addWidget(self.panel)
        self.upright.setSizes([330, 270])
        self.upright.setStretchFactor(0, 1)
        self.upright.setStretchFactor(1, 1)
        whole = QVBoxLayout(middle)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self.upright)
        middle.setMinimumWidth(_MIDDLE_WIDTH)
        for place, stretch in enumerate((2, 4, 3)):
            self.splitter.setStretchFactor(place, stretch)
        self.splitter.setSizes([250, 480, 390])
        self.splitter.setHandleWidth(8)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.splitter)

    def _lay_out_empty(self) -> None:
        sentence = text_label(_NO_CHANGES)
        sentence.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.add_button.setToolTip("The one change that needs nothing chosen (Alt+A)")
        row = QHBoxLayout()
        row.addStretch(1)
        row.addWidget(self.add_button)
        row.addStretch(1)
        column = QVBoxLayout(self.empty)
        column.addStretch(1)
        column.addWidget(sentence)
        column.addLayout(row)
        column.addStretch(1)

    def restore_layout(self) -> None:
        """Put the splitters where they were left."""
        restore_splitter(self.splitter, _MEMORY)
        restore_splitter(self.upright, _UPRIGHT)

    def show_emptiness(self, *, is_empty: bool) -> None:
        """Show a sentence in place of the table, or the table."""
        self.stack.setCurrentWidget(self.empty if is_empty else self.table)

    def _on_splitter_moved(self) -> None:
        keep_splitter(self.splitter, _MEMORY)

    def _on_upright_moved(self) -> None:
        keep_splitter(self.upright, _UPRIGHT)

    def focus_next(self) -> None:
        """Put the focus into the next of tree, table, fields and outcome."""
        focused = QApplication.focusWidget()
        stops = (self.tree, self.table, self.panel, self.outcome)
        held = (i for i, one in enumerate(stops) if _holds(one, focused))
        following = stops[(next(held, -1) + 1) % len(stops)]
        target: QWidget | None = following
        if following in (self.panel, self.outcome):
            tabs = self.outcome.tabs if following is self.outcome else self.panel
            target = tabs.currentWidget()
        if target is self.panel.form:
            self.panel.form.focus_field("name")
        elif target is not None:
            target.setFocus(Qt.FocusReason.TabFocusReason)

    def show_chosen(self, selection: Selection) -> None:
        """Say below the tree what is chosen, and what can be done with it."""
        words = chosen_words(selection)
        if not self.tree.items.rowCount():
            words = _NO_PARTS
        self.chosen.setText(words)


def chosen_words(selection: Selection) -> str:
    """Say what is chosen, and what can be done with it.

    Parameters
    ----------
    selection : Selection
        Parts and joints.
    """
    counts = ((len(selection.parts), "part"), (len(selection.joints), "joint"))
    said = [f"{n} {word}{'s' if n > 1 else ''}" for n, word in counts if n]
    if not said:
        return "Choose parts and joints, then a kind of change, or drag them onto one."
    return f"{' and '.join(said)} chosen: press a kind of change, or drag."


def _holds(widget: QWidget, focused: QWidget | None) -> bool:
    return focused is not None and (widget is focused or widget.isAncestorOf(focused))
