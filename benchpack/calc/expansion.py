"""A panel of one material on a frame of another as both warm: travel, or stress.

The panel is free to slide at its screws, or held. Signs: travel is positive where the
panel outgrows the frame, stress and force where the panel is pressed. All functions
broadcast; what is unknown, or a size that is not above zero, gives NaN.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc._ranges import poisson_or_nan

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

_PER_MILLION = 1e-6
_MPA_PER_GPA = 1000.0


def mismatch_strain(
    panel_expansion_1e6_k: ArrayLike,
    frame_expansion_1e6_k: ArrayLike,
    *,
    panel_rise_k: ArrayLike,
    frame_rise_k: ArrayLike | None = None,
) -> FloatArray:
    """Give by how much the panel outgrows the frame, ``a_p dT_p - a_f dT_f``.

    Parameters
    ----------
    panel_expansion_1e6_k, frame_expansion_1e6_k : array_like
        Coefficients of linear thermal expansion, 1e-6/K; of a fibre-filled panel that
        in the direction looked at.
    panel_rise_k : array_like
        Rise of the panel since it was mounted, K; negative where it cools.
    frame_rise_k : array_like, optional
        Rise of the frame, K; without it, that of the panel.

    Returns
    -------
    ndarray
        mm per mm, of the broadcast shape.

    Examples
    --------
    Long-glass PP on aluminium, along the flow and across it:

    >>> mismatch_strain([30.0, 50.0], 23.4, panel_rise_k=60.0).round(6)
    array([0.000396, 0.001596])
    """
    frame_rise = panel_rise_k if frame_rise_k is None else frame_rise_k
    panel = as_floats(panel_expansion_1e6_k) * as_floats(panel_rise_k)
    frame = as_floats(frame_expansion_1e6_k) * as_floats(frame_rise)
    return (panel - frame) * _PER_MILLION


def travel_mm(length_mm: ArrayLike, strain: ArrayLike) -> FloatArray:
    """Give how far a free panel slides over its frame, ``strain * length``.

    Parameters
    ----------
    length_mm : array_like
        From the point that is fixed to the one looked at, mm: the whole length when an
        end is fixed, half of it when the middle is.
    strain : array_like
        From `mismatch_strain`.

    Returns
    -------
    ndarray
        mm, of the broadcast shape.

    Examples
    --------
    >>> travel_mm(1500.0, [0.000396, 0.001596]).round(1)
    array([0.6, 2.4])
    """
    return positive_or_nan(length_mm) * as_floats(strain)


def panel_stress_mpa(
    strain: ArrayLike, *, modulus_gpa: ArrayLike, poisson_ratio: ArrayLike = 0.0
) -> FloatArray:
    """Give the stress in a panel held by a rigid frame, ``E strain / (1 - nu)``.

    Held in both directions of its plane it is that; held in one it is ``E strain``,
    given by a Poisson's ratio of 0. An upper bound: a real frame gives way, and a thin
    panel that is pressed bulges long before.

    Parameters
    ----------
    strain : array_like
        From `mismatch_strain`, the same in all directions that are held.
    modulus_gpa : array_like
        Young's modulus of the panel, GPa.
    poisson_ratio : array_like
        Poisson's ratio of a panel held all around; 0 for one held along one line.

    Returns
    -------
    ndarray
        MPa, of the broadcast shape; positive where the panel is pressed.

    Examples
    --------
    >>> held = {"modulus_gpa": 8.0, "poisson_ratio": [0.0, 0.36]}
    >>> panel_stress_mpa(0.001596, **held).round(2)
    array([12.77, 19.95])
    """
    modulus = positive_or_nan(modulus_gpa) * _MPA_PER_GPA
    return as_floats(strain) * modulus / (1.0 - poisson_or_nan(poisson_ratio))


def shared_force_n(
    strain: ArrayLike,
    *,
    panel_modulus_gpa: ArrayLike,
    panel_area_mm2: ArrayLike,
    frame_modulus_gpa: ArrayLike,
    frame_area_mm2: ArrayLike,
) -> FloatArray:
    """Give the force between a panel and a frame that both give way.

    Two bars side by side, joined at their ends:
    ``F = strain / (1 / (E_p A_p) + 1 / (E_f A_f))``. What the screws at one end carry
    together. Bending of the pair is not looked at.

    Parameters
    ----------
    strain : array_like
        From `mismatch_strain`.
    panel_modulus_gpa, frame_modulus_gpa : array_like
        Young's moduli, GPa.
    panel_area_mm2, frame_area_mm2 : array_like
        Sections across the direction looked at, mm2.

    Returns
    -------
    ndarray
        N, of the broadcast shape; positive where the panel is pressed.

    Examples
    --------
    >>> force = shared_force_n(
    ...     0.001596,
    ...     panel_modulus_gpa=8.0,
    ...     panel_area_mm2=3000.0,
    ...     frame_modulus_gpa=69.5,
    ...     frame_area_mm2=1400.0,
    ... )
    >>> print(force.round())
    30725.0
    """
    panel = positive_or_nan(panel_modulus_gpa) * positive_or_nan(panel_area_mm2)
    frame = positive_or_nan(frame_modulus_gpa) * positive_or_nan(frame_area_mm2)
    return as_floats(strain) * _MPA_PER_GPA / (1.0 / panel + 1.0 / frame)
