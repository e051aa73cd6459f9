"""All keys on one sheet."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QDialog,
    QGridLayout,
    QHBoxLayout,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from benchpack.ui.dialogs.command_search import commands_of
from benchpack.ui.widgets.controls import named, plain_button, text_label
from benchpack.ui.widgets.key_text import key_text

ShortcutGroup = tuple[str, Sequence[tuple[str, str]]]
"""A heading, and pairs of key and what it does."""


def action_pairs(actions: Iterable[QAction]) -> list[tuple[str, str]]:
    """Give the keys of actions and their words, those without a key left out.

    Parameters
    ----------
    actions : iterable of QAction
        The actions of a window.
    """
    return [(c.key, c.words) for c in commands_of(actions) if c.key]


class ShortcutsDialog(QDialog):
    """Lists keys by group in two columns.

    Parameters
    ----------
    groups : sequence of ShortcutGroup
        What to list; groups without keys are left out.
    parent : QWidget, optional
        The window it belongs to.
    """

    def __init__(
        self, groups: Sequence[ShortcutGroup], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Shortcuts")
        named(self, "Shortcuts")
        filled = [group for group in groups if group[1]]
        columns = QHBoxLayout()
        columns.setSpacing(48)
        for part in _halves(filled):
            column = QVBoxLayout()
            column.setSpacing(4)
            for heading, pairs in part:
                column.addWidget(text_label(heading, "strong"))
                column.addLayout(_grid(pairs))
                column.addSpacing(16)
            column.addStretch(1)
            columns.addLayout(column, 1)
        holder = QWidget()
        holder.setLayout(columns)
        area = named(QScrollArea(), "Shortcuts")
        area.setWidgetResizable(True)
        area.setWidget(holder)
        close = plain_button("Close", "Close (Esc)")
        close.clicked.connect(self.accept)
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        buttons.addWidget(close)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(24, 24, 24, 16)
        layout.setSpacing(16)
        layout.addWidget(area, 1)
        layout.addLayout(buttons)
        self.resize(760, 520)


def _halves(groups: list[ShortcutGroup]) -> list[list[ShortcutGroup]]:
    """Part groups into two columns of about the same length."""
    lengths = [len(pairs) + 2 for _, pairs in groups]
    done, at = 0, 0
    while at < len(groups) and done + lengths[at] / 2 < sum(lengths) / 2:
        done += lengths[at]
        at += 1
    return [part for part in (groups[:at], groups[at:]) if part]


def _grid(pairs: Sequence[tuple[str, str]]) -> QGridLayout:
    grid = QGridLayout()
    grid.setHorizontalSpacing(16)
    grid.setVerticalSpacing(4)
    grid.setColumnMinimumWidth(0, 120)
    grid.setColumnStretch(1, 1)
    top = Qt.AlignmentFlag.AlignTop
    for row, (key, words) in enumerate(pairs):
        said = text_label(words)
        said.setAccessibleName(f"{words}: {key_text(key)}")
        shown = text_label(key_text(key), "note")
        shown.setWordWrap(False)
        shown.setContentsMargins(0, 2, 0, 0)
        grid.addWidget(shown, row, 0, top)
        grid.addWidget(said, row, 1, top)
    return grid
