"""How the Changes page is laid out: three tabs, the kinds of changes, the cautions."""

from __future__ import annotations

from PySide6.QtWidgets import (
    QHBoxLayout,
    QStackedWidget,
    QTabBar,
    QVBoxLayout,
    QWidget,
)

from benchpack.report.cautions_text import CAUTIONS
from benchpack.ui.pages.changes.candidates_tab import CandidatesTab
from benchpack.ui.pages.changes.desk import ProposalDesk
from benchpack.ui.pages.changes.kinds_bar import KindsBar
from benchpack.ui.pages.changes.materials_tab import MaterialsTab
from benchpack.ui.pages.changes.proposal_edits import ProposalEdits
from benchpack.ui.pages.changes.proposal_view import ProposalView
from benchpack.ui.widgets.controls import text_label
from benchpack.ui.workspace import Workspace

PROPOSAL, MATERIALS, CANDIDATES = range(3)
_TABS = ("Proposal", "Materials", "Candidates")


class ChangesLayout(QWidget):
    """Tabs and kinds above, the tab that is chosen, the cautions below.

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
        parent: QWidget,
    ) -> None:
        super().__init__(parent)
        self.tabs = QTabBar(self)
        self.kinds = KindsBar(self)
        self._stack = QStackedWidget(self)
        self.view = ProposalView(workspace, desk, edits, parent=self._stack)
        self.materials = MaterialsTab(workspace, self._stack)
        self.candidates = CandidatesTab(workspace, desk, self._stack)
        self.cautions = text_label(" ".join(CAUTIONS), "note")
        for words in _TABS:
            self.tabs.addTab(words)
        self.tabs.setAccessibleName(", ".join(_TABS))
        self.tabs.setDrawBase(False)
        self.tabs.setExpanding(False)
        self.tabs.setUsesScrollButtons(False)
        for widget in (self.view, self.materials, self.candidates):
            self._stack.addWidget(widget)
        top = QHBoxLayout()
        top.setSpacing(12)
        top.addWidget(self.tabs)
        top.addWidget(self.kinds, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addLayout(top)
        column.addWidget(self._stack, 1)
        column.addWidget(self.cautions)

    def show_tab(self, place: int) -> None:
        """Show one of the tabs; the kinds belong to the first."""
        self._stack.setCurrentIndex(place)
        self.kinds.setVisible(place == PROPOSAL)

    def focus_tab(self) -> None:
        """Put the focus into the tab that is shown."""
        current = self._stack.currentWidget()
        if current is not None:
            current.setFocus()
