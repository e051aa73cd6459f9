"""What the charts of what matters for a programme show."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from benchpack.errors import Problem
from benchpack.model.study import Study
from benchpack.report.change_charts import SwingsSpec
from benchpack.report.display import Display
from benchpack.report.worth_figures import emptied
from benchpack.report.worth_money import money_scale
from benchpack.report.worth_specs import SharesSpec
from benchpack.results.proposal_matters import Share, Swing
from benchpack.units.formatting import format_share

_MOST = 20
WORKING = "The shares are being worked out."
"""Stands where the shares will be."""


def worth_swings_spec(
    found: tuple[float, Sequence[Swing]] | Problem,
    study: Study,
    *,
    released: float = math.nan,
) -> SwingsSpec:
    """Give how far the value of the programme goes with each input.

    Parameters
    ----------
    found : tuple or Problem
        What `worth_swings` gives.
    study : Study
        How figures are shown.
    released : float
        The value with every change released, NaN where that is not said.
    """
    if isinstance(found, Problem):
        return emptied(SwingsSpec, found)
    base, swings = found
    if not swings:
        return SwingsSpec(empty_sentence="Nothing is uncertain about the value.")
    display = Display(study)
    shown = swings[:_MOST]
    ends = [end for one in shown for end in (one.at_low, one.at_high)]
    scale = money_scale((base, *ends), display)
    first = shown[0]
    low, high = sorted((first.at_low, first.at_high))
    lead = f"Change of the programme value of {scale.text(base)}"
    if math.isfinite(released) and scale.text(released) != scale.text(base):
        whole = scale.text(released)
        lead += f", each change by its chance; with all of them released {whole}"
    notes = [
        f"{lead}.",
        "One input at a time, from its low to its high end.",
    ]
    if len(swings) > len(shown):
        notes.append(f"{len(swings) - len(shown)} narrower not shown.")
    return SwingsSpec(
        title=f"{_capital(first.name)}: {scale.number(low)} to {scale.text(high)}",
        note=" ".join(notes),
        explain_key="expected programme value",
        decimal_mark=study.decimal_mark,
        names=tuple(one.name for one in shown),
        at_low=np.array([(one.at_low - base) / scale.size for one in shown]),
        at_high=np.array([(one.at_high - base) / scale.size for one in shown]),
        details=tuple(
            f"value from {scale.number(one.at_low)} to {scale.text(one.at_high)}"
            for one in shown
        ),
        axis_label=f"Change of the programme value [{scale.unit}]",
        format_value=scale.signed_number,
        format_full=scale.signed_text,
    )


def worth_shares_spec(found: Sequence[Share] | Problem, study: Study) -> SharesSpec:
    """Give the share of the variance of the programme's value by input.

    Parameters
    ----------
    found : sequence of Share or Problem
        What `worth_shares` gives.
    study : Study
        How figures are shown.
    """
    if isinstance(found, Problem):
        return emptied(SharesSpec, found)
    shown = found[:_MOST]
    if not shown:
        return SharesSpec(empty_sentence="Nothing is uncertain about the value.")
    first = shown[0]
    share = format_share(min(1.0, max(0.0, first.total)), style=Display(study).style)
    return SharesSpec(
        title=f"{share} of the variance: {first.name}",
        note="Sobol indices of the programme value; whiskers are two standard errors.",
        explain_key="expected programme value",
        decimal_mark=study.decimal_mark,
        names=tuple(one.name for one in shown),
        first=np.array([one.first for one in shown]),
        total=np.array([one.total for one in shown]),
        total_error=np.array([one.error for one in shown]),
        axis_label="Share of the variance of the programme value [%]",
    )


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
