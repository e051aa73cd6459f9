"""What the new part may cost, and who keeps what of the gain."""

from __future__ import annotations

import math
from dataclasses import dataclass

from benchpack.calc.headroom import (
    customer_gain,
    headroom_per_kg,
    price_at_gain,
    price_headroom,
    split_gain,
)
from benchpack.errors import Problem
from benchpack.model.study import Study
from benchpack.model.worth_words import ValuedMass
from benchpack.results.change_supply import Supply, per_pack
from benchpack.results.worth_saving import ValuedSaving


@dataclass(frozen=True, slots=True)
class Price:
    """What the new part may cost, per pack; NaN where it cannot be said.

    Parameters
    ----------
    worth, joining_removed, old_cost : float
        Likely worth of the mass, joining that goes, cost of the parts that go.
    once_per_pack : float
        Tools and validation per pack, by capital recovery.
    even_price : float
        Price at which the customer is even.
    headroom : float
        Price at which the customer keeps the saving that is asked for.
    per_kg : float
        The headroom per kilogram of new parts.
    new_kg : float
        Mass of what is made new.
    cost : float
        What it costs to make the new parts and add-backs; only a proposal says it, and
        where the old price is given, what making the old parts costs stays as reckoned.
    whole_gain, customer_part, supplier_part : float
        The whole gain, and its parts by the share that the customer keeps.
    shared_price : float
        Price that shares the gain so.
    given_price, customer_gain, supplier_margin : float
        A price that is given, what the customer then gains, what is left over cost.
    price_at_saving : float
        Price at which the customer keeps just the saving asked for, not below zero.
    """

    worth: float
    joining_removed: float
    old_cost: float
    once_per_pack: float
    even_price: float
    headroom: float
    per_kg: float
    new_kg: float
    cost: float
    whole_gain: float
    customer_part: float
    supplier_part: float
    shared_price: float
    given_price: float
    customer_gain: float
    supplier_margin: float
    price_at_saving: float


def price_of(study: Study, saving: ValuedSaving, supply: Supply) -> Price | Problem:
    """Give what the new parts of a proposal may cost.

    Parameters
    ----------
    study : Study
        Worth, saving asked for, price, share of the customer.
    saving : ValuedSaving
        What is valued.
    supply : Supply
        Volume, years and interest.

    Returns
    -------
    Price or Problem
        Why there is none, as a sentence.
    """
    if saving.saved_kg is None:
        return Problem(
            "There is no saving, and so no price headroom.",
            "Set a target, or add changes to a proposal.",
        )
    once = per_pack(saving.spend, supply)
    if once is None and study.volumes:
        return Problem(
            "Every year has a volume of zero, so tools have no share in a pack.",
            "Enter packs for at least one year.",
            column="volumes",
        )
    if once is None:
        return Problem(
            "No yearly volume is known, so tools have no share in a pack.",
            "Enter packs a year, or volumes by year.",
            column="yearly volume",
        )
    old = saving.old_cost
    if study.old_part_price is not None:
        old = study.old_part_price
    if math.isnan(old):
        return Problem(
            "It is not known what the parts that go cost today.",
            "Enter the price of the old parts.",
            column="old part price",
        )
    worth, saved = study.worth_likely_per_kg, saving.saved_kg.likely
    removed = -saving.joining_cost.likely
    figures = {
        "joining_removed": removed,
        "old_part_cost": old,
        "tooling_per_pack": once.likely,
    }
    even = float(price_headroom(worth, saved, **figures))
    asked = study.required_saving
    headroom = float(price_headroom(worth, saved, **figures, required_saving=asked))
    cost = math.nan
    if saving.valued is ValuedMass.PROPOSAL:
        # A price that is given is what is paid for the old parts, not their making.
        made = old if math.isnan(saving.old_cost) else saving.old_cost
        cost = made + saving.part_cost.likely + saving.add_back_cost.likely
    split = split_gain(even, cost, customer_share=study.customer_share)
    given = math.nan if study.part_price is None else study.part_price
    return Price(
        worth=worth * saved,
        joining_removed=removed,
        old_cost=old,
        once_per_pack=once.likely,
        even_price=even,
        headroom=headroom,
        per_kg=float(headroom_per_kg(headroom, saving.new_kg)),
        new_kg=saving.new_kg,
        cost=cost,
        whole_gain=float(split.whole),
        customer_part=float(split.customer),
        supplier_part=float(split.supplier),
        shared_price=float(split.price),
        given_price=given,
        customer_gain=float(customer_gain(even, given)),
        supplier_margin=given - cost,
        price_at_saving=float(price_at_gain(even, asked)),
    )
