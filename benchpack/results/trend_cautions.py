"""What a reader has to know about the trend that a gap is taken to."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from benchpack.errors import Problem
from benchpack.model.library import Library
from benchpack.model.words import Basis
from benchpack.results.boundaries import match_boundaries
from benchpack.results.comparison import Comparison
from benchpack.results.pair_cautions import caution
from benchpack.results.wording import ON_SCREEN, Wording, listed

FEW_PEERS = 6


def trend_cautions(
    library: Library, comparison: Comparison, wording: Wording = ON_SCREEN
) -> Iterator[Problem]:
    """Give the cautions about the trend, none on any other basis.

    Parameters
    ----------
    library : Library
        The records.
    comparison : Comparison
        The gaps.
    wording : Wording
        How figures are written.
    """
    trend = comparison.trend
    if comparison.basis is not Basis.TREND or trend is None:
        return
    if trend.n < FEW_PEERS:
        yield caution(
            f"The trend rests on {trend.n} peers only.",
            f"Compare at least {FEW_PEERS} packs.",
            "",
            "trend",
        )
    subject = comparison.subject
    low_kwh, high_kwh = trend.least_energy_kwh, trend.greatest_energy_kwh
    if not low_kwh <= subject.energy_kwh <= high_kwh:
        span = f"{wording.energy(low_kwh)} to {wording.energy(high_kwh)}"
        yield caution(
            f"The {wording.energy(subject.energy_kwh)} of {subject.name} lie outside "
            f"the {span} of its peers.",
            "Take the gap to the trend as a guess.",
            subject.name,
            "energy",
        )
    columns = library.packs.columns
    bases = Counter(columns["energy_basis"][comparison.trend_rows].tolist())
    if len(bases) > 1:
        counted = tuple(f"{number} {basis}" for basis, number in bases.items())
        yield caution(
            f"The energies behind the trend are not all on one basis: "
            f"{listed(counted)}.",
            "Record them on one basis, or choose the peers.",
            "",
            "energy basis",
        )
    unlike = _weighed_unlike(library, comparison)
    if unlike:
        yield caution(
            f"The trend is laid through masses as weighed; {unlike} of {trend.n} peers "
            f"{'was' if unlike == 1 else 'were'} not weighed like {subject.name}.",
            "Choose peers weighed on the same boundary.",
            subject.name,
            "boundary",
        )


def _weighed_unlike(library: Library, comparison: Comparison) -> int:
    """Count the peers of the trend that hold or lack something the subject does not."""
    boundaries = library.packs.columns["boundary"][comparison.trend_rows].tolist()
    subject = ("", comparison.subject.boundary, ())
    counts = Counter(map(id, boundaries))
    unlike = 0
    for key, boundary in {id(one): one for one in boundaries}.items():
        match = match_boundaries(subject, ("", boundary, ()))
        if match.taken_out or match.unlike:
            unlike += counts[key]
    return unlike
