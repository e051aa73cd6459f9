"""What a brief says of the target: how likely it is, and what it hangs on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from benchpack.errors import Problem
from benchpack.report.brief.blocks import Audience, Block, Paragraph
from benchpack.report.brief.worth_money_section import row_of_figures
from benchpack.report.display import Display
from benchpack.report.worth_money import money_scale
from benchpack.report.worth_target import (
    NO_TARGET,
    WITHOUT_TARGET,
    has_proposal,
    target_figures,
)
from benchpack.report.worth_target_text import target_readings
from benchpack.results.proposal_matters import RELEASE, Swing, mass_matters
from benchpack.results.proposal_trials import ProposalChance
from benchpack.results.wording import listed
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_matters import worth_swings
from benchpack.units.formatting import UNKNOWN

_MOST_SWINGS = 3
_OF_MONEY = "least worth"
_CONDITIONS = "What has to be true"


def target_blocks(
    case: WorthCase, chance: ProposalChance | None, audience: Audience
) -> tuple[Block, ...]:
    """Give the target in figures, and what it hangs on in sentences.

    Parameters
    ----------
    case : WorthCase
        The case.
    chance : ProposalChance or None
        The trials of the proposal.
    audience : Audience
        From which worth and volume it pays tells what it costs, an internal matter.
    """
    is_internal = audience is Audience.INTERNAL
    said = _matters(case, is_internal=is_internal)
    conditions = _conditions(case, chance, is_internal=is_internal)
    texts = (text for text in (" ".join(conditions), said) if text)
    return (
        row_of_figures(_figures(case, chance, is_internal=is_internal)),
        *(Paragraph(text, "note") for text in texts),
    )


def _figures(
    case: WorthCase, chance: ProposalChance | None, *, is_internal: bool
) -> Iterator[tuple[str, str]]:
    if case.target.value is None:
        yield ("target", "none is set")
    else:
        yield ("target", Display(case.study).mass_text(case.target.target_kg))
    for one in target_figures(case, chance, is_known=True):
        if one.text != UNKNOWN and (is_internal or one.key != _OF_MONEY):
            yield (one.label, one.whole)


def _conditions(
    case: WorthCase, chance: ProposalChance | None, *, is_internal: bool
) -> Sequence[str]:
    """Give what has to be true; a customer reads of releases alone."""
    readings = target_readings(case, chance, is_known=True)
    said = next(one.sentences for one in readings if one.heading == _CONDITIONS)
    if is_internal or not has_proposal(case):
        return said
    # The last two say from which worth and volume it pays.
    return [WITHOUT_TARGET if one == NO_TARGET else one for one in said[:-2]]


def _matters(case: WorthCase, *, is_internal: bool) -> str:
    """Say what moves the value of the programme most, for a customer the mass saved."""
    if not is_internal:
        return _mass_matters(case)
    found = worth_swings(case)
    if isinstance(found, Problem) or not found[1]:
        return ""
    base, swings = found
    shown = swings[:_MOST_SWINGS]
    ends = [end for one in shown for end in (one.at_low, one.at_high)]
    scale = money_scale((base, *ends), Display(case.study))
    texts = (
        f"{one.name} ({scale.number(min(one.at_low, one.at_high))} to "
        f"{scale.text(max(one.at_low, one.at_high))})"
        for one in shown
    )
    lead = f"What moves the programme value most ({scale.text(base)} with each change"
    return f"{lead} by its chance), one at a time: {listed(tuple(texts))}."


def _mass_matters(case: WorthCase) -> str:
    found = None if case.proposal is None else mass_matters(case.proposal)
    # From a release, on or off, the chance of that one change could be worked out.
    swings = [one for one in found.swings if one.what != RELEASE] if found else []
    if found is None or not swings:
        return ""
    mass = Display(case.study).mass_text
    texts = (
        f"{_named(one)} ({mass(min(one.at_low, one.at_high))} to "
        f"{mass(max(one.at_low, one.at_high))})"
        for one in swings[:_MOST_SWINGS]
    )
    lead = f"What moves the {mass(found.base)} to be expected most"
    return f"{lead}, one at a time: {listed(tuple(texts))}."


def _named(swing: Swing) -> str:
    return f"{swing.name}, {swing.what}" if swing.what else swing.name
