"""What mass costs on the road: given, or by a pattern of driving."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from benchpack.calc.drive_cycle import mass_energy_per_100_kg, wheel_energy
from benchpack.calc.speed_trace import SpeedTrace, constant_speed_trace, urban_trace
from benchpack.model.drive_cycle import parse_cycle
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.worth_words import EnergyFrom


@dataclass(frozen=True, slots=True)
class Driven:
    """What a pattern of driving needs, kWh per 100 km and 100 kg.

    Parameters
    ----------
    name : str
        What the pattern is called.
    distance_km : float
        Its length.
    traction, braking : float
        At the wheel while it drives, and while it brakes, the latter zero or below.
    from_battery : float
        What mass costs from the battery.
    """

    name: str
    distance_km: float
    traction: float
    braking: float
    from_battery: float


def mass_energy_of(study: Study) -> Range:
    """Give what mass costs on the road, kWh per 100 km and 100 kg.

    Parameters
    ----------
    study : Study
        The figure that is given, or what a pattern of driving needs.
    """
    found = driven_by(study)
    return study.mass_energy if found is None else Range.exactly(found.from_battery)


def driven_by(study: Study) -> Driven | None:
    """Give what the pattern of driving of a study needs.

    Parameters
    ----------
    study : Study
        Pattern, rolling resistance and efficiency.

    Returns
    -------
    Driven or None
        None where the energy is given, or no drive cycle has been read.
    """
    if study.energy_from is EnergyFrom.GIVEN:
        return None
    if study.energy_from is EnergyFrom.CYCLE and not study.drive_cycle:
        return None
    return _driven(
        study.energy_from,
        study.drive_cycle,
        study.steady_speed_kmh,
        study.rolling_resistance,
        study.drive_efficiency,
        study.recuperated_share,
    )


@lru_cache(maxsize=256)
def _driven(
    pattern: EnergyFrom,
    cycle_text: str,
    speed_kmh: float,
    rolling: float,
    efficiency: float,
    recuperated: float,
) -> Driven:
    cycle = parse_cycle(cycle_text) if pattern is EnergyFrom.CYCLE else None
    if cycle is not None:
        speeds = np.array(cycle.speed_kmh, dtype=np.float64)
        times = cycle.step_s * np.arange(float(speeds.size))
        trace = SpeedTrace(times, speeds)
        name = f"drive cycle {cycle.name}".strip()
    elif pattern is EnergyFrom.STEADY:
        trace = constant_speed_trace(speed_kmh)
        name = f"our own pattern, a constant {speed_kmh:g} km/h"
    else:
        trace, name = urban_trace(), "our own urban pattern"
    wheel = wheel_energy(trace.time_s, trace.speed_kmh, rolling_resistance=rolling)
    found = mass_energy_per_100_kg(
        wheel.traction_per_100_kg,
        wheel.braking_per_100_kg,
        drive_efficiency=efficiency,
        recuperated_share=recuperated,
    )
    return Driven(
        name,
        wheel.distance_km,
        float(wheel.traction_per_100_kg),
        float(wheel.braking_per_100_kg),
        # A vehicle that recuperates all but rolls freely would gain by mass.
        max(float(found), 0.0),
    )
