"""What a person chose of the brief, as it is kept and as it is made."""

from __future__ import annotations

from datetime import date

import pytest

from benchpack.files.demo import demo_library
from benchpack.report.brief.blocks import Audience
from benchpack.report.brief.choices import CAUTIONS, MONEY, SECTIONS, VALIDATION
from benchpack.report.brief.worth_section import WORTH_KEYS
from benchpack.session.brief_request import BriefChoices, brief_choices, brief_of
from benchpack.session.handover_request import HandedOver, hand_over
from benchpack.session.settings import Settings

DAY = date(2026, 3, 2)


@pytest.fixture(scope="module")
def given() -> HandedOver:
    library = demo_library()
    return hand_over(library, library.first_study())


def test_at_first_a_customer_gets_a_brief_without_the_sections_on_the_worth() -> None:
    usual = BriefChoices(Audience.CUSTOMER, "A4", WORTH_KEYS)
    assert brief_choices(Settings()) == usual


def test_what_is_kept_is_taken_over_in_the_order_of_the_brief() -> None:
    settings = Settings(
        brief_audience="internal",
        brief_paper="Letter",
        brief_left_out=("assumptions", "comparison"),
    )
    kept = BriefChoices(Audience.INTERNAL, "Letter", ("comparison", "assumptions"))
    assert brief_choices(settings) == kept


def test_what_cannot_be_left_out_or_is_unknown_counts_for_nothing(
    given: HandedOver,
) -> None:
    settings = Settings(brief_left_out=(VALIDATION, CAUTIONS, "weather", "ledger"))
    choices = brief_choices(settings)
    assert choices.left_out == ("ledger",)
    brief = brief_of(given, choices, made_on=DAY)
    keys = {section.key for section in brief.sections}
    assert {VALIDATION, CAUTIONS} <= keys
    assert "ledger" not in keys


def test_a_customer_never_sees_what_is_internal(given: HandedOver) -> None:
    internal = {choice.key for choice in SECTIONS if choice.is_internal}
    for audience, seen in ((Audience.CUSTOMER, set()), (Audience.INTERNAL, internal)):
        brief = brief_of(given, BriefChoices(audience), made_on=DAY)
        assert brief.audience is audience
        assert internal & {section.key for section in brief.sections} == seen
    assert MONEY in internal


def test_the_worth_can_be_in_every_brief_and_may_be_left_out(given: HandedOver) -> None:
    for audience in Audience:
        brief = brief_of(given, BriefChoices(audience), made_on=DAY)
        keys = {section.key for section in brief.sections}
        assert {"programme", "target", "vehicle"} <= keys
        # The demo gives no price, so there is nothing to show a customer.
        assert ("price" in keys) == (audience is Audience.INTERNAL)
        settings = Settings(brief_audience=audience, brief_left_out=WORTH_KEYS)
        choices = brief_choices(settings)
        assert choices.left_out == WORTH_KEYS
        shorter = brief_of(given, choices, made_on=DAY)
        left = {section.key for section in shorter.sections}
        assert left == keys - set(WORTH_KEYS)
