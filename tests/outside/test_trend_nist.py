"""Trends against certified values of the NIST Statistical Reference Datasets.

Only "Norris" fits: "NoInt1" certifies a line that is forced through the origin, and a
pack's mass at no energy (case, cooling, electronics) is not zero, so no trend of ours
has that model.
"""

from __future__ import annotations

import re
from pathlib import Path

import numpy as np
import pytest
import scipy.stats

from benchpack.calc.trend import fit_least_squares

NORRIS = (
    Path(scipy.stats.__file__).parent / "tests/data/nist_linregress/Norris.dat"
).read_text(encoding="ascii")


def certified() -> dict[str, float]:
    """Read the certified values from the header of the file."""
    number = r"(-?\d+\.\d+(?:E[+-]\d+)?)"
    found = {
        "intercept": rf"B0\s+{number}",
        "slope": rf"B1\s+{number}",
        "intercept_se": rf"B0\s+{number}\s+{number}",
        "slope_se": rf"B1\s+{number}\s+{number}",
        "residual_s": rf"Residual\s+Standard Deviation\s+{number}",
        "r_squared": rf"R-Squared\s+{number}",
    }
    values = {}
    for name, pattern in found.items():
        match = re.search(pattern, NORRIS)
        assert match is not None
        values[name] = float(match.groups()[-1])
    return values


def observed() -> np.ndarray:
    """Read the 36 observations: y in the first column, x in the second."""
    lines = NORRIS.splitlines()[60:96]
    return np.array([[float(text) for text in line.split()] for line in lines])


def test_the_certified_values_are_the_published_ones() -> None:
    """The file that scipy ships says what NIST prints."""
    assert certified() == {
        "intercept": -0.262323073774029,
        "slope": 1.00211681802045,
        "intercept_se": 0.232818234301152,
        "slope_se": 0.000429796848199937,
        "residual_s": 0.884796396144373,
        "r_squared": 0.999993745883712,
    }
    assert observed().shape == (36, 2)


@pytest.mark.parametrize(
    "name",
    ["intercept", "slope", "intercept_se", "slope_se", "residual_s", "r_squared"],
)
def test_norris(name: str) -> None:
    """NIST StRD Norris, linear least squares, lower level of difficulty."""
    mass, energy = observed().T
    given = getattr(fit_least_squares(energy, mass), name)
    assert given == pytest.approx(certified()[name], rel=1e-11)
