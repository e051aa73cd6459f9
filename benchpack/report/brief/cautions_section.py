"""What a reader must know before using a figure, and how to get the same figures."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from benchpack.report.brief.blocks import Audience, Block, Paragraph
from benchpack.report.cautions_text import CAUTIONS
from benchpack.results.proposal import ProposalResults
from benchpack.results.results import Results


def cautions_blocks(
    results: Results, proposal: ProposalResults | None, audience: Audience
) -> tuple[Block, ...]:
    """Give the cautions: the usual ones, those of the records, those of the changes.

    Parameters
    ----------
    results : Results
        The gap.
    proposal : ProposalResults or None
        What should close it.
    audience : Audience
        How a record is to be mended is an internal remark.
    """
    said = dict.fromkeys(_cautions(results, proposal, audience))
    return tuple(Paragraph(text, "caution") for text in said if text)


def _cautions(
    results: Results, proposal: ProposalResults | None, audience: Audience
) -> Iterator[str]:
    yield from CAUTIONS
    yield results.library.note
    yield from _missing(results, proposal)
    for problem in results.cautions:
        remedy = problem.remedy if audience is Audience.INTERNAL else ""
        yield f"{problem.what} {remedy}".strip()


def _missing(results: Results, proposal: ProposalResults | None) -> Iterator[str]:
    """Say what the brief lacks."""
    if results.missing is not None:
        yield f"There is no gap to state: {results.missing.what}"
    if results.study.target_kg is None:
        yield "The study has no target, so no chance of reaching one is stated."
    if proposal is None or not proposal.effects:
        yield "No change is put forward, so no saving is promised."


def fingerprint_blocks(
    results: Results, *, fingerprint: str, version: str, made_on: date
) -> tuple[Block, ...]:
    """Give what identifies the data, and how to get the same figures from it.

    Parameters
    ----------
    results : Results
        The gap.
    fingerprint : str
        Hash of the study and of the records that it uses.
    version : str
        Version of the program.
    made_on : date
        Day on which the brief is made.
    """
    text = (
        f"Fingerprint {fingerprint} of the study {results.study.name} and its records, "
        f"Benchpack {version}, {made_on.isoformat()}. A file that shows the same "
        "fingerprint gives the same figures."
    )
    return (Paragraph(text, "note"),)
