"""The customer's part and ours: they add up, per pack and over the programme."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.calc.worth import programme_npv
from benchpack.files.demo import demo_library
from benchpack.model.study import Study
from benchpack.report.display import Display
from benchpack.report.worth_figures import programme_shown
from benchpack.report.worth_money import programme_money_text
from benchpack.report.worth_price import price_spec
from benchpack.report.worth_shares import parts_texts, price_shares, programme_shares
from benchpack.results.results import compute
from benchpack.results.worth_case import worth_case
from benchpack.results.worth_price import Price
from benchpack.results.worth_programme import Programme
from benchpack.results.worth_shares_of_gain import GainShares, shares_of_programme
from benchpack.units.formatting import UNKNOWN
from tests.unit.results.worth_samples import CHANGES, RICH, case_of


def plain(text: str) -> str:
    """Give a text with blanks in place of those that do not break."""
    for blank in ("\u00a0", "\u2009", "\u202f"):
        text = text.replace(blank, " ")
    return text.replace("\u2212", "-")


@pytest.mark.parametrize(
    ("whole", "part", "texts"),
    [
        (26.6, 13.3, ("26.6 EUR", "13.3 EUR", "13.3 EUR")),
        (28.0, 7.0, ("28 EUR", "7 EUR", "21 EUR")),
        (1.4, 0.7, ("1.4 EUR", "0.7 EUR", "0.7 EUR")),
        (0.5, 0.25, ("0 EUR", "0 EUR", "0 EUR")),
        (-12.4, -3.1, ("-12 EUR", "-3 EUR", "-9 EUR")),
    ],
)
def test_parts_add_up_to_the_whole_that_is_shown(
    whole: float, part: float, texts: tuple[str, ...]
) -> None:
    shown = [plain(text) for text in parts_texts(whole, part, Display(Study()))]
    assert tuple(shown) == texts
    first, second, third = (float(text.removesuffix(" EUR")) for text in shown)
    assert first == pytest.approx(second + third)


@given(
    st.floats(-1e5, 1e5).map(lambda value: round(value, 3)),
    st.sampled_from((0.0, 0.1, 0.25, 1 / 3, 0.5, 0.7, 1.0)),
)
def test_any_parts_add_up(whole: float, share: float) -> None:
    shown = parts_texts(whole, share * whole, Display(Study()))
    first, second, third = (
        float(plain(text).removesuffix(" EUR").replace(" ", "")) for text in shown
    )
    assert first == pytest.approx(second + third)
    assert abs(first - whole) <= 0.5
    assert abs(second - share * whole) <= 0.5
    assert abs(third - (1 - share) * whole) <= 0.5


def test_both_parts_stand_per_pack_and_over_the_programme() -> None:
    case = case_of(*CHANGES, study=replace(RICH, customer_share=0.25))
    found, plan = case.price, case.programme
    assert isinstance(found, Price)
    assert isinstance(plan, Programme)
    customer, ours = price_shares(case)
    assert plain(customer.label) == "Customer's part, 25 %"
    assert plain(ours.label) == "Our part, 75 %"
    whole, *parts = parts_texts(found.whole_gain, found.customer_part, Display(RICH))
    assert [customer.text, ours.text] == parts
    assert whole in price_spec(case).note
    packs = programme_npv(1.0, plan.volumes, discount_rate=RICH.discount_rate)
    millions = []
    for shown, part in zip(
        programme_shares(case), (found.customer_part, found.supplier_part), strict=True
    ):
        assert "present value" in shown.why
        text = plain(shown.text).removesuffix(" million EUR")
        millions.append(float(text))
        assert millions[-1] * 1e6 == pytest.approx(float(packs) * part, abs=5e4)
    whole = programme_money_text(float(packs) * found.whole_gain, Display(RICH))
    assert f"{sum(millions):.1f} million EUR" == plain(whole)


def test_the_parts_of_a_programme_add_up_to_its_value() -> None:
    demo = demo_library()
    case = worth_case(compute(demo, demo.first_study()))
    assert plain(programme_shown(case).text) == "5.85 million EUR"
    texts = [plain(one.text) for one in programme_shares(case)]
    assert texts == ["2.925 million EUR", "2.925 million EUR"]


def test_the_whole_gain_of_a_programme_is_its_value() -> None:
    demo = demo_library()
    case = worth_case(compute(demo, demo.first_study()))
    assert isinstance(case.price, Price)
    # Nothing else is known of making the old parts than what is paid for them.
    assert math.isnan(case.saving.old_cost)
    found, plan = shares_of_programme(case), case.programme
    assert isinstance(found, GainShares)
    assert isinstance(plan, Programme)
    assert found.whole.likely == pytest.approx(plan.npv.likely, rel=1e-9)
    both = found.customer + found.supplier
    assert both.ends == pytest.approx(found.whole.ends)


def test_shares_that_cannot_be_said_say_why() -> None:
    for shown in (*price_shares(case_of()), *programme_shares(case_of())):
        assert shown.text == UNKNOWN
        assert "only a proposal says" in shown.why
    bare = case_of(study=Study())
    for shown in (*price_shares(bare), *programme_shares(bare)):
        assert (shown.text, bool(shown.why)) == (UNKNOWN, True)
