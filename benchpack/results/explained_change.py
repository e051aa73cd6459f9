"""Where the figures of one change of a proposal come from."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator

from benchpack.model.ranges import Range
from benchpack.results.change_checks_plate import case_figures
from benchpack.results.change_cost import PartCost
from benchpack.results.explained_worth import (
    GIVEN,
    break_even_figure,
    net_worth_figure,
    once_figure,
    ranged,
)
from benchpack.results.figure import PRACTICE, Figure, Input
from benchpack.results.ledger_record import AddedBack
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_effect import Effect

_COST_MODEL = "process-based cost model, " + PRACTICE


def explain_change(results: ProposalResults, effect: Effect, key: str) -> Figure:
    """Say where one figure of a change comes from.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    effect : Effect
        What the change comes to.
    key : str
        One of `CHANGE_KEYS`.
    """
    return _BUILDERS[key](results, effect)


def _saved(_results: ProposalResults, effect: Effect) -> Figure:
    return ranged(
        Figure(
            key="change saved",
            label=f"Mass saved by {effect.name}",
            value=effect.saved_kg.likely,
            unit="kg",
            formula="sum of (mass before - mass after)",
            inputs=tuple(_masses(effect)),
            source="ledger: each kilogram goes once",
        ),
        effect.saved_kg,
    )


def _masses(effect: Effect) -> Iterator[Input]:
    for entry in effect.entries:
        if entry.before_kg.likely:
            label = f"{entry.item}, before"
            yield Input(label, entry.before_kg.likely, "kg", entry.reason)
        if entry.after_kg.likely:
            yield Input(
                f"{entry.item}, after", entry.after_kg.likely, "kg", entry.reason
            )
    for one in effect.applied.resized:
        kind = "data sheet" if one.uses_data_sheet else "design values"
        ratio, governs = one.counted.mass_ratio, one.counted.governing
        label = f"{one.part} in {one.new_material}, mass ratio"
        yield Input(label, ratio, "", f"{kind}: {governs}, equal function")
        label = f"{one.part} in {one.new_material}, mass ratio by the data sheet"
        yield Input(label, one.data_sheet.mass_ratio, "", "beside it")


def _part_cost(results: ProposalResults, effect: Effect) -> Figure:
    money, given = results.study.currency, effect.change.part_cost is not None
    inputs = [Input("part cost", effect.part_cost.likely, money, GIVEN)]
    if not given:
        cost = effect.cost
        inputs = [
            *_costs(cost.before, "before", money),
            *_costs(cost.after, "after", money),
        ]
    return ranged(
        Figure(
            key="change part cost",
            label=f"Money for parts of {effect.name}, after less before",
            value=effect.part_cost.likely,
            unit=money,
            formula=GIVEN
            if given
            else "sum of [m p / (1 - scrap) + t (machine + n labour) / (3600 "
            "utilisation)], after less before; before only where after is known",
            inputs=tuple(inputs),
            source="the person's own figure" if given else _COST_MODEL,
        ),
        effect.part_cost,
    )


def _costs(costs: Iterable[PartCost], when: str, money: str) -> Iterator[Input]:
    for cost in costs:
        for what, value in (("material", cost.material), ("making", cost.processing)):
            source = cost.process if what == "making" else "price of the library"
            number = math.nan if value is None else value.likely
            why = "; ".join(cost.why) if value is None else source
            yield Input(f"{cost.part}, {what}, {when}", number, money, why)


def _given_or_joints(
    key: str, attribute: str, label: str, unit: str
) -> Callable[[ProposalResults, Effect], Figure]:
    def build(results: ProposalResults, effect: Effect) -> Figure:
        given = getattr(effect.change, attribute) is not None
        value: Range = getattr(effect, attribute)
        shown = unit.replace("CUR", results.study.currency)
        inputs = [Input(label, value.likely, shown, GIVEN)]
        if not given:
            none = Input("joints that go or come", 0.0, "", "none")
            inputs = list(_joints(effect, attribute, shown)) or [none]
        return ranged(
            Figure(
                key=key,
                label=f"{label} of {effect.name}, after less before",
                value=value.likely,
                unit=shown,
                formula=GIVEN if given else "sum over joints that come less that go",
                inputs=tuple(inputs),
                source="the person's own figure" if given else PRACTICE,
            ),
            value,
        )

    return build


def _joints(effect: Effect, attribute: str, unit: str) -> Iterator[Input]:
    for when, items in (
        ("goes", effect.applied.before),
        ("comes", effect.applied.after),
    ):
        for item in items:
            if item.facts is not None:
                facts = item.facts
                value = facts.seconds if attribute == "seconds" else facts.money
                yield Input(f"{item.name}, {when}", value, unit, "joining inventory")


def _add_back_cost(results: ProposalResults, effect: Effect) -> Figure:
    money = results.study.currency
    counted = [back for back in effect.add_backs if back.is_counted]
    inputs = [
        given
        for back in counted
        for given in (
            Input(
                f"{back.add_back.key}, mass",
                back.mass_kg.likely,
                "kg",
                back.source,
            ),
            *_sizing(back),
            Input(
                f"{back.add_back.key}, price",
                back.add_back.price_per_kg.likely,
                "EUR/kg",
                "from memory",
            ),
        )
    ]
    return ranged(
        Figure(
            key="change add-back cost",
            label=f"Money for the add-backs of {effect.name}",
            value=effect.add_back_cost.likely,
            unit=money,
            formula="sum of mass x price",
            inputs=tuple(inputs),
            source="usual prices, from memory",
        ),
        effect.add_back_cost,
    )


def _sizing(back: AddedBack) -> Iterator[Input]:
    """Give what a plate was sized with, nothing for other add-backs."""
    if back.plate is None:
        return
    key, case = back.add_back.key, back.plate.case
    wall = "q L^2 / (2 k dT), not under what can be rolled"
    yield Input(f"{key}, wall", back.plate.wall_mm.likely, "mm", wall)
    yield Input(f"{key}, area", back.amount, "m2", "parts")
    yield from case_figures(case)
    yield Input("k of the plate", case.plate_w_mk, "W/(m K)", case.source)


_BUILDERS: dict[str, Callable[[ProposalResults, Effect], Figure]] = {
    "change saved": _saved,
    "change part cost": _part_cost,
    "change joining cost": _given_or_joints(
        "change joining cost", "joining_cost", "Money for joining", "CUR"
    ),
    "change time": _given_or_joints("change time", "seconds", "Line time", "s"),
    "change add-back cost": _add_back_cost,
    "change tooling": once_figure(
        "change tooling", "tooling", "tooling_per_pack", "Tools"
    ),
    "change validation": once_figure(
        "change validation", "validation_cost", "validation_per_pack", "Validation"
    ),
    "change net worth": net_worth_figure,
    "change break-even": break_even_figure,
}
CHANGE_KEYS = tuple(_BUILDERS)
"""Keys that `explain_change` answers."""
