"""The figures of the Worth page: their texts, and that each says where it is from."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings

from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.worth_words import Sizing
from benchpack.report.display import Display
from benchpack.report.worth_figures import (
    Shown,
    gain_shown,
    lacking_words,
    payback_shown,
    payback_words,
    programme_figures,
    programme_shown,
    worth_shown,
)
from benchpack.report.worth_money import (
    money_scale,
    programme_money_text,
    programme_span_text,
)
from benchpack.report.worth_price import headroom_shown, price_figures, price_spec
from benchpack.report.worth_programme import programme_spec
from benchpack.report.worth_shares import price_shares, programme_shares
from benchpack.report.worth_target import (
    chance_shown,
    share_shown,
    target_figures,
    target_shown,
)
from benchpack.report.worth_vehicle import derived_shown, driver_shown
from benchpack.results.explain_worth import WORTH_KEYS, explain_worth
from benchpack.results.results import compute
from benchpack.results.worth_case import WorthCase, worth_case
from benchpack.results.worth_price import Price
from benchpack.results.worth_programme import Programme
from benchpack.units.formatting import UNKNOWN
from tests.unit.results.worth_samples import (
    CHANGES,
    RICH,
    case_of,
    studies,
    with_assumed,
)


def plain(text: str) -> str:
    """Give a text with blanks in place of those that do not break."""
    for blank in ("\u00a0", "\u2009", "\u202f"):
        text = text.replace(blank, " ")
    return text.replace("\u2212", "-")


def every_figure(case: WorthCase) -> tuple[Shown, ...]:
    return (
        worth_shown(case),
        gain_shown(case),
        programme_shown(case),
        *programme_figures(case),
        *price_figures(case),
        *price_shares(case),
        *programme_shares(case),
        derived_shown(case),
        driver_shown(case),
        target_shown(case),
        *target_figures(case, None, is_known=False),
    )


@pytest.mark.parametrize(
    ("money", "text"),
    [
        (5_850_351.0, "5.85 million EUR"),
        (-20_057_000.0, "-20.1 million EUR"),
        (123_456_789.0, "123 million EUR"),
        (999_499.0, "999 499 EUR"),
        (999_500.0, "1.00 million EUR"),
        (810_000.0, "810 000 EUR"),
        (0.0, "0 EUR"),
        (math.nan, "–"),
    ],
)
def test_money_of_a_programme_is_written_in_millions(money: float, text: str) -> None:
    assert plain(programme_money_text(money, Display(Study()))) == text


def test_a_range_of_money_stands_in_the_unit_of_its_figure() -> None:
    display = Display(Study(decimal_mark=","))
    span = programme_span_text(Range(-2e7, 5.85e6, 2.51e7), display)
    assert plain(span) == "(-20,0 to 25,1)"
    assert programme_span_text(Range.exactly(5e6), display) == ""
    small = programme_span_text(Range(100.0, 900.0, 2e6), display)
    assert plain(small) == "(100 to 2 000 000)"


def test_a_scale_suits_the_greatest() -> None:
    display = Display(Study())
    assert money_scale((10.0, -3e6, math.nan), display).size == 1e6
    assert money_scale((10.0, -3e5), display).size == 1.0
    assert money_scale((), display).unit == "EUR"


def test_each_figure_is_known_just_where_its_explanation_is() -> None:
    for case in (case_of(*CHANGES), case_of(), case_of(study=Study())):
        for shown in every_figure(case):
            if shown.key not in WORTH_KEYS:
                continue
            figure = explain_worth(case, shown.key)
            is_known = shown.text not in (UNKNOWN, "none")
            if shown.key == "payback" and shown.text == "never":
                assert not math.isfinite(figure.value)
                continue
            if is_known and shown.key not in ("payback", "programme break-even"):
                assert math.isfinite(figure.value), shown
            if not is_known:
                assert shown.why, shown
                assert not math.isfinite(figure.value), shown


def test_every_key_of_the_worth_is_shown_somewhere() -> None:
    case = case_of(*CHANGES, study=replace(RICH, sizing=Sizing.BATTERY_KEPT))
    keys = {shown.key for shown in every_figure(case)}
    # The steps of the vehicle, and the charts of what matters, show the others.
    others = {"battery saved", "range gain", "expected programme value"}
    assert set(WORTH_KEYS) - keys <= others


def test_texts_are_the_figures_of_the_case() -> None:
    case = case_of(*CHANGES)
    price, programme = case.price, case.programme
    assert isinstance(price, Price)
    assert isinstance(programme, Programme)
    headroom, per_kg = headroom_shown(case)
    assert plain(headroom.text) == f"{price.headroom:.0f} EUR"
    assert plain(per_kg.text) == f"{price.per_kg:.2f} EUR/kg"
    years = programme.payback_years
    assert plain(payback_shown(case).text) == f"after {years:.1f} years"
    assert payback_words(case).startswith("paid back after")
    why = programme_shown(case).why
    assert "all that is worse at once, or all that is better; interest stays" in why


def test_without_spending_nothing_is_paid_back() -> None:
    case = case_of(study=RICH)
    assert payback_words(case) == "nothing is spent once"
    assert payback_shown(case).text == "nothing is spent"


def test_what_never_pays_says_so() -> None:
    case = case_of(*CHANGES, study=replace(RICH, yearly_volume=1))
    assert payback_words(case) == "not paid back"
    assert payback_shown(case).text == "never"
    poor = replace(RICH, worth_low_per_kg=0, worth_likely_per_kg=0, worth_high_per_kg=0)
    volume = programme_figures(case_of(CHANGES[0], study=poor))[2]
    assert volume.text == "no volume"


@pytest.mark.parametrize("unit", ["kg", "lb"])
def test_worths_follow_the_mass_unit(unit: str) -> None:
    case = case_of(*CHANGES, study=replace(RICH, mass_unit=unit))
    for shown in (derived_shown(case), driver_shown(case), headroom_shown(case)[1]):
        assert shown.text.endswith(f"EUR/{unit}"), shown
    assert f" {unit}" in plain(target_shown(case).text)


def test_without_a_target_the_figures_say_what_to_do() -> None:
    case = case_of(*CHANGES, study=replace(RICH, target_kg=None))
    assert target_shown(case).text == "none"
    for shown in (share_shown(case), chance_shown(case, None, is_known=True)):
        assert (shown.text, "Enter" in shown.why) == (UNKNOWN, True)


def test_a_price_that_is_given_names_itself() -> None:
    shown = price_figures(case_of(*CHANGES))[-1]
    assert plain(shown.label) == "Customer's gain at 45 EUR"
    without = price_figures(case_of(*CHANGES, study=replace(RICH, part_price=None)))
    assert "Enter the price" in without[-1].why


@pytest.mark.parametrize("asked", [0.0, 10.0])
def test_no_price_stands_there_under_two_names(asked: float) -> None:
    """The headroom is the price that leaves the saving asked for."""
    case = case_of(*CHANGES, study=replace(RICH, required_saving=asked))
    shown = price_figures(case)
    assert len(shown) == len({one.key for one in shown}) == 5
    room = headroom_shown(case)[0].text
    wanted = {"headroom"} if asked else {"headroom", "even price"}
    assert {one.key for one in shown if one.text == room} == wanted


def test_no_price_is_said_in_words() -> None:
    case = case_of(*CHANGES, study=replace(RICH, required_saving=1e6))
    headroom, per_kg = headroom_shown(case)
    assert (headroom.whole, per_kg.text) == ("none", "none")
    assert "No price leaves the saving that is asked for" in headroom.why
    assert price_figures(case)[0].text != "none"
    found = case_of(*CHANGES).price
    assert isinstance(found, Price)
    asked = found.headroom + 10.0 + 1.0  # a little more than the likely worth leaves
    near = headroom_shown(case_of(*CHANGES, study=replace(RICH, required_saving=asked)))
    assert near[0].text == "none"
    assert plain(near[0].span).startswith("(none to ")
    assert "1 EUR short of it" in plain(near[0].why)


def test_prices_show_the_range_that_their_explanation_gives() -> None:
    case = case_of(*CHANGES)
    for shown in price_figures(case):
        figure = explain_worth(case, shown.key)
        if shown.key == "headroom per kg":
            continue
        ends = f"({figure.low:.0f} to {figure.high:.0f})"
        assert plain(shown.span) == ends, shown.key
    low, likely, high = case.study.worth_per_kg
    saved = case.saving.saved_kg
    assert saved is not None
    even = explain_worth(case, "even price")
    assert even.low == pytest.approx(even.value - saved.likely * (likely - low))
    assert even.high == pytest.approx(even.value + saved.likely * (high - likely))


def test_costs_that_are_not_known_are_named_where_the_money_stands() -> None:
    case = case_of(*CHANGES)
    assert case.proposal is not None
    assert bool(lacking_words(case)) == bool(case.proposal.totals.unknown)
    in_francs = case_of(*CHANGES, study=replace(RICH, currency="CHF"))
    assert in_francs.proposal is not None
    assert in_francs.proposal.totals.unknown
    said = lacking_words(in_francs)
    assert said.startswith("Costs not known count as nothing: ")
    assert said in programme_spec(in_francs).note
    assert said in price_spec(in_francs).note
    assert said in programme_shown(in_francs).why
    alone = case_of()
    assert lacking_words(alone) == ""
    assert alone.saving.note is not None
    given = with_assumed(alone, old_part_price=60.0)
    assert alone.saving.note.what in price_spec(given).note


@given(study=studies())
@settings(max_examples=60)
def test_any_assumptions_give_texts_or_a_reason(study: Study) -> None:
    library = case_of(*CHANGES, study=study).gap.library
    case = worth_case(compute(library, study))
    for shown in every_figure(case):
        assert shown.text
        assert "nan" not in shown.whole
        assert "inf" not in shown.whole.replace("infin", "")
        assert shown.text != UNKNOWN or shown.why, shown
