"""The command convert: a library in another form."""

from __future__ import annotations

from collections.abc import Sequence

from benchpack.commands.exit_codes import DATA_AT_FAULT, DONE
from benchpack.commands.source_file import file_parser, path_of
from benchpack.commands.speech import report, write_line


def run(arguments: Sequence[str]) -> int:
    """Write what a file holds in the form that the ending of another name asks for.

    Parameters
    ----------
    arguments : sequence of str
        Those after the name of the command.
    """
    parser = file_parser(
        "convert", "Convert between library file, Data Package, XLSX and CSV."
    )
    parser.add_argument(
        "out",
        type=path_of,
        metavar="OUT",
        help="NAME.benchpack, a folder or datapackage.json, NAME.xlsx, NAME.csv; "
        "what is there is replaced",
    )
    parser.add_argument("--currency", metavar="CODE", help="EUR for instance")
    options = parser.parse_args(arguments)
    from benchpack.files.outputs import check_output
    from benchpack.files.reading import read_any, write_any
    from benchpack.session.currency_request import asked_currency

    check_output(options.file, options.out, may_be_folder=True)
    reading = read_any(options.file, needs="packs")
    refused = report(reading.problems)
    currency = asked_currency(options.currency, reading.currency)
    currency = currency or reading.library.first_study().currency
    write_any(reading.library, options.out, currency=currency)
    write_line(f"{len(reading.library.packs)} packs written to {options.out}")
    return DATA_AT_FAULT if refused else DONE
