"""What a brief says of the worth, and what a customer does not see of it."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from typing import Any

import pytest

from benchpack.calc.worth import programme_npv
from benchpack.files.demo import demo_library
from benchpack.model.worth_words import Sizing, ValuedMass
from benchpack.report.brief.blocks import (
    Audience,
    Block,
    ChartBlock,
    Paragraph,
    Section,
    Table,
)
from benchpack.report.brief.choices import MONEY, SECTIONS, VALIDATION
from benchpack.report.brief.money_section import money_blocks
from benchpack.report.brief.worth_section import (
    PRICE,
    PROGRAMME,
    TARGET,
    VEHICLE,
    WORTH_KEYS,
    every_section,
    worth_sections,
)
from benchpack.report.plain_table import plain_spaces
from benchpack.report.worth_specs import ProgrammeSpec
from benchpack.results.proposal_trials import ProposalChance, simulate
from benchpack.results.results import compute
from benchpack.results.worth_case import WorthCase, worth_case
from benchpack.results.worth_price import Price
from benchpack.results.worth_programme import Programme

OURS = ("our cost", "our part", "whole gain", "headroom", "paid back", "pays from")


@cache
def demo_case(place: int = 0) -> WorthCase:
    library = demo_library()
    return worth_case(compute(library, library.studies[place]))


@cache
def demo_chance() -> ProposalChance:
    proposal = demo_case().proposal
    assert proposal is not None
    chance = simulate(proposal, trials=5_000)
    assert chance is not None
    return chance


def changed(**study: Any) -> WorthCase:
    case = demo_case()
    return worth_case(compute(case.gap.library, replace(case.study, **study)))


def sections(
    case: WorthCase, audience: Audience = Audience.INTERNAL
) -> dict[str, Section]:
    chance = demo_chance() if case.proposal else None
    return {one.key: one for one in worth_sections(case, chance, audience)}


def words(blocks: tuple[Block, ...]) -> Iterator[str]:
    for block in blocks:
        if isinstance(block, Paragraph):
            yield plain_spaces(block.text)
        elif isinstance(block, Table):
            yield from (plain_spaces(column.head) for column in block.columns)
            for row in block.rows:
                yield from map(plain_spaces, row)
        elif isinstance(block, ChartBlock):
            yield plain_spaces(block.alternative)


def said(case: WorthCase, key: str, audience: Audience = Audience.INTERNAL) -> str:
    return " | ".join(words(sections(case, audience)[key].blocks))


def row(case: WorthCase, key: str) -> dict[str, str]:
    table = sections(case)[key].blocks[0]
    assert isinstance(table, Table)
    heads = [plain_spaces(column.head) for column in table.columns]
    return dict(zip(heads, map(plain_spaces, table.rows[0]), strict=True))


def test_the_sections_stand_in_their_order_after_the_money() -> None:
    assert tuple(sections(demo_case())) == WORTH_KEYS
    keys = [choice.key for choice in every_section()]
    start = keys.index(MONEY) + 1
    assert tuple(keys[start : start + 4]) == WORTH_KEYS
    assert keys[start + 4] == VALIDATION
    assert len(keys) == len(set(keys)) == len(SECTIONS) + 4


def test_the_programme_with_range_payback_and_volume() -> None:
    shown = row(demo_case(), PROGRAMME)
    assert shown == {
        "programme value": "5.85 million EUR (−20.1 to 25.1)",
        "gain per pack": "33 EUR (−68 to 99)",
        "paid back": "after 1.1 years",
        "pays from": "8 157 packs a year",
        "internal rate a year": "98 %",
    }
    text = said(demo_case(), PROGRAMME)
    assert "294 000 packs in all, 42 000 a year over 7 years, the first in 2028" in text
    assert "at 8 % a year" in text
    assert "off by 20 %" in text


def test_costs_that_are_not_known_stand_by_programme_and_price() -> None:
    case = changed(currency="CHF")
    assert case.proposal is not None
    lacking = case.proposal.totals.unknown
    assert len(lacking) == 2
    wanted = f"Costs not known count as nothing: {lacking[0]} and {lacking[1]}."
    assert wanted in said(case, PROGRAMME)
    assert wanted in said(case, PRICE)
    # What we do not know of our own costs is no matter of the customer's.
    assert "Costs not known" not in said(case, PROGRAMME, Audience.CUSTOMER)
    notes = " ".join(words(money_blocks(case.proposal)))
    assert "is not known and counts as nothing" in notes
    assert "Usual costs of add-backs are in EUR." in notes


def test_the_chart_of_the_programme_tells_its_figures_in_words() -> None:
    chart = sections(demo_case())[PROGRAMME].blocks[-1]
    assert isinstance(chart, ChartBlock)
    assert isinstance(chart.spec, ProgrammeSpec)
    alternative = plain_spaces(chart.alternative)
    assert "2027 −1.41 million EUR" in alternative
    assert "2034 1.39 million EUR, 5.85 million EUR so far" in alternative


def test_volumes_by_year_are_named() -> None:
    case = changed(volumes=(5_000, 60_000), start_year=None)
    assert "65 000 packs in all, by year 5 000, 60 000." in said(case, PROGRAMME)


def test_a_customer_sees_the_worth_before_any_cost() -> None:
    case = demo_case()
    assert isinstance(case.programme, Programme)
    text = said(case, PROGRAMME, Audience.CUSTOMER)
    packs = programme_npv(1.0, case.programme.volumes, discount_rate=0.08)
    worth = float(packs) * case.programme.worth_per_pack.likely
    assert f"{worth / 1e6:.2f} million EUR" in text
    assert "before any cost" in text
    assert "at 8 % a year" in text


def test_what_the_new_part_may_cost() -> None:
    shown = row(demo_case(), PRICE)
    assert shown["customer is even at"].startswith("141 EUR")
    assert shown["our cost"] == "115 EUR"
    assert (shown["customer's part"], shown["our part"]) == ("13 EUR", "13 EUR")
    assert shown["price that leaves 50 % of the gain"].startswith("128 EUR")
    text = said(demo_case(), PRICE)
    assert "old parts 95 EUR (entered)" in text
    assert "Costs not known count as nothing" in text


def test_a_given_price_is_solved_both_ways() -> None:
    case = changed(part_price=120.0, required_saving=30.0)
    text = said(case, PRICE)
    assert "At the headroom the customer keeps 30 EUR." in text
    assert row(case, PRICE)["price headroom"].startswith("111 EUR")
    assert "Customer's gain at 120 EUR: 21 EUR" in text
    theirs = said(case, PRICE, Audience.CUSTOMER)
    assert theirs.startswith(
        "At a price of 120 EUR a pack for the new parts you gain 21 EUR"
    )
    dearer = said(changed(part_price=150.0), PRICE, Audience.CUSTOMER)
    assert "you lose 9 EUR" in dearer


@pytest.mark.parametrize("price", [None, 120.0])
def test_a_customer_never_sees_our_cost_or_margin(price: float | None) -> None:
    case = changed(part_price=price, customer_share=0.37)
    assert isinstance(case.price, Price)
    found = sections(case, Audience.CUSTOMER)
    assert (PRICE in found) == (price is not None)
    text = " | ".join(one for key in found for one in words(found[key].blocks))
    assert not [one for one in OURS if one in text.lower()]
    ours = (case.price.cost, case.price.whole_gain, case.price.once_per_pack)
    internal = said(case, PRICE)
    for money in ours:
        assert f"{money:.0f} EUR" in internal
    assert f"{case.price.cost:.0f} EUR" not in text
    assert "internal rate" not in text
    assert not [
        block
        for one in found.values()
        for block in one.blocks
        if isinstance(block, ChartBlock)
    ]


def test_the_target_with_chance_stretch_and_what_stays_open() -> None:
    shown = row(demo_case(), TARGET)
    chance = demo_chance()
    assert shown["target"] == "6.0 kg"
    assert shown["worth a pack"] == "18 EUR (6 to 36)"
    assert shown["share of the gap"] == "53 % (32 to 171)"
    assert shown["half of the trials save"] == f"{chance.saved_kg.p50:.1f} kg"
    assert (
        shown["one in five saves"] == f"{float(chance.saved_kg.quantile(0.8)):.1f} kg"
    )
    assert shown["gap still open"] == "5.4 kg (0.0 to 16.3)"
    text = said(demo_case(), TARGET)
    assert "0.2 kg short of it" in text
    assert "It pays from 8 157 packs a year on." in text
    assert "What moves the programme value most (5.61 million EUR with each" in text


def test_a_customer_reads_of_releases_and_masses_alone() -> None:
    case = changed(target_kg=4.0)
    own, theirs = (said(case, TARGET, one) for one in Audience)
    released = "Each of these has to be released: lid and stiffeners in one moulding"
    assert released in own
    assert released in theirs
    for word in ("It pays", "pays from", "programme value", "least"):
        assert word not in theirs
    assert "What moves the 5.1 kg to be expected most" in theirs
    assert "mass estimate" in theirs
    # "release (2.2 kg to 5.6 kg)" beside 5.1 kg would tell the chance of one change.
    assert ", release (" not in theirs


def test_without_a_proposal_the_target_stands_alone() -> None:
    case = demo_case(1)
    text = said(case, TARGET)
    assert "6.0 kg" in text
    assert "There is no proposal" in text
    theirs = said(case, TARGET, Audience.CUSTOMER)
    assert "There is no proposal" in theirs


def test_without_a_target_it_says_so() -> None:
    case = changed(target_kg=None)
    assert row(case, TARGET)["target"] == "none is set"
    own, theirs = (said(case, TARGET, one) for one in Audience)
    assert "No target is set. Enter the saving that is promised." in own
    assert "No target is set." in theirs
    assert "Enter" not in theirs


def test_the_worth_beside_that_by_the_vehicle() -> None:
    table = sections(demo_case())[VEHICLE].blocks[0]
    assert isinstance(table, Table)
    rows = {one[0]: tuple(map(plain_spaces, one[1:])) for one in table.rows}
    assert rows["entered"][0] == "3.00 EUR/kg (1.00 to 6.00)"
    assert "light delivery van" in rows["entered"][1]
    maker = rows["by the vehicle, for the maker"]
    assert maker[0] == "2.19 EUR/kg (1.03 to 5.28)"
    assert "range kept at 260 km" in maker[1]
    driver = rows["for the driver: another pocket, never added"]
    assert driver[0] == "2.90 EUR/kg (1.93 to 4.34)"


def test_worths_far_apart_are_said_to_both_and_the_remedy_to_us() -> None:
    case = changed(worth_likely_per_kg=9.0, worth_high_per_kg=12.0)
    own, theirs = (said(case, VEHICLE, one) for one in Audience)
    assert "4.1 times above what the vehicle supports" in own
    assert "4.1 times above what the vehicle supports" in theirs
    assert "Write down why" in own
    assert "Write down why" not in theirs


def test_with_the_battery_kept_range_is_gained() -> None:
    text = said(changed(sizing=Sizing.BATTERY_KEPT), VEHICLE)
    assert "gain of range, the battery kept | 0.15 % (0.04 to 0.28)" in text
    assert "consumption of 24.0 kWh/100 km" in text


def test_where_nothing_can_be_valued_a_sentence_says_why() -> None:
    case = changed(volumes=(0, 0))
    own, theirs = (said(case, PROGRAMME, one) for one in Audience)
    assert "Every year has a volume of zero" in own
    assert "Every year has a volume of zero" in theirs
    assert "Enter packs" in own
    assert "Enter packs" not in theirs
    assert "tools have no share in a pack" in said(case, PRICE)
    assert PRICE not in sections(case, Audience.CUSTOMER)


def test_what_is_valued_without_cost_has_no_cost_in_it() -> None:
    case = changed(valued_mass=ValuedMass.TARGET)
    assert isinstance(case.price, Price)
    assert math.isnan(case.price.cost)
    assert "our cost" not in row(case, PRICE)
