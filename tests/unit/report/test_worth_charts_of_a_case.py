"""What the charts of the Worth page are told: the arithmetic and the findings."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from numpy.testing import assert_allclose

from benchpack.errors import Problem
from benchpack.model.assumptions import AssumptionSet, assumption_values
from benchpack.model.study import Study
from benchpack.model.worth_words import Sizing, ValuedMass
from benchpack.report.chart_rows import chart_rows
from benchpack.report.worth_charts import fan_spec
from benchpack.report.worth_map_chart import SIDES, crossings, map_spec, side_of
from benchpack.report.worth_matters import worth_shares_spec, worth_swings_spec
from benchpack.report.worth_price import price_spec
from benchpack.report.worth_programme import programme_spec
from benchpack.report.worth_sets import (
    NOW,
    SetMeasure,
    sets_spec,
    sets_table,
)
from benchpack.report.worth_vehicle import (
    DERIVED,
    DRIVER,
    ENTERED,
    vehicle_sentences,
    vehicle_spec,
)
from benchpack.report.worth_vehicle_steps import vehicle_steps
from benchpack.results.explain_worth import explain_worth
from benchpack.results.proposal_matters import Share
from benchpack.results.results import compute
from benchpack.results.worth_case import WorthCase, worth_case
from benchpack.results.worth_map import MAP_KEYS, WorthMap, worth_map
from benchpack.results.worth_matters import worth_swings
from benchpack.results.worth_programme import Programme
from benchpack.results.worth_sets import set_outcomes
from tests.unit.report.test_worth_figures import plain
from tests.unit.results.worth_samples import CHANGES, RICH, case_of, studies

KG_PER_LB = 0.45359237


def the_programme(case: WorthCase) -> Programme:
    assert isinstance(case.programme, Programme)
    return case.programme


def sets_of(case: WorthCase) -> tuple[AssumptionSet, ...]:
    values = assumption_values(case.study)
    return (
        AssumptionSet(case.study.name, "dear", **{**values, "discount_rate": 0.2}),
        AssumptionSet(case.study.name, "idle", **{**values, "volumes": (0, 0)}),
    )


def test_the_programme_adds_up_to_its_value() -> None:
    case = case_of(*CHANGES)
    found, spec = the_programme(case), programme_spec(case)
    assert "million EUR" in plain(spec.y_label)
    assert_allclose(spec.cumulative[-1] * 1e6, found.npv.likely)
    assert_allclose(spec.likely[0] * 1e6, -found.spend.likely)
    assert np.all(spec.low <= spec.likely)
    assert np.all(spec.likely <= spec.high)
    at = np.interp(spec.payback, np.arange(len(spec.years)), spec.cumulative)
    assert abs(at) < 1e-9 * np.abs(spec.cumulative).max()
    assert spec.years[0] == "year 0"
    assert plain(spec.title).startswith(f"Paid back after {found.payback_years:.1f}")
    assert "over 7 years" in plain(spec.title)
    assert "all that is worse at once, or all that is better" in spec.note
    assert "interest stays" in spec.note


def test_years_of_a_calendar_and_volumes_by_year() -> None:
    study = replace(RICH, start_year=2030, volumes=(10_000, 0, 90_000))
    spec = programme_spec(case_of(*CHANGES, study=study))
    assert spec.years == ("2029", "2030", "2031", "2032")
    assert spec.likely[2] == 0
    assert "over 3 years" in plain(spec.title)
    assert "100 000 packs in all" in plain(spec.note)


def test_a_loss_and_a_saving_without_cost_are_called_so() -> None:
    loss = programme_spec(case_of(*CHANGES, study=replace(RICH, yearly_volume=1)))
    assert loss.title.startswith("Not paid back: loses")
    assert math.isnan(loss.payback)
    gap = programme_spec(case_of())
    assert gap.title.endswith("nothing is spent once")
    assert gap.title.startswith("Worth")


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"yearly_volume": None}, "No yearly volume is known"),
        ({"volumes": (0, 0)}, "Every year has a volume of zero"),
    ],
)
def test_without_volume_a_sentence_stands_there(
    values: dict[str, object], said: str
) -> None:
    case = case_of(*CHANGES, study=replace(RICH, **values))  # type: ignore[arg-type]  # names are checked by the dataclass
    for spec in (
        programme_spec(case),
        price_spec(case),
        worth_swings_spec(worth_swings(case), case.study),
        map_spec(worth_map(case, "worth", "volume"), case.study),
    ):
        assert spec.is_empty
        assert spec.empty_sentence.startswith(said)


def test_worths_stand_beside_each_other() -> None:
    case = case_of(*CHANGES)
    spec = vehicle_spec(case)
    assert spec.names == (ENTERED, DERIVED, DRIVER)
    assert spec.in_use == ENTERED
    assert chart_rows(spec)[0][0] == "worth of a kilogram"
    assert_allclose(spec.likely[0], 30.0)
    in_lb = vehicle_spec(case_of(*CHANGES, study=replace(RICH, mass_unit="lb")))
    assert_allclose(in_lb.likely, spec.likely * KG_PER_LB)
    assert in_lb.format_full(float(in_lb.likely[0])).endswith("EUR/lb")


def test_two_worths_far_apart_are_told_first() -> None:
    case = case_of(*CHANGES, study=replace(RICH, mass_unit="lb", decimal_mark=","))
    first, *_ = vehicle_sentences(case)
    assert "13,61\u00a0EUR/lb" in first
    assert "above what the vehicle supports" in first
    assert vehicle_spec(case).title.endswith("far from what is entered")
    derived = case.derived.worth_per_kg
    assert derived is not None
    near = replace(
        RICH,
        worth_low_per_kg=0.0,
        worth_likely_per_kg=derived.likely,
        worth_high_per_kg=derived.high,
        worth_reason="agreed.",
        worth_source="letter",
    )
    said = vehicle_sentences(case_of(*CHANGES, study=near))
    assert "supports" not in " ".join(said)
    assert said[-2].endswith("is entered: agreed.")
    assert said[-1] == "Source: letter."


def test_who_wrote_down_why_is_not_asked_to() -> None:
    without = case_of(*CHANGES, study=replace(RICH, worth_reason=""))
    assert "Write down why" in vehicle_sentences(without)[0]
    written = case_of(*CHANGES, study=replace(RICH, worth_reason="agreed"))
    said = vehicle_sentences(written)
    assert "above what the vehicle supports" in said[0]
    assert "Write down why" not in " ".join(said)


def test_with_the_battery_kept_the_range_is_what_is_gained() -> None:
    case = case_of(*CHANGES, study=replace(RICH, sizing=Sizing.BATTERY_KEPT))
    gain = case.derived.range_gain
    assert gain is not None
    # Below one per cent the first digit alone would say next to nothing.
    text = f"{100 * gain.likely:.2f} %"
    assert gain.likely < 0.01
    assert text in plain(vehicle_spec(case).title)
    steps = {step.key: step for step in vehicle_steps(case)}
    assert text in plain(steps["range gain"].text)
    kept = {step.key: step for step in vehicle_steps(case_of(*CHANGES))}
    assert kept["range gain"].text == "–"


def test_the_proposal_is_marked_on_the_fan() -> None:
    case = case_of(*CHANGES)
    saved = case.saving.saved_kg
    assert saved is not None
    spec = fan_spec(case.gap, saved)
    point = spec.points[-1]
    assert (point.name, point.kind) == ("the proposal", "subject")
    assert_allclose(point.value, np.interp(saved.likely, spec.saved, spec.likely))
    assert all(one.kind == "peer" for one in spec.points[:-1])
    assert spec.title.startswith("The proposal saves")
    assert fan_spec(case.gap).title.startswith("Saving")


def test_swings_are_changes_of_the_value() -> None:
    case = case_of(*CHANGES)
    found = worth_swings(case)
    assert not isinstance(found, Problem)
    base, swings = found
    spec = worth_swings_spec(found, case.study)
    assert len(spec.names) == len(swings)
    assert_allclose(base + 1e6 * spec.at_low[0], swings[0].at_low)
    assert_allclose(base + 1e6 * spec.at_high[0], swings[0].at_high)
    assert spec.title.casefold().startswith(swings[0].name.casefold())
    assert worth_swings_spec((base, ()), case.study).is_empty


def test_swings_tell_both_values_of_the_programme() -> None:
    case = case_of(*CHANGES)
    found = worth_swings(case)
    assert not isinstance(found, Problem)
    note = plain(worth_swings_spec(found, case.study, released=2.5e6).note)
    assert "each change by its chance; with all of them released 2.50 million" in note
    alike = worth_swings_spec(found, case.study, released=found[0])
    assert "released" not in alike.note


def test_shares_are_named_by_the_greatest() -> None:
    shares = (Share("volume", 0.5, 0.62, 0.01), Share("interest", 0.1, 0.2, 0.0))
    spec = worth_shares_spec(shares, RICH)
    assert plain(spec.title) == "62 % of the variance: volume"
    assert spec.total_error is not None
    assert_allclose(spec.total_error, [0.01, 0.0])
    assert worth_shares_spec((), RICH).is_empty
    missing = worth_shares_spec(Problem("No range.", "Give one."), RICH)
    assert missing.empty_sentence == "No range. Give one."


@pytest.mark.parametrize("unit", ["kg", "lb"])
def test_the_map_breaks_even_where_its_title_says(unit: str) -> None:
    study = replace(RICH, yearly_volume=2_000, mass_unit=unit)
    case = case_of(*CHANGES, study=study)
    found = worth_map(case, "worth", "volume")
    assert not isinstance(found, Problem)
    spec = map_spec(found, study)
    (place,) = crossings(list(spec.break_even), at=100.0)
    row = int(np.argmin(np.abs(spec.y - 100.0)))
    assert_allclose(spec.y[row], 100.0)
    assert abs(np.interp(place, spec.x, spec.values[row])) < 1e-3
    assert plain(f"worth {place:.2f} EUR/{unit}") in plain(spec.title)
    factor = KG_PER_LB if unit == "lb" else 1.0
    assert spec.here is not None
    assert_allclose(spec.here, (30.0 * factor, 100.0))


@pytest.mark.parametrize(("volume", "word"), [(2_000_000, "Gains"), (1, "Loses")])
def test_a_map_that_never_breaks_even_speaks_of_its_sides_alone(
    volume: int, word: str
) -> None:
    """Beyond the ends of the axis nothing was worked out."""
    study = replace(RICH, yearly_volume=volume)
    case = case_of(*CHANGES, study=study)
    found = worth_map(case, "interest", "volume")
    assert not isinstance(found, Problem)
    spec = map_spec(found, study)
    ends = [plain(spec.format_x(end)) for end in (spec.x[0], spec.x[-1])]
    high = ends[1].removeprefix("interest a year ")
    said = f"{word} everywhere between {ends[0]} and {high}, with volume against plan"
    assert plain(spec.title).startswith(said)
    assert "any" not in spec.title


def test_charts_of_what_matters_are_explained_by_where_they_start() -> None:
    case = case_of(*(replace(one, release_chance=0.5) for one in CHANGES))
    found, here = worth_swings(case), worth_map(case, "worth", "volume")
    assert not isinstance(found, Problem)
    assert not isinstance(here, Problem)
    shares = (Share("volume", 0.5, 0.62, 0.01),)
    specs = (
        worth_swings_spec(found, case.study),
        worth_shares_spec(shares, case.study),
        map_spec(here, case.study),
    )
    for spec in specs:
        figure = explain_worth(case, spec.explain_key)
        assert_allclose(figure.value, found[0], rtol=1e-12)
        assert_allclose(figure.value, here.now[2], rtol=1e-12)
    assert found[0] < 0.9 * the_programme(case).npv.likely


@pytest.mark.parametrize(
    ("valued", "words", "now"),
    [
        (ValuedMass.PROPOSAL, "share of the proposal captured", 100.0),
        (ValuedMass.TARGET, "share of the target captured", 100.0),
        (ValuedMass.SHARE, "share captured", 50.0),
    ],
)
def test_a_share_on_the_map_says_what_it_is_of(
    valued: ValuedMass, words: str, now: float
) -> None:
    study = replace(RICH, valued_mass=valued, share_captured=0.5)
    case = case_of(*CHANGES, study=study)
    found = worth_map(case, "worth", "share")
    assert isinstance(found, WorthMap)
    spec = map_spec(found, study)
    assert spec.y_label == f"{words.capitalize()} [%]"
    assert spec.format_y(now).startswith(f"{words} ")
    assert plain(spec.title).endswith(f"with {words} {now:.0f} %")
    assert spec.here is not None
    assert spec.here[1] == now
    assert ("of the gap and not used" in spec.note) == (now == 100.0)
    turned = worth_map(case, "share", "volume")
    assert isinstance(turned, WorthMap)
    assert words in map_spec(turned, study).title.casefold()
    other = worth_map(case, "worth", "volume")
    assert isinstance(other, WorthMap)
    assert "of the gap" not in map_spec(other, study).note


def test_crossings_of_lines_are_places() -> None:
    circle = np.array([[np.cos(t), np.sin(t)] for t in np.linspace(0, 6, 2000)])
    assert_allclose(crossings([circle], at=0.6), [-0.8, 0.8], atol=1e-4)
    assert crossings([circle], at=2.0) == []
    assert crossings([], at=0.0) == []


def test_every_side_has_words_with_its_unit() -> None:
    assert tuple(key for key, _ in SIDES) == MAP_KEYS
    for key, words in SIDES:
        side = side_of(key, RICH)
        assert side.label.endswith("]")
        assert side.write(8.0).startswith(words)


@pytest.mark.parametrize("measure", list(SetMeasure))
def test_sets_stand_beside_what_is_now(measure: SetMeasure) -> None:
    case = case_of(*CHANGES)
    outcomes = set_outcomes(case, sets_of(case))
    spec = sets_spec(outcomes, case.study, measure)
    assert spec.names == (NOW, "dear", "idle")
    assert spec.in_use == NOW
    if measure in (SetMeasure.PROGRAMME, SetMeasure.HEADROOM):
        assert math.isnan(spec.likely[2])
        assert "volume of zero" in spec.details[2]
        assert spec.likely[1] < spec.likely[0]
    else:
        assert_allclose(spec.likely[1:], spec.likely[0])


def test_a_headroom_below_zero_is_no_money_to_compare() -> None:
    case = case_of(*CHANGES)
    values = {**assumption_values(case.study), "required_saving": 1e6}
    greedy = AssumptionSet(case.study.name, "greedy", **values)
    outcomes = set_outcomes(case, (greedy,))
    spec = sets_spec(outcomes, case.study, SetMeasure.HEADROOM)
    assert spec.names == (NOW, "greedy")
    assert math.isnan(spec.likely[1])
    assert spec.details[1] == "No price leaves the saving that is asked for."
    assert spec.details[0] == ""
    assert "greedy" not in spec.title
    table = sets_table(outcomes)
    assert table.rows[1][table.heads.index("headroom")].text == "none"


def test_a_set_that_says_the_same_is_the_one_in_use() -> None:
    case = case_of(*CHANGES)
    same = AssumptionSet(case.study.name, "agreed", **assumption_values(case.study))
    outcomes = set_outcomes(case, (same, *sets_of(case)))
    spec = sets_spec(outcomes, case.study, SetMeasure.WORTH)
    assert spec.names == ("agreed", "dear", "idle")
    assert spec.in_use == "agreed"
    table = sets_table(outcomes)
    assert table.rows[0][0].text == "agreed, in use"
    assert table.names == ("agreed", "dear", "idle")


def test_the_table_of_sets_says_why_a_cell_is_empty() -> None:
    case = case_of(*CHANGES)
    table = sets_table(set_outcomes(case, sets_of(case)))
    assert {len(row) for row in table.rows} == {len(table.heads)}
    place = table.heads.index("programme value")
    now, dear, idle = (row[place] for row in table.rows)
    assert now.text != dear.text
    assert (idle.text, "volume of zero" in idle.why) == ("–", True)


@given(study=studies())
@settings(max_examples=40)
def test_any_assumptions_give_a_chart_or_a_sentence(study: Study) -> None:
    library = case_of(*CHANGES, study=study).gap.library
    case = worth_case(compute(library, study))
    saving = case.saving
    proposed = saving.saved_kg if saving.valued is ValuedMass.PROPOSAL else None
    for spec in (
        fan_spec(case.gap, proposed),
        programme_spec(case),
        price_spec(case),
        vehicle_spec(case),
        worth_swings_spec(worth_swings(case), study),
        map_spec(worth_map(case, "worth", "interest", size=5), study),
    ):
        assert spec.empty_sentence if spec.is_empty else spec.title
        assert "nan" not in spec.title
    assert all(vehicle_sentences(case))
    assert all(step.text and step.source for step in vehicle_steps(case))
