"""The table of gaps: one row per reference, as printed and as written to CSV."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.densities import gravimetric_density_wh_per_kg
from benchpack.results.cautions import row_warnings
from benchpack.results.results import Results

Cell = str | float
"""A cell: text, or a number that is NaN where it is unknown."""


@dataclass(frozen=True, slots=True)
class GapColumn:
    """One column of the table of gaps.

    Parameters
    ----------
    name : str
        Column head with its unit in brackets.
    unit : str
        The unit, empty for text.
    description : str
        What stands in it.
    """

    name: str
    unit: str
    description: str

    @property
    def is_number(self) -> bool:
        """True where the column holds numbers."""
        return bool(self.unit)


_SHARE = "x share captured, per pack; that share is 1 unless warnings say otherwise."

_COLUMNS = (
    ("pack", "", "The subject."),
    ("energy", "kWh", "Energy of the subject."),
    ("energy basis", "", "Whether that energy is gross or usable."),
    (
        "mass",
        "kg",
        "Mass of the subject as compared, on the boundary of both, see warnings.",
    ),
    ("density", "Wh/kg", "1000 energy / mass of the subject."),
    ("reference", "", "The pack it is measured against."),
    ("reference energy", "kWh", "Energy of the reference."),
    ("reference mass", "kg", "Mass of the reference as compared, see mass."),
    ("reference density", "Wh/kg", "1000 energy / mass of the reference."),
    ("gap as weighed", "kg", "Mass less reference mass; positive: subject heavier."),
    ("energy share", "kg", "Part of the gap as weighed that the energy explains."),
    ("density share", "kg", "The rest: the gap at equal energy."),
    (
        "gap scaled",
        "kg",
        "Gap with the cells scaled by energy and the rest by a power of it.",
    ),
    (
        "gap to trend",
        "kg",
        "Gap to the line through the peers, from masses as weighed; one for all rows.",
    ),
    ("gap structure", "kg", "Gap of everything that is not cells, scaled."),
    (
        "u(gap)",
        "kg",
        "Standard uncertainty of that gap; energies without tolerance count as exact.",
    ),
    ("basis", "", "How the gap in the next column is counted."),
    ("gap", "kg", "The gap on that basis."),
    ("worth low", "CUR/kg", "Low worth per kilogram saved."),
    ("worth likely", "CUR/kg", "Likely worth per kilogram saved."),
    ("worth high", "CUR/kg", "High worth per kilogram saved."),
    ("value low", "CUR", f"Gap x low worth {_SHARE}"),
    ("value likely", "CUR", f"Gap x likely worth {_SHARE}"),
    ("value high", "CUR", f"Gap x high worth {_SHARE}"),
    ("warnings", "", "What has to be known before the row is used."),
)


def gap_columns(currency: str) -> tuple[GapColumn, ...]:
    """Give the columns of the table.

    Parameters
    ----------
    currency : str
        Currency code for the money columns.
    """
    columns = []
    for title, unit, description in _COLUMNS:
        named = unit.replace("CUR", currency)
        head = f"{title} [{named}]" if named else title
        columns.append(GapColumn(head, named, description))
    return tuple(columns)


def gap_rows(results: Results) -> Iterator[list[Cell]]:
    """Give the rows of the table, in the order of the comparison.

    Parameters
    ----------
    results : Results
        Results with a comparison.

    Yields
    ------
    list
        Cells in the order of `gap_columns`; full precision, NaN for unknown.
    """
    comparison, valuation = results.comparison, results.valuation
    if comparison is None or valuation is None:
        return
    subject = comparison.subject
    basis = str(comparison.basis)
    numbers: list[NDArray[np.float64]] = [
        comparison.subject_mass_kg,
        gravimetric_density_wh_per_kg(subject.energy_kwh, comparison.subject_mass_kg),
        comparison.reference_energy_kwh,
        comparison.reference_mass_kg,
        gravimetric_density_wh_per_kg(
            comparison.reference_energy_kwh, comparison.reference_mass_kg
        ),
        comparison.as_weighed_kg,
        comparison.energy_share_kg,
        comparison.density_share_kg,
        comparison.scaled_kg,
        comparison.to_trend_kg,
        comparison.structure_kg,
        comparison.gap_u_kg,
        comparison.gap_kg,
        valuation.low,
        valuation.likely,
        valuation.high,
    ]
    worths = list(results.study.worth_per_kg)
    columns = [column.tolist() for column in numbers]
    captured = _captured(results.study.share_captured)
    warnings_of = row_warnings(results.library, comparison)
    for place, (name, warnings) in enumerate(
        zip(comparison.names.tolist(), warnings_of, strict=True)
    ):
        cells = [column[place] for column in columns]
        yield [
            subject.name,
            subject.energy_kwh,
            str(subject.energy_basis),
            *cells[:2],
            name,
            *cells[2:12],
            basis,
            cells[12],
            *worths,
            *cells[13:],
            f"{captured}{warnings}".strip(),
        ]


def _captured(share: float) -> str:
    """Say the share that the values hold, which has no column of its own."""
    if share == 1:
        return ""
    return f"The values count {share!r} of the gap as captured. "
