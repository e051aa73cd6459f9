"""The list of families in the entry bar."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QWidget

from benchpack.model.families import FAMILY_NAMES


def family_box(parent: QWidget) -> QComboBox:
    """Make a list of families that completes what is typed in place.

    Parameters
    ----------
    parent : QWidget
        Owner.
    """
    box = QComboBox(parent)
    box.setEditable(True)
    box.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
    box.addItems(FAMILY_NAMES)
    box.setCurrentIndex(-1)
    box.setMaxVisibleItems(len(FAMILY_NAMES))
    box.setMinimumContentsLength(12)
    box.setSizeAdjustPolicy(
        QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
    )
    box.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    edit = box.lineEdit()
    if edit is not None:
        edit.setAccessibleName("Count in: family")
    return box
