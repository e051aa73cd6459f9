"""Sections against numerical integration and tables, beams against scikit-fem."""

from __future__ import annotations

import numpy as np
import pint
import pytest
import skfem
from scipy.integrate import quad
from skfem.helpers import dd, ddot

from benchpack.calc.beams import (
    Spread,
    Support,
    beam_deflection_mm,
    beam_moment_n_mm,
    beam_stress_mpa,
)
from benchpack.calc.sections import hollow_rectangle, rectangle

UNITS: pint.UnitRegistry[float] = pint.UnitRegistry()


@pytest.mark.parametrize(
    ("width", "height", "wall"), [(40.0, 80.0, 3.0), (80.0, 40.0, 3.0), (30.0, 30.0, 9)]
)
def test_hollow_sections_by_numerical_integration(
    width: float, height: float, wall: float
) -> None:
    """The breadth of material at each height, integrated."""

    def breadth(y: float) -> float:
        return width if abs(y) > height / 2.0 - wall else 2.0 * wall

    ends = [-height / 2.0 + wall, height / 2.0 - wall]
    area, second = (
        quad(lambda y, n=n: breadth(y) * y**n, -height / 2, height / 2, points=ends)[0]
        for n in (0, 2)
    )
    section = hollow_rectangle(width, height, wall_mm=wall)
    assert float(section.area_mm2) == pytest.approx(area, rel=1e-9)
    assert float(section.second_moment_mm4) == pytest.approx(second, rel=1e-9)
    outer = second / (height / 2.0)
    assert float(section.modulus_mm3) == pytest.approx(outer, rel=1e-9)
    solid = rectangle(width, height)
    whole, _ = quad(lambda y: width * y**2, -height / 2.0, height / 2.0)
    assert float(solid.second_moment_mm4) == pytest.approx(whole, rel=1e-9)


@pytest.mark.parametrize(
    ("size", "area_cm2", "second_cm4", "modulus_cm3", "mass_kg_m"),
    [
        ((40.0, 80.0, 3.0), 6.61, 52.3, 13.1, 5.19),
        ((40.0, 40.0, 3.0), 4.21, 9.32, 4.66, 3.30),
        ((50.0, 100.0, 4.0), 10.9, 134.0, 26.8, 8.59),
    ],
)
def test_cold_formed_steel_sections_of_a_table(
    size: tuple[float, float, float],
    area_cm2: float,
    second_cm4: float,
    modulus_cm3: float,
    mass_kg_m: float,
) -> None:
    """EN 10219-2, recalled; its corners are round, which costs up to a tenth."""
    width, height, wall = size
    section = hollow_rectangle(width, height, wall_mm=wall)
    pairs = [
        (float(section.area_mm2), 100.0 * area_cm2),
        (float(section.second_moment_mm4), 1e4 * second_cm4),
        (float(section.modulus_mm3), 1e3 * modulus_cm3),
        (float(section.mass_kg_m(7850.0)), mass_kg_m),
    ]
    for sharp, printed in pairs:
        assert 1.0 < sharp / printed < 1.1


def hermite(support: Support, spread: Spread) -> tuple[float, float]:
    """Give deflection and moment of a beam of length, stiffness and load 1.

    Half of a beam that is held alike at both ends: midway it does not turn. Moments are
    those that the supports have to bring up, which the elements give exactly.
    """
    length = 1.0 if support == "cantilever" else 0.5
    mesh = skfem.MeshLine(np.linspace(0.0, length, 9))
    basis = skfem.Basis(mesh, skfem.ElementLineHermite())
    stiffness = skfem.BilinearForm(lambda u, v, _: ddot(dd(u), dd(v))).assemble(basis)
    load = skfem.LinearForm(lambda v, _: v).assemble(basis)
    start, end = (basis.nodal_dofs[:, i] for i in (0, mesh.p.shape[1] - 1))
    if spread == "point":
        load = np.zeros_like(load)
        load[end[0]] = length
    held = {
        "cantilever": [start[0], start[1]],
        "simply supported": [start[0], end[1]],
        "fixed": [start[0], start[1], end[1]],
    }[support]
    solved = skfem.solve(*skfem.condense(stiffness, load, D=np.array(held)))
    reactions = stiffness @ solved - load
    turning = [abs(reactions[dof]) for dof in held if dof in (start[1], end[1])]
    return float(solved[end[0]]), float(max(turning))


@pytest.mark.parametrize("spread", ["point", "uniform"])
@pytest.mark.parametrize("support", ["cantilever", "simply supported", "fixed"])
def test_beams_against_scikit_fem(support: Support, spread: Spread) -> None:
    """70 GPa, 558,532 mm4, 1.2 m, 500 N; Hermite elements are exact at their nodes."""
    deflection, moment = hermite(support, spread)
    given = beam_deflection_mm(
        500.0,
        length_mm=1200.0,
        modulus_gpa=70.0,
        second_moment_mm4=558_532.0,
        support=support,
        spread=spread,
    )
    wanted = deflection * 500.0 * 1.2**3 / (70e9 * 558_532e-12)
    assert float(given) / 1000.0 == pytest.approx(wanted, rel=1e-9)
    bent = beam_moment_n_mm(500.0, length_mm=1200.0, support=support, spread=spread)
    assert float(bent) / 1000.0 == pytest.approx(moment * 500.0 * 1.2, rel=1e-9)


def test_stress_of_a_beam_is_that_of_linear_stress() -> None:
    """Stress that grows evenly to the outer fibre carries the moment; units of pint."""
    section = rectangle(10.0, 20.0)
    faces = float(beam_stress_mpa(100_000.0, section.modulus_mm3))
    carried, _ = quad(lambda y: faces * y / 10.0 * y * 10.0, -10.0, 10.0)
    assert carried == pytest.approx(100_000.0, rel=1e-12)
    moment, modulus = UNITS.Quantity(0.1, "kN m"), UNITS.Quantity(2 / 3, "cm^3")
    assert faces == pytest.approx((moment / modulus).to("MPa").magnitude, rel=1e-12)
