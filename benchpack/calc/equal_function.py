"""What a part of another material needs to do the same: size and mass ratios.

Ratios are new over old at equal function. With a shape factor ``s`` of the new part's
ribs or section (1 for a flat one):

=======================  ==========  =====================  ===========
governs                  of          size ratio             wall ratio
=======================  ==========  =====================  ===========
panel bending stiffness  thickness   ``(E1/(E2 s))^(1/3)``  size
panel buckling           thickness   ``(E1/(E2 s))^(1/3)``  size
panel bending strength   thickness   ``(S1/(S2 s))^(1/2)``  size
beam bending stiffness   area        ``(E1/(E2 s))^(1/2)``  root of size
beam bending strength    area        ``(S1/(S2 s))^(2/3)``  root of size
axial stiffness          area        ``E1/E2``              size
axial strength           area        ``S1/S2``              size
geometry only            volume      1                      1
=======================  ==========  =====================  ===========

Ashby, Materials Selection in Mechanical Design, tables of material indices for
stiffness-limited and strength-limited design (from memory). A beam keeps the shape of
its section and grows in both directions; one whose height is fixed follows the axial
rows.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Literal, NamedTuple

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc._ranges import (
    not_negative_or_nan,
    poisson_or_nan,
    share_or_nan,
)
from benchpack.errors import RequestError

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


class _Rule(NamedTuple):
    """What a function asks of the material, and the exponents of its ratios."""

    asks: Literal["stiffness", "strength", "volume"]
    size: float
    wall: float
    shaped: bool = True
    plate: bool = False


_RULES = {
    "panel bending stiffness": _Rule("stiffness", 1 / 3, 1.0, plate=True),
    "panel bending strength": _Rule("strength", 1 / 2, 1.0),
    "panel buckling": _Rule("stiffness", 1 / 3, 1.0, plate=True),
    "beam bending stiffness": _Rule("stiffness", 1 / 2, 1 / 2),
    "beam bending strength": _Rule("strength", 2 / 3, 1 / 2),
    "axial stiffness": _Rule("stiffness", 1.0, 1.0, shaped=False),
    "axial strength": _Rule("strength", 1.0, 1.0, shaped=False),
    "geometry only": _Rule("volume", 0.0, 1.0, shaped=False),
}


@dataclass(frozen=True, slots=True, eq=False)
class MaterialValues:
    """What a material brings to a function; the values broadcast, NaN is unknown.

    Parameters
    ----------
    density_kg_m3 : array_like
        Density, kg/m3.
    modulus_gpa : array_like
        Young's modulus, GPa.
    strength_mpa : array_like
        Strength, MPa.
    poisson_ratio : array_like
        Poisson's ratio. The stiffness of a panel goes with ``E / (1 - nu^2)``; where
        it is unknown on either side, it is left out on both.
    """

    density_kg_m3: ArrayLike
    modulus_gpa: ArrayLike = np.nan
    strength_mpa: ArrayLike = np.nan
    poisson_ratio: ArrayLike = np.nan

    def knocked_down(
        self, stiffness_knock_down: ArrayLike, strength_knock_down: ArrayLike
    ) -> MaterialValues:
        """Give the design values: the data sheet's times the knock-downs.

        Parameters
        ----------
        stiffness_knock_down, strength_knock_down : array_like
            Design value over data-sheet value, above 0 and at most 1; anything else
            gives NaN. Products of factors come from `combined_knock_down`.

        Returns
        -------
        MaterialValues
            With the same density and Poisson's ratio.

        Examples
        --------
        >>> sheet = MaterialValues(1210.0, 8.0, 121.0)
        >>> design = sheet.knocked_down(0.45, 0.29)
        >>> print(design.modulus_gpa, design.strength_mpa)
        3.6 35.089999999999996
        """
        return replace(
            self,
            modulus_gpa=as_floats(self.modulus_gpa)
            * share_or_nan(stiffness_knock_down),
            strength_mpa=as_floats(self.strength_mpa)
            * share_or_nan(strength_knock_down),
        )


def combined_knock_down(factors: ArrayLike, *, axis: int = -1) -> FloatArray:
    """Give the product of knock-downs: heat, long load, moisture, fibre direction.

    Parameters
    ----------
    factors : array_like, shape (..., n)
        Factors above 0 and at most 1; anything else gives NaN. Of none it is 1.
    axis : int
        Axis of the factors.

    Returns
    -------
    ndarray, shape (...)
        One factor.

    Examples
    --------
    >>> print(combined_knock_down([0.75, 0.6]).round(3))
    0.45
    """
    return as_floats(np.prod(share_or_nan(factors), axis=axis))


def size_ratio(
    governs: str,
    *,
    old: MaterialValues,
    new: MaterialValues,
    stiffness_shape: ArrayLike = 1.0,
    strength_shape: ArrayLike = 1.0,
) -> FloatArray:
    """Give the thickness or area ratio at equal function (table of this module).

    Parameters
    ----------
    governs : str
        The function that sizes the part, a word of ``model.words.GOVERNS``.
    old, new : MaterialValues
        Design values, or those of the data sheets.
    stiffness_shape, strength_shape : array_like
        By how much ribs or a better section raise the second moment of area and the
        section modulus against the plain wall or the old shape; 1 for none. Without
        effect on axial functions. Ribs raise the section modulus far less.

    Returns
    -------
    ndarray
        Ratio new over old, of the broadcast shape.

    Raises
    ------
    RequestError
        When nobody knows the function.

    Examples
    --------
    A lid of 0.8 mm steel in aluminium:

    >>> ratio = size_ratio(
    ...     "panel bending stiffness",
    ...     old=MaterialValues(7850.0, 210.0),
    ...     new=MaterialValues(2700.0, 68.0),
    ... )
    >>> print((0.8 * ratio).round(4))
    1.165
    """
    rule = _rule(governs)
    if rule.asks == "volume":
        return np.ones(np.broadcast(old.density_kg_m3, new.density_kg_m3).shape)
    if rule.asks == "strength":
        before, after = old.strength_mpa, new.strength_mpa
        shape = strength_shape
    else:
        before, after = old.modulus_gpa, new.modulus_gpa
        shape = stiffness_shape
    needed = positive_or_nan(before) / positive_or_nan(after)
    if rule.plate:
        needed = needed * _poisson(old.poisson_ratio, new.poisson_ratio)
    if rule.shaped:
        needed = needed / positive_or_nan(shape)
    return as_floats(needed**rule.size)


def wall_ratio(governs: str, size_ratio: ArrayLike) -> FloatArray:
    """Give the ratio of the walls that belongs to a size ratio.

    A panel's wall is its thickness. A beam that keeps its shape grows in both
    directions, so that its wall goes with the root of its area; a section under axial
    load keeps its outline, so that its wall goes with its area.

    Parameters
    ----------
    governs : str
        The function that sizes the part, a word of ``model.words.GOVERNS``.
    size_ratio : array_like
        Thickness or area ratio, from `size_ratio`.

    Returns
    -------
    ndarray
        Ratio new over old, of the shape of the size ratio.

    Raises
    ------
    RequestError
        When nobody knows the function.

    Examples
    --------
    >>> print(wall_ratio("beam bending stiffness", 1.44))
    1.2
    """
    return as_floats(positive_or_nan(size_ratio) ** _rule(governs).wall)


def mass_ratio(
    size_ratio: ArrayLike,
    *,
    old: MaterialValues,
    new: MaterialValues,
    rib_allowance: ArrayLike = 0.0,
) -> FloatArray:
    """Give the mass ratio of a size ratio, ``rho2/rho1 r (1 + ribs)``.

    Parameters
    ----------
    size_ratio : array_like
        Thickness, area or volume ratio, from `size_ratio`.
    old, new : MaterialValues
        Only their densities count.
    rib_allowance : array_like
        Mass of the ribs over that of the new part without them, 0 or more.

    Returns
    -------
    ndarray
        Ratio new over old, of the broadcast shape.

    Examples
    --------
    >>> old, new = MaterialValues(7850.0), MaterialValues(2700.0)
    >>> print(mass_ratio(1.45622, old=old, new=new).round(4))
    0.5009
    """
    ribs = not_negative_or_nan(rib_allowance)
    density = positive_or_nan(new.density_kg_m3) / positive_or_nan(old.density_kg_m3)
    return as_floats(density * positive_or_nan(size_ratio) * (1.0 + ribs))


def _rule(governs: str) -> _Rule:
    if governs not in _RULES:
        raise RequestError(f"Nothing is known of the function {governs!r}.")
    return _RULES[governs]


def _poisson(old: ArrayLike, new: ArrayLike) -> FloatArray:
    """Give ``(1 - nu2^2) / (1 - nu1^2)``, and 1 where either is unknown."""
    ratio = (1.0 - poisson_or_nan(new) ** 2) / (1.0 - poisson_or_nan(old) ** 2)
    return np.where(np.isnan(ratio), 1.0, ratio)
