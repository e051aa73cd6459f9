"""The part record."""

from __future__ import annotations

from dataclasses import dataclass

from benchpack.errors import DataError, Problem, Severity
from benchpack.model.fields import Field, Kind
from benchpack.model.words import GOVERNS, KnownBy, Subsystem

PART_FIELDS: tuple[Field, ...] = (
    Field(
        "pack",
        "pack",
        required=True,
        synonyms=("pack name", "battery", "vehicle", "model"),
        help="The pack it belongs to.",
    ),
    Field(
        "name",
        "part",
        required=True,
        synonyms=("name", "part name", "component"),
        help="Name of the part, unique in its pack.",
    ),
    Field(
        "inside",
        "inside",
        synonyms=("parent", "assembly", "part of"),
        help="The part it sits in; empty at the top.",
    ),
    Field(
        "subsystem",
        "subsystem",
        Kind.CHOICE,
        choices=tuple(Subsystem),
        synonyms=("group", "system"),
        help="Where in the pack it belongs.",
    ),
    Field("material", "material", help="Name of the material in the library."),
    Field("process", "process", help="How it is made, in words."),
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
        "mass_each_kg",
        "mass each",
        Kind.NUMBER,
        "mass",
        "kg",
        ceiling=100_000,
        plausible=(0, 1500),
        synonyms=("mass", "unit mass", "weight", "weight each"),
        help="Mass of one piece.",
        decimals=3,
    ),
    Field(
        "mass_tolerance_kg",
        "mass +-",
        Kind.NUMBER,
        "mass",
        "kg",
        ceiling=100_000,
        synonyms=("mass tolerance", "mass ±"),
        help="Half width of the range the mass of one piece surely lies in.",
        decimals=3,
    ),
    Field(
        "known_by",
        "known by",
        Kind.CHOICE,
        choices=tuple(KnownBy),
        synonyms=("mass known by", "how known"),
        help="How the mass is known.",
    ),
    Field(
        "thickness_mm",
        "thickness",
        Kind.NUMBER,
        "length",
        "mm",
        positive=True,
        ceiling=10_000,
        plausible=(0.01, 300),
        synonyms=("wall", "gauge"),
        help="Wall thickness.",
    ),
    Field(
        "area_m2",
        "area",
        Kind.NUMBER,
        "area",
        "m2",
        positive=True,
        ceiling=1000,
        plausible=(1e-5, 10),
        help="Area of one piece.",
        decimals=3,
    ),
    Field(
        "length_mm",
        "length",
        Kind.NUMBER,
        "length",
        "mm",
        positive=True,
        ceiling=1_000_000,
        plausible=(0.1, 10_000),
        help="Length of one piece.",
        decimals=0,
    ),
    Field(
        "governs",
        "governs",
        Kind.CHOICE,
        choices=GOVERNS,
        help="What sizes it when its material changes.",
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
"""The columns of a part in their order in files and on screen."""


@dataclass(frozen=True, slots=True)
class Part:
    """One part of one pack; None and empty text mean "not known".

    Raises
    ------
    DataError
        With one problem per attribute that cannot stand.
    """

    pack: str
    name: str
    inside: str = ""
    subsystem: Subsystem = Subsystem.OTHER
    material: str = ""
    process: str = ""
    count: int = 1
    mass_each_kg: float | None = None
    mass_tolerance_kg: float | None = None
    known_by: KnownBy = KnownBy.UNSTATED
    thickness_mm: float | None = None
    area_m2: float | None = None
    length_mm: float | None = None
    governs: str = ""
    carry_over: bool = False
    reason: str = ""
    note: str = ""

    def __post_init__(self) -> None:
        problems = record_problems(self, PART_FIELDS)
        refused = [p for p in problems if p.severity is Severity.ERROR]
        if refused:
            raise DataError(*refused)

    @property
    def mass_kg(self) -> float | None:
        """Mass of all pieces together in kg, None where it is not known."""
        return None if self.mass_each_kg is None else self.count * self.mass_each_kg


def record_problems(record: object, columns: tuple[Field, ...]) -> list[Problem]:
    """Give what is wrong and what is unusual in the plain columns of a record.

    Parameters
    ----------
    record : object
        A record whose attributes are named by `columns`.
    columns : tuple of Field
        The record's columns.
    """
    found: list[Problem] = []
    name = str(getattr(record, "name", ""))
    for column in columns:
        kind, is_required = column.kind, column.required
        # Most columns of most records are free text or empty.
        if kind is Kind.TEXT and not is_required:
            continue
        value = column.value_of(record)
        if value is None and kind is not Kind.CHOICE:
            continue
        if is_required and isinstance(value, str) and not value.strip():
            found.append(
                Problem(f"{column.title} is empty.", "Fill it in.", column=column.title)
            )
        elif column.is_numeric and not column.says_again(record):
            problem = column.refusal(value) or column.doubt(value)
            if problem:
                found.append(problem)
        elif kind is Kind.CHOICE and value not in column.choices:
            found.append(
                Problem(
                    f"{column.title} {value!r} is not known.",
                    f"Use one of: {', '.join(filter(None, column.choices))}.",
                    column=column.title,
                    value=str(value),
                )
            )
    return [problem.at(record=name) for problem in found]
