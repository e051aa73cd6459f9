"""Busbars against published ratings, the ampere, and beams of finite elements."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from numpy.testing import assert_allclose

from benchpack.calc import busbar, busbar_growth

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

# DIN 43671 as reprinted in a switchgear manual: one bare bar on edge, up to 60 Hz,
# 65 degC in air of 35 degC. Width, thickness, A.
DIN_43671 = (
    (12, 5, 177),
    (12, 10, 285),
    (20, 5, 274),
    (20, 10, 427),
    (30, 5, 379),
    (30, 10, 573),
    (40, 5, 482),
    (40, 10, 715),
    (50, 5, 583),
    (50, 10, 852),
    (60, 5, 688),
    (60, 10, 985),
    (80, 5, 885),
    (80, 10, 1240),
    (100, 5, 1080),
    (100, 10, 1490),
    (160, 10, 2220),
    (200, 10, 2690),
)
K2_AT_40_AND_90_DEGC = 1.30
"""Its factor for a bar of 90 degC in air of 40 degC, from a distributor's reprint."""

# A maker's catalogue: direct current, on edge, 30 degC over air of 40 degC, normally
# tarnished. Inches, A.
CATALOGUE = (
    (1.0, 0.125, 250),
    (1.5, 0.125, 360),
    (2.0, 0.125, 450),
    (1.0, 0.25, 370),
    (2.0, 0.25, 660),
    (3.0, 0.25, 1020),
    (4.0, 0.25, 1300),
    (5.0, 0.25, 1590),
    (6.0, 0.25, 1850),
    (8.0, 0.25, 2300),
)


def test_ampacity_of_the_published_example() -> None:
    """Copper Development Association, Publication 22, section 10: 100 x 6.3 mm."""
    assert busbar.ampacity_a(100.0, 6.3) == pytest.approx(1570.0, abs=5.0)


def test_ampacity_of_sizes_worked_by_hand() -> None:
    """I = 7.73 A^0.5 p^0.39 by a pocket calculator, A and A/mm2."""
    width = np.array([20.0, 20.0, 25.0, 30.0, 40.0, 100.0])
    thickness = np.array([2.0, 3.0, 3.0, 3.0, 3.0, 6.3])
    current = busbar.ampacity_a(width, thickness)
    assert_allclose(current, [214, 267, 322, 376, 481, 1569], atol=0.6)
    density = busbar.current_density_a_mm2(current, width * thickness)
    assert_allclose(density, [5.4, 4.4, 4.3, 4.2, 4.0, 2.5], atol=0.06)


def test_ampacity_against_din_43671() -> None:
    width, thickness, rated = np.array(DIN_43671, float).T
    at_50_k = rated * K2_AT_40_AND_90_DEGC
    assert_allclose(busbar.ampacity_a(width, thickness), at_50_k, rtol=0.05)


def test_ampacity_against_a_catalogue_in_inches() -> None:
    """Brought from 30 to 50 K by the power 0.61 of the rise and the resistance.

    The catalogue says that its laboratory values lie some 10 % above other tables.
    """
    width, thickness, rated = np.array(CATALOGUE, float).T
    cooler = (30.0 / 50.0) ** 0.61
    resistance = (1.0 + 0.00393 * 70.0) / (1.0 + 0.00393 * 50.0)
    at_30_k = busbar.ampacity_a(width * 25.4, thickness * 25.4) * cooler
    assert_allclose(at_30_k * np.sqrt(resistance), rated, rtol=0.10)


def test_aluminium_against_din_43670() -> None:
    """Recalled: 20 x 5 to 100 x 10 mm carry 0.78 to 0.80 of what copper carries."""
    width = np.array([20, 30, 40, 50, 60, 80, 40, 50, 60, 80, 100], float)
    thickness = np.repeat([5.0, 10.0], [6, 5])
    aluminium = np.array([214, 295, 376, 455, 533, 688, 557, 667, 774, 983, 1190])
    copper = {(w, t): current for w, t, current in DIN_43671}
    sizes = zip(width, thickness, strict=True)
    wanted = aluminium / np.array([copper[size] for size in sizes])
    given = busbar.ampacity_a(width, thickness, conductivity_ms_m=36.0)
    assert_allclose(given / busbar.ampacity_a(width, thickness), wanted, rtol=0.02)


def test_the_ampere_before_2019() -> None:
    """2e-7 N per metre at 1 A in each and 1 m (9th CGPM, 1948)."""
    force = busbar.bar_force_n_m(1.0, 1.0, distance_mm=1000.0)
    assert force == pytest.approx(2e-7, rel=1e-12)
    mu_0 = 1.25663706127e-6  # CODATA 2022, N/A2
    assert force == pytest.approx(mu_0 / (2.0 * np.pi), rel=1e-9)


def test_force_of_a_published_short_circuit() -> None:
    """An article on IEC 60865: 50 kA at 0.15 m press with about 3.3 kN on a metre."""
    force = busbar.bar_force_n_m(50e3, 50e3, distance_mm=150.0)
    assert force == pytest.approx(3300.0, abs=50.0)
    whole = busbar.bar_force_n(50e3, 50e3, distance_mm=150.0, length_mm=1000.0)
    assert whole == pytest.approx(3300.0, abs=50.0)


def test_force_between_bars_against_biot_savart() -> None:
    """The field of a long straight wire summed from its elements, then I L x B."""
    distance_m, current_a, reach_m = 0.02, 10e3, 200.0
    along = np.sinh(np.linspace(-np.arcsinh(1e4), np.arcsinh(1e4), 200_001))
    along *= reach_m / 1e4
    field = distance_m / (along**2 + distance_m**2) ** 1.5
    tesla = 1e-7 * current_a * np.trapezoid(field, along)
    given = busbar.bar_force_n(
        current_a, current_a, distance_mm=distance_m * 1e3, length_mm=350.0
    )
    assert given == pytest.approx(tesla * current_a * 0.35, rel=1e-6)
    per_metre = busbar.bar_force_n_m(current_a, current_a, distance_mm=20.0)
    assert per_metre == pytest.approx(tesla * current_a, rel=1e-6)


def test_growth_worked_by_hand() -> None:
    """1 m by 60 K: copper 17e-6/K, aluminium 23.5e-6/K."""
    grown = busbar_growth.free_growth_mm(
        1000.0, expansion_1e6_k=[17.0, 23.5], rise_k=60.0
    )
    assert_allclose(grown, [1.02, 1.41], rtol=1e-12)


def test_stress_of_a_held_bar_worked_by_hand() -> None:
    """60 K: copper of 115 GPa 117 MPa, aluminium of 70 GPa 99 MPa."""
    warm: dict[str, ArrayLike] = {"expansion_1e6_k": [17.0, 23.5], "rise_k": 60.0}
    stress = busbar_growth.held_stress_mpa([115.0, 70.0], **warm)
    assert_allclose(stress, [117.0, 99.0], atol=0.5)
    force = busbar_growth.held_force_n(60.0, modulus_gpa=[115.0, 70.0], **warm)
    assert_allclose(force, [60 * 117.3, 60 * 98.7], rtol=1e-12)


def test_legs_of_a_u_loop_worked_by_hand() -> None:
    """Copper 115 GPa, 20 mm wide, 1.02 mm of growth, 60 MPa; aluminium 70 GPa, 1.41."""
    copper: dict[str, ArrayLike] = {
        "modulus_gpa": 115.0,
        "thickness_mm": [1.5, 2.0, 3.0],
    }
    travel = busbar_growth.leg_travel_mm(1.02, 2)
    assert travel == pytest.approx(0.51)
    leg = busbar_growth.least_leg_mm(travel, allowed_stress_mpa=60.0, **copper)
    assert_allclose(leg, [66, 77, 94], atol=0.5)
    force = busbar_growth.leg_force_n(travel, leg_mm=leg, width_mm=20.0, **copper)
    assert_allclose(force, [14, 21, 38], atol=0.5)
    aluminium = {"modulus_gpa": 70.0, "thickness_mm": 2.0}
    leg = busbar_growth.least_leg_mm(0.705, allowed_stress_mpa=30.0, **aluminium)
    assert leg == pytest.approx(99.0, abs=0.5)
    force = busbar_growth.leg_force_n(0.705, leg_mm=leg, width_mm=20.0, **aluminium)
    assert force == pytest.approx(8.0, abs=0.1)


def stiffness_of_beam(length: float, bending: float, elements: int) -> np.ndarray:
    """Assemble Euler-Bernoulli elements: deflection and slope at each node."""
    h = length / elements
    row = np.array(
        [
            [12, 6 * h, -12, 6 * h],
            [6 * h, 4 * h * h, -6 * h, 2 * h * h],
            [-12, -6 * h, 12, -6 * h],
            [6 * h, 2 * h * h, -6 * h, 4 * h * h],
        ]
    )
    return assembled(row * bending / h**3, elements)


def assembled(element: np.ndarray, elements: int) -> np.ndarray:
    whole = np.zeros((2 * elements + 2, 2 * elements + 2))
    for at in range(elements):
        whole[2 * at : 2 * at + 4, 2 * at : 2 * at + 4] += element
    return whole


@pytest.mark.parametrize("foils", [1, 5])
def test_a_leg_against_finite_elements(foils: int) -> None:
    """One end clamped, the other shifted by 0.7 mm without turning."""
    width, thickness, length, shift, modulus = 18.0, 3.0, 85.0, 0.7, 115e3
    foil = thickness / foils
    bending = foils * modulus * width * foil**3 / 12.0
    stiffness = stiffness_of_beam(length, bending, elements=8)
    free, far = slice(2, -2), stiffness.shape[0] - 2
    moved = np.zeros(stiffness.shape[0])
    moved[far] = shift
    moved[free] = np.linalg.solve(stiffness[free, free], -stiffness[free, far] * shift)
    reactions = stiffness @ moved
    bar = {"thickness_mm": thickness, "modulus_gpa": 115.0, "foils": foils}
    force = busbar_growth.leg_force_n(shift, leg_mm=length, width_mm=width, **bar)
    assert force == pytest.approx(reactions[far], rel=1e-9)
    stress = abs(reactions[1]) / foils / (width * foil**2 / 6.0)
    given = busbar_growth.leg_stress_mpa(shift, leg_mm=length, **bar)
    assert given == pytest.approx(stress, rel=1e-9)
    least = busbar_growth.least_leg_mm(shift, allowed_stress_mpa=stress, **bar)
    assert least == pytest.approx(length, rel=1e-9)


def test_bowing_out_against_finite_elements() -> None:
    """Least eigenvalue of bending against geometric stiffness, both ends clamped."""
    width, thickness, length, modulus, elements = 20.0, 3.0, 700.0, 120e3, 24
    bending = modulus * width * thickness**3 / 12.0
    stiffness = stiffness_of_beam(length, bending, elements)
    h = length / elements
    element = np.array(
        [
            [36, 3 * h, -36, 3 * h],
            [3 * h, 4 * h * h, -3 * h, -h * h],
            [-36, -3 * h, 36, -3 * h],
            [3 * h, -h * h, -3 * h, 4 * h * h],
        ]
    )
    geometric = assembled(element / (30.0 * h), elements)
    free = slice(2, -2)
    loads = np.linalg.eigvals(
        np.linalg.solve(geometric[free, free], stiffness[free, free])
    )
    given = busbar_growth.bowing_force_n(
        length, width_mm=width, thickness_mm=thickness, modulus_gpa=120.0
    )
    assert given == pytest.approx(loads.real.min(), rel=1e-4)


def test_constants_of_the_short_circuit_worked_by_hand() -> None:
    """70 to 200 degC: copper 135, aluminium 89 A s^0.5/mm2."""
    constant = busbar.adiabatic_constant(
        70.0,
        200.0,
        metal_constant=[226.0, 148.0],
        zero_resistance_k=[234.5, 228.0],
    )
    assert_allclose(constant, [135.0, 89.0], atol=0.5)


def test_a_short_circuit_against_its_heat_balance() -> None:
    """dT/dt = rho(T) J^2 / c in small steps; copper 3.45e-3 J/(K mm3), from memory."""
    duration_s, steps, section = 0.5, 20_000, 60.0
    constant = busbar.adiabatic_constant(
        70.0, 200.0, metal_constant=226.0, zero_resistance_k=234.5
    )
    current = busbar.short_time_current_a(section, duration_s, constant=constant)
    per_mm2 = float(current) / section
    resistivity, heat, temperature = 17.241e-6, 3.45e-3, 70.0  # ohm mm at 20 degC
    for _ in range(steps):
        rho = resistivity * (1.0 + (temperature - 20.0) / (234.5 + 20.0))
        temperature += rho * per_mm2**2 / heat * duration_s / steps
    assert temperature == pytest.approx(200.0, abs=1.5)
