"""The uncertainty of the gap on the basis it is counted on, and its budget."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.gap_uncertainty import (
    gap_as_weighed_uncertainty_kg,
    gap_equal_energy_uncertainty_kg,
    gap_to_trend_uncertainty_kg,
)
from benchpack.calc.line import LinearTrend, student_quantile
from benchpack.calc.scaled_uncertainty import (
    gap_scaled_uncertainty_kg,
    gap_structure_uncertainty_kg,
)
from benchpack.model.pack_table import PackTable
from benchpack.model.study import Study
from benchpack.model.words import Basis
from benchpack.results.pack_columns import energy_uncertainty_kwh, mass_uncertainty_kg

FloatArray = NDArray[np.float64]

COVERAGE_FACTOR = 2.0
"""Ranges on screen are this many standard uncertainties (JCGM 100:2008 6.3)."""


@dataclass(frozen=True, slots=True)
class Contribution:
    """What one uncertain input does to the uncertainty of a gap.

    Parameters
    ----------
    name : str
        Which input, one of the keys of `UncertainGap.inputs`.
    uncertainty : float
        Its standard uncertainty, kg or kWh.
    gap_kg : float
        What that alone makes uncertain in the gap, kg: sensitivity times uncertainty.
    """

    name: str
    uncertainty: float
    gap_kg: float


class UncertainGap:
    """The standard uncertainty of the gap to n references.

    The mass of the cells counts as known as well as its pack's: the same share of it
    is uncertain. What was taken out for the boundary, the exponent, and an energy
    without a tolerance count as exact.

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

    Attributes
    ----------
    inputs : dict of str to ndarray, shape (n,)
        Standard uncertainties that enter, kg and kWh; NaN where one is not known.
    """

    def __init__(
        self,
        packs: PackTable,
        study: Study,
        *,
        subject_row: int,
        rows: NDArray[np.intp],
        energies: Mapping[str, FloatArray],
        reference_mass_kg: FloatArray,
        trend: LinearTrend | None,
    ) -> None:
        self.basis = study.basis
        self._exponent = study.exponent
        self._energies = dict(energies)
        self._reference_mass_kg = reference_mass_kg
        self._reference_cells_kg = packs.columns["cells_mass_kg"][rows]
        self._dof = trend.n - 2 if trend is not None else 0
        subject, count = np.array([subject_row]), len(rows)
        own_kg = mass_uncertainty_kg(packs, subject)
        inputs = {"subject_mass_u_kg": np.full(count, own_kg[0])}
        if self.basis is Basis.TREND:
            energy_kwh = packs.columns["energy_kwh"][subject_row]
            error_kg = np.nan
            if trend is not None:
                error_kg = float(trend.prediction_uncertainty_kg(energy_kwh))
            self.inputs = {**inputs, "prediction_u_kg": np.full(count, error_kg)}
            return
        other_kg = mass_uncertainty_kg(packs, rows)
        inputs["reference_mass_u_kg"] = other_kg
        if self.basis is not Basis.AS_WEIGHED:
            own_kwh = energy_uncertainty_kwh(packs, subject)[0]
            inputs["subject_energy_u_kwh"] = np.full(count, own_kwh)
            inputs["reference_energy_u_kwh"] = energy_uncertainty_kwh(packs, rows)
        if self.basis is Basis.STRUCTURE:
            cells_kg = own_kg * _cells_share(packs, subject)
            inputs["subject_cells_mass_u_kg"] = np.full(count, cells_kg[0])
        if self.basis in (Basis.SCALED, Basis.STRUCTURE):
            cells_kg = other_kg * _cells_share(packs, rows)
            inputs["reference_cells_mass_u_kg"] = cells_kg
        self.inputs = inputs

    def standard_kg(self) -> FloatArray:
        """Give the standard uncertainty of each gap, kg, shape (n,).

        Returns
        -------
        ndarray, shape (n,)
            NaN where an input has no known uncertainty.
        """
        return self._combined(self.inputs)

    def budget(self, place: int) -> tuple[Contribution, ...]:
        """Give what each input adds to the uncertainty of one gap.

        The squares of the contributions sum to the square of the standard
        uncertainty (JCGM 100:2008 5.1.2).

        Parameters
        ----------
        place : int
            Place of the reference.
        """
        exact = {name: np.zeros_like(values) for name, values in self.inputs.items()}
        return tuple(
            Contribution(
                name,
                float(values[place]),
                float(self._combined({**exact, name: values})[place]),
            )
            for name, values in self.inputs.items()
        )

    def coverage_factor(self, place: int) -> float:
        """Give the factor from standard to expanded uncertainty.

        2, except to the trend: there Student t for 95 % on the effective degrees of
        freedom (JCGM 100:2008 G.4.1), because a line through few peers is poorly known.

        Parameters
        ----------
        place : int
            Place of the reference.
        """
        if self.basis is not Basis.TREND:
            return COVERAGE_FACTOR
        error_kg = float(self.inputs["prediction_u_kg"][place])
        total_kg = float(self.standard_kg()[place])
        if math.isnan(total_kg):
            return math.nan
        share = error_kg / total_kg if total_kg > 0 else 0.0
        effective = self._dof / share**4 if share**4 > 0 else math.inf
        return student_quantile(0.95, dof=effective)

    def _combined(self, inputs: Mapping[str, FloatArray]) -> FloatArray:
        if self.basis is Basis.AS_WEIGHED:
            return gap_as_weighed_uncertainty_kg(**inputs)
        if self.basis is Basis.TREND:
            return gap_to_trend_uncertainty_kg(**inputs)
        mass_kg, known = self._reference_mass_kg, {**self._energies, **inputs}
        if self.basis is Basis.EQUAL_ENERGY:
            return gap_equal_energy_uncertainty_kg(mass_kg, **known)
        formula: Callable[..., FloatArray] = gap_structure_uncertainty_kg
        if self.basis is Basis.SCALED:
            formula = gap_scaled_uncertainty_kg
        return formula(
            mass_kg,
            **known,
            reference_cells_mass_kg=self._reference_cells_kg,
            exponent=self._exponent,
        )


def _cells_share(packs: PackTable, rows: NDArray[np.intp]) -> FloatArray:
    share = packs.columns["cells_mass_kg"][rows] / packs.columns["mass_kg"][rows]
    return np.asarray(share, dtype=np.float64)
