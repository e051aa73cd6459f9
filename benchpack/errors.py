"""What can be wrong, said so that a person can mend it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum


class Severity(StrEnum):
    """How bad a problem is: an error refuses the value, a warning lets it pass."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong with some data: what, where, and how to mend it.

    Parameters
    ----------
    what : str
        The complaint as a sentence, with the value in it.
    remedy : str
        What to do about it, as a sentence; empty when `what` already says it.
    source : str
        File or table the value came from; empty when typed by hand.
    row : int or None
        Row number as the person sees it in the source (the header is row 1).
    column : str
        Column header or field title.
    value : str
        The offending text as it was read.
    record : str
        Name of the pack, part or joint, where it has one.
    severity : Severity
        Error or warning.
    """

    what: str
    remedy: str = ""
    source: str = ""
    row: int | None = None
    column: str = ""
    value: str = ""
    record: str = ""
    severity: Severity = Severity.ERROR

    def at(
        self,
        *,
        source: str | None = None,
        row: int | None = None,
        column: str | None = None,
        record: str | None = None,
    ) -> Problem:
        """Give the same problem with its place filled in."""
        return replace(
            self,
            source=self.source if source is None else source,
            row=self.row if row is None else row,
            column=self.column if column is None else column,
            record=self.record if record is None else record,
        )

    def place(self) -> str:
        """Give the place as text: ``packs.csv, row 4, column mass [lb]``."""
        parts = [self.source] if self.source else []
        if self.row is not None:
            parts.append(f"row {self.row}")
        elif self.record:
            parts.append(self.record)
        if self.column:
            parts.append(f"column {self.column}")
        return ", ".join(parts)

    def __str__(self) -> str:
        head = self.place()
        said = f"{self.what} {self.remedy}".strip()
        return f"{head}: {said}" if head else said


class BenchpackError(Exception):
    """Base of every error that is meant for a person to read."""


class DataError(BenchpackError):
    """Data that cannot be used; carries the problems that say why.

    Parameters
    ----------
    problems : Problem
        One or more problems, most important first.
    """

    def __init__(self, *problems: Problem) -> None:
        super().__init__("; ".join(str(problem) for problem in problems))
        self.problems = problems


class RequestError(BenchpackError):
    """A call that asks for something that does not exist or make sense."""


class CancelledError(BenchpackError):
    """The person stopped the work before it was done."""
