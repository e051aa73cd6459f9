"""All gaps of one subject to a million references against the bare expression."""

from __future__ import annotations

import time
from typing import TYPE_CHECKING

import numpy as np
import pytest
from numpy.testing import assert_allclose

from benchpack.calc import gap

if TYPE_CHECKING:
    from collections.abc import Callable

    from numpy.typing import ArrayLike, NDArray

    Gaps = tuple[NDArray[np.float64], ...]


def quickest(job: Callable[[], Gaps]) -> float:
    """Give the shortest of several runs in seconds."""
    taken = []
    for _ in range(5):
        start = time.perf_counter()
        job()
        taken.append(time.perf_counter() - start)
    return min(taken)


@pytest.mark.benchmark
def test_a_million_references_cost_at_most_three_bare_expressions() -> None:
    draws = np.random.Generator(np.random.PCG64(1))
    e = draws.uniform(40.0, 110.0, 1_000_000)
    m = e * draws.uniform(5.0, 8.0, e.size)
    c = 0.65 * m
    both: dict[str, ArrayLike] = {"subject_energy_kwh": 70.0, "reference_energy_kwh": e}

    def bare() -> Gaps:
        x = 70.0 / e
        power = x**0.5
        return (
            460.0 - m,
            m * (70.0 - e) / e,
            460.0 - m * x,
            460.0 - (c * x + (m - c) * power),
            170.0 - (m - c) * power,
        )

    def ours() -> Gaps:
        return (
            gap.gap_as_weighed_kg(460.0, m),
            gap.energy_share_kg(m, **both),
            gap.density_share_kg(460.0, m, **both),
            gap.gap_scaled_kg(460.0, m, **both, reference_cells_mass_kg=c),
            gap.gap_structure_kg(
                460.0,
                m,
                **both,
                subject_cells_mass_kg=290.0,
                reference_cells_mass_kg=c,
            ),
        )

    for given, wanted in zip(ours(), bare(), strict=True):
        assert_allclose(given, wanted, rtol=1e-12, atol=1e-9)
    ratio = quickest(ours) / quickest(bare)
    print(f"gaps to 1,000,000 references: {ratio:.2f} x the bare expression")
    assert ratio <= 3.0
