"""Units of packs, parts, joints and money."""

from __future__ import annotations

from benchpack.units.quantity import Quantity, Unit

_MASS = (
    Unit("g", "gram", spellings=("gr", "gram", "grams", "Gramm")),
    Unit("t", "metric_ton", spellings=("tonne", "tonnes")),
    Unit("lb", "pound", spellings=("lbs", "lbm", "pound", "pounds")),
    Unit("oz", "ounce", spellings=("ounce", "ounces")),
    Unit("mg", "milligram"),
)
_KG = Unit("kg", "kilogram", spellings=("kgs", "kilogram", "kilograms", "kilo"))
_MASS_WORDS = ("mass", "weight", "masse", "gewicht", "poids")
_LENGTH = (
    Unit("mm", "millimeter", spellings=("millimetre", "millimeter")),
    Unit("cm", "centimeter"),
    Unit("m", "meter", spellings=("metre", "meter")),
    Unit("in", "inch", spellings=('"', "''", "inch", "inches")),
    Unit("ft", "foot", spellings=("feet", "foot")),
    Unit("um", "micrometer", "µm", ("micron", "microns")),
)
_PLAIN = Unit("", "dimensionless", spellings=("-", "1"))
_PERCENT = Unit("%", "percent", spellings=("percent", "pct"))

PACK_QUANTITIES = (
    Quantity("mass", (_KG, *_MASS), 1, _MASS_WORDS, ("m",)),
    Quantity(
        "joint mass",
        (_MASS[0], _KG, *_MASS[1:]),
        2,
        _MASS_WORDS,
        ("m",),
        noun="mass",
    ),
    Quantity(
        "energy",
        (
            Unit("kWh", "kilowatt_hour", spellings=("kW h", "kilowatt hours")),
            Unit("Wh", "watt_hour", spellings=("W h",)),
            Unit("MWh", "megawatt_hour", spellings=("MW h",)),
            Unit("GJ", "gigajoule"),
            Unit("MJ", "megajoule"),
            Unit("kJ", "kilojoule"),
            Unit("J", "joule"),
        ),
        1,
        ("energy", "capacity", "energie", "énergie"),
        ("E", "W"),
    ),
    Quantity(
        "volume",
        (
            Unit("L", "liter", spellings=("l", "litre", "litres", "liter", "liters")),
            Unit("mL", "milliliter", spellings=("ml",)),
            Unit("m3", "meter**3", "m³"),
            Unit("dm3", "decimeter**3", "dm³"),
            Unit("cm3", "centimeter**3", "cm³", ("ccm", "cc")),
            Unit("mm3", "millimeter**3", "mm³"),
            Unit("in3", "inch**3", "in³", ("cu in",)),
            Unit("ft3", "foot**3", "ft³", ("cu ft",)),
            Unit("US gal", "gallon", spellings=("gal (US)",)),
            Unit("imp gal", "imperial_gallon", spellings=("UK gal", "gal (UK)")),
        ),
        1,
        ("volume", "volumen"),
        ("V",),
    ),
    Quantity(
        "voltage",
        (Unit("V", "volt", spellings=("volt", "volts")), Unit("kV", "kilovolt")),
        0,
        ("voltage", "spannung", "tension"),
        ("U",),
    ),
    Quantity(
        "length",
        _LENGTH,
        1,
        ("length", "width", "height", "thickness", "wall", "diameter", "länge"),
        ("l", "L", "d"),
    ),
    Quantity("thickness", _LENGTH, 1, ("thickness", "wall"), ("t", "s")),
    Quantity(
        "area",
        (
            Unit("m2", "meter**2", "m²", ("sqm",)),
            Unit("dm2", "decimeter**2", "dm²"),
            Unit("cm2", "centimeter**2", "cm²"),
            Unit("mm2", "millimeter**2", "mm²"),
            Unit("in2", "inch**2", "in²", ("sq in",)),
            Unit("ft2", "foot**2", "ft²", ("sq ft",)),
        ),
        3,
        ("area", "surface", "fläche"),
        ("A",),
    ),
    Quantity(
        "time",
        (
            Unit("s", "second", spellings=("sec", "second", "seconds")),
            Unit("min", "minute", spellings=("minute", "minutes")),
            Unit("h", "hour", spellings=("hr", "hrs", "hour", "hours")),
            Unit("ms", "millisecond"),
        ),
        1,
        ("time", "duration", "zeit"),
        ("t",),
    ),
    Quantity("share", (_PERCENT, _PLAIN), 0, ("share",)),
    Quantity("ratio", (_PLAIN, _PERCENT), 2, ("ratio",)),
    Quantity("count", (Unit("", "dimensionless", "", ("-", "1", "pcs", "pieces")),), 0),
    Quantity("money", (Unit("CUR", "CUR"),), 2, ("cost", "price"), noun="sum of money"),
    Quantity(
        "money per mass",
        (
            Unit("CUR/kg", "CUR/kilogram"),
            Unit("CUR/g", "CUR/gram"),
            Unit("CUR/t", "CUR/metric_ton"),
            Unit("CUR/lb", "CUR/pound", spellings=("CUR/lbs",)),
        ),
        2,
        ("price", "worth"),
        noun="price per mass",
    ),
    Quantity(
        "specific energy",
        (
            Unit("Wh/kg", "watt_hour/kilogram"),
            Unit("kWh/kg", "kilowatt_hour/kilogram"),
            Unit("kWh/t", "kilowatt_hour/metric_ton"),
            Unit("Wh/lb", "watt_hour/pound"),
            Unit("MJ/kg", "megajoule/kilogram"),
            Unit("kJ/kg", "kilojoule/kilogram"),
        ),
        0,
        ("density", "specific energy"),
    ),
    Quantity(
        "energy per volume",
        (
            Unit("Wh/L", "watt_hour/liter"),
            Unit("kWh/L", "kilowatt_hour/liter"),
            Unit("kWh/m3", "kilowatt_hour/meter**3", "kWh/m³"),
            Unit("MJ/L", "megajoule/liter"),
        ),
        0,
        ("density",),
    ),
    Quantity(
        "mass per energy",
        (
            Unit("kg/kWh", "kilogram/kilowatt_hour"),
            Unit("g/kWh", "gram/kilowatt_hour"),
            Unit("lb/kWh", "pound/kilowatt_hour"),
        ),
        2,
    ),
)
"""What is measured at a pack, its parts and joints, and what it costs."""
