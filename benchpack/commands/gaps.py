"""The command gaps: the gaps of one pack to others and what they are worth."""

from __future__ import annotations

from collections.abc import Sequence

from benchpack.commands.exit_codes import DATA_AT_FAULT, DONE
from benchpack.commands.source_file import file_parser, path_of, read_source
from benchpack.commands.speech import report, write_line

_BASES = ("as-weighed", "equal-energy", "scaled", "trend", "structure")


def run(arguments: Sequence[str]) -> int:
    """Print the gaps, and write them as CSV where that is asked.

    Parameters
    ----------
    arguments : sequence of str
        Those after the name of the command.
    """
    parser = file_parser(
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
        "--out", type=path_of, metavar="CSV", help="also write the table as CSV"
    )
    options = parser.parse_args(arguments)
    from benchpack.report.gap_text import gap_text
    from benchpack.session.gaps_request import GapsRequest, answer

    request = GapsRequest(
        subject=options.subject,
        references=tuple(options.reference or ()),
        basis=options.basis,
        worth_text=options.worth or "",
        currency=(options.currency or "").upper(),
    )
    reading = read_source(options)
    results, at_fault = answer(reading.library, request)
    report(at_fault)
    if results is None:
        return DATA_AT_FAULT
    write_line(gap_text(results))
    if options.out is not None:
        from benchpack.session.handover import write_gap_csv

        write_gap_csv(results, options.out)
        write_line(f"written to {options.out}")
    return DATA_AT_FAULT if at_fault else DONE
