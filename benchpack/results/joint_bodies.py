"""Fasteners without a head of a product standard: studs, rivets, flow-drill screws."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from benchpack.calc.fastener_mass import rivet_mass_g, stud_mass_g
from benchpack.model.families import JointFamily
from benchpack.results.figure import Input

_SOLID, _FLOW_DRILL, _PIERCING = 0.10, 0.15, 0.25
_STUD = 0.25
"""The length of a stud often leaves out the end that is welded or screwed in."""
_FLOW_DRILL_HEAD_G = {4.0: 1.5, 5.0: 2.6, 6.0: 4.6}
"""Head with collar by thread: public masses less that of the thread."""


@dataclass(frozen=True, slots=True)
class Shape:
    """A mass that was worked out from a shape.

    Parameters
    ----------
    mass_g : float
        Of one piece, g.
    tolerance : float
        Half width of its range as a share of it.
    formula, source : str
        How, and after what.
    inputs : tuple of Input
        What went in.
    """

    mass_g: float
    tolerance: float
    formula: str
    source: str
    inputs: tuple[Input, ...]


@dataclass(frozen=True, slots=True)
class Body:
    """What a fastener is without its head; NaN where the designation does not say.

    Parameters
    ----------
    family : JointFamily
        What it is.
    diameter_mm, pitch_mm, length_mm : float
        Of its shank and thread.
    density_kg_m3 : float
        Of what it is made of.
    """

    family: JointFamily
    diameter_mm: float
    pitch_mm: float
    length_mm: float
    density_kg_m3: float

    @property
    def shank(self) -> tuple[Input, ...]:
        """Density and diameter as inputs of a figure."""
        usual = f"{self.family.name}, usual"
        return (
            Input("rho, density", self.density_kg_m3, "kg/m3", usual),
            Input("d, diameter", self.diameter_mm, "mm", "designation"),
        )

    @property
    def thread(self) -> tuple[Input, ...]:
        """The shank's inputs and the pitch."""
        label = "P, pitch, of which A is the mean solid area"
        return (*self.shank, Input(label, self.pitch_mm, "mm", "ISO 261"))

    @property
    def length(self) -> Input:
        """The length below the head as an input."""
        return Input("L, length", self.length_mm, "mm", "designation")


def _rod_g(body: Body) -> float:
    return float(
        stud_mass_g(
            body.diameter_mm,
            body.pitch_mm,
            length_mm=body.length_mm,
            density_kg_m3=body.density_kg_m3,
        )
    )


def _stud(body: Body) -> Shape:
    return Shape(
        _rod_g(body),
        _STUD,
        "rho A L",
        within("threaded throughout, without a flange", _STUD),
        (*body.thread, body.length),
    )


def _flow_drill(body: Body) -> Shape | None:
    head_g = _FLOW_DRILL_HEAD_G.get(body.diameter_mm)
    if head_g is None:
        return None
    return Shape(
        head_g + _rod_g(body),
        _FLOW_DRILL,
        "m_h + rho A L",
        within("head from public masses of such screws", _FLOW_DRILL),
        (
            *body.thread,
            body.length,
            Input("m_h, head with collar", head_g, "g", "derived"),
        ),
    )


def _solid_rivet(body: Body) -> Shape:
    mass_g = rivet_mass_g(
        body.diameter_mm,
        length_mm=body.length_mm,
        density_kg_m3=body.density_kg_m3,
    )
    return Shape(
        float(mass_g),
        _SOLID,
        "rho (cap of the head + pi/4 d^2 L)",
        within("round head as in DIN 660", _SOLID),
        (*body.shank, body.length),
    )


def _piercing_rivet(body: Body) -> Shape:
    mass_g = rivet_mass_g(
        body.diameter_mm,
        length_mm=body.length_mm,
        head_diameter_mm=body.diameter_mm + 2.4,
        head_height_mm=0.15 * body.diameter_mm,
        bore_diameter_mm=0.6 * body.diameter_mm,
        bore_depth_mm=0.75 * body.length_mm,
        density_kg_m3=body.density_kg_m3,
    )
    return Shape(
        float(mass_g),
        _PIERCING,
        "rho (cap of the head + pi/4 (d^2 L - d_b^2 t_b))",
        within("head 2 to 3 mm wider than the shank, bore recalled", _PIERCING),
        (*body.shank, body.length),
    )


SIMPLE_SHAPES: dict[str, Callable[[Body], Shape | None]] = {
    "stud": _stud,
    "flow-drill screw": _flow_drill,
    "solid rivet": _solid_rivet,
    "self-piercing rivet": _piercing_rivet,
}


def within(basis: str, tolerance: float) -> str:
    """Say after what a figure is, and how far it may be off.

    Parameters
    ----------
    basis : str
        After what.
    tolerance : float
        Half width of its range as a share of it.
    """
    return (
        f"{basis}; within {100 * tolerance:.0f} %, counted as a rectangle "
        "(JCGM 100:2008, 4.3.7)"
    )
