"""The file that a command works on: how it is asked for, and how it is read."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from benchpack.commands.speech import report

if TYPE_CHECKING:
    from benchpack.files.reading import Reading

FILE_HELP = (
    "a library file, a Data Package (datapackage.json or its folder), a study bundle, "
    "or a table (CSV, TSV, XLSX, ODS)"
)


def path_of(text: str) -> Path:
    """Give a path, refusing the empty text that an unset variable leaves.

    Raises
    ------
    argparse.ArgumentTypeError
        For an empty text.
    """
    if not text:
        raise argparse.ArgumentTypeError("the name of the file is empty")
    return Path(text)


def file_parser(
    name: str, description: str, *, named: str = ""
) -> argparse.ArgumentParser:
    """Give the parser of a command on a file.

    Parameters
    ----------
    name : str
        Name of the command.
    description : str
        What it does.
    named : str
        Its option that takes a name of a record.
    """
    hint = f"A name that begins with a hyphen is given as --{named}=-NAME."
    parser = argparse.ArgumentParser(
        allow_abbrev=False,
        prog=f"benchpack {name}",
        description=description,
        epilog=hint if named else None,
    )
    parser.add_argument("file", type=path_of, metavar="FILE", help=FILE_HELP)
    return parser


def study_parser(
    name: str, description: str, *, out: str, out_help: str, required: bool = True
) -> argparse.ArgumentParser:
    """Give the parser of a command on a study of a file.

    Parameters
    ----------
    name, description : str
        As for `file_parser`.
    out, out_help : str
        What is written, as the usage shows it and in words.
    required : bool
        False where the command also answers without writing a file.
    """
    parser = file_parser(name, description, named="study")
    parser.add_argument(
        "--study", metavar="NAME", help="without it the first study of the file"
    )
    parser.add_argument(
        "--out", type=path_of, required=required, metavar=out, help=out_help
    )
    return parser


def read_source(options: argparse.Namespace, *, needs: str = "packs") -> Reading:
    """Read the file of a command, once it is clear where its output goes.

    Parameters
    ----------
    options : Namespace
        With ``file`` and ``out``.
    needs : str
        Name of the table that the file has to hold.

    Raises
    ------
    BenchpackError
        When the output would cost something, or the file cannot be read.
    """
    from benchpack.files.outputs import check_output
    from benchpack.files.reading import read_any

    if options.out is not None:
        check_output(options.file, options.out, may_be_folder=False)
    reading = read_any(options.file, needs=needs)
    report(reading.problems)
    return reading
