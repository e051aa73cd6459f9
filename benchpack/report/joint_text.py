"""Sentences about joints: sums, what is missing, what fasteners are worth."""

from __future__ import annotations

import math
from collections.abc import Sequence

from benchpack.model.study import Study
from benchpack.report.display import Display
from benchpack.report.joint_amounts import (
    amount_text,
    counted_text,
    joint_money_text,
    mass_range_text,
    measure_text,
    seconds_text,
)
from benchpack.results.inventory import Inventory, Measure, totals_of
from benchpack.results.joint_comparison import ComparedRow, FastenerWorth
from benchpack.results.joint_facts import JointFacts
from benchpack.results.wording import listed
from benchpack.units.formatting import format_number

__all__ = [
    "amount_text",
    "compared_text",
    "counted_text",
    "fate_text",
    "joint_money_text",
    "mass_range_text",
    "measure_text",
    "seconds_text",
    "selection_text",
    "unknown_texts",
    "worth_text",
]

_NAMED = 4
"""Names of joints in one sentence; the rest is counted."""


def selection_text(facts: Sequence[JointFacts], study: Study) -> str:
    """Say what some joints come to, and when they go.

    Parameters
    ----------
    facts : sequence of JointFacts
        The joints that are chosen.
    study : Study
        How numbers are shown.

    Returns
    -------
    str
        ``16 screws: 92.8 g, 96 s, 3.76 EUR a pack. They go if the connector plate
        is moulded in.``
    """
    display, totals = Display(study), totals_of(facts)
    if not facts:
        return ""
    measures = (Measure.MASS, Measure.TIME, Measure.MONEY)
    amounts = ", ".join(
        f"{measure} not known"
        if math.isnan(totals.of(measure))
        else amount_text(totals, measure, display)
        for measure in measures
    )
    said = f"{amounts} a pack"
    if all(math.isnan(totals.of(measure)) for measure in measures):
        said = f"{listed(measures)} not known"
    return f"{counted_text(facts, display)}: {said}. {fate_text(facts)}".strip()


def fate_text(facts: Sequence[JointFacts]) -> str:
    """Say which of some joints have to stay and why, or when all of them go.

    Parameters
    ----------
    facts : sequence of JointFacts
        Some joints.

    Returns
    -------
    str
        Empty where none has to stay and they hold no part together.
    """
    staying = [f for f in facts if f.joint.carry_over]
    if staying:
        return _staying(staying, len(facts))
    part = _shared_part(facts) if facts else ""
    if not part:
        return ""
    is_one = len(facts) == 1 and facts[0].joint.count == 1
    return f"{'It goes' if is_one else 'They go'} if the {part} is moulded in."


def _staying(staying: Sequence[JointFacts], rows: int) -> str:
    reasons = dict.fromkeys(f.joint.reason.strip() for f in staying)
    reason = listed(tuple(filter(None, reasons)), most=2)
    lead = "They have to stay" if len(staying) == rows else "Of them "
    if len(staying) != rows:
        names = listed(tuple(f.joint.name for f in staying), most=_NAMED)
        verb = "has" if len(staying) == 1 else "have"
        lead += f"{names} {verb} to stay"
    return f"{lead}: {reason}." if reason else f"{lead}; no reason is recorded."


def _shared_part(facts: Sequence[JointFacts]) -> str:
    """Give the part that all of these hold, the one they are recorded to join first."""
    first = facts[0].joint
    for part in filter(None, (first.joins.strip(), first.to.strip())):
        if all(part in (f.joint.joins.strip(), f.joint.to.strip()) for f in facts):
            return part
    return ""


def worth_text(worth: FastenerWorth, study: Study) -> str:
    """Say plainly what the fasteners of a pack weigh, are worth, and cost.

    Parameters
    ----------
    worth : FastenerWorth
        What was worked out.
    study : Study
        Worth per kilogram and how numbers are shown.
    """
    display, totals = Display(study), worth.fasteners
    if not totals.rows:
        return "No screws, nuts, inserts, rivets or clips are recorded."
    weighs, costs = _weighs(worth, study), _costs(worth, display)
    return f"{weighs}; they cost {costs}. {_verdict(worth)}".strip()


def _weighs(worth: FastenerWorth, study: Study) -> str:
    display, totals = Display(study), worth.fasteners
    pieces = format_number(totals.pieces, style=display.style)
    if math.isnan(totals.of(Measure.MASS)):
        return f"What the {pieces} fasteners weigh is not known"
    money = _least(joint_money_text(worth.worth_likely, display), totals.unknown_mass)
    mass = amount_text(totals, Measure.MASS, display)
    per_kg = display.worth_text(study.worth_likely_per_kg)
    return f"All {pieces} fasteners weigh {mass}: at {per_kg} that is {money} of mass"


def _costs(worth: FastenerWorth, display: Display) -> str:
    totals = worth.fasteners
    pieces = "an unknown sum in pieces"
    if not math.isnan(worth.piece_money):
        money = joint_money_text(worth.piece_money, display)
        pieces = f"{_least(money, worth.unknown_pieces)} in pieces"
    if math.isnan(worth.time_money):
        return f"{pieces}, and their time is not known"
    money = joint_money_text(worth.time_money, display)
    seconds = amount_text(totals, Measure.TIME, display)
    spent = _least(money, totals.unknown_time)
    return f"{pieces} and {seconds}, {spent} of labour and station time"


def _least(text: str, unknown: int) -> str:
    return f"at least {text}" if unknown else text


def _verdict(worth: FastenerWorth) -> str:
    """Say where removing fasteners pays, where enough is known to say so."""
    spent = worth.piece_money + worth.time_money
    if worth.fasteners.unknown_mass or math.isnan(spent):
        return ""
    if worth.worth_likely < spent:
        return "Removing them pays in time and money, rarely in kilograms."
    if worth.unknown_pieces or worth.fasteners.unknown_time:
        return ""
    return "At this worth their mass counts for more than their pieces and time."


def unknown_texts(inventory: Inventory) -> tuple[str, ...]:
    """Say which rows have no mass, time or money, one sentence each.

    Parameters
    ----------
    inventory : Inventory
        The joints of a pack.
    """
    found = []
    totals = inventory.totals
    for measure, column, remedy in (
        (Measure.MASS, "mass_kg", "Weigh 20 of each and divide."),
        (Measure.TIME, "seconds", "Enter the seconds that one takes."),
        (Measure.MONEY, "money", _money_remedy(inventory)),
    ):
        count = totals.unknown(measure)
        if count:
            names = tuple(
                f.joint.name for f in inventory.facts if math.isnan(getattr(f, column))
            )
            verb = "has" if count == 1 else "have"
            word = "cost or time" if measure is Measure.MONEY else str(measure)
            found.append(
                f"{count} of {totals.rows} rows {verb} no {word}: "
                f"{listed(names, most=_NAMED)}. {remedy}"
            )
    if totals.unstated:
        verb, whose = ("does", "its") if totals.unstated == 1 else ("do", "their")
        found.append(
            f"{totals.unstated} of {totals.rows} rows {verb} not say how {whose} mass "
            "is known: the sum has no range."
        )
    return tuple(found)


def _money_remedy(inventory: Inventory) -> str:
    currency = inventory.rates.currency
    if currency == "EUR":
        return "Enter the cost of one and its seconds."
    return f"Usual costs are known in EUR only: enter the cost of one in {currency}."


def compared_text(row: ComparedRow, value: float, study: Study) -> str:
    """Write one figure of a compared row, without its unit but for a share.

    Parameters
    ----------
    row : ComparedRow
        The row.
    value : float
        Its figure of either pack, or the difference.
    study : Study
        How numbers are shown.
    """
    display = Display(study)
    if row.unit == "%":
        return display.share_text(value)
    if row.unit.startswith("kg"):
        value = display.mass(value)
    known = [abs(v) for v in (row.subject, row.reference) if not math.isnan(v)]
    greatest = max(known, default=0.0)
    decimals = 0 if row.unit in ("", "s") or greatest >= 1000 else 1
    if "/" in row.unit or 0 < greatest < 1:
        decimals = 2
    return format_number(value, decimals, style=display.style)
