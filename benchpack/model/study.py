"""The study: one subject, what it is measured against, and the assumptions."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from benchpack.errors import DataError, Problem
from benchpack.model.assumptions import Assumptions, assumption_problems
from benchpack.model.words import Basis, TrendKind

JOINING_ASSUMPTIONS: tuple[tuple[str, str, str, float], ...] = (
    ("labour_rate_per_h", "labour rate", "CUR/h", 10_000.0),
    ("station_rate_per_h", "station rate", "CUR/h", 100_000.0),
    ("takt_time_s", "takt time", "s", 86_400.0),
    ("thread_friction", "thread friction", "", 1.0),
    ("head_friction", "head friction", "", 1.0),
)
"""Attribute, name, unit and greatest value of what joining is reckoned with.

The starting rates are from memory; friction 0.12 is the middle of class B of VDI
2230-1, what a screw as delivered is taken to have.
"""


@dataclass(frozen=True, slots=True)
class Study(Assumptions):
    """A question put to the library, with what it assumes.

    Parameters
    ----------
    name : str
        Name of the study.
    subject, reference : str
        Names of the pack under study and of the pack it is measured against.
    peers : tuple of str
        Packs in the comparison; empty means every other pack of the library.
    basis : Basis
        How the gap is counted.
    exponent : float
        How the mass that is not cells grows with energy, 0 to 1 (basis "scaled").
    trend : TrendKind
        Which line is laid through the peers.
    currency : str
        Code of three letters.
    target_kg : float or None
        The saving that is promised, kg per pack.
    mass_unit : str
        ``kg`` or ``lb`` on screen.
    decimal_mark : str
        ``.`` or ``,`` on screen.
    labour_rate_per_h, station_rate_per_h : float
        Money for one hour of a person and of an assembly station, in `currency`.
    takt_time_s : float
        Seconds in which the line finishes one pack.
    thread_friction, head_friction : float
        Friction coefficients in the thread and under the head of a screw.
    tooling_budget : float or None
        One-time money that may be spent, in `currency`; None for no limit.

    Raises
    ------
    DataError
        With one problem per attribute that cannot stand.
    """

    name: str = "Study"
    subject: str = ""
    reference: str = ""
    peers: tuple[str, ...] = ()
    basis: Basis = Basis.EQUAL_ENERGY
    exponent: float = 0.5
    trend: TrendKind = TrendKind.LEAST_SQUARES
    currency: str = "EUR"
    target_kg: float | None = None
    mass_unit: str = "kg"
    decimal_mark: str = "."
    labour_rate_per_h: float = 45.0
    station_rate_per_h: float = 60.0
    takt_time_s: float = 60.0
    thread_friction: float = 0.12
    head_friction: float = 0.12
    tooling_budget: float | None = None

    def __post_init__(self) -> None:
        problems = _study_problems(self)
        if problems:
            raise DataError(*problems)


def _study_problems(study: Study) -> list[Problem]:
    budget = study.tooling_budget
    checks = (
        (bool(study.name.strip()), "name", "The study has no name.", "Give it one."),
        (
            0 <= study.exponent <= 1,
            "exponent",
            f"The exponent is {study.exponent:g}.",
            "It has to lie between 0 and 1.",
        ),
        (
            study.target_kg is None or 0 <= study.target_kg < 1e6,
            "target",
            f"The target is {study.target_kg} kg.",
            "It has to be zero or more.",
        ),
        (
            re.fullmatch(r"[A-Z]{3}", study.currency) is not None,
            "currency",
            f"The currency {study.currency!r} is no code.",
            "Use three capital letters such as EUR.",
        ),
        (
            study.mass_unit in ("kg", "lb"),
            "mass unit",
            f"The mass unit {study.mass_unit!r} is not offered.",
            "Use kg or lb.",
        ),
        (
            study.decimal_mark in (".", ","),
            "decimal mark",
            f"The decimal mark {study.decimal_mark!r} is not offered.",
            "Use a point or a comma.",
        ),
        (
            budget is None or 0 <= budget <= 1e9,
            "tooling budget",
            f"The tooling budget is {budget} {study.currency}.",
            "Give 0 or more, up to a thousand million.",
        ),
    )
    own = [
        Problem(what, remedy, column=column, record=study.name)
        for holds, column, what, remedy in (*checks, *_joining_checks(study))
        if not holds
    ]
    return [*own, *assumption_problems(study, study.name)]


def _joining_checks(study: Study) -> list[tuple[bool, str, str, str]]:
    """Give what the joining assumptions have to keep, as rows of the check above."""
    checks = []
    for name, title, unit, ceiling in JOINING_ASSUMPTIONS:
        value = getattr(study, name)
        # An hour of nobody costs nothing; a takt of nothing makes no pack.
        zero_is_meant = unit == "CUR/h"
        is_enough = value >= 0 if zero_is_meant else value > 0
        shown = f"{value:g} {unit.replace('CUR', study.currency)}".rstrip()
        low = "Give 0" if zero_is_meant else "Give more than 0, up"
        checks.append(
            (
                math.isfinite(value) and is_enough and value <= ceiling,
                title,
                f"The {title} is {shown}.",
                f"{low} to {ceiling:g}.",
            )
        )
    return checks
