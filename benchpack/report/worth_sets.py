"""Sets of assumptions side by side: a chart of one figure, and a table of many."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np

from benchpack.errors import Problem
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.report.chart_words import reason_text
from benchpack.report.display import Display
from benchpack.report.worth_figures import (
    Shown,
    gain_shown,
    payback_shown,
    programme_shown,
    worth_of_saving,
    worth_shown,
)
from benchpack.report.worth_money import MoneyScale, money_scale
from benchpack.report.worth_price import NO_PRICE, headroom_shown
from benchpack.report.worth_specs import SetsSpec
from benchpack.report.worth_vehicle import derived_shown
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_price import Price
from benchpack.results.worth_programme import gain_of
from benchpack.results.worth_sets import SetOutcome
from benchpack.units.formatting import UNKNOWN, format_number, format_share

NOW = "now"
"""Name of what the study reckons with, unless a set says just the same."""


class SetMeasure(StrEnum):
    """The figure that is compared in the chart."""

    PROGRAMME = "programme value"
    WORTH = "worth per pack"
    GAIN = "gain per pack"
    HEADROOM = "price headroom"


@dataclass(frozen=True, slots=True)
class SetsTable:
    """Sets of assumptions as a table.

    Parameters
    ----------
    heads : tuple of str
        Heads of the columns with their units.
    rows : tuple of tuple of Shown
        One for each set; the first cell is its name.
    names : tuple of str
        Names of the sets, empty for what the study reckons with now.
    """

    heads: tuple[str, ...]
    rows: tuple[tuple[Shown, ...], ...]
    names: tuple[str, ...]


def shown_outcomes(outcomes: Sequence[SetOutcome]) -> tuple[SetOutcome, ...]:
    """Give the outcomes to show: the present one only where no set says the same.

    Parameters
    ----------
    outcomes : sequence of SetOutcome
        What `set_outcomes` gives, the present one first.
    """
    now, *sets = outcomes
    if any(one.is_in_use for one in sets):
        return tuple(sets)
    return now, *sets


def _name(outcome: SetOutcome) -> str:
    return outcome.name or NOW


def sets_spec(
    outcomes: Sequence[SetOutcome], study: Study, measure: SetMeasure
) -> SetsSpec:
    """Give one figure under each set.

    Parameters
    ----------
    outcomes : sequence of SetOutcome
        What `set_outcomes` gives.
    study : Study
        How figures are shown.
    measure : SetMeasure
        The figure.
    """
    shown = shown_outcomes(outcomes)
    display = Display(study)
    values = [_value(one.case, measure) for one in shown]
    ends = np.array([one.ends if one else (math.nan,) * 3 for one in values]).T
    scale = money_scale(ends.ravel().tolist(), display)
    if measure is not SetMeasure.PROGRAMME:
        scale = MoneyScale(1.0, display.currency, display.style)
    per_pack = "" if measure is SetMeasure.PROGRAMME else " per pack"
    words = str(measure).removesuffix(" per pack")
    low, likely, high = ends / scale.size
    return SetsSpec(
        title=_finding(shown, values, scale, words),
        explain_key=_KEYS[measure],
        decimal_mark=study.decimal_mark,
        names=tuple(map(_name, shown)),
        low=low,
        likely=likely,
        high=high,
        in_use=next((_name(one) for one in shown if one.is_in_use), ""),
        details=tuple(_why(one, measure) for one in shown),
        axis_label=f"{words[0].upper()}{words[1:]}{per_pack} [{scale.unit}]",
        format_value=scale.shown_number,
        format_full=scale.shown_text,
    )


_KEYS = {
    SetMeasure.PROGRAMME: "programme value",
    SetMeasure.WORTH: "worth per pack",
    SetMeasure.GAIN: "gain per pack",
    SetMeasure.HEADROOM: "headroom",
}


def _value(case: WorthCase | None, measure: SetMeasure) -> Range | None:
    if case is None:
        return None
    if measure is SetMeasure.PROGRAMME:
        found = case.programme
        return None if isinstance(found, Problem) else found.npv
    if measure is SetMeasure.HEADROOM:
        price = case.price
        # Below zero there is no price, so there is nothing to compare as money.
        if isinstance(price, Problem) or price.headroom < 0:
            return None
        return Range.exactly(price.headroom)
    worth = worth_of_saving(case)
    if worth is None or measure is SetMeasure.WORTH:
        return worth
    return gain_of(case.saving, Range(*case.study.worth_per_kg))


def _finding(
    shown: Sequence[SetOutcome],
    values: Sequence[Range | None],
    scale: MoneyScale,
    words: str,
) -> str:
    known = [
        (value.likely, _name(one))
        for one, value in zip(shown, values, strict=True)
        if value is not None
    ]
    if len(known) < 2:
        return f"{words[0].upper()}{words[1:]} of the present assumptions"
    (low, worst), (high, best) = min(known), max(known)
    return f"From {scale.number(low)} ({worst}) to {scale.text(high)} ({best}), likely"


def _why(outcome: SetOutcome, measure: SetMeasure) -> str:
    """Say why a set has no such figure."""
    if outcome.why is not None:
        return reason_text(outcome.why)
    case = outcome.case
    if case is None or _value(case, measure) is not None:
        return ""
    found = case.price if measure is SetMeasure.HEADROOM else case.programme
    if isinstance(found, Price):
        return NO_PRICE
    return reason_text(found) if isinstance(found, Problem) else ""


def sets_table(outcomes: Sequence[SetOutcome]) -> SetsTable:
    """Give the sets with what they assume and come to.

    Parameters
    ----------
    outcomes : sequence of SetOutcome
        What `set_outcomes` gives.
    """
    shown = shown_outcomes(outcomes)
    return SetsTable(
        heads=("set", *_COLUMNS),
        rows=tuple(_row(one) for one in shown),
        names=tuple(one.name for one in shown),
    )


def _headroom(case: WorthCase) -> Shown:
    return headroom_shown(case)[0]


def _worth(case: WorthCase) -> Shown:
    low, likely, high = case.study.worth_per_kg
    display = Display(case.study)
    why = f"{display.worth_text(low)} to {display.worth_text(high)}"
    return Shown("", "", display.worth_text(likely), why=why)


def _interest(case: WorthCase) -> Shown:
    rate = format_share(case.study.discount_rate, style=Display(case.study).style)
    return Shown("", "", rate)


def _packs(case: WorthCase) -> Shown:
    found = case.programme
    if isinstance(found, Problem):
        return Shown("", "", why=reason_text(found))
    return Shown("", "", format_number(found.packs, style=Display(case.study).style))


_COLUMNS: dict[str, Callable[[WorthCase], Shown]] = {
    "programme value": programme_shown,
    "worth per pack": worth_shown,
    "gain per pack": gain_shown,
    "headroom": _headroom,
    "paid back": payback_shown,
    "worth": _worth,
    "packs": _packs,
    "interest": _interest,
    "by the vehicle": derived_shown,
}


def _row(outcome: SetOutcome) -> tuple[Shown, ...]:
    name = _name(outcome)
    use = f"{name}, in use" if outcome.is_in_use and outcome.name else name
    head = Shown("", "", use)
    case = outcome.case
    if case is None:
        why = reason_text(outcome.why) if outcome.why else ""
        return head, *(Shown("", "", UNKNOWN, why=why) for _ in _COLUMNS)
    return head, *(make(case) for make in _COLUMNS.values())
