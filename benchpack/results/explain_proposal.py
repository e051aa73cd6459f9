"""Where the figures of a proposal come from: formula, inputs with units, sources."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable

from benchpack.errors import RequestError
from benchpack.model.ranges import Range
from benchpack.results.explained_change import CHANGE_KEYS, explain_change
from benchpack.results.explained_money import supply_inputs
from benchpack.results.explained_worth import ranged
from benchpack.results.figure import PRACTICE, Figure, Input
from benchpack.results.proposal import ProposalResults, Totals
from benchpack.results.proposal_effect import Effect

_OF_ALL: dict[str, tuple[str, str, str]] = {
    "part cost": ("part_cost", "Money for parts, after less before", "CUR"),
    "joining cost": ("joining_cost", "Money for joining, after less before", "CUR"),
    "add-back cost": ("add_back_cost", "Money for add-backs", "CUR"),
    "time": ("seconds", "Time on the line, after less before", "s"),
    "tooling": ("tooling", "Tools, spent once", "CUR"),
    "validation": ("validation_cost", "Validation, spent once", "CUR"),
    "add-backs": ("add_back_kg", "Mass of the add-backs", "kg"),
}
_SAVED, _MASS, _LEFT = "proposal saved", "proposal mass", "proposal gap left"
_NET, _EVEN = "proposal net worth", "proposal break-even"
PROPOSAL_KEYS = (
    _SAVED,
    _MASS,
    _LEFT,
    _NET,
    _EVEN,
    *(f"proposal {key}" for key in _OF_ALL),
    *CHANGE_KEYS,
)
"""Keys that `explain_proposal` answers."""


def explain_proposal(results: ProposalResults, key: str, change: str = "") -> Figure:
    """Say where one figure of a proposal comes from.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    key : str
        One of `PROPOSAL_KEYS`.
    change : str
        Name of the change for the figures of one.

    Raises
    ------
    RequestError
        For a key that is not known, or a change that does not count.
    """
    if key in CHANGE_KEYS:
        effect = results.effect(change)
        if effect is None:
            raise RequestError(f"{key} needs a change that counts.")
        return explain_change(results, effect, key)
    if key in _BUILDERS:
        return _BUILDERS[key](results, results.totals)
    name = key.removeprefix("proposal ")
    if key == name or name not in _OF_ALL:
        raise RequestError(f"There is no figure {key!r}.")
    return _sum(results, key, *_OF_ALL[name])


def _sum(
    results: ProposalResults, key: str, attribute: str, label: str, unit: str
) -> Figure:
    unit = unit.replace("CUR", results.study.currency)
    value: Range = getattr(results.totals, attribute)
    return ranged(
        Figure(
            key=key,
            label=label,
            value=value.likely,
            unit=unit,
            formula="sum over the changes that count",
            inputs=tuple(_each(results.effects, attribute, unit)),
            source=PRACTICE,
        ),
        value,
    )


def _each(effects: Iterable[Effect], attribute: str, unit: str) -> Iterable[Input]:
    for effect in effects:
        value: Range = getattr(effect, attribute)
        lacking = "; ".join(effect.unknown) if unit not in ("kg", "s") else ""
        yield Input(effect.name, value.likely, unit, lacking or "this change")


def _saved(results: ProposalResults, totals: Totals) -> Figure:
    return ranged(
        Figure(
            key=_SAVED,
            label=f"Mass saved on {results.study.subject}",
            value=totals.saved_kg.likely,
            unit="kg",
            formula="sum over the changes of (mass before - mass after), add-backs in",
            inputs=tuple(_each(results.effects, "saved_kg", "kg")),
            source="ledger: each kilogram goes once",
        ),
        totals.saved_kg,
    )


def _mass(results: ProposalResults, totals: Totals) -> Figure:
    return ranged(
        Figure(
            key=_MASS,
            label=f"Mass of {results.study.subject} as proposed",
            value=totals.proposed_kg.likely,
            unit="kg",
            formula="m_today - sum of what the changes save",
            inputs=(
                Input("m_today, as weighed", totals.today_kg, "kg", "the scale"),
                *_each(results.effects, "saved_kg", "kg"),
            ),
            source="ledger: it is the sum of what remains as well",
        ),
        totals.proposed_kg,
    )


def _left(results: ProposalResults, totals: Totals) -> Figure:
    missing = results.gap.missing
    study = results.study
    return Figure(
        key=_LEFT,
        label=f"Gap to {study.reference} that is left",
        value=totals.gap_left_kg,
        unit="kg",
        formula="gap - mass saved",
        inputs=(
            Input(f"gap {study.basis}", totals.gap_kg, "kg", "the comparison"),
            Input("mass saved", totals.saved_kg.likely, "kg", "the ledger"),
        ),
        source=PRACTICE,
        missing=missing.what if missing else "",
    )


def _net_worth(results: ProposalResults, totals: Totals) -> Figure:
    study, money = results.study, results.study.currency
    reason = study.worth_reason or "set in the study, no reason written"
    costs = (
        ("parts", totals.part_cost),
        ("joining", totals.joining_cost),
        ("add-backs", totals.add_back_cost),
        ("tools per pack", totals.tooling_per_pack),
        ("validation per pack", totals.validation_per_pack),
    )
    return ranged(
        Figure(
            key=_NET,
            label="Net worth of the proposal per pack",
            value=totals.net_worth.likely,
            unit=money,
            formula="worth x mass saved - parts - joining - add-backs - (tools + "
            "validation) CRF / V",
            inputs=(
                Input("worth", study.worth_likely_per_kg, f"{money}/kg", reason),
                Input("mass saved", totals.saved_kg.likely, "kg", "the ledger"),
                *(Input(name, cost.likely, money, "sum") for name, cost in costs),
                *supply_inputs(results.study, results.supply),
            ),
            source="capital recovery: textbooks of engineering economy (from memory)",
        ),
        totals.net_worth,
    )


def _break_even(results: ProposalResults, totals: Totals) -> Figure:
    money = results.study.currency
    once = totals.tooling.likely + totals.validation_cost.likely
    worth = results.study.worth_likely_per_kg * totals.saved_kg.likely
    value = totals.break_even_volume
    never = math.isinf(value)
    return Figure(
        key=_EVEN,
        label="Packs a year from which the proposal pays",
        value=math.nan if never else value,
        unit="",
        formula="spent once x CRF / (worth of the mass - money per pack)",
        inputs=(
            Input("spent once, tools and validation", once, money, "sum"),
            Input("worth of the mass per pack", worth, money, "worth x mass saved"),
            Input("money per pack", totals.money.likely, money, "sum"),
            *supply_inputs(results.study, results.supply)[1:],
        ),
        source="break-even volume of process-based cost models, " + PRACTICE,
        missing="It pays at no volume." if never else "",
    )


_BUILDERS: dict[str, Callable[[ProposalResults, Totals], Figure]] = {
    _SAVED: _saved,
    _MASS: _mass,
    _LEFT: _left,
    _NET: _net_worth,
    _EVEN: _break_even,
}
