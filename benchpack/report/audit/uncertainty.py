"""The sheet of uncertainties: what each gap's standard uncertainty is made of."""

from __future__ import annotations

from dataclasses import replace
from enum import IntEnum

import numpy as np
from numpy.typing import NDArray

from benchpack.model.words import Basis
from benchpack.report.audit import names
from benchpack.report.audit.draft import Draft, address
from benchpack.report.audit.gaps import NONE, GapColumn, Gaps
from benchpack.report.audit.packs import PackColumn, Packs
from benchpack.report.audit.record import AuditSheet, Format, formula, text
from benchpack.report.audit.trend import Trend
from benchpack.results.comparison import Comparison
from benchpack.results.gap_uncertainty import UncertainGap
from benchpack.results.pack_columns import energy_uncertainty_kwh, mass_uncertainty_kg
from benchpack.results.results import Results

_PURPOSE = (
    "Standard uncertainty of the gap on each basis: inputs in quadrature with their "
    "sensitivity (JCGM 100:2008, 5.1.2). Energies without a tolerance count as exact."
)
_WIDTHS = (26, *(11,) * 14)
FloatArray = NDArray[np.float64]


class UncertaintyColumn(IntEnum):
    """The columns of the sheet."""

    REFERENCE = 0
    MASS = 1
    REFERENCE_MASS = 2
    CELLS = 3
    REFERENCE_CELLS = 4
    ENERGY = 5
    REFERENCE_ENERGY = 6
    RATIO = 7
    GROWTH = 8
    AS_WEIGHED = 9
    EQUAL_ENERGY = 10
    SCALED = 11
    TREND = 12
    STRUCTURE = 13
    GAP = 14


_HEADS = (
    "reference",
    "u(mass) [kg]",
    "u(reference mass) [kg]",
    "u(cells) [kg]",
    "u(reference cells) [kg]",
    "u(energy) [kWh]",
    "u(reference energy) [kWh]",
    "u(energy ratio x)",
    "slope of x to the exponent",
    "u as weighed [kg]",
    "u at equal energy [kg]",
    "u scaled [kg]",
    "u to the trend [kg]",
    "u structure only [kg]",
    "u(gap) on the basis [kg]",
)
_OF_BASES = (
    UncertaintyColumn.AS_WEIGHED,
    UncertaintyColumn.EQUAL_ENERGY,
    UncertaintyColumn.SCALED,
    UncertaintyColumn.TREND,
    UncertaintyColumn.STRUCTURE,
)


def uncertainty_sheet(
    results: Results,
    comparison: Comparison,
    packs: Packs,
    gaps: Gaps,
    *,
    trend: Trend | None,
) -> AuditSheet:
    """Build the sheet of uncertainties, and write its last column to the gaps too.

    Parameters
    ----------
    results : Results
        The results.
    comparison : Comparison
        Its comparison.
    packs : Packs
        The sheet of packs.
    gaps : Gaps
        The sheet of gaps; its column of uncertainties is filled.
    trend : Trend or None
        The sheet of the trend.
    """
    draft = Draft("Uncertainty", _PURPOSE, _WIDTHS)
    draft.heads(*_HEADS)
    values = _values(results, comparison)
    for place, name in enumerate(comparison.names.tolist()):
        row, gap_row = draft.next_row, gaps.first + place
        bodies = _bodies(row, packs, packs.references[place], gaps, gap_row)
        if trend is not None:
            own = address(row, UncertaintyColumn.MASS)
            both = f"SUMSQ({own},{trend.prediction_u})"
            bodies[UncertaintyColumn.TREND] = _known(f"SQRT({both})", own)
        draft.line(
            text(name),
            *(
                formula(body, float(values[column][place]), Format.THOUSANDTH)
                if body
                else text(NONE)
                for column, body in bodies.items()
            ),
        )
        gap_u = formula(
            draft.outside(row, UncertaintyColumn.GAP), float(comparison.gap_u_kg[place])
        )
        gaps.draft.put(gap_row, GapColumn.GAP_U, gap_u)
    return draft.sheet()


def _values(
    results: Results, comparison: Comparison
) -> dict[UncertaintyColumn, FloatArray]:
    """Give what this program has worked out for each column."""
    packs, subject, rows = results.library.packs, comparison.subject, comparison.rows
    own, count = packs.position(subject.name), len(rows)
    own_row = np.array([own], dtype=np.intp)
    cells_share = packs.columns["cells_mass_kg"] / packs.columns["mass_kg"]
    mass_u = np.full(count, mass_uncertainty_kg(packs, own_row)[0])
    reference_u = mass_uncertainty_kg(packs, rows)
    energy_u = np.full(count, energy_uncertainty_kwh(packs, own_row)[0])
    reference_energy_u = energy_uncertainty_kwh(packs, rows)
    energies = {
        "subject_energy_kwh": np.where(
            comparison.comparable, subject.energy_kwh, np.nan
        ),
        "reference_energy_kwh": comparison.reference_energy_kwh,
    }
    ratio = energies["subject_energy_kwh"] / energies["reference_energy_kwh"]
    ratio_u = (
        np.hypot(energy_u, ratio * reference_energy_u) / comparison.reference_energy_kwh
    )
    of_bases = {
        column: UncertainGap(
            packs,
            replace(results.study, basis=basis),
            subject_row=own,
            rows=rows,
            energies=energies,
            reference_mass_kg=comparison.reference_mass_kg,
            trend=comparison.trend,
        ).standard_kg()
        for column, basis in zip(_OF_BASES, Basis, strict=True)
    }
    return {
        UncertaintyColumn.MASS: mass_u,
        UncertaintyColumn.REFERENCE_MASS: reference_u,
        UncertaintyColumn.CELLS: mass_u * cells_share[own],
        UncertaintyColumn.REFERENCE_CELLS: reference_u * cells_share[rows],
        UncertaintyColumn.ENERGY: energy_u,
        UncertaintyColumn.REFERENCE_ENERGY: reference_energy_u,
        UncertaintyColumn.RATIO: ratio_u,
        UncertaintyColumn.GROWTH: comparison.exponent
        * ratio**comparison.exponent
        / ratio,
        **of_bases,
        UncertaintyColumn.GAP: comparison.gap_u_kg,
    }


def _known(body: str, *cells: str) -> str:
    return f'IF(COUNT({",".join(cells)})<{len(cells)},"",{body})'


def _bodies(
    row: int, packs: Packs, pack_row: int, gaps: Gaps, gap_row: int
) -> dict[UncertaintyColumn, str]:
    """Give the formula of each column."""
    column = UncertaintyColumn
    at = {one: address(row, one) for one in column}
    m_r, e_r, x, growth = (
        gaps.draft.outside(gap_row, one)
        for one in (
            GapColumn.REFERENCE_MASS,
            GapColumn.REFERENCE_ENERGY,
            GapColumn.RATIO,
            GapColumn.GROWTH,
        )
    )
    u_s, u_r, u_x = at[column.MASS], at[column.REFERENCE_MASS], at[column.RATIO]
    cu_s, cu_r = at[column.CELLS], at[column.REFERENCE_CELLS]
    u_e, u_er = at[column.ENERGY], at[column.REFERENCE_ENERGY]
    cells, slope = packs.at(pack_row, PackColumn.CELLS), at[column.GROWTH]
    rest = f"{slope}*({m_r}-{cells})"

    def root(known: tuple[str, ...], *parts: str) -> str:
        return _known(f"SQRT(SUMSQ({','.join(parts)}))", *known)

    return {
        column.MASS: packs.at(packs.subject, PackColumn.MASS_U),
        column.REFERENCE_MASS: packs.at(pack_row, PackColumn.MASS_U),
        column.CELLS: _cells_u(packs, packs.subject, u_s),
        column.REFERENCE_CELLS: _cells_u(packs, pack_row, u_r),
        column.ENERGY: packs.at(packs.subject, PackColumn.ENERGY_U),
        column.REFERENCE_ENERGY: packs.at(pack_row, PackColumn.ENERGY_U),
        column.RATIO: root((x, u_e, u_er), f"{u_e}/{e_r}", f"{x}*{u_er}/{e_r}"),
        column.GROWTH: _known(f"{names.EXPONENT}*{growth}/{x}", x),
        column.AS_WEIGHED: root((u_s, u_r), u_s, u_r),
        column.EQUAL_ENERGY: root(
            (u_s, u_r, u_x, m_r), u_s, f"{x}*{u_r}", f"{m_r}*{u_x}"
        ),
        column.SCALED: root(
            (u_s, u_r, cu_r, u_x, m_r),
            u_s,
            f"{growth}*{u_r}",
            f"({growth}-{x})*{cu_r}",
            f"({cells}+{rest})*{u_x}",
        ),
        column.TREND: "",
        column.STRUCTURE: root(
            (u_s, cu_s, u_r, cu_r, u_x, m_r),
            u_s,
            cu_s,
            f"{growth}*{u_r}",
            f"{growth}*{cu_r}",
            f"{rest}*{u_x}",
        ),
        column.GAP: f"CHOOSE({names.BASIS_NUMBER},"
        f"{','.join(at[one] for one in _OF_BASES)})",
    }


def _cells_u(packs: Packs, row: int, mass_u: str) -> str:
    """Give the uncertainty of cells: the same share as of their pack."""
    cells, mass = packs.at(row, PackColumn.CELLS), packs.at(row, PackColumn.MASS)
    return _known(f"{mass_u}*{cells}/{mass}", mass_u, cells)
