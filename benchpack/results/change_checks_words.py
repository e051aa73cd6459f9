"""Figures and sentences that several checks of a change share."""

from __future__ import annotations

import math
from dataclasses import dataclass

from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.results.change_checks_parts import DesignValues
from benchpack.results.figure import Input
from benchpack.results.seal_words import millimetres
from benchpack.results.wording import Wording, listed
from benchpack.units.number_style import labelled

_MM2_PER_M2 = 1e6
PRACTICE = "common practice, no source"


@dataclass(frozen=True, slots=True)
class Sides:
    """The sides of a flat part, NaN where not known.

    Parameters
    ----------
    length_mm, width_mm : float
        Of one piece.
    words : str
        How they were got.
    """

    length_mm: float
    width_mm: float
    words: str


def sides_of(part: Part) -> Sides:
    """Give the sides of a flat part: length, and area over length.

    Parameters
    ----------
    part : Part
        Without a length it counts as a square, which bends furthest at its area.
    """
    if not part.area_m2:
        return Sides(math.nan, math.nan, "")
    area_mm2 = part.area_m2 * _MM2_PER_M2
    if not part.length_mm:
        side = math.sqrt(area_mm2)
        return Sides(side, side, "a square of its area")
    return Sides(part.length_mm, area_mm2 / part.length_mm, "by length and area")


def amount(value: float, unit: str, wording: Wording, *, digits: int = 2) -> str:
    """Write a figure with as many digits as an estimate bears.

    Parameters
    ----------
    value : float
        The figure in `unit`.
    unit : str
        Its unit, empty for none.
    wording : Wording
        How figures are written.
    digits : int
        Digits that are kept; whole figures keep all of theirs.
    """
    if not math.isfinite(value) or value == 0:
        return labelled(wording.number(value), unit)
    exponent = math.floor(math.log10(abs(value)))
    decimals = min(6, max(0, digits - 1 - exponent))
    text = f"{value:.{decimals}f}"
    if "." in text:
        decimals = len(text.rstrip("0").partition(".")[2])
    return labelled(wording.number(value, decimals=decimals), unit)


def capital(text: str) -> str:
    """Give a text with its first letter as a capital."""
    return f"{text[:1].upper()}{text[1:]}"


def record_words(lacking: list[str]) -> str:
    """Give the sentence that asks for what is missing, each once."""
    return f"Record {listed(tuple(dict.fromkeys(lacking)))}."


def wall_words(part: Part, wording: Wording) -> str:
    """Write a part's wall and material: ``2.6 mm SMC GF25``."""
    wall = math.nan if part.thickness_mm is None else part.thickness_mm
    return f"{millimetres(wall, wording)} {part.material}"


def modulus_input(symbol: str, material: Material, values: DesignValues) -> Input:
    """Give the design modulus of a material as an input with its source.

    Parameters
    ----------
    symbol : str
        How it is called, ``E after`` for instance.
    material : Material
        The material.
    values : DesignValues
        Its design values.
    """
    label = f"{symbol}, design modulus of {material.name}"
    source = design_source(material, material.stiffness_knock_down)
    return Input(label, values.modulus_gpa, "GPa", source)


def strength_input(symbol: str, material: Material, values: DesignValues) -> Input:
    """Give the design strength of a material as an input with its source."""
    label = f"{symbol}, design strength of {material.name}"
    source = design_source(material, material.strength_knock_down)
    return Input(label, values.strength_mpa, "MPa", source)


def design_source(material: Material, knock_down: float | None) -> str:
    """Say where a design value comes from: knock-down, source and mark."""
    factor = "no knock-down recorded" if knock_down is None else f"times {knock_down:g}"
    return f"{material_source(material)}, {factor}"


def material_source(material: Material) -> str:
    """Say where the figures of a material come from, with the mark."""
    mark = f" ({material.mark})" if material.mark else ""
    return f"materials, {material.name}{mark}"
