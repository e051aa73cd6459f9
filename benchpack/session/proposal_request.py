"""A request for a proposal as it comes from the command line, and its ledger as CSV."""

from __future__ import annotations

from pathlib import Path

from benchpack.errors import DataError, Problem
from benchpack.files.gap_csv import TableColumn, write_rows
from benchpack.model.library import Library
from benchpack.report.proposal_print import proposal_print
from benchpack.report.proposal_table import ledger_columns, ledger_rows
from benchpack.results.proposal import ProposalResults, proposal
from benchpack.results.proposal_matters import mass_matters
from benchpack.results.proposal_trials import simulate
from benchpack.session.study_request import take_study


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
    found = take_study(library, study, wanted="proposal", currency=currency)
    if not library.changes_of(found.name):
        others = [one.name for one in library.studies if library.changes_of(one.name)]
        remedy = "Add changes on the Changes page, or read a table of them."
        if others:
            remedy = f"Choose a study that has: {', '.join(map(repr, others[:3]))}."
        raise DataError(Problem(f"The study {found.name} has no changes.", remedy))
    return proposal(library, found)


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
