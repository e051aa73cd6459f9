"""Units of materials and of joint mechanics."""

from __future__ import annotations

from benchpack.units.quantity import Quantity, Unit

_PRESSURE = (
    Unit("MPa", "megapascal", spellings=("N/mm2", "N/mm²")),
    Unit("GPa", "gigapascal", spellings=("kN/mm2",)),
    Unit("kPa", "kilopascal"),
    Unit("Pa", "pascal", spellings=("N/m2",)),
    Unit("bar", "bar"),
    Unit("psi", "pound_force_per_square_inch", spellings=("lbf/in2",)),
    Unit("ksi", "kip_per_square_inch"),
)
_GPA_FIRST = (_PRESSURE[1], _PRESSURE[0], *_PRESSURE[2:])
MATERIAL_QUANTITIES = (
    Quantity(
        "density",
        (
            Unit("kg/m3", "kilogram/meter**3", "kg/m³"),
            Unit("g/cm3", "gram/centimeter**3", "g/cm³", ("g/cc", "kg/dm3", "g/mL")),
            Unit("kg/L", "kilogram/liter"),
            Unit("t/m3", "metric_ton/meter**3", "t/m³"),
            Unit("lb/in3", "pound/inch**3", "lb/in³"),
            Unit("lb/ft3", "pound/foot**3", "lb/ft³"),
        ),
        0,
        ("density", "dichte"),
        ("rho", "ρ"),
    ),
    Quantity("modulus", _GPA_FIRST, 1, ("modulus",), ("E",)),
    Quantity("stress", _PRESSURE, 0, ("stress", "strength", "pressure"), ("R", "p")),
    Quantity(
        "conductivity",
        (
            Unit("W/(m K)", "watt/meter/kelvin", "W/(m·K)", ("W/m/K", "W m-1 K-1")),
            Unit("mW/(m K)", "milliwatt/meter/kelvin", "mW/(m·K)", ("mW/m/K",)),
        ),
        2,
        ("conductivity",),
    ),
    Quantity(
        "expansion",
        (
            Unit(
                "1e-6/K",
                "ppm/kelvin",
                "10⁻⁶/K",
                ("10-6/K", "e-6/K", "1e-6 K-1", "10-6 K-1", "1e-6/°C", "10-6/°C"),
            ),
            Unit("ppm/K", "ppm/kelvin", spellings=("ppm/°C",)),
            Unit("um/(m K)", "micrometer/meter/kelvin", "µm/(m·K)", ("um/m/K",)),
            Unit("1/K", "1/kelvin", spellings=("/K", "K-1", "1/°C")),
            Unit("1e-6/°F", "ppm/delta_degF", "10⁻⁶/°F", ("ppm/°F",)),
        ),
        1,
        ("expansion",),
    ),
    Quantity(
        "temperature",
        (
            Unit("degC", "degC", "°C", ("C", "deg C", "Celsius")),
            Unit("K", "kelvin", spellings=("Kelvin",)),
            Unit("degF", "degF", "°F", ("F", "deg F", "Fahrenheit")),
        ),
        0,
        ("temperature", "temp", "temperatur"),
        ("T",),
    ),
    Quantity(
        "force",
        (
            Unit("N", "newton"),
            Unit("kN", "kilonewton"),
            Unit("kgf", "kilogram_force", spellings=("kp",)),
            Unit("lbf", "pound_force"),
        ),
        0,
        ("force", "load", "preload"),
        ("F",),
    ),
    Quantity(
        "torque",
        (
            Unit("N m", "newton*meter", "N·m", ("Nm",)),
            Unit("N cm", "newton*centimeter", "N·cm", ("Ncm",)),
            Unit("kgf m", "kilogram_force*meter", "kgf·m", ("kp m",)),
            Unit("kgf cm", "kilogram_force*centimeter", "kgf·cm", ("kp cm",)),
            Unit("lbf ft", "pound_force*foot", "lbf·ft", ("ft-lb", "lb-ft", "ft-lbf")),
            Unit("lbf in", "pound_force*inch", "lbf·in", ("in-lb", "lb-in", "in-lbf")),
        ),
        1,
        ("torque",),
        ("M",),
    ),
)
"""What is known of a material, forces and torques."""
