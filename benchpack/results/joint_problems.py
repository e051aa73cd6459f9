"""What is amiss with one joint row, and how to mend it."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

from benchpack.errors import Problem, Severity
from benchpack.model.designation import Designation
from benchpack.model.families import FAMILY_NAMES, Counted, JointFamily, family_of
from benchpack.model.fastener_sizes import PROPERTY_CLASSES, property_class
from benchpack.model.joint import JOINT_FIELDS, Joint
from benchpack.results.joint_mass import reading_of, unit_mass

_HEADS = {field.name: field.header() for field in JOINT_FIELDS}
_CLASS_BEHIND_SIZE = re.compile(
    r"M[0-9.]+(?:\s?x\s?[0-9.]+)+(?:\s+|\s?-\s?)"
    r"([0-9]{1,2}\.[0-9]|[A-D][0-9]-[0-9]{2})$"
)
"""What stands behind a thread as a property class does."""
_WEIGH = "Weigh 20 and divide"


def joint_problems(joint: Joint) -> tuple[Problem, ...]:
    """Give what keeps a joint from its figures, and what contradicts itself.

    Parameters
    ----------
    joint : Joint
        The row.

    Returns
    -------
    tuple of Problem
        Warnings with the joint's name as their record; what explains the rest comes
        first, and what follows from it is left out.
    """
    found = _of_row(_row(joint))
    return tuple([_named(problem, joint.name) for problem in found]) if found else ()


def _named(problem: Problem, name: str) -> Problem:
    # Thousands of rows may have one: this is a third of the cost of `replace`.
    return Problem(
        problem.what,
        problem.remedy,
        column=problem.column,
        value=problem.value,
        record=name,
        severity=problem.severity,
    )


def is_amiss(joint: Joint) -> bool:
    """Tell whether `joint_problems` has anything to say of a joint."""
    return bool(_of_row(_row(joint)))


class _Row(NamedTuple):
    """What of a joint decides what is amiss with it."""

    family: str
    designation: str
    property_class: str
    has_length: bool
    has_mass: bool
    has_figures: bool


def _row(joint: Joint) -> _Row:
    return _Row(
        joint.family.strip(),
        joint.designation.strip(),
        joint.property_class.strip(),
        joint.length_mm is not None,
        joint.mass_each_g is not None,
        None not in (joint.mass_each_g, joint.time_each_s, joint.cost_each),
    )


@lru_cache(maxsize=16_384)
def _of_row(row: _Row) -> tuple[Problem, ...]:
    family, read = reading_of(row.family, row.designation)
    found: list[Problem] = []
    if row.family and family_of(row.family) is None:
        found.append(_unknown_family(row, read))
    elif family is None and not row.has_figures:
        found.append(
            _caution(
                "family",
                "No family is recorded, and the designation names none.",
                "Choose one, or enter mass, time and cost.",
            )
        )
    if family is not None:
        found.extend(_contradictions(row, family, read))
        found.extend(_lacking(row, family, read))
    return tuple(found)


def _unknown_family(row: _Row, read: Designation) -> Problem:
    taken = f" It is taken as {read.family}, see its designation." * bool(read.family)
    return _caution(
        "family",
        f"The family {row.family!r} is not known.{taken}",
        f"Use one of: {', '.join(FAMILY_NAMES)}.",
        row.family,
    )


def _contradictions(
    row: _Row, family: JointFamily, read: Designation
) -> Iterator[Problem]:
    of_standard = family_of(read.standard_family)
    if of_standard and _is_bought(of_standard) and of_standard.name != family.name:
        yield _caution(
            "family",
            f"{read.standard} is a {of_standard.name}, the family says {family.name}.",
            "Correct the one that is wrong.",
            row.family,
        )
    if not family.threaded:
        return
    asked, said = row.property_class, read.property_class
    if asked and property_class(asked) is None:
        yield _caution(
            "property_class",
            f"The property class {asked!r} is not known.",
            f"Use one of: {', '.join(PROPERTY_CLASSES)}.",
            asked,
        )
    elif asked and said and property_class(asked) != property_class(said):
        yield _caution(
            "property_class",
            f"The designation says {said}, the property class {asked}.",
            "Correct the one that is wrong.",
            asked,
        )
    unknown = "" if asked or said else _class_in(row.designation)
    if unknown:
        yield _caution(
            "designation",
            f"The property class {unknown!r} of the designation is not known.",
            f"Use one of: {', '.join(PROPERTY_CLASSES)}.",
            row.designation,
        )


def _class_in(designation: str) -> str:
    found = _CLASS_BEHIND_SIZE.search(designation)
    return found[1] if found else ""


def _lacking(row: _Row, family: JointFamily, read: Designation) -> Iterator[Problem]:
    if family.counted is Counted.LINE:
        if not row.has_length and not row.has_figures:
            yield _caution(
                "length_mm",
                f"The length of this {family.name} is not recorded.",
                "Enter it, or mass, time and cost of the whole line.",
            )
        return
    mass, _ = unit_mass(row.family, row.designation)
    if row.has_mass or not math.isnan(mass.mass_g):
        return
    text = row.designation
    if not text:
        what = f"Neither designation nor mass of this {family.name} is recorded."
        yield _caution("designation", what, f"{_WEIGH}, or write its designation.")
    elif not read.understood:
        yield _caution(
            "designation",
            f"The designation {text!r} is not understood, and no mass is entered.",
            f"{_WEIGH}, or write it as ISO 4762 M6x20.",
            text,
        )
    else:
        what = f"What one {text!r} weighs cannot be worked out."
        yield _caution("mass_each_g", what, f"{_WEIGH}.")


def _is_bought(family: JointFamily) -> bool:
    return family.counted is Counted.PIECE and family.mass_g is None


def _caution(name: str, what: str, remedy: str, value: str = "") -> Problem:
    return Problem(
        what,
        remedy,
        column=_HEADS[name],
        value=value,
        severity=Severity.WARNING,
    )
