"""What a reader has to know before trusting a comparison."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np

from benchpack.calc.densities import cell_to_pack_ratio
from benchpack.errors import Problem, Severity
from benchpack.model.library import Library
from benchpack.model.pack import Pack, pack_problems
from benchpack.model.study import Study
from benchpack.model.words import Basis, EnergyBasis, KnownBy
from benchpack.results.closure import Grade, closure_of
from benchpack.results.comparison import Comparison

CELLS_SHARE_BAND = (0.50, 0.88)
"""Usual cell-to-pack mass ratios (common practice, no source)."""
_FEW_PEERS = 6
_YEARS_APART = 4
NEW_HEALTH_PCT = 99.0
"""State of health from which a pack counts as new, per cent."""
POORLY_KNOWN = (KnownBy.LITERATURE, KnownBy.ESTIMATE, KnownBy.ASSUMED)


def cautions_for(
    library: Library, study: Study, comparison: Comparison, place: int | None
) -> tuple[Problem, ...]:
    """Give the cautions for the subject and its reference, gravest first.

    Parameters
    ----------
    library : Library
        The records.
    study : Study
        The question.
    comparison : Comparison
        The gaps.
    place : int or None
        Place of the reference in the comparison.
    """
    subject = comparison.subject
    found = [*pack_cautions(library, subject), *_unstated(subject)]
    if place is not None:
        reference = library.packs[int(comparison.rows[place])]
        found = [
            *pair_cautions(comparison, place, reference),
            *found,
            *pack_cautions(library, reference),
            *_unstated(reference),
            *_context(subject, reference),
        ]
    found.extend(_of_trend(study, comparison))
    return tuple(dict.fromkeys(found))


def _caution(what: str, remedy: str, record: str, column: str = "") -> Problem:
    return Problem(
        what, remedy, record=record, column=column, severity=Severity.WARNING
    )


def pair_cautions(
    comparison: Comparison, place: int, reference: Pack
) -> Iterator[Problem]:
    """Give the cautions that come from comparing these two packs.

    Parameters
    ----------
    comparison : Comparison
        The gaps.
    place : int
        Place of the reference in it.
    reference : Pack
        The reference.
    """
    subject = comparison.subject
    yield from _energy_basis(comparison, place, reference)
    if bases_disagree(comparison, place):
        yield _caution(
            f"As weighed the gap to {reference.name} is "
            f"{comparison.as_weighed_kg[place]:+.1f} kg, at equal energy "
            f"{comparison.density_share_kg[place]:+.1f} kg.",
            "Say which one is meant whenever a saving is named.",
            reference.name,
            "basis",
        )
    match = comparison.boundary(place)
    for item in match.taken_out:
        yield _caution(
            f"{item.mass_kg:.1f} kg of {item.item} was on the scale only with "
            f"{item.pack} and is taken out.",
            "Nothing to do if that mass is right.",
            item.pack,
            "boundary",
        )
    if match.unlike:
        yield _caution(
            f"{subject.name} and {reference.name} were not weighed alike: "
            f"{', '.join(match.unlike)}.",
            "Record the mass of these items so that they can be taken out.",
            reference.name,
            "boundary",
        )
    if match.unsure:
        yield _caution(
            f"What was on the scale is not known of both {subject.name} and "
            f"{reference.name}: {_shortened(match.unsure)}.",
            "Record the boundary of both packs.",
            reference.name,
            "boundary",
        )


def bases_disagree(comparison: Comparison, place: int) -> bool:
    """Tell whether as-weighed and equal-energy gaps differ in sign or by over half.

    Parameters
    ----------
    comparison : Comparison
        The gaps.
    place : int
        Place of the reference in it.
    """
    weighed = float(comparison.as_weighed_kg[place])
    equal = float(comparison.density_share_kg[place])
    if math.isnan(weighed) or math.isnan(equal):
        return False
    return weighed * equal < 0 or abs(weighed - equal) > 0.5 * max(
        abs(weighed), abs(equal)
    )


def _shortened(items: tuple[str, ...]) -> str:
    shown = ", ".join(items[:3])
    more = len(items) - 3
    return f"{shown} and {more} more" if more > 0 else shown


def _energy_basis(
    comparison: Comparison, place: int, reference: Pack
) -> Iterator[Problem]:
    subject = comparison.subject
    if not comparison.comparable[place]:
        yield _caution(
            f"The energy of {subject.name} is {subject.energy_basis}, that of "
            f"{reference.name} {reference.energy_basis}: not compared.",
            "Record both on one basis.",
            reference.name,
            "energy basis",
        )
        return
    unstated = [
        pack.name
        for pack in (subject, reference)
        if pack.energy_basis is EnergyBasis.UNKNOWN
    ]
    if unstated:
        yield _caution(
            f"Whether the energy of {' and '.join(unstated)} is gross or usable is "
            "not recorded; the two differ by 3 to 10 per cent.",
            "Fill in the energy basis.",
            unstated[0],
            "energy basis",
        )


def pack_cautions(library: Library, pack: Pack) -> Iterator[Problem]:
    """Give the cautions that come with one pack, whatever it is compared with.

    Parameters
    ----------
    library : Library
        The records.
    pack : Pack
        The pack.
    """
    yield from (p for p in pack_problems(pack) if p.severity is Severity.WARNING)
    if (
        pack.state_of_health_pct is not None
        and pack.state_of_health_pct < NEW_HEALTH_PCT
    ):
        yield _caution(
            f"{pack.name} was measured at {pack.state_of_health_pct:.0f} % state of "
            "health: its energy and density are understated.",
            "Use the energy of the new pack.",
            pack.name,
            "state of health",
        )
    if pack.mass_known_by in POORLY_KNOWN:
        yield _caution(
            f"The mass of {pack.name} is known by {pack.mass_known_by} only.",
            "Weigh it, or state a tolerance.",
            pack.name,
            "mass known by",
        )
    yield from _cells_share(pack)
    yield from _closure(library, pack)


def _unstated(pack: Pack) -> Iterator[Problem]:
    if pack.mass_known_by is KnownBy.UNSTATED and pack.mass_tolerance_kg is None:
        yield _caution(
            f"How the mass of {pack.name} is known is not recorded, so the gap has "
            "no range.",
            "Fill in how it is known, or a tolerance.",
            pack.name,
            "mass known by",
        )


def _cells_share(pack: Pack) -> Iterator[Problem]:
    if pack.cells_mass_kg is None:
        return
    share = float(cell_to_pack_ratio(pack.cells_mass_kg, pack.mass_kg))
    low, high = CELLS_SHARE_BAND
    if not low <= share <= high:
        yield _caution(
            f"Cells are {100 * share:.0f} % of the mass of {pack.name}, outside the "
            f"usual {100 * low:.0f} to {100 * high:.0f} %.",
            "Check the mass of the cells and of the pack.",
            pack.name,
            "cells mass",
        )


def _closure(library: Library, pack: Pack) -> Iterator[Problem]:
    closure = closure_of(library, pack.name)
    if closure.grade is Grade.FAIL:
        yield _caution(
            f"The parts and joints of {pack.name} come to "
            f"{100 * closure.ratio:.1f} % of its mass.",
            "Find the missing or doubled mass before the split is used.",
            pack.name,
            "closure",
        )
    if closure.assumed_kg > 0:
        yield _caution(
            f"{closure.assumed_kg:.1f} kg of {pack.name} is only assumed to close the "
            "balance.",
            "It may never enter a saving.",
            pack.name,
            "known by",
        )


def _context(subject: Pack, reference: Pack) -> Iterator[Problem]:
    years = (subject.year, reference.year)
    if None not in years and abs((years[0] or 0) - (years[1] or 0)) >= _YEARS_APART:
        yield _caution(
            f"{subject.name} is of {years[0]}, {reference.name} of {years[1]}.",
            "Part of the gap may be progress between the years.",
            reference.name,
            "year",
        )


def _of_trend(study: Study, comparison: Comparison) -> Iterator[Problem]:
    trend = comparison.trend
    if study.basis is not Basis.TREND or trend is None:
        return
    if trend.n < _FEW_PEERS:
        yield _caution(
            f"The trend rests on {trend.n} peers only.",
            f"Compare at least {_FEW_PEERS} packs.",
            "",
            "trend",
        )
    energy_kwh = comparison.subject.energy_kwh
    if not trend.least_energy_kwh <= energy_kwh <= trend.greatest_energy_kwh:
        yield _caution(
            f"The subject's {energy_kwh:.1f} kWh lies outside the peers' "
            f"{trend.least_energy_kwh:.1f} to {trend.greatest_energy_kwh:.1f} kWh.",
            "Take the gap to the trend as a guess.",
            comparison.subject.name,
            "energy",
        )


def row_warnings(library: Library, comparison: Comparison, place: int) -> str:
    """Give the cautions about one reference as one line of text.

    Parameters
    ----------
    library : Library
        The records.
    comparison : Comparison
        The gaps.
    place : int
        Place of the reference in it.
    """
    reference = library.packs[int(comparison.rows[place])]
    found = [
        *pair_cautions(comparison, place, reference),
        *pack_cautions(library, comparison.subject),
        *_unstated(comparison.subject),
        *pack_cautions(library, reference),
        *_unstated(reference),
    ]
    if np.isnan(comparison.gap_kg[place]) and comparison.basis is Basis.TREND:
        problem = comparison.trend_problem
        found.extend([problem] if problem else [])
    return " ".join(dict.fromkeys(problem.what for problem in found))
