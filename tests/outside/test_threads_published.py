"""Threads against the load tables of ISO 898-1, an open package and the profile."""

from __future__ import annotations

import math

import pytest
from scipy.integrate import quad
from screw_thread_lib import Assembly

from benchpack.calc import threads

COARSE = {
    "M3": (3.0, 0.5),
    "M4": (4.0, 0.7),
    "M5": (5.0, 0.8),
    "M6": (6.0, 1.0),
    "M7": (7.0, 1.0),
    "M8": (8.0, 1.25),
    "M10": (10.0, 1.5),
    "M12": (12.0, 1.75),
    "M14": (14.0, 2.0),
    "M16": (16.0, 2.0),
    "M18": (18.0, 2.5),
    "M20": (20.0, 2.5),
    "M22": (22.0, 2.5),
    "M24": (24.0, 3.0),
    "M27": (27.0, 3.0),
    "M30": (30.0, 3.5),
    "M33": (33.0, 3.5),
    "M36": (36.0, 4.0),
    "M39": (39.0, 4.0),
}
FINE = [(8.0, 1.0), (10.0, 1.25), (12.0, 1.25), (12.0, 1.5), (16.0, 1.5), (20.0, 1.5)]

# Nominal stress areas in mm2 as the load tables of ISO 898-1 give them; read in two
# fastener handbooks.
STRESS_AREAS = {
    "M3": 5.03,
    "M4": 8.78,
    "M5": 14.2,
    "M6": 20.1,
    "M7": 28.9,
    "M8": 36.6,
    "M10": 58.0,
    "M12": 84.3,
    "M14": 115.0,
    "M16": 157.0,
    "M18": 192.0,
    "M20": 245.0,
    "M22": 303.0,
    "M24": 353.0,
    "M27": 459.0,
    "M30": 561.0,
    "M33": 694.0,
    "M36": 817.0,
    "M39": 976.0,
}

# Stress under proof load to 16 mm diameter, MPa (ISO 898-1:2013 table 3).
CLASSES = {
    "4.6": 225.0,
    "4.8": 310.0,
    "5.6": 280.0,
    "5.8": 380.0,
    "6.8": 440.0,
    "8.8": 580.0,
    "9.8": 650.0,
    "10.9": 830.0,
    "12.9": 970.0,
}

# Proof loads in N by thread, in the order of the classes above (ISO 898-1:2013 table 5,
# metric coarse pitch); read in a fastener handbook, several of them in a second one.
PROOF_LOADS = {
    "M5": (3200, 4400, 3980, 5400, 6250, 8230, 9230, 11800, 13800),
    "M6": (4520, 6230, 5630, 7640, 8840, 11600, 13100, 16700, 19500),
    "M7": (6500, 8960, 8090, 11000, 12700, 16800, 18800, 24000, 28000),
    "M8": (8240, 11400, 10200, 13900, 16100, 21200, 23800, 30400, 35500),
    "M10": (13000, 18000, 16200, 22000, 25500, 33700, 37700, 48100, 56300),
    "M12": (19000, 26100, 23600, 32000, 37100, 48900, 54800, 70000, 81800),
    "M14": (25900, 35600, 32200, 43700, 50600, 66700, 74800, 95500, 112000),
    "M16": (35300, 48700, 44000, 59700, 69100, 91000, 102000, 130000, 152000),
}

# Pitch and minor diameter (d2, d3) in mm of a chart of threads (ISO 724, DIN 13-1),
# from memory.
DIAMETERS = {
    "M5": (4.480, 4.019),
    "M6": (5.350, 4.773),
    "M8": (7.188, 6.466),
    "M10": (9.026, 8.160),
    "M12": (10.863, 9.853),
    "M16": (14.701, 13.546),
}

# Mass in g of 100 mm of threaded rod of coarse pitch (DIN 976), read in a stud
# handbook, which takes the pitch diameter for the section.
ROD_MASSES = {"M10": 50.2, "M12": 72.8, "M14": 99.5, "M16": 133.0, "M20": 208.0}


@pytest.mark.parametrize("thread", PROOF_LOADS)
def test_proof_loads_of_the_standard(thread: str) -> None:
    """The table takes the rounded area; the exact one comes nearly as near to it."""
    loads = PROOF_LOADS[thread]
    stresses = list(CLASSES.values())
    rounded = threads.proof_load_n(STRESS_AREAS[thread], stresses)
    assert rounded == pytest.approx(loads, rel=0.006)
    exact = threads.stress_area_mm2(*COARSE[thread])
    assert threads.proof_load_n(exact, stresses) == pytest.approx(loads, rel=0.007)


@pytest.mark.parametrize("thread", STRESS_AREAS)
def test_stress_areas_of_the_standard(thread: str) -> None:
    """The standard rounds its areas to three digits."""
    area = threads.stress_area_mm2(*COARSE[thread])
    assert area == pytest.approx(STRESS_AREAS[thread], rel=0.004)


@pytest.mark.parametrize(("diameter", "pitch"), [*COARSE.values(), *FINE])
def test_threads_against_screw_thread_lib(diameter: float, pitch: float) -> None:
    """The package computes in any unit, from a pitch given as threads per length."""
    other = Assembly({"dbsc": diameter, "n": 1.0 / pitch})
    assert threads.pitch_diameter_mm(diameter, pitch) == pytest.approx(
        other.d2bsc, rel=1e-12
    )
    assert threads.minor_diameter_mm(diameter, pitch) == pytest.approx(
        other.d1bsc - other.H / 6.0, rel=1e-12
    )
    area = threads.stress_area_mm2(diameter, pitch)
    assert area == pytest.approx(other.As_ISO(), rel=1e-12)
    stressed = threads.stress_diameter_mm(diameter, pitch)
    assert math.pi / 4.0 * stressed**2 == pytest.approx(other.As_ISO(), rel=1e-12)


@pytest.mark.parametrize("thread", DIAMETERS)
def test_the_diameters_that_a_chart_of_threads_prints(thread: str) -> None:
    flank, core = DIAMETERS[thread]
    given = COARSE[thread]
    assert threads.pitch_diameter_mm(*given) == pytest.approx(flank, abs=6e-4)
    assert threads.minor_diameter_mm(*given) == pytest.approx(core, abs=6e-4)


@pytest.mark.parametrize(("diameter", "pitch"), [*COARSE.values(), *FINE])
def test_solid_area_is_the_mean_over_the_profile(diameter: float, pitch: float) -> None:
    """ISO 68-1: crest flat P/8, root flat P/4, flanks of 30 degrees between them."""

    def radius(along: float) -> float:
        """Half a pitch: half a crest, a flank, half a root."""
        fallen = (along - pitch / 16.0) / math.tan(math.radians(30.0))
        deepest = 5.0 / 8.0 * math.sqrt(3.0) / 2.0 * pitch
        return diameter / 2.0 - min(max(fallen, 0.0), deepest)

    kinks = (pitch / 16.0, 3.0 * pitch / 8.0)
    volume, _ = quad(lambda z: math.pi * radius(z) ** 2, 0.0, pitch / 2.0, points=kinks)
    area = threads.solid_area_mm2(diameter, pitch)
    assert area == pytest.approx(volume / (pitch / 2.0), rel=1e-9)


@pytest.mark.parametrize("thread", ROD_MASSES)
def test_solid_area_against_masses_of_threaded_rods(thread: str) -> None:
    area = threads.solid_area_mm2(*COARSE[thread])
    assert area * 100.0 * 7.85e-3 == pytest.approx(ROD_MASSES[thread], rel=0.02)
