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
    ranged_inputs,
    saving_inputs,
    worth_inputs,
)
from benchpack.results.explained_money import (
    RECOVERY,
    counted_source,
    recovery_inputs,
    spend_inputs,
)
from benchpack.results.explained_programme import with_range
from benchpack.results.figure import PRACTICE, Figure, Input
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_price import Price

WORTH_ENDS = "the worth at its low and at its high end, all else likely"
"""What the ends of a figure of the price are."""
_EVEN_SUM = "w dm + joining that goes + old parts - I CRF / V"
_EVEN = f"H_0 = {_EVEN_SUM}, {RECOVERY}"


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
    new_kg = case.saving.new_kg
    headroom = _by_worth_inputs(
        case,
        "H, headroom per pack",
        math.nan if price is None else price.headroom,
        source="H_0 - saving asked for",
    )
    figure = Figure(
        key="headroom per kg",
        label="What a kilogram of the new parts may cost",
        value=math.nan,
        unit=f"{case.study.currency}/kg",
        formula="H / m_new",
        inputs=(
            *headroom,
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
            *_even_input(case, even),
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
        formula="p = H_0 - s (H_0 - c), c = old parts + parts + add-backs",
        inputs=(
            *_even_input(case, even),
            *assumed(study, "customer_share", "s, customer's share of the gain"),
            Input(
                "c, cost of making the new parts",
                cost,
                study.currency,
                "old parts + parts + add-backs",
            ),
            *_cost_inputs(case),
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


def _by_worth(
    case: WorthCase, figure: Figure, value: float, *, scale: float = 1.0
) -> Figure:
    """Give a figure its value and what it is at the ends of the worth."""
    meaning = replace(figure, range_meaning=WORTH_ENDS)
    return with_range(meaning, _at_ends(case, value, scale=scale))


def _at_ends(case: WorthCase, value: float, *, scale: float = 1.0) -> Range:
    """Give a value, and what it is at the ends of the worth."""
    saved = case.saving.saved_kg
    per_worth = 0.0 if saved is None else scale * saved.likely
    likely = case.study.worth_likely_per_kg
    ends = [value + per_worth * (worth - likely) for worth in case.study.worth_per_kg]
    low, _, high = sorted(ends)
    return Range(min(low, value), value, max(high, value))


def _by_worth_inputs(
    case: WorthCase, label: str, value: float, *, source: str
) -> tuple[Input, ...]:
    """Give a price as an input, with what it is at the ends of the worth."""
    money = case.study.currency
    if math.isnan(value):
        return (Input(label, value, money, source),)
    return ranged_inputs(label, _at_ends(case, value), unit=money, source=source)


def _even_input(case: WorthCase, even: float) -> tuple[Input, ...]:
    label = "H_0, price at which the customer is even"
    return _by_worth_inputs(case, label, even, source=_EVEN_SUM)


def _cost_inputs(case: WorthCase) -> tuple[Input, ...]:
    """Give what the cost of making the new parts is made of."""
    saving, study = case.saving, case.study
    money, whence = study.currency, counted_source(case)
    made, made_by = saving.old_cost, "by material and process"
    if math.isnan(made):
        made_by = "making them is not known; price given in the study"
        given = study.old_part_price
        made = math.nan if given is None else given
    return (
        Input("old parts", made, money, made_by),
        Input("parts", saving.part_cost.likely, money, whence),
        Input("add-backs", saving.add_back_cost.likely, money, whence),
    )


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
            counted_source(case),
        ),
        Input(
            "old parts",
            math.nan if old is None else old,
            money,
            "price given in the study" if given else "by material and process",
        ),
        Input("I CRF / V, spent once per pack", once, money, "capital recovery"),
        *spend_inputs(case),
        *recovery_inputs(study, supply),
    )


_BUILDERS: Mapping[str, Callable[[WorthCase, Price | None], Figure]] = {
    "even price": _even,
    "headroom": _headroom,
    "headroom per kg": _per_kg,
    "customer gain": _customer_gain,
    "shared price": _shared,
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
