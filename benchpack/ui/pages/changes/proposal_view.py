"""How the proposal is laid out: what can be changed, the changes, what they come to."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
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

from benchpack.ui.pages.changes.chance_figures import TARGET
from benchpack.ui.pages.changes.change_panel import ChangePanel
from benchpack.ui.pages.changes.changes_table import ChangesTable
from benchpack.ui.pages.changes.checks_tab import COMPUTING
from benchpack.ui.pages.changes.desk import CHANCE, ProposalDesk
from benchpack.ui.pages.changes.outcome import Outcome
from benchpack.ui.pages.changes.proposal_edits import ProposalEdits
from benchpack.ui.pages.changes.subject_model import Selection
from benchpack.ui.pages.changes.subject_tree import SubjectTree
from benchpack.ui.pages.changes.totals_bar import TotalsBar
from benchpack.ui.tables.layout_memory import keep_splitter, restore_splitter
from benchpack.ui.theme import set_text_role
from benchpack.ui.widgets.controls import text_label
from benchpack.ui.workspace import Workspace
from benchpack.units.formatting import UNKNOWN

_MEMORY = "changes"
_LEFT_WIDTH, _MIDDLE_WIDTH = 196, 404
NARROW = 980
"""Below this width names would be cut beside three columns: what the proposal comes to
then is one of the tabs below the changes."""
_WIDE_SIZES, _NARROW_SIZES = [250, 480, 390], [250, 630]
_HEIGHTS, _LOW_HEIGHTS = [300, 270], [212, 232]
_NO_PARTS = "No parts of the subject are recorded. Add them on the Packs page."
_NO_CHANGES = (
    "This study has no changes yet. Choose parts or joints at the left, then a kind "
    "of change above."
)


class ProposalView(QWidget):
    """Tree, table with form, and outcome beside each other; narrow, the outcome below.

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
        self._upper = QWidget(self.upright)
        self.stack = QStackedWidget(self._upper)
        self.table = ChangesTable(edits.switch, self.stack)
        self.empty = QWidget(self.stack)
        self.add_button = QPushButton("Add a part", self.empty)
        self.totals = TotalsBar(self._upper)
        self.panel = ChangePanel(desk, edits, self.upright)
        self.outcome = Outcome(workspace, desk, self.splitter)
        self._is_narrow = False
        self._lay_out(left, middle, self._upper)
        self.splitter.splitterMoved.connect(self._on_splitter_moved)
        self.upright.splitterMoved.connect(self._on_upright_moved)
        self.panel.currentChanged.connect(self._on_panel_changed)
        desk.found.connect(self._on_found)

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
        self.upright.setSizes(_HEIGHTS)
        self.upright.setStretchFactor(0, 1)
        self.upright.setStretchFactor(1, 1)
        whole = QVBoxLayout(middle)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self.upright)
        middle.setMinimumWidth(_MIDDLE_WIDTH)
        for place, stretch in enumerate((2, 4, 3)):
            self.splitter.setStretchFactor(place, stretch)
        self.splitter.setSizes(_WIDE_SIZES)
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
        restore_splitter(self.splitter, self._memory)
        restore_splitter(self.upright, f"{self._memory}/middle")

    @property
    def _memory(self) -> str:
        return f"{_MEMORY}/narrow" if self._is_narrow else _MEMORY

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Put the outcome where there is room for it."""
        super().resizeEvent(event)
        narrow = event.size().width() < NARROW
        if narrow != self._is_narrow:
            self._is_narrow = narrow
            self._arrange()

    def _arrange(self) -> None:
        self.outcome.lie_flat(flat=self._is_narrow)
        if self._is_narrow:
            self.panel.take_outcome(self.outcome)
            self._title_outcome()
            self.splitter.setSizes(_NARROW_SIZES)
            self.upright.setSizes(_LOW_HEIGHTS)
        else:
            self.panel.give_outcome(self.outcome)
            self.splitter.addWidget(self.outcome)
            self.splitter.setStretchFactor(2, 3)
            self.splitter.setSizes(_WIDE_SIZES)
            self.upright.setSizes(_HEIGHTS)
            self.outcome.show()
        self.restore_layout()
        self._on_panel_changed()

    def _title_outcome(self) -> None:
        """Let the tab of the outcome say the chance, so that it is seen unopened."""
        chance = self.outcome.chance.figures[TARGET].text()
        known = chance not in ("", COMPUTING, UNKNOWN)
        place = self.panel.indexOf(self.outcome)
        if place >= 0:
            title = f"Outcome {chance}" if known else "Outcome"
            self.panel.setTabText(place, title)

    def _on_found(self, what: str) -> None:
        if what == CHANCE:
            self._title_outcome()

    def _on_panel_changed(self) -> None:
        """Give the outcome the whole height, where both do not fit."""
        alone = self._is_narrow and self.panel.currentWidget() is self.outcome
        self._upper.setVisible(not alone)

    def show_emptiness(self, *, is_empty: bool) -> None:
        """Show a sentence in place of the table, or the table."""
        self.stack.setCurrentWidget(self.empty if is_empty else self.table)

    def _on_splitter_moved(self) -> None:
        keep_splitter(self.splitter, self._memory)

    def _on_upright_moved(self) -> None:
        if not self._upper.isHidden():
            keep_splitter(self.upright, f"{self._memory}/middle")

    def focus_next(self) -> None:
        """Put the focus into the next of tree, table, fields and outcome."""
        focused = QApplication.focusWidget()
        stops = (self.tree, self.table, self.panel, self.outcome)
        # The outcome may stand in the panel: the innermost counts.
        held = [i for i, one in enumerate(stops) if _holds(one, focused)]
        following = stops[(max(held, default=-1) + 1) % len(stops)]
        if following is self.outcome and self._is_narrow:
            self.panel.setCurrentWidget(self.outcome)
        elif self.panel.currentWidget() is self.outcome:
            self.panel.setCurrentWidget(self.panel.form)
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
        return "Choose parts or joints, then a kind of change; or drag them onto one."
    return f"{' and '.join(said)} chosen: press a kind of change, or drag."


def _holds(widget: QWidget, focused: QWidget | None) -> bool:
    return focused is not None and (widget is focused or widget.isAncestorOf(focused))
