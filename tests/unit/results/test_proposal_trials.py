"""The chance of a proposal: trials against closed forms, common factors, release."""

from __future__ import annotations

import math
import subprocess
import sys
from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc.change_ranges import (
    ChangeRanges,
    CommonFactors,
    MoneyRanges,
    Ranges,
)
from benchpack.calc.change_sensitivity import proposal_moments
from benchpack.errors import CancelledError
from benchpack.model.change import ChangeKind
from benchpack.model.ranges import Range
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_trials import (
    USUAL_COMMON,
    CommonRanges,
    ProposalChance,
    mass_after,
    mass_before,
    simulate,
)
from tests.unit.results.proposal_samples import (
    LID_IN_PP,
    NO_BRACKETS,
    RIM_BEAD,
    STUDY,
    change,
    proposal_of,
)

EXACT = CommonRanges(price_level=Range.exactly(1.0), mass_bias=Range.exactly(1.0))
LIGHTER = change(
    "lighter",
    ChangeKind.ADJUST,
    parts=("side frame",),
    mass_kg=Range(6, 8, 12),
    part_cost=Range(2, 5, 9),
    tooling=Range(1e5, 2e5, 4e5),
    validation_cost=Range(1e5, 2e5, 3e5),
    release_chance=0.7,
)


def chance(results: ProposalResults, **more: object) -> ProposalChance:
    found = simulate(results, **more)  # type: ignore[arg-type]  # the options by name
    assert found is not None
    return found


def test_trials_against_the_closed_form_without_common_factors() -> None:
    results = proposal_of(LIGHTER, LID_IN_PP, NO_BRACKETS)
    found = chance(results, common=EXACT, seed=3)
    effects = results.effects
    # Without an error common to all masses the closed form of the calculations holds.
    exact = proposal_moments(
        ChangeRanges(
            mass_before(effects),
            money=[MoneyRanges(mass_after(effects))],
            release_chance=[one.release_chance for one in effects],
        ),
        CommonFactors(Ranges.exactly(1.0)),
    )
    assert_allclose(found.saved_kg.mean, exact.value_mean, rtol=2e-3)
    assert_allclose(found.saved_kg.standard_uncertainty, exact.value_u, rtol=5e-3)


def test_an_error_common_to_all_masses_does_not_average_out() -> None:
    adds = [
        change(f"a{i}", ChangeKind.ADD, into=f"a{i}", mass_kg=Range.exactly(2.0))
        for i in range(20)
    ]
    results = proposal_of(*adds)
    assert chance(results, common=EXACT).saved_kg.standard_uncertainty == 0.0
    biased = chance(results)
    # Triangular on (0.97, 1, 1.08), times the 40 kg that all of them add.
    low, likely, high = USUAL_COMMON.mass_bias.ends
    p, q = likely - low, high - likely
    u_bias = math.sqrt((p * p + p * q + q * q) / 18)
    assert_allclose(biased.saved_kg.standard_uncertainty, 40 * u_bias, rtol=5e-3)
    assert_allclose(biased.saved_kg.mean, -40 * (low + likely + high) / 3, rtol=1e-3)


def test_mean_of_the_value_by_hand() -> None:
    results = proposal_of(LIGHTER)
    (one,) = results.effects
    found = chance(results, common=EXACT)
    mean = sum(STUDY.worth_per_kg) / 3
    kilograms = 14.0 - (6 + 8 + 12) / 3
    money = (2 + 5 + 9) / 3 + sum(one.tooling_per_pack.ends) / 3
    spent_anyway = sum(one.validation_per_pack.ends) / 3
    by_hand = 0.7 * (mean * kilograms - money) - spent_anyway
    assert_allclose(found.value.mean, by_hand, rtol=0.01)


def test_what_is_not_released_saves_nothing_but_its_validation_is_spent() -> None:
    never = replace(LIGHTER, release_chance=0.0)
    found = chance(proposal_of(never), common=EXACT)
    assert found.saved_kg.p90 == 0.0
    assert found.value.p50 < 0.0
    assert found.chance_of_target == 0.0


def test_release_is_on_or_off() -> None:
    exact = replace(
        LIGHTER,
        mass_kg=Range.exactly(4.0),
        part_cost=Range.exactly(0.0),
        validation_cost=Range.exactly(0.0),
        tooling=Range.exactly(0.0),
    )
    found = chance(proposal_of(exact), common=EXACT, trials=20_000)
    values = found.saved_kg.values
    low, high = 10.0 - 14 * 0.002 * 2, 10.0 + 14 * 0.002 * 2
    released = values > 0
    assert_allclose(released.mean(), 0.7, atol=0.01)
    assert np.all((values[released] > low) & (values[released] < high))
    assert_allclose(found.chance_of_target, 0.7, atol=0.01)
    assert float(found.saved_kg.chance_of_at_least(9.0)) == found.chance_of_target


def test_how_the_present_mass_is_known_is_in_the_trials() -> None:
    results = proposal_of(NO_BRACKETS)
    found = chance(results, common=EXACT)
    # Two rows weighed to 0.2 %, in quadrature; nothing else is uncertain.
    u_kg = math.hypot(0.002 * 2.0, 0.002 * 0.044)
    assert_allclose(found.saved_kg.standard_uncertainty, u_kg, rtol=0.01)


def test_what_a_later_change_takes_up_is_drawn_once() -> None:
    gone = change("gone", ChangeKind.REMOVE, parts=("bracket",))
    thinner = change(
        "thinner", ChangeKind.ADJUST, parts=("bracket",), mass_kg=Range(0.5, 1, 1.9)
    )
    both = chance(proposal_of(thinner, gone), common=EXACT, trials=1000)
    alone = chance(proposal_of(gone), common=EXACT, trials=1000)
    assert both.saved_kg.standard_uncertainty < 0.01
    assert_allclose(both.saved_kg.mean, alone.saved_kg.mean, atol=1e-3)


def test_the_same_seed_gives_the_same_trials() -> None:
    results = proposal_of(LIGHTER, RIM_BEAD)
    one, same, other = (chance(results, seed=s, trials=5000) for s in (4, 4, 5))
    assert_array_equal(one.value.values, same.value.values)
    assert not np.array_equal(one.value.values, other.value.values)
    assert one.seed == 4


def test_a_simulation_can_be_cancelled() -> None:
    with pytest.raises(CancelledError):
        simulate(proposal_of(LIGHTER), cancelled=lambda: True)


def test_without_changes_there_is_no_chance() -> None:
    assert simulate(proposal_of()) is None


def test_without_a_target_there_is_none_to_reach() -> None:
    found = chance(proposal_of(LIGHTER, study=replace(STUDY, target_kg=None)))
    assert math.isnan(found.chance_of_target)
    assert found.common is USUAL_COMMON


def test_nothing_heavy_loads_with_the_proposal() -> None:
    script = (
        "import benchpack.session.proposal_request, benchpack.results.proposal_choice\n"
        "import sys; print('\\n'.join(sys.modules))"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    heavy = {"scipy.optimize", "scipy.stats", "PySide6", "pint", "python_calamine"}
    assert not heavy & set(done.stdout.split())
