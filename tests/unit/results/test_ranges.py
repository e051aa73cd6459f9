"""How wide the range of a gap is, and what makes it so."""

from __future__ import annotations

import math

import pytest
from numpy.testing import assert_allclose
from scipy import stats

from benchpack.model.study import Study
from benchpack.model.words import Basis, KnownBy
from benchpack.results.comparison import Comparison, compare
from tests.unit.results.packs import library, pack


def range_of(found: Comparison) -> float:
    """Give the half width of the range of the first gap, kg."""
    return found.uncertain.coverage_factor(0) * float(found.gap_u_kg[0])


@pytest.mark.parametrize("count", [3, 4, 8])
def test_the_range_to_a_trend_of_few_peers_is_as_wide_as_its_band(count: int) -> None:
    """An exact subject: the range is the prediction interval (NIST e-Handbook)."""
    peers = [
        pack(f"Tern {i}", 50 + 10 * i, 330 + 60 * i + (-1) ** i * 9)
        for i in range(count)
    ]
    subject = pack("Heron", 70, 460, mass_tolerance_kg=0)
    records = library(subject, *peers)
    found = compare(records, Study(subject="Heron", basis=Basis.TREND))
    assert found.trend is not None
    low, high = found.trend.prediction_interval_kg(70.0, coverage=0.95)
    assert_allclose(range_of(found), (high - low) / 2)


def effective_dof(parts: list[float], dofs: list[float]) -> float:
    """Give Welch and Satterthwaite's formula as JCGM 100:2008 prints it, (G.2b)."""
    total = math.fsum(part**2 for part in parts) ** 2
    fourths = zip(parts, dofs, strict=True)
    return total / math.fsum(part**4 / dof for part, dof in fourths)


def test_the_factor_is_that_of_the_gum() -> None:
    """JCGM 100:2008, G.4.1: 0.25, 0.57, 0.82 % of 10, 5, 15 readings give 19.0."""
    assert effective_dof([0.25, 0.57, 0.82], [9, 4, 14]) == pytest.approx(
        19.0, abs=0.05
    )
    peers = [
        pack(f"Tern {i}", 50 + 10 * i, 330 + 60 * i + (-1) ** i * 9) for i in range(5)
    ]
    records = library(pack("Heron", 70, 460, mass_tolerance_kg=20), *peers)
    found = compare(records, Study(subject="Heron", basis=Basis.TREND))
    assert found.trend is not None
    error_kg = float(found.trend.prediction_uncertainty_kg(70.0))
    dof = effective_dof([20 / math.sqrt(3), error_kg], [math.inf, 3])
    factor = found.uncertain.coverage_factor(0)
    assert_allclose(factor, stats.t.ppf(0.975, dof), rtol=1e-9)


@pytest.mark.parametrize("basis", list(Basis))
def test_the_budget_of_a_gap_sums_to_its_uncertainty(basis: Basis) -> None:
    records = library(
        pack("Heron", 70, 460, cells_mass_kg=300, energy_tolerance_kwh=0.6),
        pack("Egret", 80, 470, cells_mass_kg=305, energy_tolerance_kwh=0.9),
        pack("Ibis", 60, 380, cells_mass_kg=250, mass_known_by=KnownBy.DECLARED),
        pack("Crane", 100, 600, cells_mass_kg=390, energy_tolerance_kwh=1.2),
    )
    found = compare(records, Study(subject="Heron", basis=basis))
    for place in range(3):
        budget = found.uncertain.budget(place)
        total = math.fsum(part.gap_kg**2 for part in budget)
        assert_allclose(total, found.gap_u_kg[place] ** 2)
        lacking = {part.name for part in budget if not part.gap_kg > 0}
        exact = {"reference_energy_u_kwh"} if found.names[place] == "Ibis" else set()
        assert lacking <= exact
