"""What a study assumes about money, programme and vehicle, and named sets of it."""

from __future__ import annotations

import math
from dataclasses import dataclass, fields
from typing import Any

from benchpack.errors import DataError, Problem, Severity
from benchpack.model.assumption_fields import NEW_FIELDS
from benchpack.model.change_words import ProgrammeKind
from benchpack.model.drive_cycle import parse_cycle
from benchpack.model.part import record_problems
from benchpack.model.ranges import Range
from benchpack.model.worth_words import EnergyFrom, Sizing, ValuedMass

LEAST_YEARS, MOST_YEARS = 0.1, 100
"""Years of a programme at least and at most."""

USUAL_MASS_ENERGY = Range(0.4, 0.6, 0.9)
"""Likely: regression of Weiss, Cloos, Helmers, Environ. Sci. Eur. 32 (2020) 46 (0.6);
ends inside what Del Pero et al., Machines 8 (2020) 51, find (0.47 to 1.17), widened
downwards from memory."""

USUAL_BATTERY_COST = Range(80.0, 100.0, 140.0)
"""Money for a kWh of pack, EUR (from memory)."""

_Check = tuple[bool, str, str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Assumptions:
    """What money is reckoned with; figures of the vehicle start from memory.

    Parameters
    ----------
    worth_low_per_kg, worth_likely_per_kg, worth_high_per_kg : float
        Worth of one kilogram saved, in the study's currency.
    worth_reason, worth_source : str
        Why the worth is what it is, and where it comes from.
    share_captured : float
        Share of the gap that is thought to be reachable, 0 to 1.
    valued_mass : ValuedMass
        Which saving is valued over the programme.
    programme : ProgrammeKind
        When in the life of the pack the proposal is to come.
    yearly_volume : int or None
        Packs per year; None for the subject's own yearly volume.
    programme_years : float
        Years over which tools are paid back.
    volumes : tuple of int
        Packs in each year from the first, in place of volume and years.
    volume_spread : float
        By which share the volumes may fall short or exceed, 0 to 1.
    start_year : int or None
        Calendar year of the first packs.
    discount_rate : float
        Interest per year as a fraction.
    customer_share : float
        Share of the whole gain that the customer keeps, 0 to 1.
    required_saving : float
        Money per pack that the customer asks to keep.
    part_price : float or None
        Price of the new parts per pack, where it is given.
    old_part_price : float or None
        What the parts that go cost per pack; None to reckon it.
    mass_energy : Range
        Energy that mass costs on the road, kWh/(100 km 100 kg).
    energy_from : EnergyFrom
        Whether that is given or reckoned from a pattern of driving.
    rolling_resistance, drive_efficiency, recuperated_share : float
        Rolling resistance, from battery to wheel, and of the braking energy.
    steady_speed_kmh : float
        Speed of the pattern of constant speed.
    drive_cycle : str
        Text of a `DriveCycle`; empty for none.
    vehicle_range_km, usable_share : float
        Range to be kept, and the share of the energy that is used for it.
    battery_cost : Range
        Money for one more kWh of pack.
    pack_density_wh_per_kg : float or None
        Of the battery that becomes smaller; None for that of the subject.
    sizing : Sizing
        Whether the range or the battery stays as it is.
    consumption_kwh : float
        Of the vehicle, kWh per 100 km.
    secondary_share : float or None
        Further kilograms that go per kilogram saved; None by kind of programme.
    driver_km_per_year, driver_years, energy_price : float
        What the driver drives and pays for a kWh.
    charging_efficiency, driver_rate : float
        From socket to battery, and the driver's interest per year.

    Raises
    ------
    DataError
        With one problem per attribute that cannot stand.
    """

    worth_low_per_kg: float = 1.0
    worth_likely_per_kg: float = 3.0
    worth_high_per_kg: float = 6.0
    worth_reason: str = ""
    worth_source: str = ""
    share_captured: float = 1.0
    valued_mass: ValuedMass = ValuedMass.PROPOSAL
    programme: ProgrammeKind = ProgrammeKind.UNSTATED
    yearly_volume: int | None = None
    programme_years: float = 7.0
    volumes: tuple[int, ...] = ()
    volume_spread: float = 0.2
    start_year: int | None = None
    discount_rate: float = 0.08
    customer_share: float = 0.5
    required_saving: float = 0.0
    part_price: float | None = None
    old_part_price: float | None = None
    mass_energy: Range = USUAL_MASS_ENERGY
    energy_from: EnergyFrom = EnergyFrom.GIVEN
    rolling_resistance: float = 0.01
    drive_efficiency: float = 0.9
    recuperated_share: float = 0.65
    steady_speed_kmh: float = 100.0
    drive_cycle: str = ""
    vehicle_range_km: float = 400.0
    usable_share: float = 0.95
    battery_cost: Range = USUAL_BATTERY_COST
    pack_density_wh_per_kg: float | None = None
    sizing: Sizing = Sizing.RANGE_KEPT
    consumption_kwh: float = 17.0
    secondary_share: float | None = None
    driver_km_per_year: float = 15_000.0
    driver_years: float = 13.0
    energy_price: float = 0.25
    charging_efficiency: float = 0.88
    driver_rate: float = 0.05

    @property
    def worth_per_kg(self) -> tuple[float, float, float]:
        """Worth per kilogram as low, likely, high."""
        return (
            self.worth_low_per_kg,
            self.worth_likely_per_kg,
            self.worth_high_per_kg,
        )


ASSUMPTION_NAMES: tuple[str, ...] = tuple(one.name for one in fields(Assumptions))
"""Attributes that a set of assumptions holds; no gap changes with them."""


@dataclass(frozen=True, slots=True)
class AssumptionSet(Assumptions):
    """Assumptions under a name, kept beside those that a study reckons with.

    Parameters
    ----------
    study : str
        Name of the study they belong to.
    name : str
        Name of the set, in one study once.

    Raises
    ------
    DataError
        With one problem per attribute that cannot stand.
    """

    study: str
    name: str

    def __post_init__(self) -> None:
        problems = assumption_problems(self, self.name)
        if not self.name.strip():
            what = "The set of assumptions has no name."
            problems.append(Problem(what, "Give it one.", column="name"))
        if problems:
            raise DataError(*problems)


def assumption_values(record: Assumptions) -> dict[str, Any]:
    """Give the assumptions of a study or of a set by attribute.

    Parameters
    ----------
    record : Assumptions
        A study or a set.
    """
    return {name: getattr(record, name) for name in ASSUMPTION_NAMES}


def assumption_problems(record: Assumptions, name: str) -> list[Problem]:
    """Give what cannot stand in assumptions.

    Parameters
    ----------
    record : Assumptions
        A study or a set.
    name : str
        What the problems call it.
    """
    found = [
        Problem(what, remedy, column=column, record=name)
        for holds, column, what, remedy in (*_worth_checks(record), *_supply(record))
        if not holds
    ]
    found += [
        problem.at(record=name)
        for problem in record_problems(record, NEW_FIELDS)
        if problem.severity is Severity.ERROR
    ]
    try:
        parse_cycle(record.drive_cycle)
    except DataError as error:
        found += [problem.at(record=name) for problem in error.problems]
    return found


def _worth_checks(record: Assumptions) -> list[_Check]:
    low, likely, high = record.worth_per_kg
    return [
        (
            all(math.isfinite(w) and 0 <= w <= 1e6 for w in (low, likely, high)),
            "worth",
            f"Worth per kilogram is {low:g}, {likely:g}, {high:g}.",
            "Each has to be zero or more, and at most a million.",
        ),
        (
            low <= likely <= high,
            "worth",
            f"Worth runs {low:g}, {likely:g}, {high:g}.",
            "Give it as low, likely, high, each at least the one before.",
        ),
        (
            0 <= record.share_captured <= 1,
            "share captured",
            f"The share captured is {record.share_captured:g}.",
            "It has to lie between 0 and 1.",
        ),
    ]


def _supply(record: Assumptions) -> list[_Check]:
    volume, volumes = record.yearly_volume, record.volumes
    years, rate = record.programme_years, record.discount_rate
    return [
        (
            record.programme in tuple(ProgrammeKind),
            "programme",
            f"The programme {record.programme!r} is not known.",
            f"Use one of: {', '.join(filter(None, ProgrammeKind))}.",
        ),
        (
            volume is None or (0 < volume <= 1e9 and volume == int(volume)),
            "yearly volume",
            f"The yearly volume is {volume}.",
            "Give a whole number above 0, up to a thousand million.",
        ),
        (
            LEAST_YEARS <= years <= MOST_YEARS,
            "programme years",
            f"The programme runs {years:g} years.",
            f"Give {LEAST_YEARS:g} to {MOST_YEARS}.",
        ),
        (
            0 <= rate <= 1,
            "discount rate",
            f"The interest a year is {rate:g}.",
            "Give it as a fraction from 0 to 1, 0.08 for 8 %.",
        ),
        (
            len(volumes) <= MOST_YEARS and all(0 <= n <= 1e9 for n in volumes),
            "volumes",
            f"The volumes by year are {list(volumes)}.",
            f"Give up to {MOST_YEARS} whole numbers from 0 to a thousand million.",
        ),
    ]
