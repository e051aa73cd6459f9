"""The mass of one fastener from the shape that its designation names."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.fastener_mass import (
    button_screw_mass_g,
    flange_screw_mass_g,
    hex_screw_mass_g,
    nut_mass_g,
    socket_screw_mass_g,
    usual_thread_length_mm,
)
from benchpack.model.designation import Designation
from benchpack.model.families import JointFamily, family_of
from benchpack.model.fastener_sizes import HeadSize
from benchpack.results.figure import Input
from benchpack.results.joint_bodies import SIMPLE_SHAPES, Body, Shape, within
from benchpack.results.joint_drives import head_of

FloatArray = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class _Head:
    mass_g: Callable[..., FloatArray]
    takes: tuple[tuple[str, str, str], ...]
    formula: str


_HEIGHT = ("head_height_mm", "head_height_mm", "k, height of the head")
_FLATS = ("across_flats_mm", "across_flats_mm", "s, width across flats")
_ROUND = (
    ("head_diameter_mm", "head_diameter_mm", "d_k, diameter of the head"),
    _HEIGHT,
    ("drive_size_mm", "drive_size_mm", "s, width of the socket"),
    ("drive_depth_mm", "drive_depth_mm", "t, depth of the socket"),
)
_FLANGE = (
    ("flange_diameter_mm", "head_diameter_mm", "d_c, diameter of the flange"),
    ("flange_thickness_mm", "flange_thickness_mm", "c, edge of the flange"),
)
_HEADS = {
    "hex screw": _Head(
        hex_screw_mass_g, (_FLATS, _HEIGHT), "rho (0.866 s^2 k 0.975 + A L)"
    ),
    "flange screw": _Head(
        flange_screw_mass_g,
        (_FLATS, _HEIGHT, *_FLANGE),
        "rho (disc + cone + 0.866 s^2 k' 0.975 + A L)",
    ),
    "socket screw": _Head(
        socket_screw_mass_g,
        _ROUND,
        "rho (0.96 pi/4 d_k^2 k - 0.866 s^2 t + A L)",
    ),
    "button head screw": _Head(
        button_screw_mass_g, _ROUND, "rho (slice of a sphere - 0.866 s^2 t + A L)"
    ),
}
_NUT_HEIGHT = ("height_mm", "head_height_mm", "m, height")
_TOLERANCES = {
    "hex screw": 0.07,
    "socket screw": 0.07,
    "flange screw": 0.12,
    "button head screw": 0.12,
}
"""Half widths against handbook masses (datasets/fasteners.csv)."""
_NUT, _FLANGE_NUT, _ASSUMED = 0.07, 0.15, 0.15


def shape_of(read: Designation, family: JointFamily) -> Shape | None:
    """Give the mass of a screw, nut, stud or rivet, None where its shape is not known.

    Parameters
    ----------
    read : Designation
        What its designation says.
    family : JointFamily
        Its family; a standard that is about another one goes first.
    """
    named = family_of(read.standard_family) or family
    body = Body(
        named,
        _known(read.diameter_mm),
        _known(read.pitch_mm),
        _known(read.length_mm),
        _known(named.density_kg_m3),
    )
    found: Shape | None = None
    is_assumed = False
    if named.name in _HEADS or named.name == "nut":
        head, is_assumed = head_of(read)
        if head is None:
            return None
        found = _nut(body, head) if named.name == "nut" else _screw(body, head, read)
    else:
        simple = SIMPLE_SHAPES.get(named.name)
        found = simple(body) if simple else None
    if found is None or math.isnan(found.mass_g):
        return None
    if not is_assumed:
        return found
    source = f"{found.source}; standard not named, taken as usual"
    return replace(found, tolerance=max(found.tolerance, _ASSUMED), source=source)


def _known(value: float | None) -> float:
    return math.nan if value is None else value


def _screw(body: Body, head: HeadSize, read: Designation) -> Shape:
    kind, tolerance = _HEADS[body.family.name], _TOLERANCES[body.family.name]
    sizes, inputs = _sizes(head, kind.takes)
    mass_g = kind.mass_g(
        body.diameter_mm,
        body.pitch_mm,
        length_mm=body.length_mm,
        thread_length_mm=_thread_length_mm(read.standard, body.diameter_mm),
        density_kg_m3=body.density_kg_m3,
        **sizes,
    )
    return Shape(
        float(mass_g),
        tolerance,
        kind.formula,
        within(head.source or head.mark, tolerance),
        (*body.thread, body.length, *inputs),
    )


def _thread_length_mm(standard: str, diameter_mm: float) -> float:
    if standard in ("ISO 4762", "DIN 912"):
        return float(usual_thread_length_mm(diameter_mm))
    if standard in ("ISO 4014", "DIN 931"):
        return float(usual_thread_length_mm(diameter_mm, allowance_mm=6.0))
    return math.inf


def _nut(body: Body, head: HeadSize) -> Shape:
    flanged = head.flange_thickness_mm is not None
    takes = (_FLATS, _NUT_HEIGHT, *(_FLANGE if flanged else ()))
    sizes, inputs = _sizes(head, takes)
    mass_g = nut_mass_g(
        body.diameter_mm, body.pitch_mm, density_kg_m3=body.density_kg_m3, **sizes
    )
    tolerance = _FLANGE_NUT if flanged else _NUT
    outside = "disc + cone + 0.866 s^2 m' 0.975" if flanged else "0.866 s^2 m 0.975"
    return Shape(
        float(mass_g),
        tolerance,
        f"rho ({outside} - A m)",
        within(head.source or head.mark, tolerance),
        (*body.thread, *inputs),
    )


def _sizes(
    head: HeadSize, takes: tuple[tuple[str, str, str], ...]
) -> tuple[dict[str, float], tuple[Input, ...]]:
    sizes = {argument: _known(getattr(head, name)) for argument, name, _ in takes}
    inputs = [
        Input(label, sizes[argument], "mm", head.mark) for argument, _, label in takes
    ]
    return sizes, tuple(inputs)
