"""Asks once about all files that would be replaced."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtWidgets import QWidget

from benchpack.ui.dialogs.frame import FormDialog
from benchpack.ui.dialogs.import_words import counted
from benchpack.ui.widgets.controls import fit_height, text_label

_MOST = 6


class ReplaceDialog(FormDialog):
    """Lists the files that are there already.

    Parameters
    ----------
    folder : Path
        Where they are.
    names : sequence of str
        Their names, at least one.
    parent : QWidget, optional
        The window it belongs to.
    """

    def __init__(
        self, folder: Path, names: Sequence[str], parent: QWidget | None = None
    ) -> None:
        number = counted(len(names), "file")
        super().__init__("Replace files", f"Replace {number}", parent=parent)
        are = "is" if len(names) == 1 else "are"
        said = f"{number} of these names {are} in “{folder.name}” already:"
        shown = list(names[:_MOST])
        if len(names) > _MOST:
            shown.append(f"and {len(names) - _MOST} more")
        self.body.setSpacing(8)
        self.body.addWidget(text_label(said))
        self.body.addWidget(text_label("\n".join(shown), "note"))
        self.cancel_button.setFocus()
        fit_height(self, 520)
