"""What the shape of a rectangular plate makes of a uniform load: plain numbers.

Kirchhoff's plate with its four edges alike; ``a`` is the short side, ``b`` the long
one. Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, chapters 5 and 6
(from memory). Supported edges are held down at the corners too: Levy's series. Clamped
edges: Ritz's method. A clamped plate longer than three squares has 0.4 % more beside
its centre, near its ends.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, TypeAlias

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats
from benchpack.calc._clamped_plate import clamped_factors
from benchpack.calc._ranges import poisson_or_nan
from benchpack.errors import RequestError

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

Edges: TypeAlias = Literal["supported", "clamped"]

_TERMS = 20
_ENDLESS = 50.0
_DEEPEST = 100.0


def deflection_factor(side_ratio: ArrayLike, edges: Edges) -> FloatArray:
    """Give ``alpha`` of ``w = alpha q a^4 / D`` at the centre.

    Parameters
    ----------
    side_ratio : array_like
        ``b / a``, long over short side, 1 or above.
    edges : {"supported", "clamped"}
        How the four edges are held.

    Returns
    -------
    ndarray
        Of the shape of the ratio; NaN for a ratio below 1.

    Raises
    ------
    RequestError
        For any other word for the edges.

    Examples
    --------
    >>> deflection_factor([1.0, 2.0, np.inf], "supported").round(5)
    array([0.00406, 0.01013, 0.01302])
    >>> deflection_factor([1.0, 2.0, np.inf], "clamped").round(5)
    array([0.00127, 0.00253, 0.0026 ])
    """
    ratio = _ratio(side_ratio)
    if _held(edges) == "clamped":
        return clamped_factors(ratio)[0]
    odd, sign, depth = _series(ratio)
    lost = (depth * np.tanh(depth) + 2.0) / (2.0 * np.cosh(depth))
    terms = 4.0 * sign / (np.pi * odd) ** 5 * lost
    return as_floats(5.0 / 384.0 - terms.sum(axis=-1))


def moment_factor(
    side_ratio: ArrayLike, edges: Edges, *, poisson_ratio: ArrayLike = 0.3
) -> FloatArray:
    """Give ``beta`` of the greatest bending moment, ``M = beta q a^2``.

    Supported, it is at the centre, across the short side; clamped, midway at a long
    edge, where it does not depend on Poisson's ratio. Twist at supported corners is not
    looked at: it is less, for Poisson's ratios above 0.12.

    Parameters
    ----------
    side_ratio : array_like
        ``b / a``, long over short side, 1 or above.
    edges : {"supported", "clamped"}
        How the four edges are held.
    poisson_ratio : array_like
        Poisson's ratio, -1 to 0.5; only for supported edges.

    Returns
    -------
    ndarray
        Of the broadcast shape, above zero; NaN for a ratio below 1.

    Raises
    ------
    RequestError
        For any other word for the edges.

    Examples
    --------
    >>> moment_factor([1.0, 2.0, np.inf], "supported").round(4)
    array([0.0479, 0.1017, 0.125 ])
    >>> moment_factor([1.0, 2.0, np.inf], "clamped").round(4)
    array([0.0513, 0.0829, 0.0833])
    """
    ratio = _ratio(side_ratio)
    if _held(edges) == "clamped":
        return clamped_factors(ratio)[1]
    odd, sign, depth = _series(ratio)
    twist = depth * np.tanh(depth) / (2.0 * np.cosh(depth))
    lost = twist + 1.0 / np.cosh(depth)
    weights = 4.0 * sign / (np.pi * odd) ** 3
    across = 1.0 / 8.0 - (weights * lost).sum(axis=-1)
    along = (weights * twist).sum(axis=-1)
    return as_floats(across + poisson_or_nan(poisson_ratio) * along)


def _series(ratio: FloatArray) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Give odd numbers, their signs, and ``m pi b / (2 a)`` in a new last axis."""
    odd = 2.0 * np.arange(_TERMS, dtype=np.float64) + 1.0
    sign = as_floats(np.where(odd % 4 == 1, 1.0, -1.0))
    # Beyond these, cosh would overflow, and a term has long been nothing.
    bounded = np.minimum(ratio, _ENDLESS)[..., np.newaxis]
    depth = np.minimum(odd * np.pi / 2.0 * bounded, _DEEPEST)
    return odd, sign, as_floats(depth)


def _ratio(side_ratio: ArrayLike) -> FloatArray:
    ratio = as_floats(side_ratio)
    return np.where(ratio >= 1.0, ratio, np.nan)


def _held(edges: Edges) -> Edges:
    if edges not in {"supported", "clamped"}:
        raise RequestError(f"Edges are supported or clamped, not {edges!r}.")
    return edges
