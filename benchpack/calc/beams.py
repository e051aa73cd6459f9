"""Beams: how far they bend and how hard, under one force or a uniform load.

Slender beams of one section and small deflections (Euler and Bernoulli). "Load" is the
whole force on the beam: one force at the end of a cantilever or at the middle of a
span, or ``q L`` spread evenly.

================  =======  =====================  ===============
support           load     greatest deflection    greatest moment
================  =======  =====================  ===============
cantilever        point    ``F L^3 / (3 E I)``    ``F L``
cantilever        uniform  ``F L^3 / (8 E I)``    ``F L / 2``
simply supported  point    ``F L^3 / (48 E I)``   ``F L / 4``
simply supported  uniform  ``5 F L^3 / (384 EI)`` ``F L / 8``
fixed             point    ``F L^3 / (192 E I)``  ``F L / 8``
fixed             uniform  ``F L^3 / (384 E I)``  ``F L / 12``
================  =======  =====================  ===============

Roark's Formulas for Stress and Strain, table of beams (from memory). All functions
broadcast; what is unknown, or a size that is not above zero, gives NaN.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, TypeAlias

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.errors import RequestError

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

Support: TypeAlias = Literal["cantilever", "simply supported", "fixed"]
Spread: TypeAlias = Literal["point", "uniform"]

_MPA_PER_GPA = 1000.0
_FACTORS: dict[tuple[Support, Spread], tuple[float, float]] = {
    ("cantilever", "point"): (1 / 3, 1.0),
    ("cantilever", "uniform"): (1 / 8, 1 / 2),
    ("simply supported", "point"): (1 / 48, 1 / 4),
    ("simply supported", "uniform"): (5 / 384, 1 / 8),
    ("fixed", "point"): (1 / 192, 1 / 8),
    ("fixed", "uniform"): (1 / 384, 1 / 12),
}


def beam_deflection_mm(
    load_n: ArrayLike,
    *,
    length_mm: ArrayLike,
    modulus_gpa: ArrayLike,
    second_moment_mm4: ArrayLike,
    support: Support,
    spread: Spread,
) -> FloatArray:
    """Give the greatest deflection (table of this module).

    Parameters
    ----------
    load_n : array_like
        The whole load, N; its sign is that of the deflection.
    length_mm : array_like
        Free length or span, mm.
    modulus_gpa : array_like
        Young's modulus, GPa; of a polymer hot and in the long term.
    second_moment_mm4 : array_like
        Second moment of area, mm4.
    support : {"cantilever", "simply supported", "fixed"}
        How it is held: at one end, turning at both, clamped at both.
    spread : {"point", "uniform"}
        One force, or the same load all along.

    Returns
    -------
    ndarray
        mm, of the broadcast shape.

    Raises
    ------
    RequestError
        For a support or a spread that is not in the table.

    Examples
    --------
    A cross member of 1.2 m between the sides of a tray:

    >>> deflection = beam_deflection_mm(
    ...     1000.0,
    ...     length_mm=1200.0,
    ...     modulus_gpa=69.5,
    ...     second_moment_mm4=558_532.0,
    ...     support="fixed",
    ...     spread="uniform",
    ... )
    >>> print(deflection.round(3))
    0.116
    """
    factor, _ = _factors(support, spread)
    stiffness = positive_or_nan(modulus_gpa) * _MPA_PER_GPA
    stiffness = stiffness * positive_or_nan(second_moment_mm4)
    cube = as_floats(positive_or_nan(length_mm) ** 3)
    return factor * as_floats(load_n) * cube / stiffness


def beam_moment_n_mm(
    load_n: ArrayLike, *, length_mm: ArrayLike, support: Support, spread: Spread
) -> FloatArray:
    """Give the size of the greatest bending moment (table of this module).

    Parameters
    ----------
    load_n : array_like
        The whole load, N.
    length_mm, support, spread
        As in `beam_deflection_mm`.

    Returns
    -------
    ndarray
        N mm, of the broadcast shape, with the sign of the load: at the clamped end or
        ends, or at the middle of a span that is free to turn.

    Raises
    ------
    RequestError
        For a support or a spread that is not in the table.

    Examples
    --------
    >>> print(
    ...     beam_moment_n_mm(
    ...         1000.0, length_mm=1200.0, support="fixed", spread="uniform"
    ...     ).round()
    ... )
    100000.0
    """
    _, factor = _factors(support, spread)
    return factor * as_floats(load_n) * positive_or_nan(length_mm)


def beam_stress_mpa(
    moment_n_mm: ArrayLike, section_modulus_mm3: ArrayLike
) -> FloatArray:
    """Give the stress at the outer fibre, ``M / W``.

    Parameters
    ----------
    moment_n_mm : array_like
        Bending moment, N mm.
    section_modulus_mm3 : array_like
        Section modulus, mm3.

    Returns
    -------
    ndarray
        MPa, of the broadcast shape.

    Examples
    --------
    >>> print(beam_stress_mpa(100_000.0, 13_963.3).round(2))
    7.16
    """
    return as_floats(moment_n_mm) / positive_or_nan(section_modulus_mm3)


def _factors(support: Support, spread: Spread) -> tuple[float, float]:
    if (support, spread) not in _FACTORS:
        raise RequestError(f"No beam is known that is {support!r} under {spread!r}.")
    return _FACTORS[support, spread]
