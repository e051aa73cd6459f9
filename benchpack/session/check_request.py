"""A request for what is wrong with a file, as it comes from the command line."""

from __future__ import annotations

from collections.abc import Sequence

from benchpack.errors import Problem, Severity
from benchpack.files.reading import Reading
from benchpack.results.library_check import library_problems


def all_problems(reading: Reading) -> tuple[Problem, ...]:
    """Give what was wrong with a file's rows and is with the records, nothing twice.

    Parameters
    ----------
    reading : Reading
        What was read of it.
    """
    known = {(problem.record, problem.what) for problem in reading.problems}
    further = (
        problem
        for problem in library_problems(reading.library)
        if (problem.record, problem.what) not in known
    )
    return (*reading.problems, *further)


def counts_text(reading: Reading, problems: Sequence[Problem]) -> str:
    """Say what a file holds and how much is wrong with it.

    Parameters
    ----------
    reading : Reading
        What was read of it.
    problems : sequence of Problem
        What is wrong.

    Returns
    -------
    str
        ``14 packs, 431 parts, 96 joints; 0 errors, 3 warnings``, or of a table of
        joints alone ``96 joints of 5 packs; 0 errors, 3 warnings``.
    """
    library = reading.library
    counts = {
        "packs": len(library.packs),
        "parts": library.part_count,
        "joints": library.joint_count,
    }
    held = ", ".join(
        f"{number} {kind}"
        for kind, number in counts.items()
        if not reading.alone or kind in reading.alone
    )
    if reading.alone:
        packs = len({*library.parts, *library.joints})
        held += f" of {packs} pack{'' if packs == 1 else 's'}"
    errors = sum(problem.severity is Severity.ERROR for problem in problems)
    return f"{held}; {errors} errors, {len(problems) - errors} warnings"
