"""A busbar in words: what it carries, how it grows, what a short circuit does."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from benchpack.report.busbar_text import (
    CAUTION,
    BusbarLine,
    amount,
    busbar_lines,
    entered,
    figure_text,
)
from benchpack.results.busbar import BusbarTrial
from benchpack.results.busbar_figures import busbar_figures
from benchpack.results.closure import Grade
from benchpack.units.formatting import NumberStyle

BAR = BusbarTrial(length_mm=1000.0, width_mm=20.0, thickness_mm=3.0)


def lines_of(trial: BusbarTrial, mark: str = ".") -> dict[str, BusbarLine]:
    lines = busbar_lines(busbar_figures(trial), style=NumberStyle(decimal_mark=mark))
    return {line.figure.key: line for line in lines}


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (214.4, "A", "214\u00a0A"),
        (1568.9, "A", "1\u2009570\u00a0A"),
        (9532.0, "A", "9.53\u00a0kA"),
        (999.6, "N", "1\u2009000\u00a0N"),
        (5731.4, "N", "5.73\u00a0kN"),
        (250.0, "N/m", "250\u00a0N/m"),
        (60.0, "MPa", "60\u00a0MPa"),
        (0.3961, "mm", "0.396\u00a0mm"),
        (0.0, "mm", "0\u00a0mm"),
        (math.nan, "N", "\u2013"),
    ],
)
def test_estimates_have_three_digits(value: float, unit: str, text: str) -> None:
    assert amount(value, unit, style=NumberStyle()) == text


def test_what_was_entered_keeps_its_digits() -> None:
    style = NumberStyle(decimal_mark=",")
    assert entered(1450.5, "mm", style=style) == "1\u2009450,5\u00a0mm"


def test_the_words_of_a_bar() -> None:
    lines = lines_of(BAR)
    carries = lines["ampacity"]
    # 7.73 * 60^0.5 * 46^0.39 = 266.5 A
    assert carries.value == "about 267\u00a0A (240 to 293)"
    assert carries.note.startswith("At 50 K over 40 °C, one bare bar on edge.")
    assert lines["density"].value == "4.44\u00a0A/mm²"
    assert lines["growth"].value == "1.02\u00a0mm"
    assert lines["growth"].note == "Free, when it gets 60\u00a0K warmer."
    assert lines["bar force per metre"].value == "250\u00a0N/m"
    assert lines["short-time current"].label == "Bears for 1\u00a0s"
    headings = [line.heading for line in lines.values()]
    assert headings == ["Current"] * 2 + ["Growth"] * 4 + ["Short circuit"] * 2


def test_a_held_bar_yields_or_bows_out() -> None:
    """122.4 MPa against 70; 4 pi^2 E I / L^2 = 213 N for 20 x 3 mm over 1 m."""
    slender = lines_of(BAR)["held force"]
    assert slender.value == "7.34\u00a0kN"
    assert slender.grade is Grade.LOOK
    assert "122\u00a0MPa. It yields at 70\u00a0MPa, 4.2\u00a0kN." in slender.note
    assert "bows out at about 213\u00a0N" in slender.note
    stocky = lines_of(replace(BAR, length_mm=100.0))["held force"]
    assert "bows out" not in stocky.note
    cool = lines_of(replace(BAR, length_mm=100.0, rise_k=20.0))["held force"]
    assert (cool.grade, "yields" in cool.note) == (Grade.NONE, False)


def test_a_leg_that_is_too_short_is_said() -> None:
    """sqrt(3 E h x / s) = 135.5 mm; the stress goes with 1/L^2 from 60 MPa there."""
    shortest = lines_of(BAR)["leg force"]
    assert "the shortest leg, 136\u00a0mm: 60\u00a0MPa" in shortest.note
    assert lines_of(BAR)["least leg"].value == "136\u00a0mm"
    enough = lines_of(replace(BAR, leg_mm=136.0))["leg force"]
    assert (enough.grade, "allowed" in enough.note) == (Grade.NONE, False)
    tight = lines_of(replace(BAR, leg_mm=130.0))["leg force"]
    assert tight.grade is Grade.LOOK
    assert "65.2\u00a0MPa in the bend; more than the 60\u00a0MPa allowed." in tight.note
    broken = lines_of(replace(BAR, leg_mm=50.0))["leg force"]
    assert broken.grade is Grade.FAIL
    assert "it yields at 70\u00a0MPa" in broken.note
    assert lines_of(replace(BAR, legs=2))["least leg"].note.startswith("Two legs")


def test_more_current_than_it_carries_is_said() -> None:
    within = lines_of(replace(BAR, current_a=250.0))
    assert within["ampacity"].grade is Grade.NONE
    assert within["density"].note == "At 250\u00a0A."
    above = lines_of(replace(BAR, current_a=280.0))["ampacity"]
    assert above.grade is Grade.LOOK
    assert "280\u00a0A is more than that." in above.note
    assert lines_of(replace(BAR, current_a=300.0))["ampacity"].grade is Grade.FAIL
    short = lines_of(replace(BAR, fault_current_a=12e3))["short-time current"]
    assert short.grade is Grade.FAIL
    assert "12\u00a0kA is more than that." in short.note


def test_the_limits_of_the_formulas_are_said() -> None:
    assert "hold no bar" not in lines_of(BAR)["ampacity"].note
    thin = lines_of(replace(BAR, thickness_mm=1.5))["ampacity"]
    assert "Published tables hold no bar of this size." in thin.note
    near, far = (
        lines_of(replace(BAR, distance_mm=distance))["bar force per metre"].note
        for distance in (39.0, 41.0)
    )
    assert "shape factor" in near
    assert "shape factor" not in far
    assert "not a design" in CAUTION
    assert "licensed practice" in CAUTION


def test_what_is_not_known_is_a_dash_with_its_reason() -> None:
    lines = lines_of(BusbarTrial())
    assert lines["ampacity"].value == "\u2013"
    assert lines["ampacity"].note == "Not known: width, thickness."
    assert lines["bar force per metre"].note == (
        "At 5\u00a0kA in each, 20\u00a0mm apart."
    )
    no_time = lines_of(replace(BAR, duration_s=math.nan))["short-time current"]
    assert no_time.label == "Bears in a short circuit"


def test_the_decimal_mark_is_that_of_the_study() -> None:
    line = lines_of(BAR, ",")["growth"]
    assert line.value == "1,02\u00a0mm"
    style = NumberStyle(decimal_mark=",")
    assert figure_text(line.figure, style=style) == "1,02\u00a0mm"
