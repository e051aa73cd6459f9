"""Assumptions of a study as inputs of a figure, with where each comes from."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from benchpack.model.assumptions import Assumptions
from benchpack.model.change_words import ProgrammeKind
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.worth_words import EnergyFrom, ValuedMass
from benchpack.results.figure import PRACTICE, Input
from benchpack.results.joint_facts import USUAL_CURRENCY
from benchpack.results.starting_money import holds_elsewhere
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_driving import driven_by

OF_STUDY = "the study"
_AS_LIKELY = "likewise"
_START = "starting value, "
_MEMORY = _START + "from memory"
_MEMORY_ELSEWHERE = f"starting value in {USUAL_CURRENCY}, from memory"
_USUAL = _START + PRACTICE
_MASS_ENERGY = (
    _START + "likely as in Weiss, Cloos, Helmers, Environ. Sci. Eur. 32 (2020) 46; "
    "ends within Del Pero et al., Machines 8 (2020) 51, the low one from memory"
)
_MARKS: Mapping[str, str] = {
    "programme_years": _USUAL,
    "volume_spread": _USUAL,
    "discount_rate": _USUAL,
    "customer_share": _USUAL,
    "mass_energy": _MASS_ENERGY,
    "rolling_resistance": _MEMORY,
    "drive_efficiency": _MEMORY,
    "recuperated_share": _MEMORY,
    "steady_speed_kmh": _START + "our own",
    "vehicle_range_km": _MEMORY,
    "usable_share": _MEMORY,
    "battery_cost": _MEMORY,
    "consumption_kwh": _MEMORY,
    "driver_km_per_year": _MEMORY,
    "driver_years": _MEMORY,
    "energy_price": _MEMORY,
    "charging_efficiency": _MEMORY,
    "driver_rate": _MEMORY,
}
_STARTING = Assumptions()


def source_of(study: Study, attribute: str) -> str:
    """Say where an assumption comes from: the study, or the mark of a starting value.

    Parameters
    ----------
    study : Study
        The study.
    attribute : str
        One of `ASSUMPTION_NAMES`.
    """
    value: Any = getattr(study, attribute)
    if holds_elsewhere(study, attribute):
        return _MEMORY_ELSEWHERE
    if attribute in _MARKS and value == getattr(_STARTING, attribute):
        return _MARKS[attribute]
    return OF_STUDY


def assumed(
    study: Study, attribute: str, label: str, *, unit: str = ""
) -> tuple[Input, ...]:
    """Give an assumption as an input; of a range the likely figure and its ends.

    Parameters
    ----------
    study : Study
        The study.
    attribute : str
        One of `ASSUMPTION_NAMES`.
    label : str
        Its symbol and what it is.
    unit : str
        Unit label, empty for a ratio.
    """
    value: Any = getattr(study, attribute)
    source = source_of(study, attribute)
    if isinstance(value, Range):
        return ranged_inputs(label, value, unit=unit, source=source)
    figure = float("nan") if value is None else float(value)
    return (Input(label, figure, unit, source),)


def ranged_inputs(
    label: str, value: Range, *, unit: str, source: str
) -> tuple[Input, ...]:
    """Give a range as inputs: the likely figure, and its ends where it has any.

    Parameters
    ----------
    label : str
        Its symbol and what it is.
    value : Range
        The range.
    unit, source : str
        As of an `Input`.
    """
    likely = Input(label, value.likely, unit, source)
    if value.width == 0:
        return (likely,)
    word = label.partition(",")[0]
    return (
        likely,
        Input(f"{word} low", value.low, unit, _AS_LIKELY),
        Input(f"{word} high", value.high, unit, _AS_LIKELY),
    )


def worth_inputs(study: Study) -> tuple[Input, ...]:
    """Give the worth of a kilogram with the reason and the source written for it."""
    return ranged_inputs(
        "w, worth",
        Range(*study.worth_per_kg),
        unit=f"{study.currency}/kg",
        source=worth_source_of(study),
    )


def worth_source_of(study: Study) -> str:
    """Give reason and source of the worth of a kilogram, or its mark.

    Parameters
    ----------
    study : Study
        The study.
    """
    written = [one for one in (study.worth_reason, study.worth_source) if one.strip()]
    if written:
        return "; ".join(written)
    mark = OF_STUDY
    if study.worth_per_kg == _STARTING.worth_per_kg:
        is_usual = study.currency == USUAL_CURRENCY
        mark = _MEMORY if is_usual else _MEMORY_ELSEWHERE
    return f"{mark}, no reason written"


def saving_inputs(case: WorthCase) -> tuple[Input, ...]:
    """Give the saving that is valued, and what it is made of.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    saving, study = case.saving, case.study
    if saving.valued is ValuedMass.PROPOSAL:
        whence = "the ledger of the proposal"
    elif saving.valued is ValuedMass.TARGET:
        whence = "the target of the study"
    else:
        whence = "gap x share captured"
    label = "dm, mass saved per pack"
    if saving.saved_kg is None:
        found: tuple[Input, ...] = (Input(label, float("nan"), "kg", whence),)
    else:
        found = ranged_inputs(label, saving.saved_kg, unit="kg", source=whence)
    if saving.valued is not ValuedMass.SHARE:
        return found
    return (
        *found,
        Input(f"gap {study.basis}", case.gap.gap_kg, "kg", "the comparison"),
        Input("share captured", study.share_captured, "", OF_STUDY),
    )


def secondary_inputs(case: WorthCase) -> tuple[Input, ...]:
    """Give the mass that goes elsewhere per kilogram, with its mark.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    study, found = case.study, case.derived.secondary
    source = secondary_source(study)
    return ranged_inputs("s, secondary mass", found, unit="kg/kg", source=source)


def secondary_source(study: Study) -> str:
    """Say where the mass that goes elsewhere comes from, with its mark.

    Parameters
    ----------
    study : Study
        Kind of programme, and a figure of its own.
    """
    if study.programme is ProgrammeKind.RUNNING:
        return f"0 in a running change, {PRACTICE}"
    if study.secondary_share is not None:
        return OF_STUDY
    if study.programme is ProgrammeKind.UNSTATED:
        return "0 where the kind of programme is not stated"
    return f"usual for the programme {study.programme}, from memory"


def mass_energy_inputs(case: WorthCase) -> tuple[Input, ...]:
    """Give what mass costs on the road, and where a pattern was driven its figures.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    study, derived = case.study, case.derived
    unit = "kWh/(100 km 100 kg)"
    driven = driven_by(study)
    source = mass_energy_source(study)
    if driven is None:
        return ranged_inputs(
            "e, energy by mass", derived.mass_energy, unit=unit, source=source
        )
    return (
        Input(
            "e, energy by mass",
            derived.mass_energy.likely,
            unit,
            f"{source}: T / eta + r eta B, not below zero",
        ),
        Input("T, at the wheel while it drives", driven.traction, unit, source),
        Input("B, at the wheel while it brakes", driven.braking, unit, source),
        Input("length of the pattern", driven.distance_km, "km", source),
        *assumed(study, "rolling_resistance", "C_rr, rolling resistance"),
        *assumed(study, "drive_efficiency", "eta, battery to wheel"),
        *assumed(study, "recuperated_share", "r, recuperated share"),
    )


def mass_energy_source(study: Study) -> str:
    """Say where the energy that mass costs comes from: its mark, or what was driven.

    Parameters
    ----------
    study : Study
        The study.
    """
    driven = driven_by(study)
    if driven is not None:
        return driven.name
    own = source_of(study, "mass_energy")
    if study.energy_from is EnergyFrom.GIVEN:
        return own
    return f"{own}; no drive cycle has been read yet"


def driving_note(case: WorthCase) -> str:
    """Say how a pattern is split into driving and braking, empty where none is."""
    if driven_by(case.study) is None:
        return ""
    return (
        "; an interval of the pattern drives or brakes by the sign of the whole force "
        "with air (a usual car's drag), of which only what grows with mass is counted"
    )
