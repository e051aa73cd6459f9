"""Seal lines: how far apart the screws of a flange may stand, and what each presses.

The flange between two screws is a beam of width a and thickness t, held at both ends
against turning. The gasket of width b presses on it with p_max at the screws and p_min
midway, in between as a parabola; midway the flange gives way by dH, which the gasket
loses in compression. All functions broadcast; what is unknown, zero or negative where
it has to be above zero gives NaN.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

STANDARD_GRAVITY_M_S2 = 9.80665
"""Exact by definition (3rd CGPM, 1901; NIST SP 330)."""
WATER_DENSITY_KG_M3 = 1000.0


def greatest_pitch_mm(
    modulus_mpa: ArrayLike,
    thickness_mm: ArrayLike,
    *,
    flange_width_mm: ArrayLike,
    gasket_width_mm: ArrayLike,
    pressure_low_mpa: ArrayLike,
    pressure_high_mpa: ArrayLike,
    allowed_loss_mm: ArrayLike,
) -> FloatArray:
    """Give the greatest pitch, ``[480 (a/b) E t^3 dH / (13 p_min + 2 p_max)]^(1/4)``.

    Elementary formula of enclosure design (variables in print with makers of gaskets;
    the constants are those of the clamped beam of this module, derived).

    Parameters
    ----------
    modulus_mpa : array_like
        Design modulus ``E`` of the flange, MPa; of a polymer hot and in the long term.
    thickness_mm : array_like
        Thickness ``t`` of the flange, mm.
    flange_width_mm, gasket_width_mm : array_like
        Widths ``a`` and ``b``, mm; only their ratio counts.
    pressure_low_mpa, pressure_high_mpa : array_like
        Pressure of the gasket midway and at the screws, MPa.
    allowed_loss_mm : array_like
        Compression ``dH`` that the gasket may lose between two screws, mm.

    Returns
    -------
    ndarray
        Pitch from screw to screw in mm, of the broadcast shape.

    Examples
    --------
    A polymer flange of 6 mm with 3.6 GPa under soft foam:

    >>> pitch = greatest_pitch_mm(
    ...     3600.0,
    ...     6.0,
    ...     flange_width_mm=12.0,
    ...     gasket_width_mm=12.0,
    ...     pressure_low_mpa=0.03,
    ...     pressure_high_mpa=0.08,
    ...     allowed_loss_mm=0.4,
    ... )
    >>> print(pitch.round(1))
    128.4
    """
    stiffness = _stiffness_n_mm(
        modulus_mpa, thickness_mm, flange_width_mm, gasket_width_mm
    )
    pressure = _weighted_pressure_mpa(pressure_low_mpa, pressure_high_mpa)
    fourth = stiffness * positive_or_nan(allowed_loss_mm) / pressure
    return as_floats(fourth**0.25)


def compression_loss_mm(
    modulus_mpa: ArrayLike,
    thickness_mm: ArrayLike,
    *,
    pitch_mm: ArrayLike,
    flange_width_mm: ArrayLike,
    gasket_width_mm: ArrayLike,
    pressure_low_mpa: ArrayLike,
    pressure_high_mpa: ArrayLike,
) -> FloatArray:
    """Give the loss midway, ``(13 p_min + 2 p_max) b C^4 / (480 E a t^3)``.

    The inverse of `greatest_pitch_mm`. With one pressure it is the uniformly loaded
    clamped beam, ``p b C^4 / (32 E a t^3)``.

    Parameters
    ----------
    modulus_mpa, thickness_mm : array_like
        Design modulus in MPa and thickness in mm of the flange.
    pitch_mm : array_like
        Pitch ``C`` from screw to screw, mm.
    flange_width_mm, gasket_width_mm : array_like
        Widths in mm; only their ratio counts.
    pressure_low_mpa, pressure_high_mpa : array_like
        Pressure of the gasket midway and at the screws, MPa.

    Returns
    -------
    ndarray
        Loss of compression midway between two screws in mm, of the broadcast shape.

    Examples
    --------
    >>> loss = compression_loss_mm(
    ...     70_000.0,
    ...     1.5,
    ...     pitch_mm=[70.0, 95.0],
    ...     flange_width_mm=12.0,
    ...     gasket_width_mm=12.0,
    ...     pressure_low_mpa=0.03,
    ...     pressure_high_mpa=0.08,
    ... )
    >>> print(loss.round(2))
    [0.12 0.4 ]
    """
    stiffness = _stiffness_n_mm(
        modulus_mpa, thickness_mm, flange_width_mm, gasket_width_mm
    )
    pressure = _weighted_pressure_mpa(pressure_low_mpa, pressure_high_mpa)
    return as_floats(pressure * positive_or_nan(pitch_mm) ** 4 / stiffness)


def least_joint_count(length_mm: ArrayLike, pitch_mm: ArrayLike) -> FloatArray:
    """Give how many screws a closed seal line needs at least, ``ceil(L / C)``.

    Parameters
    ----------
    length_mm : array_like
        Length of the closed line, mm.
    pitch_mm : array_like
        Greatest pitch, mm.

    Returns
    -------
    ndarray
        Whole numbers as float64, of the broadcast shape.

    Examples
    --------
    >>> print(least_joint_count(6000.0, [128.4, 100.0, 95.0]))
    [47. 60. 64.]
    """
    pitches = positive_or_nan(length_mm) / positive_or_nan(pitch_mm)
    # A length that is a whole number of pitches needs no screw for the last digit.
    return as_floats(np.ceil(pitches * (1.0 - 1e-12)))


def line_load_n_mm(pressure_mpa: ArrayLike, width_mm: ArrayLike) -> FloatArray:
    """Give the load per length of a gasket, ``q = p b``.

    Parameters
    ----------
    pressure_mpa : array_like
        Pressure on the gasket, MPa.
    width_mm : array_like
        Width of the gasket, mm.

    Returns
    -------
    ndarray
        N/mm, of the broadcast shape.

    Examples
    --------
    >>> print(line_load_n_mm(0.08, 12.0))
    0.96
    """
    return positive_or_nan(pressure_mpa) * positive_or_nan(width_mm)


def load_per_joint_n(line_load_n_mm: ArrayLike, pitch_mm: ArrayLike) -> FloatArray:
    """Give what each screw of a line carries, ``F = q C``.

    Parameters
    ----------
    line_load_n_mm : array_like
        Load per length of the line, N/mm.
    pitch_mm : array_like
        Pitch from screw to screw, mm.

    Returns
    -------
    ndarray
        N, of the broadcast shape.

    Examples
    --------
    >>> print(load_per_joint_n(0.96, 70.0).round(1))
    67.2
    """
    return positive_or_nan(line_load_n_mm) * positive_or_nan(pitch_mm)


def lift_line_load_n_mm(
    pressure_kpa: ArrayLike, area_m2: ArrayLike, *, length_mm: ArrayLike
) -> FloatArray:
    """Give what a pressure on a cover puts on its seal line, ``q = p A / L``.

    Inside it lifts the cover; the same pressure outside, water for instance, presses it
    on.

    Parameters
    ----------
    pressure_kpa : array_like
        Pressure difference across the cover, kPa.
    area_m2 : array_like
        Area inside the seal line, m2.
    length_mm : array_like
        Length of the seal line, mm.

    Returns
    -------
    ndarray
        N per mm of the line, of the broadcast shape.

    Examples
    --------
    >>> print(lift_line_load_n_mm(9.8, 1.7, length_mm=6600.0).round(2))
    2.52
    """
    newtons = 1000.0 * as_floats(pressure_kpa) * positive_or_nan(area_m2)
    return newtons / positive_or_nan(length_mm)


def water_pressure_kpa(depth_m: ArrayLike) -> FloatArray:
    """Give the pressure of still water, ``rho g h`` with 1000 kg/m3.

    Parameters
    ----------
    depth_m : array_like
        Depth below the surface, m.

    Returns
    -------
    ndarray
        kPa, of the broadcast shape.

    Examples
    --------
    >>> print(water_pressure_kpa(1.0).round(1))
    9.8
    """
    pascals = WATER_DENSITY_KG_M3 * STANDARD_GRAVITY_M_S2 * as_floats(depth_m)
    return pascals / 1000.0


def _stiffness_n_mm(
    modulus_mpa: ArrayLike,
    thickness_mm: ArrayLike,
    flange_width_mm: ArrayLike,
    gasket_width_mm: ArrayLike,
) -> FloatArray:
    """Give ``480 (a/b) E t^3``; 384 E I with ``I = a t^3 / 12`` is 32 E a t^3."""
    ratio = positive_or_nan(flange_width_mm) / positive_or_nan(gasket_width_mm)
    return 480.0 * ratio * positive_or_nan(modulus_mpa) * _cubed(thickness_mm)


def _weighted_pressure_mpa(low_mpa: ArrayLike, high_mpa: ArrayLike) -> FloatArray:
    """Give ``13 p_min + 2 p_max``, 15 times the uniform pressure of equal effect."""
    return 13.0 * positive_or_nan(low_mpa) + 2.0 * positive_or_nan(high_mpa)


def _cubed(thickness_mm: ArrayLike) -> FloatArray:
    return as_floats(positive_or_nan(thickness_mm) ** 3)
