"""Which parts are conductors, and what their metal is like."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from enum import StrEnum

from benchpack.calc.busbar import COPPER_MS_M
from benchpack.model.library import Library
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.words import Subsystem


class Metal(StrEnum):
    """What a busbar is made of."""

    COPPER = "copper"
    ALUMINIUM = "aluminium"


@dataclass(frozen=True, slots=True)
class Conductor:
    """The metal of a busbar in figures.

    Parameters
    ----------
    name : str
        Name of the material, or of the metal where none is recorded.
    metal : Metal
        The metal.
    density_kg_m3, modulus_gpa, strength_mpa, expansion_1e6_k : float
        Density, Young's modulus, yield strength and thermal expansion.
    conductivity_ms_m : float
        Electrical conductivity at 20 degC, MS/m.
    allowed_stress_mpa : float
        Bending stress that an offset may see unless the person says otherwise, MPa.
    source : str
        Where the figures come from.
    conductivity_source : str
        Where the electrical conductivity comes from.
    """

    name: str
    metal: Metal
    density_kg_m3: float
    modulus_gpa: float
    strength_mpa: float
    expansion_1e6_k: float
    conductivity_ms_m: float
    allowed_stress_mpa: float
    source: str
    conductivity_source: str


_FROM_MEMORY = "usual values of the soft metal, from memory"

COPPER = Conductor(
    "copper",
    Metal.COPPER,
    density_kg_m3=8930.0,
    modulus_gpa=120.0,
    strength_mpa=70.0,
    expansion_1e6_k=17.0,
    conductivity_ms_m=COPPER_MS_M,
    allowed_stress_mpa=60.0,
    source=_FROM_MEMORY,
    conductivity_source="annealed copper, IEC 60028, from memory",
)
ALUMINIUM = Conductor(
    "aluminium",
    Metal.ALUMINIUM,
    density_kg_m3=2705.0,
    modulus_gpa=69.0,
    strength_mpa=65.0,
    expansion_1e6_k=23.6,
    conductivity_ms_m=36.0,
    allowed_stress_mpa=30.0,
    source=_FROM_MEMORY,
    conductivity_source="conductor aluminium, from memory",
)
USUAL = {Metal.COPPER: COPPER, Metal.ALUMINIUM: ALUMINIUM}
"""The metal where the library says nothing of it."""

_HEAT_W_MK = {Metal.COPPER: 380.0, Metal.ALUMINIUM: 230.0}
"""Thermal conductivity that goes with the electrical one of `USUAL`."""

_ADIABATIC = {Metal.COPPER: (226.0, 234.5), Metal.ALUMINIUM: (148.0, 228.0)}

_WORDS = {
    Metal.ALUMINIUM: re.compile(
        r"(?i:\balumini?um\b|\bEN[ -]AW\b)|\bAl(?![a-z])", re.ASCII
    ),
    Metal.COPPER: re.compile(r"(?i:\bcopper\b)|\bCu(?![a-z])", re.ASCII),
}
_BUSBAR = re.compile(r"bus[ -]?bar", re.IGNORECASE)


def metal_of(material: str) -> Metal | None:
    """Give the conducting metal that a material's name speaks of, None for none.

    Parameters
    ----------
    material : str
        Name of a material, ``EN AW-1350 busbar`` for instance.

    Examples
    --------
    >>> str(metal_of("copper Cu-ETP")), str(metal_of("EN AW-1350 busbar"))
    ('copper', 'aluminium')
    >>> metal_of("PBT-GF30") is None
    True
    """
    found = (metal for metal, words in _WORDS.items() if words.search(material))
    return next(found, None)


def is_conductor(part: Part) -> bool:
    """Tell whether busbar figures may be asked for a part.

    Parameters
    ----------
    part : Part
        Any part: one of the subsystem conductors, or a busbar of copper or aluminium.
    """
    if part.subsystem is Subsystem.CONDUCTORS:
        return True
    return bool(_BUSBAR.search(part.name)) and metal_of(part.material) is not None


def conductor_of(material: str, library: Library) -> Conductor | None:
    """Give the metal of a material, the library's own figures first.

    Parameters
    ----------
    material : str
        Name of the material of a part.
    library : Library
        Its materials.

    Returns
    -------
    Conductor or None
        None for a material that is neither copper nor aluminium. What the library
        leaves empty is filled with the usual figure of the metal.
    """
    metal = metal_of(material)
    if metal is None:
        return None
    usual = USUAL[metal]
    recorded = next((m for m in library.materials if m.name == material), None)
    if recorded is None:
        return replace(usual, name=material)
    return _filled(recorded, usual)


def conductors(library: Library) -> tuple[Conductor, ...]:
    """Give the metals a busbar may be made of: those of the library, then the usual.

    Parameters
    ----------
    library : Library
        Its materials.
    """
    named = (conductor_of(m.name, library) for m in library.materials)
    recorded = {one.name: one for one in named if one is not None}
    usual = {one.name: one for one in USUAL.values() if one.name not in recorded}
    return (*recorded.values(), *usual.values())


def adiabatic_figures(metal: Metal) -> tuple[float, float]:
    """Give ``K`` in A s^0.5/mm2 and ``b`` in K of `calc.busbar.adiabatic_constant`.

    Parameters
    ----------
    metal : Metal
        The metal.
    """
    return _ADIABATIC[metal]


def _filled(recorded: Material, usual: Conductor) -> Conductor:
    strength = _known(recorded.strength_mpa, usual.strength_mpa)
    share, said = 1.0, usual.conductivity_source
    if recorded.conductivity_w_mk is not None:
        share = min(1.0, recorded.conductivity_w_mk / _HEAT_W_MK[usual.metal])
    if share < 1.0:
        said += ", scaled with the thermal conductivity (Wiedemann-Franz), derived"
    mark = f" ({recorded.mark})" if recorded.mark else ""
    return Conductor(
        name=recorded.name,
        metal=usual.metal,
        density_kg_m3=_known(recorded.density_kg_m3, usual.density_kg_m3),
        modulus_gpa=_known(recorded.modulus_gpa, usual.modulus_gpa),
        strength_mpa=strength,
        expansion_1e6_k=_known(recorded.expansion_1e6_k, usual.expansion_1e6_k),
        conductivity_ms_m=share * usual.conductivity_ms_m,
        allowed_stress_mpa=min(usual.allowed_stress_mpa, strength),
        source=f"material {recorded.name}{mark}",
        conductivity_source=said,
    )


def _known(recorded: float | None, usual: float) -> float:
    return usual if recorded is None else recorded
