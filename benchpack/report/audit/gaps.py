"""The sheet of gaps: every reference on all bases, with the formulas of each."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import IntEnum

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.densities import gravimetric_density_wh_per_kg
from benchpack.report.audit import names
from benchpack.report.audit.draft import Draft, address
from benchpack.report.audit.packs import PackColumn, Packs
from benchpack.report.audit.record import (
    AuditCell,
    AuditSheet,
    Format,
    formula,
    text,
)
from benchpack.report.audit.trend import Trend
from benchpack.results.cautions import row_warnings
from benchpack.results.comparison import Comparison
from benchpack.results.results import Results

_PURPOSE = (
    "The gap of the subject to each reference on all bases; positive: the subject is "
    "heavier. The gap that counts is the one on the basis of sheet Assumptions; its "
    "value is gap x worth x share captured."
)


class GapColumn(IntEnum):
    """The columns of the sheet."""

    REFERENCE = 0
    ENERGY = 1
    REFERENCE_ENERGY = 2
    MASS = 3
    REFERENCE_MASS = 4
    DENSITY = 5
    REFERENCE_DENSITY = 6
    RATIO = 7
    GROWTH = 8
    AS_WEIGHED = 9
    ENERGY_SHARE = 10
    DENSITY_SHARE = 11
    SCALED = 12
    SCALED_LOW = 13
    SCALED_HIGH = 14
    TREND = 15
    STRUCTURE = 16
    GAP = 17
    GAP_U = 18
    LOW = 19
    LIKELY = 20
    HIGH = 21
    WARNINGS = 22


_HEADS = (
    "reference",
    "energy [kWh]",
    "reference energy [kWh]",
    "mass [kg]",
    "reference mass [kg]",
    "density [Wh/kg]",
    "reference density [Wh/kg]",
    "energy ratio x",
    "x to the exponent",
    "as weighed [kg]",
    "energy share [kg]",
    "density share, at equal energy [kg]",
    "scaled [kg]",
    "scaled, least of exponent 0 and 1 [kg]",
    "scaled, greatest [kg]",
    "to the trend [kg]",
    "structure only [kg]",
    "gap on the basis [kg]",
    "u(gap) [kg]",
    "value low [CUR]",
    "value likely [CUR]",
    "value high [CUR]",
    "warnings",
)
NONE = "none"
"""What stands where no line could be laid."""
_OF_BASES = (
    GapColumn.AS_WEIGHED,
    GapColumn.DENSITY_SHARE,
    GapColumn.SCALED,
    GapColumn.TREND,
    GapColumn.STRUCTURE,
)
"""The gaps in the order of the bases."""
_VALUES = (GapColumn.LOW, GapColumn.LIKELY, GapColumn.HIGH)
_TENTHS = (
    GapColumn.ENERGY,
    GapColumn.REFERENCE_ENERGY,
    GapColumn.DENSITY,
    GapColumn.REFERENCE_DENSITY,
)
_WIDTHS = (26, *(11,) * 21, 90)


@dataclass(frozen=True, slots=True)
class Gaps:
    """The sheet, and where the gap to the study's reference stands.

    Parameters
    ----------
    draft : Draft
        The sheet while it is written; the column of uncertainties comes last.
    first : int
        Row of the first reference.
    row : int or None
        Row of the study's reference.
    """

    draft: Draft
    first: int
    row: int | None

    @property
    def sheet(self) -> AuditSheet:
        """The sheet."""
        return self.draft.sheet()

    def at(self, column: GapColumn) -> str:
        """Give a cell of the study's reference for formulas on other sheets."""
        assert self.row is not None
        return self.draft.outside(self.row, column)


def gaps_sheet(
    results: Results,
    comparison: Comparison,
    packs: Packs,
    *,
    trend: Trend | None,
) -> Gaps:
    """Build the sheet of gaps.

    Parameters
    ----------
    results : Results
        The results.
    comparison : Comparison
        Its comparison.
    packs : Packs
        The sheet of packs.
    trend : Trend or None
        The sheet of the trend.
    """
    draft = Draft("Gaps", _PURPOSE, _WIDTHS)
    draft.heads(*(head.replace("CUR", results.study.currency) for head in _HEADS))
    values = _values(results, comparison)
    first = draft.next_row
    for place, said in enumerate(row_warnings(results.library, comparison)):
        bodies = _bodies(draft.next_row, packs, packs.references[place])
        bodies[GapColumn.TREND] = trend.gap if trend is not None else ""
        draft.line(
            text(str(comparison.names[place])),
            *(
                None
                if column is GapColumn.GAP_U
                else _cell(column, body, float(values[column][place]))
                for column, body in bodies.items()
            ),
            text(said),
        )
    row = None if results.place is None else first + results.place
    return Gaps(draft, first, row)


def _cell(column: GapColumn, body: str, value: float) -> AuditCell:
    if not body:
        # A number here would be counted, an empty cell is 0 where it is chosen.
        return text(NONE)
    form = Format.CENT
    if column in (GapColumn.RATIO, GapColumn.GROWTH):
        form = Format.THOUSANDTH
    if column in _TENTHS:
        form = Format.TENTH
    return formula(body, value, form)


def _values(
    results: Results, comparison: Comparison
) -> dict[GapColumn, NDArray[np.float64]]:
    """Give what this program has worked out for each column."""
    valuation, subject = results.valuation, comparison.subject
    assert valuation is not None
    energy = np.where(comparison.comparable, subject.energy_kwh, np.nan)
    ratio = energy / comparison.reference_energy_kwh
    return {
        GapColumn.ENERGY: energy,
        GapColumn.REFERENCE_ENERGY: comparison.reference_energy_kwh,
        GapColumn.MASS: comparison.subject_mass_kg,
        GapColumn.REFERENCE_MASS: comparison.reference_mass_kg,
        GapColumn.DENSITY: gravimetric_density_wh_per_kg(
            subject.energy_kwh, comparison.subject_mass_kg
        ),
        GapColumn.REFERENCE_DENSITY: gravimetric_density_wh_per_kg(
            comparison.reference_energy_kwh, comparison.reference_mass_kg
        ),
        GapColumn.RATIO: ratio,
        GapColumn.GROWTH: ratio**comparison.exponent,
        GapColumn.AS_WEIGHED: comparison.as_weighed_kg,
        GapColumn.ENERGY_SHARE: comparison.energy_share_kg,
        GapColumn.DENSITY_SHARE: comparison.density_share_kg,
        GapColumn.SCALED: comparison.scaled_kg,
        GapColumn.SCALED_LOW: comparison.scaled_low_kg,
        GapColumn.SCALED_HIGH: comparison.scaled_high_kg,
        GapColumn.TREND: comparison.to_trend_kg,
        GapColumn.STRUCTURE: comparison.structure_kg,
        GapColumn.GAP: comparison.gap_kg,
        GapColumn.LOW: valuation.low,
        GapColumn.LIKELY: valuation.likely,
        GapColumn.HIGH: valuation.high,
    }


def _bodies(row: int, packs: Packs, pack_row: int) -> dict[GapColumn, str]:
    """Give the formula of each column for the pack in one row of the sheet of packs."""
    at = {column: address(row, column) for column in GapColumn}

    def own(column: PackColumn) -> str:
        return packs.at(packs.subject, column)

    def other(column: PackColumn) -> str:
        return packs.at(pack_row, column)

    m_s, m_r = at[GapColumn.MASS], at[GapColumn.REFERENCE_MASS]
    e_s, e_r = at[GapColumn.ENERGY], at[GapColumn.REFERENCE_ENERGY]
    x, growth, gap = at[GapColumn.RATIO], at[GapColumn.GROWTH], at[GapColumn.GAP]
    c_s, c_r = own(PackColumn.CELLS), other(PackColumn.CELLS)
    at_equal_energy, exponent = at[GapColumn.DENSITY_SHARE], names.EXPONENT
    chosen = ",".join(at[column] for column in _OF_BASES)
    flat = f"{m_s}-({c_r}*{x}+{m_r}-{c_r})"

    def known(body: str, *cells: str) -> str:
        return f'IF(COUNT({",".join(cells)})<{len(cells)},"",{body})'

    return {
        GapColumn.ENERGY: f'IF({_unlike(own, other)},"",{own(PackColumn.ENERGY)})',
        GapColumn.REFERENCE_ENERGY: other(PackColumn.ENERGY),
        GapColumn.MASS: other(PackColumn.SUBJECT_COMPARED),
        GapColumn.REFERENCE_MASS: other(PackColumn.COMPARED),
        GapColumn.DENSITY: known(f"1000*{own(PackColumn.ENERGY)}/{m_s}", m_s),
        GapColumn.REFERENCE_DENSITY: known(f"1000*{e_r}/{m_r}", e_r, m_r),
        GapColumn.RATIO: known(f"{e_s}/{e_r}", e_s, e_r),
        GapColumn.GROWTH: f"IF({exponent}=0,1,{known(f'{x}^{exponent}', x)})",
        GapColumn.AS_WEIGHED: known(f"{m_s}-{m_r}", m_s, m_r),
        GapColumn.ENERGY_SHARE: known(f"{m_r}*({e_s}-{e_r})/{e_r}", m_r, e_s, e_r),
        GapColumn.DENSITY_SHARE: known(f"{m_s}-{m_r}*{x}", m_s, m_r, x),
        GapColumn.SCALED: known(
            f"{m_s}-({c_r}*{x}+({m_r}-{c_r})*{growth})", m_s, m_r, c_r, x
        ),
        GapColumn.SCALED_LOW: known(f"MIN({flat},{at_equal_energy})", m_s, m_r, c_r, x),
        GapColumn.SCALED_HIGH: known(
            f"MAX({flat},{at_equal_energy})", m_s, m_r, c_r, x
        ),
        GapColumn.TREND: "",
        GapColumn.STRUCTURE: known(
            f"{m_s}-{c_s}-({m_r}-{c_r})*{growth}", m_s, c_s, m_r, c_r, growth
        ),
        GapColumn.GAP: f"CHOOSE({names.BASIS_NUMBER},{chosen})",
        GapColumn.GAP_U: "",
        **{
            column: known(f"{gap}*{names.SHARE_CAPTURED}*{worth}", gap)
            for column, worth in zip(_VALUES, names.WORTH, strict=True)
        },
    }


def _unlike(
    own: Callable[[PackColumn], str], other: Callable[[PackColumn], str]
) -> str:
    """Give the condition on which two packs have no energies to compare."""
    basis, has = PackColumn.ENERGY_BASIS, PackColumn.HAS_CELLS
    return (
        f'OR({own(has)}="no",{other(has)}="no",'
        f'AND({own(basis)}="gross",{other(basis)}="usable"),'
        f'AND({own(basis)}="usable",{other(basis)}="gross"))'
    )
