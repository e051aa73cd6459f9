"""The pack record."""

from __future__ import annotations

import math
from dataclasses import dataclass

from benchpack.errors import DataError, Problem, Severity
from benchpack.model.boundary import UNKNOWN_BOUNDARY, Boundary
from benchpack.model.fields import Field, Kind
from benchpack.model.words import EnergyBasis, KnownBy

PACK_FIELDS: tuple[Field, ...] = (
    Field(
        "name",
        "pack",
        required=True,
        synonyms=("name", "pack name", "model", "id", "battery", "vehicle"),
        help="Name of the pack, unique in the library.",
    ),
    Field(
        "energy_kwh",
        "energy",
        Kind.NUMBER,
        "energy",
        "kWh",
        required=True,
        positive=True,
        ceiling=20_000,
        plausible=(1, 1000),
        synonyms=(
            "pack energy",
            "capacity",
            "battery energy",
            "energy content",
            "e",
            "usable energy",
            "gross energy",
        ),
        help="Electrical energy of the pack on the stated basis.",
    ),
    Field(
        "energy_basis",
        "energy basis",
        Kind.CHOICE,
        choices=tuple(EnergyBasis),
        synonyms=("basis",),
        help="Whether the energy is the gross or the usable one.",
    ),
    Field(
        "energy_tolerance_kwh",
        "energy +-",
        Kind.NUMBER,
        "energy",
        "kWh",
        ceiling=20_000,
        synonyms=("energy tolerance", "energy ±"),
        help="Half width of the range the energy surely lies in.",
        decimals=2,
    ),
    Field(
        "mass_kg",
        "mass",
        Kind.NUMBER,
        "mass",
        "kg",
        required=True,
        positive=True,
        ceiling=100_000,
        plausible=(10, 5000),
        synonyms=("pack mass", "weight", "pack weight", "m", "total mass"),
        help="Mass of the pack as it was on the scale, see boundary.",
    ),
    Field(
        "mass_known_by",
        "mass known by",
        Kind.CHOICE,
        choices=tuple(KnownBy),
        synonyms=("known by", "mass source", "how known"),
        help="How the mass is known; sets its uncertainty where none is stated.",
    ),
    Field(
        "mass_tolerance_kg",
        "mass +-",
        Kind.NUMBER,
        "mass",
        "kg",
        ceiling=100_000,
        synonyms=("mass tolerance", "mass ±"),
        help="Half width of the range the mass surely lies in.",
        decimals=2,
    ),
    Field(
        "cells_mass_kg",
        "cells mass",
        Kind.NUMBER,
        "mass",
        "kg",
        positive=True,
        ceiling=100_000,
        synonyms=("cell mass", "mass of cells", "cells weight"),
        help="Mass of all cells together.",
    ),
    Field(
        "cells_volume_l",
        "cells volume",
        Kind.NUMBER,
        "volume",
        "L",
        positive=True,
        ceiling=100_000,
        synonyms=("cell volume",),
        help="Volume of all cells together.",
    ),
    Field(
        "volume_l",
        "volume",
        Kind.NUMBER,
        "volume",
        "L",
        positive=True,
        ceiling=100_000,
        synonyms=("pack volume",),
        help="Volume of the pack's envelope.",
    ),
    Field(
        "voltage_v",
        "voltage",
        Kind.NUMBER,
        "voltage",
        "V",
        positive=True,
        ceiling=5000,
        plausible=(12, 1500),
        synonyms=("nominal voltage", "pack voltage"),
        help="Nominal voltage of the pack.",
        decimals=0,
    ),
    Field(
        "chemistry",
        "chemistry",
        synonyms=("cell chemistry",),
        help="Cell chemistry, NMC or LFP for instance.",
    ),
    Field(
        "cell_format",
        "cell format",
        synonyms=("format",),
        help="Prismatic, pouch or cylindrical.",
    ),
    Field(
        "cell_count",
        "cell count",
        Kind.COUNT,
        "count",
        positive=True,
        ceiling=1_000_000,
        synonyms=("cells", "number of cells"),
        help="Number of cells in the pack.",
        decimals=0,
    ),
    Field(
        "enclosure_material",
        "enclosure material",
        synonyms=("enclosure", "housing material", "tray material"),
        help="Material of tray and lid in words.",
    ),
    Field("cooling", "cooling", help="How the pack is cooled, in words."),
    Field(
        "boundary",
        "boundary",
        Kind.BOUNDARY,
        help="What was on the scale: item=in, out or unknown, with its mass in kg.",
    ),
    Field(
        "state_of_health_pct",
        "state of health",
        Kind.NUMBER,
        "share",
        "%",
        positive=True,
        ceiling=110,
        plausible=(60, 102),
        synonyms=("soh", "health"),
        help="Energy left when measured, as a share of the new pack's.",
        decimals=0,
    ),
    Field(
        "year",
        "year",
        Kind.COUNT,
        "count",
        positive=True,
        ceiling=2200,
        plausible=(1990, 2060),
        synonyms=("model year",),
        help="First year of production.",
        decimals=0,
    ),
    Field(
        "yearly_volume",
        "yearly volume",
        Kind.COUNT,
        "count",
        ceiling=1e9,
        synonyms=("volume per year", "packs per year", "annual volume"),
        help="Packs made per year.",
        decimals=0,
    ),
    Field("source", "source", help="Name of the source of the figures."),
    Field("note", "note", synonyms=("notes", "remark", "comment"), help="Free text."),
)
"""The columns of a pack in their order in files and on screen."""

USUAL_DENSITY = (40.0, 350.0)
"""Usual gravimetric energy densities, Wh/kg (common practice, no source)."""

PACK_FIELD = {field.name: field for field in PACK_FIELDS}
"""The pack's columns by attribute name."""


@dataclass(frozen=True, slots=True)
class Pack:
    """One pack as recorded; None and empty text mean "not known".

    Units are in the names: kWh, kg, L, V. Meaning and limits of each attribute
    stand in `PACK_FIELDS`.

    Raises
    ------
    DataError
        With one problem per attribute that cannot stand.
    """

    name: str
    energy_kwh: float
    mass_kg: float
    energy_basis: EnergyBasis = EnergyBasis.UNKNOWN
    energy_tolerance_kwh: float | None = None
    mass_known_by: KnownBy = KnownBy.UNSTATED
    mass_tolerance_kg: float | None = None
    cells_mass_kg: float | None = None
    cells_volume_l: float | None = None
    volume_l: float | None = None
    voltage_v: float | None = None
    chemistry: str = ""
    cell_format: str = ""
    cell_count: int | None = None
    enclosure_material: str = ""
    cooling: str = ""
    boundary: Boundary = UNKNOWN_BOUNDARY
    state_of_health_pct: float | None = None
    year: int | None = None
    yearly_volume: int | None = None
    source: str = ""
    note: str = ""

    def __post_init__(self) -> None:
        problems = [p for p in pack_problems(self) if p.severity is Severity.ERROR]
        if problems:
            raise DataError(*problems)


def pack_problems(pack: Pack) -> tuple[Problem, ...]:
    """Give what is wrong (errors) and what is unusual (warnings) in one pack."""
    found: list[Problem | None] = []
    if not pack.name.strip():
        found.append(
            Problem(
                "The pack has no name.", "Give it one.", column=PACK_FIELDS[0].title
            )
        )
    for column in PACK_FIELDS:
        if column.is_numeric:
            value = getattr(pack, column.name)
            if value is not None:
                found.append(column.refusal(value) or column.doubt(value))
    found.extend(_cross_checks(pack))
    return tuple(problem.at(record=pack.name) for problem in found if problem)


def _cross_checks(pack: Pack) -> list[Problem | None]:
    pairs = (
        (pack.cells_mass_kg, pack.mass_kg, "cells_mass_kg", "mass"),
        (pack.cells_volume_l, pack.volume_l, "cells_volume_l", "volume"),
    )
    found: list[Problem | None] = []
    for inner, outer, name, title in pairs:
        if inner is not None and outer is not None and inner > outer:
            column = PACK_FIELD[name]
            found.append(
                Problem(
                    f"{column.title} {inner:g} {column.unit} is more than the "
                    f"pack's {title} {outer:g} {column.unit}.",
                    "One of the two figures is wrong.",
                    column=column.header(),
                    value=f"{inner:g}",
                )
            )
    density = 1000 * pack.energy_kwh / pack.mass_kg if pack.mass_kg > 0 else math.nan
    low, high = USUAL_DENSITY
    if density > 0 and not low <= density <= high:
        found.append(
            Problem(
                f"The pack comes to {density:.0f} Wh/kg, "
                f"outside the usual {low:.0f} to {high:.0f}.",
                "Check energy and mass and their units.",
                column=PACK_FIELD["mass_kg"].header(),
                value=f"{pack.mass_kg:g}",
                severity=Severity.WARNING,
            )
        )
    return found
