"""What a reader has to know before trusting a comparison."""

from __future__ import annotations

from collections.abc import Iterator

from benchpack.calc.densities import cell_to_pack_ratio
from benchpack.errors import Problem, Severity
from benchpack.model.library import Library
from benchpack.model.pack import Pack, pack_problems
from benchpack.model.study import Study
from benchpack.model.words import Basis, KnownBy, Subsystem
from benchpack.results.boundaries import weighed_without_cells
from benchpack.results.closure import Closure, Grade, closure_of
from benchpack.results.comparison import Comparison
from benchpack.results.joint_cautions import joint_cautions
from benchpack.results.pair_cautions import caution, pair_cautions
from benchpack.results.trend_cautions import trend_cautions
from benchpack.results.uncounted import why_no_gap
from benchpack.results.wording import IN_FILES, ON_SCREEN, Wording
from benchpack.units.formatting import NumberStyle

CELLS_SHARE_BAND = (0.50, 0.88)
"""Usual cell-to-pack mass ratios (common practice, no source)."""
NEW_HEALTH_PCT = 99.0
"""State of health from which a pack counts as new, per cent."""
POORLY_KNOWN = {
    KnownBy.LITERATURE: "taken from the literature",
    KnownBy.ESTIMATE: "an estimate",
    KnownBy.ASSUMED: "only assumed to close a balance and may never enter a saving",
}
"""Ways to know a mass that a customer will not accept, in words."""
CELLS_APART = 0.01
"""Difference between a pack's mass of cells and its parts' that is a fault in the
record (common practice, no source)."""


def cautions_for(
    library: Library, study: Study, comparison: Comparison, place: int | None
) -> tuple[Problem, ...]:
    """Give the cautions for the subject and its reference, gravest first.

    Parameters
    ----------
    library : Library
        The records.
    study : Study
        Sets how figures are written.
    comparison : Comparison
        The gaps.
    place : int or None
        Place of the reference in the comparison.
    """
    style = NumberStyle(study.decimal_mark, study.mass_unit)
    wording = Wording(style)
    subject = comparison.subject
    found = [*pack_cautions(library, subject, wording)]
    if place is not None:
        reference = library.packs[int(comparison.rows[place])]
        found = [
            *pair_cautions(comparison, place, reference, wording),
            *found,
            *pack_cautions(library, reference, wording),
        ]
    found.extend(trend_cautions(library, comparison, wording))
    return tuple(dict.fromkeys(found))


def pack_cautions(
    library: Library, pack: Pack, wording: Wording = ON_SCREEN
) -> Iterator[Problem]:
    """Give the cautions that come with one pack, whatever it is compared with.

    Parameters
    ----------
    library : Library
        The records.
    pack : Pack
        The pack.
    wording : Wording
        How figures are written.
    """
    yield from record_cautions(library, pack, wording)
    yield from joint_cautions(library, pack.name)


def record_cautions(
    library: Library, pack: Pack, wording: Wording = ON_SCREEN
) -> Iterator[Problem]:
    """Give the cautions about a pack and its balance, its joints row by row left out.

    Parameters
    ----------
    library, pack, wording
        As for `pack_cautions`.
    """
    yield from (p for p in pack_problems(pack) if p.severity is Severity.WARNING)
    if (
        pack.state_of_health_pct is not None
        and pack.state_of_health_pct < NEW_HEALTH_PCT
    ):
        health = wording.share(pack.state_of_health_pct / 100)
        yield caution(
            f"{pack.name} was measured at {health} state of "
            "health: its energy and density are understated.",
            "Use the energy of the new pack.",
            pack.name,
            "state of health",
        )
    if pack.mass_known_by in POORLY_KNOWN:
        yield caution(
            f"The mass of {pack.name} is {POORLY_KNOWN[pack.mass_known_by]}.",
            "Weigh it.",
            pack.name,
            "mass known by",
        )
    if weighed_without_cells(pack.boundary):
        yield caution(
            f"{pack.name} was weighed without its cells: its density means nothing.",
            "Weigh it with them.",
            pack.name,
            "boundary",
        )
    yield from _cells_share(pack, wording)
    closure = closure_of(library, pack.name)
    yield from _cells_of_parts(pack, closure, wording)
    yield from _closure(closure, wording)


def _cells_share(pack: Pack, wording: Wording) -> Iterator[Problem]:
    if pack.cells_mass_kg is None:
        return
    share = float(cell_to_pack_ratio(pack.cells_mass_kg, pack.mass_kg))
    low, high = CELLS_SHARE_BAND
    if not low <= share <= high:
        yield caution(
            f"Cells are {wording.share(share)} of the mass of {pack.name}, outside the "
            f"usual {wording.share(low)} to {wording.share(high)}.",
            "Check the mass of the cells and of the pack.",
            pack.name,
            "cells mass",
        )


def cells_apart(pack_cells_kg: float, closure: Closure) -> bool:
    """Tell whether a pack's mass of cells is not that of its parts.

    Parameters
    ----------
    pack_cells_kg : float
        The mass of cells in the record of the pack, kg.
    closure : Closure
        The parts and joints of the pack.
    """
    parts_kg = closure.masses_kg[Subsystem.CELLS]
    return parts_kg > 0 and abs(parts_kg - pack_cells_kg) > CELLS_APART * parts_kg


def _cells_of_parts(
    pack: Pack, closure: Closure, wording: Wording
) -> Iterator[Problem]:
    if pack.cells_mass_kg is not None and cells_apart(pack.cells_mass_kg, closure):
        parts_kg = closure.masses_kg[Subsystem.CELLS]
        yield caution(
            f"The cells of {pack.name} are recorded with "
            f"{wording.mass(pack.cells_mass_kg)}, its parts in subsystem cells with "
            f"{wording.mass(parts_kg)}.",
            "Correct the one that is wrong.",
            pack.name,
            "cells mass",
        )


def _closure(closure: Closure, wording: Wording) -> Iterator[Problem]:
    if closure.grade is Grade.FAIL:
        yield caution(
            f"The parts and joints of {closure.pack} come to "
            f"{wording.share(closure.ratio, decimals=1)} of its mass.",
            "Find the missing or doubled mass before the split is used.",
            closure.pack,
            "closure",
        )
    if closure.assumed_kg > 0:
        yield caution(
            f"{wording.mass(closure.assumed_kg)} of {closure.pack} is only assumed to "
            "close the balance.",
            "It may never enter a saving.",
            closure.pack,
            "known by",
        )


def row_warnings(library: Library, comparison: Comparison) -> Iterator[str]:
    """Give the cautions about each reference as one line of text, as files hold it.

    Parameters
    ----------
    library : Library
        The records.
    comparison : Comparison
        The gaps.

    Yields
    ------
    str
        One line per place of the comparison; it also says why a figure is empty.
    """
    subject = [*pack_cautions(library, comparison.subject, IN_FILES)]
    trend = [*trend_cautions(library, comparison, IN_FILES)]
    for place in range(len(comparison)):
        reference = library.packs[int(comparison.rows[place])]
        found = [
            *pair_cautions(comparison, place, reference, IN_FILES),
            *_empty(comparison, place),
            *subject,
            *pack_cautions(library, reference, IN_FILES),
            *trend,
        ]
        yield " ".join(dict.fromkeys(map(_named, found)))


def _named(problem: Problem) -> str:
    """Give what is wrong, led by its record where the sentence does not name it."""
    if not problem.record or problem.record in problem.what:
        return problem.what
    return f"{problem.record}: {problem.what}"


def _empty(comparison: Comparison, place: int) -> Iterator[Problem]:
    """Say why gaps are not there; unlike energies are said with the pair."""
    for basis in Basis:
        reason = why_no_gap(comparison, place, basis=basis)
        if reason is not None and reason.column != "energy basis":
            yield reason
