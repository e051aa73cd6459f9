"""What a comparison of candidate materials holds."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchpack.errors import Problem
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.results.change_checks_function import ABOUT_AS_HEAVY
from benchpack.results.check import Check
from benchpack.results.closure import Grade

FloatArray = NDArray[np.float64]
PRICE_SHARE = 0.25
"""Half width of a price of material as a share of it: recalled ranges of bought-in
prices run about so far to either side of their middle (from memory)."""
_WORST_FIRST = (Grade.FAIL, Grade.LOOK, Grade.NONE, Grade.GOOD)
_NAN = math.nan


@dataclass(frozen=True, slots=True)
class Candidate:
    """One material for a part; NaN where not known, masses and money per pack.

    Parameters
    ----------
    name : str
        Name of the material.
    material : Material or None
        Its record, None where the library has none.
    is_today : bool
        True for the part as it is.
    mass_kg, mass_low_kg, mass_high_kg : float
        Mass at equal function by design values, with the range of computed masses.
    sheet_mass_kg : float
        Mass by the data sheet, without knock-downs.
    wall_mm : float
        Wall.
    wall_is_minimum : bool
        True where the least wall that can be made sets it.
    governing : str
        What sizes it, empty where not known.
    cost, cost_low, cost_high : float
        Cost of the material in the part, without scrap; its range is that of mass and
        price together.
    deflection_mm, deflection_today_mm : float
        Deflection of this candidate and of today's part.
    deflection_kind : str
        Under what; empty for what is neither panel nor beam.
    heat_k, heat_today_k : float
        Rise across the part in the heat path; NaN for what is in none.
    checks : tuple of Check
        The checks of the change to it.
    problem : Problem or None
        Why it cannot be computed.
    """

    name: str
    material: Material | None = None
    is_today: bool = False
    mass_kg: float = _NAN
    mass_low_kg: float = _NAN
    mass_high_kg: float = _NAN
    sheet_mass_kg: float = _NAN
    wall_mm: float = _NAN
    wall_is_minimum: bool = False
    governing: str = ""
    cost: float = _NAN
    cost_low: float = _NAN
    cost_high: float = _NAN
    deflection_mm: float = _NAN
    deflection_today_mm: float = _NAN
    deflection_kind: str = ""
    heat_k: float = _NAN
    heat_today_k: float = _NAN
    checks: tuple[Check, ...] = ()
    problem: Problem | None = None

    @property
    def minimum_wall_mm(self) -> float:
        """Least wall that can be made, NaN where not known."""
        least = None if self.material is None else self.material.minimum_wall_mm
        return _NAN if least is None else least

    @property
    def grade(self) -> Grade:
        """The worst of its checks; none where there are none."""
        grades = {check.grade for check in self.checks}
        return next((one for one in _WORST_FIRST if one in grades), Grade.NONE)

    def count(self, grade: Grade) -> int:
        """Give how many of its checks stand so.

        Parameters
        ----------
        grade : Grade
            A grade.
        """
        return Counter(check.grade for check in self.checks)[grade]


@dataclass(frozen=True, slots=True, eq=False)
class Candidates:
    """Candidate materials for one part.

    Parameters
    ----------
    pack : str
        The subject.
    part : Part
        The part as it is.
    governs : tuple of str
        What sizes it.
    currency : str
        Currency of prices.
    today : Candidate
        The part as it is.
    rows : tuple of Candidate
        One for each candidate, in the order asked for.
    notes : tuple of str
        What has to be known, as sentences.
    """

    pack: str
    part: Part
    governs: tuple[str, ...]
    currency: str
    today: Candidate
    rows: tuple[Candidate, ...]
    notes: tuple[str, ...] = ()

    @property
    def names(self) -> tuple[str, ...]:
        """Names of the candidates."""
        return tuple(row.name for row in self.rows)

    def of(self, attribute: str) -> FloatArray:
        """Give one figure of all candidates.

        Parameters
        ----------
        attribute : str
            A figure of `Candidate`, ``mass_kg`` for instance.

        Returns
        -------
        ndarray, shape (candidates,)
            In the order of `rows`, NaN where not known.
        """
        found = [getattr(row, attribute) for row in self.rows]
        return np.array(found, dtype=np.float64)

    @property
    def mass_change_kg(self) -> FloatArray:
        """Mass less today's, shape (candidates,); negative saves."""
        return self.of("mass_kg") - self.today.mass_kg

    @property
    def cost_change(self) -> FloatArray:
        """Cost of material less today's, shape (candidates,)."""
        return self.of("cost") - self.today.cost

    @property
    def is_lighter(self) -> NDArray[np.bool_]:
        """Which are lighter than today at equal function, shape (candidates,)."""
        limit = self.today.mass_kg * (1.0 - ABOUT_AS_HEAVY)
        return np.asarray(self.of("mass_kg") < limit)

    @property
    def is_heavier(self) -> NDArray[np.bool_]:
        """Which are heavier than today at equal function, shape (candidates,)."""
        limit = self.today.mass_kg * (1.0 + ABOUT_AS_HEAVY)
        return np.asarray(self.of("mass_kg") > limit)
