"""Installed energy over mass of the battery that becomes smaller, and whence."""

from __future__ import annotations

import math

from benchpack.model.library import Library
from benchpack.model.pack import Pack
from benchpack.model.study import Study
from benchpack.model.words import EnergyBasis


def subject_density_of(library: Library, study: Study) -> float:
    """Give the installed energy over mass of the subject.

    Parameters
    ----------
    library : Library
        The packs.
    study : Study
        Subject, and the share of the energy used: usable energy is divided by it.

    Returns
    -------
    float
        Wh/kg, NaN where energy or mass is not known. Energy whose basis is not stated
        is taken as installed.
    """
    subject = _subject(library, study)
    if subject is None or not (subject.energy_kwh and subject.mass_kg):
        return math.nan
    density = 1000.0 * subject.energy_kwh / subject.mass_kg
    if subject.energy_basis is EnergyBasis.USABLE:
        return density / study.usable_share
    return density


def density_source(library: Library, study: Study) -> str:
    """Say where the density of the battery saved comes from, and on which basis.

    Parameters
    ----------
    library : Library
        The packs.
    study : Study
        Subject, or a density of its own.
    """
    if study.pack_density_wh_per_kg is not None:
        return "the study"
    subject = _subject(library, study)
    if subject is None:
        return "no subject"
    said = f"{subject.energy_basis} energy over mass of {subject.name}"
    if subject.energy_basis is EnergyBasis.USABLE:
        return f"{said}, divided by the usable share"
    if subject.energy_basis is EnergyBasis.UNKNOWN:
        said = f"energy over mass of {subject.name}"
        return f"{said}, basis not stated, taken as installed"
    return said


def _subject(library: Library, study: Study) -> Pack | None:
    if not library.packs.has(study.subject):
        return None
    return library.packs[library.packs.position(study.subject)]
