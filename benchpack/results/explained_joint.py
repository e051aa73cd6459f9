"""Where the figures of one joint row come from."""

from __future__ import annotations

import math

from benchpack.model.families import Counted, Range
from benchpack.results.figure import Figure, Input
from benchpack.results.joint_facts import USUAL_CURRENCY, JointFacts, Rates
from benchpack.results.joint_mass import joint_mass

PRACTICE = "common practice, no source"
TWO_U = "plus and minus two standard uncertainties (JCGM 100:2008, 6.3)"
_ENTERED = "as entered"


def rate_inputs(rates: Rates) -> tuple[Input, Input]:
    """Give the rates of a study as inputs of a figure."""
    unit = f"{rates.currency}/h"
    return (
        Input("r_l, labour rate", rates.labour_per_h, unit, "study"),
        Input("r_s, station rate", rates.station_per_h, unit, "study"),
    )


def mass_figure(facts: JointFacts) -> Figure:
    """Explain the mass of all pieces of a joint.

    Parameters
    ----------
    facts : JointFacts
        The joint.
    """
    found = joint_mass(facts.joint)
    known_by = str(found.known_by) or "not said how known"
    each = Input("m_1, mass of one", found.mass_g, "g", known_by)
    uncertain = (
        Input("u(m_1) / m_1", found.u_rel, "", f"{known_by}; the pieces err alike"),
    )
    half = 2 * facts.mass_u_kg
    return Figure(
        key="joint mass",
        label=f"Mass of {_named(facts)}",
        value=facts.mass_kg,
        unit="kg",
        formula=f"n m_1, m_1 = {found.formula}" if found.formula else "n m_1",
        inputs=(
            _count(facts),
            each,
            *found.inputs,
            *(uncertain if found.u_rel > 0 else ()),
        ),
        source=found.source or f"entered, {known_by}",
        low=max(0.0, facts.mass_kg - half) if half > 0 else math.nan,
        high=facts.mass_kg + half if half > 0 else math.nan,
        range_meaning=TWO_U,
        missing=_why_none(facts) if math.isnan(facts.mass_kg) else "",
    )


def time_figure(facts: JointFacts) -> Figure:
    """Explain the seconds of all pieces of a joint.

    Parameters
    ----------
    facts : JointFacts
        The joint.
    """
    return Figure(
        key="joint time",
        label=f"Time for {_named(facts)}",
        value=facts.seconds,
        unit="s",
        formula="n t_1",
        inputs=(_count(facts), *_time(facts)),
        source=PRACTICE,
        missing=_why_none(facts) if math.isnan(facts.seconds) else "",
    )


def money_figure(facts: JointFacts, rates: Rates) -> Figure:
    """Explain the money of all pieces of a joint.

    Parameters
    ----------
    facts : JointFacts
        The joint.
    rates : Rates
        What the study sets.
    """
    missing = ""
    if math.isnan(facts.money):
        missing = _why_none(facts)
        if math.isnan(facts.cost_each) and rates.currency != USUAL_CURRENCY:
            missing = (
                f"Usual costs are known in {USUAL_CURRENCY} only: enter the cost of "
                f"one in {rates.currency}."
            )
    return Figure(
        key="joint money",
        label=f"Money for {_named(facts)}",
        value=facts.money,
        unit=f"{rates.currency} a pack",
        formula="n [c_1 + t_1 (r_l + r_s) / 3600]",
        inputs=(
            _count(facts),
            *_cost(facts, rates.currency),
            *_time(facts),
            *rate_inputs(rates),
        ),
        source=f"pieces with labour and station time; {PRACTICE}",
        missing=missing,
    )


def _named(facts: JointFacts) -> str:
    return f"{facts.joint.name}, {facts.joint.pack}"


def _count(facts: JointFacts) -> Input:
    noun = "lines" if facts.line_mm > 0 else "pieces"
    return Input(f"n, {noun}", facts.joint.count, "", "counted")


def _time(facts: JointFacts) -> tuple[Input, ...]:
    usual = facts.family.time_s if facts.family and facts.is_time_usual else None
    return _each(facts, "t_1, time for one", facts.time_each_s, "s", usual)


def _cost(facts: JointFacts, currency: str) -> tuple[Input, ...]:
    usual = facts.family.cost if facts.family and facts.is_cost_usual else None
    return _each(facts, "c_1, cost of one", facts.cost_each, f"{currency} each", usual)


def _each(
    facts: JointFacts, label: str, value: float, unit: str, usual: Range | None
) -> tuple[Input, ...]:
    """Give a figure of one joint, and the length it was reckoned with."""
    if usual is None or facts.family is None:
        source = "not known" if math.isnan(value) else _ENTERED
        return (Input(label, value, unit, source),)
    family = facts.family
    per = "a metre" if family.counted is Counted.LINE else "a piece"
    source = (
        f"usual for a {family.name}, {usual.low:g} to {usual.high:g} {per}: "
        f"{family.source} ({family.mark})"
    )
    given = (Input(label, value, unit, source),)
    if family.counted is Counted.PIECE:
        return given
    return (*given, Input("L, length", facts.length_each_mm, "mm", _ENTERED))


def _why_none(facts: JointFacts) -> str:
    said = [f"{problem.what} {problem.remedy}".strip() for problem in facts.problems]
    return said[0] if said else "It is not entered, and nothing usual is known of it."
