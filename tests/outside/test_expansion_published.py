"""Panels on frames against a worked case and against scikit-fem."""

from __future__ import annotations

import numpy as np
import pytest
import skfem
from skfem.helpers import ddot, eye, sym_grad, trace

from benchpack.calc.expansion import (
    mismatch_strain,
    panel_stress_mpa,
    shared_force_n,
    travel_mm,
)


def test_a_polymer_cover_on_an_aluminium_frame() -> None:
    """By hand: PP-LGF over 1.5 m and 60 K, 0.6 mm in flow and 2.4 mm across."""
    strain = mismatch_strain([30.0, 50.0], 23.4, panel_rise_k=60.0)
    assert travel_mm(1500.0, strain) == pytest.approx([0.6, 2.4], abs=0.01)


@pytest.mark.parametrize("held", ["one way", "both ways"])
def test_a_held_panel_against_scikit_fem(held: str) -> None:
    """Plane stress with thermal strain; stress is what the panel pushes its edge with.

    8 GPa, Poisson's ratio 0.36; along one line it may grow across.
    """
    modulus, poisson = 8000.0, 0.36
    strain = float(mismatch_strain(50.0, 23.4, panel_rise_k=60.0))
    mesh = skfem.MeshQuad.init_tensor(np.linspace(0, 3, 4), np.linspace(0, 2, 3))
    mesh = mesh.with_boundaries(
        {
            "left": lambda p: p[0] == 0.0,
            "right": lambda p: p[0] == 3.0,
            "bottom": lambda p: p[1] == 0.0,
            "top": lambda p: p[1] == 2.0,
        }
    )
    basis = skfem.Basis(mesh, skfem.ElementVector(skfem.ElementQuad1()))
    plane = modulus / (1.0 - poisson**2)

    def elastic(u: object, v: object, _: object) -> object:
        e = sym_grad(u)
        stress = (1.0 - poisson) * e + poisson * eye(trace(e), 2)
        return plane * ddot(stress, sym_grad(v))

    def thermal(v: object, _: object) -> object:
        return plane * (1.0 + poisson) * strain * trace(sym_grad(v))

    stiffness = skfem.BilinearForm(elastic).assemble(basis)
    load = skfem.LinearForm(thermal).assemble(basis)
    sides = basis.get_dofs({"left", "right"}).all(["u^1"])
    edges = {"bottom"} if held == "one way" else {"bottom", "top"}
    fixed = np.concatenate([sides, basis.get_dofs(edges).all(["u^2"])])
    solved = skfem.solve(*skfem.condense(stiffness, load, D=fixed))
    reactions = stiffness @ solved - load
    pressed = -reactions[basis.get_dofs("right").all(["u^1"])].sum() / 2.0
    ratio = 0.0 if held == "one way" else poisson
    given = panel_stress_mpa(strain, modulus_gpa=8.0, poisson_ratio=ratio)
    assert float(given) == pytest.approx(float(pressed), rel=1e-9)


def test_a_panel_and_a_frame_that_both_give_way() -> None:
    """Two bars of scikit-fem joined at one end and held at the other."""
    strain = float(mismatch_strain(50.0, 23.4, panel_rise_k=60.0, frame_rise_k=40.0))
    assert strain == pytest.approx(50e-6 * 60.0 - 23.4e-6 * 40.0, rel=1e-12)
    mesh = skfem.MeshLine(np.linspace(0.0, 1500.0, 4))
    basis = skfem.Basis(mesh, skfem.ElementLineP1())
    stretch = skfem.BilinearForm(lambda u, v, _: ddot_1d(u, v)).assemble(basis)
    pull = skfem.LinearForm(lambda v, _: v.grad[0]).assemble(basis)
    panel, frame = 8000.0 * 3000.0, 69_500.0 * 1400.0
    start = np.array([int(np.argmin(mesh.p[0]))])
    end = int(np.argmax(mesh.p[0]))
    both = skfem.solve(
        *skfem.condense((panel + frame) * stretch, panel * strain * pull, D=start)
    )
    # What the frame needs to be drawn to the common length.
    force = frame * both[end] / 1500.0
    given = shared_force_n(
        strain,
        panel_modulus_gpa=8.0,
        panel_area_mm2=3000.0,
        frame_modulus_gpa=69.5,
        frame_area_mm2=1400.0,
    )
    assert float(given) == pytest.approx(float(force), rel=1e-9)


def ddot_1d(u: skfem.DiscreteField, v: skfem.DiscreteField) -> np.ndarray:
    """Give the product of two strains along a line."""
    return np.asarray(u.grad[0] * v.grad[0])
