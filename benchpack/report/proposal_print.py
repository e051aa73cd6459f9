"""A proposal as text for a terminal: ledger, totals, chance, what is reopened."""

from __future__ import annotations

from collections.abc import Iterator

from benchpack.model.ranges import Range
from benchpack.report.display import Display
from benchpack.report.plain_table import aligned, plain_spaces
from benchpack.report.proposal_chance import chance_text, matters_text
from benchpack.report.proposal_resizing import resized_text
from benchpack.report.proposal_text import (
    add_back_text,
    cost_text,
    duty_text,
    note_texts,
    proposal_text,
    refusal_text,
    secondary_text,
)
from benchpack.results.check import Check
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_effect import Effect
from benchpack.results.proposal_matters import Matters
from benchpack.results.proposal_trials import ProposalChance
from benchpack.units.formatting import format_chance, format_number


def proposal_print(
    results: ProposalResults,
    chance: ProposalChance | None,
    *,
    matters: Matters | None = None,
) -> str:
    """Give the whole of a proposal as text.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    chance : ProposalChance or None
        Its trials.
    matters : Matters, optional
        What matters for the mass saved.
    """
    display = Display(results.study)
    study = results.study
    lines = [
        f"Study {study.name}: proposal for {study.subject}.",
        proposal_text(results),
        cost_text(results),
        chance_text(chance, study),
        matters_text(matters, what="the mass saved"),
        secondary_text(results),
    ]
    lines = [line for line in lines if line]
    if results.effects:
        lines += ["", *_ledger(results, display)]
        lines += ["", *aligned(list(_effects(results, display)))]
    for title, found in _lists(results, display):
        if found:
            lines += ["", title, *(f"  {text}" for text in found)]
    return plain_spaces("\n".join(lines))


def _ledger(results: ProposalResults, display: Display) -> list[str]:
    mass = display.mass_unit
    heads = (f"before {mass}", f"after {mass}", "low", "high", f"saved {mass}")
    rows: list[tuple[str, ...]] = [(*heads, "pieces")]
    items, reasons = ["change, item"], ["what happens"]
    for effect in results.effects:
        for entry in effect.entries:
            items.append(f"{effect.name}, {entry.item}")
            pieces = f"{entry.pieces_before} to {entry.pieces_after}"
            rows.append((*_masses(entry.before_kg, entry.after_kg, display), pieces))
            reasons.append(entry.reason)
    totals = results.totals
    today = Range.exactly(totals.today_kg)
    items.append(f"all, {results.study.subject}")
    rows.append((*_masses(today, totals.proposed_kg, display), ""))
    reasons.append("")
    table = [(item, *row) for item, row in zip(items, rows, strict=True)]
    lined = zip(aligned(table), reasons, strict=True)
    width = max(map(len, aligned(table)))
    return [f"{line:<{width}}  {reason}".rstrip() for line, reason in lined]


def _masses(before: Range, after: Range, display: Display) -> tuple[str, ...]:
    return (
        _mass(before.likely, display),
        _mass(after.likely, display),
        _mass(after.low, display),
        _mass(after.high, display),
        _mass(before.likely - after.likely, display),
    )


def _effects(results: ProposalResults, display: Display) -> Iterator[tuple[str, ...]]:
    mass, money = display.mass_unit, display.currency
    yield (
        "change",
        f"saved {mass}",
        "low",
        "high",
        f"add-backs {mass}",
        "s",
        f"parts {money}",
        f"joining {money}",
        f"add-backs {money}",
        f"tools {money}",
        f"validation {money}",
        f"net worth {money}",
        "chance",
    )
    for effect in results.effects:
        yield (effect.name, *_figures(effect, display), _chance(effect))
    totals = results.totals
    yield (
        "all",
        *_saved(totals.saved_kg, display),
        _mass(totals.add_back_kg.likely, display),
        *_money(
            totals.seconds,
            totals.part_cost,
            totals.joining_cost,
            totals.add_back_cost,
            totals.tooling_per_pack,
            totals.validation_per_pack,
            totals.net_worth,
            display=display,
        ),
        "",
    )


def _chance(effect: Effect) -> str:
    return (
        "sure" if effect.release_chance == 1 else format_chance(effect.release_chance)
    )


def _figures(effect: Effect, display: Display) -> tuple[str, ...]:
    return (
        *_saved(effect.saved_kg, display),
        _mass(effect.add_back_kg.likely, display),
        *_money(
            effect.seconds,
            effect.part_cost,
            effect.joining_cost,
            effect.add_back_cost,
            effect.tooling_per_pack,
            effect.validation_per_pack,
            effect.net_worth,
            display=display,
        ),
    )


def _saved(saved_kg: Range, display: Display) -> tuple[str, ...]:
    return tuple(
        _mass(kg, display) for kg in (saved_kg.likely, saved_kg.low, saved_kg.high)
    )


def _money(seconds: Range, *money: Range, display: Display) -> tuple[str, ...]:
    style = display.style
    return (
        format_number(seconds.likely, 0, style=style),
        *(format_number(one.likely, 2, style=style) for one in money),
    )


def _mass(mass_kg: float, display: Display) -> str:
    return format_number(display.mass(mass_kg), 3, style=display.style)


def _lists(
    results: ProposalResults, display: Display
) -> Iterator[tuple[str, list[str]]]:
    effects = results.effects
    yield (
        "Changes that do not count:",
        [refusal_text(problem) for _, problem in results.ledger.refused],
    )
    yield (
        "New materials:",
        [resized_text(one, display) for e in effects for one in e.applied.resized],
    )
    yield "Add-backs:", [add_back_text(back, display) for back in results.add_backs]
    yield "To be known:", note_texts(results.notes)
    yield (
        "Not known, counted as nothing:",
        [f"{one.name}: {' '.join(one.unknown)}" for one in effects if one.unknown],
    )
    yield "Checks:", [_check_text(check) for check in results.checks]
    yield (
        "To be validated again, under the rules that apply:",
        [duty_text(reopened) for reopened in results.duties],
    )


def _check_text(check: Check) -> str:
    return f"{check.grade}: {check.kind}, {check.record}: {check.words} {check.remedy}"
