"""A part in another material: its mass by design values, the data sheet's beside it."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from benchpack.calc.equal_function import MaterialValues
from benchpack.calc.substitution import substitute
from benchpack.model.material import Material

COMPUTED_RANGE = (0.95, 1.0, 1.12)
"""A computed mass at its low, likely and high end: a layout grows by about 12 % until
it is made (usual mass growth allowance, from memory)."""

_SAME_MASS = 1e-9


@dataclass(frozen=True, slots=True)
class Sizing:
    """What a part is resized by.

    Parameters
    ----------
    governs : tuple of str
        The functions that size it, words of ``model.words.GOVERNS``.
    wall_mm : float
        Its present wall, NaN where not known.
    stiffness_shape, strength_shape, rib_allowance : float
        As of a change.
    """

    governs: tuple[str, ...]
    wall_mm: float = math.nan
    stiffness_shape: float = 1.0
    strength_shape: float = 1.0
    rib_allowance: float = 0.0


@dataclass(frozen=True, slots=True)
class Basis:
    """The new part on one set of material values; NaN where it cannot be said.

    Parameters
    ----------
    mass_ratio : float
        New mass over old at equal function, minimum wall and ribs counted.
    wall_mm : float
        New wall.
    governing : str
        The function that makes it heaviest, empty where none can be named.
    wall_is_minimum : bool
        True where what can be made sets the wall.
    """

    mass_ratio: float
    wall_mm: float
    governing: str
    wall_is_minimum: bool


@dataclass(frozen=True, slots=True)
class Resized:
    """One part in its new material.

    Parameters
    ----------
    part : str
        Name of the part.
    old_material, new_material : str
        What it is and becomes.
    before_kg : float
        Its mass before.
    old_wall_mm : float
        Its wall before, NaN where not known.
    design, data_sheet : Basis
        The new part by design values and by those of the data sheets.
    uses_data_sheet : bool
        True where the data sheet's are counted.
    without_knock_down : tuple of str
        Materials without a recorded knock-down, taken at their data-sheet values.
    is_overridden : bool
        True where the change gives its own mass, so that this stands beside it only.
    """

    part: str
    old_material: str
    new_material: str
    before_kg: float
    old_wall_mm: float
    design: Basis
    data_sheet: Basis
    uses_data_sheet: bool = False
    without_knock_down: tuple[str, ...] = ()
    is_overridden: bool = False

    @property
    def counted(self) -> Basis:
        """The basis that counts."""
        return self.data_sheet if self.uses_data_sheet else self.design

    @property
    def after_kg(self) -> float:
        """Mass after, on the basis that counts."""
        return self.before_kg * self.counted.mass_ratio

    @property
    def design_kg(self) -> float:
        """Mass after by design values."""
        return self.before_kg * self.design.mass_ratio

    @property
    def data_sheet_kg(self) -> float:
        """Mass after by data-sheet values."""
        return self.before_kg * self.data_sheet.mass_ratio

    @property
    def is_heavier(self) -> bool:
        """True where the new material makes the part heavier at equal function."""
        return self.after_kg > self.before_kg * (1 + _SAME_MASS)


@lru_cache(maxsize=8192)
def resizing(old: Material, new: Material, sizing: Sizing) -> tuple[Basis, Basis]:
    """Give the new part by design values, and by those of the data sheets.

    Parameters
    ----------
    old, new : Material
        What it is made of before and after.
    sizing : Sizing
        What sizes it.

    Returns
    -------
    tuple of Basis
        First the design values, then the data sheets'.

    Raises
    ------
    RequestError
        When no function is given, or one that nobody knows.
    """
    # Absurd values give what is not finite, and what is not finite is refused.
    with np.errstate(all="ignore"):
        found = substitute(
            sizing.governs,
            old=_both(old),
            new=_both(new),
            wall_mm=sizing.wall_mm,
            minimum_wall_mm=_or_nan(new.minimum_wall_mm),
            stiffness_shape=sizing.stiffness_shape,
            strength_shape=sizing.strength_shape,
            rib_allowance=sizing.rib_allowance,
        )
    design, sheet = (
        Basis(
            float(found.mass_ratio[place]),
            float(found.wall_mm[place]),
            sizing.governs[governing] if governing >= 0 else "",
            bool(found.wall_is_minimum[place]),
        )
        for place, governing in enumerate(found.governing.tolist())
    )
    return design, sheet


def lacking_values(material: Material, governs: tuple[str, ...]) -> tuple[str, ...]:
    """Give the figures of a material that a resizing asks for and does not find.

    Parameters
    ----------
    material : Material
        Old or new material.
    governs : tuple of str
        The functions that size the part.
    """
    asked = {"density": material.density_kg_m3}
    if any("stiffness" in word or "buckling" in word for word in governs):
        asked["modulus"] = material.modulus_gpa
    if any("strength" in word for word in governs):
        asked["strength"] = material.strength_mpa
    return tuple(name for name, value in asked.items() if value is None)


def lacks_knock_down(material: Material, governs: tuple[str, ...]) -> bool:
    """Say whether a material that is no metal has no knock-down that is asked for.

    Parameters
    ----------
    material : Material
        A material.
    governs : tuple of str
        The functions that size the part.
    """
    if is_metal(material) or set(governs) <= {"geometry only"}:
        return False
    return None in (material.stiffness_knock_down, material.strength_knock_down)


def is_metal(material: Material | None) -> bool:
    """Say whether a material is a metal; an unknown one is not."""
    return material is not None and "metal" in material.kind.casefold()


_POLYMERS = ("thermoplastic", "thermoset", "composite", "plastic", "polymer")


def is_polymer(material: Material | None) -> bool:
    """Say whether a material is a polymer, with or without fibres."""
    if material is None:
        return False
    kind = material.kind.casefold()
    return any(word in kind for word in _POLYMERS)


def _both(material: Material) -> MaterialValues:
    """Give design values and data-sheet values; no knock-down counts as 1."""
    modulus, strength = _or_nan(material.modulus_gpa), _or_nan(material.strength_mpa)
    return MaterialValues(
        np.full(2, _or_nan(material.density_kg_m3)),
        np.array([modulus * _or_one(material.stiffness_knock_down), modulus]),
        np.array([strength * _or_one(material.strength_knock_down), strength]),
        _or_nan(material.poisson_ratio),
    )


def _or_nan(value: float | None) -> float:
    return math.nan if value is None else value


def _or_one(value: float | None) -> float:
    return 1.0 if value is None else value
