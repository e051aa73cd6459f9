"""The command brief: what is handed to a customer, on paper or as a web page."""

from __future__ import annotations

import os
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from benchpack.commands.exit_codes import DATA_AT_FAULT, DONE
from benchpack.commands.source_file import read_source, study_parser
from benchpack.commands.speech import report, write_line
from benchpack.errors import DataError, RequestError

if TYPE_CHECKING:
    from benchpack.report.brief.blocks import Brief

_ENDINGS = (".pdf", ".html")


def run(arguments: Sequence[str]) -> int:
    """Write the brief of a study. Needs no display.

    Parameters
    ----------
    arguments : sequence of str
        Those after the name of the command.

    Raises
    ------
    RequestError
        When the name ends in neither, or a section cannot be left out.
    """
    from benchpack.report.brief.choices import SECTIONS, check_left_out
    from benchpack.report.brief.worth_section import WORTH_KEYS

    parser = study_parser(
        "brief",
        "Write the brief of a study as PDF or as a web page. Needs no display.",
        out="NAME.pdf|NAME.html",
        out_help="the brief; the ending says in which form",
    )
    parser.add_argument(
        "--audience",
        choices=("internal", "customer"),
        default="customer",
        help="whom it is for; a customer does not see what making it costs",
    )
    free = [choice.key for choice in SECTIONS if choice.can_be_left_out]
    parser.add_argument(
        "--leave-out",
        action="extend",
        nargs="+",
        default=[],
        metavar="KEY",
        help=f"sections that are not wanted: {', '.join(free)}",
    )
    parser.add_argument(
        "--add",
        action="extend",
        nargs="+",
        default=[],
        choices=WORTH_KEYS,
        help="further sections, on the worth; without them the demo fills two pages",
    )
    parser.add_argument(
        "--paper", choices=("A4", "Letter"), default="A4", help="A4 by default"
    )
    options = parser.parse_args(arguments)
    if options.out.suffix.lower() not in _ENDINGS:
        raise RequestError(
            f"{options.out.name}: a brief is written as NAME.pdf or NAME.html"
        )
    added = [key for key in options.leave_out if key.strip().casefold() in WORTH_KEYS]
    if added:
        raise RequestError(f"--leave-out: {added[0]!r} is out unless --add names it")
    try:
        check_left_out(options.leave_out)
    except DataError as error:
        raise RequestError(f"--leave-out: {error}") from error
    from benchpack.report.brief.blocks import Audience
    from benchpack.session.brief_request import BriefChoices, brief_of
    from benchpack.session.handover_request import take_handover, today

    reading = read_source(options)
    name = options.study or ""
    given = take_handover(
        reading.library, name, wanted="brief", currency=reading.currency
    )
    refused = report(given.refused)
    choices = BriefChoices(
        audience=Audience(options.audience),
        paper=options.paper,
        left_out=(
            *options.leave_out,
            *(key for key in WORTH_KEYS if key not in options.add),
        ),
    )
    brief = brief_of(given, choices, made_on=today())
    _write(brief, options.out, paper=options.paper)
    write_line(f"written to {options.out}")
    return DATA_AT_FAULT if refused else DONE


def _write(brief: Brief, path: Path, *, paper: str) -> None:
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    from benchpack.ui.app import make_application
    from benchpack.ui.brief.html import write_brief_html
    from benchpack.ui.brief.pdf import write_brief_pdf
    from benchpack.ui.theme import Scheme, apply_theme

    # Its charts and letters are drawn by the application, which no one sees.
    app = make_application()
    apply_theme(app, Scheme.LIGHT)
    write = write_brief_pdf if path.suffix.lower() == ".pdf" else write_brief_html
    write(brief, path, paper=paper)
