"""The command workbook: a study with formulas that can be followed and changed."""

from __future__ import annotations

from collections.abc import Sequence

from benchpack.commands.exit_codes import DATA_AT_FAULT, DONE
from benchpack.commands.source_file import read_source, study_parser
from benchpack.commands.speech import report, write_line
from benchpack.errors import RequestError


def run(arguments: Sequence[str]) -> int:
    """Write a study as a workbook with live formulas.

    Parameters
    ----------
    arguments : sequence of str
        Those after the name of the command.

    Raises
    ------
    RequestError
        When the name of the workbook does not end in ``.xlsx``.
    """
    parser = study_parser(
        "workbook",
        "Write inputs, gaps, proposal and value of a study with live formulas.",
        out="NAME.xlsx",
        out_help="the workbook",
    )
    options = parser.parse_args(arguments)
    if options.out.suffix.lower() != ".xlsx":
        raise RequestError(f"{options.out.name}: a workbook is written as NAME.xlsx")
    from benchpack.files.audit_workbook import write_audit_workbook
    from benchpack.session.handover_request import sheets_of, take_handover, today

    reading = read_source(options)
    name = options.study or ""
    given = take_handover(
        reading.library, name, wanted="workbook", currency=reading.currency
    )
    refused = report(given.refused)
    write_audit_workbook(sheets_of(given, made_on=today()), options.out)
    write_line(f"written to {options.out}")
    return DATA_AT_FAULT if refused else DONE
