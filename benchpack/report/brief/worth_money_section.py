"""What a brief says of the money: the programme, and what the new part may cost."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import replace

from benchpack.errors import Problem
from benchpack.report.brief.blocks import (
    Audience,
    Block,
    ChartBlock,
    Column,
    Paragraph,
    Table,
)
from benchpack.report.chart_words import reason_text
from benchpack.report.display import Display
from benchpack.report.worth_figures import (
    lacking_words,
    programme_figures,
    programme_shown,
    years_text,
)
from benchpack.report.worth_price import price_figures
from benchpack.report.worth_programme import programme_spec
from benchpack.results.proposal_effect import NONE
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_price import Price
from benchpack.results.worth_programme import Programme, programme_of
from benchpack.units.formatting import format_number

_HEIGHT = 0.3
_MOST_VOLUMES = 10


def row_of_figures(figures: Iterable[tuple[str, str]]) -> Table:
    """Give some figures as one row below their names, which takes little room.

    Parameters
    ----------
    figures : iterable of (str, str)
        Names, and figures with their units.
    """
    heads, values = zip(*figures, strict=True)
    columns = tuple(Column(head[:1].lower() + head[1:]) for head in heads)
    return Table("", columns, (tuple(values),))


def programme_blocks(case: WorthCase, audience: Audience) -> tuple[Block, ...]:
    """Give what the saving is worth over the programme.

    Parameters
    ----------
    case : WorthCase
        The case.
    audience : Audience
        A customer sees the worth of the mass before any cost.
    """
    found = case.programme
    if isinstance(found, Problem):
        # What is to be done about it is an internal remark.
        is_internal = audience is Audience.INTERNAL
        return (Paragraph(reason_text(found) if is_internal else found.what, "note"),)
    if audience is Audience.CUSTOMER:
        return _programme_of_customer(case, found)
    shown = (programme_shown(case), *programme_figures(case))
    row = row_of_figures((one.label, one.whole) for one in shown)
    said = f"{_plan(case, found)} {lacking_words(case)}".rstrip()
    return (row, Paragraph(said, "note"), _chart(case))


def _chart(case: WorthCase) -> Block:
    """Give the programme by year, with what it shows in words."""
    spec = programme_spec(case)
    years = "; ".join(
        f"{year} {spec.format_full(value)}, {spec.format_full(so_far)} so far"
        for year, value, so_far in zip(
            spec.years, spec.likely.tolist(), spec.cumulative.tolist(), strict=True
        )
    )
    return ChartBlock(spec, _HEIGHT, f"{spec.title}. {years}. {spec.note}")


def _programme_of_customer(case: WorthCase, found: Programme) -> tuple[Block, ...]:
    saving = replace(
        case.saving,
        part_cost=NONE,
        joining_cost=NONE,
        add_back_cost=NONE,
        tooling=NONE,
        validation_cost=NONE,
    )
    worth = programme_of(case.study, saving, found.volumes)
    shown = programme_shown(replace(case, saving=saving, programme=worth))
    said = f"Worth of the mass saved, before any cost: {shown.whole}."
    ends = (
        "The range has all that is worse at once, or all that is better; the interest "
        "stays."
    )
    return (Paragraph(f"{said} {_plan(case, found)} {ends}"),)


def _plan(case: WorthCase, found: Programme) -> str:
    """Say volumes, years, interest and spread."""
    study, display = case.study, Display(case.study)
    packs = [format_number(one, style=display.style) for one in found.volumes.tolist()]
    said = f"{format_number(found.packs, style=display.style)} packs in all"
    if study.volumes and len(packs) <= _MOST_VOLUMES:
        said += f", by year {', '.join(packs)}"
    elif not study.volumes:
        years = years_text(study.programme_years, display)
        said += f", {packs[0]} a year over {years}" if len(packs) > 1 else ""
    if found.first_year is not None:
        said += f", the first in {found.first_year}"
    spread = ""
    if study.volume_spread > 0:
        spread = f"; volumes may be off by {display.share_text(study.volume_spread)}"
    return (
        f"{said}. Present value at {display.share_text(study.discount_rate)} a year"
        f"{spread}."
    )


def price_blocks(case: WorthCase, audience: Audience) -> tuple[Block, ...]:
    """Give what the new part may cost, and who keeps what.

    Parameters
    ----------
    case : WorthCase
        The case.
    audience : Audience
        A customer sees a price that is given and what they gain at it, or nothing.
    """
    found, display = case.price, Display(case.study)
    if audience is Audience.CUSTOMER:
        return _price_of_customer(case)
    if isinstance(found, Problem):
        return (Paragraph(reason_text(found), "note"),)
    even, headroom, per_kg, shared, given = price_figures(case)
    figures = [(one.label, one.whole) for one in (even, headroom, per_kg)]
    if math.isfinite(found.cost):
        money = display.money_text
        figures += [
            ("our cost", money(found.cost)),
            ("whole gain", money(found.whole_gain)),
            ("customer's part", money(found.customer_part)),
            ("our part", money(found.supplier_part)),
            (shared.label, shared.whole),
        ]
    said = _ladder(case, found)
    if case.study.required_saving > 0:
        asked = display.money_text(case.study.required_saving)
        said += f" At the headroom the customer keeps {asked}."
    if math.isfinite(found.given_price):
        said += f" {given.label}: {given.whole}. {given.why}"
    said += f" {lacking_words(case)}"
    return (row_of_figures(figures), Paragraph(said.rstrip(), "note"))


def _ladder(case: WorthCase, found: Price) -> str:
    """Say what the price at which the customer is even is made of."""
    money = Display(case.study).money_text
    given = case.study.old_part_price is not None
    old = "entered" if given else "as reckoned"
    return (
        f"Likely figures per pack: old parts {money(found.old_cost)} ({old}), worth of "
        f"the mass {money(found.worth)}, joining that goes "
        f"{money(found.joining_removed)}, less tools and validation "
        f"{money(found.once_per_pack)}."
    )


def _price_of_customer(case: WorthCase) -> tuple[Block, ...]:
    found = case.price
    if isinstance(found, Problem) or not math.isfinite(found.given_price):
        return ()
    display = Display(case.study)
    word = "gain" if found.customer_gain >= 0 else "lose"
    price, amount, old = map(
        display.money_text,
        (found.given_price, abs(found.customer_gain), found.old_cost),
    )
    worth = display.worth_text(case.study.worth_likely_per_kg)
    said = (
        f"At a price of {price} a pack for the new parts you {word} {amount}, by "
        f"likely figures. Counted are the mass saved at {worth}, the old parts at "
        f"{old} a pack, joining that goes, and the share of what is spent once."
    )
    return (Paragraph(said),)
