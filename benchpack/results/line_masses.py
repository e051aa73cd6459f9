"""The mass of seams and beads to the millimetre, from section and density."""

from __future__ import annotations

import math
from dataclasses import dataclass

from benchpack.calc.line_mass import (
    fillet_section_mm2,
    line_mass_g,
    rectangle_section_mm2,
    round_section_mm2,
)
from benchpack.calc.uncertainty import standard_uncertainty_from_tolerance
from benchpack.model.designation import Designation
from benchpack.model.families import FamilySort, JointFamily, line_material
from benchpack.model.words import KnownBy
from benchpack.results.figure import Input
from benchpack.results.joint_bodies import within

_LINE_TOLERANCE = {FamilySort.WELD: 0.25, FamilySort.BEAD: 0.20}
"""Half widths of a section as it is laid (common practice, no source)."""
_USUAL_U = 0.5
"""Standard uncertainty of a family's usual mass as a share of it (common practice, no
source): beads of one family differ twofold, and a seam may be steel."""
_LAID = 1.2
"""Section of a fillet as it is laid over the one drawn (common practice, no source)."""
_FILLS = {"structural adhesive": 0.5}
"""Share of width times height that a bead fills where its material is not named."""


@dataclass(frozen=True, slots=True)
class JointMass:
    """The mass of one piece, or of one whole seam or bead, with how it came about.

    Parameters
    ----------
    mass_g : float
        g, NaN where it is not known.
    known_by : KnownBy
        How it is known.
    u_rel : float
        Its standard uncertainty as a share of it, NaN where that is not known.
    formula : str
        How it was worked out, empty where it was entered.
    inputs : tuple of Input
        What went in.
    source : str
        After what.
    """

    mass_g: float
    known_by: KnownBy
    u_rel: float
    formula: str = ""
    inputs: tuple[Input, ...] = ()
    source: str = ""


def mass_per_mm(family: JointFamily, read: Designation) -> JointMass:
    """Give the mass of a millimetre of a seam or bead.

    Parameters
    ----------
    family : JointFamily
        A family that is counted by its length.
    read : Designation
        What its designation says.

    Returns
    -------
    JointMass
        Its formula and source are those of the whole line, of length L. Where section
        or material are not named it is the usual one, known by estimate.
    """
    section = _section(read, family)
    material = line_material(family.name, read.text)
    density = material.density_kg_m3 if material else family.density_kg_m3
    is_foam_or_rubber = material is None and family.name == "gasket"
    if section is None or density is None or is_foam_or_rubber:
        return _usual(family)
    area_mm2, label, inputs = section
    mass_g = float(line_mass_g(area_mm2, 1.0, density_kg_m3=density))
    formula = f"rho {label} L"
    if material is None and family.sort is FamilySort.WELD:
        given = Input("rho, density", density, "kg/m3", "usual; name steel where it is")
        source = "material not named: its uncertainty is common practice, no source"
        inputs = (given, *inputs)
        return JointMass(mass_g, KnownBy.ESTIMATE, _USUAL_U, formula, inputs, source)
    tolerance = _LINE_TOLERANCE[family.sort]
    said = f"{material.source} ({material.name})" if material else f"{family.name}"
    return JointMass(
        mass_g,
        KnownBy.GEOMETRY,
        float(standard_uncertainty_from_tolerance(tolerance)),
        formula,
        (Input("rho, density", density, "kg/m3", said), *inputs),
        within("section as it is laid: common practice, no source", tolerance),
    )


def _section(
    read: Designation, family: JointFamily
) -> tuple[float, str, tuple[Input, ...]] | None:
    """Give the section in mm2 with its formula and inputs, None where not known."""
    said = "designation"
    if read.throat_mm:
        area = _LAID * fillet_section_mm2(read.throat_mm)
        throat = Input("a, throat", read.throat_mm, "mm", said)
        return float(area), f"{_LAID:g} a^2", (throat,)
    if read.width_mm and read.height_mm:
        material = line_material(family.name, read.text)
        fill = material.fill if material else _FILLS.get(family.name, 1.0)
        area = rectangle_section_mm2(read.width_mm, read.height_mm)
        inputs = (
            Input("w, width", read.width_mm, "mm", said),
            Input("h, height", read.height_mm, "mm", said),
            Input("f, share of w h that is filled", fill, "", "usual"),
        )
        return fill * float(area), "f w h", inputs
    if read.diameter_mm:
        area = round_section_mm2(read.diameter_mm)
        given = Input("d, diameter", read.diameter_mm, "mm", said)
        return float(area), "pi/4 d^2", (given,)
    return None


def _usual(family: JointFamily) -> JointMass:
    usual_g = math.nan if family.mass_g is None else family.mass_g
    return JointMass(
        usual_g / 1000,
        KnownBy.ESTIMATE,
        _USUAL_U,
        "m' L",
        (Input("m', usual mass per metre", usual_g, "g/m", family.source),),
        f"usual of the family {family.name}; its uncertainty is common practice, no "
        "source",
    )
