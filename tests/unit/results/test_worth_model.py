"""The value of a programme as a function: what it hangs on, and its map."""

from __future__ import annotations

from dataclasses import replace
from itertools import permutations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from benchpack.errors import CancelledError, Problem, RequestError
from benchpack.model.change_words import ProgrammeKind
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.worth_words import ValuedMass
from benchpack.results.proposal_trials import USUAL_COMMON
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_map import MAP_KEYS, WorthMap, span_of, worth_map
from benchpack.results.worth_matters import worth_shares, worth_swings
from benchpack.results.worth_model import Assumed, WorthModel, worth_model
from benchpack.results.worth_programme import Programme
from tests.unit.results.worth_samples import (
    CHANGES,
    COSTED,
    RICH,
    case_of,
    studies,
    with_assumed,
)

CASE = case_of(*CHANGES)
TOOLED = replace(COSTED, tooling=Range(1e5, 3e5, 4e5))
"""With tools of its own, which do not grow in number with the packs."""
PLANNED = case_of(TOOLED, *CHANGES[1:])
RISKY = case_of(*(replace(one, release_chance=0.6) for one in CHANGES))
SHARE = with_assumed(CASE, valued_mass=ValuedMass.SHARE, share_captured=0.5)


def model_of(case: WorthCase) -> WorthModel:
    found = worth_model(case)
    assert isinstance(found, WorthModel)
    return found


def npv(case: WorthCase) -> float:
    assert isinstance(case.programme, Programme)
    return case.programme.npv.likely


def base(model: WorthModel) -> float:
    return float(model.npv(model.likely[:, np.newaxis])[0])


@settings(max_examples=60, deadline=None)
@given(study=studies())
def test_the_base_is_the_case_where_every_change_is_released(study: Study) -> None:
    case = case_of(*CHANGES, study=study)
    found = worth_model(case)
    if isinstance(found, Problem):
        assert found is case.programme
        return
    assert isinstance(case.programme, Programme)
    scale = case.programme.packs * sum(map(abs, case.programme.gain_per_pack.ends))
    assert_allclose(base(found), npv(case), rtol=1e-9, atol=1e-9 * (1 + scale))


def test_old_tools_of_a_new_programme_are_counted_alike() -> None:
    case = with_assumed(CASE, programme=ProgrammeKind.NEW)
    assert_allclose(base(model_of(case)), npv(case), rtol=1e-9)


def test_a_change_comes_with_its_chance_and_that_of_what_it_needs() -> None:
    model = model_of(RISKY)
    releases = [one for one in model.inputs if one.is_chance]
    assert [one.range for one in releases] == [Range(0.0, 0.6, 1.0)] * 3
    all_in, none = model.likely.copy(), model.likely.copy()
    all_in[-3:], none[-3:] = 1.0, 0.0
    assert_allclose(model.npv(all_in[:, np.newaxis])[0], npv(CASE), rtol=1e-9)
    # What is validated is paid for whether it is released or not.
    assert_allclose(model.npv(none[:, np.newaxis])[0], -2e5, rtol=1e-12)
    first, *others = (replace(one, release_chance=0.6) for one in CHANGES)
    needs = case_of(first, *(replace(one, requires=(first.name,)) for one in others))
    chances = [one.range.likely for one in model_of(needs).inputs if one.is_chance]
    assert_allclose(chances, [0.6, 0.36, 0.36])


def test_the_value_with_chances_is_that_of_what_is_expected() -> None:
    """Money and mass are linear in the releases, so that the base is the mean."""
    model = model_of(RISKY)
    assert RISKY.proposal is not None
    effects = RISKY.proposal.effects
    plan = RISKY.programme
    assert isinstance(plan, Programme)
    gains = [
        one.release_chance
        * (RICH.worth_likely_per_kg * one.saved_kg.likely - one.money.likely)
        for one in effects
    ]
    rate = RICH.discount_rate
    packs = sum(n / (1 + rate) ** y for y, n in enumerate(plan.volumes, 1))
    tools = sum(one.release_chance * one.tooling.likely for one in effects)
    by_hand = (
        packs * sum(gains)
        - tools
        - plan.spend.likely
        + sum(one.tooling.likely for one in effects)
    )
    assert_allclose(base(model), by_hand, rtol=1e-9)


def test_only_what_is_priced_moves_with_the_price_level() -> None:
    levels = {one.key: one.range for case in (CASE,) for one in model_of(case).inputs}
    assert levels["price level"] == USUAL_COMMON.price_level
    bare = {one.key: one.range for one in model_of(SHARE).inputs}
    assert bare["price level"] == Range.exactly(1.0)


def recomputed(case: WorthCase, key: str, value: float) -> WorthCase:
    """Give the case from the start with one assumption at a value."""
    study = case.study
    if key == "worth":
        ends = dict.fromkeys(
            ("worth_low_per_kg", "worth_likely_per_kg", "worth_high_per_kg"), value
        )
        return with_assumed(case, **ends)
    if key == "share":
        return with_assumed(case, share_captured=value)
    if key == "interest":
        return with_assumed(case, discount_rate=value)
    if key == "volume":
        assert study.yearly_volume is not None
        return with_assumed(case, yearly_volume=round(value * study.yearly_volume))
    attribute = {"validation": "validation_cost", "tooling": "tooling"}[key]
    money: Range = getattr(TOOLED, attribute)
    scaled = replace(TOOLED, **{attribute: money.scaled(value)})  # type: ignore[arg-type]  # names are attributes
    return case_of(scaled, *CHANGES[1:], study=study)


@pytest.mark.parametrize(
    ("case", "x", "y"),
    [
        (PLANNED, "worth", "volume"),
        (PLANNED, "volume", "interest"),
        (PLANNED, "worth", "tooling"),
        (PLANNED, "interest", "validation"),
        (SHARE, "share", "worth"),
        (SHARE, "volume", "share"),
        (with_assumed(SHARE, share_captured=0.0), "worth", "share"),
    ],
)
def test_a_map_shows_what_the_case_would_come_to(
    case: WorthCase, x: str, y: str
) -> None:
    found = worth_map(case, x, y, size=6)
    assert isinstance(found, WorthMap)
    assert found.values.shape == (6, 6)
    for row, column in ((0, 5), (2, 3), (5, 1), (4, 4)):
        x_value, y_value = found.x_values[column], found.y_values[row]
        if 0 in (x_value, y_value) and "volume" in (x, y):
            continue
        there = recomputed(recomputed(case, x, float(x_value)), y, float(y_value))
        assert_allclose(found.values[row, column], npv(there), rtol=1e-6, atol=10)
    assert_allclose(found.now[2], npv(case), rtol=1e-9, atol=1e-6)


def test_along_the_line_it_breaks_even() -> None:
    """Worth and volume both count straight, so on an edge of a cell it is exact."""
    found = worth_map(CASE, "worth", "volume")
    assert isinstance(found, WorthMap)
    assert found.lines
    model = model_of(CASE)
    (line,) = found.lines
    inputs = np.repeat(model.likely[:, np.newaxis], len(line), axis=1)
    inputs[MAP_KEYS.index("worth")], inputs[MAP_KEYS.index("volume")] = line.T
    assert np.abs(model.npv(inputs)).max() < 1e-9 * np.abs(found.values).max()


@settings(max_examples=30, deadline=None)
@given(study=studies(), keys=st.sampled_from(list(permutations(MAP_KEYS, 2))))
def test_any_map_is_a_map_or_a_sentence(study: Study, keys: tuple[str, str]) -> None:
    found = worth_map(case_of(*CHANGES, study=study), *keys, size=5)
    if isinstance(found, Problem):
        assert found.what
        return
    assert np.isfinite(found.values).all()
    for one, values in ((found.x, found.x_values), (found.y, found.y_values)):
        assert values[0] <= one.range.low
        assert one.range.likely <= values[-1]


def test_a_map_refuses_what_it_cannot_draw() -> None:
    for keys in (("worth", "worth"), ("worth", "colour")):
        with pytest.raises(RequestError, match="no two assumptions"):
            worth_map(CASE, *keys)
    with pytest.raises(RequestError, match="no cell"):
        worth_map(CASE, "worth", "share", size=1)


def test_spans_start_at_zero_and_hold_the_range() -> None:
    assert span_of(Assumed("worth", "", "", Range.exactly(0.0))) == (0.0, 1.0)
    assert span_of(Assumed("share", "", "", Range.exactly(0.3))) == (0.0, 1.0)
    low, high = span_of(Assumed("mass estimate", "", "", Range(-0.5, 1.0, 3.0)))
    assert low < -0.5
    assert high > 3.0


def test_swings_are_one_input_at_its_ends() -> None:
    found = worth_swings(RISKY)
    assert not isinstance(found, Problem)
    value, swings = found
    model = model_of(RISKY)
    assert_allclose(value, base(model), rtol=1e-12)
    worth = next(one for one in swings if one.name == "worth per kilogram")
    for end, there in ((10.0, worth.at_low), (40.0, worth.at_high)):
        inputs = model.likely.copy()
        inputs[0] = end
        assert_allclose(there, model.npv(inputs[:, np.newaxis])[0], rtol=1e-12)
    widths = [abs(one.at_high - one.at_low) for one in swings]
    assert widths == sorted(widths, reverse=True)
    assert "share captured" not in {one.name for one in swings}


def test_shares_of_the_variance() -> None:
    found = worth_shares(RISKY, points=256)
    assert not isinstance(found, Problem)
    again = worth_shares(RISKY, points=256)
    assert found == again
    totals = [one.total for one in found]
    assert totals == sorted(totals, reverse=True)
    assert 0.9 < sum(one.first for one in found) < 1.1
    with pytest.raises(CancelledError):
        worth_shares(RISKY, points=256, cancelled=_always)


def _always() -> bool:
    return True


def test_without_a_programme_or_a_range_there_is_a_sentence() -> None:
    silent = with_assumed(CASE, yearly_volume=None)
    for found in (worth_swings(silent), worth_shares(silent), worth_model(silent)):
        assert found is silent.programme
    assert worth_map(silent, "worth", "share") is silent.programme
