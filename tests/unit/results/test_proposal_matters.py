"""What matters for a proposal: swings, and shares of the variance."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from benchpack.calc.change_ranges import ChangeRanges, CommonFactors, MoneyRanges
from benchpack.calc.change_sensitivity import value_indices
from benchpack.errors import CancelledError
from benchpack.model.change import ChangeKind
from benchpack.model.ranges import Range
from benchpack.results.proposal_matters import (
    MASS_BIAS,
    PRICE_LEVEL,
    WORTH,
    Matters,
    mass_matters,
    value_matters,
)
from benchpack.results.proposal_trials import (
    USUAL_COMMON,
    CommonRanges,
    as_ranges,
    priced,
    unpriced,
)
from tests.unit.results.proposal_samples import NO_BRACKETS, change, proposal_of
from tests.unit.results.test_proposal_trials import LIGHTER, chance

HEAVIER = change(
    "plate", ChangeKind.ADD, into="plate", mass_kg=Range(1, 2, 4), release_chance=0.9
)


def shares(matters: Matters | None) -> dict[str, tuple[float, float]]:
    assert matters is not None
    return {one.name: (one.first, one.total) for one in matters.shares}


def test_shares_of_the_mass_agree_with_the_trials() -> None:
    results = proposal_of(LIGHTER, HEAVIER)
    found = shares(mass_matters(results))
    assert set(found) == {"lighter", "plate", MASS_BIAS}
    variance = chance(results).saved_kg.standard_uncertainty ** 2
    # With the error of the masses known, its share of the variance is gone.
    mean = sum(USUAL_COMMON.mass_bias.ends) / 3
    without = CommonRanges(
        price_level=Range.exactly(1.0), mass_bias=Range.exactly(mean)
    )
    left = chance(results, common=without).saved_kg.standard_uncertainty ** 2
    assert_allclose(1 - left / variance, found[MASS_BIAS][0], atol=0.02)
    assert_allclose(sum(first for first, _ in found.values()), 1.0, atol=0.02)


def test_swings_go_to_the_ends_by_hand() -> None:
    matters = mass_matters(proposal_of(LIGHTER, NO_BRACKETS))
    assert matters is not None
    assert_allclose(matters.base, 0.7 * 6.0 + 2.044, rtol=1e-12)
    swings = {(one.name, one.what): one for one in matters.swings}
    mass = swings["lighter", "mass after"]
    assert_allclose(mass.at_low, 0.7 * 8.0 + 2.044, rtol=1e-12)
    assert_allclose(mass.at_high, 0.7 * 2.0 + 2.044, rtol=1e-12)
    release = swings["lighter", "release"]
    assert_allclose((release.at_low, release.at_high), (2.044, 8.044), rtol=1e-12)
    bias = swings[MASS_BIAS, ""]
    assert_allclose(bias.at_high, matters.base - 0.7 * 8 * 0.08, rtol=1e-12)
    # What is sure and exact has no swing; the widest stands first.
    assert ("no brackets", "release") not in swings
    widths = [abs(one.at_high - one.at_low) for one in matters.swings]
    assert widths == sorted(widths, reverse=True)


def test_shares_of_the_value_agree_with_the_closed_form() -> None:
    results = proposal_of(LIGHTER, HEAVIER)
    common = CommonRanges(
        price_level=Range(0.85, 1.0, 1.2), mass_bias=Range.exactly(1.0)
    )
    found = shares(value_matters(results, common=common, points=1024))
    effects = results.effects
    exact = value_indices(
        ChangeRanges(
            as_ranges([one.saved_kg for one in effects]),
            money=[
                MoneyRanges(as_ranges([*map(priced, effects)]), moves_with_price=True),
                MoneyRanges(as_ranges([*map(unpriced, effects)])),
            ],
            release_chance=[one.release_chance for one in effects],
        ),
        CommonFactors(
            as_ranges([Range(*results.study.worth_per_kg)]),
            price=as_ranges([common.price_level]),
        ),
    )
    sampled = np.array([found[n] for n in ("lighter", "plate", WORTH, PRICE_LEVEL)])
    assert_allclose(sampled[:, 0], exact.first[:4], atol=0.02)
    assert_allclose(sampled[:, 1], exact.total[:4], atol=0.02)


def test_the_same_seed_gives_the_same_shares() -> None:
    results = proposal_of(LIGHTER)
    one, same = (value_matters(results, points=64, seed=2) for _ in range(2))
    assert shares(one) == shares(same)


def test_swings_of_the_value_name_costs() -> None:
    matters = value_matters(proposal_of(LIGHTER), points=64)
    assert matters is not None
    swings = {(one.name, one.what): one for one in matters.swings}
    cost = swings["lighter", "part cost"]
    assert cost.at_low > matters.base > cost.at_high
    assert_allclose(cost.at_low - cost.at_high, 0.7 * 7.0, rtol=1e-9)
    assert (WORTH, "") in swings


def test_it_can_be_cancelled_and_needs_a_change() -> None:
    with pytest.raises(CancelledError):
        value_matters(proposal_of(LIGHTER), points=64, cancelled=lambda: True)
    assert value_matters(proposal_of()) is None
    assert mass_matters(proposal_of()) is None


def test_what_is_sure_has_no_shares() -> None:
    exact = replace(
        HEAVIER, mass_kg=Range.exactly(2.0), release_chance=1.0, name="exact"
    )
    common = CommonRanges(price_level=Range.exactly(1.0), mass_bias=Range.exactly(1.0))
    found = mass_matters(proposal_of(exact), common=common)
    assert found is not None
    assert np.isnan(found.shares[0].total)
    assert found.swings == ()
