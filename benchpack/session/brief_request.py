"""A request for a brief, as the person's choices put it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from benchpack.report.brief.blocks import Audience, Brief
from benchpack.report.brief.content import make_brief
from benchpack.report.brief.worth_section import (
    WORTH_KEYS,
    every_section,
    worth_sections,
)
from benchpack.session.handover_request import HandedOver
from benchpack.session.settings import Settings


@dataclass(frozen=True, slots=True)
class BriefChoices:
    """What a person may choose of a brief.

    Parameters
    ----------
    audience : Audience
        Whom it is for.
    paper : str
        The sheet that it is set on.
    left_out : tuple of str
        Keys of the sections that are left out, each of which may be.
    """

    audience: Audience = Audience.CUSTOMER
    paper: str = "A4"
    left_out: tuple[str, ...] = ()


def brief_choices(settings: Settings) -> BriefChoices:
    """Give the choices that are kept in the settings.

    Parameters
    ----------
    settings : Settings
        A key of them that no section has, or that cannot be left out, counts for
        nothing: another version may have written it.
    """
    free = [choice.key for choice in every_section() if choice.can_be_left_out]
    return BriefChoices(
        audience=Audience(settings.brief_audience),
        paper=settings.brief_paper,
        left_out=tuple(key for key in free if key in settings.brief_left_out),
    )


def brief_of(given: HandedOver, choices: BriefChoices, *, made_on: date) -> Brief:
    """Make the brief of a study that was worked out.

    Parameters
    ----------
    given : HandedOver
        What it is made of.
    choices : BriefChoices
        What the person chose.
    made_on : date
        Day on which it is made.
    """
    worth = worth_sections(given.case, given.chance, choices.audience)
    there = {section.key for section in worth}
    # A section on the worth may have nothing to say to an audience.
    absent = {key for key in WORTH_KEYS if key not in there}
    return make_brief(
        given.results,
        given.proposal,
        given.chance,
        fingerprint=given.fingerprint,
        made_on=made_on,
        audience=choices.audience,
        left_out=tuple(key for key in choices.left_out if key not in absent),
        further=worth,
    )
