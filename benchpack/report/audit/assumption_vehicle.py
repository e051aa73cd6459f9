"""Vehicle and driver on the sheet of assumptions."""

from __future__ import annotations

from benchpack.model.study import Study
from benchpack.model.worth_words import EnergyFrom, Sizing
from benchpack.report.audit import names
from benchpack.report.audit.assumption_rows import NO, AssumptionRows
from benchpack.report.audit.record import Format, formula, text
from benchpack.results.explained_assumed import (
    OF_STUDY,
    secondary_source,
    source_of,
)
from benchpack.results.starting_money import holds_elsewhere
from benchpack.results.worth_derived import secondary_of
from benchpack.results.worth_driving import Driven, driven_by, mass_energy_of

_SHARE = (0.0, 1.0)
_PART = (0.05, 1.0)
_WAY_UNIT = "kWh/(100 km 100 kg)"


def vehicle_rows(rows: AssumptionRows, study: Study) -> None:
    """Write what a vehicle answers to mass, and what its driver pays.

    Parameters
    ----------
    rows : AssumptionRows
        The sheet.
    study : Study
        The study.
    """
    rows.draft.section("The vehicle")
    _energy(rows, study)
    for title, attribute, unit, name, limits, form in (
        (
            "range of the vehicle",
            "vehicle_range_km",
            "km",
            names.VEHICLE_RANGE,
            (1.0, 5000.0),
            Format.COUNT,
        ),
        (
            "share of the energy used for it",
            "usable_share",
            "%",
            names.USABLE_SHARE,
            _PART,
            Format.SHARE,
        ),
        (
            "consumption",
            "consumption_kwh",
            "kWh/100 km",
            names.CONSUMPTION,
            (0.1, 1000.0),
            Format.TENTH,
        ),
    ):
        rows.single(
            title,
            getattr(study, attribute),
            unit=unit,
            number_format=form,
            name=name,
            source=source_of(study, attribute),
            where="Vehicle",
            limits=limits,
        )
    _battery(rows, study)
    _driver(rows, study)


def _energy(rows: AssumptionRows, study: Study) -> None:
    """Write what mass costs on the road: given, or by a pattern of driving."""
    driven = driven_by(study)
    if driven is not None:
        _pattern(rows, study, driven)
        return
    source = source_of(study, "mass_energy")
    if study.energy_from is not EnergyFrom.GIVEN:
        source = f"no drive cycle has been read yet, so this is given; {source}"
    rows.triple(
        "energy that mass costs",
        study.mass_energy,
        unit=_WAY_UNIT,
        labels=names.MASS_ENERGY,
        source=source,
        where="Vehicle",
        limits=(0.0, 10.0),
    )


def _pattern(rows: AssumptionRows, study: Study, driven: Driven) -> None:
    """Write what the pattern needs at the wheel, and from the battery by formula."""
    said = f"value of the program: {driven.name}, {driven.distance_km:.2f} km"
    whence = source_of(study, "rolling_resistance")
    rolling = f"{study.rolling_resistance:g} ({whence})"
    at_wheel = [
        rows.single(
            f"energy at the wheel while {doing}",
            value,
            unit=_WAY_UNIT,
            number_format=Format.THOUSANDTH,
            source=f"{said}, rolling resistance {rolling}",
            where="it does not move with this workbook",
            changes=False,
        )
        for doing, value in (("driving", driven.traction), ("braking", driven.braking))
    ]
    shares = [
        rows.single(
            title,
            getattr(study, attribute),
            unit="%",
            number_format=Format.SHARE,
            source=source_of(study, attribute),
            where="energy that mass costs",
            limits=limits,
        )
        for title, attribute, limits in (
            ("efficiency from battery to wheel", "drive_efficiency", _PART),
            ("share of the braking recuperated", "recuperated_share", _SHARE),
        )
    ]
    efficiency, back = shares
    body = f"MAX(0,{at_wheel[0]}/{efficiency}+{back}*{efficiency}*{at_wheel[1]})"
    energy = mass_energy_of(study)
    cells = [
        formula(body, end, name=name)
        for end, name in zip(energy.ends, names.MASS_ENERGY, strict=True)
    ]
    source = "driving / efficiency - recuperated x efficiency x braking"
    words = (text(_WAY_UNIT), text(NO), text(source), text("Vehicle"))
    rows.draft.line(text("energy that mass costs"), *cells, *words)


def _battery(rows: AssumptionRows, study: Study) -> None:
    """Write what stays the same, the battery, and what else goes."""
    rows.single(
        "what stays the same",
        str(study.sizing),
        name=names.SIZING,
        source=f"{OF_STUDY}; one of: {', '.join(Sizing)}",
        where="Vehicle: with the battery kept the maker gains range, no money",
        choices=tuple(map(str, Sizing)),
    )
    is_unknown = holds_elsewhere(study, "battery_cost")
    rows.triple(
        "cost of one more kWh of battery",
        None if is_unknown else study.battery_cost,
        unit="CUR/kWh",
        labels=names.BATTERY_COST,
        source=_money_source(study, "battery_cost"),
        where="Vehicle",
        limits=(0.0, 1e5),
    )
    rows.single(
        "density of the battery saved",
        study.pack_density_wh_per_kg,
        unit="Wh/kg",
        number_format=Format.TENTH,
        name=names.BATTERY_DENSITY,
        source=f"{OF_STUDY}; empty: the density of the subject on sheet Packs",
        where="Vehicle",
        limits=(1.0, 2000.0),
    )
    rows.triple(
        "other mass that goes per kilogram saved",
        secondary_of(study),
        unit="kg/kg",
        labels=names.SECONDARY,
        source=secondary_source(study),
        where="Vehicle",
        limits=(0.0, 2.0),
    )


def _money_source(study: Study, attribute: str) -> str:
    """Say where a figure comes from, or that it lacks in this currency."""
    source = source_of(study, attribute)
    if not holds_elsewhere(study, attribute):
        return source
    return f"empty: {source}; enter it in {study.currency}"


def _driver(rows: AssumptionRows, study: Study) -> None:
    """Write what the driver drives and pays."""
    for title, attribute, unit, name, limits, form in (
        (
            "distance a year",
            "driver_km_per_year",
            "km/year",
            names.DRIVER_WAY,
            (0.0, 1e6),
            Format.COUNT,
        ),
        (
            "years of use",
            "driver_years",
            "years",
            names.DRIVER_YEARS,
            (0.1, 100.0),
            Format.TENTH,
        ),
        (
            "price of energy",
            "energy_price",
            "CUR/kWh",
            names.ENERGY_PRICE,
            (0.0, 1000.0),
            Format.CENT,
        ),
        (
            "efficiency of charging",
            "charging_efficiency",
            "%",
            names.CHARGING_EFFICIENCY,
            _PART,
            Format.SHARE,
        ),
        (
            "driver's interest",
            "driver_rate",
            "% a year",
            names.DRIVER_RATE,
            _SHARE,
            Format.SHARE,
        ),
    ):
        is_unknown = holds_elsewhere(study, attribute)
        rows.single(
            title,
            None if is_unknown else getattr(study, attribute),
            unit=unit,
            number_format=form,
            name=name,
            source=_money_source(study, attribute),
            where="Vehicle, what the driver saves",
            limits=limits,
        )
