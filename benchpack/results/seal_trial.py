"""A seal line as it is tried out: another flange, gasket or number of screws."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from benchpack.calc.seal_line import (
    compression_loss_mm,
    greatest_pitch_mm,
    least_joint_count,
    lift_line_load_n_mm,
    line_load_n_mm,
    load_per_joint_n,
)
from benchpack.results.closure import Grade
from benchpack.results.seal_lines import SealLine

NEAR = 0.05
"""Share of the pitch within which it is near the allowed one: pressures of a gasket
that err by a fifth move it by so much."""
LEAK_TEST_KPA = 5.0
"""Overpressure of a leak test, 2 to 5 kPa (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class SealTrial:
    """One seal line as it is tried out; NaN where a figure is not known.

    Parameters
    ----------
    modulus_mpa, thickness_mm : float
        Design modulus and thickness of the flange that is tried.
    flange_width_mm, gasket_width_mm : float
        Widths; only their ratio counts for the pitch. Where either is NaN the flange is
        taken as wide as the gasket.
    pressure_low_mpa, pressure_high_mpa : float
        Pressure of the gasket midway and at a screw.
    allowed_loss_mm : float
        Compression that the gasket may lose between two screws.
    length_mm : float
        Length of the closed line.
    count : int or None
        Number of screws, None for the least that holds.
    added_n_mm : float
        ``E t^3`` of flange parts that bend with the flange, N mm.
    other_n_mm : float
        ``E t^3`` of the flange on the other side, N mm; NaN takes it as rigid.
    area_m2 : float
        Area inside the line.
    overpressure_kpa : float
        Pressure inside the pack that lifts the cover.
    bonds : bool
        True where the seal sticks to both flanges.
    """

    modulus_mpa: float = math.nan
    thickness_mm: float = math.nan
    flange_width_mm: float = math.nan
    gasket_width_mm: float = math.nan
    pressure_low_mpa: float = math.nan
    pressure_high_mpa: float = math.nan
    allowed_loss_mm: float = math.nan
    length_mm: float = math.nan
    count: int | None = None
    added_n_mm: float = 0.0
    other_n_mm: float = math.nan
    area_m2: float = math.nan
    overpressure_kpa: float = LEAK_TEST_KPA
    bonds: bool = False


@dataclass(frozen=True, slots=True)
class Tried:
    """What a trial comes to; NaN and None where a figure is not known.

    Parameters
    ----------
    allowed_mm : float
        Greatest pitch, the stiffer flange taken as rigid.
    least_count : int or None
        Screws that hold the line at that pitch or closer.
    allowed_both_mm : float
        Greatest pitch with the give of both flanges; NaN where the other is rigid.
    least_count_both : int or None
        Screws at that pitch or closer.
    is_other_softer : bool
        True where the other flange governs.
    count : int or None
        Screws as tried, the least where none were named.
    pitch_mm : float
        Pitch with that many.
    loss_mm : float
        Compression lost midway at that pitch.
    gasket_n, lift_n : float
        What gasket and overpressure put on each screw.
    grade : Grade
        How the pitch stands; none where it is not known.
    """

    allowed_mm: float
    least_count: int | None
    allowed_both_mm: float
    least_count_both: int | None
    is_other_softer: bool
    count: int | None
    pitch_mm: float
    loss_mm: float
    gasket_n: float
    lift_n: float
    grade: Grade


def trial_of(line: SealLine) -> SealTrial:
    """Give the trial that is the recorded seal line, its present screws with it.

    Parameters
    ----------
    line : SealLine
        A seal line of a pack.
    """
    flange, other, kind = line.governing, line.other, line.kind
    trial = SealTrial(
        modulus_mpa=flange.modulus_mpa,
        thickness_mm=flange.thickness_mm,
        gasket_width_mm=line.gasket_width_mm,
        length_mm=line.length_mm,
        count=line.count or None,
        added_n_mm=flange.added_n_mm,
        other_n_mm=other.stiffness_n_mm,
        area_m2=line.covered_area_m2,
        bonds=line.bonds,
    )
    if kind is None:
        return trial
    return replace(
        trial,
        pressure_low_mpa=kind.pressure_low_mpa,
        pressure_high_mpa=kind.pressure_high_mpa,
        allowed_loss_mm=kind.allowed_loss_mm,
    )


def try_out(trial: SealTrial) -> Tried:
    """Compute a trial.

    Parameters
    ----------
    trial : SealTrial
        What is tried.
    """
    own = trial.modulus_mpa * trial.thickness_mm**3 + trial.added_n_mm
    other = trial.other_n_mm
    softest = own if math.isnan(other) else min(own, other)
    both = math.nan if math.isnan(other) else own * other / (own + other)
    allowed, with_both = _allowed_mm(trial, softest), _allowed_mm(trial, both)
    least, least_both = _least(trial, allowed), _least(trial, with_both)
    count = least if trial.count is None else trial.count
    pitch = math.nan if not count else trial.length_mm / count
    gasket = line_load_n_mm(trial.pressure_high_mpa, trial.gasket_width_mm)
    lift = lift_line_load_n_mm(
        trial.overpressure_kpa, trial.area_m2, length_mm=trial.length_mm
    )
    return Tried(
        allowed_mm=allowed,
        least_count=least,
        allowed_both_mm=with_both,
        least_count_both=least_both,
        is_other_softer=other < own,
        count=count,
        pitch_mm=pitch,
        loss_mm=_lost_mm(trial, softest, pitch),
        gasket_n=float(load_per_joint_n(gasket, pitch)),
        lift_n=float(load_per_joint_n(lift, pitch)),
        grade=_pitch_grade(pitch, allowed, with_both, bonds=trial.bonds),
    )


def _pitch_grade(
    pitch_mm: float, allowed_mm: float, allowed_both_mm: float, *, bonds: bool
) -> Grade:
    """Grade a pitch: good with the give of both flanges, look near the allowed one.

    A seal that bonds keeps tight as far as it stretches: beyond the pitch it wants a
    look, and does not fail.
    """
    if math.isnan(pitch_mm) or math.isnan(allowed_mm):
        return Grade.NONE
    # A count made of the allowed pitch gives it back but for the last digit.
    if pitch_mm <= np.fmin(allowed_mm, allowed_both_mm) * (1 + 1e-9):
        return Grade.GOOD
    is_near = pitch_mm <= allowed_mm * (1 + NEAR)
    return Grade.LOOK if is_near or bonds else Grade.FAIL


def _allowed_mm(trial: SealTrial, stiffness_n_mm: float) -> float:
    # E t^3 stands for the modulus of a flange of thickness 1.
    pitch = greatest_pitch_mm(
        stiffness_n_mm,
        1.0,
        flange_width_mm=_width_ratio(trial),
        gasket_width_mm=1.0,
        pressure_low_mpa=trial.pressure_low_mpa,
        pressure_high_mpa=trial.pressure_high_mpa,
        allowed_loss_mm=trial.allowed_loss_mm,
    )
    return float(pitch)


def _lost_mm(trial: SealTrial, stiffness_n_mm: float, pitch_mm: float) -> float:
    lost = compression_loss_mm(
        stiffness_n_mm,
        1.0,
        pitch_mm=pitch_mm,
        flange_width_mm=_width_ratio(trial),
        gasket_width_mm=1.0,
        pressure_low_mpa=trial.pressure_low_mpa,
        pressure_high_mpa=trial.pressure_high_mpa,
    )
    return float(lost)


def _width_ratio(trial: SealTrial) -> float:
    ratio = trial.flange_width_mm / trial.gasket_width_mm
    return 1.0 if math.isnan(ratio) else ratio


def _least(trial: SealTrial, pitch_mm: float) -> int | None:
    count = float(least_joint_count(trial.length_mm, pitch_mm))
    return None if math.isnan(count) else int(count)
