"""What is amiss with joints: by row, by pack, and one mass everywhere."""

from __future__ import annotations

import math
from typing import Any

import pytest
from numpy.testing import assert_allclose

from benchpack.errors import Severity
from benchpack.model.joint import Joint
from benchpack.model.part import Part
from benchpack.model.words import KnownBy, Subsystem
from benchpack.results.cautions import pack_cautions
from benchpack.results.closure import closure_of
from benchpack.results.inventory import inventory
from benchpack.results.joint_problems import joint_problems
from benchpack.results.library_check import doubtful_packs, library_problems
from benchpack.results.results import compute
from tests.unit.results.joint_samples import EUR, PLATE, joint, stocked, weighed
from tests.unit.results.packs import library, pack

WHOLE = {"mass_each_g": 2.0, "time_each_s": 3.0, "cost_each": 0.1}


@pytest.mark.parametrize(
    ("values", "column", "what", "remedy"),
    [
        (
            {"family": "magnet", "designation": "strong"},
            "family",
            "The family 'magnet' is not known.",
            "Use one of: hex screw,",
        ),
        (
            {"family": "magnet", "designation": "ISO 4762 M6x16"},
            "family",
            "It is taken as socket screw, see its designation.",
            "Use one of: hex screw,",
        ),
        (
            {"designation": "made to drawing"},
            "family",
            "No family is recorded, and the designation names none.",
            "Choose one, or enter mass, time and cost.",
        ),
        (
            {"family": "hex screw", "designation": "made to drawing"},
            "designation",
            "The designation 'made to drawing' is not understood, and no mass",
            "Weigh 20 and divide, or write it as ISO 4762 M6x20.",
        ),
        (
            {"family": "hex screw"},
            "designation",
            "Neither designation nor mass of this hex screw is recorded.",
            "Weigh 20 and divide, or write its designation.",
        ),
        (
            {"family": "clip", "designation": "fir tree 6.5"},
            "mass each [g]",
            "What one 'fir tree 6.5' weighs cannot be worked out.",
            "Weigh 20 and divide.",
        ),
        (
            {"family": "gasket", "designation": "silicone foam 12x6"},
            "length [mm]",
            "The length of this gasket is not recorded.",
            "Enter it, or mass, time and cost of the whole line.",
        ),
        (
            {"designation": "ISO 4762 M6x16", "property_class": "7.7"},
            "property class",
            "The property class '7.7' is not known.",
            "Use one of: ",
        ),
        (
            {"designation": "ISO 4762 M6x16 10.9", "property_class": "8.8"},
            "property class",
            "The designation says 10.9, the property class 8.8.",
            "Correct the one that is wrong.",
        ),
        (
            {"family": "hex screw", "designation": "ISO 4762 M6x16"},
            "family",
            "ISO 4762 is a socket screw, the family says hex screw.",
            "Correct the one that is wrong.",
        ),
    ],
)
def test_each_thing_amiss_is_said_with_its_remedy(
    values: dict[str, Any], column: str, what: str, remedy: str
) -> None:
    (problem,) = joint_problems(joint("odd one", **values))
    assert what in problem.what
    assert problem.remedy.startswith(remedy)
    assert (problem.record, problem.column) == ("odd one", column)
    assert problem.severity is Severity.WARNING


@pytest.mark.parametrize(
    "values",
    [
        {"designation": "ISO 4762 M6x16 8.8", "property_class": "8.8"},
        {"family": "Socket head cap screws", "designation": "DIN 912 M6x16"},
        {"family": "nut", "designation": "EN 1661 M8", "property_class": "8"},
        {"family": "laser weld", "designation": "lap seam 2 mm", **WHOLE},
        {"family": "laser weld", "designation": "ISO 2553 lap", "length_mm": 100.0},
        {"family": "clip", "designation": "fir tree 6.5", "mass_each_g": 1.9},
        {"family": "hex screw", "designation": "made to drawing", "mass_each_g": 9.0},
        {"designation": "", **WHOLE},
        {"family": "gasket", "length_mm": 500.0, "property_class": "soft"},
        {"family": "spot weld"},
    ],
)
def test_a_sound_row_draws_nothing(values: dict[str, Any]) -> None:
    assert joint_problems(joint(**values)) == ()


def test_a_pack_says_it_briefly_and_the_check_row_by_row() -> None:
    clips = [joint(f"clip {i}", family="clip", designation="edge") for i in range(40)]
    odd = weighed("odd", 5.0, designation="ISO 4762 M6x16 10.9", property_class="8.8")
    records = stocked(*clips, odd, PLATE)
    said = [p for p in pack_cautions(records, records.packs[0]) if p.column == "joints"]
    assert [problem.what for problem in said] == [
        "40 of 42 joints of Heron 70 have no mass: clip 0, clip 1, clip 2 and 37 more.",
        "1 of 42 joints of Heron 70 is incomplete or contradicts itself: odd.",
    ]
    rows = [p for p in library_problems(records) if p.record == "Heron 70"]
    assert len([p for p in rows if p.what.startswith("clip ")]) == 40
    assert len([p for p in rows if p.what.startswith("odd: ")]) == 1
    assert not [p for p in rows if p.column == "joints"]
    assert doubtful_packs(records).tolist() == [True, False]


def test_two_things_amiss_are_one_line() -> None:
    both = joint(
        "odd", family="hex screw", designation="made to drawing", property_class="7.7"
    )
    assert len(joint_problems(both)) == 2
    (line,) = [p for p in library_problems(stocked(both)) if p.what.startswith("odd")]
    assert "'7.7' is not known. The designation 'made to" in line.what
    assert line.record == "Heron 70"
    assert line.column == "property class"


def test_the_cautions_of_a_comparison_speak_of_joints_without_a_mass() -> None:
    other = Joint("Egret 80", "clips", family="clip", designation="edge clip")
    found = [p.what for p in compute(stocked(PLATE, other), EUR).cautions]
    assert "1 of 1 joints of Egret 80 has no mass: clips." in found


def test_one_pack_shows_one_mass() -> None:
    """Closure, split and inventory count the same worked-out masses."""
    joints = (
        PLATE,
        weighed("lid screws", 8.7, count=84, subsystem=Subsystem.LID),
        joint(
            "seam", family="arc weld", designation="aluminium fillet a3", length_mm=1e3
        ),
        joint("clips", family="clip", designation="edge clip", count=9),
    )
    records = stocked(*joints)
    closure = closure_of(records, "Heron 70")
    held = inventory(records, EUR, "Heron 70")
    assert_allclose(closure.recorded_kg, held.totals.mass_kg)
    assert closure.unknown == held.totals.unknown_mass == 1
    assert_allclose(closure.masses_kg[Subsystem.LID], 84 * 0.0087)
    split = compute(records, EUR).split
    assert split is not None
    assert split.subject == closure


def test_a_part_without_a_mass_is_still_counted_as_unknown() -> None:
    records = library(
        pack("Heron 70", 70, 460), parts=(Part("Heron 70", "tray"),), joints={}
    )
    assert closure_of(records, "Heron 70").unknown == 1


def test_a_worked_out_mass_is_not_assumed_to_close() -> None:
    guessed = joint(
        "screws", designation="ISO 4762 M6x16", known_by=KnownBy.ASSUMED, count=10
    )
    closure = closure_of(stocked(guessed), "Heron 70")
    assert closure.assumed_kg == 0
    assert math.isclose(closure.recorded_kg, 0.058)
