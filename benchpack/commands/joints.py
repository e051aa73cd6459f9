"""The command joints: what holds one pack together."""

from __future__ import annotations

from collections.abc import Sequence

from benchpack.commands.exit_codes import DONE
from benchpack.commands.source_file import file_parser, path_of, read_source
from benchpack.commands.speech import report, write_line


def run(arguments: Sequence[str]) -> int:
    """Print the joints of a pack, and write them as CSV where that is asked.

    Parameters
    ----------
    arguments : sequence of str
        Those after the name of the command.
    """
    parser = file_parser(
        "joints",
        "Print what holds one pack together: kilograms, seconds, money.",
        named="pack",
    )
    parser.add_argument("--pack", required=True, metavar="NAME")
    parser.add_argument(
        "--out",
        type=path_of,
        metavar="CSV",
        help="also write its joints as CSV, with the masses that were worked out",
    )
    options = parser.parse_args(arguments)
    from benchpack.report.joints_print import inventory_text
    from benchpack.session.joints_request import take_inventory

    reading = read_source(options, needs="joints")
    stock, study = take_inventory(
        reading.library, options.pack, currency=reading.currency
    )
    report(stock.problems)
    write_line(inventory_text(stock, study))
    if options.out is not None:
        from benchpack.session.handover import write_joints_csv

        write_joints_csv(stock, options.out)
        write_line(f"written to {options.out}")
    return DONE
