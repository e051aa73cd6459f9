"""The value of a saving over a programme: by year, paid back, worth today."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.internal_rate import internal_rate_of_return
from benchpack.calc.programme import (
    ProgrammeCash,
    break_even_packs_per_year,
    discounted_payback_years,
    programme_cash,
)
from benchpack.errors import Problem
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.results.worth_saving import ValuedSaving

FloatArray = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Programme:
    """What a saving brings over the years; low, likely and high are rows.

    Parameters
    ----------
    volumes : ndarray, shape (years,)
        Packs of each year.
    first_year : int or None
        Calendar year of the first packs.
    worth_per_pack : Range
        Worth of the mass saved, no cost taken off.
    gain_per_pack : Range
        The same less what parts, joints and add-backs cost.
    spend : Range
        Money spent once, in year 0.
    cash : ProgrammeCash
        By year from year 0, shape (3, years + 1). Low has all that is worse at once:
        the least gain, the greatest spend, of the volumes what is worse; high the
        reverse. The interest stays.
    npv : Range
        Net present value.
    payback_years : float
        Likely years until what was spent is back with interest, infinite where never.
    break_even_packs : float
        Likely packs a year, over the plan, from which it pays; infinite where never.
    internal_rate : float
        Likely rate of return per year, NaN where there is none.
    """

    volumes: FloatArray
    first_year: int | None
    worth_per_pack: Range
    gain_per_pack: Range
    spend: Range
    cash: ProgrammeCash
    npv: Range
    payback_years: float
    break_even_packs: float
    internal_rate: float

    @property
    def packs(self) -> float:
        """Packs over all years."""
        return float(self.volumes.sum())


def programme_of(
    study: Study, saving: ValuedSaving, volumes: FloatArray
) -> Programme | Problem:
    """Give the value of a saving over a programme.

    Parameters
    ----------
    study : Study
        Worth, interest and spread of the volumes.
    saving : ValuedSaving
        What is valued.
    volumes : ndarray, shape (years,)
        Packs of each year.

    Returns
    -------
    Programme or Problem
        Why there is none, as a sentence, where nothing is saved or no pack is made.
    """
    if saving.saved_kg is None:
        return Problem(
            "There is no saving to value.",
            "Set a target, or add changes to a proposal.",
        )
    if not volumes.size:
        return Problem(
            "No yearly volume is known, so there is no value by year.",
            "Enter packs a year, or volumes by year.",
            column="yearly volume",
        )
    if not volumes.any():
        return Problem(
            "Every year has a volume of zero, so nothing is sold and nothing is worth.",
            "Enter packs for at least one year.",
            column="volumes",
        )
    worth = product(Range(*study.worth_per_kg), saving.saved_kg)
    gain, spend = worth - saving.money, saving.spend
    worse, better = volume_ends(gain, study.volume_spread)
    plans = np.array([[worse], [1.0], [better]]) * volumes
    rates = {"discount_rate": study.discount_rate}
    cash = programme_cash(
        np.array(gain.ends), plans, spend=np.array(spend.ends[::-1]), **rates
    )
    likely = {"spend": spend.likely, **rates}
    return Programme(
        volumes=volumes,
        first_year=study.start_year,
        worth_per_pack=worth,
        gain_per_pack=gain,
        spend=spend,
        cash=cash,
        npv=Range(*cash.cumulative[:, -1].tolist()),
        payback_years=float(discounted_payback_years(gain.likely, volumes, **likely)),
        break_even_packs=float(
            break_even_packs_per_year(gain.likely, volumes, **likely)
        ),
        internal_rate=float(internal_rate_of_return(cash.yearly[1])),
    )


def volume_ends(gain: Range, spread: float) -> tuple[float, float]:
    """Give the volumes of the low and of the high end as shares of the plan.

    Parameters
    ----------
    gain : Range
        Gain per pack. More packs of a loss are a greater loss: the low end takes what
        is worse, the high end what is better.
    spread : float
        By which share the volumes may lie off the plan.
    """
    low = 1.0 + spread if gain.low < 0 else 1.0 - spread
    high = 1.0 - spread if gain.high < 0 else 1.0 + spread
    return low, high


def gain_of(saving: ValuedSaving, worth: Range) -> Range | None:
    """Give the gain per pack, worth of the mass less money; None where nothing is.

    Parameters
    ----------
    saving : ValuedSaving
        What is valued.
    worth : Range
        Worth of a kilogram.
    """
    if saving.saved_kg is None:
        return None
    return product(worth, saving.saved_kg) - saving.money


def product(one: Range, other: Range) -> Range:
    """Give the range of a product; its ends are the least and greatest of all.

    Parameters
    ----------
    one, other : Range
        Any ranges.
    """
    ends = [a * b for a in one.ends for b in other.ends]
    likely = one.likely * other.likely
    return Range(min(*ends, likely), likely, max(*ends, likely))


def year_label(programme: Programme, year: int) -> str:
    """Name a year of a programme: the calendar year, or its number.

    Parameters
    ----------
    programme : Programme
        The programme.
    year : int
        0 for the year in which money is spent, before the first packs.
    """
    if programme.first_year is None:
        return f"year {year}"
    return str(programme.first_year + year - 1)


def is_paid_back(programme: Programme) -> bool:
    """Say whether what is spent comes back within the programme."""
    return math.isfinite(programme.payback_years)
