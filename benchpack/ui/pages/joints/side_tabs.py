"""What explains the table: pareto, checks, the reference, the seal line."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QTabWidget, QWidget

from benchpack.results.inventory import Inventory
from benchpack.ui.pages.joints.checks_tab import ChecksTab
from benchpack.ui.pages.joints.inventory_shelf import InventoryShelf
from benchpack.ui.pages.joints.pareto_tab import ParetoTab
from benchpack.ui.pages.joints.reference_tab import ReferenceTab
from benchpack.ui.pages.joints.seal_panel import SealPanel
from benchpack.ui.workspace import Workspace

LEAST_WIDTH = 428


class SideTabs(QTabWidget):
    """Four views of one inventory; only the one that is seen is worked out.

    Signals
    -------
    group_picked(object)
        Places of joints in the inventory.
    joint_requested(str)
        Name of a joint to go to.
    explain_requested(str, str)
        Key of a figure, and the pack or joint it belongs to.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    shelf : InventoryShelf
        Gives the inventory of the reference.
    parent : QWidget
        Owner.
    """

    group_picked = Signal(object)
    joint_requested = Signal(str)
    explain_requested = Signal(str, str)

    def __init__(
        self, workspace: Workspace, shelf: InventoryShelf, parent: QWidget
    ) -> None:
        super().__init__(parent)
        self._workspace = workspace
        self._shelf = shelf
        self._inventory: Inventory | None = None
        self._joint = ""
        self._stale: set[QWidget] = set()
        self.setDocumentMode(True)
        self.setMinimumWidth(LEAST_WIDTH)
        for named in (self, self.tabBar()):
            named.setAccessibleName("Pareto, checks, reference and seal line")
        self.pareto = ParetoTab(self)
        self.checks = ChecksTab(workspace, self)
        self.reference = ReferenceTab(self)
        self.seal = SealPanel(workspace, self)
        for widget, words in (
            (self.pareto, "Pareto"),
            (self.checks, "Checks"),
            (self.reference, "Against the reference"),
            (self.seal, "Seal line"),
        ):
            self.addTab(widget, words)
        self.pareto.group_picked.connect(self.group_picked)
        self.pareto.explain_requested.connect(self.explain_requested)
        self.pareto.chart.said.connect(workspace.notifier.say)
        self.checks.joint_requested.connect(self.joint_requested)
        self.currentChanged.connect(self._on_tab_changed)

    def show_inventory(self, inventory: Inventory) -> None:
        """Show the joints of a pack; hidden tabs wait until they are seen."""
        self._inventory = inventory
        self._stale = {self.pareto, self.checks, self.reference, self.seal}
        self._on_tab_changed()

    def show_joint(self, name: str) -> None:
        """Take over the current joint; the seal line is that of the joint."""
        if name != self._joint:
            self._joint = name
            self._stale.add(self.seal)
            self._on_tab_changed()

    def show_worth(self) -> None:
        """Take over another worth while it passes by."""
        if self.currentWidget() is self.reference and self._inventory is not None:
            self.reference.show_worth(self._inventory, self._workspace.state.study)
        else:
            self._stale.add(self.reference)

    def _on_tab_changed(self) -> None:
        current = self.currentWidget()
        if self._inventory is None or current not in self._stale:
            return
        self._stale.discard(current)
        state, inventory = self._workspace.state, self._inventory
        if current is self.pareto:
            self.pareto.show_inventory(inventory, state.study)
        elif current is self.checks:
            self.checks.show_inventory(state.library, inventory, state.study)
        elif current is self.reference:
            name = state.study.reference
            known = state.library.packs.has(name)
            reference = self._shelf.of(state, name) if known else None
            self.reference.show_inventories(inventory, reference, state.study)
        else:
            self.seal.show(inventory, self._joint)
