"""Taking in a whole library from a Data Package or a workbook."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtWidgets import QWidget

from benchpack.files.reading import Reading
from benchpack.model.library import Library
from benchpack.ui.dialogs.frame import FormDialog
from benchpack.ui.dialogs.import_words import counted
from benchpack.ui.dialogs.taking_in import IMPORT_KEY, Intake, Outcome
from benchpack.ui.tasks import Token
from benchpack.ui.widgets.controls import fit_height, plain_button, text_label
from benchpack.ui.workspace import Workspace


def contents_text(library: Library) -> str:
    """Say what a library holds, ``14 packs, 431 parts and 96 joints``.

    Parameters
    ----------
    library : Library
        The library.
    """
    counts = [
        counted(number, noun)
        for number, noun in (
            (len(library.packs), "pack"),
            (library.part_count, "part"),
            (library.joint_count, "joint"),
            (len(library.materials), "material"),
            (len(library.sources), "source"),
        )
        if number
    ]
    if not counts:
        return "nothing"
    return " and ".join(filter(None, (", ".join(counts[:-1]), counts[-1])))


class WholeLibraryDialog(FormDialog):
    """Asks where a whole library that was read is to go.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    path : Path
        Where it was read from.
    reading : Reading
        What was read.
    parent : QWidget, optional
        The window it belongs to.
    """

    def __init__(
        self,
        workspace: Workspace,
        path: Path,
        *,
        reading: Reading,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(f"Take in {path.name}", "Open as a new library", parent=parent)
        self.workspace = workspace
        self.path = path
        self._reading = reading
        library = reading.library
        self.add_button = plain_button("Add to this library")
        self.add_button.clicked.connect(self._on_add_clicked)
        self.buttons.insertWidget(self.buttons.count() - 1, self.add_button)
        self.body.setSpacing(8)
        self.body.addWidget(text_label(library.title or path.name, "section"))
        self.body.addWidget(text_label(f"It holds {contents_text(library)}."))
        if library.note:
            self.body.addWidget(text_label(library.note, "note"))
        known = workspace.state.library.packs
        same = sum(known.has(name) for name in library.packs.names.tolist())
        if same:
            are = "is" if same == 1 else "are"
            text = (
                f"{counted(same, 'pack')} of the same name {are} in this library; "
                "adding replaces them."
            )
            self.body.addWidget(text_label(text))
        self._refuse_other_money(reading)
        errors = len(reading.problems)
        if errors:
            text = f"{counted(errors, 'problem')} will be listed."
            self.body.addWidget(text_label(text, "note"))
        self.accept_button.setFocus()
        fit_height(self, 520)

    def _refuse_other_money(self, reading: Reading) -> None:
        """Let no amounts of another currency be taken for those of the study."""
        ours = self.workspace.state.study.currency
        library = reading.library
        money = [one.price_per_kg for one in library.materials]
        money += [one.cost_each for rows in library.joints.values() for one in rows]
        has_money = any(amount is not None for amount in money)
        if has_money and reading.currency and reading.currency != ours:
            text = (
                f"Its money is in {reading.currency}, that of the study in {ours}: it "
                "can only be opened as a new library."
            )
            self.body.addWidget(text_label(text))
            self.add_button.setEnabled(False)
            self.add_button.setToolTip(text)

    def accept(self) -> None:
        """Write it to a new library file and open that."""
        super().accept()
        self._take_in(as_new=True)

    def _on_add_clicked(self) -> None:
        super().accept()
        self._take_in(as_new=False)

    def _take_in(self, *, as_new: bool) -> None:
        WholeIntake(
            self.workspace, self.path, reading=self._reading, as_new=as_new
        ).start()


class WholeIntake(Intake):
    """Takes a whole library in.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    path : Path
        Where it was read from.
    reading : Reading
        What was read.
    as_new : bool
        True to open it as a new library.
    """

    def __init__(
        self, workspace: Workspace, path: Path, *, reading: Reading, as_new: bool
    ) -> None:
        super().__init__(workspace, path, as_new=as_new)
        self._reading = reading

    def start(self) -> None:
        """Begin to write or add."""
        self.workspace.runner.start(
            IMPORT_KEY,
            self._write,
            done=self.finish,
            failed=self.failed,
            words=f"Taking in {self.path.name}",
            dropped=self.dropped,
        )

    def _write(self, _token: Token) -> Outcome:
        library = self._reading.library
        sentence = f"{contents_text(library)} read from {self.path.name}"
        return self.made(library, self._reading.problems, sentence=sentence, accepted=1)
