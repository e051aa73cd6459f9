"""The proposal of the demo, computed again from its CSV files without the package.

Only the standard library reads and computes in `demo_files` and `demo_by_hand`; here
the figures of the package are held against it.
"""

from __future__ import annotations

import json
import math
from functools import cache

import pytest

from benchpack.files.reading import read_any
from benchpack.model.ranges import Range
from benchpack.results.proposal import ProposalResults, proposal
from benchpack.results.proposal_effect import Effect
from tests.unit.report.demo_by_hand import (
    add_back_cost,
    crf,
    gone,
    joining_cost,
    lid_add_backs_kg,
    lid_kg,
    net_worth,
    panel_ratio,
    part_cost,
    per_pack,
    saved_kg,
    seconds,
    tooling,
)
from tests.unit.report.demo_files import (
    BUSBAR,
    COUNTED,
    DATASETS,
    DUCTS,
    FILLER,
    FLOOR,
    LID,
    PLATE,
    REFERENCE,
    RIM,
    STUDY,
    SUBJECT,
    Ends,
    change,
    given,
    joint,
    joint_kg,
    number,
    pack,
    part,
    part_kg,
    rows,
    total,
)


@cache
def results(name: str = STUDY) -> ProposalResults:
    library = read_any(DATASETS / "demo").library
    return proposal(library, next(one for one in library.studies if one.name == name))


def effect(name: str) -> Effect:
    found = results().effect(name)
    assert found is not None
    return found


def same(found: Range, wanted: Ends) -> None:
    assert found.ends == pytest.approx(wanted, rel=1e-9, abs=1e-9)


def test_the_changes_that_are_on_all_count() -> None:
    own = rows("demo/changes.csv", "change").values()
    on = [r["change"] for r in own if r["study"] == STUDY and r["on"] == "true"]
    assert tuple(on) == COUNTED == tuple(one.name for one in results().effects)


@pytest.mark.parametrize("name", COUNTED)
def test_what_each_change_saves(name: str) -> None:
    same(effect(name).saved_kg, saved_kg(name))


@pytest.mark.parametrize("name", COUNTED)
def test_what_each_change_costs_and_takes(name: str) -> None:
    found = effect(name)
    same(found.seconds, seconds(name))
    same(found.joining_cost, joining_cost(name))
    same(found.tooling, tooling(name))
    same(found.tooling_per_pack, per_pack(tooling(name)))
    same(found.validation_per_pack, per_pack(given(name, "validation cost")))
    assert found.part_cost.likely == pytest.approx(part_cost(name), rel=1e-9)
    assert found.add_back_cost.likely == pytest.approx(add_back_cost(name), rel=1e-9)
    assert found.net_worth.likely == pytest.approx(net_worth(name), rel=1e-9)


def test_each_kilogram_before_and_after() -> None:
    """Every entry: what stands in the files before, and what the change makes of it."""
    lid, parts = lid_kg()[1], json.loads(change(LID)["parts"])
    clips, duct, cover = "cable duct clips", "cable duct", "module cover"
    grown = part_kg(cover) + given(DUCTS, "mass", "[kg]")[1]
    backs = {key: (0.0, kg[1]) for key, kg in lid_add_backs_kg().items()}
    plate = "connector plate screws"
    wanted: dict[str, dict[str, tuple[float, float]]] = {
        RIM: {
            **{one: (joint_kg(one), 0.0) for one in gone(RIM)},
            "lid flow-drill screws": (0.0, 84 * 0.0051),
        },
        LID: {
            **{one: (joint_kg(one), 0.0) for one in gone(LID)},
            **{one: (part_kg(one), 0.0) for one in parts},
            "moulded lid": (0.0, lid),
            **backs,
        },
        FILLER: {"gap filler layer": (part_kg("gap filler layer"), 4.9)},
        BUSBAR: {"long busbar": (part_kg("long busbar"), 0.66)},
        DUCTS: {
            clips: (joint_kg(clips), 0.0),
            duct: (part_kg(duct), 0.0),
            cover: (part_kg(cover), grown),
        },
        PLATE: {
            plate: (joint_kg(plate), 0.0),
            f"{plate} by angle": (0.0, 0.75 * joint_kg(plate)),
        },
    }
    for name in COUNTED:
        found = {
            entry.item: (entry.before_kg.likely, entry.after_kg.likely)
            for entry in effect(name).entries
        }
        assert found.keys() == wanted[name].keys()
        for item, masses in found.items():
            assert masses == pytest.approx(wanted[name][item], rel=1e-9), item


def test_add_backs_that_are_left_out_have_their_reason() -> None:
    left = {
        back.add_back.key: back.waived or back.covered_by
        for back in effect(LID).add_backs
        if not back.is_counted
    }
    assert left == {
        "fire barrier": "lid fire barrier",
        **json.loads(change(LID)["waived"]),
    }
    assert part("lid fire barrier")["inside"] == "lid panel"


def test_the_sums_and_the_share_of_the_gap() -> None:
    found = results().totals
    saved = math.fsum(saved_kg(name)[1] for name in COUNTED)
    today = number(pack(SUBJECT), "mass [kg]")
    ratio = number(pack(SUBJECT), "energy [kWh]") / number(
        pack(REFERENCE), "energy [kWh]"
    )
    gap = today - number(pack(REFERENCE), "mass [kg]") * ratio
    assert found.saved_kg.likely == pytest.approx(saved, rel=1e-9)
    assert found.proposed_kg.likely == pytest.approx(today - saved, rel=1e-9)
    assert found.gap_kg == pytest.approx(gap, rel=1e-9)
    assert found.gap_left_kg == pytest.approx(gap - saved, rel=1e-9)
    assert found.share_of_gap == pytest.approx(saved / gap, rel=1e-9)
    # The demo's own case: about half of its own gap.
    assert 0.4 < saved / gap < 0.6
    same(found.add_back_kg, total(lid_add_backs_kg().values()))
    same(found.seconds, total(map(seconds, COUNTED)))
    same(found.joining_cost, total(map(joining_cost, COUNTED)))
    same(found.tooling, total(map(tooling, COUNTED)))
    worth = math.fsum(map(net_worth, COUNTED))
    assert found.net_worth.likely == pytest.approx(worth, rel=1e-9)
    chances = [number(change(name), "release chance") for name in COUNTED]
    expected = (c * saved_kg(n)[1] for c, n in zip(chances, COUNTED, strict=True))
    assert found.expected_kg == pytest.approx(math.fsum(expected), rel=1e-9)


def test_both_packs_had_the_same_on_the_scale() -> None:
    """Else the gap above would have to take out what only one of them had."""
    states = [
        {item.partition("=")[0].strip(): item.partition("=")[2].split()[0]}
        for name in (SUBJECT, REFERENCE)
        for item in pack(name)["boundary"].split(";")
    ]
    half = len(states) // 2
    assert states[:half] == states[half:]


def test_from_which_volume_the_proposal_pays() -> None:
    """At that volume the share of all that is spent once is what a pack gains."""
    once = math.fsum(
        tooling(name)[1] + given(name, "validation cost")[1] for name in COUNTED
    )
    yearly = once * crf()
    gained = math.fsum(map(net_worth, COUNTED))
    gained += yearly / number(pack(SUBJECT), "yearly volume")
    assert results().totals.break_even_volume == pytest.approx(
        yearly / gained, rel=1e-9
    )


def test_the_flat_swap_comes_out_heavier() -> None:
    name = "floor planks flat in polypropylene"
    row, planks = change(name), part("tray floor plank")
    wall, mass = number(planks, "thickness [mm]"), part_kg("tray floor plank")
    assert planks["governs"] == "panel bending stiffness"
    ratio = panel_ratio(planks["material"], row["material"], wall_mm=wall, bears=False)
    hot = mass * ratio
    area = number(planks, "count") * number(planks, "area [m2]")
    through = ("cross member to floor", "centre member screws")
    screws = math.fsum(number(joint(one), "count") for one in through)
    backs = {
        "shield foil": 0.27 * area,
        "bonding straps": 0.2,
        "compression limiters": 0.010 * screws,
        "bottom shield": 8.0,
        "seal groove": 0.6,
    }
    (found,) = results(FLOOR).effects
    added = {back.add_back.key: back.mass_kg.likely for back in found.add_backs}
    assert added == pytest.approx(backs, rel=1e-9)
    (swapped,) = found.applied.entries
    assert swapped.after_kg.likely == pytest.approx(hot, rel=1e-9)
    assert hot > mass
    assert found.is_heavier
    saved = mass - hot - math.fsum(backs.values())
    assert results(FLOOR).totals.saved_kg.likely == pytest.approx(saved, rel=1e-9)
