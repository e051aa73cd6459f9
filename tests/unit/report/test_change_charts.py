"""The charts of the Changes page and the figures of the trials, from the demo."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from benchpack.files.demo import demo_library
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.report.change_charts import steps_from_today, swings_spec
from benchpack.results.explained_chance import CHANCE_KEYS, chance_figure
from benchpack.results.proposal import ProposalResults, proposal
from benchpack.results.proposal_matters import mass_matters
from benchpack.results.proposal_trials import simulate


@pytest.fixture(scope="module")
def demo() -> Library:
    """Give the demo."""
    return demo_library()


@pytest.fixture(scope="module")
def study(demo: Library) -> Study:
    """Give the first study that has changes."""
    return next(one for one in demo.studies if demo.changes_of(one.name))


@pytest.fixture(scope="module")
def results(demo: Library, study: Study) -> ProposalResults:
    """Give its proposal."""
    return proposal(demo, study)


def test_the_steps_add_up_from_today_to_the_proposal(results: ProposalResults) -> None:
    spec = steps_from_today(results)
    assert (spec.names[0], spec.names[-1]) == ("today", "proposed")
    assert spec.values[0] == 0
    saved = results.totals.saved_kg.likely
    assert float(spec.values[1:-1].sum()) == pytest.approx(-saved, rel=1e-9)
    assert float(spec.values[-1]) == pytest.approx(-saved, rel=1e-9)
    assert spec.target == pytest.approx(-results.totals.target_kg)
    assert spec.value_range is None


def test_the_steps_follow_the_mass_unit(demo: Library, study: Study) -> None:
    in_kg = steps_from_today(proposal(demo, study))
    in_lb = steps_from_today(proposal(demo, replace(study, mass_unit="lb")))
    assert in_lb.values[-1] == pytest.approx(in_kg.values[-1] / 0.45359237)
    assert in_lb.axis_label == "Mass less today's [lb]"


def test_without_changes_the_steps_say_so(demo: Library, study: Study) -> None:
    bare = replace(demo, changes={})
    spec = steps_from_today(proposal(bare, study))
    assert spec.is_empty
    assert "No change counts" in spec.empty_sentence


def test_swings_are_relative_to_the_likely_figure(results: ProposalResults) -> None:
    matters = mass_matters(results)
    assert matters is not None
    spec = swings_spec(matters, results.study)
    first = matters.swings[0]
    assert spec.at_low[0] == pytest.approx(first.at_low - matters.base)
    assert spec.at_high[0] == pytest.approx(first.at_high - matters.base)
    assert spec.title.endswith(matters.shares[0].name)
    assert len(spec.names) == len(spec.details) <= 12


def test_nothing_swings_without_changes(study: Study) -> None:
    assert "No change counts" in swings_spec(None, study).empty_sentence


def test_figures_of_the_trials_name_the_trials(results: ProposalResults) -> None:
    chance = simulate(results, trials=5000)
    assert chance is not None
    target, saved, value = (chance_figure(results, chance, key) for key in CHANCE_KEYS)
    assert target.value == pytest.approx(100 * chance.chance_of_target)
    assert (saved.low, saved.value, saved.high) == (
        chance.saved_kg.p10,
        chance.saved_kg.p50,
        chance.saved_kg.p90,
    )
    assert value.unit == results.study.currency
    for figure in (target, saved, value):
        assert "JCGM 101:2008" in figure.source
        assert figure.inputs[0].value in (5000, results.totals.target_kg)
        names = {one.label for one in figure.inputs}
        assert names >= {effect.name for effect in results.effects}


def test_without_a_target_there_is_no_chance(demo: Library, study: Study) -> None:
    results = proposal(demo, replace(study, target_kg=None))
    chance = simulate(results, trials=2000)
    assert chance is not None
    figure = chance_figure(results, chance, CHANCE_KEYS[0])
    assert math.isnan(figure.value)
    assert figure.missing == "The study has no target."
