"""The savings target: what it is worth, how likely it is, what it hangs on."""

from __future__ import annotations

import math
from dataclasses import dataclass

from benchpack.model.ranges import Range
from benchpack.results.proposal import ProposalResults
from benchpack.results.results import Results

STRETCH = 0.8
"""Share of the trials below the stretch target (common practice, no source)."""


@dataclass(frozen=True, slots=True, eq=False)
class Target:
    """What a target comes to.

    Parameters
    ----------
    target_kg : float
        The saving that is promised, NaN where none is.
    value : Range or None
        Its worth per pack.
    share_of_gap : float
        Its share of the gap, NaN where there is no gap.
    share_range : Range or None
        The same with the gap at its ends, without width where these are not known;
        None where there is no gap, or its range goes down to zero.
    proposed_kg, expected_kg : float
        Likely saving of the proposal, and by the chances of release; NaN without one.
    left_kg : float
        Gap still open after the proposal, NaN where there is none.
    left_range : Range or None
        The same with the mass saved at its ends, and the gap where its range is known;
        None without a gap or a proposal.
    short_kg : float
        By how much the proposal's likely saving falls short; negative beyond it.
    needed : tuple of (str, float)
        Changes without which the likely saving misses the target, with their kg, the
        greatest first; none where it is missed with all of them.
    spare : tuple of (str, float)
        The other changes that save mass, likewise.
    least_worth_per_kg : float
        Worth from which the proposal pays, NaN where no worth does.
    """

    target_kg: float
    value: Range | None
    share_of_gap: float
    share_range: Range | None
    proposed_kg: float
    expected_kg: float
    left_kg: float
    left_range: Range | None
    short_kg: float
    needed: tuple[tuple[str, float], ...]
    spare: tuple[tuple[str, float], ...]
    least_worth_per_kg: float


def target_of(gap: Results, proposal: ProposalResults | None) -> Target:
    """Give what the target of a study comes to.

    Parameters
    ----------
    gap : Results
        The gap, with the study.
    proposal : ProposalResults or None
        Its proposal; None where it has none.
    """
    study, gap_kg = gap.study, gap.gap_kg
    target = math.nan if study.target_kg is None else study.target_kg
    value = None
    if study.target_kg is not None:
        value = Range(*(worth * study.target_kg for worth in study.worth_per_kg))
    share = target / gap_kg if gap_kg > 0 else math.nan
    share_range = _share_range(gap, target)
    if proposal is None or not proposal.effects:
        return Target(
            target_kg=target,
            value=value,
            share_of_gap=share,
            share_range=share_range,
            proposed_kg=math.nan,
            expected_kg=math.nan,
            left_kg=math.nan,
            left_range=None,
            short_kg=math.nan,
            needed=(),
            spare=(),
            least_worth_per_kg=math.nan,
        )
    totals = proposal.totals
    saved = totals.saved_kg.likely
    kept = sorted(
        ((one.name, one.saved_kg.likely) for one in proposal.effects),
        key=lambda found: -found[1],
    )
    reached = saved >= target
    needed = tuple(one for one in kept if reached and saved - one[1] < target)
    spare = tuple(one for one in kept if one not in needed and one[1] > 0)
    money = totals.money + totals.tooling_per_pack + totals.validation_per_pack
    least = max(0.0, money.likely / saved) if saved > 0 else math.nan
    return Target(
        target_kg=target,
        value=value,
        share_of_gap=share,
        share_range=share_range,
        proposed_kg=saved,
        expected_kg=totals.expected_kg,
        left_kg=totals.gap_left_kg,
        left_range=_left_range(gap, totals.saved_kg),
        short_kg=target - saved,
        needed=needed,
        spare=spare,
        least_worth_per_kg=least,
    )


def gap_range(gap: Results) -> Range | None:
    """Give the gap with its ends, alone where these are not known.

    Parameters
    ----------
    gap : Results
        The gap.

    Returns
    -------
    Range or None
        None where there is no gap.
    """
    if not math.isfinite(gap.gap_kg):
        return None
    low, high = gap.gap_range_kg()
    if math.isnan(low):
        return Range.exactly(gap.gap_kg)
    return Range(low, gap.gap_kg, high)


def _share_range(gap: Results, target_kg: float) -> Range | None:
    found = gap_range(gap)
    if found is None or math.isnan(target_kg) or not found.low > 0:
        return None
    return Range(*(target_kg / end for end in reversed(found.ends)))


def _left_range(gap: Results, saved_kg: Range) -> Range | None:
    found = gap_range(gap)
    return None if found is None else found - saved_kg
