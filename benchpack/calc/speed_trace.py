"""Traces of speed of our own, for where nobody supplies one. They are no standard."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from benchpack.calc._arrays import FloatArray

_SAMPLES_OF_A_RAMP = 61

_TOWN: tuple[tuple[float, float], ...] = (
    (15.0, 0.0),
    (8.0, 30.0),
    (24.0, 30.0),
    (7.0, 0.0),
    (20.0, 0.0),
    (13.0, 50.0),
    (38.0, 50.0),
    (6.0, 28.0),
    (12.0, 28.0),
    (8.0, 50.0),
    (25.0, 50.0),
    (12.0, 0.0),
    (32.0, 0.0),
    (5.0, 16.0),
    (9.0, 16.0),
    (4.0, 0.0),
    (11.0, 0.0),
    (10.0, 40.0),
    (30.0, 40.0),
    (10.0, 0.0),
    (18.0, 0.0),
)
"""Seconds, and the speed in km/h at their end; invented, from nobody's measurement."""


@dataclass(frozen=True, slots=True, eq=False)
class SpeedTrace:
    """Speed over time.

    Parameters
    ----------
    time_s : ndarray, shape (samples,)
        Times from 0, s.
    speed_kmh : ndarray, shape (samples,)
        Speeds, km/h.
    """

    time_s: FloatArray
    speed_kmh: FloatArray


def constant_speed_trace(
    speed_kmh: float, *, length_km: float = 10.0, acceleration_m_s2: float = 1.0
) -> SpeedTrace:
    """Give a trace of our own: a start, a stretch at one speed, a stop.

    Invented, no standard.

    Parameters
    ----------
    speed_kmh : float
        Speed of the stretch, above 0, km/h.
    length_km : float
        Length of the stretch, above 0, km; start and stop come on top.
    acceleration_m_s2 : float
        Of start and stop, above 0, m/s2.

    Returns
    -------
    SpeedTrace
        Of 122 samples; two unknown ones where a figure is unknown or not above zero.

    Examples
    --------
    >>> trace = constant_speed_trace(90.0, length_km=5.0)
    >>> print(trace.time_s[-1], trace.speed_kmh.max())
    250.0 90.0
    """
    figures = (speed_kmh, length_km, acceleration_m_s2)
    if not all(math.isfinite(figure) and figure > 0.0 for figure in figures):
        return SpeedTrace(np.full(2, np.nan), np.full(2, np.nan))
    ramp_s = speed_kmh / 3.6 / acceleration_m_s2
    stretch_s = 3600.0 * length_km / speed_kmh
    rising = np.linspace(0.0, 1.0, _SAMPLES_OF_A_RAMP)
    return SpeedTrace(
        np.concatenate((rising * ramp_s, ramp_s + stretch_s + rising * ramp_s)),
        np.concatenate((rising, rising[::-1])) * speed_kmh,
    )


def urban_trace(top_speed_kmh: float = 50.0) -> SpeedTrace:
    """Give a trace of our own: stop and go in a town.

    Invented, no standard, and from nobody's measurement: four starts, a slowing down
    in between, and a third of the time at standstill.

    Parameters
    ----------
    top_speed_kmh : float
        Greatest speed, above 0, km/h; all speeds go with it, the times stay.

    Returns
    -------
    SpeedTrace
        A sample each second; two unknown ones where the speed is unknown or not above
        zero.

    Examples
    --------
    >>> trace = urban_trace()
    >>> print(trace.time_s.size, trace.speed_kmh.max())
    318 50.0
    """
    if not (math.isfinite(top_speed_kmh) and top_speed_kmh > 0.0):
        return SpeedTrace(np.full(2, np.nan), np.full(2, np.nan))
    spans, speeds = np.array(_TOWN).T
    corners_s = np.concatenate(([0.0], np.cumsum(spans)))
    time_s = np.arange(corners_s[-1] + 1.0)
    speed_kmh = np.interp(time_s, corners_s, np.append(0.0, speeds))
    return SpeedTrace(time_s, speed_kmh * (top_speed_kmh / speeds.max()))
