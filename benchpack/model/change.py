"""The change record: one step of a proposal."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from benchpack.errors import DataError, Problem, Severity
from benchpack.model.change_fields import CHANGE_FIELDS, RANGES
from benchpack.model.change_words import ChangeKind, ProgrammeKind
from benchpack.model.name_lists import Reasons
from benchpack.model.part import record_problems
from benchpack.model.ranges import Range
from benchpack.model.words import GOVERNS, Subsystem

__all__ = ["CHANGE_FIELDS", "RANGES", "Change", "ChangeKind", "ProgrammeKind"]


@dataclass(frozen=True, slots=True)
class Change:
    """One design change of a study's subject.

    Money is in the study's currency. None and empty text mean "not said"; what a kind
    of change cannot do without is asked by `change_needs.lacking`.

    Parameters
    ----------
    study : str
        Name of the study it belongs to.
    name : str
        Name of the change, unique in its study.
    kind : ChangeKind
        What it does.
    is_on : bool
        False where it is switched off.
    parts, joints : tuple of str
        Parts of the subject it acts on, joints it takes away or swaps.
    into : str
        Integrate, add: name of the part that comes. Mould in: the neighbour. Swap
        joints: name of the joint that comes.
    subsystem : Subsystem
        Where an added part belongs.
    material, process : str
        The new material and how the part is made.
    governs : tuple of str
        What sizes it; empty for what is recorded of the parts.
    wall_mm : float or None
        Present wall where the part has none recorded.
    stiffness_shape, strength_shape : float
        How much stiffer and stronger ribs and shape make it than flat, above 0.
    rib_allowance : float
        Mass of ribs and bosses as a share of the plain wall's.
    uses_data_sheet : bool
        True to size it without design knock-downs.
    count : int or None
        Pieces of the joint or the part that comes.
    length_mm : float or None
        Length of a line joint that comes.
    family, designation, tightening : str
        The joint that comes.
    mass_kg : Range or None
        Mass per pack, after the change, of what it acts on; of an added part its mass.
    part_cost, joining_cost : Range or None
        Money per pack, after less before; None for what the cost model says.
    seconds : Range or None
        Seconds on the line per pack, after less before.
    tooling, validation_cost : Range or None
        One-time money.
    lead_weeks : Range or None
        Weeks until it can be on the line.
    release_chance : float
        Chance that it passes validation, 0 to 1.
    programme : ProgrammeKind
        The earliest kind of programme it fits.
    requires, excludes : tuple of str
        Names of other changes of the study.
    waived : tuple of (str, str)
        Add-backs taken out of the sum, each with its reason.
    rationale, note : str
        Why it works; free text.

    Raises
    ------
    DataError
        With one problem per attribute that cannot stand.
    """

    study: str
    name: str
    kind: ChangeKind
    is_on: bool = True
    parts: tuple[str, ...] = ()
    joints: tuple[str, ...] = ()
    into: str = ""
    subsystem: Subsystem = Subsystem.OTHER
    material: str = ""
    process: str = ""
    governs: tuple[str, ...] = ()
    wall_mm: float | None = None
    stiffness_shape: float = 1.0
    strength_shape: float = 1.0
    rib_allowance: float = 0.0
    uses_data_sheet: bool = False
    count: int | None = None
    length_mm: float | None = None
    family: str = ""
    designation: str = ""
    tightening: str = ""
    mass_kg: Range | None = None
    part_cost: Range | None = None
    joining_cost: Range | None = None
    seconds: Range | None = None
    tooling: Range | None = None
    validation_cost: Range | None = None
    lead_weeks: Range | None = None
    release_chance: float = 1.0
    programme: ProgrammeKind = ProgrammeKind.UNSTATED
    requires: tuple[str, ...] = ()
    excludes: tuple[str, ...] = ()
    waived: Reasons = ()
    rationale: str = ""
    note: str = ""

    def __post_init__(self) -> None:
        plain = record_problems(self, CHANGE_FIELDS)
        refused = [p for p in plain if p.severity is Severity.ERROR]
        refused += [p.at(record=self.name) for p in _problems(self)]
        if refused:
            raise DataError(*refused)

    def waiver(self, add_back: str) -> str:
        """Give why an add-back was taken out of the sum, empty where it was not."""
        return dict(self.waived).get(add_back, "")


def _problems(change: Change) -> list[Problem]:
    found: list[Problem] = []
    for column in ("parts", "joints", "governs", "requires", "excludes"):
        found += _list_problems(column, getattr(change, column))
    found += [
        Problem(
            f"Governs {word!r} is not known.",
            f"Use one of: {', '.join(filter(None, GOVERNS))}.",
            column="governs",
            value=word,
        )
        for word in change.governs
        if word not in GOVERNS
    ]
    for column in ("requires", "excludes"):
        if change.name in getattr(change, column):
            what = f"{change.name} {column} itself."
            found.append(Problem(what, "Take the name out.", column=column))
    for name in sorted({*change.requires} & {*change.excludes}):
        what = f"{change.name} requires {name} and excludes it."
        found.append(Problem(what, "Keep one of the two.", column="excludes"))
    return found + _waiver_problems(change)


def _list_problems(column: str, names: tuple[str, ...]) -> list[Problem]:
    found = []
    if any(not name.strip() for name in names):
        what = f"{column.capitalize()} holds an empty name."
        found.append(Problem(what, "Take it out.", column=column))
    for name, times in Counter(names).items():
        if times > 1:
            what = f"{column.capitalize()} names {name!r} twice."
            found.append(Problem(what, "Name it once.", column=column, value=name))
    return found


def _waiver_problems(change: Change) -> list[Problem]:
    found = _list_problems("waived", tuple(name for name, _ in change.waived))
    for name, reason in change.waived:
        if not reason.strip():
            what = f"{name} is taken out of the sum without a reason."
            remedy = "Say why it is not needed, or leave it in."
            found.append(Problem(what, remedy, column="waived", value=name))
    return found
