"""The gaps of the demo, computed again from its CSV files without the package.

Only the standard library and numpy read and compute here: least squares by numpy, the
uncertainties by differences of the gap itself instead of by formulas.
"""

from __future__ import annotations

import csv
import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np
import pytest
from numpy.testing import assert_allclose

from benchpack.files.reading import read_any
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.model.words import Basis
from benchpack.report.gap_table import gap_columns, gap_rows
from benchpack.results.results import compute

DEMO = Path(__file__).parents[3] / "datasets/demo"
SHARES = {"weighed": 0.002, "declared": 0.03, "literature": 0.15, "estimate": 0.25}
EXPONENT = 0.5


@dataclass(frozen=True)
class Row:
    """One pack as its row in the file says."""

    name: str
    energy: float
    energy_u: float
    basis: str
    mass: float
    mass_u: float
    cells: float
    states: dict[str, list[str]]


def number(text: str) -> float:
    return float(text) if text.strip() else math.nan


def row_of(cells: dict[str, str]) -> Row:
    mass, tolerance = number(cells["mass [kg]"]), number(cells["mass +- [kg]"])
    share = SHARES[cells["mass known by"]]
    spread = number(cells["energy +- [kWh]"])
    pieces = [p.split("=") for p in cells["boundary"].split(";") if p.strip()]
    return Row(
        cells["pack"],
        number(cells["energy [kWh]"]),
        0.0 if math.isnan(spread) else spread / math.sqrt(3),
        cells["energy basis"],
        mass,
        share * mass if math.isnan(tolerance) else tolerance / math.sqrt(3),
        number(cells["cells mass [kg]"]),
        {item.strip(): state.split() for item, state in pieces},
    )


@cache
def rows() -> dict[str, Row]:
    with (DEMO / "packs.csv").open(encoding="utf-8", newline="") as stream:
        return {cells["pack"]: row_of(cells) for cells in csv.DictReader(stream)}


@cache
def demo() -> Library:
    return read_any(DEMO).library


def aligned(one: Row, other: Row) -> float:
    """Give the mass of the first without what only it has and of which a mass is told.

    No part of the demo is named like an item of the boundary record.
    """
    mass = one.mass
    for item, state in one.states.items():
        against = other.states.get(item, ["unknown"])
        if state[0] == "in" and against[0] == "out" and len(state) > 1:
            mass -= float(state[1])
    return mass


def mixed(one: Row, other: Row) -> bool:
    return {one.basis, other.basis} == {"gross", "usable"}


def trend(subject: Row) -> tuple[float, float]:
    """Give the mass on the line through the peers and its error of prediction."""
    peers = [r for r in rows().values() if r is not subject and not mixed(r, subject)]
    if len(peers) < 3:
        return math.nan, math.nan
    design = np.array([[1.0, r.energy] for r in peers])
    masses = np.array([r.mass for r in peers])
    line, *_ = np.linalg.lstsq(design, masses, rcond=None)
    left = masses - design @ line
    at = np.array([1.0, subject.energy])
    spread = 1 + at @ np.linalg.inv(design.T @ design) @ at
    error = math.sqrt(left @ left / (len(peers) - 2) * spread)
    return float(at @ line), error


def scaled(m: list[float]) -> float:
    x = m[2] / m[3]
    return m[0] - (m[4] * x + (m[1] - m[4]) * math.pow(x, EXPONENT))


def structure(m: list[float]) -> float:
    return (m[0] - m[5]) - (m[1] - m[4]) * math.pow(m[2] / m[3], EXPONENT)


# Inputs in order: both masses, both energies, cells of the reference, of the subject.
GAPS: dict[Basis, tuple[Callable[[list[float]], float], int]] = {
    Basis.AS_WEIGHED: (lambda m: m[0] - m[1], 2),
    Basis.EQUAL_ENERGY: (lambda m: m[0] - m[1] * m[2] / m[3], 4),
    Basis.SCALED: (scaled, 5),
    Basis.STRUCTURE: (structure, 6),
}


def gap_and_u(subject: Row, reference: Row, *, basis: Basis) -> tuple[float, float]:
    if basis is Basis.TREND:
        predicted, error = trend(subject)
        return subject.mass - predicted, math.hypot(subject.mass_u, error)
    if basis is not Basis.AS_WEIGHED and mixed(subject, reference):
        return math.nan, math.nan
    masses = (aligned(subject, reference), aligned(reference, subject))
    inputs = [*masses, subject.energy, reference.energy, reference.cells, subject.cells]
    spreads = [subject.mass_u, reference.mass_u, subject.energy_u, reference.energy_u]
    spreads += [r.mass_u * r.cells / r.mass for r in (reference, subject)]
    gap, count = GAPS[basis]
    total = 0.0
    for place in range(count):
        step = [0.0] * len(inputs)
        step[place] = 1e-5 * inputs[place]
        up = gap([a + b for a, b in zip(inputs, step, strict=True)])
        down = gap([a - b for a, b in zip(inputs, step, strict=True)])
        total += ((up - down) / (2 * step[place]) * spreads[place]) ** 2
    return gap(inputs), math.sqrt(total)


@pytest.mark.parametrize("basis", list(Basis))
def test_every_gap_of_every_pair(basis: Basis) -> None:
    names = {
        Basis.AS_WEIGHED: "gap as weighed",
        Basis.EQUAL_ENERGY: "density share",
        Basis.SCALED: "gap scaled",
        Basis.TREND: "gap to trend",
        Basis.STRUCTURE: "gap structure",
    }
    heads = [column.name.partition(" [")[0] for column in gap_columns("EUR")]
    compared = 0
    for subject in rows().values():
        study = Study(
            subject=subject.name,
            basis=basis,
            exponent=EXPONENT,
            worth_low_per_kg=2,
            worth_likely_per_kg=3,
            worth_high_per_kg=6,
        )
        for cells in gap_rows(compute(demo(), study)):
            texts = dict(zip(heads, cells, strict=True))
            row = {k: cell for k, cell in texts.items() if isinstance(cell, float)}
            reference = rows()[str(texts["reference"])]
            gap, u = gap_and_u(subject, reference, basis=basis)
            assert_allclose(row["gap"], gap, rtol=1e-9, atol=1e-9)
            assert_allclose(row["u(gap)"], u, rtol=1e-6)
            assert_allclose(row["value high"], 6 * gap, rtol=1e-9, atol=1e-9)
            for other, name in names.items():
                wanted, _ = gap_and_u(subject, reference, basis=other)
                assert_allclose(row[name], wanted, rtol=1e-9, atol=1e-9)
            compared += 1
    assert compared == len(rows()) * (len(rows()) - 1)
