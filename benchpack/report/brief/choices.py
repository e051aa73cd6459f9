"""Which sections a brief has, and which of them a person may leave out."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from difflib import get_close_matches

from benchpack.errors import DataError, Problem

RESULT, GAP, PROPOSAL = "result", "gap", "proposal"
COMPARISON, LEDGER, ITEMS, MONEY = "comparison", "ledger", "items", "money"
VALIDATION, CHECKS = "validation", "checks"
ASSUMPTIONS, CAUTIONS, FINGERPRINT = "assumptions", "cautions", "fingerprint"


@dataclass(frozen=True, slots=True)
class SectionChoice:
    """A section that a brief can have.

    Parameters
    ----------
    key : str
        Its name in a list of what is left out.
    title : str
        Its heading.
    can_be_left_out : bool
        False where a reader must not miss it.
    is_internal : bool
        True where a customer never sees it.
    """

    key: str
    title: str
    can_be_left_out: bool = True
    is_internal: bool = False


SECTIONS: tuple[SectionChoice, ...] = (
    SectionChoice(RESULT, "Result"),
    SectionChoice(GAP, "Where the gap sits"),
    SectionChoice(PROPOSAL, "From today's mass to the proposed"),
    SectionChoice(COMPARISON, "Comparison"),
    SectionChoice(LEDGER, "Ledger of the proposal"),
    SectionChoice(ITEMS, "Ledger, item by item", is_internal=True),
    SectionChoice(MONEY, "Money per pack", is_internal=True),
    SectionChoice(VALIDATION, "To be validated again", can_be_left_out=False),
    SectionChoice(CHECKS, "Checks that ask for a look"),
    SectionChoice(ASSUMPTIONS, "Assumptions and sources"),
    SectionChoice(CAUTIONS, "Cautions", can_be_left_out=False),
    SectionChoice(FINGERPRINT, "How to get the same figures"),
)
"""All sections in the order in which they stand."""

TITLES = {choice.key: choice.title for choice in SECTIONS}
"""Heading of each section by its key."""


def check_left_out(left_out: Collection[str], further: Iterable[str] = ()) -> None:
    """Refuse to leave out what a reader must not miss, or what there is not.

    Parameters
    ----------
    left_out : collection of str
        Keys of the sections that are to be left out.
    further : iterable of str
        Keys of sections that come from elsewhere.

    Raises
    ------
    DataError
        With one problem for each key that cannot be left out.
    """
    meant = {key: key.strip().casefold() for key in left_out}
    kept = [choice for choice in SECTIONS if not choice.can_be_left_out]
    free = [choice.key for choice in SECTIONS if choice.can_be_left_out]
    free.extend(further)
    problems = [
        Problem(
            f"The section {choice.title!r} cannot be left out of a brief.",
            "Leave it in: whoever reads the figures has to know it.",
            column="sections",
            value=choice.key,
        )
        for choice in kept
        if choice.key in meant.values()
    ]
    said = {choice.key for choice in kept}
    for key, plain in meant.items():
        if key not in free and plain not in said:
            alike = get_close_matches(plain, free, n=1)
            remedy = f"Use one of: {', '.join(free)}."
            if alike:
                remedy = f"Did you mean {alike[0]!r}?"
            what = f"A brief has no section {key!r}."
            problems.append(Problem(what, remedy, column="sections", value=key))
    if problems:
        raise DataError(*problems)
