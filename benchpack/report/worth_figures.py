"""The figures of the Worth page as texts, each with the key that explains it."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TypeVar

from benchpack.errors import Problem
from benchpack.model.ranges import Range
from benchpack.model.worth_words import ValuedMass
from benchpack.report.chart_specs import ChartSpec
from benchpack.report.chart_words import reason_text
from benchpack.report.display import Display
from benchpack.report.proposal_text import saving_text
from benchpack.report.worth_money import (
    programme_money_text,
    programme_span_text,
    span_text,
)
from benchpack.results.wording import listed
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_programme import Programme, gain_of, product
from benchpack.units.formatting import UNKNOWN, format_number, format_share

Spec = TypeVar("Spec", bound=ChartSpec)

_MOST_NAMED = 2


@dataclass(frozen=True, slots=True)
class Shown:
    """A figure as it is shown.

    Parameters
    ----------
    key : str
        Key for `benchpack.results.explain.explain`.
    label : str
        What it is.
    text : str
        The figure with its unit, an en dash where it is not known.
    span : str
        Its range in brackets, empty for none.
    why : str
        Why it is not known, or what it means.
    """

    key: str
    label: str
    text: str = UNKNOWN
    span: str = ""
    why: str = ""

    @property
    def whole(self) -> str:
        """The figure with its range."""
        return f"{self.text} {self.span}".rstrip()


def emptied(kind: type[Spec], problem: Problem) -> Spec:
    """Give an empty chart that says why, with a button where a field is lacking.

    Parameters
    ----------
    kind : type
        Kind of the spec.
    problem : Problem
        Why there is nothing to draw.
    """
    action = "Go to the field" if problem.column else ""
    return kind(empty_sentence=reason_text(problem), empty_action_text=action)


def money_shown(key: str, label: str, value: Range, display: Display) -> Shown:
    """Give money per pack with its range as a figure."""
    ends = (format_number(end, style=display.style) for end in (value.low, value.high))
    return Shown(key, label, display.money_text(value.likely), span_text(*ends))


def worth_of_saving(case: WorthCase) -> Range | None:
    """Give the worth of the saving that is valued per pack, None where there is none.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    if case.saving.saved_kg is None:
        return None
    return product(Range(*case.study.worth_per_kg), case.saving.saved_kg)


def saving_words(case: WorthCase) -> str:
    """Say which saving is valued: ``5.8 kg saved: the proposal``."""
    saved = case.saving.saved_kg
    if saved is None:
        return "There is no saving to value."
    said = saving_text(saved, Display(case.study))
    return f"{said[0].upper()}{said[1:]} a pack: {case.saving.valued}."


def lacking_words(case: WorthCase) -> str:
    """Say of which changes a cost is not known, "" for none.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    if case.saving.valued is not ValuedMass.PROPOSAL or case.proposal is None:
        return ""
    unknown = case.proposal.totals.unknown
    if not unknown:
        return ""
    return f"Costs not known count as nothing: {listed(unknown, most=_MOST_NAMED)}."


def worth_shown(case: WorthCase) -> Shown:
    """Give the worth per pack of the saving that is valued."""
    key, label = "worth per pack", "Worth per pack"
    worth = worth_of_saving(case)
    if worth is None:
        return Shown(key, label, why=_no_saving(case))
    shown = money_shown(key, label, worth, Display(case.study))
    note = case.saving.note
    why = saving_words(case) + (f" {reason_text(note)}" if note else "")
    return Shown(key, label, shown.text, shown.span, why)


def gain_shown(case: WorthCase) -> Shown:
    """Give the worth per pack less what parts, joints and add-backs cost."""
    key, label = "gain per pack", "Gain per pack"
    gain = gain_of(case.saving, Range(*case.study.worth_per_kg))
    if gain is None:
        return Shown(key, label, why=_no_saving(case))
    shown = money_shown(key, label, gain, Display(case.study))
    why = "Worth less what parts, joints and add-backs cost; without tools."
    why = f"{why} {lacking_words(case)}".rstrip()
    return Shown(key, label, shown.text, shown.span, why)


def _no_saving(case: WorthCase) -> str:
    if isinstance(case.programme, Problem):
        return reason_text(case.programme)
    return "There is no saving to value."


def programme_shown(case: WorthCase) -> Shown:
    """Give the net present value of the programme."""
    key, label, found = "programme value", "Programme value", case.programme
    if isinstance(found, Problem):
        return Shown(key, label, why=reason_text(found))
    display = Display(case.study)
    why = (
        "Present value over all years; the range has all that is worse at once, or "
        "all that is better; interest stays."
    )
    return Shown(
        key,
        label,
        programme_money_text(found.npv.likely, display),
        programme_span_text(found.npv, display),
        f"{why} {lacking_words(case)}".rstrip(),
    )


def payback_text(found: Programme, display: Display) -> str:
    """Say after how many years what is spent once is back.

    Parameters
    ----------
    found : Programme
        The programme.
    display : Display
        How numbers are shown.
    """
    years = found.payback_years
    if found.spend.likely <= 0:
        return "nothing is spent"
    if not math.isfinite(years):
        return "never"
    return "at once" if years < 0.05 else f"after {years_text(years, display)}"


def payback_words(case: WorthCase) -> str:
    """Say in words that stand alone when what is spent once is back, "" for unknown.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    found = case.programme
    if isinstance(found, Problem):
        return ""
    if found.spend.likely <= 0:
        return "nothing is spent once"
    text = payback_text(found, Display(case.study))
    return f"{'not' if text == 'never' else ''} paid back {text}".removesuffix(
        " never"
    ).strip()


def years_text(years: float, display: Display) -> str:
    """Write years with the decimal they need: ``1.1 years``, ``1 year``."""
    decimals = 0 if round(years, 1) == round(years) else 1
    text = format_number(years, decimals, style=display.style)
    return f"{text}\u00a0{'year' if text == '1' else 'years'}"


def payback_shown(case: WorthCase) -> Shown:
    """Give when what is spent once is back."""
    key, label, found = "payback", "Paid back", case.programme
    if isinstance(found, Problem):
        return Shown(key, label, why=reason_text(found))
    return Shown(
        key,
        label,
        payback_text(found, Display(case.study)),
        why="When tools and validation are back, with interest.",
    )


def programme_figures(case: WorthCase) -> tuple[Shown, ...]:
    """Give the figures beside the chart of the programme.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    found = case.programme
    volume = ("programme break-even", "Pays from")
    rate = ("internal rate", "Internal rate a year")
    if isinstance(found, Problem):
        why = reason_text(found)
        rest = tuple(Shown(*one, why=why) for one in (volume, rate))
        return gain_shown(case), payback_shown(case), *rest
    text = least_volume_text(found, Display(case.study))
    no_rate = "There is no rate: the money never turns from loss to gain, or back."
    if found.spend.likely <= 0:
        no_rate = "There is no rate: nothing is spent once."
    has_rate = math.isfinite(found.internal_rate)
    return (
        gain_shown(case),
        payback_shown(case),
        Shown(*volume, text, why="Packs a year at which it breaks even, over the plan"),
        Shown(
            *rate,
            format_share(found.internal_rate, style=Display(case.study).style),
            why="Interest at which it just pays." if has_rate else no_rate,
        ),
    )


def least_volume_text(found: Programme, display: Display) -> str:
    """Say from how many packs a year on a programme pays.

    Parameters
    ----------
    found : Programme
        The programme.
    display : Display
        How numbers are shown.
    """
    packs = found.break_even_packs
    if math.isnan(packs):
        return UNKNOWN
    if math.isinf(packs):
        return "no volume"
    if packs < 1:
        return "the first pack"
    number = format_number(math.ceil(packs), style=display.style)
    return f"{number} packs a year"
