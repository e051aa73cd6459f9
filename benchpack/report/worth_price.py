"""The price ladder: from the old parts to what the new ones may cost, and back."""

from __future__ import annotations

import math

import numpy as np

from benchpack.errors import Problem
from benchpack.report.chart_specs import StepKind, WaterfallSpec
from benchpack.report.display import Display
from benchpack.report.worth_figures import (
    Shown,
    emptied,
    lacking_words,
    reason_text,
    saving_words,
)
from benchpack.report.worth_money import MoneyScale, span_text
from benchpack.results.explained_price import price_figure
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_price import Price
from benchpack.units.formatting import UNKNOWN, format_share

_BY_WORTH = "The range is that of the worth, all else likely."

_Step = tuple[str, StepKind, float]


def price_spec(case: WorthCase) -> WaterfallSpec:
    """Give the ladder from the cost of the old parts to the price headroom.

    Parameters
    ----------
    case : WorthCase
        The case.

    Returns
    -------
    WaterfallSpec
        Our cost to make the new parts is its target line, where it is known; empty,
        with the reason, where there is no price.
    """
    found, study = case.price, case.study
    if isinstance(found, Problem):
        return emptied(WaterfallSpec, found)
    display = Display(study)
    steps = _steps(found, study.required_saving)
    has_cost = math.isfinite(found.cost)
    return WaterfallSpec(
        title=_finding(found, display),
        note=_note(case, found, display),
        explain_key="headroom",
        decimal_mark=study.decimal_mark,
        names=tuple(name for name, _, _ in steps),
        kinds=tuple(kind for _, kind, _ in steps),
        values=np.array([value for _, _, value in steps]),
        axis_label=f"Price of the new parts per pack [{study.currency}]",
        format_value=MoneyScale(1.0, "", display.style).number,
        format_full=display.money_text,
        target=found.cost if has_cost else None,
        target_text=f"our cost {display.money_text(found.cost)}" if has_cost else "",
    )


def _steps(found: Price, asked: float) -> list[_Step]:
    steps: list[_Step] = [
        ("old parts", "sum", found.old_cost),
        ("worth of the mass", "step", found.worth),
        ("joining that goes", "step", found.joining_removed),
        ("tools and validation", "step", -found.once_per_pack),
        ("customer is even", "sum", found.even_price),
    ]
    if asked > 0:
        steps.append(("saving asked for", "step", -asked))
        steps.append(("headroom", "sum", found.headroom))
    return steps


def _finding(found: Price, display: Display) -> str:
    if found.headroom <= 0:
        return "No price of the new parts leaves the customer what is asked for"
    most = f"The new parts may cost {display.money_text(found.headroom)} a pack"
    room = found.headroom - found.cost
    if math.isnan(room):
        return most
    apart = display.money_text(abs(room))
    return f"{most}, {apart} {'above' if room >= 0 else 'below'} our cost"


def _note(case: WorthCase, found: Price, display: Display) -> str:
    said = [f"Likely figures. {saving_words(case)}"]
    given = case.study.old_part_price is not None
    said.append(f"Old parts: {'entered' if given else 'reckoned from the proposal'}.")
    if found.whole_gain < 0:
        short = display.money_text(-found.whole_gain)
        said.append(
            f"Our cost is {short} above what leaves the customer even, so there is "
            "nothing to share."
        )
    elif math.isfinite(found.whole_gain):
        whole = display.money_text(found.whole_gain)
        customer = display.money_text(found.customer_part)
        ours = display.money_text(found.supplier_part)
        said.append(
            f"Over our cost {whole} a pack are to be shared: {customer} for the "
            f"customer, {ours} for us."
        )
    if case.saving.note is not None:
        said.append(case.saving.note.what)
    said.append(lacking_words(case))
    return " ".join(said).rstrip()


def headroom_shown(case: WorthCase) -> tuple[Shown, Shown]:
    """Give the price headroom per pack, and per kilogram of new parts."""
    display, found = Display(case.study), case.price
    one = ("headroom", "Price headroom")
    other = ("headroom per kg", f"Per {display.mass_unit} of new parts")
    if isinstance(found, Problem):
        why = reason_text(found)
        return Shown(*one, why=why), Shown(*other, why=why)
    asked = display.money_text(case.study.required_saving)
    return (
        Shown(
            *one,
            display.money_text(found.headroom),
            _span(case, "headroom"),
            "What the new parts may cost a pack at most: the customer then keeps "
            f"{asked}. {_BY_WORTH}",
        ),
        Shown(
            *other,
            display.worth_text(found.per_kg),
            why="Headroom over the mass of the new parts."
            if math.isfinite(found.per_kg)
            else "It is not known what the new parts weigh: only a proposal says it.",
        ),
    )


def price_figures(case: WorthCase) -> tuple[Shown, ...]:
    """Give the figures beside the price ladder, solved both ways.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    display, study, found = Display(case.study), case.study, case.price
    asked = display.money_text(study.required_saving)
    share = format_share(study.customer_share, style=display.style)
    heads = (
        ("even price", "Customer is even at"),
        ("shared price", f"Price that leaves {share} of the gain"),
        (
            "price at saving",
            f"Price that leaves {asked}"
            if study.required_saving > 0
            else "Price if nothing is asked for",
        ),
    )
    given = "Customer's gain"
    headroom, per_kg = headroom_shown(case)
    if isinstance(found, Problem):
        why = reason_text(found)
        even, shared, asked_for = (Shown(*head, why=why) for head in heads)
        gain = Shown("customer gain", given, why=why)
        return even, headroom, per_kg, shared, asked_for, gain
    no_cost = "What it costs to make the new parts is not known; only a proposal says."
    even = Shown(
        *heads[0],
        display.money_text(found.even_price),
        _span(case, "even price"),
        f"Dearer, and the customer loses. {_BY_WORTH}",
    )
    is_shared = math.isfinite(found.shared_price)
    shared = Shown(
        *heads[1],
        display.money_text(found.shared_price),
        _span(case, "shared price"),
        "The customer keeps that share of the whole gain, we the rest."
        if is_shared
        else no_cost,
    )
    asked_for = Shown(
        *heads[2],
        display.money_text(found.price_at_saving),
        _span(case, "price at saving"),
        f"Never below zero. {_BY_WORTH}",
    )
    return even, headroom, per_kg, shared, asked_for, _given(case, found, given)


def _given(case: WorthCase, found: Price, label: str) -> Shown:
    display = Display(case.study)
    if math.isnan(found.given_price):
        why = "No price is given. Enter the price of the new parts."
        return Shown("customer gain", label, why=why)
    at = display.money_text(found.given_price)
    left = display.money_text(found.supplier_margin)
    why = "" if left == UNKNOWN else f"{left} a pack stay with us over our cost."
    gain = display.money_text(found.customer_gain)
    span = _span(case, "customer gain")
    return Shown("customer gain", f"{label} at {at}", gain, span, why)


def _span(case: WorthCase, key: str) -> str:
    """Write what a figure of the price is at the ends of the worth."""
    figure, display = price_figure(case, key), Display(case.study)
    if math.isnan(figure.low):
        return ""
    unit = f"\u00a0{display.currency}"
    ends = (figure.low, figure.high)
    return span_text(*(display.money_text(end).removesuffix(unit) for end in ends))
