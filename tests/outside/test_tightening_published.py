"""Torque and preload against handbooks, a machine manual and pint's own units."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import pint
import pytest

from benchpack.calc import tightening

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

UNITS: pint.UnitRegistry[float] = pint.UnitRegistry()
FRICTION = (0.10, 0.12, 0.14)
YIELD_MPA = {"8.8": 640.0, "10.9": 940.0, "12.9": 1100.0}
YIELD_OVER_16_MPA = {**YIELD_MPA, "8.8": 660.0}

# Bearing face of a hex head and hole of the medium series, mm (ISO 4014, ISO 273; from
# memory).
BEARING = {
    5.0: (6.88, 5.5),
    6.0: (8.88, 6.6),
    8.0: (11.63, 9.0),
    10.0: (14.63, 11.0),
    12.0: (16.63, 13.5),
    14.0: (19.64, 15.5),
    16.0: (22.49, 17.5),
    18.0: (25.34, 20.0),
    20.0: (28.19, 22.0),
}

# Preload in kN and torque in Nm at 0.10, 0.12 and 0.14, and how far the last printed
# digit reaches: VDI 2230 of 2001 at 90 % of yield, read in a handbook of fasteners.
FINE_THREADS = [
    (8.0, 1.0, "8.8", (20.7, 20.2, 19.7), (22.8, 26.1, 29.2)),
    (8.0, 1.0, "10.9", (30.4, 29.7, 28.9), (33.5, 38.3, 42.8)),
    (8.0, 1.0, "12.9", (35.6, 34.7, 33.9), (39.2, 44.9, 50.1)),
    (10.0, 1.25, "8.8", (32.4, 31.6, 30.8), (44.0, 51.0, 57.0)),
    (10.0, 1.25, "10.9", (47.5, 46.4, 45.2), (65.0, 75.0, 83.0)),
    (12.0, 1.25, "8.8", (49.1, 48.0, 46.8), (79.0, 90.0, 101.0)),
    (12.0, 1.25, "10.9", (72.1, 70.5, 68.7), (116.0, 133.0, 149.0)),
    (12.0, 1.25, "12.9", (84.4, 82.5, 80.4), (135.0, 155.0, 174.0)),
    (14.0, 1.5, "8.8", (66.4, 64.8, 63.2), (124.0, 142.0, 159.0)),
    (14.0, 1.5, "10.9", (97.5, 95.2, 92.9), (182.0, 209.0, 234.0)),
    (16.0, 1.5, "8.8", (89.6, 87.6, 85.5), (189.0, 218.0, 244.0)),
    (16.0, 1.5, "12.9", (154.0, 150.6, 146.9), (325.0, 374.0, 420.0)),
    (18.0, 1.5, "8.8", (120.0, 117.0, 115.0), (283.0, 327.0, 368.0)),
    (20.0, 1.5, "8.8", (151.0, 148.0, 144.0), (392.0, 454.0, 511.0)),
    (20.0, 1.5, "10.9", (215.0, 211.0, 206.0), (558.0, 646.0, 728.0)),
]

# The same of coarse threads, VDI 2230-1 table A1, from memory.
COARSE_THREADS = [
    (5.0, 0.8, "8.8", (7.4, 7.2, 7.0), (5.2, 5.9, 6.5)),
    (5.0, 0.8, "10.9", (10.8, 10.6, 10.3), (7.6, 8.6, 9.5)),
    (6.0, 1.0, "8.8", (10.4, 10.2, 9.9), (9.0, 10.1, 11.3)),
    (6.0, 1.0, "10.9", (15.3, 14.9, 14.5), (13.2, 14.9, 16.5)),
    (8.0, 1.25, "8.8", (19.1, 18.6, 18.1), (21.6, 24.6, 27.3)),
    (8.0, 1.25, "10.9", (28.0, 27.3, 26.6), (31.8, 36.1, 40.1)),
    (10.0, 1.5, "8.8", (30.3, 29.6, 28.8), (43.0, 48.0, 54.0)),
    (10.0, 1.5, "10.9", (44.5, 43.4, 42.2), (63.0, 71.0, 79.0)),
    (12.0, 1.75, "8.8", (44.1, 43.0, 41.9), (73.0, 84.0, 93.0)),
    (12.0, 1.75, "10.9", (64.8, 63.2, 61.5), (108.0, 123.0, 137.0)),
]


@pytest.mark.parametrize(
    ("diameter", "pitch", "name", "preload", "torque"), FINE_THREADS
)
def test_fine_threads_of_a_handbook(
    diameter: float,
    pitch: float,
    name: str,
    preload: tuple[float, ...],
    torque: tuple[float, ...],
) -> None:
    """The handbook prints three digits of preload and two or three of torque."""
    stresses = YIELD_OVER_16_MPA if diameter > 16 else YIELD_MPA
    given = tightening.yield_preload_n(
        diameter, pitch, yield_stress_mpa=stresses[name], thread_friction=FRICTION
    )
    assert given / 1000.0 == pytest.approx(preload, rel=0.005)
    sizes: dict[str, ArrayLike] = {
        "diameter_mm": diameter,
        "pitch_mm": pitch,
        "bearing_diameter_mm": tightening.friction_diameter_mm(*BEARING[diameter]),
        "thread_friction": FRICTION,
        "head_friction": FRICTION,
    }
    needed = tightening.tightening_torque_nm(given, **sizes)
    assert needed == pytest.approx(torque, rel=0.015)
    back = tightening.preload_at_torque_n(torque, **sizes)
    assert back / 1000.0 == pytest.approx(preload, rel=0.015)


@pytest.mark.parametrize(
    ("diameter", "pitch", "name", "preload", "torque"), COARSE_THREADS
)
def test_the_table_of_coarse_threads(
    diameter: float,
    pitch: float,
    name: str,
    preload: tuple[float, ...],
    torque: tuple[float, ...],
) -> None:
    given = tightening.yield_preload_n(
        diameter, pitch, yield_stress_mpa=YIELD_MPA[name], thread_friction=FRICTION
    )
    assert given / 1000.0 == pytest.approx(preload, rel=0.007)
    needed = tightening.tightening_torque_nm(
        given,
        diameter_mm=diameter,
        pitch_mm=pitch,
        bearing_diameter_mm=sum(BEARING[diameter]) / 2.0,
        thread_friction=FRICTION,
        head_friction=FRICTION,
    )
    assert needed == pytest.approx(torque, rel=0.02)


def test_the_worked_example_of_a_handbook() -> None:
    """M12 of class 8.8 at 0.14: at most 41.9 kN, by a factor of 1.8 at least 23.3."""
    greatest = tightening.yield_preload_n(
        12.0, 1.75, yield_stress_mpa=640.0, thread_friction=0.14
    )
    assert greatest == pytest.approx(41_900.0, rel=0.004)
    least = tightening.least_preload_n(greatest, 1.8)
    assert least == pytest.approx(23_300.0, rel=0.004)


@pytest.mark.parametrize(
    ("diameter", "pitch", "torque"),
    [(6.0, 1.0, 9.9), (8.0, 1.25, 24.0), (10.0, 1.5, 48.0), (12.0, 1.75, 85.0)],
)
def test_torques_of_a_machine_manual(
    diameter: float, pitch: float, torque: float
) -> None:
    """Class 8.8 at 0.12: 9.9, 24, 48 and 85 Nm, rounded by another edition's rules."""
    preload = tightening.yield_preload_n(
        diameter, pitch, yield_stress_mpa=640.0, thread_friction=0.12
    )
    given = tightening.tightening_torque_nm(
        preload,
        diameter_mm=diameter,
        pitch_mm=pitch,
        bearing_diameter_mm=sum(BEARING[diameter]) / 2.0,
        thread_friction=0.12,
        head_friction=0.12,
    )
    assert given == pytest.approx(torque, rel=0.04)


@pytest.mark.parametrize(
    ("spread", "factor"),
    [
        # Spread: table of VDI 2230 of 1986 in a handbook; factor: handbook and wiki.
        (0.17, 1.4),
        (0.23, 1.6),
        (0.33, 2.0),
        (0.43, 2.5),
        (0.60, 4.0),
        # Angle- and yield-controlled: table A8 of 2015, from memory.
        (0.09, 1.2),
    ],
)
def test_spread_and_factor_of_each_method(spread: float, factor: float) -> None:
    assert round(float(tightening.scatter_factor(spread)), 1) == factor


def test_torque_in_the_units_of_pint() -> None:
    """Slope, flank and head one by one: a wedge of 60 degrees thread angle."""
    face, hole, pitch, diameter = (
        UNITS.Quantity(value, "mm") for value in (11.63, 9.0, 1.25, 8.0)
    )
    preload = UNITS.Quantity(18.6, "kN")
    flank = diameter - 3.0 * math.sqrt(3.0) / 8.0 * pitch
    raising = preload * pitch / (2.0 * math.pi)
    rubbing = preload * 0.12 * flank / 2.0 / math.cos(math.pi / 6.0)
    turning = preload * 0.1 * (face + hole) / 4.0
    wanted = (raising + rubbing + turning).to("N m").magnitude
    sizes: dict[str, ArrayLike] = {
        "diameter_mm": 8.0,
        "pitch_mm": 1.25,
        "bearing_diameter_mm": tightening.friction_diameter_mm(11.63, 9.0),
        "thread_friction": 0.12,
        "head_friction": 0.1,
    }
    given = tightening.tightening_torque_nm(18_600.0, **sizes)
    assert given == pytest.approx(wanted, rel=1e-12)
    back = tightening.preload_at_torque_n(wanted, **sizes)
    assert back == pytest.approx(preload.to("N").magnitude, rel=1e-12)
    least = (preload / 1.6).to("N").magnitude
    assert tightening.least_preload_n(18_600.0, 1.6) == pytest.approx(least, rel=1e-12)
