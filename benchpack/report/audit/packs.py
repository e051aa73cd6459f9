"""The sheet of packs: what was recorded of subject, references and peers."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import IntEnum

import numpy as np
from numpy.typing import NDArray

from benchpack.model.pack import Pack
from benchpack.model.words import KnownBy
from benchpack.report.audit.draft import Draft, address
from benchpack.report.audit.record import (
    AuditCell,
    AuditSheet,
    Format,
    formula,
    record,
    text,
)
from benchpack.results.boundaries import weighed_without_cells
from benchpack.results.comparison import Comparison
from benchpack.results.pack_columns import (
    cells_share,
    density_wh_per_kg,
    energy_uncertainty_kwh,
    mass_uncertainty_kg,
    structure_kg,
    structure_kg_per_kwh,
)
from benchpack.results.results import Results

_PURPOSE = (
    "What was recorded of each pack, and its mass as compared: what only one of the "
    "two has on the scale is taken out. Blue figures are records."
)
_WIDTHS = (26, 15, *(9,) * 4, 14, 9, 9, 10, *(11,) * 4, 10, 9, 10, 11, 9, 9, 26, 90)


class PackColumn(IntEnum):
    """The columns of the sheet."""

    NAME = 0
    ROLE = 1
    ENERGY = 2
    ENERGY_BASIS = 3
    ENERGY_TOLERANCE = 4
    MASS = 5
    KNOWN_BY = 6
    MASS_TOLERANCE = 7
    CELLS = 8
    HAS_CELLS = 9
    TAKEN_OUT = 10
    SUBJECT_TAKEN_OUT = 11
    COMPARED = 12
    SUBJECT_COMPARED = 13
    DENSITY = 14
    CELLS_SHARE = 15
    STRUCTURE = 16
    STRUCTURE_PER_ENERGY = 17
    MASS_U = 18
    ENERGY_U = 19
    SOURCE = 20
    BOUNDARY = 21


_HEADS = (
    "pack",
    "role",
    "energy [kWh]",
    "energy basis",
    "energy +- [kWh]",
    "mass [kg]",
    "mass known by",
    "mass +- [kg]",
    "cells [kg]",
    "weighed with cells",
    "taken out of it [kg]",
    "taken out of the subject [kg]",
    "as compared [kg]",
    "subject as compared [kg]",
    "density [Wh/kg]",
    "cells share of mass",
    "not cells [kg]",
    "not cells per energy [kg/kWh]",
    "u(mass) [kg]",
    "u(energy) [kWh]",
    "source",
    "boundary",
)


@dataclass(frozen=True, slots=True)
class Packs:
    """The sheet, and where its packs stand.

    Parameters
    ----------
    sheet : AuditSheet
        The sheet.
    draft : Draft
        Gives the addresses of its cells.
    subject : int
        Row of the subject.
    references : tuple of int
        Rows of the references, in the order of the comparison.
    rows : mapping of int to int
        Row of the sheet for each row of the library that is in it.
    """

    sheet: AuditSheet
    draft: Draft
    subject: int
    references: tuple[int, ...]
    rows: Mapping[int, int]

    def at(self, row: int, column: PackColumn) -> str:
        """Give the address of a cell for formulas on other sheets."""
        return self.draft.outside(row, column)


def packs_sheet(
    results: Results, comparison: Comparison, shares: Mapping[KnownBy, str]
) -> Packs:
    """Build the sheet of packs.

    Parameters
    ----------
    results : Results
        The results.
    comparison : Comparison
        Its comparison.
    shares : mapping of KnownBy to str
        Cells with the uncertainty of a mass by how it is known.
    """
    draft = Draft("Packs", _PURPOSE, _WIDTHS)
    draft.heads(*_HEADS)
    writer = _Writer(results, comparison, draft, shares)
    packs = results.library.packs
    own = packs.position(comparison.subject.name)
    rows = {own: writer.write(own, "subject")}
    writer.subject = rows[own]
    references = []
    for place, row in enumerate(comparison.rows.tolist()):
        is_chosen = place == results.place
        role = "reference" if is_chosen else "other reference"
        rows[row] = writer.write(row, role, place=place)
        references.append(rows[row])
    for row in comparison.trend_rows.tolist():
        if row not in rows:
            rows[row] = writer.write(row, "peer of the trend")
    return Packs(draft.sheet(), draft, rows[own], tuple(references), rows)


class _Writer:
    """Writes packs row by row."""

    def __init__(
        self,
        results: Results,
        comparison: Comparison,
        draft: Draft,
        shares: Mapping[KnownBy, str],
    ) -> None:
        self.packs, self.comparison = results.library.packs, comparison
        self.draft, self.shares = draft, shares
        self.subject = draft.next_row
        every: NDArray[np.intp] = np.arange(len(self.packs), dtype=np.intp)
        self.density = density_wh_per_kg(self.packs)
        self.cells_share = cells_share(self.packs)
        self.structure = structure_kg(self.packs)
        self.per_energy = structure_kg_per_kwh(self.packs)
        self.mass_u = mass_uncertainty_kg(self.packs, every)
        self.energy_u = energy_uncertainty_kwh(self.packs, every)

    def write(self, row: int, role: str, *, place: int | None = None) -> int:
        """Write one pack, and give its row on the sheet."""
        pack = self.packs[row]
        lacks_cells = weighed_without_cells(pack.boundary)
        return self.draft.line(
            text(pack.name),
            text(role),
            record(pack.energy_kwh, Format.TENTH),
            text(str(pack.energy_basis)),
            record(pack.energy_tolerance_kwh, Format.CENT),
            record(pack.mass_kg),
            text(str(pack.mass_known_by) or "not stated"),
            record(pack.mass_tolerance_kg),
            record(pack.cells_mass_kg),
            text("no" if lacks_cells else "yes"),
            *self._compared(pack, place),
            *self._derived(pack, row),
            text(pack.source),
            text(pack.boundary.to_text() or "not recorded"),
        )

    def _compared(self, pack: Pack, place: int | None) -> Iterator[AuditCell | None]:
        """Give what is taken out of reference and subject, and what remains."""
        if place is None:
            yield from (None,) * 4
            return
        comparison, match = self.comparison, self.comparison.boundary(place)
        row, subject = self.draft.next_row, comparison.subject
        yield record(match.mass_kg(pack.name))
        yield record(match.mass_kg(subject.name))
        for of, taken, value in (
            (row, PackColumn.TAKEN_OUT, comparison.reference_mass_kg[place]),
            (
                self.subject,
                PackColumn.SUBJECT_TAKEN_OUT,
                comparison.subject_mass_kg[place],
            ),
        ):
            mass, out = address(of, PackColumn.MASS), address(row, taken)
            cells = address(of, PackColumn.CELLS)
            impossible = f"OR({mass}-{out}<=0,{mass}-{out}<{cells})"
            body = f'IF({out}=0,{mass},IF({impossible},"",{mass}-{out}))'
            yield formula(body, float(value))

    def _derived(self, pack: Pack, row: int) -> Iterator[AuditCell]:
        """Give densities, ratios and uncertainties."""
        at = self.draft.next_row
        energy, mass, cells, tolerance, energy_tolerance = (
            address(at, column)
            for column in (
                PackColumn.ENERGY,
                PackColumn.MASS,
                PackColumn.CELLS,
                PackColumn.MASS_TOLERANCE,
                PackColumn.ENERGY_TOLERANCE,
            )
        )
        share = self.shares.get(pack.mass_known_by)
        else_u = f"{share}*{mass}" if share else '""'
        both, without = f"COUNT({energy},{mass})<2", f"COUNT({cells},{mass})<2"
        for body, value, form in (
            (f'IF({both},"",1000*{energy}/{mass})', self.density, Format.TENTH),
            (f'IF({without},"",{cells}/{mass})', self.cells_share, Format.SHARE),
            (f'IF({without},"",{mass}-{cells})', self.structure, Format.CENT),
            (
                f'IF(COUNT({cells},{mass},{energy})<3,"",({mass}-{cells})/{energy})',
                self.per_energy,
                Format.THOUSANDTH,
            ),
            (
                f"IF(COUNT({tolerance})=1,{tolerance}/SQRT(3),{else_u})",
                self.mass_u,
                Format.CENT,
            ),
            (
                f"IF(COUNT({energy_tolerance})=1,{energy_tolerance}/SQRT(3),0)",
                self.energy_u,
                Format.CENT,
            ),
        ):
            yield formula(body, float(value[row]), form)
