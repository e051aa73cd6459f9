"""What a proposal costs and is worth per pack, change by change: an internal matter."""

from __future__ import annotations

from collections.abc import Iterator

from benchpack.report.brief.blocks import Block, Column, Paragraph, Table
from benchpack.report.display import Display
from benchpack.report.proposal_text import cost_text
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_effect import Effect
from benchpack.results.proposal_totals import Totals
from benchpack.units.formatting import format_chance, format_number, format_range

_COSTS = ("parts", "joining", "add-backs", "tools", "validation")


def money_blocks(proposal: ProposalResults) -> tuple[Block, ...]:
    """Give what each change costs and is worth per pack.

    Parameters
    ----------
    proposal : ProposalResults
        The proposal.
    """
    display = Display(proposal.study)
    money = display.currency
    columns = (
        Column("change"),
        *(Column(head, money, "right") for head in _COSTS),
        Column("net worth", money, "right"),
        Column("line time", "s", "right"),
        Column("released with", "", "right"),
    )
    rows = [
        (f"{number}  {effect.name}", *_cells(effect, display), _chance(effect))
        for number, effect in enumerate(proposal.effects, 1)
    ]
    rows.append(("all changes", *_cells(proposal.totals, display), ""))
    table = Table("", columns, tuple(rows), sums=frozenset({len(rows) - 1}))
    return (table, *(Paragraph(text, "note") for text in _notes(proposal)))


def _chance(effect: Effect) -> str:
    if effect.release_chance == 1:
        return "sure"
    return format_chance(effect.release_chance)


def _cells(figures: Effect | Totals, display: Display) -> tuple[str, ...]:
    def write(value: float | None) -> str:
        return format_number(value, 2, style=display.style)

    costs = (
        figures.part_cost,
        figures.joining_cost,
        figures.add_back_cost,
        figures.tooling_per_pack,
        figures.validation_per_pack,
    )
    net = figures.net_worth
    return (
        *(write(cost.likely) for cost in costs),
        format_range(net.likely, net.low, net.high, write),
        format_number(figures.seconds.likely, style=display.style),
    )


def _notes(proposal: ProposalResults) -> Iterator[str]:
    yield "Money after less before, with the share of what is spent once."
    said = cost_text(proposal)
    if said:
        yield said
    for effect in proposal.effects:
        if effect.unknown:
            yield f"{effect.name}: {' '.join(effect.unknown)}"
