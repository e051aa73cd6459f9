"""The words of the worth: what is valued, and how a vehicle answers to mass."""

from __future__ import annotations

from enum import StrEnum


class ValuedMass(StrEnum):
    """Which saving the money of a study is reckoned for."""

    PROPOSAL = "the proposal"
    SHARE = "share captured"
    TARGET = "the target"


class EnergyFrom(StrEnum):
    """Where the energy that a vehicle spends on carrying mass comes from."""

    GIVEN = "given"
    CYCLE = "drive cycle"
    URBAN = "urban pattern"
    STEADY = "constant speed"


class Sizing(StrEnum):
    """What stays the same when a vehicle becomes lighter."""

    RANGE_KEPT = "range kept"
    BATTERY_KEPT = "battery kept"
