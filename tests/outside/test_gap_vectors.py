"""Gaps against fixed vectors, exact arithmetic and a case of the trade."""

from __future__ import annotations

from decimal import Decimal, localcontext
from typing import TYPE_CHECKING

import pytest
from numpy.testing import assert_allclose

from benchpack.calc import gap, groups, worth
from benchpack.calc.trend import fit_least_squares

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

ENERGIES = {"subject_energy_kwh": 70.0, "reference_energy_kwh": 80.0}
# Subject kg, kWh, cells kg; reference kg, kWh, cells kg; exponent.
CASES = [
    ("460", "70", "292.5", "470", "80", "305.5", "0.5"),
    ("489", "82", "311.7", "439", "75", "280.2", "0.7"),
    ("429", "57", "251", "442", "75", "300.1", "0"),
    ("612.5", "109.9", "433.3", "298.75", "41.3", "180.01", "0.37"),
]


def test_the_vector_in_which_the_sign_flips() -> None:
    """460 kg and 70 kWh against 470 kg and 80 kWh, 65 % of it cells.

    Worked by hand: x = 0.875; m_r x = 411.25; cells 305.5 x = 267.3125, the rest 164.5
    times x^b.
    """
    assert gap.gap_as_weighed_kg(460.0, 470.0) == -10.0
    equal = gap.density_share_kg(460.0, 470.0, **ENERGIES)
    assert equal == pytest.approx(48.75, abs=1e-12)
    share = gap.energy_share_kg(470.0, **ENERGIES)
    assert share == pytest.approx(-58.75, abs=1e-12)
    scaled = gap.gap_scaled_kg(
        460.0,
        470.0,
        **ENERGIES,
        reference_cells_mass_kg=305.5,
        exponent=[0.0, 0.5, 0.7, 1.0],
    )
    assert_allclose(scaled, [28.19, 38.81, 42.87, 48.75], atol=0.005)


@pytest.mark.parametrize("case", CASES)
def test_gaps_against_exact_arithmetic(case: tuple[str, ...]) -> None:
    """The formulas in decimal arithmetic of 50 digits."""
    with localcontext() as context:
        context.prec = 50
        m_s, e_s, c_s, m_r, e_r, c_r, b = map(Decimal, case)
        ratio = e_s / e_r
        grown = (ratio.ln() * b).exp()
        wanted = [
            m_s - m_r,
            m_r * (e_s - e_r) / e_r,
            m_s - m_r * ratio,
            m_s - (c_r * ratio + (m_r - c_r) * grown),
            (m_s - c_s) - (m_r - c_r) * grown,
        ]
    subject, energy, cells, reference, its_energy, its_cells, exponent = map(
        float, case
    )
    both = {"subject_energy_kwh": energy, "reference_energy_kwh": its_energy}
    given = [
        gap.gap_as_weighed_kg(subject, reference),
        gap.energy_share_kg(reference, **both),
        gap.density_share_kg(subject, reference, **both),
        gap.gap_scaled_kg(
            subject,
            reference,
            **both,
            reference_cells_mass_kg=its_cells,
            exponent=exponent,
        ),
        gap.gap_structure_kg(
            subject,
            reference,
            **both,
            subject_cells_mass_kg=cells,
            reference_cells_mass_kg=its_cells,
            exponent=exponent,
        ),
    ]
    # Masses of some 500 kg leave about 1e-13 kg of rounding in a difference.
    assert_allclose(given, [float(figure) for figure in wanted], rtol=0, atol=5e-13)


def test_a_split_against_exact_arithmetic() -> None:
    """Three groups in decimal arithmetic; the fourth row is what is left."""
    subject = [Decimal(text) for text in ("311.7", "96.25", "60.1")]
    reference = [Decimal(text) for text in ("280.2", "88.5", "61.3")]
    with localcontext() as context:
        context.prec = 50
        subject_all = [*subject, Decimal(489) - sum(subject)]
        reference_all = [*reference, Decimal(439) - sum(reference)]
        ratio = Decimal(82) / Decimal(75)
        pairs = list(zip(subject_all, reference_all, strict=True))
        as_weighed = [s - r for s, r in pairs]
        energy = [r * (ratio - 1) for r in reference_all]
        equal = [s - r * ratio for s, r in pairs]
    split = groups.split_by_group(
        [float(mass) for mass in subject],
        [float(mass) for mass in reference],
        subject_mass_kg=489.0,
        reference_mass_kg=439.0,
        subject_energy_kwh=82.0,
        reference_energy_kwh=75.0,
    )
    given = [split.as_weighed_kg, split.energy_share_kg, split.equal_energy_kg]
    wanted = [[float(row) for row in rows] for rows in (as_weighed, energy, equal)]
    assert_allclose(given, wanted, rtol=0, atol=5e-13)


def test_a_case_of_the_trade() -> None:
    """Common practice, no source: 82 kWh and 489 kg against 75 kWh and 439 kg.

    50 kg as weighed are 40.97 kg of energy and 9.03 kg of design. At 10 a kilogram the
    whole gap is called about 500, or 250 where half of it is captured.
    """
    energies = {"subject_energy_kwh": 82.0, "reference_energy_kwh": 75.0}
    as_weighed = gap.gap_as_weighed_kg(489.0, 439.0)
    assert as_weighed == 50.0
    share = gap.energy_share_kg(439.0, **energies)
    assert share == pytest.approx(40.97, abs=0.005)
    equal = gap.density_share_kg(489.0, 439.0, **energies)
    assert equal == pytest.approx(9.03, abs=0.005)
    assert worth.value_per_pack(as_weighed, 10.0) == pytest.approx(500.0, rel=0.01)
    captured = worth.value_per_pack(as_weighed, 10.0, share_captured=0.5)
    assert captured == pytest.approx(250.0, rel=0.01)


def test_the_other_packs_of_the_case() -> None:
    """Common practice, no source: the same subject against two more packs.

    By hand: 429 * 25 / 57 = 188.1579 and 442 * 7 / 75 = 41.2533.
    """
    mass, energy = [429.0, 442.0], [57.0, 75.0]
    both: dict[str, ArrayLike] = {
        "subject_energy_kwh": 82.0,
        "reference_energy_kwh": energy,
    }
    assert_allclose(gap.gap_as_weighed_kg(489.0, mass), [60.0, 47.0])
    share = gap.energy_share_kg(mass, **both)
    assert_allclose(share, [188.1579, 41.2533], atol=5e-5)
    equal = gap.density_share_kg(489.0, mass, **both)
    assert_allclose(equal, [-128.1579, 5.7467], atol=5e-5)


def test_gap_to_the_trend_of_the_case() -> None:
    """Common practice, no source: least squares through three packs by hand.

    75 kWh 439 kg, 57 kWh 429 kg, 75 kWh 442 kg: the line meets 429 kg at 57 kWh and the
    mean 440.5 kg at 75 kWh, so 440.5 + 7 * 11.5 / 18 = 444.972 kg at 82 kWh.
    """
    fitted = fit_least_squares([75.0, 57.0, 75.0], [439.0, 429.0, 442.0])
    predicted = fitted.predict_kg(82.0)
    assert predicted == pytest.approx(444.972, abs=5e-4)
    to_trend = gap.gap_to_trend_kg(489.0, predicted)
    assert to_trend == pytest.approx(44.028, abs=5e-4)
