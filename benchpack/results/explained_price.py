"""Where the figures of a price come from: what the new parts may cost, who gains."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace

from benchpack.errors import Problem
from benchpack.model.ranges import Range
from benchpack.results.explained_assumed import (
    OF_STUDY,
    assumed,
    money_inputs,
    saving_inputs,
    spend_inputs,
    worth_inputs,
)
from benchpack.results.explained_programme import with_range
from benchpack.results.explained_worth import PRACTICE
from benchpack.results.figure import Figure, Input
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_price import Price

_WORTH_ENDS = "the worth at its low and at its high end, all else likely"
_EVEN = "H_0 = w dm + joining that goes + old parts - I CRF / V"


def _even(case: WorthCase, price: Price | None) -> Figure:
    figure = Figure(
        key="even price",
        label="Price of the new parts per pack at which the customer is even",
        value=math.nan,
        unit=case.study.currency,
        formula=_EVEN,
        inputs=_even_inputs(case, price),
        source=PRACTICE,
    )
    return figure if price is None else _by_worth(case, figure, price.even_price)


def _headroom(case: WorthCase, price: Price | None) -> Figure:
    figure = Figure(
        key="headroom",
        label="What the new parts may cost per pack",
        value=math.nan,
        unit=case.study.currency,
        formula="H = H_0 - saving asked for; " + _EVEN,
        inputs=(*_even_inputs(case, price), _asked(case)),
        source=PRACTICE,
    )
    return figure if price is None else _by_worth(case, figure, price.headroom)


def _per_kg(case: WorthCase, price: Price | None) -> Figure:
    headroom = math.nan if price is None else price.headroom
    new_kg = case.saving.new_kg
    figure = Figure(
        key="headroom per kg",
        label="What a kilogram of the new parts may cost",
        value=math.nan,
        unit=f"{case.study.currency}/kg",
        formula="H / m_new",
        inputs=(
            Input(
                "H, headroom per pack", headroom, case.study.currency, "H_0 - saving"
            ),
            Input("m_new, mass of what is made new", new_kg, "kg", "the ledger"),
        ),
        source=PRACTICE,
    )
    if price is None:
        return figure
    if math.isnan(price.per_kg):
        what = "Nothing is made new, so there is no kilogram of it to pay for."
        return replace(figure, missing=what)
    return _by_worth(case, figure, price.per_kg, scale=1.0 / new_kg)


def _customer_gain(case: WorthCase, price: Price | None) -> Figure:
    even = math.nan if price is None else price.even_price
    figure = Figure(
        key="customer gain",
        label="What the customer gains per pack at the price given",
        value=math.nan,
        unit=case.study.currency,
        formula="H_0 - p",
        inputs=(
            _even_input(case, even),
            *assumed(
                case.study,
                "part_price",
                "p, price of the new parts",
                unit=case.study.currency,
            ),
        ),
        source=PRACTICE,
    )
    if price is None:
        return figure
    if math.isnan(price.customer_gain):
        return replace(figure, missing="No price of the new parts is given.")
    return _by_worth(case, figure, price.customer_gain)


def _shared(case: WorthCase, price: Price | None) -> Figure:
    study = case.study
    even, cost = (
        (math.nan, math.nan) if price is None else (price.even_price, price.cost)
    )
    figure = Figure(
        key="shared price",
        label="Price of the new parts that shares the gain",
        value=math.nan,
        unit=study.currency,
        formula="p = H_0 - s (H_0 - c)",
        inputs=(
            _even_input(case, even),
            Input(
                "c, cost of making the new parts",
                cost,
                study.currency,
                "making the old parts + parts + add-backs",
            ),
            *assumed(study, "customer_share", "s, customer's share of the gain"),
            *money_inputs(case),
        ),
        source=f"{PRACTICE}; of a loss each bears the same share",
    )
    if price is None:
        return figure
    if math.isnan(price.shared_price):
        what = "Only a proposal says what the new parts cost to make."
        return replace(figure, missing=what)
    kept = 1.0 - study.customer_share
    return _by_worth(case, figure, price.shared_price, scale=kept)


def _at_saving(case: WorthCase, price: Price | None) -> Figure:
    even = math.nan if price is None else price.even_price
    figure = Figure(
        key="price at saving",
        label="Price at which the customer keeps just the saving asked for",
        value=math.nan,
        unit=case.study.currency,
        formula="H_0 - saving asked for, not below zero",
        inputs=(_even_input(case, even), _asked(case)),
        source=PRACTICE,
    )
    if price is None:
        return figure
    if math.isnan(price.price_at_saving):
        what = "No price leaves the customer the saving asked for."
        return replace(figure, missing=what)
    return _by_worth(case, figure, price.price_at_saving)


def _by_worth(
    case: WorthCase, figure: Figure, value: float, *, scale: float = 1.0
) -> Figure:
    """Give a figure its value and what it is at the ends of the worth."""
    saved = case.saving.saved_kg
    per_worth = 0.0 if saved is None else scale * saved.likely
    likely = case.study.worth_likely_per_kg
    ends = [value + per_worth * (worth - likely) for worth in case.study.worth_per_kg]
    low, _, high = sorted(ends)
    meaning = replace(figure, range_meaning=_WORTH_ENDS)
    return with_range(meaning, Range(min(low, value), value, max(high, value)))


def _even_input(case: WorthCase, even: float) -> Input:
    return Input("H_0, price at which the customer is even", even, case.study.currency)


def _asked(case: WorthCase) -> Input:
    study = case.study
    return Input("saving asked for", study.required_saving, study.currency, OF_STUDY)


def _even_inputs(case: WorthCase, price: Price | None) -> tuple[Input, ...]:
    study, saving, supply = case.study, case.saving, case.supply
    money = study.currency
    given = study.old_part_price is not None
    old = study.old_part_price if given else saving.old_cost
    once = math.nan if price is None else price.once_per_pack
    return (
        *worth_inputs(study),
        *saving_inputs(case),
        Input(
            "joining that goes",
            # Nothing that goes is nothing, not its negative.
            0.0 - saving.joining_cost.likely,
            money,
            "the ledger",
        ),
        Input(
            "old parts",
            math.nan if old is None else old,
            money,
            "price given in the study" if given else "by material and process",
        ),
        Input("I CRF / V, spent once per pack", once, money, "capital recovery"),
        *spend_inputs(case),
        Input(
            "V, packs a year",
            supply.yearly_volume,
            "",
            "even volume of the same present value" if study.volumes else "plan",
        ),
        Input("n, years of the programme", supply.years, "", OF_STUDY),
        *assumed(study, "discount_rate", "i, interest a year"),
    )


_BUILDERS: Mapping[str, Callable[[WorthCase, Price | None], Figure]] = {
    "even price": _even,
    "headroom": _headroom,
    "headroom per kg": _per_kg,
    "customer gain": _customer_gain,
    "shared price": _shared,
    "price at saving": _at_saving,
}

PRICE_KEYS = tuple(_BUILDERS)
"""Keys that `price_figure` answers."""


def price_figure(case: WorthCase, key: str) -> Figure:
    """Say where a figure of the price comes from.

    Parameters
    ----------
    case : WorthCase
        The case.
    key : str
        One of `PRICE_KEYS`.
    """
    found = case.price
    if isinstance(found, Problem):
        return replace(_BUILDERS[key](case, None), missing=found.what)
    return _BUILDERS[key](case, found)
