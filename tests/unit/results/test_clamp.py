"""Clamp loads of screws and their grades, in words a bench engineer can act on."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchpack.model.joint import Joint
from benchpack.model.library import Library, by_pack
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.results.check import Check
from benchpack.results.clamp import (
    KIND,
    ClampLoad,
    Unknown,
    clamp_check,
    clamp_checks,
    clamp_load,
)
from benchpack.results.closure import Grade
from benchpack.results.inventory import inventory
from benchpack.results.joint_facts import joint_facts
from tests.unit.results.packs import library, pack

PACK = "Heron 70"
STUDY = Study()


def screws(name: str = "screws", **more: Any) -> Joint:
    values: dict[str, Any] = {
        "family": "hex screw",
        "designation": "ISO 4017 M8x25",
        "property_class": "8.8",
        "count": 40,
        "tightening": "torque",
        **more,
    }
    return Joint(PACK, name, **values)


def load_of(joint: Joint, study: Study = STUDY) -> ClampLoad:
    found = clamp_check(joint_facts(joint, study), study)
    assert found is not None
    return found


def checks_of(
    *joints: Joint,
    parts: tuple[Part, ...] = (),
    materials: tuple[Material, ...] = (),
    study: Study = STUDY,
) -> tuple[Check, ...]:
    records = records_of(*joints, parts=parts, materials=materials)
    listed = inventory(records, study, PACK)
    return clamp_checks(listed, study, library=records)


def records_of(
    *joints: Joint,
    parts: tuple[Part, ...] = (),
    materials: tuple[Material, ...] = (),
) -> Library:
    one = pack(PACK, 70, 460)
    return library(one, parts=parts, joints=by_pack(joints), materials=materials)


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def test_an_m8_of_class_8_8() -> None:
    """Handbook: 18.6 kN at 24.6 Nm with a friction of 0.12."""
    load = load_of(screws())
    assert load.greatest_n == pytest.approx(18_600, rel=0.002)
    assert load.torque_nm == pytest.approx(24.6, rel=0.006)
    assert load.proof_load_n == pytest.approx(21_200, rel=0.006)
    assert load.least_n == pytest.approx(load.greatest_n / 2.0)
    assert load.utilisation == pytest.approx(18.6 / 21.2, rel=0.005)
    assert load.gain == pytest.approx(2.0 / 1.4)
    assert load.same_clamp_count(40) == 28


def test_the_words_of_a_sound_joint() -> None:
    (check,) = checks_of(screws())
    assert check.kind == KIND
    assert check.record == "screws"
    assert check.grade is Grade.GOOD
    assert plain(check.words) == (
        "F_min 9.3 kN to F_max 18.6 kN at 24.5 Nm, 88 % of the proof load of M8 8.8. "
        "By torque F_max is 1.6 to 2.0 times F_min; the greater counts. Torque and "
        "angle would guarantee 13.3 kN, 43 % more: 28 of the 40 would clamp as much."
    )
    assert check.remedy == ""
    figures = {figure.label: figure for figure in check.figures}
    assert figures["proof load"].value == pytest.approx(36.609 * 580, rel=1e-4)
    assert figures["alpha_A, tightening factor"].value == 2.0
    assert figures["mu_G, thread"].source == "study; class B of VDI 2230-1"
    assert all(math.isfinite(figure.value) for figure in check.figures)


def test_a_study_with_a_decimal_comma() -> None:
    (check,) = checks_of(screws(), study=replace(STUDY, decimal_mark=","))
    assert "F_min 9,3 kN to F_max 18,6 kN at 24,5 Nm" in plain(check.words)


def test_torque_and_angle_has_nothing_to_gain() -> None:
    """The torque of such a method only seats the screw."""
    joint = screws(tightening="torque and angle, 12 Nm + 90 degrees")
    load = load_of(joint)
    assert load.gain == 1.0
    assert load.greatest_n == load_of(screws()).greatest_n
    assert load.least_n == pytest.approx(load.greatest_n / 1.4)
    (check,) = checks_of(joint)
    assert check.grade is Grade.GOOD
    assert "would guarantee" not in check.words
    assert "stated" not in check.words


@pytest.mark.parametrize(
    ("text", "torque"),
    [
        ("torque 20 Nm", 20.0),
        ("torque, 8 to 22,5 N m", 22.5),
        ("25Nm", 25.0),
        ("torque", 24.5),
        ("torque 0 Nm", 24.5),
    ],
)
def test_a_stated_torque_sets_the_preload(text: str, torque: float) -> None:
    load = load_of(screws(tightening=text))
    assert load.torque_nm == pytest.approx(torque, rel=0.002)
    usual = load_of(screws())
    assert load.greatest_n / usual.greatest_n == pytest.approx(
        load.torque_nm / usual.torque_nm, rel=1e-9
    )


def test_more_than_the_proof_load_fails() -> None:
    (check,) = checks_of(
        screws(designation="ISO 4017 M6x20", tightening="torque 20 Nm")
    )
    assert check.grade is Grade.FAIL
    assert plain(check.words).startswith(
        "F_min 10.1 kN to F_max 20.1 kN at stated 20.0 Nm, 172 % of the proof load of "
        "M6 8.8."
    )
    assert "would guarantee" not in check.words
    assert plain(check.remedy) == (
        "Tighten with at most 10.1 Nm, or take a stronger or larger screw."
    )


def test_little_left_below_the_proof_load_asks_for_a_look() -> None:
    (check,) = checks_of(screws(tightening="torque 27 Nm"))
    assert check.grade is Grade.LOOK
    assert "97\u00a0%" in check.words
    assert check.remedy.startswith("Tighten with at most")


@pytest.mark.parametrize("text", ["impact", "torque, driver switched off by torque"])
def test_wide_scatter_asks_for_a_look(text: str) -> None:
    (check,) = checks_of(screws(tightening=text))
    assert check.grade is Grade.LOOK
    assert check.remedy == (
        "Tighten by torque and angle, or set the torque on the joint."
    )


def test_tightening_that_is_not_recorded_is_taken_as_torque() -> None:
    (check,) = checks_of(screws(tightening=""))
    assert check.grade is Grade.LOOK
    assert (
        "How it is tightened is not recorded, taken as torque with estimated friction: "
        "F_max is 1.6 to 2.0 times F_min."
    ) in check.words
    assert check.remedy == "Record how it is tightened."
    (other,) = checks_of(screws(tightening="by feel"))
    assert other.grade is Grade.LOOK
    assert "'by feel' names no way of tightening that is known" in other.words
    assert load_of(screws(tightening="by feel")).least_n == load_of(screws()).least_n


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"property_class": ""}, "The property class is not recorded."),
        ({"property_class": "7.7"}, "The property class '7.7' is not known."),
        ({"property_class": "8"}, "8 is the class of a nut, not of a screw."),
        (
            {"property_class": "9.8", "designation": "ISO 4017 M20x40"},
            "Class 9.8 is not defined for M20.",
        ),
        ({"designation": ""}, "No designation is recorded, so no thread is known."),
        (
            {"designation": "the long ones"},
            "The designation 'the long ones' is not understood.",
        ),
        (
            {"designation": "ISO 4017 M8.5x25"},
            "M8.5 is no usual thread, and no pitch is named.",
        ),
    ],
)
def test_what_is_missing_is_said(changes: dict[str, Any], said: str) -> None:
    joint = screws(**changes)
    found = clamp_load(joint_facts(joint, STUDY), STUDY)
    assert isinstance(found, Unknown)
    assert found.words == said
    assert clamp_check(joint_facts(joint, STUDY), STUDY) is None
    (check,) = checks_of(joint)
    assert (check.grade, check.words) == (Grade.NONE, said)
    assert check.remedy


def test_the_class_may_stand_in_the_designation() -> None:
    joint = screws(designation="ISO 4017 M8x25 10.9", property_class="")
    assert load_of(joint).screw.name == "M8 10.9"


def test_above_16_mm_class_8_8_is_stronger() -> None:
    load = load_of(screws(designation="ISO 4017 M20x40"))
    assert load.proof_load_n == pytest.approx(147_000, rel=0.006)
    assert load.screw.yield_mpa == 660.0


def test_a_fine_thread_holds_more_and_says_so() -> None:
    """Handbook of VDI 2230: M8x1 of class 8.8 at 0.12: 20.2 kN, 26.1 Nm."""
    load = load_of(screws(designation="ISO 8676 M8x1x25"))
    assert load.screw.name == "M8x1 8.8"
    assert load.greatest_n == pytest.approx(20_200, rel=0.003)
    assert load.torque_nm == pytest.approx(26.1, rel=0.02)


def test_a_button_head_holds_less_than_its_thread() -> None:
    button = screws(family="button head screw", designation="ISO 7380-1 M8x25")
    load, hexagon = load_of(button), load_of(screws())
    assert load.proof_load_n == pytest.approx(0.8 * hexagon.proof_load_n)
    assert load.utilisation == pytest.approx(hexagon.utilisation)
    (check,) = checks_of(button)
    assert check.grade is Grade.GOOD
    assert "A button head holds 80 % of what its thread would." in plain(check.words)


def test_a_flange_rubs_further_out_and_takes_more_torque() -> None:
    flange = load_of(screws(family="flange screw", designation="EN 1665 M8x25"))
    hexagon = load_of(screws())
    assert flange.greatest_n == hexagon.greatest_n
    assert flange.screw.bearing_diameter_mm == pytest.approx((15.8 + 9.0) / 2)
    assert flange.torque_nm == pytest.approx(1.095 * hexagon.torque_nm, rel=0.002)


def test_a_head_that_is_not_known_rubs_where_heads_usually_do() -> None:
    load = load_of(screws(designation="ISO 99999 M8x25"))
    assert load.screw.is_bearing_usual
    assert load.torque_nm == pytest.approx(load_of(screws()).torque_nm, rel=0.02)


def test_what_is_no_screw_is_not_checked() -> None:
    others = (
        screws("bead", family="sealant bead", designation="5 mm", property_class=""),
        screws("nuts", family="nut", designation="EN 1661 M8", property_class="8"),
        screws("inserts", family="threaded insert", designation="M6"),
        screws("what", family="", designation="", property_class=""),
    )
    for joint in others:
        assert clamp_load(joint_facts(joint, STUDY), STUDY) is None
    assert checks_of(*others) == ()


def test_a_flow_drill_screw_is_not_judged_by_its_class() -> None:
    joint = screws(family="flow-drill screw", designation="M5x20")
    (check,) = checks_of(joint)
    assert check.grade is Grade.NONE
    assert "holds by the thread it forms in the sheet" in check.words


def test_a_stud_is_tightened_as_its_nut_is() -> None:
    stud = screws(
        "studs",
        family="stud",
        designation="ISO 898-1 stud M8x25",
        tightening="",
        joins="tray",
        to="box",
    )
    nut = screws(
        "nuts",
        family="nut",
        designation="EN 1661 M8",
        property_class="8",
        tightening="torque and angle",
        joins="Box ",
        to="tray",
    )
    (check,) = checks_of(stud, nut)
    assert check.record == "studs"
    assert check.grade is Grade.GOOD
    assert "By torque and angle" in check.words
    (alone,) = checks_of(stud, replace(nut, designation="EN 1661 M6"))
    assert "not recorded" in alone.words


PLATE = Part(PACK, "connector plate", material="PBT-GF30")
TRAY = Part(PACK, "tray", material="EN AW-6063")
MATERIALS = (
    Material("PBT-GF30", kind="thermoplastic"),
    Material("EN AW-6063", kind="metal"),
)
IN_PLATE = screws(joins="Connector plate", to="tray")


def test_clamp_relaxes_in_plastic() -> None:
    (check,) = checks_of(IN_PLATE, parts=(PLATE, TRAY), materials=MATERIALS)
    assert check.grade is Grade.LOOK
    assert check.words.endswith(
        "Connector plate is PBT-GF30: the clamp relaxes in plastic."
    )
    assert check.remedy == "Use a compression limiter."


def test_without_a_library_no_plastic_is_known() -> None:
    records = records_of(IN_PLATE, parts=(PLATE, TRAY), materials=MATERIALS)
    (check,) = clamp_checks(inventory(records, STUDY, PACK), STUDY)
    assert check.grade is Grade.GOOD


@pytest.mark.parametrize(
    "relief",
    [
        Part(PACK, "compression limiter", inside="connector plate"),
        screws("moulded-in sleeves", family="press fit", joins="tray", to=PLATE.name),
        screws("inserts", family="threaded insert", joins=PLATE.name, to="tray"),
    ],
    ids=["limiter", "sleeve", "insert"],
)
def test_what_takes_the_clamp_spares_the_plastic(relief: Part | Joint) -> None:
    parts = (PLATE, TRAY, *([relief] if isinstance(relief, Part) else []))
    joints = (IN_PLATE, *([relief] if isinstance(relief, Joint) else []))
    check = checks_of(*joints, parts=parts, materials=MATERIALS)[0]
    assert check.grade is Grade.GOOD
    assert "plastic" not in check.words


def test_an_insert_in_the_metal_side_does_not_spare_the_plastic() -> None:
    insert = screws("inserts", family="threaded insert", joins="tray", to=PLATE.name)
    check = checks_of(IN_PLATE, insert, parts=(PLATE, TRAY), materials=MATERIALS)[0]
    assert check.grade is Grade.LOOK


@settings(deadline=None)
@given(
    st.floats(0.04, 0.4),
    st.floats(0.04, 0.4),
    st.sampled_from(["torque", "torque and angle", "impact", "hydraulic"]),
)
def test_what_holds_at_any_friction(
    thread: float, head: float, tightening: str
) -> None:
    study = replace(STUDY, thread_friction=thread, head_friction=head)
    load = load_of(screws(tightening=tightening), study)
    assert 0 < load.least_n < load.greatest_n < load.proof_load_n
    assert load.gain >= 1.0
    assert 1 <= load.same_clamp_count(40) <= 40
    slicker = replace(study, thread_friction=0.9 * thread)
    assert load_of(screws(tightening=tightening), slicker).greatest_n > load.greatest_n


def test_many_screws_at_once_are_as_one_by_one() -> None:
    joints = tuple(
        screws(f"{size} {grade}", designation=f"ISO 4762 M{size}", property_class=grade)
        for size in ("5x16", "6x20", "8x25", "10x30", "12x40")
        for grade in ("8.8", "10.9", "12.9", "A2-70")
    )
    checks = checks_of(*joints)
    assert [check.record for check in checks] == [joint.name for joint in joints]
    alone = [checks_of(joint)[0] for joint in joints]
    assert list(checks) == alone
