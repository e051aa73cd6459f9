"""Screws as clamp loads are worked out from them, or why that cannot be done."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from functools import lru_cache

from benchpack.calc.threads import stress_area_mm2
from benchpack.calc.tightening import friction_diameter_mm
from benchpack.model.designation import Designation
from benchpack.model.families import FamilySort
from benchpack.model.fastener_sizes import (
    CLEARANCE_HOLES_MM,
    HeadSize,
    PropertyClass,
    head_size,
    property_class,
)
from benchpack.model.tightening_words import METHODS, TighteningMethod, method_of
from benchpack.results.joint_drives import head_of
from benchpack.results.joint_facts import JointFacts
from benchpack.results.joint_mass import reading_of

BUTTON_SHARE = 0.8
"""What a button head holds of the load of its thread (ISO 7380-1, from memory)."""
_USUAL_BEARING = 1.3
"""Friction diameter over thread where the head is not known (common practice)."""
_BUTTON, _STUD, _FORMING = "button head screw", "stud", "flow-drill screw"
_TORQUE = re.compile(r"([0-9]+(?:[.,][0-9]+)?)\s*N\s?m\b", re.IGNORECASE)
USUAL_METHOD = next(method for method in METHODS if method.name == "torque")
"""What is taken where no way of tightening is recorded: friction is estimated."""
_PAST_TORQUE = ("torque and angle", "yield-controlled", "elongation by ultrasound")
"""Ways of tightening in which a torque only seats the screw."""


@dataclass(frozen=True, slots=True)
class Screw:
    """What a clamp load is worked out from; lengths in mm, stresses in MPa.

    Parameters
    ----------
    thread : str
        Its thread, ``M6`` or ``M8x1``.
    strength : PropertyClass
        Its property class.
    diameter_mm, pitch_mm : float
        Its thread.
    yield_mpa, proof_mpa : float
        Stresses of the class at this diameter.
    share : float
        What the head holds of the load of the thread.
    bearing_diameter_mm : float
        Where the head or nut rubs.
    is_bearing_usual : bool
        True where the head is not known.
    tightening : str
        How it is tightened, as it was written down.
    method : TighteningMethod
        What that is taken to be.
    is_method_assumed : bool
        True where the words name no way of tightening.
    torque_nm : float
        Torque that was written down, NaN where none was or where it only seats.
    """

    thread: str
    strength: PropertyClass
    diameter_mm: float
    pitch_mm: float
    yield_mpa: float
    proof_mpa: float
    share: float
    bearing_diameter_mm: float
    is_bearing_usual: bool
    tightening: str
    method: TighteningMethod
    is_method_assumed: bool
    torque_nm: float

    @property
    def name(self) -> str:
        """Thread and class, ``M6 8.8``."""
        return f"{self.thread} {self.strength.name}"


@dataclass(frozen=True, slots=True)
class Unknown:
    """Why a screw has no clamp load, and what to do about it, as sentences."""

    words: str
    remedy: str = ""


def screw_of(facts: JointFacts, tightening: str = "") -> Screw | Unknown | None:
    """Give what a clamp load is worked out from.

    Parameters
    ----------
    facts : JointFacts
        The joint.
    tightening : str
        How it is tightened where the joint itself does not say, by its nut for one.

    Returns
    -------
    Screw or Unknown or None
        None for what is no screw or stud.
    """
    joint = facts.joint
    return _screw_of(
        joint.family,
        joint.designation,
        joint.property_class.strip(),
        joint.tightening.strip() or tightening,
    )


def torque_in(text: str) -> float:
    """Give the greatest torque that a text states in Nm, NaN where it states none.

    Parameters
    ----------
    text : str
        How a screw is tightened, ``torque, 8 to 10 Nm`` for instance.
    """
    found = [float(number.replace(",", ".")) for number in _TORQUE.findall(text)]
    return max((torque for torque in found if torque > 0), default=math.nan)


@lru_cache(maxsize=16_384)
def _screw_of(
    family_text: str, designation: str, class_text: str, tightening: str
) -> Screw | Unknown | None:
    family, read = reading_of(family_text, designation)
    if family is None or family.sort is not FamilySort.SCREW or not family.threaded:
        return None
    if family.name == _FORMING:
        words = "A flow-drill screw holds by the thread it forms in the sheet, not by"
        return Unknown(f"{words} its class: its clamp load comes from trials.")
    strength = property_class(class_text) or property_class(read.property_class)
    missing = _thread_missing(read, designation.strip()) or _class_missing(
        strength, read, class_text
    )
    if missing is not None or strength is None:
        return missing
    return _screw(family.name, read, strength, tightening)


def _thread_missing(read: Designation, text: str) -> Unknown | None:
    remedy = "Write it as ISO 4762 M6x20 8.8."
    if not text:
        return Unknown("No designation is recorded, so no thread is known.", remedy)
    if not read.understood:
        return Unknown(f"The designation {text!r} is not understood.", remedy)
    if not read.thread:
        return Unknown(f"The designation {text!r} names no metric thread.", remedy)
    if read.pitch_mm is None:
        words = f"{read.thread} is no usual thread, and no pitch is named."
        return Unknown(words, "Write the pitch, M9x1.25 for instance.")
    area = stress_area_mm2(read.diameter_mm or math.nan, read.pitch_mm)
    if math.isnan(float(area)):
        words = f"A pitch of {read.pitch_mm:g} mm is too coarse for {read.thread}."
        return Unknown(words, "Correct the designation.")
    return None


def _class_missing(
    strength: PropertyClass | None, read: Designation, said: str
) -> Unknown | None:
    remedy = "Enter what stands on its head or end: 8.8, 10.9, A2-70."
    if strength is None and said:
        return Unknown(f"The property class {said!r} is not known.", remedy)
    if strength is None:
        return Unknown("The property class is not recorded.", remedy)
    if strength.is_nut:
        words = f"{strength.name} is the class of a nut, not of a screw."
        return Unknown(words, remedy)
    if math.isnan(strength.stresses_mpa(read.diameter_mm or math.nan)[1]):
        words = f"Class {strength.name} is not defined for {read.thread}."
        return Unknown(words, remedy)
    return None


def _screw(
    family: str, read: Designation, strength: PropertyClass, tightening: str
) -> Screw:
    diameter = read.diameter_mm or math.nan
    _, yield_mpa, proof_mpa = strength.stresses_mpa(diameter)
    torque_nm = torque_in(tightening)
    named = method_of(tightening)
    method = named or USUAL_METHOD
    if method.name in _PAST_TORQUE:
        torque_nm = math.nan
    head = head_size("ISO 4032", read.thread) if family == _STUD else head_of(read)[0]
    bearing = _bearing_mm(head, read.thread)
    return Screw(
        thread=f"{read.thread}x{read.pitch_mm:g}" if read.is_fine else read.thread,
        strength=strength,
        diameter_mm=diameter,
        pitch_mm=read.pitch_mm or math.nan,
        yield_mpa=yield_mpa,
        proof_mpa=proof_mpa,
        share=BUTTON_SHARE if family == _BUTTON else 1.0,
        bearing_diameter_mm=_USUAL_BEARING * diameter
        if math.isnan(bearing)
        else bearing,
        is_bearing_usual=math.isnan(bearing),
        tightening=tightening,
        method=method,
        is_method_assumed=named is None and math.isnan(torque_nm),
        torque_nm=torque_nm,
    )


def _bearing_mm(head: HeadSize | None, thread: str) -> float:
    """Give where a head rubs on a hole of the medium series, NaN where not known."""
    hole = CLEARANCE_HOLES_MM.get(thread)
    if head is None or head.bearing_diameter_mm is None or hole is None:
        return math.nan
    return float(friction_diameter_mm(head.bearing_diameter_mm, hole))
