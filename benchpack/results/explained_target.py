"""Where the figures of the target come from."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace

from benchpack.results.explained_assumed import OF_STUDY, worth_inputs
from benchpack.results.explained_programme import with_range
from benchpack.results.explained_worth import PRACTICE
from benchpack.results.figure import Figure, Input
from benchpack.results.proposal import ProposalResults
from benchpack.results.worth_case import WorthCase

_NO_TARGET = "The study has no target."
_NO_CHANGE = "No change counts."


def _target_worth(case: WorthCase) -> Figure:
    figure = Figure(
        key="target worth",
        label="Worth of the target per pack",
        value=math.nan,
        unit=case.study.currency,
        formula="w x target",
        inputs=(*worth_inputs(case.study), _target_input(case)),
        source="the person's own worth per kilogram; no cost is taken off",
        range_meaning="the worth at its low and at its high end",
    )
    if case.target.value is None:
        return replace(figure, range_meaning="", missing=_NO_TARGET)
    return with_range(figure, case.target.value)


def _target_share(case: WorthCase) -> Figure:
    share = 100.0 * case.target.share_of_gap
    missing = ""
    if math.isnan(case.target.target_kg):
        missing = _NO_TARGET
    elif math.isnan(share):
        missing = _why_no_gap(case)
    return Figure(
        key="target share",
        label="Share of the gap that the target closes",
        value=share,
        unit="%",
        formula="100 target / gap",
        inputs=(_target_input(case), _gap_input(case)),
        source=PRACTICE,
        missing=missing,
    )


def _least_worth(case: WorthCase) -> Figure:
    study, found = case.study, _counting(case)
    figure = Figure(
        key="least worth",
        label="Worth per kilogram from which the proposal pays",
        value=case.target.least_worth_per_kg,
        unit=f"{study.currency}/kg",
        formula="(parts + joining + add-backs + (tools + validation) CRF / V) / dm, "
        "not below zero",
        inputs=(Input("dm, mass saved per pack", case.target.proposed_kg, "kg"),),
        source=PRACTICE,
        missing=_NO_CHANGE,
    )
    if found is None:
        return figure
    totals = found.totals
    costs = (
        ("parts", totals.part_cost),
        ("joining", totals.joining_cost),
        ("add-backs", totals.add_back_cost),
        ("tools per pack", totals.tooling_per_pack),
        ("validation per pack", totals.validation_per_pack),
    )
    lacking = ", ".join(totals.unknown)
    whence = f"what is not known of {lacking} counts as nothing" if lacking else "sum"
    return replace(
        figure,
        inputs=(
            Input(
                "dm, mass saved per pack", totals.saved_kg.likely, "kg", "the ledger"
            ),
            *(Input(name, cost.likely, study.currency, whence) for name, cost in costs),
        ),
        missing="The proposal saves no mass." if math.isnan(figure.value) else "",
    )


def _gap_left(case: WorthCase) -> Figure:
    target = case.target
    missing = ""
    if _counting(case) is None:
        missing = _NO_CHANGE
    elif math.isnan(target.left_kg):
        missing = _why_no_gap(case)
    return Figure(
        key="gap left",
        label="Gap still open after the proposal",
        value=target.left_kg,
        unit="kg",
        formula="gap - mass saved",
        inputs=(
            _gap_input(case),
            Input("mass saved", target.proposed_kg, "kg", "the ledger"),
            Input("by the chances of release", target.expected_kg, "kg", "the ledger"),
        ),
        source=PRACTICE,
        missing=missing,
    )


def _counting(case: WorthCase) -> ProposalResults | None:
    found = case.proposal
    return found if found is not None and found.effects else None


def _target_input(case: WorthCase) -> Input:
    return Input("target", case.target.target_kg, "kg", OF_STUDY)


def _gap_input(case: WorthCase) -> Input:
    label = f"gap {case.study.basis}"
    return Input(label, case.gap.gap_kg, "kg", "the comparison")


def _why_no_gap(case: WorthCase) -> str:
    if case.gap.missing is not None:
        return case.gap.missing.what
    return "The subject is not heavier than the reference, so there is no gap to close."


_BUILDERS: Mapping[str, Callable[[WorthCase], Figure]] = {
    "target worth": _target_worth,
    "target share": _target_share,
    "least worth": _least_worth,
    "gap left": _gap_left,
}

TARGET_KEYS = tuple(_BUILDERS)
"""Keys that `target_figure` answers."""


def target_figure(case: WorthCase, key: str) -> Figure:
    """Say where a figure of the target comes from.

    Parameters
    ----------
    case : WorthCase
        The case.
    key : str
        One of `TARGET_KEYS`.
    """
    return _BUILDERS[key](case)
