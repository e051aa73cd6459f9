"""Words that several charts share."""

from __future__ import annotations

from benchpack.errors import Problem
from benchpack.results.results import Results


def nothing_to_compare(results: Results, *, has_remedy: bool = True) -> str:
    """Say why there is no chart, and to whoever made the study what to do."""
    problem = results.missing
    return reason_text(problem, has_remedy=has_remedy) if problem else ""


def reason_text(problem: Problem, *, has_remedy: bool = True) -> str:
    """Say what is wrong, and to whoever made the study what to do."""
    return f"{problem.what} {problem.remedy if has_remedy else ''}".strip()


def plural(word: str, count: int) -> str:
    """Give a word for one thing or for several."""
    return word if count == 1 else f"{word}s"
