"""The command bundle: one study with all it needs in one file."""

from __future__ import annotations

from collections.abc import Sequence

from benchpack.commands.exit_codes import DATA_AT_FAULT, DONE
from benchpack.commands.source_file import read_source, study_parser
from benchpack.commands.speech import refuses, write_line


def run(arguments: Sequence[str]) -> int:
    """Write a study as a bundle, and print its fingerprint.

    Parameters
    ----------
    arguments : sequence of str
        Those after the name of the command.
    """
    parser = study_parser(
        "bundle",
        "Write one study with every record it is answered from as one file.",
        out="NAME.bundle.zip",
        out_help="the bundle; the same study gives the same bytes",
    )
    options = parser.parse_args(arguments)
    from benchpack.files.bundle import check_bundle_name, write_bundle
    from benchpack.results.fingerprint import short_fingerprint
    from benchpack.session.study_request import take_study

    check_bundle_name(options.out)
    reading = read_source(options)
    name = options.study or ""
    study = take_study(
        reading.library, name, wanted="bundle", currency=reading.currency
    )
    fingerprint = write_bundle(reading.library, study, options.out)
    write_line(f"{study.name}: fingerprint {short_fingerprint(fingerprint)}")
    write_line(f"written to {options.out}")
    return DATA_AT_FAULT if refuses(reading.problems) else DONE
