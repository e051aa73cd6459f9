"""Checks of what holds a changed part: seals, clamp, joining, fit as it warms."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from benchpack.model.change import Change, ChangeKind
from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.ranges import Range
from benchpack.results.change_checks import change_checks
from benchpack.results.change_checks_retention import head_pressure_mpa
from benchpack.results.check import Check
from benchpack.results.clamp import clamp_check
from benchpack.results.closure import Grade
from benchpack.results.joint_facts import joint_facts
from tests.unit.results.change_samples import (
    GASKET,
    JOINTS,
    LID,
    PACK,
    PARTS,
    RIM,
    SCREWS,
    SMC,
    STUDY,
    bench,
    change,
    into,
    part,
    plain,
    swapped,
    without,
)

SPOTS = Joint(PACK, "spots", "spot weld", count=20, joins="bracket", to="lid")
BRACKET = part("bracket", 0.2, material="steel", inside="lid")


def of_kind(kind: str, one: Change, library: Library | None = None) -> list[Check]:
    records = bench() if library is None else library
    return [c for c in change_checks(records, STUDY, one) if c.kind == kind]


def only(kind: str, one: Change, library: Library | None = None) -> Check:
    (check,) = of_kind(kind, one, library)
    return check


def swap(**values: object) -> Change:
    given = {"joints": ("lid screws",), "into": "new screws", **values}
    return change(ChangeKind.SWAP_JOINTS, **given)


def test_the_pitch_is_that_of_the_new_flange() -> None:
    """1.5 mm aluminium allows 95 mm, 6 mm of hot PP-LGF40 128 mm (trade table 4.3)."""
    thick = replace(LID, material="aluminium", thickness_mm=1.5)
    library = bench(parts=swapped(PARTS, LID, thick))
    check = only("seal line", into("PP-LGF40"), library)
    assert check.record == "lid gasket"
    figures = {one.label: one.value for one in check.figures}
    assert figures["C today, allowed pitch"] == pytest.approx(95, abs=0.5)
    wall = figures["t, thickness of lid"]
    # The pitch goes with the fourth root of E t^3, which equal stiffness keeps.
    expected = 128.4 * (wall / 6.0) ** 0.75
    assert figures["C, allowed pitch"] == pytest.approx(expected, rel=2e-3)
    assert "PP-LGF40, hot and long-term" in check.words


def test_fewer_screws_are_too_far_apart() -> None:
    check = only("seal line", swap(count=40))
    assert check.grade is Grade.FAIL
    assert "Present pitch 149 mm" in plain(check.words)


def test_a_line_that_fails_today_is_no_fault_of_the_change() -> None:
    wide = bench(joints=(GASKET, replace(SCREWS, count=40)))
    check = only("seal line", into("SMC GF25"), wide)
    assert check.grade is Grade.LOOK
    assert check.words.endswith("It fails today already, the same way.")
    # Fewer still is worse, and then it is.
    assert only("seal line", swap(count=30), wide).grade is Grade.FAIL


def test_seals_that_need_no_screws_are_left_out() -> None:
    bead = replace(GASKET, family="structural adhesive", designation="epoxy 8x3")
    assert of_kind("seal line", into("SMC GF25"), bench(joints=(bead,))) == []


def test_an_anaerobic_seal_does_not_cure_on_plastic() -> None:
    bead = replace(GASKET, designation="anaerobic bead 2 mm")
    check = only("seal line", into("SMC GF25"), bench(joints=(bead, SCREWS)))
    assert check.grade is Grade.FAIL
    assert "cures between metals only" in check.words


def test_a_line_elsewhere_is_not_looked_at() -> None:
    assert of_kind("seal line", into("SMC GF25", "floor")) == []


def test_screws_through_plastic_keep_their_clamp_by_limiters() -> None:
    check = only("clamp retention", into("SMC GF25"))
    assert (check.record, check.grade) == ("lid screws", Grade.LOOK)
    said = plain(check.words)
    assert said.startswith("85 screws clamp SMC GF25, which relaxes: F_max ")
    assert said.endswith("design strength 28 MPa.")
    remedy = "Keep the compression limiters of the add-backs, 85 of 5 to 20 g."
    assert plain(check.remedy) == remedy


def test_screws_of_no_known_clamp_relax_all_the_same() -> None:
    bare = bench(joints=(GASKET, replace(SCREWS, property_class="")))
    check = only("clamp retention", into("SMC GF25"), bare)
    assert check.grade is Grade.LOOK
    assert check.words.endswith("which relaxes; their clamp load is not known.")


def test_limiters_that_were_taken_out_fail() -> None:
    waived = into("SMC GF25", waived=(("compression limiters", "shoulder screws"),))
    check = only("clamp retention", waived)
    assert check.grade is Grade.FAIL
    assert check.remedy == "Limiters are taken out of the sum: shoulder screws."


def test_a_limiter_on_record_takes_the_clamp() -> None:
    limiter = part("lid limiter", 0.01, count=85, inside="lid", material="steel")
    check = only("clamp retention", into("SMC GF25"), bench(parts=(*PARTS, limiter)))
    assert check.grade is Grade.GOOD
    assert check.words == "Metal in lid takes the clamp of lid screws."


def test_a_load_path_of_mounts_is_never_clamped_through_plastic() -> None:
    mounts = replace(SCREWS, name="mounting screws", role="carry", count=8)
    library = bench(joints=(*JOINTS, mounts))
    found = {c.record: c for c in of_kind("clamp retention", into("SMC GF25"), library)}
    assert found["mounting screws"].grade is Grade.FAIL
    assert "never clamped through plastic" in found["mounting screws"].words
    assert found["lid screws"].grade is Grade.LOOK


def test_metal_keeps_its_clamp_without_a_word() -> None:
    assert of_kind("clamp retention", into("aluminium")) == []


def test_the_pressure_under_a_head_is_that_of_its_ring() -> None:
    """Flange M6: bearing face 6.6 to 12.2 mm, 82.7 mm2 by areas of circles."""
    load = clamp_check(joint_facts(SCREWS, STUDY), STUDY)
    assert load is not None
    hole = 6.6
    outer = 2 * load.screw.bearing_diameter_mm - hole
    area = math.pi / 4 * (outer**2 - hole**2)
    assert head_pressure_mpa(load) == pytest.approx(load.greatest_n / area)
    unknown = replace(load, screw=replace(load.screw, is_bearing_usual=True))
    assert math.isnan(head_pressure_mpa(unknown))


@pytest.mark.parametrize(
    ("count", "tightening", "grade"),
    [
        (60, "torque and angle", Grade.GOOD),
        (56, "torque and angle", Grade.LOOK),
        (40, "torque and angle", Grade.FAIL),
        (85, "torque", Grade.GOOD),
        (80, "torque", Grade.LOOK),
    ],
)
def test_fewer_screws_by_torque_and_angle_clamp_as_much(
    count: int, tightening: str, grade: Grade
) -> None:
    """The guaranteed clamp rises by 25 to 45 % (VDI 2230 scatter, from memory)."""
    check = only("clamp load", swap(count=count, tightening=tightening))
    assert check.grade is grade
    figures = {one.label: one.value for one in check.figures}
    each = figures["F_min each, after"]
    assert figures["F_min together, after"] == pytest.approx(count * each)
    rise = each / figures["F_min each, today"]
    assert rise == pytest.approx(1.0) or 1.25 < rise < 1.45


STUDS = replace(
    SCREWS, name="lid studs", family="stud", designation="M6x20", tightening=""
)
NUTS = Joint(
    PACK,
    "lid nuts",
    "nut",
    "EN 1661 M6 8",
    property_class="8",
    count=85,
    joins="lid",
    to="rim",
    tightening="torque and angle",
)


def test_studs_that_are_swapped_clamp_as_their_nuts_are_tightened() -> None:
    """By torque and angle a stud guarantees 2.0 / 1.4 of what torque alone does."""
    library = bench(joints=(GASKET, STUDS, NUTS))
    fewer = change(
        ChangeKind.SWAP_JOINTS, joints=("lid studs",), into="fewer studs", count=60
    )
    check = only("clamp load", fewer, library)
    figures = {one.label: one.value for one in check.figures}
    bare = only("clamp load", fewer, bench(joints=(GASKET, STUDS)))
    by_torque = {one.label: one.value for one in bare.figures}
    for label in ("F_min each, today", "F_min each, after"):
        assert figures[label] / by_torque[label] == pytest.approx(2.0 / 1.4)
    # The same as the seal line says of these studs.
    seal = {one.label: one.value for one in only("seal line", fewer, library).figures}
    assert figures["F_min each, after"] == pytest.approx(seal["least clamp load"])


def test_studs_through_plastic_press_as_their_nuts_are_tightened() -> None:
    gently = replace(NUTS, tightening="torque, 4 Nm")
    library = bench(joints=(GASKET, STUDS, gently))
    check = only("clamp retention", into("SMC GF25"), library)
    stated = replace(STUDS, tightening="torque, 4 Nm")
    load = clamp_check(joint_facts(stated, STUDY), STUDY)
    bare = clamp_check(joint_facts(STUDS, STUDY), STUDY)
    assert load is not None
    assert bare is not None
    figures = {one.label: one.value for one in check.figures}
    assert figures["F_max"] == pytest.approx(load.greatest_n)
    assert load.greatest_n < 0.8 * bare.greatest_n


def test_screws_of_no_class_are_asked_for_it() -> None:
    check = only("clamp load", swap(designation="ISO 4762 M6x20", count=85))
    assert check.grade is Grade.NONE
    assert "property class" in check.words


def test_clips_clamp_nothing_by_a_thread() -> None:
    clips = swap(family="clip", designation="edge clip", mass_kg=Range.exactly(0.1))
    check = only("clamp load", clips)
    assert check.grade is Grade.LOOK
    assert check.words.startswith("New screws: no thread clamps any more; today 85")


@pytest.mark.parametrize(
    ("material", "grade", "said"),
    [
        ("SMC GF25", Grade.FAIL, "Spot welds do not hold SMC GF25."),
        ("aluminium", Grade.FAIL, "do not melt into each other"),
    ],
)
def test_welds_do_not_hold_another_kind(material: str, grade: Grade, said: str) -> None:
    library = bench(parts=(*PARTS, BRACKET), joints=(*JOINTS, SPOTS))
    check = only("joining", into(material), library)
    assert (check.record, check.grade) == ("spots", grade)
    assert said in check.words


def test_welds_hold_their_like_and_clinches_want_a_look() -> None:
    iron = replace(SMC, name="DP600", kind="metal", density_kg_m3=7850.0)
    library = bench(
        parts=(*PARTS, BRACKET),
        joints=(*JOINTS, SPOTS),
        materials=(*bench().materials, iron),
    )
    assert of_kind("joining", into("DP600"), library) == []
    clinch = replace(SPOTS, family="clinch")
    library = bench(parts=(*PARTS, BRACKET), joints=(*JOINTS, clinch))
    assert only("joining", into("SMC GF25"), library).grade is Grade.LOOK


def test_a_polymer_lid_slides_on_its_frame() -> None:
    """1.5 m, 60 K on aluminium: PP-LGF40 of 30 in flow 0.6 mm, of 50 across 2.4 mm.

    Trade reference 6.3 (derived): slotted holes.
    """
    lid = replace(LID, length_mm=1500.0)
    for expansion, travel in ((30.0, 0.6), (50.0, 2.4)):
        library = bench(
            parts=swapped(PARTS, LID, lid),
            materials=without(SMC, expansion_1e6_k=expansion),
        )
        check = only("expansion", into("SMC GF25"), library)
        figures = {one.label: one.value for one in check.figures}
        assert figures["travel"] == pytest.approx(travel, abs=0.01)
        assert figures["play of M6"] == pytest.approx(0.6)
        # Steel on aluminium slides 1.03 mm today.
        assert figures["travel today"] == pytest.approx(1.03, abs=0.01)
        more = travel > figures["travel today"]
        assert check.grade is (Grade.LOOK if more else Grade.GOOD)
        assert ("Slotted holes" in check.remedy) == more


def test_held_fast_beyond_its_strength_it_fails() -> None:
    weak = without(SMC, strength_mpa=6.0, expansion_1e6_k=60.0)
    check = only("expansion", into("SMC GF25"), bench(materials=weak))
    assert check.grade is Grade.FAIL


def test_the_frame_is_the_metal_of_most_screws_or_outside() -> None:
    few = replace(SCREWS, name="few", count=2, to="rail")
    check = only("expansion", into("SMC GF25"), bench(joints=(*JOINTS, few)))
    assert "on rim (aluminium)" in check.words
    inner = bench(parts=swapped(PARTS, LID, replace(LID, inside="rail")), joints=())
    check = only("expansion", into("SMC GF25"), inner)
    assert "on rail (aluminium)" in check.words
    assert "M6 in medium holes would have" in check.words
    plastic_rim = replace(RIM, material="SMC GF25")
    alone = bench(parts=swapped(PARTS, RIM, plastic_rim))
    assert of_kind("expansion", into("PP-LGF40"), alone) == []


def test_an_unknown_expansion_is_asked_for() -> None:
    bare = without(SMC, expansion_1e6_k=None)
    check = only("expansion", into("SMC GF25"), bench(materials=bare))
    assert check.grade is Grade.NONE
    assert check.remedy == "Record the expansion of SMC GF25."


def test_what_is_integrated_keeps_its_limiters() -> None:
    limiter = part("lid limiter", 0.01, count=85, inside="lid", material="steel")
    one = change(
        ChangeKind.INTEGRATE, parts=("lid", "floor"), into="shell", material="SMC GF25"
    )
    check = only("clamp retention", one, bench(parts=(*PARTS, limiter)))
    assert check.grade is Grade.GOOD
    assert check.words == "Metal in shell takes the clamp of lid screws."
