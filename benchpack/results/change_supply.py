"""Volume, years and rates of a study: what is spent once, and when it pays."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.tooling import (
    break_even_volume,
    capital_recovery_factor,
    tooling_per_pack,
)
from benchpack.calc.worth import programme_npv
from benchpack.model.change import ProgrammeKind
from benchpack.model.library import Library
from benchpack.model.ranges import Range
from benchpack.model.study import Study

FloatArray = NDArray[np.float64]

_NONE = Range.exactly(0.0)


@dataclass(frozen=True, slots=True)
class Supply:
    """What a study says about making parts.

    Parameters
    ----------
    labour_per_h : float
        Money per hour of a person.
    currency : str
        Code of the currency.
    yearly_volume : float
        Packs a year, NaN where neither study nor subject says it. With volumes by
        year, or a part of a year, it is the even volume of the same present value.
    years, rate : float
        Whole years of the programme, and interest a year as a fraction.
    programme : ProgrammeKind
        In a new programme the old tools have to be bought as well.
    """

    labour_per_h: float
    currency: str
    yearly_volume: float
    years: float
    rate: float
    programme: ProgrammeKind = ProgrammeKind.UNSTATED


def supply_of(study: Study, *, subject_volume: float | None) -> Supply:
    """Give what a study says about making parts.

    Parameters
    ----------
    study : Study
        Labour rate, volume, years, interest, programme.
    subject_volume : float or None
        Yearly volume of the subject, taken where the study gives none.
    """
    volume, years = study.yearly_volume or subject_volume, study.programme_years
    planned = planned_volumes(study, subject_volume)
    if is_uneven(study) and planned.size:
        # The even volume whose packs are worth as much today.
        years = float(planned.size)
        packs = programme_npv(1.0, planned, discount_rate=study.discount_rate)
        recovery = capital_recovery_factor(study.discount_rate, years)
        volume = float(packs) * float(recovery)
    return Supply(
        study.labour_rate_per_h,
        study.currency,
        float(volume) if volume else math.nan,
        float(math.ceil(years)),
        study.discount_rate,
        study.programme,
    )


def is_uneven(study: Study) -> bool:
    """Say whether the years differ: volumes by year, or a part of a year at the end."""
    return bool(study.volumes) or not float(study.programme_years).is_integer()


def subject_volume_of(library: Library, study: Study) -> float | None:
    """Give the yearly volume of the subject, None where it is not known.

    Parameters
    ----------
    library : Library
        The packs.
    study : Study
        The study with its subject.
    """
    if not library.packs.has(study.subject):
        return None
    return library.packs[library.packs.position(study.subject)].yearly_volume


def planned_volumes(study: Study, subject_volume: float | None) -> FloatArray:
    """Give the packs of each year; a part of a year at the end is that part of them.

    Parameters
    ----------
    study : Study
        Volumes by year, or one volume and the years.
    subject_volume : float or None
        Yearly volume of the subject, taken where the study gives none.

    Returns
    -------
    ndarray, shape (years,)
        None where no volume is known.
    """
    if study.volumes:
        return np.array(study.volumes, dtype=np.float64)
    volume = study.yearly_volume or subject_volume
    if not volume:
        return np.empty(0)
    whole = int(study.programme_years)
    packs = np.full(whole, float(volume))
    rest = study.programme_years - whole
    return np.append(packs, rest * volume) if rest > 0 else packs


def per_pack(one_time: Range, supply: Supply) -> Range | None:
    """Give the share of one-time money in each pack, by capital recovery.

    Parameters
    ----------
    one_time : Range
        Money spent once.
    supply : Supply
        Volume, years and interest.

    Returns
    -------
    Range or None
        Money per pack; None where there is money and no volume is known.
    """
    if one_time == _NONE:
        return _NONE
    shares = tooling_per_pack(
        np.array(one_time.ends),
        yearly_volume=supply.yearly_volume,
        years=supply.years,
        rate=supply.rate,
    ).tolist()
    return None if math.isnan(shares[0]) else Range(*shares)


def break_even(extra_one_time: float, saved_per_pack: float, supply: Supply) -> float:
    """Give the yearly volume from which a change or a new part pays.

    Parameters
    ----------
    extra_one_time : float
        What tools and validation cost more.
    saved_per_pack : float
        What each pack then costs less, one-time money not counted.
    supply : Supply
        Years and interest.

    Returns
    -------
    float
        Packs a year: 0 where it pays from the first pack on, infinite where never.
    """
    if extra_one_time <= 0:
        return 0.0 if saved_per_pack >= 0 else math.inf
    # What saves next to nothing pays at an infinite volume, which is what it gives.
    with np.errstate(over="ignore"):
        found = break_even_volume(
            extra_one_time, saved_per_pack, years=supply.years, rate=supply.rate
        )
    return float(found)
