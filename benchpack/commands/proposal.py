"""The command proposal: what the changes of a study save, cost and ask for."""

from __future__ import annotations

from collections.abc import Sequence

from benchpack.commands.exit_codes import DATA_AT_FAULT, DONE
from benchpack.commands.source_file import read_source, study_parser
from benchpack.commands.speech import report, write_line


def run(arguments: Sequence[str]) -> int:
    """Print the proposal of a study, and write its ledger where that is asked.

    Parameters
    ----------
    arguments : sequence of str
        Those after the name of the command.
    """
    parser = study_parser(
        "proposal",
        "Print the proposal of a study: ledger, totals and chance.",
        out="CSV",
        out_help="also write the ledger as CSV",
        required=False,
    )
    options = parser.parse_args(arguments)
    from benchpack.session.proposal_request import (
        answer_text,
        take_proposal,
        write_ledger_csv,
    )

    reading = read_source(options)
    study = options.study or ""
    results = take_proposal(reading.library, study, currency=reading.currency)
    refused = report([problem for _, problem in results.ledger.refused])
    write_line(answer_text(results))
    if options.out is not None:
        write_ledger_csv(results, options.out)
        write_line(f"written to {options.out}")
    return DATA_AT_FAULT if refused else DONE
