"""The preview with what belongs to it: zoom, page, whether it is up to date."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QPushButton,
    QToolButton,
    QVBoxLayout,
)

from benchpack.ui.assets import icon
from benchpack.ui.pages.brief.preview import BriefPreview
from benchpack.ui.theme import SPACE_BETWEEN, SPACE_INSIDE
from benchpack.ui.widgets.controls import named, plain_button, text_label
from benchpack.ui.widgets.entry_area import EntryArea

BEFORE = "as of before the change"
BEING_SET = "as of before the change; being set anew"
STOPPED = "as of before the change; setting it was stopped"


class PreviewView(EntryArea):
    """The pages of the brief and the bar above them."""

    def __init__(self) -> None:
        super().__init__()
        self.preview = BriefPreview()
        self.width_button = _zoom_button("Width", "Fit the width of a page (Ctrl+0)")
        self.page_button = _zoom_button("Whole page", "Fit the whole page (Ctrl+9)")
        self.full_button = _zoom_button("Full size", "Show the full size (Ctrl+8)")
        self.width_button.setChecked(True)
        group = QButtonGroup(self)
        self._zooms = (self.width_button, self.page_button, self.full_button)
        for button in self._zooms:
            group.addButton(button)
        self.back_button = _step_button("arrow-up", "Page before")
        self.on_button = _step_button("arrow-down", "Next page")
        self.number = named(text_label(), "Page")
        self.number.setWordWrap(False)
        self.note = named(text_label(role="note"), "State of the preview")
        self.note.setWordWrap(False)
        self._lay_out()
        self.width_button.clicked.connect(self.fit_width)
        self.page_button.clicked.connect(self.fit_page)
        self.full_button.clicked.connect(self.show_full_size)
        self.back_button.clicked.connect(self._on_back_clicked)
        self.on_button.clicked.connect(self._on_on_clicked)
        self.preview.page_changed.connect(self._on_preview_page_changed)
        self._on_preview_page_changed(0, 0)
        self.entry = self.preview

    def _lay_out(self) -> None:
        bar = QHBoxLayout()
        bar.setSpacing(SPACE_BETWEEN)
        bar.addWidget(self.back_button)
        bar.addWidget(self.on_button)
        bar.addWidget(self.number)
        bar.addStretch(1)
        for button in self._zooms:
            bar.addWidget(button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(SPACE_INSIDE)
        column.addLayout(bar)
        # Its line is kept free: a note that comes and goes moves nothing.
        column.addWidget(self.note)
        column.addWidget(self.preview, 1)

    def show_note(self, text: str) -> None:
        """Say whether the preview is that of the present state."""
        if text != self.note.text():
            self.note.setText(text)

    def fit_width(self) -> None:
        """Fit the width of a page to the view."""
        self.width_button.setChecked(True)
        self.preview.set_zoom("width")

    def fit_page(self) -> None:
        """Fit the whole page to the view."""
        self.page_button.setChecked(True)
        self.preview.set_zoom("page")

    def show_full_size(self) -> None:
        """Show the pages as large as they are printed."""
        self.full_button.setChecked(True)
        self.preview.set_zoom("full")

    def _on_back_clicked(self) -> None:
        self.preview.go_to_page(self.preview.page - 1)

    def _on_on_clicked(self) -> None:
        self.preview.go_to_page(self.preview.page + 1)

    def _on_preview_page_changed(self, page: int, count: int) -> None:
        self.number.setText(f"{page} of {count}" if count else "")
        self.back_button.setEnabled(page > 1)
        self.on_button.setEnabled(page < count)


def _zoom_button(words: str, tip: str) -> QPushButton:
    button = named(plain_button(words, tip), tip.partition(" (")[0])
    button.setCheckable(True)
    return button


def _step_button(icon_name: str, words: str) -> QToolButton:
    button = named(QToolButton(), words)
    button.setIcon(icon(icon_name))
    button.setIconSize(QSize(16, 16))
    button.setToolTip(words)
    button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    return button
