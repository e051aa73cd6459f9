"""The study: one subject, what it is measured against, and the assumptions."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from benchpack.errors import DataError, Problem
from benchpack.model.words import Basis, TrendKind


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
        for holds, column, what, remedy in checks
        if not holds
    ]
