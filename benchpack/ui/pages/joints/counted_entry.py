"""What is typed while counting, as a joint."""

from __future__ import annotations

from dataclasses import dataclass, replace

from benchpack.errors import DataError, Problem
from benchpack.model.designation import Designation, read_designation
from benchpack.model.entry import parse_value
from benchpack.model.families import (
    FAMILY_NAMES,
    Counted,
    JointFamily,
    family_of,
)
from benchpack.model.joint import JOINT_FIELDS, Joint
from benchpack.model.words import KnownBy, Subsystem
from benchpack.session.joint_edits import free_joint_name
from benchpack.ui.forms.weighing import parse_weighing
from benchpack.units.formatting import NumberStyle

_FIELD = {field.name: field for field in JOINT_FIELDS}
_SEALS = ("gasket", "sealant bead")
_BATCH = "9.6 g / 20"


@dataclass(frozen=True, slots=True)
class CountedTexts:
    """The texts of the entry bar.

    Parameters
    ----------
    family, designation, count, length, joins, mass : str
        What stands in each field.
    """

    family: str = ""
    designation: str = ""
    count: str = ""
    length: str = ""
    joins: str = ""
    mass: str = ""


def meant_family(text: str) -> str:
    """Give the family that a text means: a name, a synonym, or the start of one name.

    Parameters
    ----------
    text : str
        What was typed.

    Returns
    -------
    str
        The family's name, or the text itself where it means none.
    """
    typed = text.strip()
    found = family_of(typed)
    if found is not None:
        return found.name
    folded = typed.casefold()
    for test in (str.startswith, str.__contains__):
        names = [name for name in FAMILY_NAMES if folded and test(name, folded)]
        if len(names) == 1:
            return names[0]
    return typed


def read_family(texts: CountedTexts) -> tuple[JointFamily | None, Designation]:
    """Give the family of an entry and what its designation says.

    A standard that is about one family goes before the family that stands in its
    field, which may be left from the entry before.
    """
    name = meant_family(texts.family)
    read = read_designation(texts.designation, family=name)
    standard = family_of(read.standard_family)
    if standard is not None and standard.name != name:
        return standard, read_designation(texts.designation, family=standard.name)
    return family_of(name) or family_of(read.family), read


def counted_joint(
    texts: CountedTexts, pack: str, joints: tuple[Joint, ...], style: NumberStyle
) -> Joint:
    """Read the entry bar.

    Parameters
    ----------
    texts : CountedTexts
        What was typed.
    pack : str
        The pack it is counted in.
    joints : tuple of Joint
        Its joints so far; the new one gets a name that none of them has.
    style : NumberStyle
        Decimal mark; a mass without a unit is in g.

    Raises
    ------
    DataError
        When it cannot be; the problem's column is the title of the field.
    """
    if not texts.family.strip() and not texts.designation.strip():
        what = "Neither family nor designation is filled in."
        raise DataError(Problem(what, "Give one of them.", column="family"))
    if not any((texts.designation, texts.count, texts.length, texts.joins, texts.mass)):
        what = f"Nothing but the family, {texts.family.strip()}, is filled in."
        remedy = "Give a designation, a count or a mass."
        raise DataError(Problem(what, remedy, column="designation"))
    family, read = read_family(texts)
    mass_g, known_by, pieces = _weighed(texts.mass, style)
    count = _count(texts.count, pieces)
    name = meant_family(texts.family) if family is None else family.name
    is_line = family is not None and family.counted is Counted.LINE
    length_mm = parse_value(
        _FIELD["length_mm"], texts.length if is_line else "", decimal=style.decimal_mark
    )
    joint = Joint(
        pack,
        "joint",
        family=name,
        designation=texts.designation.strip(),
        property_class=read.property_class,
        count=count,
        length_mm=length_mm,
        mass_each_g=mass_g,
        known_by=known_by,
        joins=texts.joins.strip(),
        subsystem=Subsystem.SEALS if name in _SEALS else Subsystem.JOINTS,
    )
    wanted = _wanted_name(joint, read, is_line=is_line)
    return replace(joint, name=free_joint_name(joints, wanted))


def _weighed(text: str, style: NumberStyle) -> tuple[float | None, KnownBy, int]:
    if not text.strip():
        return None, KnownBy.UNSTATED, 1
    weighing = parse_weighing(text, style, unit="g", example=_BATCH)
    # A gram has nine decimals at most here: dividing leaves no stray digits.
    mass_g = round(1000 * weighing.mass_each_kg, 9)
    return mass_g, weighing.known_by, weighing.pieces


def _count(text: str, pieces: int) -> int:
    if text.strip() or pieces == 1:
        count: int | None = parse_value(_FIELD["count"], text)
        return 1 if count is None else count
    return pieces


def _wanted_name(joint: Joint, read: Designation, *, is_line: bool) -> str:
    """Call a joint by the part it holds and its family, or by family and size."""
    noun = joint.family or "joint"
    if joint.joins:
        several = joint.count > 1 and not is_line and not noun.endswith("s")
        return f"{joint.joins} {noun}{'s' if several else ''}"
    size = read.size if read.standard or read.thread else joint.designation
    return f"{noun} {size or joint.designation}".strip()
