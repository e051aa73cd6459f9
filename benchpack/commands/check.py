"""The command check: what is wrong with a file."""

from __future__ import annotations

from collections.abc import Sequence

from benchpack.commands.exit_codes import DATA_AT_FAULT, DONE
from benchpack.commands.source_file import file_parser
from benchpack.commands.speech import report, write_line


def run(arguments: Sequence[str]) -> int:
    """Read a file and print what is wrong with it.

    Parameters
    ----------
    arguments : sequence of str
        Those after the name of the command.
    """
    parser = file_parser("check", "Read a file and print what is wrong with it.")
    options = parser.parse_args(arguments)
    from benchpack.files.reading import read_any
    from benchpack.session.check_request import all_problems, counts_text

    reading = read_any(options.file)
    problems = all_problems(reading)
    refused = report(problems)
    write_line(counts_text(reading, problems))
    return DATA_AT_FAULT if refused else DONE
