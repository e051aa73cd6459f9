"""Columns that follow from the recorded ones: densities, ratios, uncertainties."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.densities import (
    cell_to_pack_ratio,
    gravimetric_density_wh_per_kg,
    structure_mass_kg,
    structure_mass_per_energy,
    volumetric_density_wh_per_l,
)
from benchpack.calc.uncertainty import standard_uncertainty_from_tolerance
from benchpack.model.pack_table import PackTable
from benchpack.model.words import RELATIVE_UNCERTAINTY

FloatArray = NDArray[np.float64]


def density_wh_per_kg(packs: PackTable) -> FloatArray:
    """Give the gravimetric energy density of every pack, Wh/kg, shape (n,)."""
    return gravimetric_density_wh_per_kg(
        packs.columns["energy_kwh"], packs.columns["mass_kg"]
    )


def density_wh_per_l(packs: PackTable) -> FloatArray:
    """Give the volumetric energy density of every pack, Wh/L, shape (n,)."""
    return volumetric_density_wh_per_l(
        packs.columns["energy_kwh"], packs.columns["volume_l"]
    )


def cells_share(packs: PackTable) -> FloatArray:
    """Give the gravimetric cell-to-pack ratio of every pack, shape (n,)."""
    return cell_to_pack_ratio(packs.columns["cells_mass_kg"], packs.columns["mass_kg"])


def structure_kg(packs: PackTable) -> FloatArray:
    """Give the mass that is not cells of every pack, kg, shape (n,)."""
    return structure_mass_kg(packs.columns["mass_kg"], packs.columns["cells_mass_kg"])


def structure_kg_per_kwh(packs: PackTable) -> FloatArray:
    """Give the mass that is not cells per energy, kg/kWh, shape (n,)."""
    return structure_mass_per_energy(
        packs.columns["mass_kg"],
        packs.columns["cells_mass_kg"],
        energy_kwh=packs.columns["energy_kwh"],
    )


def mass_uncertainty_kg(packs: PackTable, rows: NDArray[np.intp]) -> FloatArray:
    """Give the standard uncertainty of the mass of some packs, kg, shape (k,).

    A stated tolerance counts as rectangular (JCGM 100:2008 4.3.7); without one the
    way the mass is known sets a share of it (common practice, no source).

    Parameters
    ----------
    packs : PackTable
        The packs.
    rows : ndarray of int, shape (k,)
        Rows of the packs that are asked about.

    Returns
    -------
    ndarray, shape (k,)
        NaN where neither was recorded.
    """
    tolerance_kg = packs.columns["mass_tolerance_kg"][rows]
    stated = standard_uncertainty_from_tolerance(tolerance_kg)
    known_by = packs.columns["mass_known_by"][rows].tolist()
    share = np.fromiter(map(_SHARES.__getitem__, known_by), np.float64, len(known_by))
    return np.where(np.isnan(stated), share * packs.columns["mass_kg"][rows], stated)


_SHARES: dict[str, float] = {
    str(word): math.nan if share is None else share
    for word, share in RELATIVE_UNCERTAINTY.items()
}


def energy_uncertainty_kwh(packs: PackTable, rows: NDArray[np.intp]) -> FloatArray:
    """Give the standard uncertainty of the energy of some packs, kWh, shape (k,).

    A stated tolerance counts as rectangular (JCGM 100:2008 4.3.7); an energy without
    one counts as exact.

    Parameters
    ----------
    packs : PackTable
        The packs.
    rows : ndarray of int, shape (k,)
        Rows of the packs that are asked about.
    """
    tolerance_kwh = packs.columns["energy_tolerance_kwh"][rows]
    stated = standard_uncertainty_from_tolerance(tolerance_kwh)
    return np.nan_to_num(stated, nan=0.0)
