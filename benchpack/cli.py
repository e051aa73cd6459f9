"""The command line. Every command but the window works without a display."""

from __future__ import annotations

import argparse
import gc
import io
import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING

from benchpack import __version__
from benchpack.errors import DataError, Problem, RequestError, Severity
from benchpack.report.terminal import complaint, shown

if TYPE_CHECKING:
    from benchpack.files.reading import Reading

DONE, DATA_AT_FAULT, CALL_AT_FAULT, STOPPED = 0, 1, 2, 130

_BASES = ("as-weighed", "equal-energy", "scaled", "trend", "structure")

_FILE_HELP = (
    "a library file, a Data Package (datapackage.json or its folder), or a table "
    "(CSV, TSV, XLSX, ODS)"
)
_EPILOG = """commands that need no display:
  benchpack gaps FILE --subject NAME       the gaps to every other pack, as CSV too
  benchpack joints FILE --pack NAME        what holds a pack together, as CSV too
  benchpack proposal FILE                  what a study's changes save, as CSV too
  benchpack check FILE                     what is wrong with a file
  benchpack convert FILE OUT               between library file, Data Package, XLSX, CSV
  benchpack pictures FILE --out DIR        every page as PNG
Each answers --help. Exit codes: 0 done, 1 the data is at fault, 2 the call is at fault.
"""


def main(argv: Sequence[str] | None = None) -> int:
    """Run the program.

    Parameters
    ----------
    argv : sequence of str, optional
        Arguments without the program's name; by default those of the process.

    Returns
    -------
    int
        0 done, 1 the data is at fault, 2 the call is at fault.
    """
    arguments = list(sys.argv[1:] if argv is None else argv)
    command = _COMMANDS.get(arguments[0]) if arguments else None
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            # A terminal that lacks a sign shows a question mark, not a traceback.
            stream.reconfigure(errors="replace")
    try:
        code = _window(arguments) if command is None else command(arguments[1:])
        if sys.stdout is not None:
            sys.stdout.flush()
    except KeyboardInterrupt:
        _say_error("stopped")
        return STOPPED
    except DataError as error:
        for problem in error.problems:
            _say(complaint(problem))
        return DATA_AT_FAULT
    except RequestError as error:
        _say_error(str(error))
        return CALL_AT_FAULT
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return DONE
    except OSError as error:
        place = f": {error.filename}" if error.filename else ""
        _say_error(f"{error.strerror or error}{place}")
        return CALL_AT_FAULT
    return code


def _print(text: str = "") -> None:
    # A program that was started without an output has none to write to.
    if sys.stdout is not None:
        sys.stdout.write(shown(text) + "\n")


def _say(text: str) -> None:
    if sys.stderr is not None:
        sys.stderr.write(shown(text) + "\n")


def _say_error(text: str) -> None:
    _say(f"benchpack: {text}")


def _refused(problems: Sequence[Problem]) -> list[Problem]:
    return [p for p in problems if p.severity is Severity.ERROR]


def _window(arguments: list[str]) -> int:
    parser = argparse.ArgumentParser(
        allow_abbrev=False,
        prog="benchpack",
        description="Compare traction battery packs and value a lighter one.",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument(
        "file",
        nargs="?",
        type=_path,
        metavar="FILE",
        help=f"{_FILE_HELP}; without it the last library, at first the demo",
    )
    parser.add_argument(
        "--version", action="version", version=f"benchpack {__version__}"
    )
    options = parser.parse_args(arguments)
    if options.file is not None and not options.file.exists():
        raise RequestError(f"there is no file {options.file}")
    if not has_display():
        _say_error(
            "no display to open a window on; benchpack gaps, joints, proposal, check, "
            "convert and pictures need none, see benchpack --help"
        )
        return CALL_AT_FAULT
    return int(window_module().run_window(options.file))


def window_module() -> ModuleType:
    """Load the module that opens the window, and what it imports."""
    # All that is made while modules load stays: looking for garbage in it, again and
    # again, would take a tenth of the time to the window.
    gc.disable()
    try:
        from benchpack.ui import app
    finally:
        gc.freeze()
        gc.enable()
    return app


def has_display() -> bool:
    """Tell whether a window can be opened."""
    if os.environ.get("QT_QPA_PLATFORM"):
        return True
    if sys.platform in ("win32", "darwin"):
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


def _path(text: str) -> Path:
    """Give a path, refusing the empty text that an unset variable leaves."""
    if not text:
        raise argparse.ArgumentTypeError("the name of the file is empty")
    return Path(text)


def _command(
    name: str, description: str, *, named: str = ""
) -> argparse.ArgumentParser:
    """Give the parser of a command on a file; `named` is its option with a name."""
    hint = f"A name that begins with a hyphen is given as --{named}=-NAME."
    parser = argparse.ArgumentParser(
        allow_abbrev=False,
        prog=f"benchpack {name}",
        description=description,
        epilog=hint if named else None,
    )
    parser.add_argument("file", type=_path, metavar="FILE", help=_FILE_HELP)
    return parser


def _gaps(arguments: list[str]) -> int:
    parser = _command(
        "gaps",
        "Print the gaps of one pack to others and what they are worth.",
        named="subject",
    )
    parser.add_argument("--subject", required=True, metavar="NAME")
    parser.add_argument(
        "--reference",
        action="extend",
        nargs="+",
        metavar="NAME",
        help="packs to measure against; without it every other pack",
    )
    parser.add_argument("--basis", choices=_BASES, default="equal-energy")
    parser.add_argument(
        "--worth",
        metavar="LOW:LIKELY:HIGH",
        help="worth per kilogram saved, 2:3:6 for instance, or one figure",
    )
    parser.add_argument("--currency", metavar="CODE", help="EUR for instance")
    parser.add_argument(
        "--out", type=_path, metavar="CSV", help="also write the table as CSV"
    )
    return _write_gaps(parser.parse_args(arguments))


def _write_gaps(options: argparse.Namespace) -> int:
    from benchpack.report.gap_text import gap_text
    from benchpack.session.gaps_request import GapsRequest, answer

    request = GapsRequest(
        subject=options.subject,
        references=tuple(options.reference or ()),
        basis=options.basis,
        worth_text=options.worth or "",
        currency=(options.currency or "").upper(),
    )
    reading = _read(options)
    results, at_fault = answer(reading.library, request)
    for problem in at_fault:
        _say(complaint(problem))
    if results is None:
        return DATA_AT_FAULT
    _print(gap_text(results))
    if options.out is not None:
        from benchpack.session.handover import write_gap_csv

        write_gap_csv(results, options.out)
        _print(f"written to {options.out}")
    return DATA_AT_FAULT if at_fault else DONE


def _joints(arguments: list[str]) -> int:
    parser = _command(
        "joints",
        "Print what holds one pack together: kilograms, seconds, money.",
        named="pack",
    )
    parser.add_argument("--pack", required=True, metavar="NAME")
    parser.add_argument(
        "--out",
        type=_path,
        metavar="CSV",
        help="also write its joints as CSV, with the masses that were worked out",
    )
    options = parser.parse_args(arguments)
    from benchpack.report.joints_print import inventory_text
    from benchpack.session.joints_request import take_inventory

    reading = _read(options, needs="joints")
    stock, study = take_inventory(
        reading.library, options.pack, currency=reading.currency
    )
    _report(stock.problems)
    _print(inventory_text(stock, study))
    if options.out is not None:
        from benchpack.session.handover import write_joints_csv

        write_joints_csv(stock, options.out)
        _print(f"written to {options.out}")
    return DONE


def _proposal(arguments: list[str]) -> int:
    parser = _command(
        "proposal",
        "Print the proposal of a study: ledger, totals and chance.",
        named="study",
    )
    parser.add_argument(
        "--study", metavar="NAME", help="without it the first study of the file"
    )
    parser.add_argument(
        "--out", type=_path, metavar="CSV", help="also write the ledger as CSV"
    )
    options = parser.parse_args(arguments)
    from benchpack.session.proposal_request import (
        answer_text,
        take_proposal,
        write_ledger_csv,
    )

    reading = _read(options)
    study = options.study or ""
    results = take_proposal(reading.library, study, currency=reading.currency)
    refused = _report([problem for _, problem in results.ledger.refused])
    _print(answer_text(results))
    if options.out is not None:
        write_ledger_csv(results, options.out)
        _print(f"written to {options.out}")
    return DATA_AT_FAULT if refused else DONE


def _read(options: argparse.Namespace, *, needs: str = "packs") -> Reading:
    """Read the file of a command, once it is clear where its output goes."""
    from benchpack.files.outputs import check_output
    from benchpack.files.reading import read_any

    if options.out is not None:
        check_output(options.file, options.out, may_be_folder=False)
    reading = read_any(options.file, needs=needs)
    _report(reading.problems)
    return reading


def _report(problems: Sequence[Problem]) -> bool:
    """Write problems to standard error; tells whether any refuses something."""
    for problem in problems:
        _say(complaint(problem))
    return bool(_refused(problems))


def _check(arguments: list[str]) -> int:
    parser = _command("check", "Read a file and print what is wrong with it.")
    options = parser.parse_args(arguments)
    from benchpack.files.reading import read_any
    from benchpack.session.check_request import all_problems, counts_text

    reading = read_any(options.file)
    problems = all_problems(reading)
    refused = _report(problems)
    _print(counts_text(reading, problems))
    return DATA_AT_FAULT if refused else DONE


def _convert(arguments: list[str]) -> int:
    parser = _command(
        "convert", "Convert between library file, Data Package, XLSX and CSV."
    )
    parser.add_argument(
        "out",
        type=_path,
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
    refused = _report(reading.problems)
    currency = asked_currency(options.currency, reading.currency)
    currency = currency or reading.library.first_study().currency
    write_any(reading.library, options.out, currency=currency)
    _print(f"{len(reading.library.packs)} packs written to {options.out}")
    return DATA_AT_FAULT if refused else DONE


def _pictures(arguments: list[str]) -> int:
    parser = _command(
        "pictures", "Write every page as PNG, light and dark. Needs no display."
    )
    parser.add_argument("--out", type=_path, required=True, metavar="DIR")
    parser.add_argument(
        "--size",
        default="1280x800",
        metavar="WIDTHxHEIGHT",
        help="size of the window in pixels, 1280x800 by default",
    )
    parser.add_argument(
        "--scale", type=float, default=1.0, help="pixels per pixel, 1 to 3"
    )
    options = parser.parse_args(arguments)
    size = _size(options.size)
    if not 1 <= options.scale <= 3:
        raise RequestError(f"--scale is {options.scale:g}; it has to be 1 to 3")
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    os.environ["QT_SCALE_FACTOR"] = f"{options.scale:g}"
    from benchpack.ui.pictures import write_pictures

    reading_problems, paths = write_pictures(options.file, options.out, size=size)
    _report(reading_problems)
    for path in paths:
        _print(str(path))
    return DONE


def _size(text: str) -> tuple[int, int]:
    width, _, height = text.partition("x")
    if not (width.isdecimal() and height.isdecimal()):
        raise RequestError(f"--size is {text!r}; give it as 1280x800")
    size = int(width), int(height)
    if not all(300 <= side <= 10_000 for side in size):
        raise RequestError(f"--size is {text}; each side has to be 300 to 10000")
    return size


_COMMANDS: dict[str, Callable[[list[str]], int]] = {
    "gaps": _gaps,
    "joints": _joints,
    "proposal": _proposal,
    "check": _check,
    "convert": _convert,
    "pictures": _pictures,
}
