"""Where the figures of the target come from."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace

from benchpack.results.explained_assumed import OF_STUDY, ranged_inputs, worth_inputs
from benchpack.results.explained_money import RECOVERY, ledger_source, recovery_inputs
from benchpack.results.explained_programme import with_range
from benchpack.results.explained_uncertainty import range_meaning
from benchpack.results.figure import PRACTICE, Figure, Input
from benchpack.results.proposal import ProposalResults
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_target import gap_range

_NO_TARGET = "The study has no target."
_NO_CHANGE = "No change counts."
_LIKEWISE, _SPREAD = "likewise", "spent once x CRF / V"
_OF_NO_VOLUME = "; no volume is known, so tools and validation count as nothing"


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
    figure = Figure(
        key="target share",
        label="Share of the gap that the target closes",
        value=share,
        unit="%",
        formula="100 target / gap",
        inputs=(_target_input(case), *_gap_inputs(case)),
        source=PRACTICE,
        missing=missing,
    )
    if missing or case.target.share_range is None:
        return figure
    meaning = "low: the gap at its high end, high: at its low end" + _gap_ends(case)
    figure = replace(figure, range_meaning=meaning)
    return with_range(figure, case.target.share_range.scaled(100.0))


def _least_worth(case: WorthCase) -> Figure:
    study, found = case.study, _counting(case)
    figure = Figure(
        key="least worth",
        label="Worth per kilogram from which the proposal pays",
        value=case.target.least_worth_per_kg,
        unit=f"{study.currency}/kg",
        formula="(parts + joining + add-backs + (tools + validation) CRF / V) / dm, "
        f"not below zero, {RECOVERY}",
        inputs=(
            Input("dm, mass saved per pack", case.target.proposed_kg, "kg"),
            *recovery_inputs(study, case.supply),
        ),
        source=PRACTICE,
        missing=_NO_CHANGE,
    )
    if found is None:
        return figure
    totals, money = found.totals, study.currency
    saved, whence = totals.saved_kg.likely, ledger_source(totals.unknown)
    has_volume = not math.isnan(found.supply.yearly_volume)
    costs = (
        ("parts", totals.part_cost, whence),
        ("joining", totals.joining_cost, _LIKEWISE),
        ("add-backs", totals.add_back_cost, _LIKEWISE),
        ("tools, spent once", totals.tooling, _LIKEWISE),
        ("validation, spent once", totals.validation_cost, _LIKEWISE),
        ("tools per pack", totals.tooling_per_pack, _SPREAD),
        ("validation per pack", totals.validation_per_pack, _SPREAD),
    )
    return replace(
        figure,
        formula=figure.formula + ("" if has_volume else _OF_NO_VOLUME),
        inputs=(
            Input("dm, mass saved per pack", saved, "kg", "the ledger"),
            *(Input(name, cost.likely, money, source) for name, cost, source in costs),
            *recovery_inputs(study, found.supply),
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
    figure = Figure(
        key="gap left",
        label="Gap still open after the proposal",
        value=target.left_kg,
        unit="kg",
        formula="gap - mass saved",
        inputs=(
            *_gap_inputs(case),
            *_saved_inputs(case),
            Input("by the chances of release", target.expected_kg, "kg", "the ledger"),
        ),
        source=PRACTICE,
        missing=missing,
    )
    if missing or target.left_range is None:
        return figure
    meaning = (
        "low: the gap at its low and the mass saved at its high end, high the reverse; "
        f"below zero the gap is closed{_gap_ends(case)}"
    )
    return with_range(replace(figure, range_meaning=meaning), target.left_range)


def _counting(case: WorthCase) -> ProposalResults | None:
    found = case.proposal
    return found if found is not None and found.effects else None


def _target_input(case: WorthCase) -> Input:
    return Input("target", case.target.target_kg, "kg", OF_STUDY)


def _gap_inputs(case: WorthCase) -> tuple[Input, ...]:
    """Give the gap, with its ends where they are known."""
    found, source = gap_range(case.gap), "the comparison"
    label = f"gap, {case.study.basis}"
    if found is None:
        return (Input(label, math.nan, "kg", source),)
    return ranged_inputs(label, found, unit="kg", source=source)


def _gap_ends(case: WorthCase) -> str:
    """Say what the ends of the gap are."""
    comparison, place = case.gap.comparison, case.gap.place
    if comparison is None or place is None:
        return ""
    if math.isnan(case.gap.gap_range_kg()[0]):
        return "; how far the gap may lie off is not known"
    return f"; the ends of the gap: {range_meaning(comparison, place)}"


def _saved_inputs(case: WorthCase) -> tuple[Input, ...]:
    """Give what the proposal saves, with its ends."""
    proposal, source = _counting(case), "the ledger"
    if proposal is None:
        return (Input("mass saved", math.nan, "kg", source),)
    saved = proposal.totals.saved_kg
    return ranged_inputs("mass saved", saved, unit="kg", source=source)


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
