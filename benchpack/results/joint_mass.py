"""The mass of one joint: entered, or worked out from what it is."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import lru_cache

from benchpack.calc.uncertainty import standard_uncertainty_from_tolerance
from benchpack.model.designation import Designation, read_designation
from benchpack.model.families import Counted, JointFamily, family_of
from benchpack.model.fastener_masses import table_mass
from benchpack.model.joint import Joint
from benchpack.model.words import RELATIVE_UNCERTAINTY, KnownBy
from benchpack.results.figure import Input
from benchpack.results.joint_bodies import within
from benchpack.results.joint_shapes import shape_of
from benchpack.results.line_masses import JointMass, mass_per_mm

__all__ = [
    "JointMass",
    "joint_mass",
    "joint_mass_each_g",
    "joint_mass_kg",
    "reading_of",
    "unit_mass",
]

_UNKNOWN = JointMass(math.nan, KnownBy.UNSTATED, math.nan)
_U_REL = {
    way: math.nan if u_rel is None else u_rel
    for way, u_rel in RELATIVE_UNCERTAINTY.items()
}


@lru_cache(maxsize=16_384)
def reading_of(family: str, text: str) -> tuple[JointFamily | None, Designation]:
    """Give the family that two cells of a joint name, and what the second says.

    Parameters
    ----------
    family, text : str
        Family and designation as they were entered.
    """
    read = read_designation(text, family=family)
    return family_of(family) or family_of(read.family), read


def joint_mass(joint: Joint) -> JointMass:
    """Give the mass of one piece or line of a joint, and how it is known.

    Parameters
    ----------
    joint : Joint
        The row. An entered mass wins, zero too.
    """
    if joint.mass_each_g is not None:
        u_rel = _U_REL[joint.known_by]
        return JointMass(joint.mass_each_g, joint.known_by, u_rel)
    unit, is_per_mm = unit_mass(joint.family, joint.designation)
    if not is_per_mm:
        return unit
    if joint.length_mm is None:
        return _UNKNOWN
    length = Input("L, length", joint.length_mm, "mm", "as entered")
    mass_g = unit.mass_g * joint.length_mm
    return replace(unit, mass_g=mass_g, inputs=(*unit.inputs, length))


def joint_mass_each_g(joint: Joint) -> tuple[float, KnownBy, float]:
    """Give the mass of one joint in g, how it is known, and its uncertainty.

    Parameters
    ----------
    joint : Joint
        The row.

    Returns
    -------
    tuple
        Mass in g, NaN where unknown; how it is known; its standard uncertainty as a
        share of it, NaN where unknown.
    """
    if joint.mass_each_g is not None:
        return joint.mass_each_g, joint.known_by, _U_REL[joint.known_by]
    unit, is_per_mm = unit_mass(joint.family, joint.designation)
    if not is_per_mm:
        return unit.mass_g, unit.known_by, unit.u_rel
    if joint.length_mm is None:
        return math.nan, KnownBy.UNSTATED, math.nan
    return unit.mass_g * joint.length_mm, unit.known_by, unit.u_rel


def joint_mass_kg(joint: Joint) -> float:
    """Give the mass of all pieces of a joint in kg, NaN where it is not known."""
    return joint.count * joint_mass_each_g(joint)[0] / 1000


@lru_cache(maxsize=16_384)
def unit_mass(family_text: str, text: str) -> tuple[JointMass, bool]:
    """Work out the mass of one piece, or of a millimetre of a seam or bead.

    Parameters
    ----------
    family_text, text : str
        Family and designation as they were entered.

    Returns
    -------
    tuple
        The mass, and whether it is that of a millimetre.
    """
    family, read = reading_of(family_text, text)
    if family is None:
        return _UNKNOWN, False
    if family.mass_g == 0:
        source = f"{family.note} ({family.name})"
        return JointMass(0.0, KnownBy.GEOMETRY, 0.0, "0", (), source), False
    if family.counted is Counted.LINE:
        return mass_per_mm(family, read), True
    return _listed(family, read) or _shaped(family, read), False


def _listed(family: JointFamily, read: Designation) -> JointMass | None:
    found = table_mass(read.standard, family.name, read.size, text=read.text)
    if found is None:
        return None
    size = f"{read.standard or family.name} {read.size}"
    return JointMass(
        found.mass_g,
        KnownBy.STANDARD_TABLE,
        float(standard_uncertainty_from_tolerance(found.tolerance)),
        "mass of one in the table",
        (Input(f"{size}, in the table", found.mass_g, "g", found.mark),),
        within(f"{found.source} ({found.mark})", found.tolerance),
    )


def _shaped(family: JointFamily, read: Designation) -> JointMass:
    found = shape_of(read, family)
    if found is None:
        return _UNKNOWN
    return JointMass(
        found.mass_g,
        KnownBy.GEOMETRY,
        float(standard_uncertainty_from_tolerance(found.tolerance)),
        found.formula,
        found.inputs,
        found.source,
    )
