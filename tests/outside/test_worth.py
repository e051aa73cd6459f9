"""Worth against numpy-financial, pint and published sums of money."""

from __future__ import annotations

from decimal import Decimal

import numpy_financial
import pint
import pytest

from benchpack.calc import worth


@pytest.mark.parametrize("rate", [0.0, 0.05, 0.08, 0.15])
def test_a_programme_against_numpy_financial(rate: float) -> None:
    """numpy-financial leaves its first flow undiscounted: a zero goes before it."""
    volumes = [12_000.0, 45_000.0, 60_000.0, 60_000.0, 38_000.0, 9_000.0, 500.0]
    flows = [0.0, *(volume * 101.5 for volume in volumes)]
    given = worth.programme_npv(101.5, volumes, discount_rate=rate)
    assert given == pytest.approx(numpy_financial.npv(rate, flows), rel=1e-12)


def test_a_published_present_value() -> None:
    """numpy-financial documents 3065.22267 for these flows and an outlay of 40,000."""
    flows = [5_000.0, 8_000.0, 12_000.0, 30_000.0]
    given = worth.programme_npv(1.0, flows, discount_rate=0.08)
    assert given - 40_000.0 == pytest.approx(3065.22267, abs=5e-6)


@pytest.mark.parametrize("amount", [0.43, 1.3, 3.0, 10.0])
def test_the_pound_of_pint(amount: float) -> None:
    """The pound of pint is the international pound (1959), exactly 0.45359237 kg."""
    units: pint.UnitRegistry[float] = pint.UnitRegistry()
    per_lb = units.Quantity(amount, "1/kg").to("1/pound").magnitude
    assert worth.worth_per_lb_from_kg(amount) == pytest.approx(per_lb, rel=1e-14)
    per_kg = units.Quantity(amount, "1/pound").to("1/kg").magnitude
    assert worth.worth_per_kg_from_lb(amount) == pytest.approx(per_kg, rel=1e-14)


def test_a_pound_is_a_kilogram_over_2_2() -> None:
    """Common practice, no source: 2.2 pounds to the kilogram, good to 0.3 %."""
    assert worth.worth_per_kg_from_lb(1.0) == pytest.approx(2.2, rel=0.003)
    assert worth.worth_per_lb_from_kg(2.2) == pytest.approx(1.0, rel=0.003)


def test_value_per_pack_against_exact_arithmetic() -> None:
    """Money, mass and share as decimal fractions."""
    wanted = Decimal("9.03") * Decimal("3.15") * Decimal("0.8")
    given = worth.value_per_pack(9.03, 3.15, share_captured=0.8)
    assert given == pytest.approx(float(wanted), rel=1e-14)
