"""The material record and the source record."""

from __future__ import annotations

from dataclasses import dataclass

from benchpack.errors import DataError, Severity
from benchpack.model.fields import Field, Kind
from benchpack.model.part import record_problems

MARKS = ("", "confirmed", "derived", "from memory")
"""How far a shipped figure was checked; empty for the person's own."""

MATERIAL_FIELDS: tuple[Field, ...] = (
    Field("name", "material", required=True, help="Name of the material."),
    Field("kind", "kind", help="Metal, thermoplastic, thermoset and so on."),
    Field(
        "density_kg_m3",
        "density",
        Kind.NUMBER,
        "density",
        "kg/m3",
        positive=True,
        ceiling=30_000,
        plausible=(20, 9500),
        help="Density.",
        decimals=0,
    ),
    Field(
        "modulus_gpa",
        "modulus",
        Kind.NUMBER,
        "modulus",
        "GPa",
        positive=True,
        ceiling=1500,
        help="Young's modulus at 23 degC, data sheet.",
    ),
    Field(
        "strength_mpa",
        "strength",
        Kind.NUMBER,
        "stress",
        "MPa",
        positive=True,
        ceiling=10_000,
        help="Yield strength of a metal, break strength of a polymer.",
        decimals=0,
    ),
    Field(
        "poisson_ratio",
        "Poisson ratio",
        Kind.NUMBER,
        "ratio",
        ceiling=0.5,
        help="Poisson's ratio.",
        decimals=2,
    ),
    Field(
        "conductivity_w_mk",
        "conductivity",
        Kind.NUMBER,
        "conductivity",
        "W/(m K)",
        positive=True,
        ceiling=3000,
        help="Thermal conductivity.",
        decimals=2,
    ),
    Field(
        "expansion_1e6_k",
        "expansion",
        Kind.NUMBER,
        "expansion",
        "1e-6/K",
        ceiling=1000,
        help="Coefficient of linear thermal expansion.",
    ),
    Field(
        "service_temperature_degc",
        "service temperature",
        Kind.NUMBER,
        "temperature",
        "degC",
        ceiling=3000,
        help="Highest temperature in long service.",
        decimals=0,
    ),
    Field("flammability", "flammability", help="Flammability class."),
    Field(
        "price_per_kg",
        "price",
        Kind.NUMBER,
        "money per mass",
        "CUR/kg",
        ceiling=1e6,
        help="Price per kilogram.",
        decimals=2,
    ),
    Field(
        "stiffness_knock_down",
        "stiffness knock-down",
        Kind.NUMBER,
        "ratio",
        positive=True,
        ceiling=1,
        help="Design modulus over data-sheet modulus.",
        decimals=2,
    ),
    Field(
        "strength_knock_down",
        "strength knock-down",
        Kind.NUMBER,
        "ratio",
        positive=True,
        ceiling=1,
        help="Design stress over data-sheet strength.",
        decimals=2,
    ),
    Field(
        "minimum_wall_mm",
        "minimum wall",
        Kind.NUMBER,
        "length",
        "mm",
        positive=True,
        ceiling=1000,
        help="Least wall that can be made over a large part.",
    ),
    Field("source", "source", help="Where the figures come from."),
    Field(
        "mark",
        "mark",
        Kind.CHOICE,
        choices=MARKS,
        help="Whether the figures were confirmed, derived or recalled.",
    ),
)
"""The columns of a material in their order in files and on screen."""

SOURCE_FIELDS: tuple[Field, ...] = (
    Field("name", "source", required=True, help="Short name of the source."),
    Field("kind", "kind", help="Own weighing, declaration, literature and so on."),
    Field("date", "date", help="Date of the source, year-month-day."),
    Field("reference", "reference", help="Where it can be found."),
    Field("note", "note", help="Free text."),
)
"""The columns of a source in their order in files and on screen."""


@dataclass(frozen=True, slots=True)
class Material:
    """One material with data-sheet values; None and empty text mean "not known".

    Raises
    ------
    DataError
        With one problem per attribute that cannot stand.
    """

    name: str
    kind: str = ""
    density_kg_m3: float | None = None
    modulus_gpa: float | None = None
    strength_mpa: float | None = None
    poisson_ratio: float | None = None
    conductivity_w_mk: float | None = None
    expansion_1e6_k: float | None = None
    service_temperature_degc: float | None = None
    flammability: str = ""
    price_per_kg: float | None = None
    stiffness_knock_down: float | None = None
    strength_knock_down: float | None = None
    minimum_wall_mm: float | None = None
    source: str = ""
    mark: str = ""

    def __post_init__(self) -> None:
        problems = record_problems(self, MATERIAL_FIELDS)
        refused = [p for p in problems if p.severity is Severity.ERROR]
        if refused:
            raise DataError(*refused)


@dataclass(frozen=True, slots=True)
class Source:
    """Where figures come from.

    Raises
    ------
    DataError
        When it has no name.
    """

    name: str
    kind: str = ""
    date: str = ""
    reference: str = ""
    note: str = ""

    def __post_init__(self) -> None:
        refused = record_problems(self, SOURCE_FIELDS)
        if refused:
            raise DataError(*refused)
