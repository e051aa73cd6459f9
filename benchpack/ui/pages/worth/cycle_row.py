"""The drive cycle of the vehicle: its name, and the button that reads one."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from PySide6.QtWidgets import QFileDialog, QGridLayout, QLabel, QWidget

from benchpack.errors import BenchpackError, CancelledError, DataError, Problem
from benchpack.files.cycle_reading import CycleReading, read_cycle
from benchpack.model.drive_cycle import parse_cycle
from benchpack.model.worth_words import EnergyFrom
from benchpack.session.state import State
from benchpack.ui.dialogs.frame import ErrorLabel
from benchpack.ui.tasks import Token
from benchpack.ui.theme import SPACE_INSIDE
from benchpack.ui.widgets.controls import plain_button, plain_tip, text_label
from benchpack.ui.workspace import Workspace

_KEY = "drive cycle"
_KINDS = "Tables (*.csv *.tsv *.txt *.xlsx *.xls *.ods);;All files (*)"

_NONE = "None has been read."
_TIP = (
    "A table with the columns time [s] and speed [km/h]: CSV, TSV or a workbook. "
    "It can be dropped here too."
)


class CycleRow(QWidget):
    """Says which drive cycle there is; reads another, or forgets it.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    parent : QWidget
        Owner.
    """

    def __init__(self, workspace: Workspace, parent: QWidget) -> None:
        super().__init__(parent)
        self.workspace = workspace
        self._shown: str | None = None
        label = QLabel("Drive cycle", self)
        label.setToolTip(plain_tip(_TIP))
        self.said = text_label(_NONE, "note")
        self.read = plain_button("Read a file...", _TIP)
        self.forget = plain_button("Forget it", "Reckon without the drive cycle")
        self.read.setAccessibleName("Read a drive cycle from a file")
        self.forget.setAccessibleName("Forget the drive cycle")
        self._error = ErrorLabel()
        self._refused = ""
        self.read.clicked.connect(self.choose_file)
        self.forget.clicked.connect(self._on_forget_clicked)
        workspace.opened.connect(self._on_workspace_opened)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(SPACE_INSIDE)
        grid.setVerticalSpacing(2)
        grid.setColumnStretch(1, 1)
        grid.addWidget(label, 0, 0, 1, 2)
        grid.addWidget(self.said, 1, 0, 1, 3)
        grid.addWidget(self.read, 2, 0)
        grid.addWidget(self.forget, 2, 2)
        grid.addWidget(self._error, 3, 0, 1, 3)

    def show_cycle(self, text: str) -> None:
        """Show a cycle by its text, empty for none."""
        if text == self._shown:
            return
        self._shown = text
        self.said.setText(cycle_words(text) if text else _NONE)
        self.forget.setVisible(bool(text))
        self.show_problem(None)

    def show_problem(self, problem: Problem | None) -> None:
        """Say below the buttons why a file was not read, nothing with None."""
        words = (
            () if problem is None else (problem.place(), problem.what, problem.remedy)
        )
        place, *rest = words or ("",)
        said = " ".join(filter(None, rest))
        self._error.show_error(f"{place}: {said}" if place and said else said)

    @property
    def error_text(self) -> str:
        """What is said below the buttons, empty when nothing is wrong."""
        return "" if self._error.isHidden() else self._error.text()

    def choose_file(self) -> None:
        """Ask for a file with a drive cycle and read it."""
        name, _ = QFileDialog.getOpenFileName(self, "Read a drive cycle", "", _KINDS)
        if name:
            self.read_file(Path(name))

    def read_file(self, path: Path) -> None:
        """Read a drive cycle in the background; the study then reckons with it.

        Parameters
        ----------
        path : Path
            The file.
        """
        name, workspace = path.name, self.workspace
        document, study = workspace.document, workspace.state.study.name

        def is_open() -> bool:
            now = workspace.state.study.name
            return workspace.document is document and now == study

        def work(token: Token) -> CycleReading:
            return read_cycle(path, progress=token.progress, cancelled=token.cancelled)

        def done(found: CycleReading) -> None:
            if is_open():
                self._take(found, name)
            else:
                what = f"{name} was read for {study}, which is no longer open"
                workspace.notifier.say(what)

        def failed(error: BaseException) -> None:
            self._tell(error, name, is_open=is_open())

        self.workspace.runner.start(
            _KEY,
            work,
            done=done,
            failed=failed,
            words=f"Reading {name}",
        )

    def _take(self, found: CycleReading, name: str) -> None:
        values = {"drive_cycle": found.cycle.to_text(), "energy_from": EnergyFrom.CYCLE}
        self._edit(f"drive cycle {found.cycle.name}", values)
        self.show_problem(None)
        notifier = self.workspace.notifier
        if self._refused:
            notifier.withdraw(self._refused)
            self._refused = ""
        notifier.show_problems(f"Read from {name}", found.notes)
        notifier.say(f"Read {found.rows_read} rows of {name}")

    def _tell(self, error: BaseException, name: str, *, is_open: bool) -> None:
        notifier = self.workspace.notifier
        if isinstance(error, CancelledError):
            notifier.say(f"Stopped reading {name}")
        elif isinstance(error, BenchpackError):
            if isinstance(error, DataError) and is_open:
                self.show_problem(error.problems[0])
            self._refused = f"Not read: {name}"
            notifier.show_error(self._refused, error)
        else:
            notifier.report(error)

    def _on_workspace_opened(self) -> None:
        self.workspace.runner.cancel(_KEY)
        self._refused = ""
        self.show_problem(None)

    def _on_forget_clicked(self) -> None:
        values: dict[str, Any] = {"drive_cycle": ""}
        if self.workspace.state.study.energy_from is EnergyFrom.CYCLE:
            values["energy_from"] = EnergyFrom.GIVEN
        self._edit("forget the drive cycle", values)

    def _edit(self, label: str, values: dict[str, Any]) -> None:
        def change(state: State) -> State:
            return state.with_study(**values)

        self.workspace.edit(label, change)


def cycle_words(text: str) -> str:
    """Say in words what a drive cycle is.

    Parameters
    ----------
    text : str
        Text of a `DriveCycle`.
    """
    try:
        cycle = parse_cycle(text)
    except DataError as error:
        return error.problems[0].what
    if cycle is None:
        return _NONE
    minutes = cycle.step_s * (len(cycle.speed_kmh) - 1) / 60
    return (
        f"{cycle.name or 'without a name'}: {minutes:.0f} min in steps of "
        f"{cycle.step_s:g} s, {max(cycle.speed_kmh):.0f} km/h at most"
    )
