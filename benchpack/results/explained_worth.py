"""Where the worth of a change comes from, and what is spent once for it."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace

from benchpack.model.ranges import Range
from benchpack.results.explained_money import supply_inputs
from benchpack.results.figure import PRACTICE, Figure, Input
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_effect import Effect

ENDS = "each change at its low, likely and high end, all at once; no chance in it"
GIVEN = "given with the change"


def ranged(figure: Figure, value: Range) -> Figure:
    """Give a figure the ends of its range, none where they are the same.

    Parameters
    ----------
    figure : Figure
        The figure with its likely value.
    value : Range
        Its range.
    """
    if value.width == 0:
        return figure
    return replace(figure, low=value.low, high=value.high, range_meaning=ENDS)


def once_figure(
    key: str, attribute: str, shared: str, label: str
) -> Callable[[ProposalResults, Effect], Figure]:
    """Give what explains one-time money of a change, by its share in each pack.

    Parameters
    ----------
    key, label : str
        Key and label of the figure.
    attribute, shared : str
        Attributes of an effect: the money, and its share in each pack.
    """

    def build(results: ProposalResults, effect: Effect) -> Figure:
        money = results.study.currency
        once: Range = getattr(effect, attribute)
        per_pack: Range = getattr(effect, shared)
        given = getattr(effect.change, attribute) is not None
        source = GIVEN if given else _tool_source(effect)
        return ranged(
            Figure(
                key=key,
                label=f"{label} of {effect.name} per pack",
                value=per_pack.likely,
                unit=money,
                formula="I CRF / V, CRF = i (1 + i)^n / ((1 + i)^n - 1)",
                inputs=(
                    Input("I, spent once", once.likely, money, source),
                    *supply_inputs(results.study, results.supply),
                ),
                source="textbooks of engineering economy (from memory)",
            ),
            per_pack,
        )

    return build


def _tool_source(effect: Effect) -> str:
    sets = [
        f"{cost.tool_sets} {'set' if cost.tool_sets == 1 else 'sets'} for {cost.part}, "
        f"{cost.process}"
        for cost in effect.cost.after
        if cost.tool_sets
    ]
    return "; ".join(sets) or "none, or not known"


def net_worth_figure(results: ProposalResults, effect: Effect) -> Figure:
    """Say where the net worth of a change comes from.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    effect : Effect
        What the change comes to.
    """
    money, study = results.study.currency, results.study
    costs = (
        ("parts", effect.part_cost),
        ("joining", effect.joining_cost),
        ("add-backs", effect.add_back_cost),
        ("tools per pack", effect.tooling_per_pack),
        ("validation per pack", effect.validation_per_pack),
    )
    lacking = "; ".join(effect.unknown)
    return ranged(
        Figure(
            key="change net worth",
            label=f"Net worth of {effect.name} per pack",
            value=effect.net_worth.likely,
            unit=money,
            formula="worth x mass saved - parts - joining - add-backs - tools - "
            "validation",
            inputs=(
                Input("worth", study.worth_likely_per_kg, f"{money}/kg", "the study"),
                Input("mass saved", effect.saved_kg.likely, "kg", "the ledger"),
                *(
                    Input(name, cost.likely, money, lacking or "this change")
                    for name, cost in costs
                ),
            ),
            source=PRACTICE,
        ),
        effect.net_worth,
    )


def break_even_figure(results: ProposalResults, effect: Effect) -> Figure:
    """Say where the volume comes from at which a change pays.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    effect : Effect
        What the change comes to.
    """
    money = results.study.currency
    once = effect.tooling.likely + effect.validation_cost.likely
    worth = results.study.worth_likely_per_kg * effect.saved_kg.likely
    value = effect.break_even_volume
    never = math.isinf(value)
    parts = effect.part_break_even_volume
    return Figure(
        key="change break-even",
        label=f"Packs a year from which {effect.name} pays",
        value=math.nan if never else value,
        unit="",
        formula="spent once x CRF / (worth of the mass - money per pack)",
        inputs=(
            Input("spent once, tools and validation", once, money, "this change"),
            Input("worth of the mass per pack", worth, money, "worth x mass saved"),
            Input("money per pack", effect.money.likely, money, "this change"),
            Input(
                "packs a year, mass not counted",
                math.nan if math.isinf(parts) else parts,
                "",
                "new parts against old ones, never"
                if math.isinf(parts)
                else "new parts against old ones",
            ),
            *supply_inputs(results.study, results.supply)[1:],
        ),
        source="break-even volume of process-based cost models, " + PRACTICE,
        missing="It pays at no volume." if never else "",
    )
