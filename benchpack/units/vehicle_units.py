"""Quantities of a vehicle that carries a pack."""

from __future__ import annotations

from benchpack.units.quantity import Quantity, Unit

VEHICLE_QUANTITIES = (
    Quantity("distance", (Unit("km", "kilometer"), Unit("mi", "mile")), 0),
    Quantity(
        "speed",
        (
            Unit("km/h", "kilometer/hour", spellings=("kph", "kmh")),
            Unit("m/s", "meter/second"),
            Unit("mph", "mile/hour", spellings=("mi/h",)),
        ),
        0,
    ),
    Quantity(
        "consumption",
        (
            Unit("kWh/100 km", "decawatt_hour/kilometer"),
            Unit("Wh/km", "watt_hour/kilometer"),
        ),
        1,
    ),
    Quantity(
        "mass energy",
        (
            Unit(
                "kWh/(100 km 100 kg)",
                "deciwatt_hour/kilometer/kilogram",
                "kWh/(100\u00a0km\u00b7100\u00a0kg)",
            ),
        ),
        2,
    ),
    Quantity(
        "money per energy",
        (Unit("CUR/kWh", "CUR/kilowatt_hour"),),
        2,
        noun="price per energy",
    ),
)
"""Distance, speed, and what energy and mass cost on the road."""
