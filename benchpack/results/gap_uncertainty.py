"""The standard uncertainty of the gap on the basis it is counted on."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.gap_uncertainty import (
    gap_as_weighed_uncertainty_kg,
    gap_equal_energy_uncertainty_kg,
    gap_to_trend_uncertainty_kg,
)
from benchpack.calc.line import LinearTrend
from benchpack.calc.scaled_uncertainty import (
    gap_scaled_uncertainty_kg,
    gap_structure_uncertainty_kg,
)
from benchpack.model.pack_table import PackTable
from benchpack.model.study import Study
from benchpack.model.words import Basis
from benchpack.results.pack_columns import energy_uncertainty_kwh, mass_uncertainty_kg

FloatArray = NDArray[np.float64]


def gap_uncertainty_kg(
    packs: PackTable,
    study: Study,
    *,
    subject_row: int,
    rows: NDArray[np.intp],
    energies: Mapping[str, FloatArray],
    reference_mass_kg: FloatArray,
    trend: LinearTrend | None,
) -> FloatArray:
    """Give the standard uncertainty of the gap to each reference, kg.

    Parameters
    ----------
    packs : PackTable
        The packs.
    study : Study
        Basis and exponent.
    subject_row : int
        Row of the subject.
    rows : ndarray of int, shape (n,)
        Rows of the references.
    energies : mapping of str to ndarray, shape (n,)
        ``subject_energy_kwh`` and ``reference_energy_kwh`` as compared.
    reference_mass_kg : ndarray, shape (n,)
        Masses of the references as compared, kg.
    trend : LinearTrend or None
        The line through the peers.

    Returns
    -------
    ndarray, shape (n,)
        NaN where a mass has no known uncertainty. The mass of the cells counts as
        known as well as its pack's: the same share of it is uncertain.
    """
    mass_u_kg = mass_uncertainty_kg(packs)
    energy_u_kwh = energy_uncertainty_kwh(packs)
    subject_u_kg = np.full(len(rows), mass_u_kg[subject_row])
    if study.basis is Basis.AS_WEIGHED:
        return gap_as_weighed_uncertainty_kg(subject_u_kg, mass_u_kg[rows])
    if study.basis is Basis.TREND:
        if trend is None:
            return np.full(len(rows), np.nan)
        energy_kwh = packs.columns["energy_kwh"][subject_row]
        prediction_u_kg = trend.prediction_uncertainty_kg(energy_kwh)
        return gap_to_trend_uncertainty_kg(subject_u_kg, prediction_u_kg)
    inputs = {
        **energies,
        "subject_mass_u_kg": subject_u_kg,
        "reference_mass_u_kg": mass_u_kg[rows],
        "subject_energy_u_kwh": np.full(len(rows), energy_u_kwh[subject_row]),
        "reference_energy_u_kwh": energy_u_kwh[rows],
    }
    if study.basis is Basis.EQUAL_ENERGY:
        return gap_equal_energy_uncertainty_kg(reference_mass_kg, **inputs)
    cells_u_kg = mass_u_kg * packs.columns["cells_mass_kg"] / packs.columns["mass_kg"]
    inputs["reference_cells_mass_kg"] = packs.columns["cells_mass_kg"][rows]
    inputs["reference_cells_mass_u_kg"] = cells_u_kg[rows]
    if study.basis is Basis.SCALED:
        return gap_scaled_uncertainty_kg(
            reference_mass_kg, **inputs, exponent=study.exponent
        )
    inputs["subject_cells_mass_u_kg"] = np.full(len(rows), cells_u_kg[subject_row])
    return gap_structure_uncertainty_kg(
        reference_mass_kg, **inputs, exponent=study.exponent
    )
