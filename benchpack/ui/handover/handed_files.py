"""The files that are handed over of a study, as a table."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from benchpack.errors import DataError, Problem
from benchpack.results.results import Results
from benchpack.ui.handover.handing import Handing


@dataclass(frozen=True, slots=True)
class HandedFile:
    """One file that can be handed over.

    Parameters
    ----------
    key : str
        Its name in the table.
    button : str
        What stands on its button.
    what : str
        What it is, in one line; ``{subject}`` stands for the subject.
    name : str
        What stands behind the name of the study in the name of the file.
    kind : str
        Kind of file for the dialog, with its ending.
    words : str
        What is going on while it is written.
    write : callable
        Writes it whole or not at all.
    lacks : callable
        Says of results why it cannot be written, empty where it can.
    """

    key: str
    button: str
    what: str
    name: str
    kind: str
    words: str
    write: Callable[[Handing, Path], None]
    lacks: Callable[[Results], str]

    @property
    def ending(self) -> str:
        """Ending of the file's name."""
        return self.kind.rpartition("*")[2].rstrip(")")

    def names(self, stem: str) -> tuple[str, ...]:
        """Give the names of what is written, its schema behind it.

        Parameters
        ----------
        stem : str
            Name of the study as it can stand in a file's name.
        """
        first = f"{stem}{self.name}{self.ending}"
        if self.ending != ".csv":
            return (first,)
        return first, str(Path(first).with_suffix(".schema.json"))


def _write_pdf(handing: Handing, path: Path) -> None:
    from benchpack.files.atomic import replacing

    whole = handing.pdf()
    with replacing(path) as fresh:
        fresh.write_bytes(whole)


def _write_web(handing: Handing, path: Path) -> None:
    from benchpack.files.atomic import write_text

    write_text(path, handing.page_of_the_web())


def _write_workbook(handing: Handing, path: Path) -> None:
    from benchpack.files.audit_workbook import write_audit_workbook
    from benchpack.session.handover_request import sheets_of, today

    sheets = sheets_of(handing.given, made_on=today())
    write_audit_workbook(sheets, path)


def _write_gaps(handing: Handing, path: Path) -> None:
    from benchpack.session.handover import write_gap_csv

    write_gap_csv(handing.results, path, cancelled=handing.cancelled)


def _write_parts(handing: Handing, path: Path) -> None:
    from benchpack.session.handover import write_parts_csv

    state = handing.state
    write_parts_csv(state.library, (state.study.subject,), path)


def _write_joints(handing: Handing, path: Path) -> None:
    from benchpack.results.inventory import inventory
    from benchpack.session.handover import write_joints_csv

    state = handing.state
    stock = inventory(state.library, state.study, state.study.subject)
    write_joints_csv(stock, path)


def _write_ledger(handing: Handing, path: Path) -> None:
    from benchpack.session.proposal_request import write_ledger_csv

    found = handing.given.proposal
    if found is None:
        what = f"The study {handing.state.study.name} has no changes."
        raise DataError(Problem(what, "Add changes on the Changes page."))
    write_ledger_csv(found, path)


def _write_bundle(handing: Handing, path: Path) -> None:
    from benchpack.files.bundle import write_bundle

    write_bundle(handing.state.library, handing.state.study, path)


def _nothing_compared(results: Results) -> str:
    if results.comparison is not None:
        return ""
    return results.missing.what if results.missing else "There is nothing to compare."


def _no_parts(results: Results) -> str:
    subject = results.study.subject
    if results.library.parts_of(subject):
        return ""
    return f"No parts of {subject} are recorded." if subject else "There is no subject."


def _no_joints(results: Results) -> str:
    subject = results.study.subject
    if results.library.joints_of(subject):
        return ""
    return (
        f"No joints of {subject} are recorded." if subject else "There is no subject."
    )


def _no_changes(results: Results) -> str:
    if results.library.changes_of(results.study.name):
        return _nothing_compared(results)
    return "The study has no changes."


FILES: tuple[HandedFile, ...] = (
    HandedFile(
        "pdf",
        "Brief as PDF…",
        "the pages beside this",
        " brief",
        "PDF (*.pdf)",
        "Writing the brief",
        _write_pdf,
        _nothing_compared,
    ),
    HandedFile(
        "web",
        "Brief as web page…",
        "the same as one HTML file",
        " brief",
        "Web page (*.html)",
        "Writing the brief",
        _write_web,
        _nothing_compared,
    ),
    HandedFile(
        "workbook",
        "Workbook…",
        "live formulas to follow and change, costs too",
        " workbook",
        "Workbook (*.xlsx)",
        "Writing the workbook",
        _write_workbook,
        _nothing_compared,
    ),
    HandedFile(
        "gaps",
        "Gaps as CSV…",
        "{subject} against every peer",
        " gaps",
        "CSV (*.csv)",
        "Writing gaps",
        _write_gaps,
        _nothing_compared,
    ),
    HandedFile(
        "parts",
        "Parts as CSV…",
        "the parts of {subject}, notes too",
        " parts",
        "CSV (*.csv)",
        "Writing parts",
        _write_parts,
        _no_parts,
    ),
    HandedFile(
        "joints",
        "Joints as CSV…",
        "the joints of {subject}, costs and notes too",
        " joints",
        "CSV (*.csv)",
        "Writing joints",
        _write_joints,
        _no_joints,
    ),
    HandedFile(
        "ledger",
        "Ledger as CSV…",
        "what each change of the proposal does",
        " ledger",
        "CSV (*.csv)",
        "Writing the ledger",
        _write_ledger,
        _no_changes,
    ),
    HandedFile(
        "bundle",
        "Study bundle…",
        "all its records, costs and notes too, to open elsewhere",
        "",
        "Study bundle (*.bundle.zip)",
        "Writing the bundle",
        _write_bundle,
        _nothing_compared,
    ),
)
"""Every file, in the order in which they are offered."""

BY_KEY = {file.key: file for file in FILES}
"""Every file by its key."""
