"""What is unusual or amiss in a whole library."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from benchpack.errors import Problem, Severity
from benchpack.model.library import Library
from benchpack.model.pack import PACK_FIELDS, USUAL_DENSITY
from benchpack.results.boundaries import weighed_without_cells
from benchpack.results.cautions import (
    CELLS_SHARE_BAND,
    NEW_HEALTH_PCT,
    POORLY_KNOWN,
    cells_apart,
    record_cautions,
)
from benchpack.results.closure import Grade, closure_of
from benchpack.results.joint_cautions import has_joint_problems, joint_row_problems
from benchpack.results.pack_columns import cells_share, density_wh_per_kg
from benchpack.results.wording import IN_FILES


def library_problems(library: Library) -> list[Problem]:
    """Give the warnings about all packs, parts, joints and references between records.

    Parameters
    ----------
    library : Library
        The records.
    """
    found: list[Problem] = []
    packs = library.packs
    for row in np.flatnonzero(doubtful_packs(library)).tolist():
        found.extend(record_cautions(library, packs[row], IN_FILES))
    found.extend(joint_row_problems(library))
    found.extend(_of_references(library))
    return found


def _warning(what: str, remedy: str, record: str, column: str) -> Problem:
    return Problem(
        what, remedy, record=record, column=column, severity=Severity.WARNING
    )


def doubtful_packs(library: Library) -> NDArray[np.bool_]:
    """Tell which packs draw a caution of their own, shape (n,).

    Parameters
    ----------
    library : Library
        The records.
    """
    packs = library.packs
    doubtful = np.zeros(len(packs), dtype=bool)
    for field in PACK_FIELDS:
        low, high = field.plausible
        if field.is_numeric and (low, high) != (-math.inf, math.inf):
            column = packs.columns[field.name]
            doubtful |= (column < low) | (column > high)
    density, share = density_wh_per_kg(packs), cells_share(packs)
    doubtful |= (density < USUAL_DENSITY[0]) | (density > USUAL_DENSITY[1])
    doubtful |= (share < CELLS_SHARE_BAND[0]) | (share > CELLS_SHARE_BAND[1])
    doubtful |= packs.columns["state_of_health_pct"] < NEW_HEALTH_PCT
    for word in POORLY_KNOWN:
        doubtful |= np.asarray(packs.columns["mass_known_by"] == str(word), dtype=bool)
    boundaries = packs.columns["boundary"].tolist()
    different = {id(boundary): boundary for boundary in boundaries}
    lacking = {key for key, one in different.items() if weighed_without_cells(one)}
    if lacking:
        doubtful |= np.array([id(boundary) in lacking for boundary in boundaries])
    for name in _recorded(library):
        closure, row = closure_of(library, name), packs.position(name)
        cells_kg = float(packs.columns["cells_mass_kg"][row])
        if (
            closure.grade is Grade.FAIL
            or closure.assumed_kg > 0
            or cells_apart(cells_kg, closure)
            or has_joint_problems(library, name)
        ):
            doubtful[row] = True
    return doubtful


def _recorded(library: Library) -> list[str]:
    names = dict.fromkeys((*library.parts, *library.joints))
    return [name for name in names if library.packs.has(name)]


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
