"""Part cost and tooling against numpy-financial, worked parts and exact fractions."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import numpy as np
import numpy_financial as npf
import pytest

from benchpack.calc.part_cost import material_cost, part_cost, process_cost
from benchpack.calc.tooling import (
    break_even_volume,
    capital_recovery_factor,
    payback_years,
    tooling_per_pack,
)

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


def test_capital_recovery_of_a_table() -> None:
    """8 %, 5 years: 0.25045645 (tables of engineering economy print 0.2505)."""
    factor = capital_recovery_factor(0.08, 5.0)
    assert float(factor) == pytest.approx(0.25045645, abs=5e-9)


@pytest.mark.parametrize("rate", [0.0, 1e-9, 0.005, 0.08, 0.35])
@pytest.mark.parametrize("years", [1, 5, 12])
def test_capital_recovery_against_numpy_financial(rate: float, years: int) -> None:
    factor = capital_recovery_factor(rate, years)
    # Its own digits go near a rate of zero: there exact fractions have the word.
    tolerance = 1e-6 if 0 < rate < 1e-6 else 1e-12
    assert float(factor) == pytest.approx(-npf.pmt(rate, years, 1.0), rel=tolerance)
    growth = (1 + Fraction(rate)) ** years
    exact = Fraction(rate) * growth / (growth - 1) if rate else Fraction(1, years)
    assert float(factor) == pytest.approx(float(exact), rel=1e-14)


def test_a_published_payment() -> None:
    """numpy-financial's documentation: 200,000 over 180 months at 7.5 %: 1854.02472."""
    factor = capital_recovery_factor(0.075 / 12, 180.0)
    assert 200_000.0 * float(factor) == pytest.approx(1854.02472, abs=5e-6)


# Tooling; money per pack without interest and at 8 %, 5 years, 50,000 a year.
TOOLING = [(300e3, 1.20, 1.50), (800e3, 3.20, 4.01), (1.5e6, 6.0, 7.5)]


@pytest.mark.parametrize(("tooling", "plain", "with_interest"), TOOLING)
def test_tooling_of_worked_parts(
    tooling: float, plain: float, with_interest: float
) -> None:
    """By hand; at 20,000 a year two and a half times as much."""
    supply: dict[str, ArrayLike] = {"years": 5.0, "rate": [0.0, 0.08]}
    given = tooling_per_pack(tooling, yearly_volume=50_000.0, **supply)
    assert given == pytest.approx([plain, with_interest], abs=0.0149)
    fewer = tooling_per_pack(tooling, yearly_volume=20_000.0, **supply)
    assert fewer == pytest.approx(2.5 * given, rel=1e-12)


@pytest.mark.parametrize("rate", [0.0, 0.08, 0.2])
def test_break_even_has_no_net_present_value(rate: float) -> None:
    """What packs save at that volume is worth the tooling: numpy-financial npv."""
    volume = float(break_even_volume(700_000.0, 12.5, years=6.0, rate=rate))
    flows = [-700_000.0, *[12.5 * volume] * 6]
    assert npf.npv(rate, flows) == pytest.approx(0.0, abs=1e-6)


@pytest.mark.parametrize("rate", [0.0, 0.08, 0.2])
def test_payback_against_numpy_financial(rate: float) -> None:
    """Number of periods, nper; its sign turns round where there is no interest."""
    given = payback_years(700_000.0, [250_000.0, 180_000.0], rate=rate)
    wanted = npf.nper(rate, np.array([250_000.0, 180_000.0]), -700_000.0)
    assert given == pytest.approx(np.abs(wanted), rel=1e-12)


# Cycle in s, machine and labour per hour, utilisation, cost per shot as printed.
SHOTS = [
    pytest.param(110.0, 220.0, 35.0, 0.85, 9.2, id="injection"),
    pytest.param(150.0, 160.0, 70.0, 0.85, 11.3, id="SMC"),
    pytest.param(110.0, 350.0, 35.0, 0.80, 14.7, id="die casting"),
]


@pytest.mark.parametrize(
    ("cycle", "machine", "labour", "utilisation", "printed"), SHOTS
)
def test_process_of_worked_parts(
    cycle: float, machine: float, labour: float, utilisation: float, printed: float
) -> None:
    """By hand, utilisation 0.80 to 0.85; rates recalled."""
    given = process_cost(
        cycle,
        machine_rate_per_h=machine,
        labour_rate_per_h=labour,
        utilisation=utilisation,
    )
    assert float(given) == pytest.approx(printed, abs=0.05)


def test_a_part_against_a_year_of_making_it() -> None:
    """Money and material of a year over its good parts, in exact fractions."""
    hours, cycle, cavities = 4000, Fraction(90), 2
    utilisation, good = Fraction(4, 5), Fraction(24, 25)
    parts = hours * 3600 * utilisation / cycle * cavities * good
    paid = hours * (Fraction(180) + 2 * Fraction(40))
    process = process_cost(
        90.0,
        machine_rate_per_h=180.0,
        labour_rate_per_h=40.0,
        operators=2.0,
        cavities=2.0,
        utilisation=0.8,
        good_share=0.96,
    )
    assert float(process) == pytest.approx(float(paid / parts), rel=1e-13)
    # 1000 kg bought at 3.10, a fifth of it sold as scrap at 0.40, parts of 1.6 kg.
    made = 1000 * Fraction(4, 5) / Fraction(8, 5)
    spent = 1000 * Fraction(31, 10) - 200 * Fraction(4, 10)
    material = material_cost(1.6, 3.1, scrap=0.2, scrap_price_per_kg=0.4)
    assert float(material) == pytest.approx(float(spent / made), rel=1e-13)
    whole = part_cost(material, [float(process), 0.5], finishing=1.25)
    exact = spent / made + paid / parts + Fraction(1, 2) + Fraction(5, 4)
    assert float(whole) == pytest.approx(float(exact), rel=1e-13)
