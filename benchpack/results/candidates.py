"""Candidate materials for one part: what each weighs, costs, bears and is checked for.

Each is looked at as a change of that part alone, as it stands today. Masses are those
of the ledger: by design values, with the least wall that can be made. Add-backs,
tooling and joints that go are in the proposal, not here.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from benchpack.errors import DataError, Problem
from benchpack.model.change import Change, ChangeKind
from benchpack.model.library import Library
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.results.candidate_bench import Bench, material_range, or_nan
from benchpack.results.candidate_notes import candidate_notes
from benchpack.results.candidate_record import PRICE_SHARE, Candidate, Candidates
from benchpack.results.change_checks import HeatCase
from benchpack.results.change_checks_state import Subject
from benchpack.results.ledger_today import Today, folded, today_of

__all__ = [
    "PRICE_SHARE",
    "Candidate",
    "Candidates",
    "Shape",
    "compare_candidates",
    "usual_candidates",
]

_NAME = "candidate"
_KINDS = ("metal", "thermoplastic", "thermoset", "composite")
_NAN = math.nan


@dataclass(frozen=True, slots=True)
class Shape:
    """What ribs and shape make of the part in a new material; as of a change.

    Parameters
    ----------
    stiffness, strength : float
        How much stiffer and stronger it is than flat.
    rib_allowance : float
        Mass of ribs over that of the plain wall.
    wall_mm : float or None
        Present wall, where the part has none recorded.
    """

    stiffness: float = 1.0
    strength: float = 1.0
    rib_allowance: float = 0.0
    wall_mm: float | None = None


def usual_candidates(library: Library) -> tuple[str, ...]:
    """Give the materials of a library that parts could be made of.

    Parameters
    ----------
    library : Library
        The records.

    Returns
    -------
    tuple of str
        Metals, thermoplastics, thermosets and composites with density, modulus,
        strength and least wall.
    """
    return tuple(
        material.name
        for material in library.materials
        if any(kind in material.kind.casefold() for kind in _KINDS)
        and None
        not in (
            material.density_kg_m3,
            material.modulus_gpa,
            material.strength_mpa,
            material.minimum_wall_mm,
        )
    )


def compare_candidates(
    library: Library,
    study: Study,
    part: str,
    *,
    governs: Sequence[str] = (),
    materials: Sequence[str] = (),
    shape: Shape | None = None,
    heat: HeatCase | None = None,
    today: Today | None = None,
) -> Candidates:
    """Compare candidate materials for one part of the subject.

    Parameters
    ----------
    library : Library
        The records.
    study : Study
        Names the subject; sets currency, worth and how figures are written.
    part : str
        Name of the part.
    governs : sequence of str
        What sizes it; empty for what is recorded of it.
    materials : sequence of str
        Names of the candidates; empty for `usual_candidates`.
    shape : Shape, optional
        Ribs and shape of the new part.
    heat : HeatCase, optional
        What heat paths are checked with.
    today : Today, optional
        The subject as it was taken up before.

    Returns
    -------
    Candidates
        The part as it is, and one row for each candidate in the order given; a row
        says so where it cannot be computed.

    Raises
    ------
    DataError
        When the subject has no such part.
    KeyError
        When the library has no such pack.
    """
    found = _part(library, study, part)
    # A carry-over part is compared all the same, and said to be one.
    free = replace(found, carry_over=False)
    records = _with_part(library, study, found, free)
    start = today_of(records, study, previous=today)
    words = tuple(governs) or tuple(filter(None, (found.governs,)))
    own = folded(found.material)
    usual = (name for name in usual_candidates(library) if folded(name) != own)
    names = tuple(materials) or tuple(usual)
    given = shape or Shape()
    bench = Bench(Subject(records, study, start.inventory), start, heat or HeatCase())
    rows = [
        bench.row(
            Change(
                study.name,
                _NAME,
                ChangeKind.SUBSTITUTE,
                parts=(found.name,),
                material=name,
                governs=words,
                wall_mm=given.wall_mm,
                stiffness_shape=given.stiffness,
                strength_shape=given.strength,
                rib_allowance=given.rib_allowance,
            )
        )
        for name in names
    ]
    row = _as_it_is(found, bench.material(found.material))
    compared = Candidates(
        pack=study.subject,
        part=found,
        governs=words,
        currency=study.currency,
        today=_with_today(row, rows),
        rows=tuple(rows),
    )
    return replace(compared, notes=candidate_notes(compared, bench.subject.materials))


def _part(library: Library, study: Study, name: str) -> Part:
    for part in library.parts_of(study.subject):
        if folded(part.name) == folded(name):
            return part
    raise DataError(
        Problem(f"{study.subject} has no part {name!r}.", "Choose one of its parts.")
    )


def _with_part(library: Library, study: Study, part: Part, free: Part) -> Library:
    if part == free:
        return library
    parts = library.parts_of(study.subject)
    changed = tuple(free if one is part else one for one in parts)
    return replace(library, parts={**library.parts, study.subject: changed})


def _as_it_is(part: Part, material: Material | None) -> Candidate:
    mass = or_nan(part.mass_kg)
    low, likely, high = material_range((mass, mass, mass), material)
    return Candidate(
        part.material,
        material=material,
        is_today=True,
        mass_kg=mass,
        mass_low_kg=mass,
        mass_high_kg=mass,
        sheet_mass_kg=mass,
        wall_mm=or_nan(part.thickness_mm),
        cost=likely,
        cost_low=low,
        cost_high=high,
    )


def _with_today(row: Candidate, rows: Sequence[Candidate]) -> Candidate:
    """Give today's row with what the candidates' checks found of today."""
    known = next((one for one in rows if one.deflection_kind), None)
    heat = next((one.heat_today_k for one in rows if one.heat_today_k > 0), _NAN)
    if known is None:
        return replace(row, heat_k=heat)
    return replace(
        row,
        deflection_mm=known.deflection_today_mm,
        deflection_today_mm=known.deflection_today_mm,
        deflection_kind=known.deflection_kind,
        heat_k=heat,
        heat_today_k=heat,
    )
