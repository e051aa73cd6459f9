"""What one row of the joining inventory comes to: mass, time and money."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from benchpack.calc.joining import joint_money
from benchpack.errors import Problem
from benchpack.model.designation import Designation
from benchpack.model.families import Counted, JointFamily
from benchpack.model.joint import Joint
from benchpack.model.study import Study
from benchpack.model.words import KnownBy
from benchpack.results.joint_mass import joint_mass_each_g
from benchpack.results.joint_nature import Nature, nature_of
from benchpack.results.joint_problems import joint_problems

__all__ = [
    "JointFacts",
    "Rates",
    "facts_of",
    "joint_facts",
    "joint_mass_each_g",
    "rates_of",
]

USUAL_CURRENCY = "EUR"
"""The currency that the usual costs of the families are in."""


@dataclass(frozen=True, slots=True)
class Rates:
    """What a study sets for the money of joints.

    Parameters
    ----------
    labour_per_h, station_per_h : float
        Money per hour of a person and of a station, in `currency`.
    currency : str
        Code of the currency; usual piece costs are taken in EUR alone.
    """

    labour_per_h: float
    station_per_h: float
    currency: str


def rates_of(study: Study) -> Rates:
    """Give what a study sets for the money of joints."""
    return Rates(study.labour_rate_per_h, study.station_rate_per_h, study.currency)


@dataclass(frozen=True, slots=True, eq=False)
class JointFacts:
    """One joint row with everything that is worked out for it; NaN where unknown.

    Parameters
    ----------
    joint : Joint
        The row.
    family : JointFamily or None
        Its family, None where its text names none.
    read : Designation
        What its designation says.
    mass_each_g : float
        Mass of one piece, or of one whole seam or bead: entered, or worked out.
    known_by : KnownBy
        How that mass is known.
    is_mass_computed : bool
        True where it was worked out.
    mass_u_rel : float
        Its standard uncertainty as a share of it.
    length_each_mm : float
        Length of one line joint.
    time_each_s, cost_each : float
        Seconds to make one, and money for one without labour.
    is_time_usual, is_cost_usual : bool
        True where it is what is usual for the family, not entered.
    mass_kg, seconds, money : float
        Of all pieces; money with labour and station time, in the study's currency.
    pieces : int
        Pieces of a point joint, or of seams without a length; 0 for a line.
    line_mm : float
        Length of all lines, 0 for a point joint.
    size, drive : str
        ``M6x20`` and ``hex 10``; empty where there is none.
    problems : tuple of Problem
        What is amiss, each with the joint's name and the column.
    kind : str
        Name of the family, or the text that names none.
    mass_u_kg : float
        Standard uncertainty of the mass of all pieces, which err alike.
    tool : str
        What the line needs for it: a drive, a setting tool by size, a weld or bead
        head. Empty for what is pushed in by hand, and where the family is not known.
    is_fastener : bool
        True for a bought piece: screw, nut, insert, rivet, clip.
    is_seal_line : bool
        True for a gasket, a sealant bead, and any bead whose role is to seal.
    clamps_seal : bool
        True for screws, studs and nuts whose role names a seal.
    """

    joint: Joint
    family: JointFamily | None
    read: Designation
    mass_each_g: float
    known_by: KnownBy
    is_mass_computed: bool
    mass_u_rel: float
    length_each_mm: float
    time_each_s: float
    is_time_usual: bool
    cost_each: float
    is_cost_usual: bool
    mass_kg: float
    seconds: float
    money: float
    pieces: int
    line_mm: float
    size: str
    drive: str
    problems: tuple[Problem, ...]
    kind: str
    mass_u_kg: float
    tool: str
    is_fastener: bool
    is_seal_line: bool
    clamps_seal: bool


def joint_facts(joint: Joint, study: Study) -> JointFacts:
    """Work out one joint row.

    Parameters
    ----------
    joint : Joint
        The row.
    study : Study
        Labour and station rate, and the currency.
    """
    return facts_of((joint,), study)[0]


def facts_of(joints: Iterable[Joint], study: Study) -> tuple[JointFacts, ...]:
    """Work out many joint rows at once.

    Parameters
    ----------
    joints : iterable of Joint
        The rows.
    study : Study
        Labour and station rate, and the currency.

    Returns
    -------
    tuple of JointFacts
        In the order of the joints. Time, cost and mass of a line joint that are
        entered are those of the whole line; the family's usual ones are per metre.
    """
    rows = list(joints)
    rates = rates_of(study)
    natures = [nature_of(joint.family, joint.designation) for joint in rows]
    pairs = list(zip(rows, natures, strict=True))
    times = [_time_each_s(joint, nature.family) for joint, nature in pairs]
    costs = [
        _cost_each(joint, nature.family, rates.currency) for joint, nature in pairs
    ]
    money = joint_money(
        [joint.count for joint in rows],
        piece_cost=[cost for cost, _ in costs],
        time_each_s=[seconds for seconds, _ in times],
        labour_rate_per_h=rates.labour_per_h,
        station_rate_per_h=rates.station_per_h,
    )
    columns = (rows, natures, times, costs, money.tolist())
    return tuple(_facts(*row) for row in zip(*columns, strict=True))


def _facts(
    joint: Joint,
    nature: Nature,
    time: tuple[float, bool],
    cost: tuple[float, bool],
    money: float,
) -> JointFacts:
    mass_g, known_by, u_rel = joint_mass_each_g(joint)
    length_mm = math.nan if joint.length_mm is None else joint.length_mm
    has_line = nature.is_line and joint.length_mm is not None
    mass_kg = joint.count * mass_g / 1000
    seals = "seal" in joint.role.casefold()
    return JointFacts(
        joint=joint,
        family=nature.family,
        read=nature.read,
        mass_each_g=mass_g,
        known_by=known_by,
        is_mass_computed=joint.mass_each_g is None and not math.isnan(mass_g),
        mass_u_rel=u_rel,
        length_each_mm=length_mm,
        time_each_s=time[0],
        is_time_usual=time[1],
        cost_each=cost[0],
        is_cost_usual=cost[1],
        mass_kg=mass_kg,
        seconds=joint.count * time[0],
        money=money,
        pieces=0 if has_line else joint.count,
        line_mm=joint.count * length_mm if has_line else 0.0,
        size=nature.read.size,
        drive=nature.drive,
        problems=joint_problems(joint),
        kind=nature.family.name if nature.family else joint.family.strip(),
        mass_u_kg=mass_kg * u_rel,
        tool=nature.tool,
        is_fastener=nature.is_fastener,
        is_seal_line=nature.is_seal or (nature.is_bead and seals),
        clamps_seal=nature.is_clamp and seals,
    )


def _time_each_s(joint: Joint, family: JointFamily | None) -> tuple[float, bool]:
    if joint.time_each_s is not None:
        return joint.time_each_s, False
    if family is None:
        return math.nan, False
    usual = family.time_s.likely * _units(joint, family)
    return usual, not math.isnan(usual)


def _cost_each(
    joint: Joint, family: JointFamily | None, currency: str
) -> tuple[float, bool]:
    if joint.cost_each is not None:
        return joint.cost_each, False
    if family is None or currency != USUAL_CURRENCY:
        return math.nan, False
    usual = family.cost.likely * _units(joint, family)
    return usual, not math.isnan(usual)


def _units(joint: Joint, family: JointFamily) -> float:
    """Give how many of what the family's usual figures are for one joint has."""
    if family.counted is Counted.PIECE:
        return 1.0
    return math.nan if joint.length_mm is None else joint.length_mm / 1000
