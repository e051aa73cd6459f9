"""Where the parts of the gain come from that customer and supplier keep."""

from __future__ import annotations

import math
from dataclasses import replace

from benchpack.errors import Problem
from benchpack.results.explained_assumed import assumed, ranged_inputs
from benchpack.results.explained_price import WORTH_ENDS
from benchpack.results.explained_programme import present_packs, with_range
from benchpack.results.figure import PRACTICE, Figure, Input
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_shares_of_gain import (
    GainShares,
    shares_of_programme,
    shares_per_pack,
)

CUSTOMER, OURS = "customer part", "our part"
CUSTOMER_LONG, OURS_LONG = "customer part of programme", "our part of programme"
SHARE_KEYS = (CUSTOMER, OURS, CUSTOMER_LONG, OURS_LONG)
"""Keys that `share_figure` answers."""


def share_figure(case: WorthCase, key: str) -> Figure:
    """Say where a part of the gain comes from.

    Parameters
    ----------
    case : WorthCase
        The case.
    key : str
        One of `SHARE_KEYS`.
    """
    is_long, is_ours = key in (CUSTOMER_LONG, OURS_LONG), key in (OURS, OURS_LONG)
    whose = "Our part" if is_ours else "Customer's part"
    span = "over the programme, present value" if is_long else "per pack"
    found = shares_of_programme(case) if is_long else shares_per_pack(case)
    share = "(1 - s)" if is_ours else "s"
    formula = f"{share} (H_0 - c){' P' if is_long else ''}"
    figure = Figure(
        key=key,
        label=f"{whose} of the gain {span}",
        value=math.nan,
        unit=case.study.currency,
        formula=formula,
        inputs=_inputs(case, found, is_long=is_long),
        source=f"{PRACTICE}; of a loss each bears the same share",
    )
    if isinstance(found, Problem):
        return replace(figure, missing=found.what)
    part = found.supplier if is_ours else found.customer
    return with_range(replace(figure, range_meaning=WORTH_ENDS), part)


def _inputs(
    case: WorthCase, found: GainShares | Problem, *, is_long: bool
) -> tuple[Input, ...]:
    label, money = "H_0 - c, whole gain per pack", case.study.currency
    how = "price at which the customer is even, less what making the parts costs"
    gain: tuple[Input, ...] = (Input(label, math.nan, money, how),)
    if isinstance(found, GainShares):
        whole = found.whole.scaled(1.0 / found.packs)
        gain = ranged_inputs(label, whole, unit=money, source=how)
    share = assumed(case.study, "customer_share", "s, customer's share of the gain")
    inputs = (*gain, *share)
    if is_long and not isinstance(case.programme, Problem):
        return (*inputs, present_packs(case, case.programme))
    return inputs
