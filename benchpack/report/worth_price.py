"""The price ladder: from the old parts to what the new ones may cost, and back."""

from __future__ import annotations

import math

import numpy as np

from benchpack.errors import Problem
from benchpack.report.chart_specs import StepKind, WaterfallSpec
from benchpack.report.chart_words import reason_text
from benchpack.report.display import Display
from benchpack.report.worth_figures import Shown, emptied, lacking_words, saving_words
from benchpack.report.worth_money import MoneyScale, span_text
from benchpack.report.worth_shares import parts_texts
from benchpack.results.explained_price import price_figure
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_price import Price
from benchpack.units.formatting import UNKNOWN, format_share

_BY_WORTH = "The range is that of the worth, all else likely."
_GAIN = "customer gain"
_NO_ROOM = "no price left"
NONE = "none"
"""In place of a price that would have to lie below zero."""
NO_PRICE = "No price leaves the saving that is asked for."
"""Why the headroom is none."""
SAVING_OUT_OF_REACH = "the saving is out of reach"
"""What that means, where there is little room."""

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
        (_even_name(found), "sum", found.even_price),
    ]
    if asked > 0:
        steps.append(("saving asked for", "step", -asked))
        name = "headroom" if found.headroom >= 0 else _NO_ROOM
        steps.append((name, "sum", found.headroom))
    if math.isfinite(found.given_price):
        steps.append(("price given", "sum", found.given_price))
    return steps


def _even_name(found: Price) -> str:
    return "customer is even" if found.even_price >= 0 else _NO_ROOM


def _finding(found: Price, display: Display) -> str:
    if found.even_price < 0:
        return "No price of the new parts leaves the customer even"
    if found.headroom < 0:
        return "No price of the new parts leaves the customer the saving asked for"
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
        gain, part = found.whole_gain, found.customer_part
        whole, customer, ours = parts_texts(gain, part, display)
        said.append(
            f"Over our cost {whole} a pack are to be shared: {customer} for the "
            f"customer, {ours} for us."
        )
    if math.isfinite(found.given_price):
        said.append(_given_words(found, display))
    if case.saving.note is not None:
        said.append(case.saving.note.what)
    said.append(lacking_words(case))
    return " ".join(said).rstrip()


def _given_words(found: Price, display: Display) -> str:
    """Say where the price that is given lies on the ladder."""
    at, gain = display.money_text(found.given_price), found.customer_gain
    if abs(gain) < 0.5:
        return f"At the price given, {at}, the customer is just even."
    apart = display.money_text(abs(gain))
    if gain > 0:
        return f"The price given, {at}, is {apart} below what leaves the customer even."
    return f"The price given, {at}, is {apart} above what leaves the customer even."


def headroom_shown(case: WorthCase) -> tuple[Shown, Shown]:
    """Give the price headroom per pack, and per kilogram of new parts."""
    display, found = Display(case.study), case.price
    one = ("headroom", "Price headroom")
    other = ("headroom per kg", f"Per {display.mass_unit} of new parts")
    if isinstance(found, Problem):
        why = reason_text(found)
        return Shown(*one, why=why), Shown(*other, why=why)
    asked = display.money_text(case.study.required_saving)
    why = (
        f"What the new parts may cost a pack at most: the customer then keeps {asked}."
    )
    if found.headroom < 0:
        short = display.money_text(-found.headroom)
        why = f"{NO_PRICE} For nothing the customer is {short} short of it."
    why_per_kg = "Headroom over the mass of the new parts."
    if not math.isfinite(found.per_kg):
        why_per_kg = (
            "It is not known what the new parts weigh: only a proposal says it."
        )
    per_kg = NONE if found.per_kg < 0 else display.worth_text(found.per_kg)
    return (
        Shown(
            *one,
            price_text(found.headroom, display),
            _span(case, "headroom"),
            f"{why} {_BY_WORTH}",
        ),
        Shown(*other, per_kg, why=why_per_kg),
    )


def price_text(price: float, display: Display) -> str:
    """Write a price; there is none below zero, and words say so.

    Parameters
    ----------
    price : float
        The price per pack.
    display : Display
        How numbers are shown.
    """
    return NONE if price < 0 else display.money_text(price)


def price_figures(case: WorthCase) -> tuple[Shown, ...]:
    """Give the figures beside the price ladder, solved both ways.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    display, study, found = Display(case.study), case.study, case.price
    share = format_share(study.customer_share, style=display.style)
    heads = (
        ("even price", "Customer is even at"),
        ("shared price", f"Price that leaves {share} of the gain"),
    )
    given = "Customer's gain"
    headroom, per_kg = headroom_shown(case)
    if isinstance(found, Problem):
        why = reason_text(found)
        even, shared = (Shown(*head, why=why) for head in heads)
        gain = Shown(_GAIN, given, why=why)
        return even, headroom, per_kg, shared, gain
    no_cost = "What it costs to make the new parts is not known; only a proposal says."
    even = Shown(
        *heads[0],
        price_text(found.even_price, display),
        _span(case, "even price"),
        f"Dearer, and the customer loses. {_BY_WORTH}"
        if found.even_price >= 0
        else f"Even for nothing the customer would lose. {_BY_WORTH}",
    )
    is_shared = math.isfinite(found.shared_price)
    shared = Shown(
        *heads[1],
        price_text(found.shared_price, display),
        _span(case, "shared price"),
        "The customer keeps that share of the whole gain, we the rest."
        if is_shared
        else no_cost,
    )
    return even, headroom, per_kg, shared, _given(case, found, given)


def _given(case: WorthCase, found: Price, label: str) -> Shown:
    display = Display(case.study)
    if math.isnan(found.given_price):
        why = "No price is given. Enter the price of the new parts."
        return Shown(_GAIN, label, why=why)
    at = display.money_text(found.given_price)
    left = display.money_text(found.supplier_margin)
    why = "" if left == UNKNOWN else f"{left} a pack stay with us over our cost."
    gain = display.money_text(found.customer_gain)
    span = _span(case, _GAIN)
    return Shown(_GAIN, f"{label} at {at}", gain, span, why)


def _span(case: WorthCase, key: str) -> str:
    """Write what a figure of the price is at the ends of the worth."""
    figure, display = price_figure(case, key), Display(case.study)
    if math.isnan(figure.low):
        return ""
    unit = f"\u00a0{display.currency}"
    write = display.money_text
    texts = [
        write(end) if key == _GAIN else price_text(end, display)
        for end in (figure.low, figure.high)
    ]
    return span_text(*(text.removesuffix(unit) for text in texts))
