"""The chance of a proposal: its trials, with what is common to all changes drawn once.

Of every trial: ``saved = sum r_i (B_i - b A_i)`` with the masses before and after a
change, its release r and the common error b of estimated masses; ``value = w saved - p
sum r_i M_i - sum r_i O_i - V`` with the worth w, the price level p, money that moves
with it, other money, and the validation that is spent either way.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from benchpack.calc.change_ranges import (
    ChangeRanges,
    CommonFactors,
    MoneyRanges,
    Ranges,
)
from benchpack.calc.distributions import Distribution, range_draws
from benchpack.calc.simulation import simulate_changes
from benchpack.calc.trials import DEFAULT_TRIALS, Trials, summarise
from benchpack.model.ranges import Range
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_effect import NONE, Effect

_ROOT_OF_3 = 3.0**0.5
_WORTH_SEED = 1_000_003
"""Added to the seed for the worth, so that its stream is its own."""


@dataclass(frozen=True, slots=True)
class CommonRanges:
    """What is the same for all changes of one trial.

    Parameters
    ----------
    price_level : Range
        Factor on all money for parts and add-backs.
    mass_bias : Range
        Factor on all masses after a change: estimates err to one side, and grow.
    """

    price_level: Range
    mass_bias: Range


USUAL_COMMON = CommonRanges(
    price_level=Range(0.85, 1.0, 1.20), mass_bias=Range(0.97, 1.0, 1.08)
)
"""Usual ranges (common practice, no source)."""


@dataclass(frozen=True, slots=True, eq=False)
class ProposalChance:
    """What a proposal saves and is worth over many trials.

    Parameters
    ----------
    saved_kg : Trials
        Mass saved per pack, kg.
    value : Trials
        Net worth per pack, all costs taken off.
    target_kg : float
        The saving that is promised, NaN where none is.
    chance_of_target : float
        Share of the trials that reach it, NaN where there is none.
    chance_of_gain : float
        Share of the trials in which the proposal is worth more than it costs.
    seed : int
        Seed of the trials.
    common : CommonRanges
        What was drawn once for all changes.
    """

    saved_kg: Trials
    value: Trials
    target_kg: float
    chance_of_target: float
    chance_of_gain: float
    seed: int
    common: CommonRanges


def simulate(
    results: ProposalResults,
    *,
    trials: int = DEFAULT_TRIALS,
    seed: int = 1,
    cancelled: Callable[[], bool] | None = None,
    common: CommonRanges = USUAL_COMMON,
) -> ProposalChance | None:
    """Simulate a proposal (JCGM 101:2008); meant for another thread than the window's.

    A change is released with its chance and with those of the changes it needs; that
    it falls together with them is not drawn. What is not known counts as nothing.

    Parameters
    ----------
    results : ProposalResults
        The proposal.
    trials : int
        2 to 10,000,000.
    seed : int
        Zero or more; the same seed gives the same trials.
    cancelled : callable, optional
        Asked often whether to stop.
    common : CommonRanges
        What is drawn once for all changes.

    Returns
    -------
    ProposalChance or None
        None where no change counts.

    Raises
    ------
    CancelledError
        Once `cancelled` says so.
    """
    effects = results.effects
    if not effects:
        return None
    chances = [one.release_chance for one in effects]
    # The worth is one and the "money" kilograms: the value is then the mass saved.
    masses = simulate_changes(
        ChangeRanges(
            mass_before(effects),
            money=[MoneyRanges(mass_after(effects), moves_with_exchange=True)],
            release_chance=chances,
        ),
        CommonFactors(Ranges.exactly(1.0), exchange=as_ranges([common.mass_bias])),
        trials=trials,
        seed=seed,
        cancelled=cancelled,
    )
    money = simulate_changes(
        ChangeRanges(
            Ranges.exactly([0.0] * (len(effects) + 1)),
            money=[
                MoneyRanges(
                    as_ranges([*map(priced, effects), NONE]), moves_with_price=True
                ),
                MoneyRanges(as_ranges([*map(unpriced, effects), validation(effects)])),
            ],
            release_chance=[*chances, 1.0],
        ),
        CommonFactors(Ranges.exactly(0.0), price=as_ranges([common.price_level])),
        trials=trials,
        seed=seed,
        cancelled=cancelled,
    )
    saved = masses.value
    low, likely, high = results.study.worth_per_kg
    worth = range_draws(
        trials, low=low, likely=likely, high=high, seed=seed + _WORTH_SEED
    )
    worth *= saved.values
    worth += money.value.values
    value = summarise(worth)
    target = results.totals.target_kg
    return ProposalChance(
        saved_kg=saved,
        value=value,
        target_kg=target,
        chance_of_target=float(saved.chance_of_at_least(target)),
        chance_of_gain=float(value.chance_of_at_least(0.0)),
        seed=seed,
        common=common,
    )


def mass_before(effects: Sequence[Effect]) -> Ranges:
    """Give the present mass that each change acts on; how it is known is its width."""
    likely = [one.saved_kg.likely + one.drawn_kg.likely for one in effects]
    half = [_ROOT_OF_3 * one.known_u_kg for one in effects]
    return Ranges(
        [mass - width for mass, width in zip(likely, half, strict=True)],
        likely,
        [mass + width for mass, width in zip(likely, half, strict=True)],
        kinds=Distribution.RECTANGULAR,
    )


def mass_after(effects: Sequence[Effect]) -> Ranges:
    """Give the mass after each change, negative: it is taken off what is saved."""
    return as_ranges([-one.drawn_kg for one in effects])


def priced(effect: Effect) -> Range:
    """Give what a change saves in money that moves with the price level."""
    return -(effect.part_cost + effect.add_back_cost)


def unpriced(effect: Effect) -> Range:
    """Give what a change saves in other money: joining, and its share of the tools."""
    return -(effect.joining_cost + effect.tooling_per_pack)


def validation(effects: Iterable[Effect]) -> Range:
    """Give what all validation saves: it is spent, released or not."""
    return -sum((one.validation_per_pack for one in effects), NONE)


def as_ranges(ranges: Sequence[Range]) -> Ranges:
    """Give ranges as the calculations take them."""
    low, likely, high = zip(*(one.ends for one in ranges), strict=True)
    return Ranges(low, likely, high)


def has_target(chance: ProposalChance) -> bool:
    """Say whether a saving is promised."""
    return not math.isnan(chance.target_kg)
