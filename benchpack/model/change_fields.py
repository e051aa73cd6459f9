"""The columns of a change."""

from __future__ import annotations

from benchpack.model.change_words import ChangeKind, ProgrammeKind
from benchpack.model.fields import Field, Kind
from benchpack.model.range_columns import range_fields
from benchpack.model.words import Subsystem

_MONEY = 1e6
_ONE_TIME_MONEY = 1e9

CHANGE_FIELDS: tuple[Field, ...] = (
    Field("study", "study", required=True, help="The study it belongs to."),
    Field(
        "name",
        "change",
        required=True,
        synonyms=("name", "change name", "idea"),
        help="Name of the change, unique in its study.",
    ),
    Field(
        "kind",
        "kind",
        Kind.CHOICE,
        choices=tuple(ChangeKind),
        help="What the change does.",
    ),
    Field(
        "is_on",
        "on",
        Kind.FLAG,
        synonyms=("switched on", "active"),
        help="False where the change is switched off and counts for nothing.",
    ),
    Field("parts", "parts", Kind.NAMES, help="Parts of the subject it acts on."),
    Field("joints", "joints", Kind.NAMES, help="Joints it takes away or swaps."),
    Field(
        "into",
        "into",
        help="Name of the part or joint that comes, or of the neighbour moulded into.",
    ),
    Field(
        "subsystem",
        "subsystem",
        Kind.CHOICE,
        choices=(Subsystem.OTHER, *(s for s in Subsystem if s != Subsystem.OTHER)),
        synonyms=("group", "system"),
        help="Where in the pack an added part belongs.",
    ),
    Field("material", "material", help="Name of the new material in the library."),
    Field("process", "process", help="How the new part is made."),
    Field("governs", "governs", Kind.NAMES, help="What sizes it; empty: as recorded."),
    Field(
        "wall_mm",
        "wall",
        Kind.NUMBER,
        "length",
        "mm",
        positive=True,
        ceiling=10_000,
        plausible=(0.01, 300),
        help="Present wall, where the part has none recorded.",
        decimals=2,
    ),
    Field(
        "stiffness_shape",
        "stiffness shape",
        Kind.NUMBER,
        "ratio",
        positive=True,
        ceiling=1000,
        help="How much stiffer ribs and shape make it than the same mass laid flat.",
        decimals=2,
    ),
    Field(
        "strength_shape",
        "strength shape",
        Kind.NUMBER,
        "ratio",
        positive=True,
        ceiling=1000,
        help="How much stronger ribs and shape make it than the same mass laid flat.",
        decimals=2,
    ),
    Field(
        "rib_allowance",
        "rib allowance",
        Kind.NUMBER,
        "ratio",
        ceiling=10,
        help="Mass of ribs and bosses over the mass of the plain wall.",
        decimals=2,
    ),
    Field(
        "uses_data_sheet",
        "data-sheet values",
        Kind.FLAG,
        help="True to size with data-sheet values, without design knock-downs.",
    ),
    Field(
        "count",
        "count",
        Kind.COUNT,
        "count",
        positive=True,
        ceiling=1_000_000,
        synonyms=("quantity", "qty", "number", "n"),
        help="Pieces of the new joint, or of the added part.",
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
        help="Length of the new line joint.",
        decimals=0,
    ),
    Field("family", "family", help="What sort of joint comes."),
    Field("designation", "designation", help="Standard and size of the new joint."),
    Field("tightening", "tightening", help="How the new joint is tightened."),
    *range_fields(
        "mass_kg",
        "mass",
        help_text="Mass per pack of what it acts on, after the change",
        unit="kg",
        quantity="mass",
        ceiling=100_000,
        decimals=3,
    ),
    *range_fields(
        "part_cost",
        "part cost",
        help_text="Money per pack for parts, after less before, study's currency",
        floor=-_MONEY,
        ceiling=_MONEY,
    ),
    *range_fields(
        "joining_cost",
        "joining cost",
        help_text="Money per pack for joining, after less before, study's currency",
        floor=-_MONEY,
        ceiling=_MONEY,
    ),
    *range_fields(
        "seconds",
        "time",
        help_text="Seconds on the line per pack, after less before",
        unit="s",
        quantity="time",
        floor=-_MONEY,
        ceiling=_MONEY,
        decimals=1,
    ),
    *range_fields(
        "tooling",
        "tooling",
        help_text="One-time money for tools, study's currency",
        ceiling=_ONE_TIME_MONEY,
        decimals=0,
    ),
    *range_fields(
        "validation_cost",
        "validation cost",
        help_text="One-time money for validation, study's currency",
        ceiling=_ONE_TIME_MONEY,
        decimals=0,
    ),
    *range_fields(
        "lead_weeks",
        "lead time",
        help_text="Weeks until it can be on the line",
        unit="weeks",
        ceiling=1000,
        decimals=0,
    ),
    Field(
        "release_chance",
        "release chance",
        Kind.NUMBER,
        "ratio",
        ceiling=1,
        help="Chance that it passes validation, 0 to 1.",
        decimals=2,
    ),
    Field(
        "programme",
        "programme",
        Kind.CHOICE,
        choices=tuple(ProgrammeKind),
        help="The earliest kind of programme it fits.",
    ),
    Field("requires", "requires", Kind.NAMES, help="Changes it cannot do without."),
    Field("excludes", "excludes", Kind.NAMES, help="Changes it cannot go with."),
    Field(
        "waived",
        "waived",
        Kind.REASONS,
        help="Add-backs that were taken out of the sum, each with the reason.",
    ),
    Field("rationale", "rationale", help="Why it works."),
    Field("note", "note", synonyms=("notes", "remark", "comment"), help="Free text."),
)
"""The columns of a change in their order in files."""

RANGES: tuple[str, ...] = tuple(
    dict.fromkeys(field.attribute for field in CHANGE_FIELDS if field.attribute)
)
"""The attributes of a change that hold a range."""
