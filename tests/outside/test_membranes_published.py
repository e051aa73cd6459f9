"""Membranes against bulge tests, a strip solved exactly, and nonlinear elements."""

from __future__ import annotations

from functools import cache
from typing import Any

import numpy as np
import pytest
import skfem
from numpy.testing import assert_allclose
from scipy.optimize import brentq
from scipy.sparse import bmat
from scipy.sparse.linalg import spsolve
from skfem.helpers import grad

from benchpack.calc.membranes import (
    membrane_deflection_mm,
    stretch_stress_mpa,
    stretched_deflection_mm,
)

E_GPA, T_MM, Q_KPA, POISSON = 210.0, 0.7, 9.8, 0.3
E_MPA, Q_MPA = 1000.0 * E_GPA, Q_KPA / 1000.0


@pytest.mark.parametrize("poisson", [0.25, 0.3, 0.35])
def test_a_square_of_bulge_tests(poisson: float) -> None:
    """``p = 1.994 (1 - 0.271 nu) E t h^3 / ((1 - nu) a^4)``, a half of the side.

    Maier-Schneider, Maibach, Obermeier, J. Microelectromech. Syst. 4 (1995) 238;
    recalled.
    """
    half = 300.0
    stiffness = 1.994 * (1 - 0.271 * poisson) * E_MPA * T_MM / (1 - poisson)
    printed = half * (Q_MPA * half / stiffness) ** (1 / 3)
    given = membrane_deflection_mm(
        Q_KPA,
        length_mm=2 * half,
        width_mm=2 * half,
        modulus_gpa=E_GPA,
        thickness_mm=T_MM,
        poisson_ratio=poisson,
    )
    assert float(given) == pytest.approx(printed, rel=0.02)


def strip(half: float, *, rigidity: float) -> tuple[float, float]:
    """Solve a long plate with ends that turn but do not come nearer, per mm.

    The pull S is the same throughout, so that ``D w'''' - S w'' = q`` has a closed
    solution; S is the stretch of the curve it takes, found by a root finder.
    """
    plane = E_MPA * T_MM / (1 - POISSON**2)
    x = np.linspace(0.0, half, 4001)

    def curve(pull: float) -> Any:
        parabola = Q_MPA * (half**2 - x**2) / (2 * pull)
        if rigidity == 0.0:
            return parabola
        k = np.sqrt(pull / rigidity)
        # cosh(kx)/cosh(kl) without overflow.
        shape = (np.exp(k * (x - half)) + np.exp(-k * (x + half))) / (
            1 + np.exp(-2 * k * half)
        )
        return parabola - Q_MPA / (pull * k**2) * (1.0 - shape)

    def open_by(pull: float) -> float:
        slope = np.gradient(curve(pull), x)
        return float(np.trapezoid(slope**2, x) / (2 * half) - pull / plane)

    pull = brentq(open_by, 1e-3, 1e4, xtol=1e-12, rtol=1e-12)
    return float(curve(pull)[0]), pull


def test_a_long_strip_is_a_parabola() -> None:
    half = 400.0
    deflection, pull = strip(half, rigidity=0.0)
    sheet = {"length_mm": 1e9, "width_mm": 2 * half, "modulus_gpa": E_GPA}
    given = membrane_deflection_mm(Q_KPA, **sheet, thickness_mm=T_MM)
    assert float(given) == pytest.approx(deflection, rel=1e-6)
    stress = stretch_stress_mpa(given, **sheet)
    assert float(stress) == pytest.approx(pull / T_MM, rel=1e-6)


@pytest.mark.parametrize("half", [10.0, 20.0, 30.0, 40.0, 60.0, 100.0, 300.0])
def test_a_strip_that_bends_and_stretches(half: float) -> None:
    """Cylindrical bending (Timoshenko, chapter 1), from 0.1 to 100 walls deep."""
    rigidity = E_MPA * T_MM**3 / (12 * (1 - POISSON**2))
    deflection, _ = strip(half, rigidity=rigidity)
    bent = 5 / 384 * Q_MPA * (2 * half) ** 4 / rigidity
    stretched = membrane_deflection_mm(
        Q_KPA, length_mm=1e9, width_mm=2 * half, modulus_gpa=E_GPA, thickness_mm=T_MM
    )
    given = stretched_deflection_mm(bent, stretched)
    assert float(given) == pytest.approx(deflection, rel=0.025)


@cache
def elements(ratio: float) -> tuple[float, float]:
    """Solve a quarter of Foeppl's membrane by Newton's method, q = a = 1.

    ``E t / (1 - nu^2)`` is 1; given are the deflection at the centre and the pull
    midway at a long edge.
    """
    graded = 1.0 - (1.0 - np.linspace(0.0, 1.0, 9)) ** 1.5
    mesh = skfem.MeshQuad.init_tensor(graded, graded * ratio)
    basis = skfem.Basis(mesh, skfem.ElementQuad2(), intorder=6)
    x, y = basis.doflocs
    size = basis.N
    edge = np.isclose(x, 1.0) | np.isclose(y, ratio)
    held = np.concatenate((edge, edge | np.isclose(x, 0), edge | np.isclose(y, 0)))
    free = np.flatnonzero(~held)
    load = skfem.LinearForm(lambda v, _: 1.0 * v).assemble(basis)
    solution = np.concatenate(
        (0.75 * (1 - x**2) * (1 - (y / ratio) ** 2), np.zeros(2 * size))
    )
    for _ in range(60):
        residual, tangent = _newton(basis, solution)
        residual[:size] -= load
        step = spsolve(tangent[free][:, free], -residual[free])
        solution[free] += step
        if np.abs(step).max() < 1e-9:
            break
    centre = float(solution[:size][np.isclose(x, 0) & np.isclose(y, 0)][0])
    return centre, _pull_at_edge(basis, solution)


def _pull(basis: skfem.CellBasis, solution: np.ndarray) -> tuple[np.ndarray, ...]:
    bent, along, across = (
        grad(basis.interpolate(part)) for part in np.split(solution, 3)
    )
    strain_x, strain_y = along[0] + bent[0] ** 2 / 2, across[1] + bent[1] ** 2 / 2
    shear = along[1] + across[0] + bent[0] * bent[1]
    return (
        bent,
        strain_x + POISSON * strain_y,
        strain_y + POISSON * strain_x,
        (1 - POISSON) / 2 * shear,
    )


def _newton(basis: skfem.CellBasis, solution: np.ndarray) -> tuple[np.ndarray, Any]:
    bent, pull_x, pull_y, pull_xy = _pull(basis, solution)
    elastic = np.array([[1, POISSON, 0], [POISSON, 1, 0], [0, 0, (1 - POISSON) / 2]])

    def strains(field: int, slope: np.ndarray) -> list[np.ndarray]:
        dx, dy, none = slope[0], slope[1], 0 * slope[0]
        if field == 0:
            return [dx * bent[0], dy * bent[1], dx * bent[1] + dy * bent[0]]
        return [dx, none, dy] if field == 1 else [none, dy, dx]

    def residual(row: int) -> Any:
        def form(test: skfem.DiscreteField, _: object) -> Any:
            pulls = (pull_x, pull_y, pull_xy)
            return sum(
                p * s for p, s in zip(pulls, strains(row, grad(test)), strict=True)
            )

        return skfem.LinearForm(form).assemble(basis)

    def tangent(row: int, column: int) -> Any:
        def form(
            trial: skfem.DiscreteField, test: skfem.DiscreteField, _: object
        ) -> Any:
            given, asked = grad(trial), grad(test)
            shown, by = strains(column, given), strains(row, asked)
            whole = sum(
                elastic[i, j] * by[i] * shown[j] for i in range(3) for j in range(3)
            )
            if row == column == 0:
                mixed = given[0] * asked[1] + given[1] * asked[0]
                whole = whole + pull_x * given[0] * asked[0] + pull_xy * mixed
                whole = whole + pull_y * given[1] * asked[1]
            return whole

        return skfem.BilinearForm(form).assemble(basis)

    blocks = [[tangent(row, column) for column in range(3)] for row in range(3)]
    return np.concatenate([residual(row) for row in range(3)]), bmat(blocks).tocsr()


def _pull_at_edge(basis: skfem.CellBasis, solution: np.ndarray) -> float:
    point = np.array([[1.0 - 1e-9], [1e-9]])
    mesh = basis.mesh
    cells = mesh.element_finder()(*point)
    local = mesh.mapping().invF(point[:, :, np.newaxis], tind=cells)[:, 0, :]
    there = skfem.CellBasis(
        mesh, basis.elem, elements=cells, quadrature=(local, np.ones(1))
    )
    return float(_pull(there, solution)[1][0, 0])


@pytest.mark.parametrize("ratio", [1.0, 1.25, 2.0])
def test_sheets_against_scikit_fem(ratio: float) -> None:
    """Two of the ratios are in the table, the third is read between its lines."""
    half = 500.0
    deflection, pull = elements(ratio)
    plane = E_MPA * T_MM / (1 - POISSON**2)
    sheet = {"length_mm": 2 * half * ratio, "width_mm": 2 * half, "modulus_gpa": E_GPA}
    given = membrane_deflection_mm(Q_KPA, **sheet, thickness_mm=T_MM)
    expected = deflection * half * (Q_MPA * half / plane) ** (1 / 3)
    assert_allclose(given, expected, rtol=1e-3)
    stress = pull * (Q_MPA**2 * half**2 * plane) ** (1 / 3) / T_MM
    assert_allclose(stretch_stress_mpa(given, **sheet), stress, rtol=5e-3)
