"""The price ladder: it adds up, and what is no price is said in words."""

from __future__ import annotations

from dataclasses import replace

from numpy.testing import assert_allclose

from benchpack.report.worth_price import price_spec
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_price import Price
from tests.unit.report.test_worth_figures import plain
from tests.unit.results.worth_samples import CHANGES, RICH, case_of


def the_price(case: WorthCase) -> Price:
    assert isinstance(case.price, Price)
    return case.price


def test_the_price_ladder_ends_at_the_headroom() -> None:
    case = case_of(*CHANGES)
    found, spec = the_price(case), price_spec(case)
    even = spec.names.index("customer is even")
    room = spec.names.index("headroom")
    assert spec.kinds[even] == spec.kinds[room] == "sum"
    assert_allclose(spec.values[:even].sum(), found.even_price)
    assert_allclose(spec.values[even], found.even_price)
    assert_allclose(spec.values[even:room].sum(), found.headroom)
    assert_allclose(spec.values[room], found.headroom)
    assert spec.target == found.cost
    assert f"{found.headroom:.0f} EUR a pack" in plain(spec.title)
    word = "above" if found.headroom >= found.cost else "below"
    assert f"{word} our cost" in spec.title


def test_without_a_saving_asked_for_the_ladder_ends_where_the_customer_is_even() -> (
    None
):
    study = replace(RICH, required_saving=0.0, part_price=None)
    spec = price_spec(case_of(*CHANGES, study=study))
    assert spec.names[-1] == "customer is even"


def test_a_price_that_is_given_has_its_place_on_the_ladder() -> None:
    spec = price_spec(case_of(*CHANGES))
    assert (spec.names[-1], spec.kinds[-1]) == ("price given", "sum")
    assert spec.values[-1] == RICH.part_price == 45.0
    even = the_price(case_of(*CHANGES)).even_price
    assert even > 45.0
    below = f"The price given, 45 EUR, is {even - 45:.0f} EUR below what leaves"
    assert below in plain(spec.note)
    dear = price_spec(case_of(*CHANGES, study=replace(RICH, part_price=even + 20)))
    assert "is 20 EUR above what leaves the customer even" in plain(dear.note)
    just = price_spec(case_of(*CHANGES, study=replace(RICH, part_price=even)))
    assert "the customer is just even" in just.note
    without = price_spec(case_of(*CHANGES, study=replace(RICH, part_price=None)))
    assert "price given" not in (*without.names, without.note)


def test_a_price_below_zero_is_none() -> None:
    case = case_of(*CHANGES, study=replace(RICH, required_saving=1e6))
    spec = price_spec(case)
    assert "headroom" not in spec.names
    assert spec.names[spec.names.index("saving asked for") + 1] == "no price left"
    assert "No price of the new parts leaves" in spec.title


def test_a_price_without_proposal_has_no_cost_of_ours() -> None:
    spec = price_spec(case_of())
    assert (spec.target, spec.target_text) == (None, "")
    assert "our cost" not in spec.title
    dear = price_spec(case_of(study=replace(RICH, required_saving=1e6)))
    assert dear.title.startswith("No price of the new parts")


def test_our_cost_above_what_leaves_the_customer_even_is_said() -> None:
    poor = replace(RICH, worth_low_per_kg=0, worth_likely_per_kg=0, worth_high_per_kg=0)
    case = case_of(CHANGES[0], study=replace(poor, old_part_price=0.0))
    assert the_price(case).whole_gain < 0
    assert "nothing to share" in price_spec(case).note


def test_what_costs_the_customer_money_even_for_nothing_is_said() -> None:
    poor = replace(RICH, worth_low_per_kg=0, worth_likely_per_kg=0, worth_high_per_kg=0)
    case = case_of(CHANGES[0], study=replace(poor, old_part_price=0.0))
    assert the_price(case).even_price < 0
    spec = price_spec(case)
    assert spec.title == "No price of the new parts leaves the customer even"
    assert "customer is even" not in spec.names
