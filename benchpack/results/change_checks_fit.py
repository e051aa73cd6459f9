"""Check of a part on a frame of another material as both warm."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from benchpack.calc.expansion import mismatch_strain, panel_stress_mpa, travel_mm
from benchpack.model.change import ChangeKind
from benchpack.model.fastener_sizes import CLEARANCE_HOLES_MM
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.results.change_checks_parts import PartChange, design_values
from benchpack.results.change_checks_state import Proposed
from benchpack.results.change_checks_words import (
    PRACTICE,
    amount,
    material_source,
    record_words,
    sides_of,
)
from benchpack.results.check import Check
from benchpack.results.closure import Grade
from benchpack.results.figure import Input
from benchpack.results.joint_facts import JointFacts
from benchpack.results.ledger_resizing import is_metal, is_polymer
from benchpack.results.ledger_today import folded
from benchpack.results.seal_words import millimetres
from benchpack.results.wording import Wording

EXPANSION = "expansion"
RISE_K = 60.0
"""From mounting to hot or cold (common practice, no source)."""
USUAL_THREAD = "M6"
_SEEN_MM = 0.05


@dataclass(frozen=True, slots=True)
class Frame:
    """What a part is held on.

    Parameters
    ----------
    part : Part
        The frame.
    material : Material
        Its metal.
    thread : str
        Thread of the screws that hold it, empty where none are recorded.
    """

    part: Part
    material: Material
    thread: str


def expansion_check(made: PartChange, proposed: Proposed) -> Check | None:
    """Check by how much a part and its metal frame outgrow each other.

    Parameters
    ----------
    made : PartChange
        A part and what becomes of it.
    proposed : Proposed
        The pack before and after.

    Returns
    -------
    Check or None
        None where the material stays, and where no metal part holds it.
    """
    if made.change.kind in (ChangeKind.MOULD_IN, ChangeKind.ADD):
        return None
    lead, new = made.lead, made.new
    if not made.becomes_other or new is None or lead is None:
        return None
    frame = _frame(made, proposed)
    if frame is None:
        return None
    length = max(_length(part) for part in made.before)
    lacking = []
    if math.isnan(length):
        lacking.append(f"the length of {lead.name}")
    lacking += [
        f"the expansion of {material.name}"
        for material in (new, frame.material)
        if material.expansion_1e6_k is None
    ]
    if lacking:
        words = f"How far it slides on {frame.part.name} is not known."
        remedy = record_words(lacking)
        return Check(EXPANSION, made.after.name, Grade.NONE, words, (), remedy)
    return _judged(made, new, frame, length, proposed.wording)


def _length(part: Part) -> float:
    """Give the longest side of a part, mm; NaN where not known."""
    if part.length_mm is not None:
        return part.length_mm
    return sides_of(part).length_mm


def _frame(made: PartChange, proposed: Proposed) -> Frame | None:
    """Give the metal part that it is held on: the one of most screws, or outside."""
    own = folded(made.after.name)
    facts = sorted(proposed.joints_at(own), key=_most_first)
    for name, thread in (*_held_by(facts, own), (folded(made.after.inside), "")):
        part, material = proposed.parts_by_name.get(name), proposed.material_of(name)
        if part is not None and material is not None and is_metal(material):
            return Frame(part, material, thread)
    return None


def _most_first(facts: JointFacts) -> tuple[bool, int]:
    return not facts.read.thread, -facts.joint.count


def _held_by(facts: Iterable[JointFacts], own: str) -> Iterator[tuple[str, str]]:
    for one in facts:
        ends = {folded(one.joint.joins), folded(one.joint.to)} - {own}
        for end in ends:
            yield end, one.read.thread


def _judged(
    made: PartChange,
    new: Material,
    frame: Frame,
    length_mm: float,
    wording: Wording,
) -> Check:
    strain = _strain(new, frame.material)
    travel = abs(float(travel_mm(length_mm, strain)))
    today = math.nan
    if made.old is not None and made.old.expansion_1e6_k is not None:
        today = abs(float(travel_mm(length_mm, _strain(made.old, frame.material))))
    thread = frame.thread if frame.thread in CLEARANCE_HOLES_MM else USUAL_THREAD
    play = CLEARANCE_HOLES_MM[thread] - float(thread[1:].partition("x")[0])
    values = design_values(new)
    stress = abs(
        float(
            panel_stress_mpa(
                strain,
                modulus_gpa=values.modulus_gpa,
                poisson_ratio=values.poisson_ratio,
            )
        )
    )
    length = wording.number(length_mm / 1000.0, decimals=2)
    rise = amount(RISE_K, "K", wording)
    was = "" if math.isnan(today) else f", today {_mm(today, wording)}"
    has = "have" if frame.thread == thread else "would have"
    words = (
        f"Over {length} m and {rise} it slides {_mm(travel, wording)} on "
        f"{frame.part.name} ({frame.material.name}) from end to end{was}; {thread} in "
        f"medium holes {has} {_mm(play, wording)} of play. Held fast it would bear "
        f"{amount(stress, 'MPa', wording)}."
    )
    grade, remedy = Grade.GOOD, ""
    if stress > values.strength_mpa:
        grade = Grade.FAIL
        remedy = "Slotted holes and one fixed point, or a material nearer the frame's."
    elif travel > play and not travel <= today:
        grade = Grade.LOOK
        remedy = "Slotted holes but at one fixed point."
        if is_polymer(new):
            remedy += " Across its fibres it slides more."
    figures = (
        Input("length", length_mm, "mm", "parts"),
        Input("rise", RISE_K, "K", PRACTICE),
        Input("a of the part", _expansion(new), "1e-6/K", material_source(new)),
        Input(
            "a of the frame",
            _expansion(frame.material),
            "1e-6/K",
            material_source(frame.material),
        ),
        Input("travel", travel, "mm", "|a_p - a_f| dT L"),
        Input("travel today", today, "mm", "|a_p - a_f| dT L"),
        Input(f"play of {thread}", play, "mm", "medium hole less thread, ISO 273"),
        Input("stress if held", stress, "MPa", "E strain / (1 - nu)"),
        Input("design strength", values.strength_mpa, "MPa", material_source(new)),
    )
    return Check(EXPANSION, made.after.name, grade, words, figures, remedy)


def _expansion(material: Material) -> float:
    value = material.expansion_1e6_k
    return math.nan if value is None else value


def _strain(material: Material, frame: Material) -> float:
    strain = mismatch_strain(
        _expansion(material), _expansion(frame), panel_rise_k=RISE_K
    )
    return float(strain)


def _mm(value: float, wording: Wording) -> str:
    if value < _SEEN_MM:
        return f"less than {millimetres(_SEEN_MM, wording)}"
    return millimetres(value, wording)
