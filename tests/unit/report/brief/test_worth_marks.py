"""A brief gives each figure of the worth its mark, and the plan as it was entered."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest

from benchpack.files.demo import demo_library
from benchpack.model.ranges import Range
from benchpack.report.brief.assumptions_section import assumptions_blocks
from benchpack.report.brief.blocks import Audience, Block, Paragraph, Table
from benchpack.report.brief.worth_money_section import programme_blocks
from benchpack.report.brief.worth_vehicle_section import vehicle_blocks
from benchpack.report.plain_table import plain_spaces
from benchpack.report.worth_vehicle_steps import vehicle_steps
from benchpack.results.explained_assumed import source_of
from benchpack.results.results import compute
from benchpack.results.worth_case import WorthCase, worth_case

MEMORY = "starting value, from memory"
ENDS = "all that is worse at once, or all that is better; the interest stays"


def demo(**study: Any) -> WorthCase:
    library = demo_library()
    return worth_case(compute(library, replace(library.first_study(), **study)))


def rows(blocks: tuple[Block, ...]) -> dict[str, tuple[str, ...]]:
    (table,) = (one for one in blocks if isinstance(one, Table))
    return {one[0]: tuple(map(plain_spaces, one[1:])) for one in table.rows}


def notes(blocks: tuple[Block, ...]) -> Iterator[str]:
    for one in blocks:
        if isinstance(one, Paragraph):
            yield plain_spaces(one.text)


def planned(**study: Any) -> str:
    case = demo(**study)
    blocks = assumptions_blocks(case.gap, case.proposal, None, Audience.INTERNAL)
    return rows(blocks)["programme"][0]


@pytest.mark.parametrize(
    ("study", "said"),
    [
        ({"volumes": (20_000, 40_000, 60_000)}, "by year 20 000, 40 000, 60 000"),
        (
            {"volumes": (1_000,) * 11, "yearly_volume": None},
            "11 000 packs in all over 11 years",
        ),
        ({"yearly_volume": 9_000, "programme_years": 3.5}, "9 000 a year, 3.5 years"),
        ({"yearly_volume": None, "programme_years": 7.0}, "42 000 a year, 7 years"),
    ],
)
def test_the_plan_is_printed_as_it_was_entered(
    study: dict[str, Any], said: str
) -> None:
    """Never the even volume of the same present value."""
    assert planned(**study).endswith(said)


def test_energy_by_mass_is_given_only_where_somebody_gave_it() -> None:
    start = demo(mass_energy=Range(0.4, 0.6, 0.9), energy_price=0.25)
    maker = rows(vehicle_blocks(start, Audience.INTERNAL))
    steps = maker["by the vehicle, for the maker"][1]
    assert f"({source_of(start.study, 'mass_energy')})" in steps
    assert "(given)" not in steps
    own = demo(mass_energy=Range(0.4, 0.7, 0.9))
    steps = rows(vehicle_blocks(own, Audience.CUSTOMER))[
        "by the vehicle, for the maker"
    ][1]
    assert "(0.40 to 0.90), range kept at 260 km (the study)" in steps


def test_every_figure_of_the_vehicle_has_a_mark() -> None:
    case = demo(usable_share=0.9, driver_years=4.0)
    found = rows(vehicle_blocks(case, Audience.INTERNAL))
    steps = found["by the vehicle, for the maker"][1]
    assert "share of the energy used 90 % (the study)" in steps
    assert "(gross energy over mass of Avocet 81)" in steps
    assert f"one more kWh 100 EUR/kWh (80 to 140) ({MEMORY})" in steps
    driver = found["for the driver: another pocket, never added"][1]
    assert "4 years (the study)" in driver
    assert f"({MEMORY})" in driver
    for part in (*steps.split("; "), *driver.split("; ")):
        assert "(" in part or part.startswith("ends within"), part


def test_in_another_currency_a_brief_makes_nothing_of_euros() -> None:
    case = demo(currency="JPY")
    for audience in Audience:
        blocks = vehicle_blocks(case, audience)
        found = rows(blocks)
        maker = found["by the vehicle, for the maker"]
        driver = found["for the driver: another pocket, never added"]
        assert "JPY" not in "".join((*maker, *driver))
        said = " ".join(notes(blocks))
        assert "Cost of battery is a starting value in EUR." in said
        assert "Price of energy is a starting value in EUR." in said
        assert ("Enter it in JPY." in said) == (audience is Audience.INTERNAL)


def test_a_worth_without_a_reason_is_a_starting_value() -> None:
    case = demo(worth_reason="", worth_source="")
    (entered, *_) = rows(vehicle_blocks(case, Audience.INTERNAL)).values()
    assert entered[1] == f"{MEMORY}, no reason written"
    told = assumptions_blocks(case.gap, None, None, Audience.INTERNAL)
    assert rows(told)["worth of the mass saved"][1].startswith(MEMORY)


def test_the_range_of_the_programme_is_what_it_is() -> None:
    (said,) = notes(programme_blocks(demo(), Audience.CUSTOMER))
    assert ENDS in said


def test_the_steps_on_the_page_bear_the_same_marks() -> None:
    steps = {one.words: one for one in vehicle_steps(demo())}
    assert steps["cost of one more kWh"].source == MEMORY
    assert steps["density of the battery saved"].source == (
        "gross energy over mass of Avocet 81"
    )
    yen = {one.words: one for one in vehicle_steps(demo(currency="JPY"))}
    assert yen["cost of one more kWh"].source == "starting value in EUR, from memory"
    assert "JPY" not in yen["cost of one more kWh"].text
