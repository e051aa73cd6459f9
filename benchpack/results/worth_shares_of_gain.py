"""Who keeps what of the whole gain, per pack and over the programme."""

from __future__ import annotations

import math
from dataclasses import dataclass

from benchpack.calc.worth import programme_npv
from benchpack.errors import Problem
from benchpack.model.ranges import Range
from benchpack.results.worth_case import WorthCase


@dataclass(frozen=True, slots=True)
class GainShares:
    """The whole gain and its two parts; the range is that of the worth.

    Parameters
    ----------
    whole, customer, supplier : Range
        What the new parts bring over the cost of making them, what the customer keeps
        of it, and what is left for the supplier. Of a loss each bears the same share.
    packs : float
        The packs that it is for: one, or all of the programme at their present value.
    """

    whole: Range
    customer: Range
    supplier: Range
    packs: float


def shares_per_pack(case: WorthCase) -> GainShares | Problem:
    """Give the shares of the gain per pack.

    Parameters
    ----------
    case : WorthCase
        The case.

    Returns
    -------
    GainShares or Problem
        Why there are none, as a sentence.
    """
    return _shares(case, 1.0)


def shares_of_programme(case: WorthCase) -> GainShares | Problem:
    """Give the shares of the gain over the programme, at their present value.

    Parameters
    ----------
    case : WorthCase
        The case.

    Returns
    -------
    GainShares or Problem
        Why there are none, as a sentence.
    """
    found = case.programme
    if isinstance(found, Problem):
        return found
    rate = case.study.discount_rate
    packs = programme_npv(1.0, found.volumes, discount_rate=rate)
    return _shares(case, float(packs))


def _shares(case: WorthCase, packs: float) -> GainShares | Problem:
    price, saved, study = case.price, case.saving.saved_kg, case.study
    if isinstance(price, Problem):
        return price
    if saved is None or math.isnan(price.whole_gain):
        return Problem(
            "What it costs to make the new parts is not known; only a proposal says.",
            "Value the proposal.",
            column="what is valued",
        )
    likely = study.worth_likely_per_kg
    ends = [
        packs * (price.whole_gain + saved.likely * (worth - likely))
        for worth in study.worth_per_kg
    ]
    whole = Range(min(ends), packs * price.whole_gain, max(ends))
    kept = study.customer_share
    return GainShares(whole, whole.scaled(kept), whole.scaled(1.0 - kept), packs)
