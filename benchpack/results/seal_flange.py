"""The flange on one side of a seal line: its design stiffness, or what is missing."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from benchpack.model.library import Library
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.results.wording import listed

MPA_PER_GPA = 1000.0
METAL = "metal"
ALONG_THE_LINE = 0.2
"""A flange part runs along a line whose length is its own within this share."""
_FLANGE = "flange"


@dataclass(frozen=True, slots=True)
class Flange:
    """What bends on one side of a seal line.

    Parameters
    ----------
    part, material : str
        Names of the part and of its material; empty where not recorded.
    modulus_mpa : float
        Design modulus, MPa: data sheet times stiffness knock-down, so that of a polymer
        is the hot, long-term one. NaN where not known.
    thickness_mm : float
        Thickness, mm; NaN where not known.
    is_knocked_down : bool
        False where the library holds no knock-down and the material is no metal.
    is_metal : bool or None
        None where the kind of material is not known.
    stiffeners : tuple of Part
        Flange parts that sit in the part along the whole line and bend with it.
    added_n_mm : float
        ``E t^3`` of the stiffeners, N mm.
    area_m2 : float
        Area of the part, m2; NaN where not known.
    lacking : tuple of str
        What has to be recorded before the flange can be computed.
    """

    part: str = ""
    material: str = ""
    modulus_mpa: float = math.nan
    thickness_mm: float = math.nan
    is_knocked_down: bool = True
    is_metal: bool | None = None
    stiffeners: tuple[Part, ...] = ()
    added_n_mm: float = 0.0
    area_m2: float = math.nan
    lacking: tuple[str, ...] = ()

    @property
    def stiffness_n_mm(self) -> float:
        """``E t^3`` with the stiffeners', N mm; NaN where not known."""
        return self.modulus_mpa * self.thickness_mm**3 + self.added_n_mm

    @property
    def words(self) -> str:
        """The flange as it stands in a sentence, without its figures."""
        added = listed(tuple(part.name for part in self.stiffeners))
        return f"{self.part} with {added}" if added else self.part


def design_modulus_mpa(material: Material) -> tuple[float, bool]:
    """Give the design modulus, and whether a knock-down stands behind it.

    Parameters
    ----------
    material : Material
        A material of the library.

    Returns
    -------
    float
        Modulus times stiffness knock-down, MPa; NaN where no modulus is recorded.
    bool
        False where a material that is no metal has no knock-down.
    """
    if material.modulus_gpa is None:
        return math.nan, True
    knock_down = material.stiffness_knock_down
    known = knock_down is not None or is_metal(material) is True
    factor = 1.0 if knock_down is None else knock_down
    return MPA_PER_GPA * material.modulus_gpa * factor, known


def is_metal(material: Material) -> bool | None:
    """Say whether a material is a metal, None where its kind is not recorded."""
    kind = material.kind.strip().casefold()
    return METAL in kind.split() if kind else None


def folded(name: str) -> str:
    """Give a name as it is compared: blanks at the ends and capitals do not count."""
    return name.strip().casefold()


class Flanges:
    """Finds the flanges of one pack.

    Parameters
    ----------
    library : Library
        The records.
    pack : str
        Name of a pack.
    """

    def __init__(self, library: Library, pack: str) -> None:
        parts = library.parts_of(pack)
        self._parts = {folded(part.name): part for part in parts}
        self._flanges_in: dict[str, list[Part]] = {}
        for part in parts:
            if _FLANGE in folded(part.name) and part.inside:
                self._flanges_in.setdefault(folded(part.inside), []).append(part)
        self._materials: Mapping[str, Material] = {
            folded(material.name): material for material in library.materials
        }

    def pair(
        self, first: str, second: str, *, length_mm: float
    ) -> tuple[Flange, Flange]:
        """Give the flanges that two parts make, each without the other in it.

        Parameters
        ----------
        first, second : str
            Names of the joined parts.
        length_mm : float
            Length of the seal line, mm.
        """
        return (
            self.flange(first, beside=second, length_mm=length_mm),
            self.flange(second, beside=first, length_mm=length_mm),
        )

    def flange(self, name: str, *, beside: str, length_mm: float) -> Flange:
        """Give the flange that a part makes.

        Parameters
        ----------
        name : str
            Name of the part.
        beside : str
            Name of the part on the other side, which stiffens nothing here.
        length_mm : float
            Length of the seal line, mm.
        """
        if not name.strip():
            return Flange(lacking=("the part on one side of the seal line",))
        part = self._parts.get(folded(name))
        if part is None:
            return Flange(name.strip(), lacking=(f"the part {name.strip()}",))
        material = self._materials.get(folded(part.material))
        modulus_mpa, is_known, metal = math.nan, True, None
        if material is not None:
            modulus_mpa, is_known = design_modulus_mpa(material)
            metal = is_metal(material)
        stiffeners = self._stiffeners(part, beside, length_mm)
        return Flange(
            part=part.name,
            material=part.material,
            modulus_mpa=modulus_mpa,
            thickness_mm=math.nan if part.thickness_mm is None else part.thickness_mm,
            is_knocked_down=is_known,
            is_metal=metal,
            stiffeners=tuple(stiffener for stiffener, _ in stiffeners),
            added_n_mm=sum(stiffness for _, stiffness in stiffeners),
            area_m2=math.nan if part.area_m2 is None else part.area_m2 * part.count,
            lacking=_lacking(part, material),
        )

    def _stiffeners(
        self, part: Part, beside: str, length_mm: float
    ) -> list[tuple[Part, float]]:
        """Give the flange parts in a part that run along the line, with ``E t^3``."""
        found: list[tuple[Part, float]] = []
        for inner in self._flanges_in.get(folded(part.name), ()):
            material = self._materials.get(folded(inner.material))
            runs_mm = inner.count * (inner.length_mm or 0.0)
            along = abs(runs_mm - length_mm) <= ALONG_THE_LINE * length_mm
            if folded(inner.name) == folded(beside) or not along:
                continue
            if _lacking(inner, material):
                continue
            if material is not None and inner.thickness_mm is not None:
                modulus_mpa, _ = design_modulus_mpa(material)
                found.append((inner, modulus_mpa * inner.thickness_mm**3))
        return found


def _lacking(part: Part, material: Material | None) -> tuple[str, ...]:
    lacking: list[str] = []
    if part.thickness_mm is None:
        lacking.append(f"the thickness of {part.name}")
    if not part.material.strip():
        lacking.append(f"the material of {part.name}")
    elif material is None:
        lacking.append(f"the material {part.material} in the library")
    elif material.modulus_gpa is None:
        lacking.append(f"the modulus of {part.material}")
    return tuple(lacking)
