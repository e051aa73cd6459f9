"""A tried seal line in words."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from benchpack.report.seal_text import TrialNames, TrialText, recorded_words, trial_text
from benchpack.results.closure import Grade
from benchpack.results.seal import SealTrial, trial_of, try_out
from benchpack.results.wording import Wording
from benchpack.units.number_style import NumberStyle
from tests.unit.results.test_seal import GASKET, LID, SCREWS, TRAY, bench, lines

MOULDED = SealTrial(
    modulus_mpa=3600.0,
    thickness_mm=6.0,
    gasket_width_mm=12.0,
    pressure_low_mpa=0.03,
    pressure_high_mpa=0.08,
    allowed_loss_mm=0.4,
    length_mm=5950.0,
    overpressure_kpa=5.0,
    area_m2=1.5,
)
POLYMER = TrialNames("PP-LGF40", "tray rim")


def plain(text: str) -> str:
    return text.replace("\u00a0", " ").replace("\u2009", " ")


def told(
    trial: SealTrial, names: TrialNames = POLYMER, *, clamp_n: float = 5100.0
) -> TrialText:
    (line,) = lines(bench(GASKET, SCREWS))
    return trial_text(
        trial, try_out(trial), line=line, names=names, least_clamp_n=clamp_n
    )


def test_the_headline_sets_the_trial_against_today() -> None:
    text = told(MOULDED)
    assert plain(text.headline) == (
        "6 mm of PP-LGF40 allows 128 mm: 47 screws hold 6.0 m; today 85 at 70 mm."
    )
    assert text.grade is Grade.GOOD
    assert [plain(detail) for detail in text.details] == [
        (
            "The gasket puts 122 N on each screw, the pressure inside 160 N more; "
            "today's clamp with at least 5.1 kN."
        ),
        "The other side (tray rim) is taken as rigid.",
    ]


def test_a_modulus_of_ones_own_and_a_line_without_length() -> None:
    text = told(replace(MOULDED, length_mm=math.nan), TrialNames())
    assert plain(text.headline) == (
        "6 mm at 3.6 GPa allows 128 mm. How many screws that is needs the length of "
        "the line."
    )
    assert (text.grade, text.verdict) == (Grade.NONE, "")


def test_the_other_side_is_named_where_it_governs() -> None:
    soft = 70_000 * 1.5**3
    text = told(replace(MOULDED, other_n_mm=soft))
    assert plain(text.headline).startswith(
        "The other side (tray rim) gives way more and allows 95 mm: 63 screws"
    )
    own = 3600 * 6.0**3
    both = 95.297 * (own / (own + soft)) ** 0.25
    assert plain(text.details[-1]).startswith(
        f"With the give of both sides {both:.0f} mm"
    )


@pytest.mark.parametrize(
    ("count", "grade", "start"),
    [
        (50, Grade.GOOD, "Holds: 50 screws stand 119 mm apart, midway 0.30 of 0.40 mm"),
        (46, Grade.LOOK, "Wants a look: 46 screws stand 129 mm apart"),
        (30, Grade.FAIL, "Too far apart: 30 screws stand 198 mm apart"),
    ],
)
def test_the_verdict_is_a_word_with_its_reason(
    count: int, grade: Grade, start: str
) -> None:
    text = told(replace(MOULDED, count=count))
    assert text.grade is grade
    assert plain(text.verdict).startswith(start)


def test_screws_that_clamp_too_little_fail_whatever_the_pitch() -> None:
    # 122 N of gasket and 160 N of pressure on each.
    assert told(MOULDED, clamp_n=290.0).grade is Grade.GOOD
    weak = told(MOULDED, clamp_n=270.0)
    assert (weak.grade, weak.verdict) == (
        Grade.FAIL,
        "The screws are too weak for it.",
    )
    unknown = told(MOULDED, clamp_n=math.nan)
    assert unknown.grade is Grade.GOOD
    assert "is not known" in unknown.details[0]


def test_a_sealant_that_cures_between_metals_only() -> None:
    text = told(MOULDED, replace(POLYMER, unfit="PP-LGF40"))
    assert text.grade is Grade.FAIL
    assert text.verdict.endswith("not on PP-LGF40.")


def test_what_is_missing_is_asked_for() -> None:
    text = told(SealTrial(length_mm=5950.0, thickness_mm=6.0))
    assert text.headline == (
        "Enter the modulus, the pressure midway, the pressure at a screw and the "
        "allowed loss to see the pitch."
    )
    assert text.details == ()


def test_the_width_of_the_gasket_is_asked_for_the_load_alone() -> None:
    text = told(replace(MOULDED, gasket_width_mm=math.nan))
    assert "allows 128" in plain(text.headline)
    assert text.details[0] == "The load on the screws needs the width of the gasket."


def test_what_is_recorded_is_said_as_far_as_it_goes() -> None:
    (line,) = lines(bench(GASKET, SCREWS))
    comma = Wording(NumberStyle(decimal_mark=","))
    assert plain(recorded_words(line, wording=comma)) == (
        "Recorded: silicone foam 12x6, 6,0 m; between lid and tray rim; 85 screws at "
        "70 mm."
    )
    (bare,) = lines(bench(replace(GASKET, designation="", length_mm=None, to="")))
    assert plain(recorded_words(bare)) == "Recorded: gasket; between lid and ?."
    weld = replace(GASKET, family="laser weld", designation="lap seam")
    (seam,) = lines(bench(weld, parts=(LID, TRAY)))
    assert "Pitch does not apply: laser weld is a seam" in recorded_words(seam)


def test_a_trial_of_the_record_says_what_the_record_says() -> None:
    (line,) = lines(bench(GASKET, SCREWS))
    text = told(trial_of(line), TrialNames("aluminium", "tray rim"))
    assert plain(text.headline) == (
        "1.5 mm of aluminium allows 95 mm: 63 screws hold 6.0 m; today 85 at 70 mm."
    )
