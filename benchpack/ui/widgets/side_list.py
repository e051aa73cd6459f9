"""The side list: pages as words, and under them the one target."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from benchpack.report.display import Display
from benchpack.ui.theme import SPACE_BETWEEN, SPACE_INSIDE, set_text_role
from benchpack.ui.widgets.controls import hairline
from benchpack.ui.widgets.key_text import key_text
from benchpack.ui.workspace import Workspace


class SideList(QWidget):
    """The pages by name, and the target carried through all of them.

    Signals
    -------
    chosen(int)
        Another page was chosen.
    target_requested()
        The target was clicked.
    """

    chosen = Signal(int)
    target_requested = Signal()

    def __init__(self, workspace: Workspace, titles: Sequence[str]) -> None:
        super().__init__()
        self.workspace = workspace
        self.setFixedWidth(112)
        self._buttons = QButtonGroup(self)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(SPACE_BETWEEN, SPACE_BETWEEN, 0, SPACE_BETWEEN)
        layout.setSpacing(SPACE_INSIDE)
        for place, title in enumerate(titles):
            button = QPushButton(title)
            button.setCheckable(True)
            button.setProperty("look", "side")
            button.setToolTip(f"{title} ({key_text(f'Ctrl+{place + 1}')})")
            button.setAccessibleName(f"{title} page")
            self._buttons.addButton(button, place)
            layout.addWidget(button)
        layout.addSpacing(SPACE_BETWEEN)
        layout.addWidget(hairline())
        layout.addSpacing(SPACE_BETWEEN)
        self.target = QPushButton()
        self.target.setProperty("look", "side")
        self.target.setCursor(Qt.CursorShape.PointingHandCursor)
        self.target.setToolTip("The saving that is promised; click to set it")
        set_text_role(self.target, "strong")
        layout.addWidget(self.target)
        layout.addStretch(1)
        self._buttons.idClicked.connect(self.chosen)
        self.target.clicked.connect(self.target_requested)
        workspace.changed.connect(self.refresh)
        workspace.opened.connect(self.refresh)
        self.refresh()

    def show_page(self, place: int) -> None:
        """Mark a page as the one that is shown; Tab stops at it alone."""
        for button in self._buttons.buttons():
            is_shown = self._buttons.id(button) == place
            button.setChecked(is_shown)
            by_click = Qt.FocusPolicy.ClickFocus
            button.setFocusPolicy(Qt.FocusPolicy.StrongFocus if is_shown else by_click)

    def refresh(self) -> None:
        """Show the target of the study."""
        study = self.workspace.results.study
        words = "none set"
        if study.target_kg is not None:
            words = Display(study).mass_text(study.target_kg)
        self.target.setText(f"Target\n{words}")
        self.target.setAccessibleName(f"Target {words}")
