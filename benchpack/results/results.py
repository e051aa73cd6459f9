"""Everything that is shown for one study, recomputed in one pass."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from benchpack.calc.worth import value_per_pack
from benchpack.errors import DataError, Problem
from benchpack.model.assumptions import ASSUMPTION_NAMES
from benchpack.model.library import Library
from benchpack.model.study import JOINING_ASSUMPTIONS, Study
from benchpack.results.cautions import cautions_for
from benchpack.results.closure import Closure, closure_of
from benchpack.results.comparison import Comparison, compare
from benchpack.results.money_cautions import money_cautions
from benchpack.results.subsystems import SubsystemSplit, split_by_subsystem
from benchpack.results.uncounted import why_no_gap

FloatArray = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Valuation:
    """What the gaps are worth, per pack.

    Parameters
    ----------
    low, likely, high : ndarray, shape (n,)
        Money per pack at the low, likely and high worth per kilogram.
    """

    low: FloatArray
    likely: FloatArray
    high: FloatArray


@dataclass(frozen=True, slots=True, eq=False)
class Results:
    """What the pages, the headline and the files show.

    Parameters
    ----------
    library : Library
        The records the results come from.
    study : Study
        The study they answer.
    comparison : Comparison or None
        The gaps, None when there is nothing to compare.
    valuation : Valuation or None
        What they are worth.
    place : int or None
        Place of the study's reference in the comparison.
    split : SubsystemSplit or None
        The gap to the reference by subsystem.
    cautions : tuple of Problem
        What a reader has to know before trusting the figures.
    missing : Problem or None
        Why there is no comparison, or no gap to the reference.
    """

    library: Library
    study: Study
    comparison: Comparison | None
    valuation: Valuation | None
    place: int | None
    split: SubsystemSplit | None
    cautions: tuple[Problem, ...]
    missing: Problem | None

    @property
    def gap_kg(self) -> float:
        """Gap to the reference on the study's basis, kg, NaN where there is none."""
        if self.comparison is None or self.place is None:
            return float("nan")
        return float(self.comparison.gap_kg[self.place])

    def gap_range_kg(self) -> tuple[float, float]:
        """Give the gap to the reference less and plus its expanded uncertainty, kg."""
        if self.comparison is None or self.place is None:
            return float("nan"), float("nan")
        factor = self.comparison.uncertain.coverage_factor(self.place)
        half = factor * float(self.comparison.gap_u_kg[self.place])
        return self.gap_kg - half, self.gap_kg + half

    def closure(self, pack: str) -> Closure:
        """Give the closure of one pack.

        Raises
        ------
        KeyError
            When the library has no such pack.
        """
        return closure_of(self.library, pack)


_NO_GAP_ASKS = (
    *ASSUMPTION_NAMES,
    *(name for name, *_ in JOINING_ASSUMPTIONS),
    *("currency", "target_kg", "tooling_budget", "name"),
)
"""Attributes of a study that no gap changes with."""


def compute(
    library: Library,
    study: Study,
    *,
    previous: Results | None = None,
    references: Sequence[str] | None = None,
) -> Results:
    """Compute everything that a study shows.

    Parameters
    ----------
    library : Library
        The records.
    study : Study
        The question.
    previous : Results, optional
        Results of the state before; what cannot have changed is taken over, so that
        a tick of the worth costs one multiplication per pack.
    references : sequence of str, optional
        Compare with just these, the trend still laid through all peers.

    Returns
    -------
    Results
        Never raises for data: what cannot be shown is said in `Results.missing`.
    """
    if previous is not None and _same_gaps(previous, library, study):
        kept = replace(previous, library=library, study=study)
        return replace(
            kept,
            valuation=_value(kept.comparison, study),
            cautions=_cautions_again(previous, library, study),
        )
    try:
        comparison = compare(library, study, references=references)
    except DataError as error:
        return _without_comparison(library, study, error.problems[0])
    place = comparison.place(study.reference)
    split = split_by_subsystem(library, comparison, place)
    return Results(
        library=library,
        study=study,
        comparison=comparison,
        valuation=_value(comparison, study),
        place=place,
        split=split,
        cautions=(
            *money_cautions(library, study),
            *cautions_for(library, study, comparison, place),
        ),
        missing=_missing(comparison, study, place),
    )


def _same_gaps(previous: Results, library: Library, study: Study) -> bool:
    old = previous.library
    same_records = (
        old.packs is library.packs
        and old.parts is library.parts
        and old.joints is library.joints
    )
    if not same_records:
        return False
    taken_over = {name: getattr(study, name) for name in _NO_GAP_ASKS}
    return replace(previous.study, **taken_over) == study


def _cautions_again(
    previous: Results, library: Library, study: Study
) -> tuple[Problem, ...]:
    """Give the cautions where only those about the money can have changed."""
    before = money_cautions(previous.library, previous.study)
    now = money_cautions(library, study)
    if now == before:
        return previous.cautions
    return (*now, *(one for one in previous.cautions if one not in before))


def _value(comparison: Comparison | None, study: Study) -> Valuation | None:
    if comparison is None:
        return None
    low, likely, high = (
        value_per_pack(comparison.gap_kg, worth, share_captured=study.share_captured)
        for worth in study.worth_per_kg
    )
    return Valuation(low, likely, high)


def _without_comparison(library: Library, study: Study, problem: Problem) -> Results:
    return Results(
        library=library,
        study=study,
        comparison=None,
        valuation=None,
        place=None,
        split=None,
        cautions=money_cautions(library, study),
        missing=problem,
    )


def _missing(comparison: Comparison, study: Study, place: int | None) -> Problem | None:
    """Say why there is no gap to the reference on the basis, or None if there is."""
    if place is not None:
        return why_no_gap(comparison, place, basis=study.basis)
    what = "No reference is chosen."
    if study.reference == study.subject:
        what = f"{study.subject} is measured against itself."
    elif study.reference:
        what = f"There is no pack {study.reference!r} to be the reference."
    return Problem(what, "Choose a pack other than the subject.", value=study.reference)
