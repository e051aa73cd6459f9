"""The inputs of a figure, with their units and where they come from."""

from __future__ import annotations

import math

from benchpack.model.pack import Pack
from benchpack.results.comparison import Comparison
from benchpack.results.figure import Input
from benchpack.results.results import Results

STUDY = "study"


def reference_pack(results: Results, comparison: Comparison, place: int) -> Pack:
    """Give the record of one reference."""
    return results.library.packs[int(comparison.rows[place])]


def known(pack: Pack) -> str:
    """Say how the mass of a pack is known, and its source."""
    words = [str(pack.mass_known_by) or "how known not recorded", pack.source]
    return ", ".join(filter(None, words))


def scale_mass(symbol: str, pack: Pack) -> Input:
    """Give the mass of a pack as it was on the scale."""
    return Input(f"{symbol}, mass of {pack.name}", pack.mass_kg, "kg", known(pack))


def compared_mass(
    symbol: str, pack: Pack, comparison: Comparison, place: int
) -> tuple[Input, ...]:
    """Give the mass of a pack as compared, and what was taken out to get there.

    Parameters
    ----------
    symbol : str
        Its symbol in the formula.
    pack : Pack
        The subject or the reference.
    comparison : Comparison
        The gaps.
    place : int
        Place of the reference.
    """
    match = comparison.boundary(place)
    taken = [item for item in match.taken_out if item.pack == pack.name]
    if not taken:
        return (scale_mass(symbol, pack),)
    own = pack.name == comparison.subject.name
    masses = comparison.subject_mass_kg if own else comparison.reference_mass_kg
    return (
        Input(
            f"{symbol}, mass of {pack.name} as compared",
            float(masses[place]),
            "kg",
            "on the scale less what the other pack was weighed without",
        ),
        Input(f"on the scale, {pack.name}", pack.mass_kg, "kg", known(pack)),
        *(
            Input(
                f"{item.item} taken out", item.mass_kg, "kg", _origin(pack, item.item)
            )
            for item in taken
        ),
    )


def _origin(pack: Pack, item: str) -> str:
    if item in pack.boundary.masses_kg:
        return f"boundary record of {pack.name}"
    return f"parts of {pack.name}"


def energy(symbol: str, pack: Pack) -> Input:
    """Give the energy of a pack with its basis."""
    source = ", ".join(filter(None, (f"{pack.energy_basis} energy", pack.source)))
    return Input(f"{symbol}, energy of {pack.name}", pack.energy_kwh, "kWh", source)


def cells(symbol: str, pack: Pack) -> Input:
    """Give the mass of the cells of a pack."""
    mass_kg = math.nan if pack.cells_mass_kg is None else pack.cells_mass_kg
    return Input(f"{symbol}, cells of {pack.name}", mass_kg, "kg", pack.source)


def masses(results: Results, comparison: Comparison, place: int) -> tuple[Input, ...]:
    """Give the masses of subject and reference as compared."""
    reference = reference_pack(results, comparison, place)
    return (
        *compared_mass("m_s", comparison.subject, comparison, place),
        *compared_mass("m_r", reference, comparison, place),
    )


def energies(results: Results, comparison: Comparison, place: int) -> tuple[Input, ...]:
    """Give the energies of subject and reference."""
    reference = reference_pack(results, comparison, place)
    return energy("E_s", comparison.subject), energy("E_r", reference)
