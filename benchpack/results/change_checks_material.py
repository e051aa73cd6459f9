"""Checks of what a material bears beside load: fire class and lasting heat."""

from __future__ import annotations

import re

from benchpack.model.material import Material
from benchpack.results.change_checks_parts import PartChange
from benchpack.results.change_checks_words import amount, material_source
from benchpack.results.check import Check
from benchpack.results.closure import Grade
from benchpack.results.figure import Input
from benchpack.results.wording import Wording

FLAMMABILITY, SERVICE_TEMPERATURE = "flammability", "service temperature"
HOT_DEGC = 80.0
"""Hot end of a pack at which design values are taken (common practice, no source)."""
MARGIN_K = 10.0
_CLASSES = (
    (re.compile(r"not combustible|non-?combustible|\bA1\b", re.IGNORECASE), 4),
    (re.compile(r"\b5V[AB]?\b|\bV-?0\b|\bVTM-?0\b", re.IGNORECASE), 3),
    (re.compile(r"\bV-?[12]\b|\bVTM-?[12]\b", re.IGNORECASE), 2),
    (re.compile(r"\bHBF?\b", re.IGNORECASE), 1),
)
_GOOD_CLASS = 3
_WALL = "The class holds from the wall on at which it was tested (UL 94)."
_DUTIES = "Fire from outside and venting cells are another matter, to be tested."


def class_rank(text: str) -> int:
    """Rank a fire class: 4 not combustible, 3 V-0, 2 V-1 or V-2, 1 HB, 0 unknown.

    Parameters
    ----------
    text : str
        What a material record says.
    """
    ranks = (rank for pattern, rank in _CLASSES if pattern.search(text))
    return next(ranks, 0)


def flammability_check(made: PartChange) -> Check | None:
    """Check the fire class of a new material against today's.

    Parameters
    ----------
    made : PartChange
        A part and what becomes of it.

    Returns
    -------
    Check or None
        None where the material stays.
    """
    if not made.becomes_other:
        return None
    name, new = made.name, made.new
    if new is None:
        return _no_material(FLAMMABILITY, made)
    said, today = new.flammability.strip(), _today(made.old)
    rank = class_rank(said)
    if not said:
        words = f"The fire class of {new.name} is not recorded."
        remedy = f"Record the flammability of {new.name}."
        return Check(FLAMMABILITY, name, Grade.NONE, words, (), remedy)
    words = f"{new.name}: {said}{today}."
    if rank > _GOOD_CLASS:
        return Check(FLAMMABILITY, name, Grade.GOOD, words)
    words = f"{words} {_WALL} {_DUTIES}"
    if rank == _GOOD_CLASS:
        return Check(FLAMMABILITY, name, Grade.GOOD, words)
    old_rank = 0 if made.old is None else class_rank(made.old.flammability)
    grade = Grade.LOOK
    remedy = "Name the grade that is meant; retarded ones are heavier and dearer."
    if rank == 1:
        remedy = (
            "Take a grade with flame retardant: 5 to 15 % denser and dearer, from "
            "memory."
        )
        if old_rank != 1:
            grade = Grade.FAIL
    return Check(FLAMMABILITY, name, grade, words, (), remedy)


def _today(old: Material | None) -> str:
    if old is None or not old.flammability.strip():
        return ""
    return f", today {old.flammability.strip()}"


def temperature_check(made: PartChange, wording: Wording) -> Check | None:
    """Check the lasting heat that a new material bears.

    Parameters
    ----------
    made : PartChange
        A part and what becomes of it.
    wording : Wording
        How figures are written.

    Returns
    -------
    Check or None
        None where the material stays.
    """
    if not made.becomes_other:
        return None
    name, new = made.name, made.new
    if new is None:
        return _no_material(SERVICE_TEMPERATURE, made)
    bears = new.service_temperature_degc
    if bears is None:
        words = f"What lasting heat {new.name} bears is not recorded."
        remedy = f"Record the service temperature of {new.name}."
        return Check(SERVICE_TEMPERATURE, name, Grade.NONE, words, (), remedy)
    hot = amount(HOT_DEGC, "°C", wording)
    today = ""
    if made.old is not None and made.old.service_temperature_degc is not None:
        old = amount(made.old.service_temperature_degc, "°C", wording, digits=3)
        today = f", today {old}"
    words = (
        f"{new.name} bears {amount(bears, '°C', wording, digits=3)} for long{today}; "
        f"the hot end of a pack is {hot}."
    )
    grade, remedy = Grade.GOOD, ""
    if bears < HOT_DEGC:
        grade, remedy = Grade.FAIL, "Take a material that bears more heat."
    elif bears < HOT_DEGC + MARGIN_K:
        grade, remedy = Grade.LOOK, "See how hot it gets where the part sits."
    figures = (
        Input("service temperature", bears, "degC", material_source(new)),
        Input("hot end of a pack", HOT_DEGC, "degC", "common practice, no source"),
    )
    return Check(SERVICE_TEMPERATURE, name, grade, words, figures, remedy)


def _no_material(kind: str, made: PartChange) -> Check:
    wanted = made.change.material.strip() or made.after.material.strip()
    words = f"The material {wanted} is not in the library."
    remedy = f"Enter the material {wanted}."
    if not wanted:
        words = f"The material of {made.after.name} is not given."
        remedy = "Choose one."
    return Check(kind, made.name, Grade.NONE, words, (), remedy)
