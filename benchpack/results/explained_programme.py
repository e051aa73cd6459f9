"""Where the figures of a programme come from: value, payback, break-even, return."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace

from benchpack.calc.worth import programme_npv
from benchpack.errors import Problem
from benchpack.model.ranges import Range
from benchpack.results.change_supply import planned_volumes, subject_volume_of
from benchpack.results.explained_assumed import (
    assumed,
    ranged_inputs,
    saving_inputs,
    worth_inputs,
)
from benchpack.results.explained_money import money_inputs, spend_inputs
from benchpack.results.figure import PRACTICE, Figure, Input
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_programme import (
    Programme,
    gain_of,
    is_paid_back,
    product,
    volume_ends,
    year_label,
)

ECONOMY = "textbooks of engineering economy (from memory)"
"""Source of what is reckoned over years."""
_NO_SAVING = "There is no saving to value."
_MOST_YEARS = 12


def with_range(figure: Figure, value: Range) -> Figure:
    """Give a figure its likely value and the ends of its range, none of no width.

    Parameters
    ----------
    figure : Figure
        The figure, with what a range of it means.
    value : Range
        Its value.
    """
    if value.width == 0:
        return replace(figure, value=value.likely, range_meaning="")
    return replace(figure, value=value.likely, low=value.low, high=value.high)


def _worth_per_pack(case: WorthCase) -> Figure:
    figure = Figure(
        key="worth per pack",
        label="Worth of the mass saved per pack",
        value=math.nan,
        unit=case.study.currency,
        formula="w dm",
        inputs=(*worth_inputs(case.study), *saving_inputs(case)),
        source="the person's own worth per kilogram; no cost is taken off",
        range_meaning="worth and saving at the ends that make it least, and greatest",
    )
    saved = case.saving.saved_kg
    if saved is None:
        return replace(figure, range_meaning="", missing=_NO_SAVING)
    return with_range(figure, product(Range(*case.study.worth_per_kg), saved))


def _gain_per_pack(case: WorthCase) -> Figure:
    figure = Figure(
        key="gain per pack",
        label="Gain per pack, costs per pack taken off",
        value=math.nan,
        unit=case.study.currency,
        formula="g = w dm - parts - joining - add-backs",
        inputs=(*worth_inputs(case.study), *saving_inputs(case), *money_inputs(case)),
        source=PRACTICE,
        range_meaning="low: w and dm at the ends that make w dm least, costs at their "
        "high ends, all at once; high the reverse",
    )
    gain = _gain(case)
    if gain is None:
        return replace(figure, range_meaning="", missing=_NO_SAVING)
    return with_range(figure, gain)


def _programme_value(case: WorthCase, programme: Programme | None) -> Figure:
    figure = Figure(
        key="programme value",
        label="Programme value (net present value)",
        value=math.nan,
        unit=case.study.currency,
        formula="NPV = sum over the years y of n_y g / (1 + i)^y - I",
        inputs=(*_plan(case), *_volume_ends(case)),
        source=f"{ECONOMY}; cash at the end of each year, I in year 0",
        range_meaning="low: g low, I high and each n_y times v low, so of the volumes "
        "what is worse; high: g high, I low, v high; the interest stays",
    )
    return figure if programme is None else with_range(figure, programme.npv)


def _payback(case: WorthCase, programme: Programme | None) -> Figure:
    figure = Figure(
        key="payback",
        label="Years until what is spent once is back, with interest",
        value=math.nan,
        unit="years",
        formula="first y at which the sum up to y of n_y g / (1 + i)^y is I",
        inputs=_plan(case),
        source=f"{ECONOMY}; within a year cash is taken to come in evenly",
    )
    if programme is None:
        return figure
    if not is_paid_back(programme):
        what = "What is spent once is not paid back within the programme."
        return replace(figure, missing=what)
    return replace(figure, value=programme.payback_years)


def _break_even(case: WorthCase, programme: Programme | None) -> Figure:
    figure = Figure(
        key="programme break-even",
        label="Packs a year, on average, from which the programme pays",
        value=math.nan,
        unit="",
        formula="mean of n_y x I / sum over the years y of n_y g / (1 + i)^y",
        inputs=_plan(case),
        source=f"{ECONOMY}; the plan keeps its shape from year to year",
    )
    if programme is None:
        return figure
    if math.isinf(programme.break_even_packs):
        return replace(figure, missing="It pays at no volume.")
    return replace(figure, value=programme.break_even_packs)


def _internal_rate(case: WorthCase, programme: Programme | None) -> Figure:
    figure = Figure(
        key="internal rate",
        label="Internal rate of return per year",
        value=math.nan,
        unit="%",
        formula="i at which the sum over the years y of n_y g / (1 + i)^y is I",
        inputs=_plan(case, with_interest=False),
        source=ECONOMY,
    )
    if programme is None:
        return figure
    if math.isnan(programme.internal_rate):
        return replace(figure, missing=_why_no_rate(programme))
    return replace(figure, value=100.0 * programme.internal_rate)


def _why_no_rate(programme: Programme) -> str:
    if programme.spend.likely == 0:
        return "Nothing is spent once, so there is no rate of return on it."
    if programme.gain_per_pack.likely <= 0:
        return "No pack brings anything back, so there is no rate of return."
    return "There is no single rate at which the programme is worth nothing."


def _plan(case: WorthCase, *, with_interest: bool = True) -> tuple[Input, ...]:
    """Give gain, volumes, interest and what is spent once."""
    money = case.study.currency
    whence = f"w dm - parts - joining - add-backs; valued: {case.saving.valued}"
    interest = assumed(case.study, "discount_rate", "i, interest a year")
    gain, label = _gain(case), "g, gain per pack"
    gains: tuple[Input, ...] = (Input(label, math.nan, money, whence),)
    if gain is not None:
        gains = ranged_inputs(label, gain, unit=money, source=whence)
    return (
        *gains,
        *volume_inputs(case),
        *(interest if with_interest else ()),
        *spend_inputs(case),
    )


def _gain(case: WorthCase) -> Range | None:
    """Give the gain per pack, None where nothing is saved."""
    return gain_of(case.saving, Range(*case.study.worth_per_kg))


def _volume_ends(case: WorthCase) -> tuple[Input, ...]:
    """Give how far the volumes may lie off the plan, and which end is the low one."""
    study, gain = case.study, _gain(case)
    spread = assumed(study, "volume_spread", "volume spread")
    if gain is None or study.volume_spread == 0:
        return spread
    low, high = volume_ends(gain, study.volume_spread)
    whys = [
        "of a loss more packs are worse" if gain.low < 0 else "fewer packs are worse",
        "of a loss fewer packs are better"
        if gain.high < 0
        else "more packs are better",
    ]
    return (
        *spread,
        Input("v low, volumes against the plan", low, "", whys[0]),
        Input("v high, volumes against the plan", high, "", whys[1]),
    )


def volume_inputs(case: WorthCase) -> tuple[Input, ...]:
    """Give the packs of each year; of many years the first ones, and their sum.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    study, programme = case.study, case.programme
    if isinstance(programme, Problem):
        volume = subject_volume_of(case.gap.library, study)
        own = planned_volumes(study, volume)
        total = float(own.sum()) if own.size else math.nan
        whence = _whose_volume(case) if own.size else "not known"
        return (Input("n, packs over all years", total, "", whence),)
    whence = _whose_volume(case)
    years = [
        Input(f"n_{y}, packs in {year_label(programme, y)}", packs, "", whence)
        for y, packs in enumerate(programme.volumes.tolist(), start=1)
    ]
    if len(years) <= _MOST_YEARS:
        return tuple(years)
    rest = Input(
        f"packs over all {len(years)} years", programme.packs, "", f"{whence}, summed"
    )
    return (*years[:_MOST_YEARS], rest, present_packs(case, programme))


def present_packs(case: WorthCase, programme: Programme) -> Input:
    """Give the packs of all years at their present value.

    Parameters
    ----------
    case : WorthCase
        The case.
    programme : Programme
        Its programme.
    """
    rate = case.study.discount_rate
    packs = programme_npv(1.0, programme.volumes, discount_rate=rate)
    how = "sum over the years y of n_y / (1 + i)^y"
    return Input("P, packs at their present value", float(packs), "", how)


def _whose_volume(case: WorthCase) -> str:
    if case.study.volumes:
        return "volumes by year of the study"
    if case.study.yearly_volume:
        return "yearly volume of the study"
    return "yearly volume of the subject"


_OF_PROGRAMME: Mapping[str, Callable[[WorthCase, Programme | None], Figure]] = {
    "programme value": _programme_value,
    "payback": _payback,
    "programme break-even": _break_even,
    "internal rate": _internal_rate,
}

PROGRAMME_KEYS = ("worth per pack", "gain per pack", *_OF_PROGRAMME)
"""Keys that `programme_figure` answers."""


def programme_figure(case: WorthCase, key: str) -> Figure:
    """Say where a figure of the programme comes from.

    Parameters
    ----------
    case : WorthCase
        The case.
    key : str
        One of `PROGRAMME_KEYS`.
    """
    if key == "worth per pack":
        return _worth_per_pack(case)
    if key == "gain per pack":
        return _gain_per_pack(case)
    found = case.programme
    if isinstance(found, Problem):
        figure = _OF_PROGRAMME[key](case, None)
        return replace(figure, range_meaning="", missing=found.what)
    return _OF_PROGRAMME[key](case, found)
