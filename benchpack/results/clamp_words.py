"""What is said of a clamp load: the figures, the way of tightening, what to change."""

from __future__ import annotations

import math
from collections.abc import Sequence

from benchpack.model.study import Study
from benchpack.model.tightening_words import friction_class
from benchpack.results.clamp_loads import BETTER_METHOD, DEGREE, ClampLoad
from benchpack.results.clamp_screws import BUTTON_SHARE, USUAL_METHOD
from benchpack.results.figure import Input
from benchpack.results.wording import Wording, listed
from benchpack.units.number_style import labelled

_NOTHING_GAINED = 1.05


def clamp_words(load: ClampLoad, wording: Wording, *, count: int) -> str:
    """Say what a screw clamps with, how it is tightened, and what would change that.

    Parameters
    ----------
    load : ClampLoad
        The clamp load.
    wording : Wording
        How figures are written.
    count : int
        Number of screws.
    """
    least, greatest = forces(load.least_n, wording), forces(load.greatest_n, wording)
    stated = "stated " * (not math.isnan(load.screw.torque_nm))
    torque = f"{stated}{_torque(load.torque_nm, wording)}"
    used = f"{wording.share(load.utilisation)} of the proof load of {load.screw.name}"
    said = [
        f"F_min {least} to F_max {greatest} at {torque}, {used}.",
        _method_words(load, wording),
    ]
    if load.screw.share < 1.0:
        share = wording.share(BUTTON_SHARE)
        said.append(f"A button head holds {share} of what its thread would.")
    if load.utilisation <= 1.0:
        said.append(_gain_words(load, wording, count))
    return " ".join(filter(None, said))


def clamp_remedy(
    load: ClampLoad,
    wording: Wording,
    *,
    in_plastic: bool,
    is_full: bool,
    is_wide: bool,
) -> str:
    """Say what to do about a clamp load, most important first; empty for nothing.

    Parameters
    ----------
    load : ClampLoad
        The clamp load.
    wording : Wording
        How figures are written.
    in_plastic : bool
        True where it squeezes a plastic part.
    is_full : bool
        True where it comes near the proof load.
    is_wide : bool
        True where it scatters widely.
    """
    said: list[str] = []
    if is_full:
        allowed = _torque(load.allowed_torque_nm, wording)
        said.append(
            f"Tighten with at most {allowed}, or take a stronger or larger screw."
        )
    if in_plastic:
        said.append("Use a compression limiter.")
    if load.screw.is_method_assumed:
        said.append("Record how it is tightened.")
    elif is_wide:
        said.append("Tighten by torque and angle, or set the torque on the joint.")
    return " ".join(said)


def plastic_words(parts: Sequence[str]) -> str:
    """Say that clamp relaxes in plastic parts, empty where there are none.

    Parameters
    ----------
    parts : sequence of str
        Each plastic part with its material, as a clause.
    """
    if not parts:
        return ""
    clauses = listed(tuple(parts))
    return f"{clauses[0].upper()}{clauses[1:]}: the clamp relaxes in plastic."


def clamp_figures(load: ClampLoad, study: Study) -> tuple[Input, ...]:
    """Give what went into a clamp load and what came out.

    Parameters
    ----------
    load : ClampLoad
        The clamp load.
    study : Study
        Friction in the thread and under the head.
    """
    screw = load.screw
    strength = f"class {screw.strength.name}: {screw.strength.source}"
    method = f"{screw.method.name}: {screw.method.source} ({screw.method.mark})"
    usual = "1.3 d, common practice, no source"
    bearing = usual if screw.is_bearing_usual else "(d_w + d_h) / 2 of its standard"
    stated = "F_max at the stated torque"
    at_yield = f"{DEGREE:g} of yield, pull and twist together (VDI 2230-1)"
    figures = [
        Input("d, diameter", screw.diameter_mm, "mm", "designation"),
        Input("P, pitch", screw.pitch_mm, "mm", "designation"),
        Input("A_s, stress area", load.stress_area_mm2, "mm2", "ISO 898-1"),
        Input("R_p, yield", screw.yield_mpa, "MPa", strength),
        Input("S_p, proof stress", screw.proof_mpa, "MPa", strength),
        Input("mu_G, thread", study.thread_friction, "", _class(study.thread_friction)),
        Input("mu_K, head", study.head_friction, "", _class(study.head_friction)),
        Input("D_Km, friction diameter", screw.bearing_diameter_mm, "mm", bearing),
        Input("alpha_A, tightening factor", screw.method.factor, "", method),
        Input("proof load", load.proof_load_n, "N", "S_p A_s" + _share(load)),
        Input(
            "F_max",
            load.greatest_n,
            "N",
            at_yield + _share(load) if math.isnan(screw.torque_nm) else stated,
        ),
        Input("F_min", load.least_n, "N", "F_max / alpha_A"),
        Input("torque", load.torque_nm, "Nm", "F_max (0.159 P + 0.577 d2 mu_G + ...)"),
        Input("F_max over proof load", load.utilisation, "", ""),
        Input("F_min by torque and angle", load.better_least_n, "N", "at equal F_max"),
    ]
    return tuple(figures)


def forces(value_n: float, wording: Wording) -> str:
    """Write a force given in N as kN with one decimal.

    Parameters
    ----------
    value_n : float
        N.
    wording : Wording
        How figures are written.
    """
    return labelled(wording.number(value_n / 1000, decimals=1), "kN")


def _torque(value_nm: float, wording: Wording) -> str:
    decimals = 0 if value_nm >= 99.5 else 1
    return labelled(wording.number(value_nm, decimals=decimals), "Nm")


def _method_words(load: ClampLoad, wording: Wording) -> str:
    screw = load.screw
    low, high = screw.method.factor_low, screw.method.factor_high
    factor = (
        f"F_max is {wording.number(low, decimals=1)} to "
        f"{wording.number(high, decimals=1)} times F_min"
    )
    if not screw.is_method_assumed:
        name = screw.method.name
        return f"By {name} {factor}; the greater counts."
    taken = f"taken as {USUAL_METHOD.name} with estimated friction: {factor}."
    if not screw.tightening:
        return f"How it is tightened is not recorded, {taken}"
    return f"{screw.tightening!r} names no way of tightening that is known, {taken}"


def _gain_words(load: ClampLoad, wording: Wording, count: int) -> str:
    if load.gain < _NOTHING_GAINED:
        return ""
    more = wording.share(load.gain - 1.0)
    better = forces(load.better_least_n, wording)
    said = f"{BETTER_METHOD.name.capitalize()} would guarantee {better}, {more} more"
    fewer = load.same_clamp_count(count)
    if fewer == count:
        return f"{said}."
    same = wording.number(fewer)
    return f"{said}: {same} of the {wording.number(count)} would clamp as much."


def _class(friction: float) -> str:
    found = friction_class(friction)
    return "study" if found is None else f"study; class {found.letter} of VDI 2230-1"


def _share(load: ClampLoad) -> str:
    share = load.screw.share
    return "" if share == 1.0 else f", times {share:g} for a button head (ISO 7380-1)"
