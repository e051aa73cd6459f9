"""Who keeps what of the gain, as figures whose parts add up to the whole."""

from __future__ import annotations

from collections.abc import Callable

from benchpack.errors import Problem
from benchpack.model.ranges import Range
from benchpack.report.chart_words import reason_text
from benchpack.report.display import Display
from benchpack.report.worth_figures import Shown
from benchpack.report.worth_money import MoneyScale, money_scale, span_text
from benchpack.results.explained_shares import (
    CUSTOMER,
    CUSTOMER_LONG,
    OURS,
    OURS_LONG,
)
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_shares_of_gain import (
    GainShares,
    shares_of_programme,
    shares_per_pack,
)
from benchpack.units.formatting import format_number, format_share
from benchpack.units.number_style import labelled

_LOSS = "It is a loss, of which each bears the same share."
_BY_WORTH = "The range is that of the worth, all else likely."


def parts_texts(whole: float, part: float, display: Display) -> tuple[str, str, str]:
    """Write money per pack and its two parts so that the parts add up.

    Parameters
    ----------
    whole, part : float
        The whole, and one of its parts; the other is what is left.
    display : Display
        How numbers are shown.

    Returns
    -------
    tuple of str
        The whole, the part, the rest: whole figures, or one decimal where those do not
        add up.
    """
    scale = MoneyScale(1.0, display.currency, display.style)
    return _adding_up(whole, part, scale, decimals=0)


def _adding_up(
    whole: float, part: float, scale: MoneyScale, *, decimals: int
) -> tuple[str, str, str]:
    """Write a whole, a part and the rest; with a further decimal if need be."""
    whole, part = whole / scale.size, part / scale.size
    parts = [round(one, decimals) for one in (part, whole - part)]
    if round(sum(parts), decimals) != round(whole, decimals):
        decimals += 1
    shown = [round(one, decimals) for one in (whole, part)]
    shown.append(round(shown[0] - shown[1], decimals))
    texts = (format_number(one, decimals, style=scale.style) for one in shown)
    first, second, third = (labelled(text, scale.unit) for text in texts)
    return first, second, third


def price_shares(case: WorthCase) -> tuple[Shown, Shown]:
    """Give the customer's part and ours of the gain per pack.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    display, found = Display(case.study), shares_per_pack(case)
    labels = _labels(case, display)
    if isinstance(found, Problem):
        return _unknown((CUSTOMER, OURS), labels, found)
    _, *texts = parts_texts(found.whole.likely, found.customer.likely, display)

    def number(money: float) -> str:
        return format_number(money, style=display.style)

    return _known((CUSTOMER, OURS), labels, found, texts=texts, number=number)


def programme_shares(case: WorthCase) -> tuple[Shown, Shown]:
    """Give the customer's part and ours of the gain over the programme.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    display, found = Display(case.study), shares_of_programme(case)
    keys, labels = (CUSTOMER_LONG, OURS_LONG), _labels(case, display)
    if isinstance(found, Problem):
        return _unknown(keys, labels, found)
    whole = found.whole.likely
    scale = money_scale((whole,), display)
    # As many decimals as the whole is written with elsewhere.
    decimals = len(scale.number(whole).partition(display.style.decimal_mark)[2])
    part = found.customer.likely
    _, *texts = _adding_up(whole, part, scale, decimals=decimals)
    return _known(keys, labels, found, texts=texts, number=scale.number)


def _labels(case: WorthCase, display: Display) -> tuple[str, str]:
    kept = case.study.customer_share
    share, rest = (format_share(one, style=display.style) for one in (kept, 1.0 - kept))
    return f"Customer's part, {share}", f"Our part, {rest}"


def _unknown(
    keys: tuple[str, str], labels: tuple[str, str], problem: Problem
) -> tuple[Shown, Shown]:
    why = reason_text(problem)
    return Shown(keys[0], labels[0], why=why), Shown(keys[1], labels[1], why=why)


def _known(
    keys: tuple[str, str],
    labels: tuple[str, str],
    found: GainShares,
    *,
    texts: list[str],
    number: Callable[[float], str],
) -> tuple[Shown, Shown]:
    def shown(place: int, part: Range) -> Shown:
        span = span_text(number(part.low), number(part.high))
        if found.whole.likely < 0:
            why = _LOSS
        else:
            why = "Of the gain over what making the new parts costs."
        if found.packs != 1.0:
            why = f"{why} All years at their present value."
        return Shown(
            keys[place], labels[place], texts[place], span, f"{why} {_BY_WORTH}"
        )

    return shown(0, found.customer), shown(1, found.supplier)
