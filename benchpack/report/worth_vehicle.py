"""The worth that follows from the vehicle, beside the one that is entered."""

from __future__ import annotations

import numpy as np

from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.worth_words import Sizing
from benchpack.report.chart_words import reason_text
from benchpack.report.display import Display
from benchpack.report.worth_figures import Shown
from benchpack.report.worth_money import worth_span_text
from benchpack.report.worth_specs import SetsSpec
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_derived import DerivedWorth
from benchpack.units.formatting import (
    KG_PER_LB,
    UNKNOWN,
    format_number,
    format_range,
    format_share,
)

ENTERED, DERIVED, DRIVER = "entered", "by the vehicle", "the driver saves"
"""Names of the worths beside each other."""
_PER_CENT = 0.00995


def worth_range_text(worth: Range | None, display: Display) -> str:
    """Write a worth per mass with its range, a dash for none.

    Parameters
    ----------
    worth : Range or None
        The worth per kilogram.
    display : Display
        How numbers are shown.
    """
    if worth is None:
        return UNKNOWN
    shown = display.worth_text(worth.likely)
    return f"{shown} {worth_span_text(worth.low, worth.high, display)}".rstrip()


def derived_shown(case: WorthCase) -> Shown:
    """Give the worth by the vehicle as a figure."""
    key, label, found = "derived worth", "Worth by the vehicle", case.derived
    if found.worth_per_kg is None:
        why = reason_text(found.missing) if found.missing else ""
        return Shown(key, label, why=why)
    display, worth = Display(case.study), found.worth_per_kg
    entered = display.worth_text(case.study.worth_likely_per_kg)
    why = f"Entered: {entered}. "
    why += reason_text(found.missing) if found.missing else "With the range kept."
    span = worth_span_text(worth.low, worth.high, display)
    return Shown(key, label, display.worth_text(worth.likely), span, why)


def driver_shown(case: WorthCase) -> Shown:
    """Give what a kilogram saves the driver as a figure."""
    key, label, worth = "driver saving", "Driver saves", case.derived.driver_per_kg
    display = Display(case.study)
    if worth is None:
        missing = case.derived.driver_missing
        return Shown(key, label, why=reason_text(missing) if missing else "")
    return Shown(
        key,
        label,
        display.worth_text(worth.likely),
        worth_span_text(worth.low, worth.high, display),
        "Present value of the energy; another pocket, never added.",
    )


def vehicle_spec(case: WorthCase) -> SetsSpec:
    """Give the worth that is entered beside that by the vehicle and the driver's.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    study, found = case.study, case.derived
    display = Display(study)
    rows = {ENTERED: Range(*study.worth_per_kg)}
    if found.worth_per_kg is not None:
        rows[DERIVED] = found.worth_per_kg
    if found.driver_per_kg is not None:
        rows[DRIVER] = found.driver_per_kg
    per_unit = KG_PER_LB if study.mass_unit == "lb" else 1.0
    low, likely, high = per_unit * np.array([one.ends for one in rows.values()]).T

    def number(shown: float) -> str:
        return format_number(shown, 2, style=display.style)

    def whole(shown: float) -> str:
        return display.worth_text(shown / per_unit)

    return SetsSpec(
        title=_finding(study, found, display),
        note="The driver's saving is another pocket: it is never added to the worth.",
        explain_key="derived worth",
        row_head="worth of a kilogram",
        decimal_mark=study.decimal_mark,
        names=tuple(rows),
        low=low,
        likely=likely,
        high=high,
        in_use=ENTERED,
        axis_label=f"Worth of mass saved [{study.currency}/{study.mass_unit}]",
        format_value=number,
        format_full=whole,
    )


def _finding(study: Study, found: DerivedWorth, display: Display) -> str:
    worth = found.worth_per_kg
    if worth is None:
        return "The vehicle does not say what mass is worth"
    if study.sizing is Sizing.BATTERY_KEPT:
        if found.range_gain is None:
            return "With the battery kept, what is saved is range"
        return f"With the battery kept, range gains {range_gain_text(found, display)}"
    text = display.worth_text(worth.likely)
    if found.disagreement is not None:
        return f"The vehicle supports {text}, far from what is entered"
    return f"The vehicle supports {text}"


def range_gain_text(found: DerivedWorth, display: Display) -> str:
    """Write the share of the range that is gained, a dash where none is.

    Parameters
    ----------
    found : DerivedWorth
        The worth by the vehicle.
    display : Display
        How numbers are shown.
    """
    if found.range_gain is None:
        return UNKNOWN

    low, likely, high = found.range_gain.ends
    # A pack that is lighter by some kilograms gains less than a per cent.
    decimals = 1 if likely >= _PER_CENT else 2

    def percent(share: float | None) -> str:
        return format_share(share, style=display.style, decimals=decimals)

    if low == high:
        return percent(likely)
    return format_range(likely, low, high, percent)


def vehicle_sentences(case: WorthCase) -> tuple[str, ...]:
    """Say whether both worths agree, why the entered one is what it is, and what lacks.

    Parameters
    ----------
    case : WorthCase
        The case.

    Returns
    -------
    tuple of str
        The disagreement comes first, where there is one.
    """
    study, found = case.study, case.derived
    display = Display(study)
    said = []
    reason = study.worth_reason.strip().rstrip(".")
    if found.disagreement is not None:
        apart = found.disagreement
        # Who has written down why need not be asked to do so.
        said.append(apart.what if reason else reason_text(apart))
    if found.missing is not None:
        said.append(reason_text(found.missing))
    said.append(
        f"Why {display.worth_text(study.worth_likely_per_kg)} is entered: {reason}."
        if reason
        else "No reason for the entered worth is written down yet."
    )
    if study.worth_source.strip():
        said.append(f"Source: {study.worth_source.strip().rstrip('.')}.")
    return tuple(said)
