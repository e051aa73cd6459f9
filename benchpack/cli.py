"""The command line. Every command but the window works without a display."""

from __future__ import annotations

import argparse
import gc
import io
import os
import sys
from collections.abc import Callable, Iterable, Sequence
from types import ModuleType

from benchpack import __version__
from benchpack.commands import (
    brief,
    bundle,
    check,
    convert,
    gaps,
    joints,
    pictures,
    proposal,
    workbook,
)
from benchpack.commands.exit_codes import (
    CALL_AT_FAULT,
    DATA_AT_FAULT,
    DONE,
    STOPPED,
)
from benchpack.commands.source_file import FILE_HELP, path_of
from benchpack.commands.speech import report, say_error
from benchpack.errors import DataError, RequestError

_COMMANDS: dict[str, Callable[[Sequence[str]], int]] = {
    "gaps": gaps.run,
    "joints": joints.run,
    "proposal": proposal.run,
    "brief": brief.run,
    "workbook": workbook.run,
    "bundle": bundle.run,
    "check": check.run,
    "convert": convert.run,
    "pictures": pictures.run,
}

_EPILOG = """commands that need no display:
  benchpack gaps FILE --subject NAME       the gaps to every other pack, as CSV too
  benchpack joints FILE --pack NAME        what holds a pack together, as CSV too
  benchpack proposal FILE                  what a study's changes save, as CSV too
  benchpack brief FILE --out X.pdf         a study for the customer, PDF or HTML
  benchpack workbook FILE --out X.xlsx     a study with formulas to follow and change
  benchpack bundle FILE --out X.bundle.zip one study with all it needs in one file
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
        say_error("stopped")
        return STOPPED
    except DataError as error:
        report(error.problems)
        return DATA_AT_FAULT
    except RequestError as error:
        say_error(str(error))
        return CALL_AT_FAULT
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return DONE
    except OSError as error:
        place = f": {error.filename}" if error.filename else ""
        say_error(f"{error.strerror or error}{place}")
        return CALL_AT_FAULT
    return code


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
        type=path_of,
        metavar="FILE",
        help=f"{FILE_HELP}; without it the last library, at first the demo",
    )
    parser.add_argument(
        "--version", action="version", version=f"benchpack {__version__}"
    )
    options = parser.parse_args(arguments)
    if options.file is not None and not options.file.exists():
        raise RequestError(f"there is no file {options.file}")
    if not has_display():
        say_error(
            f"no display to open a window on; benchpack {_listed(_COMMANDS)} need "
            "none, see benchpack --help"
        )
        return CALL_AT_FAULT
    return int(window_module().run_window(options.file))


def _listed(names: Iterable[str]) -> str:
    *most, last = names
    return f"{', '.join(most)} and {last}"


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
