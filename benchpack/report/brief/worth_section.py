"""What a brief says of the worth: programme, price, target, and the vehicle."""

from __future__ import annotations

from benchpack.report.brief.blocks import Audience, Section
from benchpack.report.brief.choices import MONEY, SECTIONS, SectionChoice
from benchpack.report.brief.worth_money_section import price_blocks, programme_blocks
from benchpack.report.brief.worth_target_section import target_blocks
from benchpack.report.brief.worth_vehicle_section import vehicle_blocks
from benchpack.results.proposal_trials import ProposalChance
from benchpack.results.worth_case import WorthCase

PROGRAMME, PRICE, TARGET, VEHICLE = "programme", "price", "target", "vehicle"
WORTH_SECTIONS: tuple[SectionChoice, ...] = (
    SectionChoice(PROGRAMME, "What it is worth over the programme"),
    SectionChoice(PRICE, "What the new part may cost"),
    SectionChoice(TARGET, "What the target hangs on"),
    SectionChoice(VEHICLE, "Worth of a kilogram, entered and by the vehicle"),
)
"""The sections on the worth, in the order in which they stand."""
WORTH_KEYS = tuple(choice.key for choice in WORTH_SECTIONS)
"""Keys of the sections on the worth."""


def every_section() -> tuple[SectionChoice, ...]:
    """Give all sections that a brief can have, those on the worth among them."""
    after = next(n for n, one in enumerate(SECTIONS, start=1) if one.key == MONEY)
    return (*SECTIONS[:after], *WORTH_SECTIONS, *SECTIONS[after:])


def worth_sections(
    case: WorthCase, chance: ProposalChance | None, audience: Audience
) -> tuple[Section, ...]:
    """Give the sections on the worth.

    A customer sees what the saving is worth before any cost, and, where a price is
    given, that price and what they gain at it; never our cost, margin, tools or
    interest on them.

    Parameters
    ----------
    case : WorthCase
        What the saving is worth.
    chance : ProposalChance or None
        The trials of the proposal.
    audience : Audience
        Whom the brief is for.

    Returns
    -------
    tuple of Section
        One that has nothing to say to this audience is not there.
    """
    blocks = {
        PROGRAMME: programme_blocks(case, audience),
        PRICE: price_blocks(case, audience),
        TARGET: target_blocks(case, chance, audience),
        VEHICLE: vehicle_blocks(case, audience),
    }
    return tuple(
        Section(choice.key, choice.title, blocks[choice.key])
        for choice in WORTH_SECTIONS
        if blocks[choice.key]
    )
