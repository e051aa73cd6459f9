"""The rectangular plate with clamped edges under uniform load, solved once.

Ritz's method: the deflection is a sum of products of polynomials whose second
derivatives are Legendre polynomials, so that value and slope vanish at the edges
(Shen, SIAM J. Sci. Comput. 15 (1994) 1489-1505; from memory). The factors are smooth
in the ratio of the sides; they are solved for at Chebyshev points and interpolated.
"""

from __future__ import annotations

from functools import cache

import numpy as np
from numpy.polynomial import chebyshev, legendre

from benchpack.calc._arrays import FloatArray, as_floats

SLENDEREST = 8.0
"""Ratio of the sides above which the centre is that of an endless strip, to 1e-7."""
STRIP_DEFLECTION = 1.0 / 384.0
STRIP_EDGE_MOMENT = 1.0 / 12.0

_MODES_ACROSS = 12
_MODES_ALONG = 28
_POINTS = 28


def clamped_factors(ratio: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Give ``w D / (q a^4)`` at the centre and ``M / (q a^2)`` midway at a long edge.

    The ratio of the sides is ``b / a``, 1 or above, or NaN.
    """
    least = 1.0 / SLENDEREST
    place = 2.0 * (1.0 / np.minimum(ratio, SLENDEREST) - least) / (1.0 - least) - 1.0
    deflection, moment = chebyshev.chebval(place, _coefficients())
    strip = ratio > SLENDEREST
    return (
        np.where(strip, STRIP_DEFLECTION, deflection),
        np.where(strip, STRIP_EDGE_MOMENT, moment),
    )


@cache
def _coefficients() -> FloatArray:
    """Give Chebyshev coefficients of both factors over ``a / b``, in two columns."""
    points = chebyshev.chebpts1(_POINTS)
    least = 1.0 / SLENDEREST
    inverse_ratios = least + (1.0 - least) * (points + 1.0) / 2.0
    across, along = _Modes(_MODES_ACROSS), _Modes(_MODES_ALONG)
    # a^4/16 times the strain energy of w, where the sides run from -1 to 1.
    bent_across = np.kron(across.bending, along.mass)
    twisted = 2.0 * np.kron(across.slope, along.slope)
    bent_along = np.kron(across.mass, along.bending)
    load = np.kron(across.load, along.load)
    wanted = np.stack(
        (
            np.kron(across.centre, along.centre) / 16.0,
            np.kron(across.edge_curvature, along.centre) / 4.0,
        )
    )
    factors = np.empty((_POINTS, 2))
    for index, s in enumerate(inverse_ratios):
        energy = bent_across + s**2 * twisted + s**4 * bent_along
        # The modes differ in size by orders of magnitude: bring the diagonal to 1.
        scale = 1.0 / np.sqrt(np.diag(energy))
        scaled = energy * scale[:, np.newaxis] * scale
        factors[index] = wanted @ (scale * np.linalg.solve(scaled, load * scale))
    return as_floats(chebyshev.chebfit(points, factors, _POINTS - 1))


class _Modes:
    """The even polynomials of one direction, and their integrals from -1 to 1."""

    def __init__(self, count: int) -> None:
        degrees = np.arange(2, 2 * count + 1, 2)
        size = 2 * count + 3
        rows = np.arange(count)
        below, above = 2.0 * degrees - 1.0, 2.0 * degrees + 3.0
        middle = 2.0 * degrees + 1.0
        curvature, slope, value = np.zeros((3, count, size))
        curvature[rows, degrees] = 1.0
        slope[rows, degrees + 1] = 1.0 / middle
        slope[rows, degrees - 1] = -1.0 / middle
        value[rows, degrees + 2] = 1.0 / (middle * above)
        value[rows, degrees] = -(1.0 / above + 1.0 / below) / middle
        value[rows, degrees - 2] = 1.0 / (middle * below)
        squares = 2.0 / (2.0 * np.arange(size) + 1.0)
        self.bending = (curvature * squares) @ curvature.T
        self.slope = (slope * squares) @ slope.T
        self.mass = (value * squares) @ value.T
        self.load = 2.0 * value[:, 0]
        self.centre = legendre.legval(0.0, value.T)
        self.edge_curvature = legendre.legval(1.0, curvature.T)
