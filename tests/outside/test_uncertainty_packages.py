"""Uncertainties against the package `uncertainties`, simulation and the GUM."""

from __future__ import annotations

import numpy as np
import pytest
from uncertainties import ufloat

from benchpack.calc import gap, gap_uncertainty, scaled_uncertainty, uncertainty
from benchpack.calc.trend import fit_least_squares

# Figure and standard uncertainty of m_s, E_s, c_s, m_r, E_r, c_r; exponent.
CASES = [
    ((460, 2), (70, 0.5), (292.5, 3), (470, 3), (80, 0.8), (305.5, 4), 0.5),
    ((489, 0.5), (82, 1.2), (311.7, 6), (439, 9), (75, 0.2), (280.2, 1), 0.7),
    ((429, 4), (57, 0.3), (251, 2), (442, 1), (75, 2.1), (300.1, 5), 0.0),
    ((612.5, 1), (109.9, 0.9), (433.3, 2), (298.75, 2), (41.3, 0.4), (180, 3), 1.0),
]
Case = tuple[tuple[float, float], ...]


def of_case(case: Case) -> tuple[dict[str, float], dict[str, float]]:
    """Give the keyword arguments that all gaps share: figures and uncertainties."""
    (_, m_s_u), (e_s, e_s_u), _, (_, m_r_u), (e_r, e_r_u), _ = case[:6]
    figures = {"subject_energy_kwh": e_s, "reference_energy_kwh": e_r}
    errors = {
        "subject_mass_u_kg": m_s_u,
        "reference_mass_u_kg": m_r_u,
        "subject_energy_u_kwh": e_s_u,
        "reference_energy_u_kwh": e_r_u,
    }
    return figures, errors


@pytest.mark.parametrize("case", CASES)
def test_uncertainty_of_gaps_against_uncertainties(case: Case) -> None:
    m_s, e_s, c_s, m_r, e_r, c_r = (ufloat(*pair) for pair in case[:6])
    b = case[6]
    figures, errors = of_case(case)
    mass, cells = m_r.n, {"reference_cells_mass_kg": c_r.n}
    cells_u = {"reference_cells_mass_u_kg": c_r.s}
    ratio = e_s / e_r

    as_weighed = gap_uncertainty.gap_as_weighed_uncertainty_kg(m_s.s, m_r.s)
    assert as_weighed == pytest.approx((m_s - m_r).s, rel=1e-12)

    equal = gap_uncertainty.gap_equal_energy_uncertainty_kg(mass, **figures, **errors)
    assert equal == pytest.approx((m_s - m_r * ratio).s, rel=1e-12)

    of_reference = {key: errors[key] for key in errors if key != "subject_mass_u_kg"}
    share = gap_uncertainty.energy_share_uncertainty_kg(mass, **figures, **of_reference)
    assert share == pytest.approx((m_r * (e_s - e_r) / e_r).s, rel=1e-12)

    scaled = scaled_uncertainty.gap_scaled_uncertainty_kg(
        mass, **figures, **errors, **cells, **cells_u, exponent=b
    )
    wanted = m_s - (c_r * ratio + (m_r - c_r) * ratio**b)
    assert scaled == pytest.approx(wanted.s, rel=1e-12)

    structure = scaled_uncertainty.gap_structure_uncertainty_kg(
        mass,
        **figures,
        **errors,
        **cells,
        **cells_u,
        subject_cells_mass_u_kg=c_s.s,
        exponent=b,
    )
    wanted = (m_s - c_s) - (m_r - c_r) * ratio**b
    assert structure == pytest.approx(wanted.s, rel=1e-12)


@pytest.mark.parametrize("case", CASES[:2])
def test_uncertainty_of_gaps_against_simulation(case: Case) -> None:
    """400,000 seeded normal draws; 1 % is six standard errors of their spread.

    JCGM 101:2008, clause 8: where the model is nearly linear, first order holds.
    """
    draws = np.random.Generator(np.random.PCG64(21))
    m_s, e_s, c_s, m_r, e_r, c_r = (
        draws.normal(figure, error, 400_000) for figure, error in case[:6]
    )
    b = case[6]
    figures, errors = of_case(case)
    both = {"subject_energy_kwh": e_s, "reference_energy_kwh": e_r}
    mass = case[3][0]
    cells = {
        "reference_cells_mass_kg": case[5][0],
        "reference_cells_mass_u_kg": case[5][1],
    }
    of_reference = {key: errors[key] for key in errors if key != "subject_mass_u_kg"}
    pairs = [
        (
            gap_uncertainty.energy_share_uncertainty_kg(
                mass, **figures, **of_reference
            ),
            gap.energy_share_kg(m_r, **both),
        ),
        (
            gap_uncertainty.gap_equal_energy_uncertainty_kg(mass, **figures, **errors),
            gap.density_share_kg(m_s, m_r, **both),
        ),
        (
            scaled_uncertainty.gap_scaled_uncertainty_kg(
                mass, **figures, **errors, **cells, exponent=b
            ),
            gap.gap_scaled_kg(
                m_s, m_r, **both, reference_cells_mass_kg=c_r, exponent=b
            ),
        ),
        (
            scaled_uncertainty.gap_structure_uncertainty_kg(
                mass,
                **figures,
                **errors,
                **cells,
                subject_cells_mass_u_kg=case[2][1],
                exponent=b,
            ),
            gap.gap_structure_kg(
                m_s,
                m_r,
                **both,
                subject_cells_mass_kg=c_s,
                reference_cells_mass_kg=c_r,
                exponent=b,
            ),
        ),
    ]
    for given, simulated in pairs:
        assert given == pytest.approx(simulated.std(ddof=1), rel=0.01)


def test_density_of_75_kwh_over_480_kg() -> None:
    """75.0(5) kWh over 480(3) kg: u = 1.42785 Wh/kg by two packages."""
    given = uncertainty.density_uncertainty_wh_per_kg(
        75.0, 480.0, energy_u_kwh=0.5, mass_u_kg=3.0
    )
    assert given == pytest.approx(1.42785, abs=5e-6)
    wanted = 1000.0 * ufloat(75.0, 0.5) / ufloat(480.0, 3.0)
    assert wanted.n == 156.25
    assert given == pytest.approx(wanted.s, rel=1e-12)


def test_rectangular_tolerance_of_the_gum() -> None:
    """JCGM 100:2008, 4.3.7: u = a / sqrt(3); 4.4.5: +-4 degC gives 2.3 degC.

    The example is recalled from memory; a simulation of 10^6 draws stands beside it.
    """
    given = uncertainty.standard_uncertainty_from_tolerance(4.0)
    assert given == pytest.approx(2.3, abs=0.05)
    draws = np.random.Generator(np.random.PCG64(22)).uniform(-4.0, 4.0, 1_000_000)
    assert given == pytest.approx(draws.std(), rel=0.005)


def test_triangular_estimate_of_the_gum() -> None:
    """JCGM 100:2008, 4.3.9: u = a / sqrt(6); 4.4.6: +-4 degC gives 1.6 degC.

    The example is recalled from memory; (0, 1, 2) gives 0.408248 exactly.
    """
    given = uncertainty.triangular_standard_uncertainty(96.0, 104.0, likely=100.0)
    assert given == pytest.approx(1.6, abs=0.05)
    unit = uncertainty.triangular_standard_uncertainty(0.0, 2.0, likely=1.0)
    assert unit == pytest.approx(0.408248, abs=5e-7)


@pytest.mark.parametrize("likely", [2.0, 3.0, 6.0])
def test_triangular_estimate_against_scipy(likely: float) -> None:
    """scipy.stats.triang, also where the likely value is an end."""
    import scipy.stats

    low, high = 2.0, 6.0
    law = scipy.stats.triang((likely - low) / (high - low), loc=low, scale=high - low)
    given = uncertainty.triangular_standard_uncertainty(low, high, likely=likely)
    assert given == pytest.approx(law.std(), rel=1e-12)


def test_a_sum_of_four_standard_normals() -> None:
    """JCGM 101:2008, 9.2.2: four inputs N(0, 1) give u(Y) = 2.00."""
    assert uncertainty.combine_kg([1.0, 1.0, 1.0, 1.0]) == 2.0
    total = ufloat(0, 0.3) + ufloat(0, 1.7) + ufloat(0, 0.25)
    assert uncertainty.combine_kg([0.3, 1.7, 0.25]) == pytest.approx(total.s, rel=1e-12)


def test_uncertainty_of_the_gap_to_a_trend_against_simulation() -> None:
    """The subject's mass and the trend's own prediction, drawn 20,000 times each.

    The scatter is known to the simulation, so u_pred is scaled from the fitted s to it.
    """
    draws = np.random.Generator(np.random.PCG64(23))
    energy, scatter, subject_u = np.linspace(42.0, 108.0, 10), 20.0, 12.0
    line = 60.0 + 5.0 * energy
    gaps, shape = [], 0.0
    for _ in range(20_000):
        fitted = fit_least_squares(energy, line + draws.normal(0.0, scatter, 10))
        mass = 60.0 + 5.0 * 120.0 + draws.normal(0.0, scatter)
        weighed = mass + draws.normal(0.0, subject_u)
        gaps.append(float(gap.gap_to_trend_kg(weighed, fitted.predict_kg(120.0))))
        shape = float(fitted.prediction_uncertainty_kg(120.0)) / fitted.residual_s
    given = gap_uncertainty.gap_to_trend_uncertainty_kg(subject_u, scatter * shape)
    # 2 % is four standard errors of a spread of 20,000 draws.
    assert given == pytest.approx(np.std(gaps), rel=0.02)
    wanted = (ufloat(0, subject_u) + ufloat(0, scatter * shape)).s
    assert given == pytest.approx(wanted, rel=1e-12)
