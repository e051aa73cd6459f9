"""The columns of assumptions: worth, programme, price, vehicle and driver."""

from __future__ import annotations

from benchpack.model.change_words import ProgrammeKind
from benchpack.model.fields import Field, Kind
from benchpack.model.range_columns import range_fields
from benchpack.model.worth_words import EnergyFrom, Sizing, ValuedMass

_MONEY = 1e6


def _ratio(
    name: str, title: str, help_text: str, *, ceiling: float = 1.0, floor: float = 0.0
) -> Field:
    return Field(
        name,
        title,
        Kind.NUMBER,
        "ratio",
        ceiling=ceiling,
        floor=floor,
        help=help_text,
        decimals=3,
    )


def _money(name: str, title: str, help_text: str) -> Field:
    return Field(
        name,
        title,
        Kind.NUMBER,
        "money",
        "CUR",
        ceiling=_MONEY,
        help=help_text,
        decimals=2,
    )


def _worth(end: str, word: str) -> Field:
    return Field(
        f"worth_{end}_per_kg",
        f"worth {end} per kg",
        Kind.NUMBER,
        "ratio",
        ceiling=_MONEY,
        help=f"{word} worth of one kilogram saved, in the study's currency.",
        decimals=2,
    )


FIRST_FIELDS: tuple[Field, ...] = (
    _worth("low", "Least"),
    _worth("likely", "Likely"),
    _worth("high", "Greatest"),
    Field("worth_reason", "worth reason", help="Why the worth is what it is."),
    Field(
        "share_captured",
        "share captured",
        Kind.NUMBER,
        "ratio",
        ceiling=1,
        help="Share of the gap that is thought to be reachable.",
    ),
    Field(
        "programme",
        "programme",
        Kind.CHOICE,
        choices=tuple(ProgrammeKind),
        help="When in the life of the pack the proposal is to come.",
    ),
    Field(
        "yearly_volume",
        "yearly volume",
        Kind.COUNT,
        "count",
        positive=True,
        ceiling=1e9,
        help="Packs per year; empty for the subject's own yearly volume.",
        decimals=0,
    ),
    Field(
        "programme_years",
        "programme years",
        Kind.NUMBER,
        "ratio",
        floor=0.1,
        ceiling=100,
        help="Years over which tools are paid back.",
    ),
    Field(
        "discount_rate",
        "discount rate",
        Kind.NUMBER,
        "ratio",
        ceiling=1,
        help="Interest per year as a fraction.",
        decimals=2,
    ),
)
"""Columns whose attributes are checked in sentences of their own."""

NEW_FIELDS: tuple[Field, ...] = (
    Field("worth_source", "worth source", help="Where the worth comes from."),
    Field(
        "valued_mass",
        "valued mass",
        Kind.CHOICE,
        choices=tuple(ValuedMass),
        help="Which saving is valued over the programme.",
    ),
    Field("volumes", "volumes", Kind.COUNTS, help="Packs in each year, in order."),
    _ratio(
        "volume_spread",
        "volume spread",
        "Share by which the volumes may fall short or exceed.",
    ),
    Field(
        "start_year",
        "start year",
        Kind.COUNT,
        "count",
        floor=1900,
        ceiling=2200,
        help="Calendar year of the first packs.",
        decimals=0,
    ),
    _ratio(
        "customer_share",
        "customer share",
        "Share of the whole gain that the customer keeps.",
    ),
    _money("required_saving", "required saving", "What the customer asks to keep."),
    _money("part_price", "part price", "Price of the new parts per pack."),
    _money("old_part_price", "old part price", "What the parts that go cost today."),
    *range_fields(
        "mass_energy",
        "mass energy",
        help_text="Energy that 100 kg cost on 100 km",
        unit="kWh/(100 km 100 kg)",
        quantity="mass energy",
        ceiling=10.0,
    ),
    Field(
        "energy_from",
        "mass energy from",
        Kind.CHOICE,
        choices=tuple(EnergyFrom),
        help="Whether it is given, or reckoned from a pattern of driving.",
    ),
    _ratio(
        "rolling_resistance",
        "rolling resistance",
        "Coefficient of rolling resistance.",
        ceiling=0.1,
        floor=0.001,
    ),
    _ratio(
        "drive_efficiency",
        "drive efficiency",
        "From the battery to the wheel.",
        floor=0.05,
    ),
    _ratio(
        "recuperated_share",
        "recuperated share",
        "Share of the braking energy that comes back to the battery.",
    ),
    Field(
        "steady_speed_kmh",
        "steady speed",
        Kind.NUMBER,
        "speed",
        "km/h",
        floor=1.0,
        ceiling=300,
        help="Speed of the pattern of constant speed.",
        decimals=0,
    ),
    Field("drive_cycle", "drive cycle", help="Speed over time, a JSON object."),
    Field(
        "vehicle_range_km",
        "vehicle range",
        Kind.NUMBER,
        "distance",
        "km",
        floor=1.0,
        ceiling=5000,
        help="Range of the vehicle.",
        decimals=0,
    ),
    _ratio(
        "usable_share",
        "usable share",
        "Share of the pack's energy that is used for the range.",
        floor=0.05,
    ),
    *range_fields(
        "battery_cost",
        "battery cost",
        help_text="Money for one more kWh of pack",
        unit="CUR/kWh",
        quantity="money per energy",
        ceiling=1e5,
    ),
    Field(
        "pack_density_wh_per_kg",
        "density of the battery saved",
        Kind.NUMBER,
        "specific energy",
        "Wh/kg",
        floor=1.0,
        ceiling=2000,
        help="Empty for the density of the subject.",
        decimals=0,
    ),
    Field(
        "sizing",
        "sizing",
        Kind.CHOICE,
        choices=tuple(Sizing),
        help="Whether the range or the battery stays as it is.",
    ),
    Field(
        "consumption_kwh",
        "consumption",
        Kind.NUMBER,
        "consumption",
        "kWh/100 km",
        floor=0.1,
        ceiling=1000,
        help="Energy that the vehicle takes for 100 km.",
    ),
    _ratio(
        "secondary_share",
        "secondary mass",
        "Further kilograms that go per kilogram saved; empty: by kind of programme.",
        ceiling=2.0,
    ),
    Field(
        "driver_km_per_year",
        "distance a year",
        Kind.NUMBER,
        "distance",
        "km",
        ceiling=1e6,
        help="What the driver drives in a year.",
        decimals=0,
    ),
    Field(
        "driver_years",
        "years of use",
        Kind.NUMBER,
        "ratio",
        floor=0.1,
        ceiling=100,
        help="How long the vehicle is driven.",
    ),
    Field(
        "energy_price",
        "energy price",
        Kind.NUMBER,
        "money per energy",
        "CUR/kWh",
        ceiling=1000,
        help="What the driver pays for a kWh.",
        decimals=2,
    ),
    _ratio(
        "charging_efficiency",
        "charging efficiency",
        "From the socket to the battery.",
        floor=0.05,
    ),
    _ratio(
        "driver_rate",
        "driver's interest",
        "Interest per year that the driver reckons with.",
    ),
)
"""The other columns, checked by what they say of themselves."""

ASSUMPTION_FIELDS: tuple[Field, ...] = (*FIRST_FIELDS, *NEW_FIELDS)
"""The columns of what `Assumptions` holds."""

SET_FIELDS: tuple[Field, ...] = (
    Field("study", "study", required=True, help="The study it belongs to."),
    Field("name", "assumption set", required=True, help="Name of the set."),
    *ASSUMPTION_FIELDS,
)
"""The columns of a named set of assumptions."""
