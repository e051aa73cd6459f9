"""Words that several charts share."""

from __future__ import annotations

from benchpack.results.results import Results


def nothing_to_compare(results: Results) -> str:
    """Say in one sentence why there is no chart."""
    problem = results.missing
    return f"{problem.what} {problem.remedy}".strip() if problem else ""


def plural(word: str, count: int) -> str:
    """Give a word for one thing or for several."""
    return word if count == 1 else f"{word}s"
