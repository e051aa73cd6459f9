"""The study: one subject, what it is measured against, and the assumptions."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from benchpack.errors import DataError, Problem
from benchpack.model.change_words import ProgrammeKind
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

PROPOSAL_ASSUMPTIONS: tuple[str, ...] = (
    "programme",
    "yearly_volume",
    "programme_years",
    "discount_rate",
    "tooling_budget",
)
"""Attributes that only a proposal asks; no gap changes with them."""


@dataclass(frozen=True, slots=True)
class Study:
    """A question put to the library.

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
    worth_low_per_kg, worth_likely_per_kg, worth_high_per_kg : float
        Worth of one kilogram saved, in `currency`.
    worth_reason : str
        Why the worth is what it is, and where it comes from.
    currency : str
        Code of three letters.
    share_captured : float
        Share of the gap that is thought to be reachable, 0 to 1.
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
    programme : ProgrammeKind
        When in the life of the pack the proposal is to come.
    yearly_volume : int or None
        Packs per year; None for the subject's own yearly volume.
    programme_years : float
        Years over which tools are paid back.
    discount_rate : float
        Interest per year as a fraction.
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
    worth_low_per_kg: float = 1.0
    worth_likely_per_kg: float = 3.0
    worth_high_per_kg: float = 6.0
    worth_reason: str = ""
    currency: str = "EUR"
    share_captured: float = 1.0
    target_kg: float | None = None
    mass_unit: str = "kg"
    decimal_mark: str = "."
    labour_rate_per_h: float = 45.0
    station_rate_per_h: float = 60.0
    takt_time_s: float = 60.0
    thread_friction: float = 0.12
    head_friction: float = 0.12
    programme: ProgrammeKind = ProgrammeKind.UNSTATED
    yearly_volume: int | None = None
    programme_years: float = 7.0
    discount_rate: float = 0.08
    tooling_budget: float | None = None

    def __post_init__(self) -> None:
        problems = _study_problems(self)
        if problems:
            raise DataError(*problems)

    @property
    def worth_per_kg(self) -> tuple[float, float, float]:
        """Worth per kilogram as low, likely, high."""
        return (
            self.worth_low_per_kg,
            self.worth_likely_per_kg,
            self.worth_high_per_kg,
        )


def _study_problems(study: Study) -> list[Problem]:
    low, likely, high = study.worth_per_kg
    checks = (
        (bool(study.name.strip()), "name", "The study has no name.", "Give it one."),
        (
            all(math.isfinite(w) and 0 <= w <= 1e6 for w in (low, likely, high)),
            "worth",
            f"Worth per kilogram is {low:g}, {likely:g}, {high:g}.",
            "Each has to be zero or more, and at most a million.",
        ),
        (
            low <= likely <= high,
            "worth",
            f"Worth runs {low:g}, {likely:g}, {high:g}.",
            "Give it as low, likely, high, each at least the one before.",
        ),
        (
            0 <= study.exponent <= 1,
            "exponent",
            f"The exponent is {study.exponent:g}.",
            "It has to lie between 0 and 1.",
        ),
        (
            0 <= study.share_captured <= 1,
            "share captured",
            f"The share captured is {study.share_captured:g}.",
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
    )
    return [
        Problem(what, remedy, column=column, record=study.name)
        for holds, column, what, remedy in (
            *checks,
            *_joining_checks(study),
            *_proposal_checks(study),
        )
        if not holds
    ]


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


def _proposal_checks(study: Study) -> list[tuple[bool, str, str, str]]:
    """Give what the assumptions of the proposal have to keep, likewise."""
    volume, budget = study.yearly_volume, study.tooling_budget
    years, rate = study.programme_years, study.discount_rate
    return [
        (
            study.programme in tuple(ProgrammeKind),
            "programme",
            f"The programme {study.programme!r} is not known.",
            f"Use one of: {', '.join(filter(None, ProgrammeKind))}.",
        ),
        (
            volume is None or (0 < volume <= 1e9 and volume == int(volume)),
            "yearly volume",
            f"The yearly volume is {volume}.",
            "Give a whole number above 0, up to a thousand million.",
        ),
        (
            0 < years <= 100,
            "programme years",
            f"The programme runs {years:g} years.",
            "Give more than 0, up to 100.",
        ),
        (
            0 <= rate <= 1,
            "discount rate",
            f"The discount rate is {rate:g} per year.",
            "Give it as a fraction from 0 to 1, 0.08 for 8 %.",
        ),
        (
            budget is None or 0 <= budget <= 1e9,
            "tooling budget",
            f"The tooling budget is {budget} {study.currency}.",
            "Give 0 or more, up to a thousand million.",
        ),
    ]
