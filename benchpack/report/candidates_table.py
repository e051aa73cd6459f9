"""Candidate materials for one part as a table."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchpack.model.study import Study
from benchpack.report.candidates_text import checks_text
from benchpack.report.display import number_style
from benchpack.results.candidate_record import Candidate, Candidates
from benchpack.results.closure import Grade
from benchpack.units.formatting import UNKNOWN, format_mass, format_number

_SMALL_KG = 2.0


@dataclass(frozen=True, slots=True)
class CandidateColumn:
    """One column of the table of candidates.

    Parameters
    ----------
    key : str
        What it is, in whatever unit.
    head : str
        Its head, with the unit in brackets.
    help_text : str
        What stands in it.
    is_number : bool
        True where it is set to the right.
    """

    key: str
    head: str
    help_text: str
    is_number: bool = True


def candidate_columns(
    compared: Candidates, study: Study
) -> tuple[CandidateColumn, ...]:
    """Give the columns of the table.

    Parameters
    ----------
    compared : Candidates
        The comparison; without a heat path there is no column for it.
    study : Study
        Mass unit and currency.
    """
    unit, money = study.mass_unit, compared.currency
    under = next((r.deflection_kind for r in compared.rows if r.deflection_kind), "")
    columns = [
        CandidateColumn("name", "material", "Name of the material.", is_number=False),
        CandidateColumn(
            "mass", f"mass [{unit}]", "At equal function, by design values."
        ),
        CandidateColumn("saved", f"less today's [{unit}]", "Below zero it saves."),
        CandidateColumn(
            "sheet",
            f"data sheet [{unit}]",
            "Mass without knock-downs for heat and long load.",
        ),
        CandidateColumn("wall", "wall [mm]", "Wall of that mass."),
        CandidateColumn("least", "least wall [mm]", "From which on it can be made."),
        CandidateColumn(
            "cost", f"material [{money}]", "Cost of the material in the part."
        ),
        CandidateColumn(
            "dearer", f"less today's [{money}]", "Below zero it is cheaper."
        ),
    ]
    if under:
        columns.append(
            CandidateColumn("deflection", "deflection [mm]", f"Deflection {under}.")
        )
    if _has_heat(compared):
        columns.append(
            CandidateColumn(
                "heat", "heat [K]", "Rise across the part at 2 kW/m², of its layer."
            )
        )
    columns.append(
        CandidateColumn(
            "checks",
            "checks",
            "Those that do not hold or want a look.",
            is_number=False,
        )
    )
    return tuple(columns)


_FIGURES = {
    "mass": "mass_kg",
    "saved": "mass_kg",
    "sheet": "sheet_mass_kg",
    "wall": "wall_mm",
    "least": "minimum_wall_mm",
    "cost": "cost",
    "dearer": "cost",
    "deflection": "deflection_mm",
    "heat": "heat_k",
}


def candidate_order(rows: Sequence[Candidate], key: str) -> NDArray[np.float64]:
    """Give what candidates are put in order by, NaN where it is not known.

    Parameters
    ----------
    rows : sequence of Candidate
        Candidates.
    key : str
        Key of a column: a figure of it, the place of a name in the alphabet, or for
        the checks how many fail, then how many want a look.
    """
    if key == "name":
        names = [row.name.casefold() for row in rows]
        places = {name: place for place, name in enumerate(sorted(names))}
        return np.array([places[name] for name in names], dtype=np.float64)
    if key == "checks":
        return np.array([_failing(row) for row in rows], dtype=np.float64)
    figures = [getattr(row, _FIGURES[key]) for row in rows]
    return np.array(figures, dtype=np.float64)


def _failing(row: Candidate) -> float:
    if not row.checks:
        return np.nan
    return 1000.0 * row.count(Grade.FAIL) + row.count(Grade.LOOK)


def candidate_cells(
    row: Candidate, compared: Candidates, study: Study
) -> tuple[str, ...]:
    """Give one row of the table, in the order of `candidate_columns`.

    Parameters
    ----------
    row : Candidate
        A candidate, or the part as it is.
    compared : Candidates
        The comparison.
    study : Study
        How numbers are shown.
    """
    style, today = number_style(study), compared.today
    decimals = 2 if today.mass_kg < _SMALL_KG else 1

    def mass(value_kg: float, *, signed: bool = False) -> str:
        return format_mass(
            value_kg, style=style, with_unit=False, decimals=decimals, signed=signed
        )

    def number(value: float, digits: int, *, signed: bool = False) -> str:
        return format_number(value, digits, style=style, signed=signed)

    name = f"{row.name or UNKNOWN} (today)" if row.is_today else row.name
    wall = number(row.wall_mm, 1)
    cells = [
        name,
        mass(row.mass_kg),
        UNKNOWN if row.is_today else mass(row.mass_kg - today.mass_kg, signed=True),
        mass(row.sheet_mass_kg),
        f"{wall} (least)" if row.wall_is_minimum else wall,
        number(row.minimum_wall_mm, 1),
        number(row.cost, 2),
        UNKNOWN if row.is_today else number(row.cost - today.cost, 2, signed=True),
    ]
    if any(one.deflection_kind for one in compared.rows):
        small = row.deflection_mm < 1
        cells.append(number(row.deflection_mm, 2 if small else 1))
    if _has_heat(compared):
        cells.append(number(row.heat_k, 2 if row.heat_k < 1 else 1))
    cells.append("" if row.is_today else checks_text(row))
    return tuple(cells)


def _has_heat(compared: Candidates) -> bool:
    return bool(np.isfinite(compared.of("heat_k")).any())
