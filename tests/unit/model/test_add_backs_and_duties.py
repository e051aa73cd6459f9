"""The tables of add-backs and of functions that are validated again."""

from __future__ import annotations

import pytest
from numpy.testing import assert_allclose

from benchpack.model.add_backs import ADD_BACK_KEYS, ADD_BACKS, AddBack, Per
from benchpack.model.duties import DUTIES, Duty, duties_for
from benchpack.model.material import MARKS
from benchpack.model.touches import Touch


@pytest.mark.parametrize("add_back", ADD_BACKS, ids=lambda one: one.key)
def test_an_add_back_says_where_it_comes_from(add_back: AddBack) -> None:
    assert add_back.mark in MARKS[1:]
    assert add_back.source
    assert add_back.rule.endswith(".")
    assert 0 < add_back.mass_kg.low < add_back.mass_kg.high
    # What goes by an area has a mass for the pack too, for parts without one.
    assert (add_back.pack_mass_kg is not None) == (add_back.per is Per.AREA)


def test_add_backs_of_a_polymer_enclosure() -> None:
    # Working ranges of the trade, from memory.
    ranges = {one.key: (one.pack_mass_kg or one.mass_kg).ends for one in ADD_BACKS}
    assert ranges["shield foil"][::2] == (0.3, 1.0)
    assert ranges["bonding straps"][::2] == (0.1, 0.4)
    assert ranges["compression limiters"][::2] == (0.005, 0.020)
    assert ranges["fire barrier"][::2] == (1.0, 4.0)
    assert ranges["bottom shield"][::2] == (4.0, 12.0)
    assert ranges["mount ring"][::2] == (3.0, 8.0)
    assert ranges["seal groove"][::2] == (0.3, 1.0)
    assert len(ADD_BACK_KEYS) == len(set(ADD_BACK_KEYS)) == 8


def test_masses_by_the_area_are_those_of_a_sheet() -> None:
    foil, plate, mica = (
        next(one for one in ADD_BACKS if one.key == key)
        for key in ("shield foil", "heat plate", "fire barrier")
    )
    assert_allclose(foil.mass_kg.likely, 2700 * 0.1e-3)
    # Derived: 0.1 mm of aluminium over a lid of 1.7 m2 is 0.46 kg.
    assert_allclose(foil.mass_kg.likely * 1.7, 0.46, atol=0.005)
    assert_allclose(plate.mass_kg.ends, [2700 * wall * 1e-3 for wall in (1, 2, 3)])
    low, high = (end * 1.7 for end in mica.mass_kg.ends[::2])
    assert (round(low, 1), round(high)) == (1.5, 3)


@pytest.mark.parametrize("duty", DUTIES, ids=lambda one: one.key)
def test_a_duty_says_what_is_required_and_how_sure_that_is(duty: Duty) -> None:
    assert duty.when
    for rule in duty.rules:
        assert rule.requirement
        assert rule.mark in MARKS[1:]
        # What was read has to say in what; a clause is not always known.
        assert rule.source
        assert rule.mark == "from memory" or rule.source != "recalled, not read"


def test_what_a_digest_confirms_carries_its_clause() -> None:
    found = {duty.key: duty.rules[0] for duty in DUTIES}
    assert found["crush"].clause == "GB 38031-2025, 8.2.4 and 5.2.4"
    assert "100 kN or 30 %" in found["crush"].requirement
    assert found["bottom impact"].clause == "GB 38031-2025, 8.2.16"
    assert "150 J" in found["bottom impact"].requirement
    assert found["equipotential bonding"].requirement.startswith("under 0.1 ohm")
    assert {rule.mark for rule in (found["crush"], found["bottom impact"])} == {
        "confirmed"
    }


def test_each_touch_leads_to_something() -> None:
    asked = frozenset().union(*(duty.when for duty in DUTIES))
    asked |= {add_back.when for add_back in ADD_BACKS}
    assert asked == frozenset(Touch)


def test_duties_stand_in_the_order_of_the_table() -> None:
    everything = duties_for(frozenset(Touch))
    assert everything == DUTIES
    assert duties_for(frozenset()) == ()
    lid = [duty.key for duty in duties_for(frozenset({Touch.LID}))]
    assert lid == [
        "vibration",
        "immersion",
        "external fire",
        "thermal propagation",
        "touch protection",
        "gas venting",
    ]
