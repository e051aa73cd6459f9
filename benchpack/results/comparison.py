"""The subject against every reference on all five bases, as columns."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.gap import (
    density_share_kg,
    energy_share_kg,
    gap_as_weighed_kg,
    gap_scaled_kg,
    gap_structure_kg,
    gap_to_trend_kg,
)
from benchpack.calc.line import LinearTrend
from benchpack.calc.trend import fit_least_squares, fit_power_law, fit_theil_sen
from benchpack.errors import DataError, Problem
from benchpack.model.library import Library
from benchpack.model.pack import Pack
from benchpack.model.study import Study
from benchpack.model.words import Basis, EnergyBasis, TrendKind
from benchpack.results.boundaries import BoundaryMatch
from benchpack.results.compared_masses import ComparedMasses
from benchpack.results.gap_uncertainty import UncertainGap

FloatArray = NDArray[np.float64]

_FITS = {
    TrendKind.LEAST_SQUARES: fit_least_squares,
    TrendKind.THEIL_SEN: fit_theil_sen,
    TrendKind.POWER_LAW: fit_power_law,
}


@dataclass(frozen=True, slots=True, eq=False)
class Comparison:
    """Gaps of one subject to n references, positive where the subject is heavier.

    Parameters
    ----------
    subject : Pack
        The pack under study.
    basis : Basis
        The basis that `gap_kg` counts on.
    exponent : float
        Growth of the mass that is not cells with energy.
    rows : ndarray of int, shape (n,)
        Rows of the references in the library.
    names : ndarray of object, shape (n,)
        Their names.
    reference_energy_kwh : ndarray, shape (n,)
        Their energies.
    subject_mass_kg, reference_mass_kg : ndarray, shape (n,)
        Masses as compared: what only one of the two has on the scale is taken out;
        NaN where more would be taken out than can be.
    reference_cells_kg : ndarray, shape (n,)
        Their cells, kg.
    comparable : ndarray of bool, shape (n,)
        False where one energy is gross and the other usable, or one of the packs was
        weighed without its cells.
    masses : ComparedMasses
        The masses as compared, and how the boundaries of each pair match.
    as_weighed_kg, energy_share_kg, density_share_kg, scaled_kg, to_trend_kg,
    structure_kg : ndarray, shape (n,)
        The gaps; NaN where one cannot be given.
    scaled_low_kg, scaled_high_kg : ndarray, shape (n,)
        The scaled gap over the exponents 0 to 1.
    gap_kg : ndarray, shape (n,)
        The gap on `basis`.
    gap_u_kg : ndarray, shape (n,)
        Its standard uncertainty, NaN where it is not known.
    uncertain : UncertainGap
        What that uncertainty is made of.
    trend_rows : ndarray of int, shape (peers,)
        Rows of the packs that the trend may rest on.
    trend : LinearTrend or None
        The line through the peers, their masses as weighed.
    trend_problem : Problem or None
        Why there is no line.
    """

    subject: Pack
    basis: Basis
    exponent: float
    rows: NDArray[np.intp]
    names: NDArray[np.object_]
    reference_energy_kwh: FloatArray
    subject_mass_kg: FloatArray
    reference_mass_kg: FloatArray
    reference_cells_kg: FloatArray
    comparable: NDArray[np.bool_]
    masses: ComparedMasses
    as_weighed_kg: FloatArray
    energy_share_kg: FloatArray
    density_share_kg: FloatArray
    scaled_kg: FloatArray
    scaled_low_kg: FloatArray
    scaled_high_kg: FloatArray
    to_trend_kg: FloatArray
    structure_kg: FloatArray
    gap_kg: FloatArray
    gap_u_kg: FloatArray
    uncertain: UncertainGap
    trend_rows: NDArray[np.intp]
    trend: LinearTrend | None
    trend_problem: Problem | None

    def __len__(self) -> int:
        return len(self.rows)

    def place(self, name: str) -> int | None:
        """Give the place of a reference in the arrays, None where it is not there."""
        found = np.flatnonzero(self.names == name)
        return int(found[0]) if len(found) else None

    def boundary(self, place: int) -> BoundaryMatch:
        """Give how the boundaries of the subject and one reference compare."""
        return self.masses.match(place)

    def by_basis(self, basis: Basis) -> FloatArray:
        """Give the gaps on one basis, kg, shape (n,)."""
        return {
            Basis.AS_WEIGHED: self.as_weighed_kg,
            Basis.EQUAL_ENERGY: self.density_share_kg,
            Basis.SCALED: self.scaled_kg,
            Basis.TREND: self.to_trend_kg,
            Basis.STRUCTURE: self.structure_kg,
        }[basis]


def compare(
    library: Library, study: Study, *, references: Sequence[str] | None = None
) -> Comparison:
    """Compare the subject of a study with its references.

    Parameters
    ----------
    library : Library
        The records.
    study : Study
        Subject, peers, basis, exponent and kind of trend.
    references : sequence of str, optional
        Names to compare with, in this order; by default the study's peers and its
        reference, or every other pack when it names no peers.

    Returns
    -------
    Comparison
        One place per reference.

    Raises
    ------
    DataError
        When the subject or a named reference is not in the library.
    """
    packs = library.packs
    _require(library, study.subject, "subject")
    subject_row = packs.position(study.subject)
    subject = packs[subject_row]
    rows = _reference_rows(library, study, subject_row, references)
    take = {name: packs.columns[name][rows] for name in _NEEDED}
    compared = ComparedMasses(library, subject, rows)
    comparable = _comparable(subject.energy_basis, take["energy_basis"])
    comparable &= compared.has_cells
    energies = {
        "subject_energy_kwh": np.where(comparable, subject.energy_kwh, np.nan),
        "reference_energy_kwh": take["energy_kwh"],
    }
    masses = (compared.subject_kg, compared.reference_kg)
    cells = take["cells_mass_kg"]
    subject_cells = math.nan if subject.cells_mass_kg is None else subject.cells_mass_kg
    trend_rows = rows[comparable]
    if references is not None:
        trend_rows = _trend_rows(library, study, subject_row)
    trend, trend_problem = _trend(library, study, trend_rows)
    to_trend = math.nan
    if trend is not None:
        predicted = trend.predict_kg(subject.energy_kwh)
        to_trend = float(gap_to_trend_kg(subject.mass_kg, predicted))

    def scaled(exponent: float) -> FloatArray:
        return gap_scaled_kg(
            *masses, **energies, reference_cells_mass_kg=cells, exponent=exponent
        )

    uncertain = UncertainGap(
        packs,
        study,
        subject_row=subject_row,
        rows=rows,
        energies=energies,
        reference_mass_kg=compared.reference_kg,
        trend=trend,
    )
    flat, proportional = scaled(0.0), scaled(1.0)
    gaps: dict[Basis, FloatArray] = {
        Basis.AS_WEIGHED: gap_as_weighed_kg(*masses),
        Basis.EQUAL_ENERGY: density_share_kg(*masses, **energies),
        Basis.SCALED: scaled(study.exponent),
        Basis.TREND: np.full(len(rows), to_trend),
        Basis.STRUCTURE: gap_structure_kg(
            *masses,
            **energies,
            subject_cells_mass_kg=subject_cells,
            reference_cells_mass_kg=cells,
            exponent=study.exponent,
        ),
    }
    return Comparison(
        subject=subject,
        basis=study.basis,
        exponent=study.exponent,
        rows=rows,
        names=take["name"],
        reference_energy_kwh=take["energy_kwh"],
        subject_mass_kg=compared.subject_kg,
        reference_mass_kg=compared.reference_kg,
        reference_cells_kg=cells,
        comparable=comparable,
        masses=compared,
        as_weighed_kg=gaps[Basis.AS_WEIGHED],
        energy_share_kg=energy_share_kg(compared.reference_kg, **energies),
        density_share_kg=gaps[Basis.EQUAL_ENERGY],
        scaled_kg=gaps[Basis.SCALED],
        scaled_low_kg=np.minimum(flat, proportional),
        scaled_high_kg=np.maximum(flat, proportional),
        to_trend_kg=gaps[Basis.TREND],
        structure_kg=gaps[Basis.STRUCTURE],
        gap_kg=gaps[study.basis],
        gap_u_kg=uncertain.standard_kg(),
        uncertain=uncertain,
        trend_rows=trend_rows,
        trend=trend,
        trend_problem=trend_problem,
    )


_NEEDED = ("name", "energy_kwh", "energy_basis", "mass_kg", "cells_mass_kg")


def _require(library: Library, name: str, role: str) -> None:
    if not library.packs.has(name):
        raise DataError(
            Problem(
                f"There is no pack {name!r} to be the {role}."
                if name
                else f"No {role} is chosen.",
                f"Choose one of the {len(library.packs)} packs."
                if len(library.packs)
                else "Add packs or open a table first.",
                value=name,
            )
        )


def _reference_rows(
    library: Library, study: Study, subject_row: int, references: Sequence[str] | None
) -> NDArray[np.intp]:
    packs = library.packs
    if references is not None:
        for name in references:
            _require(library, name, "reference")
        wanted = [packs.position(name) for name in references]
        return np.array([row for row in wanted if row != subject_row], dtype=np.intp)
    if not study.peers:
        return np.delete(np.arange(len(packs), dtype=np.intp), subject_row)
    names = dict.fromkeys((*study.peers, study.reference))
    rows = [packs.position(name) for name in names if packs.has(name)]
    return np.array([row for row in sorted(rows) if row != subject_row], dtype=np.intp)


def _comparable(
    subject: EnergyBasis, references: NDArray[np.object_]
) -> NDArray[np.bool_]:
    if subject is EnergyBasis.UNKNOWN:
        return np.ones(len(references), dtype=bool)
    other = EnergyBasis.USABLE if subject is EnergyBasis.GROSS else EnergyBasis.GROSS
    return np.asarray(references != str(other), dtype=bool)


def _trend_rows(library: Library, study: Study, subject_row: int) -> NDArray[np.intp]:
    """Give the peers; the subject and packs not comparable with it are left out."""
    packs = library.packs
    rows = _reference_rows(library, study, subject_row, None)
    subject = packs[subject_row]
    comparable = _comparable(subject.energy_basis, packs.columns["energy_basis"][rows])
    kept = comparable & ComparedMasses(library, subject, rows).has_cells
    return np.asarray(rows[kept], dtype=np.intp)


def _trend(
    library: Library, study: Study, rows: NDArray[np.intp]
) -> tuple[LinearTrend | None, Problem | None]:
    columns = library.packs.columns
    try:
        fit = _FITS[study.trend]
        trend = fit(columns["energy_kwh"][rows], columns["mass_kg"][rows])
    except DataError as error:
        return None, error.problems[0]
    return trend, None
