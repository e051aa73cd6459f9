"""The closed lists of words that records use."""

from __future__ import annotations

from enum import StrEnum


class EnergyBasis(StrEnum):
    """Which energy a pack's figure means."""

    UNKNOWN = "unknown"
    GROSS = "gross"
    USABLE = "usable"


class KnownBy(StrEnum):
    """How a mass is known, best first after the unstated."""

    UNSTATED = ""
    WEIGHED = "weighed"
    WEIGHED_BATCH = "weighed batch"
    GEOMETRY = "geometry"
    STANDARD_TABLE = "standard table"
    DECLARED = "declared"
    LITERATURE = "literature"
    ESTIMATE = "estimate"
    ASSUMED = "assumed to close"


RELATIVE_UNCERTAINTY: dict[KnownBy, float | None] = {
    KnownBy.UNSTATED: None,
    KnownBy.WEIGHED: 0.002,
    KnownBy.WEIGHED_BATCH: 0.005,
    KnownBy.GEOMETRY: 0.04,
    KnownBy.STANDARD_TABLE: 0.07,
    KnownBy.DECLARED: 0.03,
    KnownBy.LITERATURE: 0.15,
    KnownBy.ESTIMATE: 0.25,
    KnownBy.ASSUMED: 0.30,
}
"""Default standard uncertainty as a share of the mass (common practice, no source)."""


class Basis(StrEnum):
    """How a gap is counted."""

    AS_WEIGHED = "as weighed"
    EQUAL_ENERGY = "at equal energy"
    SCALED = "scaled"
    TREND = "to the trend"
    STRUCTURE = "structure only"

    @property
    def option(self) -> str:
        """The word for this basis on the command line."""
        return _OPTIONS[self]

    @classmethod
    def from_option(cls, option: str) -> Basis:
        """Give the basis that a command-line word means.

        Raises
        ------
        KeyError
            For a word that means none.
        """
        return {word: basis for basis, word in _OPTIONS.items()}[option]


_OPTIONS = {
    Basis.AS_WEIGHED: "as-weighed",
    Basis.EQUAL_ENERGY: "equal-energy",
    Basis.SCALED: "scaled",
    Basis.TREND: "trend",
    Basis.STRUCTURE: "structure",
}


class TrendKind(StrEnum):
    """Which line is laid through the peers."""

    LEAST_SQUARES = "least squares"
    THEIL_SEN = "Theil-Sen"
    POWER_LAW = "power law"


class Subsystem(StrEnum):
    """Where in the pack a part or joint belongs."""

    CELLS = "cells"
    MODULES = "module structure"
    TRAY = "tray"
    LID = "lid"
    FRAME = "frame"
    COOLING = "cooling"
    CONDUCTORS = "conductors"
    ELECTRONICS = "electronics"
    JOINTS = "joints"
    SEALS = "seals"
    OTHER = "other"


UNACCOUNTED = "unaccounted"
"""Name of the row that holds what the recorded parts and joints do not explain."""

GOVERNS = (
    "",
    "panel bending stiffness",
    "panel bending strength",
    "panel buckling",
    "beam bending stiffness",
    "beam bending strength",
    "axial stiffness",
    "axial strength",
    "geometry only",
)
"""What sizes a part when its material changes; empty where nobody has said."""
