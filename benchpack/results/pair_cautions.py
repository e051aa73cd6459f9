"""What a reader has to know about the comparison of two packs."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import combinations

from benchpack.errors import Problem, Severity
from benchpack.model.pack import Pack
from benchpack.model.words import Basis, EnergyBasis, KnownBy
from benchpack.results.boundaries import BoundaryMatch
from benchpack.results.comparison import Comparison
from benchpack.results.wording import ON_SCREEN, Wording, listed

NOTHING_KG = 0.05
"""Below this a gap shows as 0.0 kg and counts as none."""
_YEARS_APART = 4
_VOLTAGES_APART = 1.5
_DENSITIES_APART = 1.9
"""A pound read as a kilogram makes a density 2.2 times too small."""


def caution(what: str, remedy: str, record: str, column: str = "") -> Problem:
    """Give a caution about one column of one record."""
    return Problem(
        what, remedy, record=record, column=column, severity=Severity.WARNING
    )


def signs_turn(comparison: Comparison, place: int) -> tuple[Basis, Basis] | None:
    """Give two bases on which the gap has opposite signs.

    Parameters
    ----------
    comparison : Comparison
        The gaps.
    place : int
        Place of the reference in it.

    Returns
    -------
    tuple of Basis or None
        As weighed, at equal energy or the basis counted on; None where the signs
        agree. A gap that shows as zero has no sign.
    """
    bases = dict.fromkeys((Basis.AS_WEIGHED, Basis.EQUAL_ENERGY, comparison.basis))
    signs = {}
    for basis in bases:
        gap_kg = float(comparison.by_basis(basis)[place])
        if abs(gap_kg) >= NOTHING_KG:
            signs[basis] = gap_kg > 0
    for one, other in combinations(signs, 2):
        if signs[one] != signs[other]:
            return one, other
    return None


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
    if not abs(weighed - equal) >= NOTHING_KG:
        return False
    return abs(weighed - equal) > 0.5 * max(abs(weighed), abs(equal))


def pair_cautions(
    comparison: Comparison, place: int, reference: Pack, wording: Wording = ON_SCREEN
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
    wording : Wording
        How figures are written.
    """
    subject = comparison.subject
    yield from _energy_basis(subject, reference)
    if signs_turn(comparison, place) or bases_disagree(comparison, place):
        yield _bases(comparison, place, reference, wording)
    yield from _boundary(subject, reference, comparison.boundary(place), wording)
    yield from _densities(comparison, place, reference, wording)
    yield from _range(comparison, place, reference, wording)
    yield from _context(subject, reference)


def _bases(
    comparison: Comparison, place: int, reference: Pack, wording: Wording
) -> Problem:
    said = [
        f"{basis} {wording.mass(float(gaps_kg[place]), signed=True)}"
        for basis in dict.fromkeys(
            (Basis.AS_WEIGHED, Basis.EQUAL_ENERGY, comparison.basis)
        )
        if not math.isnan((gaps_kg := comparison.by_basis(basis))[place])
    ]
    return caution(
        f"The gap to {reference.name} is {listed(tuple(said))}.",
        "Say which one is meant whenever a saving is named.",
        reference.name,
        "basis",
    )


def _energy_basis(subject: Pack, reference: Pack) -> Iterator[Problem]:
    bases = {subject.energy_basis, reference.energy_basis}
    unstated = [
        pack.name
        for pack in (subject, reference)
        if pack.energy_basis is EnergyBasis.UNKNOWN
    ]
    if unstated:
        yield caution(
            f"Whether the energy of {' and '.join(unstated)} is gross or usable is "
            "not recorded; the two differ by 3 to 10 per cent.",
            "Fill in the energy basis.",
            unstated[0],
            "energy basis",
        )
    elif len(bases) > 1:
        yield caution(
            f"The energy of {subject.name} is {subject.energy_basis}, that of "
            f"{reference.name} {reference.energy_basis}: not compared.",
            "Record both on one basis.",
            reference.name,
            "energy basis",
        )


def _boundary(
    subject: Pack, reference: Pack, match: BoundaryMatch, wording: Wording
) -> Iterator[Problem]:
    unrecorded = [p.name for p in (subject, reference) if not p.boundary.is_known]
    for item in match.taken_out:
        yield caution(
            f"{wording.mass(item.mass_kg)} of {item.item} was on the scale only with "
            f"{item.pack} and is taken out.",
            "Nothing to do if that mass is right.",
            item.pack,
            "boundary",
        )
    if match.unlike:
        yield caution(
            f"{subject.name} and {reference.name} were not weighed alike: "
            f"{listed(match.unlike)}.",
            "Record the mass of these items so that they can be taken out.",
            reference.name,
            "boundary",
        )
    if unrecorded:
        yield caution(
            f"What was on the scale with {' and '.join(unrecorded)} is not recorded.",
            "Fill in the boundary, the bottom shield, coolant and charger above all.",
            unrecorded[-1],
            "boundary",
        )
    elif match.unsure:
        yield caution(
            f"Whether {listed(match.unsure, most=3)} "
            f"{'was' if len(match.unsure) == 1 else 'were'} on the scale is not "
            f"recorded for both {subject.name} and {reference.name}.",
            "Fill in the boundary of both packs.",
            reference.name,
            "boundary",
        )


def _densities(
    comparison: Comparison, place: int, reference: Pack, wording: Wording
) -> Iterator[Problem]:
    subject = comparison.subject
    one = subject.energy_kwh / subject.mass_kg
    other = reference.energy_kwh / reference.mass_kg
    if not comparison.comparable[place] or min(one, other) <= 0:
        return
    factor = max(one, other) / min(one, other)
    if factor > _DENSITIES_APART:
        names = (subject.name, reference.name)
        denser, lighter = names if one > other else names[::-1]
        yield caution(
            f"{denser} is {wording.number(factor, decimals=1)} times as dense as "
            f"{lighter}.",
            "Check both energies and masses; a pound read as a kilogram does this.",
            reference.name,
            "mass",
        )


def _range(
    comparison: Comparison, place: int, reference: Pack, wording: Wording
) -> Iterator[Problem]:
    gap_kg, u_kg = comparison.gap_kg[place], comparison.gap_u_kg[place]
    to_trend = comparison.basis is Basis.TREND
    unstated = [
        pack.name
        for pack in (comparison.subject, *(() if to_trend else (reference,)))
        if pack.mass_known_by is KnownBy.UNSTATED and pack.mass_tolerance_kg is None
    ]
    if unstated:
        yield caution(
            f"How the mass of {' and '.join(unstated)} is known is not recorded, so "
            "the gap has no range.",
            "Fill in how it is known, or a tolerance.",
            unstated[-1],
            "mass known by",
        )
    if math.isnan(gap_kg) or math.isnan(u_kg):
        return
    half_kg = comparison.uncertain.coverage_factor(place) * float(u_kg)
    if half_kg > abs(gap_kg) > NOTHING_KG:
        low, high = (wording.mass(gap_kg + s * half_kg, signed=True) for s in (-1, 1))
        named = "the trend" if to_trend else reference.name
        yield caution(
            f"The range of the gap to {named}, {low} to {high}, includes zero: which "
            "is the heavier one is not sure.",
            "Promise no saving from the trend alone."
            if to_trend
            else "Know masses and energies better before a saving is promised.",
            reference.name,
            "mass +-",
        )
    exact = [
        pack.name
        for pack in (comparison.subject, reference)
        if pack.energy_tolerance_kwh is None
    ]
    if exact and comparison.basis not in (Basis.AS_WEIGHED, Basis.TREND):
        yield caution(
            f"The energy of {' and '.join(exact)} has no tolerance and counts as "
            "exact in the range of the gap.",
            "Fill in the tolerance of the energy.",
            exact[-1],
            "energy +-",
        )


def _context(subject: Pack, reference: Pack) -> Iterator[Problem]:
    years = (subject.year, reference.year)
    if years[0] and years[1] and abs(years[0] - years[1]) >= _YEARS_APART:
        yield caution(
            f"{subject.name} is of {years[0]}, {reference.name} of {years[1]}.",
            "Part of the gap may be progress between the years.",
            reference.name,
            "year",
        )
    one, other = subject.voltage_v or 0.0, reference.voltage_v or 0.0
    if max(one, other) > _VOLTAGES_APART * min(one, other) > 0:
        yield caution(
            f"{subject.name} has {one:.0f} V, {reference.name} {other:.0f} V.",
            "Part of the gap may be what the voltage asks of the conductors.",
            reference.name,
            "voltage",
        )
    kinds = [pack.chemistry.split()[:1] for pack in (subject, reference)]
    folded = [[word.casefold() for word in kind] for kind in kinds]
    if all(folded) and folded[0] != folded[1]:
        yield caution(
            f"{subject.name} has {kinds[0][0]} cells, {reference.name} {kinds[1][0]}.",
            "Part of the gap is the cells'; count the structure only as well.",
            reference.name,
            "chemistry",
        )
