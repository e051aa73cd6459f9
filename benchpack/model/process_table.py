"""The figures of ``datasets/processes.csv``."""

from __future__ import annotations

from benchpack.model.process_record import Process
from benchpack.model.ranges import Range

Triple = tuple[float, float, float]

_MEMORY = "from memory"
_LIKELY = "; likely figures are the middle of the range"


def _process(
    name: str,
    *,
    cycle_s: Triple,
    tooling_thousands: Triple,
    machine_rate_per_h: Triple,
    source: str,
    tool_life: Triple | None = None,
    scrap: Triple | None = None,
    operators: float = 1.0,
    utilisation: float = 0.85,
    volume_from: float | None = None,
    volume_to: float | None = None,
    lead_weeks: Triple | None = None,
    mark: str = _MEMORY,
    synonyms: str = "",
) -> Process:
    return Process(
        name=name,
        cycle_s=Range(*map(float, cycle_s)),
        tooling=Range(*(1000.0 * end for end in tooling_thousands)),
        tool_life=_range(tool_life),
        scrap=_range(scrap),
        machine_rate_per_h=Range(*map(float, machine_rate_per_h)),
        operators=operators,
        utilisation=utilisation,
        volume_from=volume_from,
        volume_to=volume_to,
        lead_weeks=_range(lead_weeks),
        source=source,
        mark=mark,
        synonyms=tuple(filter(None, synonyms.split("|"))),
    )


def _range(ends: Triple | None) -> Range | None:
    return None if ends is None else Range(*map(float, ends))


PROCESSES: tuple[Process, ...] = (
    _process(
        "extrusion",
        cycle_s=(6, 12, 24),
        tooling_thousands=(2, 10, 35),
        tool_life=(4000, 8000, 12_000),
        scrap=(0.15, 0.2, 0.25),
        machine_rate_per_h=(250, 425, 600),
        volume_from=1000,
        lead_weeks=(6, 8, 10),
        source="working ranges for hollow 6xxx profiles of the size of a tray, "
        "recalled: 5 to 20 m/min, 2 to 35 thousand for a die, 20 to 60 t a die; cycle "
        "for 2 m, likely at 10 m/min; life for 5 kg a part; likely cost of a die "
        "recalled, that a hollow one is about twice a solid one is confirmed in a "
        "trade text; the other likely figures are the middle of the range",
        synonyms="extruded|extruding|profile extrusion",
    ),
    _process(
        "machining and welding",
        cycle_s=(600, 1500, 2400),
        tooling_thousands=(150, 375, 600),
        machine_rate_per_h=(60, 85, 110),
        source="working ranges for a tray of extrusions, recalled: 10 to 40 min on "
        "machining centre and welding cell, fixtures 150 to 600 thousand" + _LIKELY,
        synonyms="fabrication|fabricated|welded|machined|sawn",
    ),
    _process(
        "die casting",
        cycle_s=(60, 110, 130),
        tooling_thousands=(200, 450, 700),
        tool_life=(80_000, 115_000, 150_000),
        scrap=(0.05, 0.085, 0.12),
        machine_rate_per_h=(180, 350, 450),
        volume_from=20_000,
        lead_weeks=(24, 30, 36),
        source="working ranges for structural high-pressure die castings, recalled; "
        "very large ones take 1 to 2.5 million for a tool; likely cycle and rate from "
        "a worked example, the others the middle of the range",
        synonyms="die cast|high-pressure die casting|hpdc|pressure die cast",
    ),
    _process(
        "stamping",
        cycle_s=(4, 6, 8),
        tooling_thousands=(400, 950, 1500),
        tool_life=(500_000, 500_000, 500_000),
        scrap=(0.2, 0.325, 0.45),
        machine_rate_per_h=(300, 550, 800),
        volume_from=40_000,
        lead_weeks=(40, 50, 60),
        source="working ranges for a lid or half shell on a line with 4 to 5 dies, "
        "recalled; a tool set lasts more than 500 thousand parts; scrap is the offal "
        "of the blank; rate of the whole line" + _LIKELY,
        synonyms="stamped|deep drawing|deep drawn|pressed",
    ),
    _process(
        "SMC compression moulding",
        cycle_s=(90, 150, 180),
        tooling_thousands=(250, 475, 700),
        tool_life=(150_000, 225_000, 300_000),
        scrap=(0.02, 0.035, 0.05),
        machine_rate_per_h=(130, 160, 220),
        operators=2.0,
        volume_from=10_000,
        volume_to=120_000,
        lead_weeks=(20, 25, 30),
        source="working ranges for a press of 2 to 3 thousand tonnes, recalled; trim "
        "comes on top of the scrap; likely cycle, rate and two people from a worked "
        "example, the others the middle of the range",
        synonyms="smc|compression moulding|compression moulded|smc compression",
    ),
    _process(
        "GMT compression moulding",
        cycle_s=(35, 52.5, 70),
        tooling_thousands=(200, 400, 600),
        tool_life=(300_000, 300_000, 300_000),
        scrap=(0.02, 0.04, 0.06),
        machine_rate_per_h=(120, 170, 220),
        operators=2.0,
        volume_from=20_000,
        source="working ranges for GMT and direct long-fibre moulding, recalled; "
        "people as for SMC" + _LIKELY,
        synonyms="gmt|d-lft|d-lft compression|long-fibre compression moulding",
    ),
    _process(
        "injection moulding",
        cycle_s=(80, 110, 150),
        tooling_thousands=(500, 1000, 1500),
        tool_life=(500_000, 750_000, 1_000_000),
        scrap=(0.01, 0.02, 0.03),
        machine_rate_per_h=(150, 220, 350),
        volume_from=30_000,
        lead_weeks=(26, 33, 40),
        source="working ranges for long-fibre polypropylene, wall 3 to 4 mm, on a "
        "press of 2.5 to 5.5 thousand tonnes, recalled; likely cycle and rate from a "
        "worked example, the others the middle of the range",
        synonyms="injection moulded|injection molding|injection molded",
    ),
    _process(
        "resin transfer moulding",
        cycle_s=(180, 270, 360),
        tooling_thousands=(250, 475, 700),
        tool_life=(50_000, 75_000, 100_000),
        scrap=(0.1, 0.175, 0.25),
        machine_rate_per_h=(150, 225, 300),
        operators=2.0,
        volume_from=5000,
        volume_to=40_000,
        source="working ranges at high pressure, recalled; tools for the preform come "
        "on top; scrap is of fibre; people as for SMC" + _LIKELY,
        synonyms="hp-rtm|rtm|high-pressure resin transfer moulding",
    ),
)
"""All processes."""
