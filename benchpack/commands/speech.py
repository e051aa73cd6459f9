"""What a command says: answers to standard output, complaints to standard error."""

from __future__ import annotations

import sys
from collections.abc import Sequence

from benchpack.errors import Problem, Severity
from benchpack.report.terminal import complaint, shown


def write_line(text: str = "") -> None:
    """Write a line of the answer.

    Parameters
    ----------
    text : str
        The line; empty for an empty one.
    """
    # A program that was started without an output has none to write to.
    if sys.stdout is not None:
        sys.stdout.write(shown(text) + "\n")


def say(text: str) -> None:
    """Write a line to standard error."""
    if sys.stderr is not None:
        sys.stderr.write(shown(text) + "\n")


def say_error(text: str) -> None:
    """Say why the program as a whole did not do what was asked."""
    say(f"benchpack: {text}")


def report(problems: Sequence[Problem]) -> bool:
    """Write problems to standard error; tells whether any refuses something.

    Parameters
    ----------
    problems : sequence of Problem
        What is wrong, one line each.
    """
    for problem in problems:
        say(complaint(problem))
    return refuses(problems)


def refuses(problems: Sequence[Problem]) -> bool:
    """Tell whether any of some problems refuses something."""
    return any(problem.severity is Severity.ERROR for problem in problems)
