"""The joint record: what holds the pack together."""

from __future__ import annotations

from dataclasses import dataclass

from benchpack.errors import DataError, Severity
from benchpack.model.fields import Field, Kind
from benchpack.model.part import record_problems
from benchpack.model.words import KnownBy, Subsystem

JOINT_FIELDS: tuple[Field, ...] = (
    Field(
        "pack",
        "pack",
        required=True,
        synonyms=("pack name", "battery", "vehicle", "model"),
        help="The pack it belongs to.",
    ),
    Field(
        "name",
        "joint",
        required=True,
        synonyms=("name", "joint name", "joint id"),
        help="Name of the joint, unique in its pack.",
    ),
    Field(
        "family",
        "family",
        synonyms=("kind", "type", "joint type"),
        help="What sort of joint it is: socket screw, sealant bead, clip.",
    ),
    Field(
        "designation",
        "designation",
        synonyms=("size", "standard"),
        help="Standard and size, ISO 4762 M6x20 for instance.",
    ),
    Field(
        "property_class",
        "property class",
        synonyms=("class", "grade"),
        help="Strength class, 8.8 for instance.",
    ),
    Field(
        "count",
        "count",
        Kind.COUNT,
        "count",
        positive=True,
        ceiling=1_000_000,
        synonyms=("quantity", "qty", "number", "n"),
        help="How many of it the pack holds.",
        decimals=0,
    ),
    Field(
        "length_mm",
        "length",
        Kind.NUMBER,
        "length",
        "mm",
        positive=True,
        ceiling=1_000_000,
        help="Length of one line joint.",
        decimals=0,
    ),
    Field(
        "mass_each_g",
        "mass each",
        Kind.NUMBER,
        "joint mass",
        "g",
        ceiling=100_000,
        plausible=(0, 5000),
        synonyms=("mass", "unit mass", "weight each"),
        help="Mass of one piece, or of one whole bead or seam.",
        decimals=2,
    ),
    Field(
        "known_by",
        "known by",
        Kind.CHOICE,
        choices=tuple(KnownBy),
        synonyms=("mass known by", "how known"),
        help="How the mass is known.",
    ),
    Field("role", "role", help="What it is there for: clamp, seal, locate."),
    Field("joins", "joins", help="The part on one side."),
    Field("to", "to", help="The part on the other side."),
    Field(
        "subsystem",
        "subsystem",
        Kind.CHOICE,
        choices=tuple(Subsystem),
        synonyms=("group", "system"),
        help="Where in the pack it belongs.",
    ),
    Field("tightening", "tightening", help="How it is tightened, in words."),
    Field(
        "time_each_s",
        "time each",
        Kind.NUMBER,
        "time",
        "s",
        ceiling=1e6,
        synonyms=("time", "cycle time"),
        help="Seconds to make one.",
    ),
    Field(
        "cost_each",
        "cost each",
        Kind.NUMBER,
        "money",
        "CUR",
        ceiling=1e6,
        synonyms=("cost", "price", "piece cost"),
        help="Money for one, without labour.",
        decimals=2,
    ),
    Field(
        "carry_over",
        "carry-over",
        Kind.FLAG,
        synonyms=("carry over", "carryover", "locked"),
        help="True where it has to stay as it is.",
    ),
    Field("reason", "reason", help="Why it has to stay."),
    Field("note", "note", synonyms=("notes", "remark", "comment"), help="Free text."),
)
"""The columns of a joint in their order in files and on screen."""


@dataclass(frozen=True, slots=True)
class Joint:
    """One kind of joint in one place of one pack, with its count.

    Raises
    ------
    DataError
        With one problem per attribute that cannot stand.
    """

    pack: str
    name: str
    family: str = ""
    designation: str = ""
    property_class: str = ""
    count: int = 1
    length_mm: float | None = None
    mass_each_g: float | None = None
    known_by: KnownBy = KnownBy.UNSTATED
    role: str = ""
    joins: str = ""
    to: str = ""
    subsystem: Subsystem = Subsystem.JOINTS
    tightening: str = ""
    time_each_s: float | None = None
    cost_each: float | None = None
    carry_over: bool = False
    reason: str = ""
    note: str = ""

    def __post_init__(self) -> None:
        problems = record_problems(self, JOINT_FIELDS)
        refused = [p for p in problems if p.severity is Severity.ERROR]
        if refused:
            raise DataError(*refused)

    @property
    def mass_kg(self) -> float | None:
        """Mass of all pieces together in kg, None where it is not known."""
        if self.mass_each_g is None:
            return None
        return self.count * self.mass_each_g / 1000
