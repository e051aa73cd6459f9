"""Seal lines of a pack: what clamps them, what is allowed, what is missing."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest

from benchpack.model.joint import Joint
from benchpack.model.library import Library, by_pack
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.results.check import Check
from benchpack.results.closure import Grade
from benchpack.results.inventory import inventory
from benchpack.results.seal import (
    SealLine,
    SealTrial,
    line_of,
    seal_check,
    seal_checks,
    seal_lines,
    trial_of,
    try_out,
)
from benchpack.results.seal_flange import design_modulus_mpa, is_metal
from benchpack.results.wording import ON_SCREEN
from tests.unit.results.packs import library as library_of
from tests.unit.results.packs import pack

PACK = "Heron 70"
STUDY = Study(subject=PACK)
STEEL = Material("steel", "metal", modulus_gpa=210.0)
ALUMINIUM = Material("aluminium", "metal", modulus_gpa=70.0, stiffness_knock_down=1.0)
POLYMER = Material(
    "long-glass PP", "thermoplastic", modulus_gpa=8.0, stiffness_knock_down=0.45
)
LID = Part(PACK, "lid", material="aluminium", thickness_mm=1.5, area_m2=1.5)
TRAY = Part(PACK, "tray rim", material="steel", thickness_mm=20.0)
GASKET = Joint(
    PACK,
    "lid gasket",
    "gasket",
    "silicone foam 12x6",
    length_mm=5950.0,
    role="seal",
    joins="lid",
    to="tray rim",
)
SCREWS = Joint(
    PACK,
    "lid screws",
    "flange screw",
    "EN 1665 M6x20",
    property_class="8.8",
    count=85,
    role="clamp and seal",
    joins="tray rim",
    to="Lid ",
    tightening="torque",
)


def bench(
    *joints: Joint,
    parts: tuple[Part, ...] = (LID, TRAY),
    materials: tuple[Material, ...] = (STEEL, ALUMINIUM, POLYMER),
) -> Library:
    return library_of(
        pack(PACK, 70, 460, cells_mass_kg=300),
        parts=parts,
        joints=by_pack(joints),
        materials=materials,
    )


def lines(records: Library) -> tuple[SealLine, ...]:
    return seal_lines(records, inventory(records, STUDY, PACK))


def checks(records: Library, study: Study = STUDY) -> tuple[Check, ...]:
    return seal_checks(records, inventory(records, study, PACK), study)


def only(records: Library) -> Check:
    (check,) = checks(records)
    return check


def test_the_screws_between_the_same_two_parts_clamp_a_gasket() -> None:
    elsewhere = replace(SCREWS, name="strap screws", to="strap")
    carrying = replace(SCREWS, name="inserts", family="threaded insert")
    brackets = replace(SCREWS, name="bracket screws", role="carry")
    (line,) = lines(bench(GASKET, SCREWS, elsewhere, carrying, brackets))
    assert [clamp.joint.name for clamp in line.clamps] == ["lid screws"]
    assert line.count == 85
    assert line.pitch_mm == pytest.approx(70.0)


def test_nuts_count_only_where_no_studs_do() -> None:
    nuts = replace(SCREWS, name="nuts", family="nut", designation="ISO 4032 M6")
    studs = replace(SCREWS, name="studs", family="stud", designation="M6x20")
    (line,) = lines(bench(GASKET, nuts))
    assert line.count == 85
    (line,) = lines(bench(GASKET, nuts, studs))
    assert [clamp.joint.name for clamp in line.clamps] == ["studs"]


def test_a_line_recorded_in_pieces_is_one_line() -> None:
    long = replace(GASKET, name="gasket, long", count=2, length_mm=1800.0)
    short = replace(GASKET, name="gasket, short", count=2, length_mm=1175.0)
    (line,) = lines(bench(long, short, SCREWS))
    assert line.length_mm == pytest.approx(5950.0)
    assert line.pitch_mm == pytest.approx(70.0)
    second = replace(GASKET, name="outer bead", designation="EPDM profile 8x6")
    assert len(lines(bench(long, short, second, SCREWS))) == 2


def test_the_softer_flange_governs_with_its_design_modulus() -> None:
    """The table's 95 mm for 1.5 mm of aluminium; 128 mm for 6 mm of hot polymer."""
    (line,) = lines(bench(GASKET, SCREWS))
    assert line.governing.part == "lid"
    assert line.allowed_mm == pytest.approx(95.3, abs=0.05)
    assert line.loss_mm == pytest.approx(0.4 * (70.0 / 95.297) ** 4, rel=1e-4)
    moulded = replace(LID, material="Long-glass PP", thickness_mm=6.0)
    (line,) = lines(bench(GASKET, SCREWS, parts=(moulded, TRAY)))
    assert line.governing.modulus_mpa == pytest.approx(3600.0)
    assert line.allowed_mm == pytest.approx(128.4, abs=0.05)


def test_both_flanges_give_way_one_after_the_other() -> None:
    twin = replace(TRAY, material="aluminium", thickness_mm=1.5)
    (line,) = lines(bench(GASKET, SCREWS, parts=(LID, twin)))
    assert line.allowed_both_mm == pytest.approx(line.allowed_mm / 2**0.25)


def test_a_flange_part_along_the_line_stiffens_only_its_own_side() -> None:
    ring = Part(
        PACK, "flange ring", "lid", material="steel", thickness_mm=2.0, length_mm=5900.0
    )
    (line,) = lines(bench(GASKET, SCREWS, parts=(LID, TRAY, ring)))
    assert line.governing.words == "lid with flange ring"
    stiffness = 70_000 * 1.5**3 + 210_000 * 2.0**3
    assert line.governing.stiffness_n_mm == pytest.approx(stiffness)
    piece = replace(ring, length_mm=900.0)
    (line,) = lines(bench(GASKET, SCREWS, parts=(LID, TRAY, piece)))
    assert line.governing.words == "lid"


def test_a_sound_line_is_good_and_says_why() -> None:
    check = only(bench(GASKET, SCREWS))
    assert (check.record, check.grade, check.remedy) == ("lid gasket", Grade.GOOD, "")
    words = check.words.replace("\u00a0", " ")
    assert "Present pitch 70 mm against 95 mm allowed by lid" in words
    assert "The gasket puts 67 N on each of 85 screws" in words
    figures = {figure.label: figure.value for figure in check.figures}
    assert figures["present pitch"] == pytest.approx(70.0)
    assert figures["gasket on each screw"] == pytest.approx(0.08 * 12 * 70)
    assert figures["leak test on each screw"] == pytest.approx(5000 * 1.5 / 85)
    assert figures["least clamp load"] > 1000


def test_figures_follow_the_decimal_mark_of_the_study() -> None:
    thin = replace(LID, thickness_mm=0.7)
    records = bench(GASKET, SCREWS, parts=(thin, TRAY))
    (check,) = checks(records, replace(STUDY, decimal_mark=","))
    assert "0,7\u00a0mm aluminium" in check.words


def test_too_wide_a_pitch_fails_and_says_what_would_hold() -> None:
    thin = replace(LID, thickness_mm=0.7)
    records = bench(GASKET, replace(SCREWS, count=77), parts=(thin, TRAY))
    (line,) = lines(records)
    check = only(records)
    assert check.grade is Grade.FAIL
    assert "Midway the gasket loses" in check.words
    count = math.ceil(5950.0 / line.allowed_mm)
    assert check.remedy.startswith(f"{count} screws hold")
    # The thickness named holds the present pitch: E t^3 goes with the loss.
    needed = 0.7 * (line.loss_mm / 0.4) ** (1 / 3)
    assert needed == pytest.approx(1.135, abs=0.001)
    assert "1.2\u00a0mm of aluminium" in check.remedy


@pytest.mark.parametrize(
    ("allowed", "both", "grade"),
    [
        (75.0, 71.0, Grade.GOOD),
        (75.0, 69.0, Grade.LOOK),
        (67.0, 66.0, Grade.LOOK),
        (66.0, 65.0, Grade.FAIL),
    ],
)
def test_near_the_allowed_pitch_wants_a_look(
    allowed: float, both: float, grade: Grade
) -> None:
    """Tried by thickness, so that the pitch of 70 mm stands as the figures say."""
    soft, other = (allowed / 95.297) ** 4, (both / 95.297) ** 4
    own = 70_000 * 1.5**3 * soft
    rigid = own * other / (soft - other) if soft > other else math.nan
    trial = SealTrial(
        modulus_mpa=own,
        thickness_mm=1.0,
        pressure_low_mpa=0.03,
        pressure_high_mpa=0.08,
        allowed_loss_mm=0.4,
        length_mm=5950.0,
        count=85,
        other_n_mm=rigid,
    )
    tried = try_out(trial)
    assert tried.allowed_mm == pytest.approx(allowed, rel=1e-4)
    assert tried.allowed_both_mm == pytest.approx(both, rel=1e-4)
    assert tried.grade is grade
    if grade is Grade.FAIL:
        assert try_out(replace(trial, bonds=True)).grade is Grade.LOOK


def test_a_load_above_the_clamp_load_fails() -> None:
    (line,) = lines(bench(GASKET, SCREWS))
    weak = seal_check(line, least_clamp_n=60.0, wording=ON_SCREEN)
    assert weak.grade is Grade.FAIL
    assert "60\u00a0N" in weak.words
    # The leak test comes on top of the gasket.
    assert seal_check(line, least_clamp_n=150.0, wording=ON_SCREEN).grade is Grade.FAIL
    assert seal_check(line, least_clamp_n=160.0, wording=ON_SCREEN).grade is Grade.GOOD
    unknown = seal_check(line, least_clamp_n=math.nan, wording=ON_SCREEN)
    assert unknown.grade is Grade.GOOD
    assert "clamp load is not known" in unknown.words


@pytest.mark.parametrize(
    ("joints", "parts", "asked"),
    [
        ((replace(GASKET, length_mm=None), SCREWS), (LID, TRAY), "the length"),
        ((GASKET,), (LID, TRAY), "the screws that join lid and tray rim"),
        ((replace(GASKET, designation="12x6"), SCREWS), (LID, TRAY), "kind of gasket"),
        ((GASKET, SCREWS), (), "the part lid and the part tray rim"),
        ((replace(GASKET, to=""), SCREWS), (LID, TRAY), "part on one side"),
        (
            (GASKET, SCREWS),
            (replace(LID, thickness_mm=None), replace(TRAY, material="")),
            "the thickness of lid and the material of tray rim",
        ),
        (
            (GASKET, SCREWS),
            (replace(LID, material="card"), replace(TRAY, material="cork")),
            "the material card in the library",
        ),
    ],
)
def test_what_is_missing_is_asked_for(
    joints: tuple[Joint, ...], parts: tuple[Part, ...], asked: str
) -> None:
    check = only(bench(*joints, parts=parts))
    assert check.grade is Grade.NONE
    assert check.remedy.startswith("Record ")
    assert asked in check.remedy


def test_one_unknown_flange_leaves_a_look_but_no_pass() -> None:
    check = only(bench(GASKET, SCREWS, parts=(LID,)))
    assert check.grade is Grade.LOOK
    assert check.remedy == "Record the part tray rim."
    thin = replace(LID, thickness_mm=0.7)
    assert only(bench(GASKET, SCREWS, parts=(thin,))).grade is Grade.FAIL


def test_a_polymer_without_knock_down_wants_a_look() -> None:
    bare = replace(POLYMER, stiffness_knock_down=None)
    moulded = replace(LID, material="long-glass PP", thickness_mm=6.0)
    records = bench(GASKET, SCREWS, parts=(moulded, TRAY), materials=(STEEL, bare))
    check = only(records)
    assert check.grade is Grade.LOOK
    assert "stiffness knock-down of long-glass PP" in check.remedy


@pytest.mark.parametrize(
    ("family", "designation", "words"),
    [
        ("laser weld", "lap seam 2 mm", "is a seam, tight without screws"),
        ("structural adhesive", "8x3", "holds both parts without screws"),
        ("sealant bead", "silicone bead 5 mm", "holds both parts without screws"),
        ("gasket", "cured in place gasket 6x4", "cured in place"),
    ],
)
def test_no_pitch_applies_to_what_no_screws_hold(
    family: str, designation: str, words: str
) -> None:
    seam = replace(GASKET, family=family, designation=designation)
    check = only(bench(seam))
    assert check.grade is Grade.NONE
    assert check.words.startswith("Pitch does not apply: ")
    assert words in check.words


def test_an_anaerobic_sealant_wants_metal_on_both_sides() -> None:
    bead = replace(GASKET, family="sealant bead", designation="anaerobic 3 mm")
    assert only(bench(bead)).grade is not Grade.FAIL
    moulded = replace(LID, material="long-glass PP", thickness_mm=6.0)
    check = only(bench(bead, SCREWS, parts=(moulded, TRAY)))
    assert check.grade is Grade.FAIL
    assert "lid is long-glass PP" in check.words


def test_lines_that_seal_count_and_points_do_not() -> None:
    clips = Joint(PACK, "clips", "clip", role="seal", count=4)
    weld = Joint(PACK, "seam", "arc weld", length_mm=900.0, role="carry and seal")
    strut = Joint(PACK, "strut", "arc weld", length_mm=900.0, role="carry")
    names = [line.name for line in lines(bench(clips, weld, strut, GASKET, SCREWS))]
    assert names == ["seam", "lid gasket"]
    assert checks(bench()) == ()


def test_a_line_is_found_by_its_rows_and_by_its_screws() -> None:
    held = lines(bench(GASKET, SCREWS))
    for name in ("lid gasket", "lid screws"):
        assert line_of(held, name) is held[0]
    assert line_of(held, "lid inserts") is None


def test_the_recorded_line_tried_out_is_the_check() -> None:
    (line,) = lines(bench(GASKET, SCREWS))
    tried = try_out(trial_of(line))
    assert tried.allowed_mm == pytest.approx(line.allowed_mm, rel=1e-12)
    assert tried.allowed_both_mm == pytest.approx(line.allowed_both_mm, rel=1e-12)
    assert tried.pitch_mm == line.pitch_mm
    assert tried.loss_mm == pytest.approx(line.loss_mm, rel=1e-12)
    assert tried.least_count == 63
    assert tried.count == 85


def test_without_a_count_the_least_is_taken() -> None:
    (line,) = lines(bench(GASKET, SCREWS))
    tried = try_out(replace(trial_of(line), count=None))
    assert tried.count == tried.least_count == 63
    assert tried.pitch_mm == pytest.approx(5950.0 / 63)
    assert try_out(SealTrial()).least_count is None
    assert math.isnan(try_out(SealTrial()).allowed_mm)


def test_a_wider_flange_allows_more() -> None:
    (line,) = lines(bench(GASKET, SCREWS))
    wider = replace(trial_of(line), flange_width_mm=24.0)
    assert try_out(wider).allowed_mm == pytest.approx(2**0.25 * line.allowed_mm)


def test_a_stiffer_trial_leaves_the_other_flange_to_govern() -> None:
    strip = replace(TRAY, material="aluminium", thickness_mm=3.0)
    (line,) = lines(bench(GASKET, SCREWS, parts=(LID, strip)))
    tried = try_out(replace(trial_of(line), thickness_mm=8.0))
    assert tried.is_other_softer
    assert tried.allowed_mm == pytest.approx(160.3, abs=0.05)


@pytest.mark.parametrize(
    ("changes", "modulus", "known", "metal"),
    [
        ({}, 3600.0, True, False),
        ({"stiffness_knock_down": None}, 8000.0, False, False),
        ({"kind": "metal", "stiffness_knock_down": None}, 8000.0, True, True),
        ({"kind": ""}, 3600.0, True, None),
    ],
)
def test_the_design_modulus_is_knocked_down(
    changes: dict[str, Any], modulus: float, known: bool, metal: bool | None
) -> None:
    material = replace(POLYMER, **changes)
    design_mpa, is_known = design_modulus_mpa(material)
    assert design_mpa == pytest.approx(modulus)
    assert is_known is known
    assert is_metal(material) is metal
