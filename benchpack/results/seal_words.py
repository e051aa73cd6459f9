"""What is said of a seal line: lengths, loads, its flange, what is missing."""

from __future__ import annotations

import math

from benchpack.results.figure import Input
from benchpack.results.seal_flange import Flange
from benchpack.results.seal_lines import Holding, SealLine
from benchpack.results.wording import Wording, listed
from benchpack.units.number_style import labelled

PITCH_FORMULA = "[480 (a/b) E t^3 dH / (13 p_min + 2 p_max)]^(1/4)"
_PITCH_SOURCE = f"{PITCH_FORMULA}, flange taken as wide as the gasket"


def millimetres(value: float, wording: Wording) -> str:
    """Write a length in mm with two digits that say something, ``0.4``, ``6``, ``70``.

    Parameters
    ----------
    value : float
        Length in mm.
    wording : Wording
        How figures are written.
    """
    if math.isnan(value) or abs(value) >= 9.95:
        return labelled(wording.number(value), "mm")
    decimals = 2 if abs(value) < 0.095 else 1
    whole = round(value, 1) == round(value) and decimals == 1
    return labelled(wording.number(value, decimals=0 if whole else decimals), "mm")


def pitches(*values_mm: float, wording: Wording) -> tuple[str, ...]:
    """Write pitches so that two which differ do not look alike.

    Parameters
    ----------
    *values_mm : float
        Pitches in mm.
    wording : Wording
        How figures are written.
    """
    whole = [round(value) for value in values_mm if not math.isnan(value)]
    decimals = 0 if len(set(whole)) == len(whole) else 1
    return tuple(
        labelled(wording.number(value, decimals=decimals), "mm") for value in values_mm
    )


def metres(value_mm: float, wording: Wording) -> str:
    """Write a length given in mm as metres, a short one as millimetres."""
    if value_mm < 1000:
        return millimetres(value_mm, wording)
    return labelled(wording.number(value_mm / 1000, decimals=1), "m")


def newtons(value: float, wording: Wording) -> str:
    """Write a force, from 1 kN on in kN."""
    if abs(value) >= 999.5:
        return labelled(wording.number(value / 1000, decimals=1), "kN")
    return labelled(wording.number(value, decimals=0 if value >= 9.5 else 1), "N")


def flange_words(flange: Flange, wording: Wording) -> str:
    """Write a flange with its figures: ``lid panel (0.7 mm mild steel DC04)``."""
    thickness = millimetres(flange.thickness_mm, wording)
    hot = "" if flange.is_metal else ", hot and long-term"
    if not flange.is_knocked_down:
        hot = ", data-sheet modulus"
    return f"{flange.words} ({thickness} {flange.material}{hot})"


def missing(line: SealLine) -> tuple[str, ...]:
    """Give what has to be recorded before the pitch of a clamped line can be judged."""
    joint = line.joints[0].joint
    found: list[str] = []
    if math.isnan(line.length_mm):
        found.append(f"the length of {joint.name}")
    if line.kind is None:
        found.append(
            f"the kind of gasket in the designation of {joint.name} (foam, EPDM "
            "profile, cured in place)"
        )
    lacking = [word for flange in line.flanges for word in flange.lacking]
    found += dict.fromkeys(lacking)
    if not line.count and joint.joins.strip() and joint.to.strip():
        found.append(
            f"the screws that join {joint.joins.strip()} and {joint.to.strip()}, with "
            "the role clamp and seal"
        )
    return tuple(found)


def not_applicable_words(line: SealLine) -> str:
    """Say why no pitch applies to a line that no screws hold."""
    kind = line.joints[0].kind or line.name
    if line.holding is Holding.SEAM:
        return f"Pitch does not apply: {kind} is a seam, tight without screws."
    what = f"{kind}, {line.kind.name}" if line.kind is not None else kind
    return f"Pitch does not apply: {what}, holds both parts without screws."


def only_between_metals_words(line: SealLine) -> str:
    """Say which flange an anaerobic sealant cannot cure on, empty where it can."""
    if line.kind is None or not line.kind.metal_flanges_only:
        return ""
    others = [
        f"{flange.part} is {flange.material}"
        for flange in line.flanges
        if flange.is_metal is False
    ]
    if not others:
        return ""
    return f"This sealant cures between metals only, and {listed(tuple(others))}."


def thicker_mm(line: SealLine) -> float:
    """Give the thickness that holds the present pitch, all else kept, mm, or NaN."""
    flange, kind = line.governing, line.kind
    if kind is None or not flange.modulus_mpa > 0:
        return math.nan
    wanted = flange.stiffness_n_mm * line.loss_mm / kind.allowed_loss_mm
    own = max(wanted - flange.added_n_mm, 0.0)
    return math.cbrt(own / flange.modulus_mpa)


def line_figures(line: SealLine) -> tuple[Input, ...]:
    """Give what a line is judged by, with units and where each comes from."""
    flange, kind, joint = line.governing, line.kind, line.joints[0].joint
    figures = [
        Input(f"L, length of {joint.name}", line.length_mm, "mm", "joints"),
        Input("screws", float(line.count), "", _clamp_source(line)),
        Input("present pitch", line.pitch_mm, "mm", "L / screws"),
        Input("C, allowed pitch", line.allowed_mm, "mm", _PITCH_SOURCE),
        Input("allowed with the give of both flanges", line.allowed_both_mm, "mm"),
        Input(
            f"E, design modulus of {flange.material or 'the flange'}",
            flange.modulus_mpa / 1000,
            "GPa",
            _modulus_source(flange),
        ),
        Input(f"t, thickness of {flange.part}", flange.thickness_mm, "mm", "parts"),
        *(
            Input(
                f"t of {part.name}, bends with it",
                math.nan if part.thickness_mm is None else part.thickness_mm,
                "mm",
                f"parts, {part.material}",
            )
            for part in flange.stiffeners
        ),
        Input("b, gasket width", line.gasket_width_mm, "mm", "designation"),
    ]
    if kind is not None:
        source = f"{kind.name}: {kind.source} ({kind.mark})"
        figures += [
            Input("p_min, midway", kind.pressure_low_mpa, "MPa", source),
            Input("p_max, at a screw", kind.pressure_high_mpa, "MPa", source),
            Input(
                "dH, allowed loss of compression", kind.allowed_loss_mm, "mm", source
            ),
            Input("loss at the present pitch", line.loss_mm, "mm", "midway"),
        ]
    return tuple(figures)


def _clamp_source(line: SealLine) -> str:
    return listed(tuple(clamp.joint.name for clamp in line.clamps), most=4)


def _modulus_source(flange: Flange) -> str:
    if not flange.is_knocked_down:
        return "data sheet, no stiffness knock-down recorded"
    return "materials" if flange.is_metal else "data sheet times stiffness knock-down"
