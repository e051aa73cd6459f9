"""The checks of the joints: what stands, what does not, and why."""

from __future__ import annotations

from collections import Counter

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.results.check import Check, Grade
from benchpack.results.clamp import clamp_checks
from benchpack.results.inventory import Inventory
from benchpack.results.seal import seal_checks
from benchpack.ui.checks.checks_model import WORDS, ChecksModel
from benchpack.ui.checks.checks_view import ChecksView
from benchpack.ui.tasks import DirectRunner, Runner, Token
from benchpack.ui.widgets.controls import text_label, unbroken
from benchpack.ui.widgets.steady import Steady
from benchpack.ui.workspace import Workspace

_DETAIL_LINES = 5
_AT_ONCE = 400
_WORK = "joint checks"


class ChecksTab(QWidget):
    """Lists checks and says everything about the one that is chosen.

    Signals
    -------
    joint_requested(str)
        Name of the joint of a check that was chosen.
    """

    joint_requested = Signal(str)

    def __init__(self, workspace: Workspace, parent: QWidget) -> None:
        super().__init__(parent)
        self._workspace = workspace
        self.setAccessibleName("Checks of the joints")
        self.model = ChecksModel(self)
        self.view = ChecksView(self.model, self)
        self.summary = text_label(role="strong")
        self.detail = text_label(role="body")
        self.remedy = text_label(role="note")
        for label in (self.detail, self.remedy):
            label.setAlignment(Qt.AlignmentFlag.AlignTop)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(16, 12, 0, 8)
        layout.setSpacing(8)
        layout.addWidget(self.summary)
        layout.addWidget(self.view, 1)
        layout.addWidget(Steady(self.detail, least_lines=_DETAIL_LINES))
        layout.addWidget(Steady(self.remedy, least_lines=2))
        self.setFocusProxy(self.view)
        self.view.check_chosen.connect(self._on_check_chosen)
        self.view.selectionModel().currentRowChanged.connect(self._on_row_changed)

    def show_inventory(
        self, library: Library, inventory: Inventory, study: Study
    ) -> None:
        """Check the joints of a pack; very many in the background."""

        def work(token: Token) -> tuple[Check, ...]:
            del token
            return every_check(library, inventory, study)

        many = len(inventory.facts) > _AT_ONCE
        self._workspace.runner.cancel(_WORK)
        runner: Runner = self._workspace.runner if many else DirectRunner()
        runner.start(
            _WORK,
            work,
            done=self._on_checked,
            failed=self._workspace.notifier.report,
            words="Checking joints",
        )

    def _on_checked(self, checks: tuple[Check, ...]) -> None:
        index = self.view.currentIndex()
        before = self.model.checks[index.row()] if index.isValid() else None
        self.model.show(checks)
        self.summary.setText(summary_text(checks))
        self._go_back_to(before)

    def _go_back_to(self, before: Check | None) -> None:
        """Keep the check of the same joint current."""
        checks = self.model.checks
        same = (
            row
            for row, check in enumerate(checks)
            if before and (check.kind, check.record) == (before.kind, before.record)
        )
        row = next(same, 0)
        if checks:
            self.view.setCurrentIndex(self.model.index(row, 0))
        self._show_detail(row if checks else -1)

    def _on_row_changed(self, current: QModelIndex, previous: QModelIndex) -> None:
        del previous
        self._show_detail(current.row() if current.isValid() else -1)

    def _show_detail(self, row: int) -> None:
        check = self.model.checks[row] if row >= 0 else None
        detail = "" if check is None else f"{check.record}: {check.words}"
        self.detail.setText(unbroken(detail))
        self.remedy.setText("" if check is None else unbroken(check.remedy))

    def _on_check_chosen(self, row: int) -> None:
        self.joint_requested.emit(self.model.checks[row].record)


def every_check(
    library: Library, inventory: Inventory, study: Study
) -> tuple[Check, ...]:
    """Give what is recorded amiss, the clamp loads and the seal lines of a pack."""
    return (
        *_recorded(inventory),
        *clamp_checks(inventory, study, library=library),
        *seal_checks(library, inventory, study),
    )


def _recorded(inventory: Inventory) -> tuple[Check, ...]:
    """Give what is amiss with what was recorded, as checks."""
    return tuple(
        Check("record", problem.record, Grade.LOOK, problem.what, (), problem.remedy)
        for problem in inventory.problems
    )


def summary_text(checks: tuple[Check, ...]) -> str:
    """Say how many checks stand how: ``1 fail, 3 look, 20 good``.

    Parameters
    ----------
    checks : tuple of Check
        The checks.
    """
    counts = Counter(check.grade for check in checks)
    said = [f"{counts[grade]} {word}" for grade, word in WORDS.items() if counts[grade]]
    return ", ".join(said) or "Nothing to check: no joint carries clamp load or a seal."
