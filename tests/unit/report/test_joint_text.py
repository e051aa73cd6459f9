"""What is said of joints: amounts, what goes, what fasteners are worth."""

from __future__ import annotations

from dataclasses import replace

import pytest

from benchpack.report.display import Display
from benchpack.report.joint_text import (
    amount_text,
    compared_text,
    counted_text,
    fate_text,
    joint_money_text,
    mass_range_text,
    seconds_text,
    selection_text,
    unknown_texts,
    worth_text,
)
from benchpack.report.joints_print import inventory_text
from benchpack.results.inventory import Measure, totals_of
from benchpack.results.joint_comparison import ComparedRow, fastener_worth
from benchpack.results.joint_facts import JointFacts, joint_facts
from tests.unit.results.joint_samples import EUR, PLATE, facts, joint, stock, weighed

SHOWN = Display(EUR)
CLIPS = joint("clips", family="clip", designation="edge clip", count=64)


def plain(text: str) -> str:
    """Give a text with plain blanks in place of thin ones and those that bind."""
    return text.replace("\u2009", " ").replace("\u00a0", " ")


def test_the_plate_is_answered_in_one_line() -> None:
    said = selection_text([joint_facts(PLATE, EUR)], EUR)
    assert plain(said) == (
        "16 screws: 92.8 g, 96 s, 3.76 EUR a pack. They go if the connector plate is "
        "moulded in."
    )


def test_what_is_not_known_at_all_is_said_once() -> None:
    odd = joint_facts(replace(PLATE, family="thing", designation="as drawn"), EUR)
    said = plain(selection_text([odd], EUR))
    assert said.startswith("16 pieces: mass, time and money not known. They go")


def test_pounds_and_commas_are_the_study_s() -> None:
    study = replace(EUR, mass_unit="lb", decimal_mark=",")
    heavy = joint_facts(replace(PLATE, count=160), study)
    said = plain(selection_text([heavy], study))
    assert said.startswith("160 screws: 2,0 lb, 960 s, 38 EUR a pack.")


@pytest.mark.parametrize(
    ("seconds", "text"),
    [(4600, "4 600 s"), (96.4, "96 s"), (1.8, "1.8 s"), (3, "3 s"), (0, "0 s")],
)
def test_seconds(seconds: float, text: str) -> None:
    assert plain(seconds_text(seconds, SHOWN)) == text


@pytest.mark.parametrize(
    ("value", "text"),
    [(0.07, "0.07 EUR"), (9.99, "9.99 EUR"), (134.4, "134 EUR"), (9.996, "10 EUR")],
)
def test_money(value: float, text: str) -> None:
    assert plain(joint_money_text(value, SHOWN)) == text


def test_a_sum_that_lacks_rows_is_at_least_that() -> None:
    known, unknown = joint_facts(PLATE, EUR), joint_facts(CLIPS, EUR)
    both = totals_of([known, unknown])
    assert plain(amount_text(both, Measure.MASS, SHOWN)) == "at least 92.8 g"
    assert amount_text(totals_of([unknown]), Measure.MASS, SHOWN) == "–"
    assert plain(amount_text(both, Measure.TIME, SHOWN)) == "288 s"


def test_the_range_of_a_mass_is_two_standard_uncertainties() -> None:
    totals = totals_of([facts(family="hex screw", designation="ISO 4017 M8x25")])
    low, high = totals.mass_kg - 2 * totals.mass_u_kg, totals.mass_kg
    assert low < high
    assert plain(mass_range_text(totals, SHOWN)) == "14.1 g (12.9 to 15.2)"
    bare = totals_of([facts(family="clip", mass_each_g=2.0)])
    assert plain(mass_range_text(bare, SHOWN)) == "2.0 g"


@pytest.mark.parametrize(
    ("held", "text"),
    [
        ((), "no joints"),
        ((facts(family="clip"),), "1 piece"),
        ((facts(family="nut", count=2),), "2 nuts"),
        (
            (facts(family="blind rivet", count=3), facts(family="solid rivet")),
            "4 rivets",
        ),
        ((facts(family="clip", count=2), facts(family="nut")), "3 pieces"),
        ((facts(count=5),), "5 pieces"),
        ((facts(family="gasket", length_mm=5920.0),), "5.9 m of seal"),
        (
            (
                facts(family="stud", count=1200),
                facts(family="arc weld", length_mm=500.0),
            ),
            "1 200 screws and 0.5 m of seams and beads",
        ),
    ],
)
def test_what_is_counted(held: tuple[JointFacts, ...], text: str) -> None:
    assert plain(counted_text(held, SHOWN)) == text


def test_what_has_to_stay_says_why() -> None:
    stays = joint_facts(replace(PLATE, carry_over=True, reason="harness is fixed"), EUR)
    free = joint_facts(weighed("free", 3.0, joins="connector plate"), EUR)
    assert fate_text([stays]) == "They have to stay: harness is fixed."
    assert fate_text([stays, free]) == (
        "Of them plate screws has to stay: harness is fixed."
    )
    bare = replace(stays, joint=replace(stays.joint, reason=""))
    assert fate_text([bare]) == "They have to stay; no reason is recorded."
    assert fate_text([]) == ""


def test_joints_of_one_part_go_with_it_and_others_do_not() -> None:
    ends = [("lid", "tray"), ("tray", "rail"), ("rail", "sill")]
    held = [facts(joins=one, to=other) for one, other in ends]
    assert fate_text(held[:2]) == "They go if the tray is moulded in."
    assert fate_text(held[:1]) == "It goes if the lid is moulded in."
    assert fate_text(held) == ""


def test_fasteners_pay_in_time_and_money() -> None:
    screws = weighed(
        "screws",
        9.5,
        family="flange screw",
        count=620,
        time_each_s=7.42,
        cost_each=0.098,
    )
    said = worth_text(fastener_worth(stock(screws), EUR), EUR)
    assert plain(said) == (
        "All 620 fasteners weigh 5.9 kg: at 3.00 EUR/kg that is 18 EUR of mass; they "
        "cost 61 EUR in pieces and 4 600 s, 134 EUR of labour and station time. "
        "Removing them pays in time and money, rarely in kilograms."
    )


def test_what_is_not_known_of_fasteners_is_not_made_up() -> None:
    dollars = replace(EUR, currency="USD")
    held = stock(replace(PLATE, cost_each=0.1), CLIPS, study=dollars)
    said = plain(worth_text(fastener_worth(held, dollars), dollars))
    assert said == (
        "All 80 fasteners weigh at least 92.8 g: at 3.00 USD/kg that is at least "
        "0.28 USD of mass; they cost at least 1.60 USD in pieces and 288 s, 8.40 USD "
        "of labour and station time."
    )
    none = worth_text(fastener_worth(stock(CLIPS, study=dollars), dollars), dollars)
    assert plain(none).startswith(
        "What the 64 fasteners weigh is not known; they cost an unknown sum in pieces"
    )
    assert worth_text(fastener_worth(stock(), EUR), EUR) == (
        "No screws, nuts, inserts, rivets or clips are recorded."
    )


def test_a_worth_that_beats_the_cost_is_said_too() -> None:
    rich = replace(EUR, worth_likely_per_kg=900.0, worth_high_per_kg=900.0)
    said = worth_text(fastener_worth(stock(PLATE, study=rich), rich), rich)
    assert said.endswith("their mass counts for more than their pieces and time.")


def test_rows_that_lack_something_are_named_with_the_remedy() -> None:
    unstated = joint("odd", family="clip", mass_each_g=1.0, cost_each=0.1)
    held = stock(CLIPS, unstated, joint("what"), study=replace(EUR, currency="USD"))
    mass, time, money, unstated_mass = unknown_texts(held)
    assert mass == (
        "2 of 3 rows have no mass: clips and what. Weigh 20 of each and divide."
    )
    assert time == "1 of 3 rows has no time: what. Enter the seconds that one takes."
    assert money == (
        "2 of 3 rows have no cost or time: clips and what. Usual costs are known in "
        "EUR only: enter the cost of one in USD."
    )
    assert unstated_mass == (
        "1 of 3 rows does not say how its mass is known: the sum has no range."
    )
    assert unknown_texts(stock(PLATE)) == ()


@pytest.mark.parametrize(
    ("unit", "value", "text"),
    [
        ("", 1433.0, "1 433"),
        ("kg", 8.39, "8.4"),
        ("kg/kWh", 0.1036, "0.10"),
        ("%", 0.056, "6 %"),
        ("s", 7639.6, "7 640"),
        ("EUR", 365.4, "365.4"),
        ("m", float("nan"), "–"),
    ],
)
def test_compared_figures(unit: str, value: float, text: str) -> None:
    row = ComparedRow("one", unit, value, value, 0.0)
    assert plain(compared_text(row, value, EUR)) == text


def test_a_difference_has_the_digits_of_its_row() -> None:
    row = ComparedRow("Mass", "kg", 8.4, 8.3, 0.1)
    assert compared_text(row, row.difference, EUR) == "0.1"
    pounds = replace(EUR, mass_unit="lb")
    assert compared_text(row, row.subject, pounds) == "18.5"


PRINTED = """\
Joints of Heron 70: 3 rows, 80 pieces and 0.9 m of seal.
All 80 fasteners weigh at least 92.8 g: at 3.00 EUR/kg that is at least 0.28 EUR of \
mass; they cost 4.80 EUR in pieces and 288 s, 8.40 EUR of labour and station time.

kind          rows  pieces    m     kg   u kg    s    EUR
socket screw     1      16  0.0  0.093  0.004   96   3.76
gasket           1       0  0.9  0.052  0.000   27   2.77
clip             1      64  0.0      –      –  192   9.44
all              3      80  0.9  0.145  0.004  315  15.97
have to stay     1       0  0.9  0.052  0.000   27   2.77

Distinct sizes of fasteners (1): M6x16.
Distinct drives (1): socket 5.
Distinct tools, drives among them (2): gasket and socket 5.
Their time fills 6 stations at a takt time of 60 s.
Length of seal: 0.9 m.
Mass of the joints: 0.14 kg (0.14 to 0.15); that of 1 row was worked out, known by \
standard table.
1 of 3 rows has no mass: clips. Weigh 20 of each and divide."""


def test_the_printed_inventory() -> None:
    gasket = weighed("gasket", 52.2, family="gasket", length_mm=900.0, carry_over=True)
    assert inventory_text(stock(PLATE, gasket, CLIPS), EUR) == PRINTED
