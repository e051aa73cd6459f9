"""A busbar that grows as it warms: free, held at its ends, and with an offset leg.

All functions broadcast; what is unknown, or a size that is not above zero, gives NaN.
Forces and stresses are elastic: above the yield strength they are not reached.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

_PER_MILLION = 1e-6
_MPA_PER_GPA = 1000.0


def free_growth_mm(
    length_mm: ArrayLike, *, expansion_1e6_k: ArrayLike, rise_k: ArrayLike
) -> FloatArray:
    """Give how much longer a warm bar is, ``alpha L dT``.

    Parameters
    ----------
    length_mm : array_like
        Length, mm.
    expansion_1e6_k : array_like
        Coefficient of linear thermal expansion, 1e-6/K.
    rise_k : array_like
        Rise of temperature against what holds it, K; negative where it cools.

    Returns
    -------
    ndarray
        mm, of the broadcast shape.

    Examples
    --------
    >>> free_growth_mm(1000.0, expansion_1e6_k=[17.0, 23.5], rise_k=60.0).round(2)
    array([1.02, 1.41])
    """
    strain = as_floats(expansion_1e6_k) * _PER_MILLION * as_floats(rise_k)
    return as_floats(length_mm) * strain


def held_stress_mpa(
    modulus_gpa: ArrayLike, *, expansion_1e6_k: ArrayLike, rise_k: ArrayLike
) -> FloatArray:
    """Give the stress in a bar that may not grow, ``E alpha dT``, as pressure.

    Parameters
    ----------
    modulus_gpa : array_like
        Young's modulus, GPa.
    expansion_1e6_k, rise_k
        As in `free_growth_mm`.

    Returns
    -------
    ndarray
        MPa, of the broadcast shape; positive where the bar is pressed.

    Examples
    --------
    >>> held_stress_mpa([115.0, 70.0], expansion_1e6_k=[17.0, 23.5], rise_k=60.0)
    array([117.3,  98.7])
    """
    strain = free_growth_mm(1.0, expansion_1e6_k=expansion_1e6_k, rise_k=rise_k)
    return positive_or_nan(modulus_gpa) * _MPA_PER_GPA * strain


def held_force_n(
    section_mm2: ArrayLike,
    *,
    modulus_gpa: ArrayLike,
    expansion_1e6_k: ArrayLike,
    rise_k: ArrayLike,
) -> FloatArray:
    """Give the force on what holds a bar at both ends, ``E A alpha dT``.

    Rigid terminals and a straight bar that neither yields nor bows out.

    Parameters
    ----------
    section_mm2 : array_like
        Section, mm2.
    modulus_gpa, expansion_1e6_k, rise_k
        As in `held_stress_mpa`.

    Returns
    -------
    ndarray
        N, of the broadcast shape.

    Examples
    --------
    >>> copper = {"modulus_gpa": 115.0, "expansion_1e6_k": 17.0}
    >>> print(held_force_n(40.0, **copper, rise_k=60.0).round())
    4692.0
    """
    stress = held_stress_mpa(
        modulus_gpa, expansion_1e6_k=expansion_1e6_k, rise_k=rise_k
    )
    return positive_or_nan(section_mm2) * stress


def bowing_force_n(
    length_mm: ArrayLike,
    *,
    width_mm: ArrayLike,
    thickness_mm: ArrayLike,
    modulus_gpa: ArrayLike,
    foils: ArrayLike = 1,
) -> FloatArray:
    """Give the push at which a straight bar bows out, ``4 pi^2 E I / L^2``.

    Euler's load of a column with both ends clamped (Timoshenko and Gere, Theory of
    Elastic Stability, 2.2; from memory). A held bar cannot push much harder than this.

    Parameters
    ----------
    length_mm : array_like
        Length between the clamped ends, mm.
    width_mm, thickness_mm, modulus_gpa, foils
        As in `leg_force_n`.

    Returns
    -------
    ndarray
        N, of the broadcast shape.

    Examples
    --------
    >>> bar = {"width_mm": 20.0, "thickness_mm": 3.0, "modulus_gpa": 115.0}
    >>> bowing_force_n([100.0, 1000.0], **bar).round()
    array([20430.,   204.])
    """
    length = positive_or_nan(length_mm)
    stiffness = _bending_stiffness(width_mm, thickness_mm, modulus_gpa, foils)
    return 4.0 * np.pi**2 * stiffness / length**2


def leg_travel_mm(growth_mm: ArrayLike, legs: ArrayLike) -> FloatArray:
    """Give the travel that each leg of an offset takes, ``growth / legs``.

    Parameters
    ----------
    growth_mm : array_like
        Growth of the bar, mm.
    legs : array_like
        Equal legs that share it: one in an offset, two in a U-loop.

    Returns
    -------
    ndarray
        mm, of the broadcast shape.

    Examples
    --------
    >>> leg_travel_mm(1.02, [1, 2])
    array([1.02, 0.51])
    """
    return as_floats(growth_mm) / positive_or_nan(legs)


def leg_force_n(
    travel_mm: ArrayLike,
    *,
    leg_mm: ArrayLike,
    width_mm: ArrayLike,
    thickness_mm: ArrayLike,
    modulus_gpa: ArrayLike,
    foils: ArrayLike = 1,
) -> FloatArray:
    """Give the force that shifts a leg sideways, ``12 E I x / L^3``.

    Guided cantilever: both ends stay parallel (beam theory; the form is that of the
    expansion loops of piping). Foils lie loose on each other: ``I = b t^3 / (12 n^2)``.

    Parameters
    ----------
    travel_mm : array_like
        Travel of one end of the leg against the other, mm.
    leg_mm : array_like
        Free length of the leg, mm.
    width_mm : array_like
        Width of the bar, mm.
    thickness_mm : array_like
        Thickness in the direction of the travel, all foils together, mm.
    modulus_gpa : array_like
        Young's modulus, GPa.
    foils : array_like
        Number of equal foils the thickness is laminated of; 1 for a solid bar.

    Returns
    -------
    ndarray
        N, of the broadcast shape.

    Examples
    --------
    >>> bar = {"width_mm": 20.0, "thickness_mm": 2.0, "modulus_gpa": 115.0}
    >>> leg_force_n(0.51, leg_mm=76.6, **bar, foils=[1, 4]).round(1)
    array([20.9,  1.3])
    """
    stiffness = _bending_stiffness(width_mm, thickness_mm, modulus_gpa, foils)
    return 12.0 * stiffness * as_floats(travel_mm) / positive_or_nan(leg_mm) ** 3


def leg_stress_mpa(
    travel_mm: ArrayLike,
    *,
    leg_mm: ArrayLike,
    thickness_mm: ArrayLike,
    modulus_gpa: ArrayLike,
    foils: ArrayLike = 1,
) -> FloatArray:
    """Give the bending stress at the ends of a leg, ``3 E h x / L^2``.

    ``h`` is the thickness of one foil.

    Parameters
    ----------
    travel_mm, leg_mm, thickness_mm, modulus_gpa, foils
        As in `leg_force_n`.

    Returns
    -------
    ndarray
        MPa, of the broadcast shape.

    Examples
    --------
    >>> bar = {"thickness_mm": 2.0, "modulus_gpa": 115.0}
    >>> print(leg_stress_mpa(0.51, leg_mm=76.6, **bar).round())
    60.0
    """
    foil = positive_or_nan(thickness_mm) / positive_or_nan(foils)
    modulus = positive_or_nan(modulus_gpa) * _MPA_PER_GPA
    return 3.0 * modulus * foil * as_floats(travel_mm) / positive_or_nan(leg_mm) ** 2


def least_leg_mm(
    travel_mm: ArrayLike,
    *,
    allowed_stress_mpa: ArrayLike,
    thickness_mm: ArrayLike,
    modulus_gpa: ArrayLike,
    foils: ArrayLike = 1,
) -> FloatArray:
    """Give the shortest leg that stays within a stress, ``sqrt(3 E h x / s)``.

    Parameters
    ----------
    travel_mm : array_like
        Travel of the leg, mm; its size counts, not its sign.
    allowed_stress_mpa : array_like
        Greatest bending stress, MPa.
    thickness_mm, modulus_gpa, foils
        As in `leg_force_n`.

    Returns
    -------
    ndarray
        mm, of the broadcast shape.

    Examples
    --------
    >>> bar = {"allowed_stress_mpa": 60.0, "modulus_gpa": 115.0}
    >>> least_leg_mm(0.51, thickness_mm=[1.5, 2.0, 3.0], **bar).round()
    array([66., 77., 94.])
    """
    foil = positive_or_nan(thickness_mm) / positive_or_nan(foils)
    modulus = positive_or_nan(modulus_gpa) * _MPA_PER_GPA
    travel = np.abs(as_floats(travel_mm))
    squared = 3.0 * modulus * foil * travel / positive_or_nan(allowed_stress_mpa)
    root: FloatArray = np.sqrt(squared)
    return root


def _bending_stiffness(
    width_mm: ArrayLike,
    thickness_mm: ArrayLike,
    modulus_gpa: ArrayLike,
    foils: ArrayLike,
) -> FloatArray:
    """Give E I in N mm2 of loose foils that share a thickness."""
    foil = positive_or_nan(thickness_mm) / positive_or_nan(foils)
    second_moment = as_floats(foils) * positive_or_nan(width_mm) * foil**3 / 12.0
    return positive_or_nan(modulus_gpa) * _MPA_PER_GPA * second_moment
