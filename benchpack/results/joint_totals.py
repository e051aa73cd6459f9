"""Sums over joints: pieces, length, mass with its uncertainty, time and money."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from benchpack.calc.uncertainty import combine_kg
from benchpack.results.joint_facts import JointFacts


class Measure(StrEnum):
    """What of a group of joints is looked at."""

    COUNT = "count"
    MASS = "mass"
    TIME = "time"
    MONEY = "money"


@dataclass(frozen=True, slots=True)
class Totals:
    """Sums over some joints; a row without a figure adds nothing to that sum.

    Parameters
    ----------
    rows : int
        Number of rows.
    pieces : int
        Pieces of point joints, and seams whose length is not recorded.
    line_m : float
        Length of line joints, m.
    mass_kg, mass_u_kg : float
        Mass and its standard uncertainty, kg: rows in quadrature (JCGM 100:2008,
        5.1.2), the pieces of one row alike. NaN where a row with a mass does not say
        how that is known.
    seconds, money : float
        Time, and pieces with labour and station time in the study's currency.
    unknown_mass, unknown_time, unknown_money : int
        Rows without it.
    unstated : int
        Rows with a mass that do not say how it is known.
    """

    rows: int
    pieces: int
    line_m: float
    mass_kg: float
    mass_u_kg: float
    seconds: float
    money: float
    unknown_mass: int
    unknown_time: int
    unknown_money: int
    unstated: int = 0

    def of(self, measure: Measure) -> float:
        """Give one of the sums, NaN where no row has a figure for it.

        Parameters
        ----------
        measure : Measure
            Which: pieces, kg, s, or money.
        """
        if measure is Measure.COUNT:
            return float(self.pieces)
        value = {
            Measure.MASS: self.mass_kg,
            Measure.TIME: self.seconds,
            Measure.MONEY: self.money,
        }[measure]
        return math.nan if self.unknown(measure) == self.rows > 0 else value

    def unknown(self, measure: Measure) -> int:
        """Give the number of rows without a figure for a measure."""
        return {
            Measure.COUNT: 0,
            Measure.MASS: self.unknown_mass,
            Measure.TIME: self.unknown_time,
            Measure.MONEY: self.unknown_money,
        }[measure]


def totals_of(facts: Iterable[JointFacts]) -> Totals:
    """Sum up some joints.

    Parameters
    ----------
    facts : iterable of JointFacts
        The joints; the order does not matter.
    """
    held = list(facts)
    masses = [f.mass_kg for f in held if f.mass_kg == f.mass_kg]
    seconds = [f.seconds for f in held if f.seconds == f.seconds]
    money = [f.money for f in held if f.money == f.money]
    parts = [f.mass_u_kg for f in held if f.mass_kg > 0]
    return Totals(
        rows=len(held),
        pieces=sum(f.pieces for f in held),
        line_m=math.fsum(f.line_mm for f in held) / 1000,
        mass_kg=math.fsum(masses),
        mass_u_kg=float(combine_kg(parts)),
        seconds=math.fsum(seconds),
        money=math.fsum(money),
        unknown_mass=len(held) - len(masses),
        unknown_time=len(held) - len(seconds),
        unknown_money=len(held) - len(money),
        unstated=sum(u != u for u in parts),
    )
