"""Why there is no gap where there is none."""

from __future__ import annotations

import math

from benchpack.errors import Problem
from benchpack.model.words import Basis
from benchpack.results.boundaries import weighed_without_cells
from benchpack.results.comparison import Comparison

_NAMED = {Basis.SCALED: "scaled gap", Basis.STRUCTURE: "gap of the structure"}


def why_no_gap(comparison: Comparison, place: int, *, basis: Basis) -> Problem | None:
    """Say why the gap to one reference cannot be counted on a basis.

    Parameters
    ----------
    comparison : Comparison
        The gaps.
    place : int
        Place of the reference in it.
    basis : Basis
        The basis that is asked about.

    Returns
    -------
    Problem or None
        None where there is a gap.
    """
    if not math.isnan(comparison.by_basis(basis)[place]):
        return None
    subject, reference = comparison.subject, str(comparison.names[place])
    if basis is Basis.TREND:
        if weighed_without_cells(subject.boundary):
            return _without_cells(subject.name)
        return comparison.trend_problem
    emptied = [
        name
        for name, mass_kg in (
            (subject.name, comparison.subject_mass_kg[place]),
            (reference, comparison.reference_mass_kg[place]),
        )
        if math.isnan(mass_kg)
    ]
    if emptied:
        return Problem(
            f"More would be taken out of {' and '.join(emptied)} for the boundary than "
            "it holds beside its cells.",
            "Correct the masses in the boundary record.",
            record=emptied[0],
            column="boundary",
        )
    if not comparison.masses.has_cells[place]:
        own = weighed_without_cells(subject.boundary)
        return _without_cells(subject.name if own else reference)
    if not comparison.comparable[place]:
        return Problem(
            f"{subject.name} and {reference} state their energy on different bases, "
            "one gross and one usable.",
            "Record both on one basis, or count the gap as weighed.",
            record=reference,
            column="energy basis",
        )
    return _unknown_cells(comparison, place, basis)


def _without_cells(pack: str) -> Problem:
    return Problem(
        f"{pack} was weighed without its cells, so its mass says nothing against its "
        "energy.",
        "Weigh it with them, or count the gap as weighed.",
        record=pack,
        column="boundary",
    )


def _unknown_cells(comparison: Comparison, place: int, basis: Basis) -> Problem:
    names = []
    if comparison.subject.cells_mass_kg is None and basis is Basis.STRUCTURE:
        names.append(comparison.subject.name)
    if math.isnan(comparison.reference_cells_kg[place]):
        names.append(str(comparison.names[place]))
    return Problem(
        f"The mass of the cells of {' and '.join(names)} is not known, so there is no "
        f"{_NAMED.get(basis, f'gap {basis}')}.",
        "Fill it in, or choose another basis.",
        record=names[0] if names else "",
        column="cells mass",
    )
