"""The rows of the panel of assumptions in their sections, and which of them matter."""

from __future__ import annotations

from collections.abc import Mapping

from benchpack.model.change_words import ProgrammeKind
from benchpack.model.study import Study
from benchpack.model.worth_words import EnergyFrom, Sizing

WORTH, VOLUMES, CYCLE = "worth_per_kg", "volumes", "drive_cycle"
"""Keys of the rows that are no plain field."""

SECTIONS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("Worth", (WORTH, "worth_reason", "worth_source")),
    (
        "Programme",
        (
            "programme",
            "yearly_volume",
            "programme_years",
            VOLUMES,
            "start_year",
            "volume_spread",
            "discount_rate",
        ),
    ),
    (
        "Price",
        (
            "valued_mass",
            "share_captured",
            "target_kg",
            "old_part_price",
            "part_price",
            "required_saving",
            "customer_share",
        ),
    ),
    (
        "Vehicle",
        (
            "sizing",
            "energy_from",
            "mass_energy",
            CYCLE,
            "steady_speed_kmh",
            "rolling_resistance",
            "drive_efficiency",
            "recuperated_share",
            "vehicle_range_km",
            "usable_share",
            "battery_cost",
            "pack_density_wh_per_kg",
            "secondary_share",
            "consumption_kwh",
        ),
    ),
    (
        "Driver",
        (
            "driver_km_per_year",
            "driver_years",
            "energy_price",
            "charging_efficiency",
            "driver_rate",
        ),
    ),
)
"""Headings, and the rows below them; all but `WORTH` are attributes of a study."""

EMPTY: Mapping[str, str] = {
    "yearly_volume": "subject's",
    "start_year": "open",
    "target_kg": "none",
    "old_part_price": "reckoned",
    "part_price": "none",
    "pack_density_wh_per_kg": "subject's",
    "secondary_share": "by kind",
}
"""What stands in a field that may be empty."""

PERCENT = frozenset(
    {
        "share_captured",
        "volume_spread",
        "discount_rate",
        "customer_share",
        "drive_efficiency",
        "recuperated_share",
        "usable_share",
        "charging_efficiency",
        "driver_rate",
    }
)
UNITS = {
    "programme_years": "years",
    "driver_years": "years",
    "yearly_volume": "packs/a",
    "secondary_share": "kg/kg",
    "driver_km_per_year": "km",
}
TITLES = {
    WORTH: "worth",
    "programme": "kind of programme",
    "programme_years": "years",
    "discount_rate": "interest a year",
    "mass_energy": "energy by mass",
    "energy_from": "energy by mass from",
    "sizing": "what stays",
    "valued_mass": "what is valued",
    "vehicle_range_km": "range",
    "steady_speed_kmh": "speed",
    "pack_density_wh_per_kg": "battery density",
    "old_part_price": "old parts",
    "part_price": "new parts",
    "required_saving": "saving asked for",
    "worth_reason": "reason",
    "worth_source": "source",
}
HELP = {
    WORTH: "Worth of the mass saved, from bad to good.",
    "worth_reason": "Why the worth is what it is.",
}

_OF_PATTERN = frozenset({"rolling_resistance", "drive_efficiency", "recuperated_share"})
_OF_RANGE_KEPT = frozenset(
    {"vehicle_range_km", "usable_share", "battery_cost", "pack_density_wh_per_kg"}
)


def matters(key: str, study: Study) -> bool:
    """Tell whether a row has a say in what the study reckons with.

    Parameters
    ----------
    key : str
        Key of a row.
    study : Study
        The study with the ways that are chosen.
    """
    way = study.energy_from
    given = way is EnergyFrom.GIVEN or (
        way is EnergyFrom.CYCLE and not study.drive_cycle
    )
    kept = study.sizing is Sizing.RANGE_KEPT
    if key in ("yearly_volume", "programme_years"):
        return not study.volumes
    if key == "mass_energy":
        return given
    if key in _OF_PATTERN:
        return not given
    if key == "steady_speed_kmh":
        return way is EnergyFrom.STEADY
    if key in _OF_RANGE_KEPT:
        return kept
    if key == "secondary_share":
        return kept and study.programme is not ProgrammeKind.RUNNING
    return key != "consumption_kwh" or not kept
