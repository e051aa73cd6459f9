"""What the chart of a programme shows: money by year, and when it is paid back."""

from __future__ import annotations

import math

import numpy as np

from benchpack.errors import Problem
from benchpack.report.display import Display
from benchpack.report.worth_figures import (
    emptied,
    lacking_words,
    payback_words,
    saving_words,
    years_text,
)
from benchpack.report.worth_money import money_scale, programme_money_text
from benchpack.report.worth_specs import ProgrammeSpec
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_programme import Programme, year_label
from benchpack.units.formatting import format_number, format_share


def programme_spec(case: WorthCase) -> ProgrammeSpec:
    """Give the value of a saving by year, with the present value down to each.

    Parameters
    ----------
    case : WorthCase
        The case.

    Returns
    -------
    ProgrammeSpec
        Empty, with the reason, where there is no programme.
    """
    found = case.programme
    if isinstance(found, Problem):
        return emptied(ProgrammeSpec, found)
    display = Display(case.study)
    so_far = found.cash.cumulative[1]
    scale = money_scale((*found.cash.yearly.ravel(), *so_far), display)
    low, likely, high = found.cash.yearly / scale.size
    payback = found.payback_years if found.spend.likely > 0 else math.nan
    return ProgrammeSpec(
        title=_finding(case, found, display),
        note=_note(case, found, display),
        explain_key="programme value",
        decimal_mark=case.study.decimal_mark,
        years=tuple(year_label(found, year) for year in range(len(likely))),
        low=low,
        likely=likely,
        high=high,
        cumulative=np.asarray(so_far / scale.size),
        payback=payback if math.isfinite(payback) else math.nan,
        payback_text=payback_words(case),
        x_label="Year",
        y_label=f"Money of the year [{scale.unit}]",
        year_text="in the year",
        cumulative_text="present value so far",
        format_value=scale.signed_number,
        format_full=scale.shown_text,
    )


def span_of_years(case: WorthCase, display: Display) -> str:
    """Write how long the programme runs."""
    study = case.study
    years = float(len(study.volumes)) if study.volumes else study.programme_years
    return years_text(years, display)


def _finding(case: WorthCase, found: Programme, display: Display) -> str:
    years, value = span_of_years(case, display), found.npv.likely
    money = programme_money_text(abs(value), display)
    if value < 0:
        lead = "Not paid back" if found.spend.likely > 0 else "A loss"
        return f"{lead}: loses {money} over {years}"
    worth = f"worth {money} over {years}"
    if found.spend.likely <= 0:
        return f"{worth[0].upper()}{worth[1:]}; nothing is spent once"
    back = payback_words(case)
    return f"{back[0].upper()}{back[1:]}; {worth}"


def _note(case: WorthCase, found: Programme, display: Display) -> str:
    packs = format_number(found.packs, style=display.style)
    rate = format_share(case.study.discount_rate, style=display.style)
    said = [
        saving_words(case),
        f"{packs} packs in all; present value at {rate} a year.",
        "Whiskers: all that is worse at once, or all that is better; interest stays.",
    ]
    if found.spend.likely > 0:
        once = programme_money_text(found.spend.likely, display)
        said.insert(2, f"{once} are spent once.")
    if case.saving.note is not None:
        said.append(case.saving.note.what)
    said.append(lacking_words(case))
    return " ".join(said).rstrip()
