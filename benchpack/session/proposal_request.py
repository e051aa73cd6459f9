"""A request for a proposal as it comes from the command line, and its ledger as CSV."""

from __future__ import annotations

from difflib import get_close_matches
from pathlib import Path

from benchpack.errors import DataError, Problem
from benchpack.files.gap_csv import TableColumn, write_rows
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.report.proposal_print import proposal_print
from benchpack.report.proposal_table import ledger_columns, ledger_rows
from benchpack.results.proposal import ProposalResults, proposal
from benchpack.results.proposal_matters import mass_matters
from benchpack.results.proposal_trials import simulate


def take_proposal(
    library: Library, study: str = "", *, currency: str = ""
) -> ProposalResults:
    """Compute the proposal that is asked for.

    Parameters
    ----------
    library : Library
        The records.
    study : str
        Name of the study; empty for the first one.
    currency : str
        Code of the file's money.

    Raises
    ------
    DataError
        When there is no such study, it has no changes, its subject is not there, or
        the money of the file is in another currency.
    """
    found = _study(library, study)
    if currency not in ("", "CUR", found.currency):
        raise DataError(
            Problem(
                f"The money of the file is in {currency}, that of the study "
                f"{found.name} in {found.currency}; there are no exchange rates.",
                "Bring both to one currency.",
                column="currency",
            )
        )
    if not library.changes_of(found.name):
        others = [one.name for one in library.studies if library.changes_of(one.name)]
        remedy = "Add changes on the Changes page, or read a table of them."
        if others:
            remedy = f"Choose a study that has: {', '.join(map(repr, others[:3]))}."
        raise DataError(Problem(f"The study {found.name} has no changes.", remedy))
    return proposal(library, found)


def _study(library: Library, name: str) -> Study:
    if not library.studies:
        raise DataError(
            Problem(
                "The file holds no study, and so no proposal.",
                "Choose subject and reference in the window, and add changes.",
            )
        )
    if not name:
        return library.studies[0]
    found = library.study(name)
    if found is not None:
        return found
    plain = {one.name.casefold(): one.name for one in reversed(library.studies)}
    alike = get_close_matches(name.casefold(), plain, n=1)
    remedy = "It is not in the file, or its row was refused."
    if alike:
        remedy = f"Did you mean {plain[alike[0]]!r}?"
    raise DataError(Problem(f"There is no study {name!r}.", remedy))


def answer_text(results: ProposalResults) -> str:
    """Give a proposal as text for a terminal, with its chance and what matters.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    """
    return proposal_print(results, simulate(results), matters=mass_matters(results))


def write_ledger_csv(results: ProposalResults, path: Path) -> None:
    """Write the ledger of a proposal as CSV and its Table Schema beside it.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    path : Path
        The CSV to write; the schema goes to the same name ending in
        ``.schema.json``.

    Raises
    ------
    DataError
        When the file cannot be written.
    """
    columns = ledger_columns()
    schema = [
        TableColumn(column.name, column.type, column.unit, column.description)
        for column in columns
    ]
    heads = [column.name for column in columns]
    write_rows(path, heads, ledger_rows(results), schema=schema)
