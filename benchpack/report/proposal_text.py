"""Sentences about a proposal: what it saves, costs and reopens, and its chance."""

from __future__ import annotations

import math
from collections.abc import Iterable

from benchpack.errors import Problem
from benchpack.model.add_backs import Per
from benchpack.model.change import ProgrammeKind
from benchpack.model.duties import Rule
from benchpack.model.ranges import Range
from benchpack.report.chart_words import plural
from benchpack.report.display import Display
from benchpack.report.joint_amounts import joint_money_text, seconds_text
from benchpack.results.ledger import AddedBack
from benchpack.results.proposal import ProposalResults, ReopenedDuty
from benchpack.results.wording import listed
from benchpack.units.formatting import format_number
from benchpack.units.number_style import labelled

NOTHING_KG = 0.005


def saving_text(saved_kg: Range, display: Display) -> str:
    """Say what is saved, or what becomes heavier, with its range.

    Parameters
    ----------
    saved_kg : Range
        Mass saved; negative where it becomes heavier.
    display : Display
        How numbers are shown.

    Returns
    -------
    str
        ``6.2 kg (4.1 to 7.9) saved`` or ``3.1 kg (2.2 to 5.0) heavier``.
    """
    if abs(saved_kg.likely) < NOTHING_KG and saved_kg.width < NOTHING_KG:
        return "no mass saved"
    if saved_kg.likely >= 0:
        return f"{mass_text(saved_kg, display)} saved"
    return f"{mass_text(-saved_kg, display)} heavier"


def mass_text(mass_kg: Range, display: Display) -> str:
    """Write a mass with its range, alone where it has none."""
    return display.ranged_mass_text(*_likely_first(mass_kg))


def money_text(value: Range, display: Display) -> str:
    """Write money per pack with its range, alone where it has none."""
    likely, low, high = _likely_first(value)
    if round(low) == round(high):
        return joint_money_text(likely, display)
    return display.money_range_text(likely, low, high)


def _likely_first(figure: Range) -> tuple[float, float, float]:
    return figure.likely, figure.low, figure.high


def proposal_text(results: ProposalResults) -> str:
    """State what the proposal saves, how much of the gap that is, and what is left.

    Parameters
    ----------
    results : ProposalResults
        The proposal.

    Returns
    -------
    str
        Whole sentences; a proposal that makes the pack heavier says so first.
    """
    display, totals = Display(results.study), results.totals
    subject = results.study.subject
    if not results.effects:
        return f"{_none_counts(results)} {subject} stays at {_today(results)}."
    proposed = mass_text(totals.proposed_kg, display)
    if totals.saved_kg.likely < -NOTHING_KG:
        lead = (
            f"The proposal makes {subject} heavier: from {_today(results)} to "
            f"{proposed}."
        )
    else:
        lead = (
            f"{subject} goes from {_today(results)} to {proposed}: "
            f"{saving_text(totals.saved_kg, display)}."
        )
    said = [lead, _gap_text(results, display), _counted(results)]
    if totals.add_back_kg.high > 0:
        held = mass_text(totals.add_back_kg, display)
        said.append(f"{held} of add-backs are in it.")
    return " ".join(filter(None, said))


def _counted(results: ProposalResults) -> str:
    """Say how many changes count, are refused, and are switched off."""
    every, refused = len(results.changes), len(results.ledger.refused)
    off = every - len(results.effects) - refused
    said = [f"{len(results.effects)} of {every} {plural('change', every)} count"]
    said += [f"{refused} {'is' if refused == 1 else 'are'} refused"] if refused else []
    said += [f"{off} {'is' if off == 1 else 'are'} switched off"] if off else []
    return f"{listed(tuple(said))}."


def _today(results: ProposalResults) -> str:
    return Display(results.study).mass_text(results.totals.today_kg)


def _none_counts(results: ProposalResults) -> str:
    if not results.changes:
        return f"The study {results.study.name} has no changes."
    if results.ledger.refused:
        return "No change counts: each that is switched on is refused."
    return "No change is switched on."


def _gap_text(results: ProposalResults, display: Display) -> str:
    totals, study = results.totals, results.study
    if math.isnan(totals.gap_kg):
        problem = results.gap.missing
        return f"There is no gap to close: {problem.what}" if problem else ""
    gap = display.mass_text(abs(totals.gap_kg))
    if totals.gap_kg <= 0:
        return f"{study.subject} is {gap} lighter than {study.reference} already."
    counted = f"gap of {gap} to {study.reference}, counted {study.basis}"
    if totals.saved_kg.likely <= 0:
        left = display.mass_text(totals.gap_left_kg)
        return f"Of the {counted}, {left} are left."
    share = display.share_text(totals.share_of_gap)
    if totals.gap_left_kg <= 0:
        return f"That is {share} of the {counted}."
    left = display.mass_text(totals.gap_left_kg)
    return f"That is {share} of the {counted}; {left} are left."


def cost_text(results: ProposalResults) -> str:
    """Say what the proposal is worth and costs per pack, and what is not known.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    """
    display, totals = Display(results.study), results.totals
    if not results.effects:
        return ""
    worth = display.worth_text(results.study.worth_likely_per_kg)
    net = money_text(totals.net_worth, display)
    said = [f"At {worth} it is worth {net} a pack after all costs."]
    seconds = seconds_text(totals.seconds.likely, display)
    count = abs(totals.pieces)
    verb = "go" if totals.pieces >= 0 else "come"
    said.append(
        f"Line time changes by {seconds} a pack; {count} {plural('piece', count)} of "
        f"joints {verb}."
    )
    once = totals.tooling.likely + totals.validation_cost.likely
    if once > 0:
        said.append(
            f"Spent once: {money_text(totals.tooling, display)} for tools and "
            f"{money_text(totals.validation_cost, display)} for validation."
        )
        said.append(volume_text(totals.break_even_volume, display))
    said.append(_lead_text(results, display))
    if totals.unknown:
        names = listed(totals.unknown, most=3)
        said.append(f"Some money of {names} is not known and counts as nothing.")
    return " ".join(filter(None, said))


def _lead_text(results: ProposalResults, display: Display) -> str:
    """Say which change takes longest until it can be on the line."""
    leads = [(one.lead_weeks, one.name) for one in results.effects if one.lead_weeks]
    if not leads:
        return ""
    weeks, name = max(leads, key=lambda lead: lead[0].likely)
    low, likely, high = (format_number(end, style=display.style) for end in weeks.ends)
    if weeks.width == 0:
        return f"{name} takes longest: {likely} weeks."
    return f"{name} takes longest: {likely} weeks ({low} to {high})."


def volume_text(break_even_volume: float, display: Display) -> str:
    """Say from which volume a change or a proposal pays.

    Parameters
    ----------
    break_even_volume : float
        Packs a year, infinite where never, NaN where it is not known.
    display : Display
        How numbers are shown.
    """
    if math.isnan(break_even_volume):
        return ""
    if math.isinf(break_even_volume):
        return "It pays at no volume."
    if break_even_volume == 0:
        return "It pays from the first pack on."
    packs = format_number(math.ceil(break_even_volume), style=display.style)
    return f"It pays from {packs} packs a year on."


def secondary_text(results: ProposalResults) -> str:
    """Say that no secondary mass is in the saving.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    """
    if results.study.programme is ProgrammeKind.RUNNING:
        return "Secondary mass is zero in a running change."
    return "Secondary mass is not counted: what else becomes lighter is not promised."


def refusal_text(problem: Problem) -> str:
    """Say why a change does not count."""
    return f"{problem.record} does not count: {problem.what} {problem.remedy}".strip()


def add_back_text(back: AddedBack, display: Display) -> str:
    """Say what is added back for which parts, or why it is not.

    Parameters
    ----------
    back : AddedBack
        An add-back of a change.
    display : Display
        How numbers are shown.
    """
    key, mass = back.add_back.key, mass_text(back.mass_kg, display)
    parts = listed(back.parts, most=3)
    if back.waived:
        reason = back.waived.strip().rstrip(".")
        return f"{key} for {parts}, {mass}, is taken out of the sum: {reason}."
    if back.covered_by:
        return f"{key} for {parts} is not counted: {back.covered_by} is there."
    per = ""
    if back.add_back.per is Per.BOLT:
        count = round(back.amount)
        per = f" for {count} {plural('screw', count)}"
    elif back.add_back.per is Per.AREA and back.amount > 0:
        area = format_number(back.amount, 2, style=display.style)
        per = f" over {labelled(area, 'm2')}"
    words = " ".join(filter(None, (back.add_back.rule, sized_text(back, display))))
    return f"{key} for {parts}: {mass}{per}. {words}"


def sized_text(back: AddedBack, display: Display) -> str:
    """Say what a plate was sized with, empty for other add-backs.

    Parameters
    ----------
    back : AddedBack
        An add-back of a change.
    display : Display
        How numbers are shown.
    """
    if back.plate is None:
        return ""

    def number(value: float, decimals: int = 0) -> str:
        return format_number(value, decimals, style=display.style)

    case = back.plate.case
    low, likely, high = (number(wall, 1) for wall in back.plate.wall_mm.ends)
    apart = labelled(number(2 * case.half_pitch_mm), "mm")
    rise = labelled(number(case.allowed_rise_k), "K")
    flux = labelled(number(case.flux_w_m2 / 1000), "kW/m²")
    wall = labelled(likely, "mm")
    return (
        f"Sized by its heat path: {wall} ({low} to {high}) of aluminium keep within "
        f"{rise} midway between coolant lines {apart} apart at {flux}."
    )


def duty_text(reopened: ReopenedDuty) -> str:
    """Say which function is validated again, for which changes, by which rules.

    Parameters
    ----------
    reopened : ReopenedDuty
        The function with the changes that reopen it.
    """
    rules = "; ".join(rule_text(rule) for rule in reopened.duty.rules)
    return f"{reopened.duty.key} ({listed(reopened.changes, most=3)}): {rules}."


def rule_text(rule: Rule) -> str:
    """Write a requirement with its clause and its mark."""
    clause = f", {rule.clause}" if rule.clause else ""
    return f"{rule.requirement}{clause} [{rule.mark}]"


def note_texts(notes: Iterable[Problem]) -> list[str]:
    """Write what has to be known about changes, each with its remedy."""
    return [f"{note.record}: {note.what} {note.remedy}".strip() for note in notes]
