"""Seal lines against a table, the clamped beam of textbooks, and pint's own units."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import TYPE_CHECKING

import numpy as np
import pint
import pytest
from scipy.integrate import solve_bvp

from benchpack.calc import seal_line

if TYPE_CHECKING:
    from numpy.typing import NDArray

UNITS: pint.UnitRegistry[float] = pint.UnitRegistry()

SOFT_FOAM = (0.03, 0.08, 0.4)
FIRMER = (0.1, 0.3, 0.3)

# Modulus in GPa and thickness in mm of the flange, and its pitch in mm under soft foam
# and under a firmer gasket, each as wide as the flange.
TABLE = [
    pytest.param(210.0, 0.8, 78, 53, id="steel 0.8"),
    pytest.param(210.0, 1.5, 125, 86, id="steel 1.5"),
    pytest.param(70.0, 1.5, 95, 65, id="aluminium 1.5"),
    pytest.param(70.0, 3.0, 160, 109, id="aluminium 3.0"),
    pytest.param(9.5, 3.0, 97, 66, id="sheet moulding compound 3.0"),
    pytest.param(9.5, 5.0, 143, 97, id="sheet moulding compound 5.0"),
    pytest.param(3.6, 4.0, 95, 65, id="long-glass PP 4.0, hot and long-term"),
    pytest.param(3.6, 6.0, 128, 88, id="long-glass PP 6.0, hot and long-term"),
]

# Modulus and pressures in MPa, lengths in mm: E, t, a, b, p_min, p_max, dH.
FLANGES = [
    (210_000.0, 0.8, 20.0, 12.0, 0.03, 0.08, 0.4),
    (70_000.0, 3.0, 18.0, 8.0, 0.1, 0.3, 0.3),
    (3_600.0, 6.0, 25.0, 25.0, 0.05, 0.05, 0.5),
]


@pytest.mark.parametrize(("modulus_gpa", "thickness", "soft", "firm"), TABLE)
def test_pitches_of_the_table(
    modulus_gpa: float, thickness: float, soft: int, firm: int
) -> None:
    """Derived once by hand from the formula; printed there in whole millimetres."""
    for (low, high, loss), wanted in ((SOFT_FOAM, soft), (FIRMER, firm)):
        pitch = seal_line.greatest_pitch_mm(
            1000.0 * modulus_gpa,
            thickness,
            flange_width_mm=20.0,
            gasket_width_mm=20.0,
            pressure_low_mpa=low,
            pressure_high_mpa=high,
            allowed_loss_mm=loss,
        )
        assert float(pitch) == pytest.approx(wanted, abs=0.5)


def test_the_price_of_a_polymer_flange_in_pitch() -> None:
    """From 3 mm aluminium to 6 mm long-glass PP costs a fifth of the pitch."""
    pitches = seal_line.greatest_pitch_mm(
        [70_000.0, 3_600.0],
        [3.0, 6.0],
        flange_width_mm=1.0,
        gasket_width_mm=1.0,
        pressure_low_mpa=0.03,
        pressure_high_mpa=0.08,
        allowed_loss_mm=0.4,
    )
    assert float(pitches[1] / pitches[0]) == pytest.approx(0.8, abs=0.005)


def clamped_beam_deflection_mm(
    bending_stiffness_n_mm2: float, length_mm: float, load: NDArray[np.float64]
) -> float:
    """Solve ``E I w'''' = q`` with both ends held, ``q`` even powers of ``2x/L - 1``.

    Computed with x from 0 to 1 and the load scaled to one, so that the tolerance of the
    solver means the same for every beam.
    """
    peak = float(np.abs(load).sum())

    def derivatives(
        x: NDArray[np.float64], w: NDArray[np.float64]
    ) -> NDArray[np.float64]:
        q = np.polynomial.polynomial.polyval((2.0 * x - 1.0) ** 2, load / peak)
        return np.vstack((w[1], w[2], w[3], q))

    def ends(at: NDArray[np.float64], end: NDArray[np.float64]) -> NDArray[np.float64]:
        return np.array([at[0], at[1], end[0], end[1]])

    grid = np.linspace(0.0, 1.0, 41)
    solved = solve_bvp(derivatives, ends, grid, np.zeros((4, grid.size)), tol=1e-10)
    assert solved.success
    scale = peak * length_mm**4 / bending_stiffness_n_mm2
    return float(solved.sol(0.5)[0]) * scale


@pytest.mark.parametrize("flange", FLANGES)
def test_against_a_boundary_value_solver(flange: tuple[float, ...]) -> None:
    """A beam held at two screws under ``p_min + (p_max - p_min) (2x/C - 1)^2``."""
    modulus, thickness, width, gasket, low, high, loss = flange
    pitch = seal_line.greatest_pitch_mm(
        modulus,
        thickness,
        flange_width_mm=width,
        gasket_width_mm=gasket,
        pressure_low_mpa=low,
        pressure_high_mpa=high,
        allowed_loss_mm=loss,
    )
    stiffness = modulus * width * thickness**3 / 12.0
    load = gasket * np.array([low, high - low])
    solved = clamped_beam_deflection_mm(stiffness, float(pitch), load)
    assert solved == pytest.approx(loss, rel=1e-7)
    given = seal_line.compression_loss_mm(
        modulus,
        thickness,
        pitch_mm=80.0,
        flange_width_mm=width,
        gasket_width_mm=gasket,
        pressure_low_mpa=low,
        pressure_high_mpa=high,
    )
    solved = clamped_beam_deflection_mm(stiffness, 80.0, load)
    assert float(given) == pytest.approx(solved, rel=1e-7)


@pytest.mark.parametrize("flange", FLANGES)
def test_one_pressure_is_the_beam_of_textbooks(flange: tuple[float, ...]) -> None:
    """Both ends fixed, uniform load: ``w = q L^4 / (384 E I)``, ``I = a t^3 / 12``.

    Timoshenko, Strength of Materials, part 1; Roark's Formulas for Stress and Strain,
    table of beams. Recalled.
    """
    modulus, thickness, width, gasket, pressure, _, _ = flange
    given = seal_line.compression_loss_mm(
        modulus,
        thickness,
        pitch_mm=90.0,
        flange_width_mm=width,
        gasket_width_mm=gasket,
        pressure_low_mpa=pressure,
        pressure_high_mpa=pressure,
    )
    second_moment = width * thickness**3 / 12.0
    beam = pressure * gasket * 90.0**4 / (384.0 * modulus * second_moment)
    assert float(given) == pytest.approx(beam, rel=1e-12)
    pitch = seal_line.greatest_pitch_mm(
        modulus,
        thickness,
        flange_width_mm=width,
        gasket_width_mm=gasket,
        pressure_low_mpa=pressure,
        pressure_high_mpa=pressure,
        allowed_loss_mm=beam,
    )
    assert float(pitch) == pytest.approx(90.0, rel=1e-12)


def test_a_lid_under_a_metre_of_water() -> None:
    """Immersion of IPX7: 9.8 kPa, 16.7 kN on 1.7 m2, 2.5 N/mm of 6.6 m, by hand."""
    pressure = seal_line.water_pressure_kpa(1.0)
    assert float(pressure) == pytest.approx(9.8, abs=0.05)
    line_load = seal_line.lift_line_load_n_mm(pressure, 1.7, length_mm=6600.0)
    assert float(line_load) == pytest.approx(2.5, abs=0.05)
    assert float(line_load) * 6600.0 == pytest.approx(16_700.0, abs=50.0)


def test_seal_force_of_a_screw() -> None:
    """Practice: 0.3 to 5 N/mm at 150 and 80 mm are 45 to 400 N for each screw."""
    loads = seal_line.load_per_joint_n([0.3, 5.0], [150.0, 80.0])
    assert loads == pytest.approx([45.0, 400.0], rel=1e-12)


def test_loads_in_the_units_of_pint() -> None:
    pressure, width = UNITS.Quantity(0.08, "MPa"), UNITS.Quantity(1.2, "cm")
    line_load = pressure * width
    assert float(seal_line.line_load_n_mm(0.08, 12.0)) == pytest.approx(
        line_load.to("N/mm").magnitude, rel=1e-12
    )
    pitch = UNITS.Quantity(0.07, "m")
    assert float(seal_line.load_per_joint_n(0.96, 70.0)) == pytest.approx(
        (line_load * pitch).to("N").magnitude, rel=1e-12
    )
    lift = UNITS.Quantity(5000.0, "Pa") * UNITS.Quantity(1.5, "m^2")
    lift = lift / UNITS.Quantity(6.0, "m")
    assert float(
        seal_line.lift_line_load_n_mm(5.0, 1.5, length_mm=6000.0)
    ) == pytest.approx(lift.to("N/mm").magnitude, rel=1e-12)
    column = UNITS.Quantity(150.0, "centimeter_H2O").to("kPa").magnitude
    assert float(seal_line.water_pressure_kpa(1.5)) == pytest.approx(column, rel=1e-12)


@pytest.mark.parametrize(
    ("length", "pitch"),
    [(6000, "128"), (6000, "95.3"), (5920, "70"), (6000, "60"), (5, "0.1"), (7, "9")],
)
def test_counts_against_exact_fractions(length: int, pitch: str) -> None:
    exact = math.ceil(Fraction(length) / Fraction(pitch))
    assert float(seal_line.least_joint_count(length, float(pitch))) == exact
