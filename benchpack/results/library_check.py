"""What is unusual or amiss in a whole library."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from benchpack.errors import Problem, Severity
from benchpack.model.library import Library
from benchpack.model.pack import PACK_FIELDS, pack_problems
from benchpack.results.closure import Grade, closure_of


def library_problems(library: Library) -> list[Problem]:
    """Give the warnings about all packs, parts and references between records.

    Parameters
    ----------
    library : Library
        The records.
    """
    found: list[Problem] = []
    packs = library.packs
    for row in _doubtful_rows(library):
        found.extend(
            problem.at(row=None)
            for problem in pack_problems(packs[row])
            if problem.severity is Severity.WARNING
        )
    found.extend(_of_balances(library))
    found.extend(_of_references(library))
    return found


def _warning(what: str, remedy: str, record: str, column: str) -> Problem:
    return Problem(
        what, remedy, record=record, column=column, severity=Severity.WARNING
    )


def _doubtful_rows(library: Library) -> list[int]:
    packs = library.packs
    doubtful = np.zeros(len(packs), dtype=bool)
    for field in PACK_FIELDS:
        if field.is_numeric:
            low, high = field.plausible
            column = packs.columns[field.name]
            doubtful |= (column < low) | (column > high)
    if len(packs):
        density = 1000 * packs.columns["energy_kwh"] / packs.columns["mass_kg"]
        doubtful |= (density < 40) | (density > 350)
    rows: list[int] = np.flatnonzero(doubtful).tolist()
    return rows


def _of_balances(library: Library) -> Iterator[Problem]:
    for name in dict.fromkeys((*library.parts, *library.joints)):
        if not library.packs.has(name):
            continue
        closure = closure_of(library, name)
        if closure.grade is Grade.FAIL:
            yield _warning(
                f"Parts and joints come to {100 * closure.ratio:.1f} % of the mass "
                f"of {name}.",
                "Find the missing or doubled mass.",
                name,
                "closure",
            )


def _of_references(library: Library) -> Iterator[Problem]:
    sources = {source.name for source in library.sources}
    materials = library.material_names
    named = set(library.packs.columns["source"].tolist()) - {""}
    if sources:
        for source in sorted(named - sources):
            yield _warning(
                f"The source {source!r} is named by a pack but not recorded.",
                "Record it, or correct the name.",
                source,
                "source",
            )
    used = {part.material for parts in library.parts.values() for part in parts}
    if materials:
        for material in sorted(used - materials - {""}):
            yield _warning(
                f"The material {material!r} is named by a part but not recorded.",
                "Record it, or correct the name.",
                material,
                "material",
            )
