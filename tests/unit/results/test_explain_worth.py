"""Every figure of the worth says where it comes from."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from benchpack.calc.worth import programme_npv
from benchpack.errors import Problem, RequestError
from benchpack.model.drive_cycle import DriveCycle
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.worth_words import EnergyFrom, Sizing, ValuedMass
from benchpack.report.explanation import explanation_table, explanation_text
from benchpack.results.explain import explain
from benchpack.results.explain_worth import WORTH_KEYS, explain_worth
from benchpack.results.figure import Figure
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_price import Price
from benchpack.results.worth_programme import Programme
from benchpack.units.formatting import NumberStyle
from tests.unit.results.worth_samples import CHANGES, RICH, case_of, studies

CASE = case_of(*CHANGES)
KEPT = case_of(*CHANGES, study=replace(RICH, sizing=Sizing.BATTERY_KEPT))
NO_GAP = case_of(study=replace(RICH, subject="Egret 80", reference="Heron 70"))
SHARE = case_of(study=replace(RICH, valued_mass=ValuedMass.SHARE))
BARE = case_of(study=Study("Heron", subject="Heron 70"))


def programme(case: WorthCase) -> Programme:
    assert isinstance(case.programme, Programme)
    return case.programme


def price(case: WorthCase) -> Price:
    assert isinstance(case.price, Price)
    return case.price


def inputs_of(figure: Figure) -> dict[str, float]:
    return {one.label.partition(",")[0]: one.value for one in figure.inputs}


@pytest.mark.parametrize("case", [CASE, KEPT, NO_GAP, SHARE, BARE])
@pytest.mark.parametrize("key", WORTH_KEYS)
def test_each_key_answers_with_formula_inputs_and_source(
    key: str, case: WorthCase
) -> None:
    figure = explain_worth(case, key)
    assert figure.key == key
    assert figure.label
    assert figure.formula
    assert figure.source
    assert figure.inputs
    assert math.isnan(figure.value) == bool(figure.missing)
    assert math.isnan(figure.low) == math.isnan(figure.high)
    assert math.isnan(figure.low) == (not figure.range_meaning)
    if not math.isnan(figure.low):
        assert figure.low <= figure.value <= figure.high
    assert explanation_text(figure, style=NumberStyle()).value
    assert len(explanation_table(figure)) > len(figure.inputs)


def test_a_full_case_leaves_only_the_range_gain_open() -> None:
    missing = {key for key in WORTH_KEYS if explain_worth(CASE, key).missing}
    assert missing == {"range gain"}


def test_values_are_those_that_are_shown() -> None:
    plan, cost, derived, target = (
        programme(CASE),
        price(CASE),
        CASE.derived,
        CASE.target,
    )
    assert derived.worth_per_kg is not None
    assert derived.battery_kg is not None
    assert derived.driver_per_kg is not None
    assert KEPT.derived.range_gain is not None
    assert target.value is not None
    rate = CASE.study.discount_rate
    present = float(programme_npv(1.0, plan.volumes, discount_rate=rate))
    shown = {
        "worth per pack": plan.worth_per_pack.likely,
        "gain per pack": plan.gain_per_pack.likely,
        "programme value": plan.npv.likely,
        "expected programme value": plan.npv.likely,
        "payback": plan.payback_years,
        "programme break-even": plan.break_even_packs,
        "internal rate": 100 * plan.internal_rate,
        "even price": cost.even_price,
        "headroom": cost.headroom,
        "headroom per kg": cost.per_kg,
        "customer gain": cost.customer_gain,
        "shared price": cost.shared_price,
        "customer part": cost.customer_part,
        "our part": cost.supplier_part,
        "customer part of programme": present * cost.customer_part,
        "our part of programme": present * cost.supplier_part,
        "derived worth": derived.worth_per_kg.likely,
        "battery saved": derived.battery_kg.likely,
        "driver saving": derived.driver_per_kg.likely,
        "target worth": target.value.likely,
        "target share": 100 * target.share_of_gap,
        "least worth": target.least_worth_per_kg,
        "gap left": target.left_kg,
    }
    assert {*shown, "range gain"} == set(WORTH_KEYS)
    for key, value in shown.items():
        assert_allclose(explain_worth(CASE, key).value, value, rtol=1e-12, err_msg=key)
    gain = explain_worth(KEPT, "range gain").value
    assert_allclose(gain, 100 * KEPT.derived.range_gain.likely, rtol=1e-12)


def test_ranges_are_those_of_the_programme() -> None:
    plan = programme(CASE)
    for key, value in (
        ("worth per pack", plan.worth_per_pack),
        ("gain per pack", plan.gain_per_pack),
        ("programme value", plan.npv),
    ):
        figure = explain_worth(CASE, key)
        assert (figure.low, figure.high) == (value.low, value.high)


def test_the_inputs_of_the_programme_give_its_figures() -> None:
    given_in = inputs_of(explain_worth(CASE, "programme value"))
    years = [value for label, value in given_in.items() if label.startswith("n_")]
    i, gain = given_in["i"], given_in["g"]
    worth_today = sum(n * gain / (1 + i) ** y for y, n in enumerate(years, 1))
    plan = programme(CASE)
    assert_allclose(worth_today - given_in["I"], plan.npv.likely, rtol=1e-12)
    of_pack = inputs_of(explain_worth(CASE, "gain per pack"))
    money = of_pack["parts"] + of_pack["joining"] + of_pack["add-backs"]
    assert_allclose(of_pack["w"] * of_pack["dm"] - money, gain, rtol=1e-12)
    even = explain_worth(CASE, "programme break-even").value
    mean = sum(years) / len(years)
    assert_allclose(even, mean * given_in["I"] / worth_today, rtol=1e-12)
    rate = explain_worth(CASE, "internal rate").value / 100
    back = sum(n * gain / (1 + rate) ** y for y, n in enumerate(years, 1))
    assert_allclose(back, given_in["I"], rtol=1e-9)


def test_the_inputs_of_the_price_give_its_figures() -> None:
    one = inputs_of(explain_worth(CASE, "headroom"))
    recovery = one["i"] * (1 + one["i"]) ** one["n"] / ((1 + one["i"]) ** one["n"] - 1)
    once = one["I"] * recovery / one["V"]
    assert_allclose(one["I CRF / V"], once, rtol=1e-12)
    even = one["w"] * one["dm"] + one["joining that goes"] + one["old parts"] - once
    assert_allclose(even, price(CASE).even_price, rtol=1e-12)
    assert_allclose(even - one["saving asked for"], price(CASE).headroom, rtol=1e-12)
    shared = explain_worth(CASE, "shared price")
    two = inputs_of(shared)
    by_hand = two["H_0"] - two["s"] * (two["H_0"] - two["c"])
    assert_allclose(shared.value, by_hand, rtol=1e-12)


def test_a_price_says_where_its_own_inputs_come_from() -> None:
    for key in ("customer gain", "shared price"):
        figure = explain_worth(CASE, key)
        even = next(i for i in figure.inputs if i.label.startswith("H_0,"))
        assert even.source == "w dm + joining that goes + old parts - I CRF / V"
    labels = [one.label for one in explain_worth(CASE, "shared price").inputs]
    assert {"old parts", "parts", "add-backs"} <= set(labels)
    assert "joining" not in labels
    unknown = case_of(*CHANGES, study=replace(RICH, currency="CHF"))
    old = next(
        one
        for one in explain_worth(unknown, "shared price").inputs
        if one.label == "old parts"
    )
    assert old.source == "making them is not known; price given in the study"


def test_without_a_volume_the_least_worth_says_what_is_left_out() -> None:
    case = case_of(*CHANGES, study=replace(RICH, yearly_volume=None))
    figure = explain_worth(case, "least worth")
    assert "tools and validation count as nothing" in figure.formula
    assert "count as nothing" not in explain_worth(CASE, "least worth").formula
    one = inputs_of(figure)
    costs = one["parts"] + one["joining"] + one["add-backs"]
    assert_allclose(figure.value, costs / one["dm"], rtol=1e-12)


def test_the_range_of_a_price_is_the_price_at_the_ends_of_the_worth() -> None:
    for worth, end in ((10.0, "low"), (40.0, "high")):
        ends = {f"worth_{name}_per_kg": worth for name in ("low", "likely", "high")}
        other = case_of(*CHANGES, study=replace(RICH, **ends))  # type: ignore[arg-type]  # names are attributes
        for key in ("even price", "headroom", "headroom per kg", "shared price"):
            figure, there = explain_worth(CASE, key), explain_worth(other, key)
            assert_allclose(getattr(figure, end), there.value, rtol=1e-9, err_msg=key)


def test_the_inputs_of_the_vehicle_give_its_figures() -> None:
    one = inputs_of(explain_worth(CASE, "derived worth"))
    kwh = one["e"] * one["R"] / (10_000 * one["u"])
    loop = kwh / (one["eps"] / 1000)
    assert_allclose((one["dE"], one["g"]), (kwh, loop), rtol=1e-12)
    by_hand = kwh * one["C"] * (1 + one["s"]) / (1 - loop)
    assert_allclose(explain_worth(CASE, "derived worth").value, by_hand, rtol=1e-12)
    two = inputs_of(explain_worth(CASE, "driver saving"))
    annuity = (1 - (1 + two["i"]) ** -two["n"]) / two["i"]
    a_year = two["e"] * two["D"] * two["p"] / (10_000 * two["eta_c"])
    found = explain_worth(CASE, "driver saving").value
    assert_allclose(found, a_year * annuity, rtol=1e-12)
    gain = explain_worth(KEPT, "range gain")
    three = inputs_of(gain)
    assert_allclose(gain.value, three["e"] * three["dm"] / three["c"], rtol=1e-12)


def test_starting_values_carry_their_mark_and_own_ones_do_not() -> None:
    sources = {
        one.label: one.source for one in explain_worth(CASE, "derived worth").inputs
    }
    assert "from memory" in sources["R, range that is kept"]
    assert "Environ. Sci. Eur. 32 (2020) 46" in sources["e, energy by mass"]
    own = case_of(*CHANGES, study=replace(RICH, vehicle_range_km=321.0))
    sources = {
        one.label: one.source for one in explain_worth(own, "derived worth").inputs
    }
    assert sources["R, range that is kept"] == "the study"


def test_reason_and_source_of_the_worth_are_named() -> None:
    study = replace(RICH, worth_reason="agreed in May", worth_source="minutes 7")
    figure = explain_worth(case_of(*CHANGES, study=study), "worth per pack")
    assert figure.inputs[0].source == "agreed in May; minutes 7"
    silent = explain_worth(CASE, "worth per pack").inputs[0]
    assert silent.source == "the study, no reason written"


@pytest.mark.parametrize("way", [EnergyFrom.CYCLE, EnergyFrom.URBAN, EnergyFrom.STEADY])
def test_a_pattern_says_how_it_is_split_and_its_figures(way: EnergyFrom) -> None:
    cycle = DriveCycle("hill road", 5.0, (0.0, 50.0, 50.0, 20.0, 0.0)).to_text()
    study = replace(RICH, energy_from=way, drive_cycle=cycle)
    figure = explain_worth(case_of(*CHANGES, study=study), "derived worth")
    assert "sign of the whole force with air" in figure.source
    one = inputs_of(figure)
    by_hand = one["T"] / one["eta"] + one["r"] * one["eta"] * one["B"]
    assert_allclose(one["e"], by_hand, rtol=1e-12)
    named = next(i for i in figure.inputs if i.label == "e, energy by mass")
    assert ("hill road" in named.source) == (way is EnergyFrom.CYCLE)
    assert "sign of the whole force" not in explain_worth(CASE, "derived worth").source


def test_a_cycle_that_is_not_read_yet_is_said() -> None:
    study = replace(RICH, energy_from=EnergyFrom.CYCLE)
    figure = explain_worth(case_of(*CHANGES, study=study), "battery saved")
    assert any("no drive cycle has been read" in one.source for one in figure.inputs)


def test_what_is_missing_is_a_sentence_of_its_own() -> None:
    no_volume = case_of(*CHANGES, study=replace(RICH, yearly_volume=None))
    zeros = case_of(*CHANGES, study=replace(RICH, volumes=(0, 0)))
    poor = case_of(
        *CHANGES,
        study=replace(
            RICH, worth_low_per_kg=0.0, worth_likely_per_kg=0.0, worth_high_per_kg=0.0
        ),
    )
    no_price = case_of(*CHANGES, study=replace(RICH, part_price=None))
    dense = case_of(*CHANGES, study=replace(RICH, pack_density_wh_per_kg=20.0))
    for case, key, said in (
        (no_volume, "programme value", "No yearly volume is known"),
        (no_volume, "headroom", "No yearly volume is known"),
        (zeros, "payback", "volume of zero"),
        (zeros, "even price", "volume of zero"),
        (BARE, "worth per pack", "no saving"),
        (poor, "payback", "not paid back"),
        (poor, "programme break-even", "no volume"),
        (poor, "internal rate", "no rate of return"),
        (no_price, "customer gain", "No price"),
        (SHARE, "shared price", "Only a proposal"),
        (SHARE, "headroom per kg", "Nothing is made new"),
        (NO_GAP, "least worth", "No change counts"),
        (NO_GAP, "gap left", "No change counts"),
        (dense, "derived worth", "not believed"),
        (CASE, "range gain", "The range is kept"),
        (BARE, "target worth", "no target"),
    ):
        figure = explain_worth(case, key)
        assert said in figure.missing, (key, figure.missing)


def test_many_years_are_summed_up() -> None:
    study = replace(RICH, programme_years=40.0)
    labels = [
        one.label
        for one in explain_worth(
            case_of(*CHANGES, study=study), "programme value"
        ).inputs
    ]
    assert sum(label.startswith("n_") for label in labels) == 12
    assert "packs over all 40 years" in labels


def test_the_one_door_answers_too() -> None:
    assert explain(CASE.gap, "headroom").value == price(CASE).headroom
    with pytest.raises(RequestError, match="no figure"):
        explain_worth(CASE, "worth of a colour")


@settings(max_examples=60, deadline=None)
@given(study=studies(), key=st.sampled_from(WORTH_KEYS))
def test_any_assumptions_are_answered(study: Study, key: str) -> None:
    case = case_of(*CHANGES, study=study)
    figure = explain_worth(case, key)
    assert math.isnan(figure.value) == bool(figure.missing)
    if isinstance(case.programme, Problem):
        assert case.programme.what
    if not math.isnan(figure.low):
        assert Range(figure.low, figure.value, figure.high).width >= 0
