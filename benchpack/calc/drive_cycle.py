"""What a kilogram costs at the wheel: energy against mass over a trace of speed.

Energy against mass is in kWh per 100 km and 100 kg. Between two samples the speed is
taken to change evenly.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats
from benchpack.calc._ranges import (
    closed_share_or_nan,
    not_negative_or_nan,
    share_or_nan,
)
from benchpack.calc.seal_line import STANDARD_GRAVITY_M_S2
from benchpack.errors import RequestError

if TYPE_CHECKING:
    from numpy.typing import ArrayLike, NDArray

DRAG_AREA_M2_PER_KG = 1.0 / 3000.0
"""Drag area over vehicle mass: 0.65 m2 on 1950 kg, a usual car. No source."""
AIR_DENSITY_KG_M3 = 1.2
"""Of dry air at 20 degC, rounded."""

_KMH_PER_M_S = 3.6
_PER_100_KG = 1e7 / 3.6e6  # N/kg to kWh per 100 km and 100 kg
_BLOCK = 512


@dataclass(frozen=True, slots=True, eq=False)
class WheelEnergy:
    """Energy at the wheel that goes with mass.

    Parameters
    ----------
    traction_per_100_kg : ndarray
        While the wheels drive, kWh per 100 km and 100 kg.
    braking_per_100_kg : ndarray
        While the wheels brake, zero or below, in the same unit.
    distance_km : float
        Length of the trace.
    """

    traction_per_100_kg: FloatArray
    braking_per_100_kg: FloatArray
    distance_km: float


@dataclass(frozen=True, slots=True, eq=False)
class _Steps:
    """Intervals of a trace: mean speed, acceleration and way of each, in SI units."""

    speed_m_s: FloatArray
    acceleration_m_s2: FloatArray
    way_m: FloatArray


def wheel_energy(
    time_s: ArrayLike,
    speed_kmh: ArrayLike,
    *,
    rolling_resistance: ArrayLike = 0.010,
    rotating: ArrayLike = 1.03,
    drag_area_m2_per_kg: ArrayLike = DRAG_AREA_M2_PER_KG,
) -> WheelEnergy:
    """Give the energy at the wheel per mass, ``(1/d) sum (g C_rr + lambda a) v dt``.

    Speed ``v`` is the mean of each interval. An interval drives or brakes by the sign
    of the whole force on the vehicle, ``g C_rr + lambda a + rho/2 (C_d A/m) v^2``: air
    takes some of the braking, so that what is left of it per kilogram is less. Air
    itself does not change with mass and is not in the sum. This is the derivative of
    the two energies by mass (equation of motion, any textbook of vehicle dynamics).
    From standstill to standstill traction and braking add up to ``g C_rr``.

    Parameters
    ----------
    time_s : array_like, shape (samples,)
        Times, rising, s.
    speed_kmh : array_like, shape (samples,)
        Speeds, 0 or more, km/h.
    rolling_resistance : array_like
        Coefficient ``C_rr``, 0 or more.
    rotating : array_like
        ``lambda``, what inertia is with the wheels' and shafts' turning, over the
        mass; 0 or more.
    drag_area_m2_per_kg : array_like
        ``C_d A/m`` of the vehicle, 0 or more; 0 looks at the mass alone.

    Returns
    -------
    WheelEnergy
        Of the broadcast shape of the coefficients. NaN for a trace that covers no way
        or has an unknown, a negative speed or a time that does not rise.

    Raises
    ------
    RequestError
        For times and speeds that are not one beside the other.

    Examples
    --------
    >>> found = wheel_energy([0.0, 10.0, 40.0, 50.0], [0.0, 36.0, 36.0, 0.0])
    >>> print(found.traction_per_100_kg.round(3), found.braking_per_100_kg.round(3))
    0.596 -0.324
    >>> print(found.distance_km)
    0.4
    """
    steps = _steps(as_floats(time_s), as_floats(speed_kmh))
    way_m = float(steps.way_m.sum())
    rolling, inertia, drag = np.broadcast_arrays(
        not_negative_or_nan(rolling_resistance) * STANDARD_GRAVITY_M_S2,
        not_negative_or_nan(rotating),
        not_negative_or_nan(drag_area_m2_per_kg) * (0.5 * AIR_DENSITY_KG_M3),
    )
    traction, braking = _split(steps, rolling.ravel(), inertia.ravel(), drag.ravel())
    scale = _PER_100_KG / way_m if way_m > 0.0 else np.nan
    return WheelEnergy(
        as_floats(traction.reshape(rolling.shape) * scale),
        as_floats(braking.reshape(rolling.shape) * scale),
        way_m / 1000.0,
    )


def mass_energy_per_100_kg(
    traction_per_100_kg: ArrayLike,
    braking_per_100_kg: ArrayLike,
    *,
    drive_efficiency: ArrayLike,
    recuperated_share: ArrayLike,
) -> FloatArray:
    """Give what mass costs from the battery, ``T / eta + r eta B``.

    Parameters
    ----------
    traction_per_100_kg, braking_per_100_kg : array_like
        ``T`` and ``B`` of `wheel_energy`, kWh per 100 km and 100 kg; ``T`` 0 or more,
        ``B`` 0 or less.
    drive_efficiency : array_like
        ``eta`` between battery and wheel, either way, above 0 and at most 1.
    recuperated_share : array_like
        ``r``, share of the braking at the wheel that the drive takes, 0 to 1.

    Returns
    -------
    ndarray
        kWh per 100 km and 100 kg, of the broadcast shape.

    Examples
    --------
    >>> shares = {"drive_efficiency": 0.9, "recuperated_share": [0.6, 0.7]}
    >>> mass_energy_per_100_kg(0.585, -0.312, **shares).round(3)
    array([0.482, 0.453])
    """
    efficiency = share_or_nan(drive_efficiency)
    spent = not_negative_or_nan(traction_per_100_kg) / efficiency
    braking = not_negative_or_nan(-as_floats(braking_per_100_kg))
    returned = closed_share_or_nan(recuperated_share) * efficiency * braking
    return as_floats(spent - returned)


def _steps(time_s: FloatArray, speed_kmh: FloatArray) -> _Steps:
    if time_s.ndim != 1 or time_s.shape != speed_kmh.shape:
        raise RequestError("A trace has one speed for each of its times.")
    spans = np.diff(time_s)
    speeds = speed_kmh / _KMH_PER_M_S
    if not (np.all(spans > 0.0) and np.all(speeds >= 0.0) and spans.size):
        nothing = np.full(1, np.nan)
        return _Steps(nothing, nothing, nothing)
    means = 0.5 * (speeds[1:] + speeds[:-1])
    return _Steps(means, np.diff(speeds) / spans, means * spans)


def _split(
    steps: _Steps, rolling: FloatArray, inertia: FloatArray, drag: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Give the work per mass of the intervals that drive, and of those that brake."""
    traction, braking = np.empty((2, rolling.size))
    ways = np.stack((steps.way_m, steps.acceleration_m_s2 * steps.way_m), axis=1)
    squared = np.square(steps.speed_m_s)
    # In blocks, so that thousands of samples of a long trace fit into memory.
    for start in range(0, rolling.size, _BLOCK):
        part = slice(start, start + _BLOCK)
        force = (
            rolling[part, np.newaxis]
            + inertia[part, np.newaxis] * steps.acceleration_m_s2
            + drag[part, np.newaxis] * squared
        )
        known = np.where(np.isnan(drag[part]), np.nan, 1.0)
        for work, chosen in ((traction, force > 0.0), (braking, force <= 0.0)):
            work[part] = known * _work(chosen, ways, rolling[part], inertia[part])
    return traction, braking


def _work(
    chosen: NDArray[np.bool_],
    ways: FloatArray,
    rolling: FloatArray,
    inertia: FloatArray,
) -> FloatArray:
    way, sped = (chosen.astype(np.float64) @ ways).T
    return as_floats(rolling * way + inertia * sped)
