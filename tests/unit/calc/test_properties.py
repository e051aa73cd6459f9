"""What must hold whatever the packs are."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from hypothesis.extra import numpy as st_numpy

from benchpack.calc import densities, gap, gap_uncertainty, groups, trend, worth

# The first trend imports scipy, and a busy machine is no failure.
untimed = settings(deadline=None)

masses = st.floats(50.0, 1500.0)
energies = st.floats(5.0, 300.0)
shares = st.floats(0.3, 0.9)
exponents = st.floats(0.0, 1.0)
hundredths_kg = st.integers(5_000, 150_000)
hundredths_kwh = st.integers(500, 30_000)
money = st.floats(-100.0, 100.0)


@untimed
@given(masses, masses, energies, energies)
def test_the_two_shares_sum_to_the_gap_as_weighed(
    m_s: float, m_r: float, e_s: float, e_r: float
) -> None:
    energy = gap.energy_share_kg(m_r, subject_energy_kwh=e_s, reference_energy_kwh=e_r)
    density = gap.density_share_kg(
        m_s, m_r, subject_energy_kwh=e_s, reference_energy_kwh=e_r
    )
    size = max(m_s, m_r, m_r * e_s / e_r)
    assert float(energy + density) == pytest.approx(
        float(gap.gap_as_weighed_kg(m_s, m_r)), rel=1e-9, abs=1e-12 * size
    )


@untimed
@given(masses, masses, energies, energies, st.floats(0.1, 10.0))
def test_scaling_a_reference_with_its_energy_leaves_the_gap_at_equal_energy(
    m_s: float, m_r: float, e_s: float, e_r: float, factor: float
) -> None:
    before = gap.density_share_kg(
        m_s, m_r, subject_energy_kwh=e_s, reference_energy_kwh=e_r
    )
    after = gap.density_share_kg(
        m_s, m_r * factor, subject_energy_kwh=e_s, reference_energy_kwh=e_r * factor
    )
    assert float(after) == pytest.approx(float(before), rel=1e-9, abs=1e-9)


@untimed
@given(masses, masses, energies, energies)
def test_the_gap_at_equal_energy_has_the_sign_of_the_densities(
    m_s: float, m_r: float, e_s: float, e_r: float
) -> None:
    heavier = gap.density_share_kg(
        m_s, m_r, subject_energy_kwh=e_s, reference_energy_kwh=e_r
    )
    subject = densities.gravimetric_density_wh_per_kg(e_s, m_s)
    reference = densities.gravimetric_density_wh_per_kg(e_r, m_r)
    assume(abs(subject / reference - 1.0) > 1e-9)
    assert (heavier > 0) == (subject < reference)


@untimed
@given(masses, masses, energies, energies, shares)
def test_scaled_with_exponent_one_is_at_equal_energy(
    m_s: float, m_r: float, e_s: float, e_r: float, share: float
) -> None:
    scaled = gap.gap_scaled_kg(
        m_s,
        m_r,
        subject_energy_kwh=e_s,
        reference_energy_kwh=e_r,
        reference_cells_mass_kg=m_r * share,
        exponent=1.0,
    )
    equal = gap.density_share_kg(
        m_s, m_r, subject_energy_kwh=e_s, reference_energy_kwh=e_r
    )
    assert float(scaled) == pytest.approx(float(equal), rel=1e-9, abs=1e-8)


@untimed
@given(masses, masses, energies, energies, shares, shares, exponents)
def test_structure_and_scaled_differ_by_the_cells(
    m_s: float,
    m_r: float,
    e_s: float,
    e_r: float,
    share_s: float,
    share_r: float,
    exponent: float,
) -> None:
    cells_s, cells_r = m_s * share_s, m_r * share_r
    scaled = gap.gap_scaled_kg(
        m_s,
        m_r,
        subject_energy_kwh=e_s,
        reference_energy_kwh=e_r,
        reference_cells_mass_kg=cells_r,
        exponent=exponent,
    )
    structure = gap.gap_structure_kg(
        m_s,
        m_r,
        subject_energy_kwh=e_s,
        reference_energy_kwh=e_r,
        subject_cells_mass_kg=cells_s,
        reference_cells_mass_kg=cells_r,
        exponent=exponent,
    )
    between = gap.density_share_kg(
        cells_s, cells_r, subject_energy_kwh=e_s, reference_energy_kwh=e_r
    )
    assert float(scaled - structure) == pytest.approx(float(between), abs=1e-8)


@untimed
@given(
    st_numpy.arrays(np.float64, st.integers(1, 12), elements=st.floats(0.0, 400.0)),
    masses,
    masses,
    energies,
    energies,
)
def test_the_rows_of_a_split_sum_to_the_gaps_of_the_pack(
    subject_groups: np.ndarray,
    m_s: float,
    m_r: float,
    e_s: float,
    e_r: float,
) -> None:
    reference_groups = subject_groups[::-1] * 0.9
    split = groups.split_by_group(
        subject_groups,
        reference_groups,
        subject_mass_kg=m_s,
        reference_mass_kg=m_r,
        subject_energy_kwh=e_s,
        reference_energy_kwh=e_r,
    )
    equal = {"subject_energy_kwh": e_s, "reference_energy_kwh": e_r}
    size = subject_groups.sum() + m_s + m_r * max(1.0, e_s / e_r)
    whole = (
        (split.as_weighed_kg, gap.gap_as_weighed_kg(m_s, m_r)),
        (split.energy_share_kg, gap.energy_share_kg(m_r, **equal)),
        (split.equal_energy_kg, gap.density_share_kg(m_s, m_r, **equal)),
    )
    for rows, of_pack in whole:
        assert rows.shape == (subject_groups.size + 1,)
        assert rows.sum() == pytest.approx(float(of_pack), rel=1e-9, abs=1e-12 * size)


@st.composite
def peers(draw: st.DrawFn) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Draw energies, masses and another order of the same packs."""
    count = draw(st.integers(3, 25))
    # Whole hundredths: a slope across 1e-14 kWh would be nothing but rounding.
    energy = draw(st_numpy.arrays(np.int64, count, elements=hundredths_kwh)) / 100.0
    mass = draw(st_numpy.arrays(np.int64, count, elements=hundredths_kg)) / 100.0
    assume(np.ptp(energy) > 1.0)
    return energy, mass, np.array(draw(st.permutations(range(count))))


@pytest.mark.parametrize(
    "fit", [trend.fit_least_squares, trend.fit_power_law, trend.fit_theil_sen]
)
@untimed
@given(packs=peers())
def test_the_order_of_packs_does_not_change_a_trend(
    fit: object, packs: tuple[np.ndarray, np.ndarray, np.ndarray]
) -> None:
    assert callable(fit)
    energy, mass, order = packs
    one, other = fit(energy, mass), fit(energy[order], mass[order])
    size = float(np.abs(mass).max() * np.abs(energy).max() / np.ptp(energy))
    for wanted in (20.0, 75.0, 150.0):
        first, second = one.predict_kg(wanted), other.predict_kg(wanted)
        assert float(first) == pytest.approx(float(second), rel=1e-9, abs=1e-9 * size)
    assert one.residual_s == pytest.approx(other.residual_s, rel=1e-6, abs=1e-9 * size)


@untimed
@given(packs=peers(), factor=st.floats(0.5, 2.0))
def test_a_trend_in_another_unit_of_mass_is_the_same_trend(
    packs: tuple[np.ndarray, np.ndarray, np.ndarray], factor: float
) -> None:
    energy, mass, _ = packs
    for fit in (trend.fit_least_squares, trend.fit_power_law, trend.fit_theil_sen):
        low, high = fit(energy, mass).prediction_interval_kg(60.0)
        low_2, high_2 = fit(energy, mass * factor).prediction_interval_kg(60.0)
        assert float(low_2) == pytest.approx(float(low) * factor, rel=1e-6, abs=1e-6)
        assert float(high_2) == pytest.approx(float(high) * factor, rel=1e-6, abs=1e-6)


@untimed
@given(masses, money, money, st.floats(0.0, 1.0))
def test_worth_is_linear(gap_kg: float, w_1: float, w_2: float, share: float) -> None:
    apart = worth.value_per_pack(gap_kg, w_1, share_captured=share) + (
        worth.value_per_pack(gap_kg, w_2, share_captured=share)
    )
    together = worth.value_per_pack(gap_kg, w_1 + w_2, share_captured=share)
    assert float(together) == pytest.approx(float(apart), rel=1e-9, abs=1e-9)
    half = worth.value_per_pack(gap_kg / 2.0, w_1, share_captured=share)
    assert 2.0 * float(half) == pytest.approx(
        float(worth.value_per_pack(gap_kg, w_1, share_captured=share)), rel=1e-12
    )


@untimed
@given(money)
def test_the_pound_goes_and_comes_back(worth_per_kg: float) -> None:
    there = worth.worth_per_lb_from_kg(worth_per_kg)
    assert float(worth.worth_per_kg_from_lb(there)) == pytest.approx(
        worth_per_kg, rel=1e-15
    )


@untimed
@given(money, st.lists(st.floats(0.0, 1e6), min_size=1, max_size=15))
def test_without_discount_a_programme_is_worth_all_its_packs(
    value: float, volumes: list[float]
) -> None:
    npv = worth.programme_npv(value, volumes, discount_rate=0.0)
    assert float(npv) == pytest.approx(value * sum(volumes), rel=1e-12, abs=1e-9)


@untimed
@given(masses, energies, energies, st.floats(0.0, 20.0), st.floats(0.0, 5.0))
def test_an_exact_energy_leaves_only_the_masses_uncertain(
    m_r: float, e_s: float, e_r: float, mass_u: float, energy_u: float
) -> None:
    def uncertainty(energy_u_kwh: float) -> float:
        u = gap_uncertainty.gap_equal_energy_uncertainty_kg(
            m_r,
            subject_energy_kwh=e_s,
            reference_energy_kwh=e_r,
            subject_mass_u_kg=mass_u,
            reference_mass_u_kg=mass_u,
            subject_energy_u_kwh=energy_u_kwh,
            reference_energy_u_kwh=energy_u_kwh,
        )
        return float(u)

    of_masses = gap_uncertainty.gap_as_weighed_uncertainty_kg(
        mass_u, mass_u * e_s / e_r
    )
    assert uncertainty(0.0) == pytest.approx(float(of_masses), rel=1e-12)
    assert uncertainty(energy_u) >= uncertainty(0.0)
