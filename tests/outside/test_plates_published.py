"""Plates against the tables of textbooks, Navier's double series and scikit-fem."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
import skfem
from numpy.testing import assert_allclose
from skfem.helpers import dd, ddot, eye, trace

from benchpack.calc.plate_factors import Edges, deflection_factor, moment_factor
from benchpack.calc.plates import (
    deflection_mm,
    greatest_moment_n,
    is_thin_plate,
    plate_stress_mpa,
    rigidity_n_mm,
)

POISSON = 0.3

# Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, tables 8 and 35,
# recalled: b/a, deflection at the centre over q a^4 / D, greatest moment over q a^2.
SUPPORTED = np.array(
    [
        [1.0, 0.00406, 0.0479],
        [1.2, 0.00564, 0.0627],
        [1.5, 0.00772, 0.0812],
        [2.0, 0.01013, 0.1017],
        [3.0, 0.01223, 0.1189],
        [4.0, 0.01282, 0.1235],
        [5.0, 0.01297, 0.1246],
        [np.inf, 0.01302, 0.1250],
    ]
)
CLAMPED = np.array(
    [
        [1.0, 0.00126, 0.0513],
        [1.2, 0.00172, 0.0639],
        [1.5, 0.00220, 0.0757],
        [2.0, 0.00254, 0.0829],
        [np.inf, 0.00260, 0.0833],
    ]
)


@pytest.mark.parametrize(
    ("edges", "table"), [("supported", SUPPORTED), ("clamped", CLAMPED)]
)
def test_the_tables_of_timoshenko(edges: Edges, table: np.ndarray) -> None:
    """Rounded either way; 0.00564 at 1.2 squares is 0.005651 in truth."""
    ratios, deflections, moments = table.T
    assert_allclose(deflection_factor(ratios, edges), deflections, rtol=0, atol=1.1e-5)
    given = moment_factor(ratios, edges, poisson_ratio=POISSON)
    assert_allclose(given, moments, rtol=0, atol=1e-4)


def test_factors_to_seven_digits() -> None:
    """Computed by Navier's series and by Argyris elements, outside of this project."""
    ratios = [1.0, 2.0, np.inf]
    supported = deflection_factor(ratios, "supported")
    assert_allclose(supported, [0.0040624, 0.0101287, 0.0130208], rtol=0, atol=5.1e-8)
    clamped = deflection_factor(ratios, "clamped")
    assert_allclose(clamped, [0.0012653, 0.0025330, 0.0026042], rtol=0, atol=5.1e-8)
    edge = moment_factor(ratios, "clamped")
    assert_allclose(edge, [0.05133, 0.08287, 0.0833], rtol=0, atol=5e-5)


@pytest.mark.parametrize("ratio", [1.0, 1.37, 2.0, 4.5])
@pytest.mark.parametrize("poisson", [0.0, 0.3, 0.4])
def test_supported_plates_against_the_series_of_navier(
    ratio: float, poisson: float
) -> None:
    """``w = 16 q / (pi^6 D) sum sin sin / (m n (m^2/a^2 + n^2/b^2)^2)``, odd m and n.

    Cutting it at 3,000 terms along leaves the moment wrong by 1e-7 or so.
    """
    m = np.arange(1.0, 401.0, 2.0)[:, np.newaxis]
    n = np.arange(1.0, 6001.0, 2.0)
    sign = (1.0 - (m - 1.0) % 4.0) * (1.0 - (n - 1.0) % 4.0)
    both = m**2 + (n / ratio) ** 2
    terms = 16.0 / np.pi**6 * sign / (m * n * both**2)
    given = float(deflection_factor(ratio, "supported"))
    assert given == pytest.approx(terms.sum(), rel=1e-9)
    curved = np.pi**2 * terms * (m**2 + poisson * (n / ratio) ** 2)
    moment = float(moment_factor(ratio, "supported", poisson_ratio=poisson))
    assert moment == pytest.approx(curved.sum(), rel=2e-6)


@cache
def argyris(ratio: float, edges: Edges) -> tuple[float, float]:
    """Give deflection at the centre and greatest moment of a plate of 1 by `ratio`.

    Clamped edges fix the mixed and the tangential second derivative too.
    """
    across = np.linspace(0.0, 1.0, 9)
    along = np.linspace(0.0, ratio, int(8 * ratio) + 1)
    mesh = skfem.MeshTri.init_tensor(across, along).with_boundaries(
        {
            "long": lambda p: (p[0] == 0.0) | (p[0] == 1.0),
            "short": lambda p: (p[1] == 0.0) | (p[1] == ratio),
        }
    )
    basis = skfem.Basis(mesh, skfem.ElementTriArgyris())

    def bending(u: object, v: object, _: object) -> object:
        curved = dd(u)
        moment = (1.0 - POISSON) * curved + POISSON * eye(trace(curved), 2)
        return ddot(moment, dd(v))

    stiffness = skfem.BilinearForm(bending).assemble(basis)
    load = skfem.LinearForm(lambda v, _: v).assemble(basis)
    fixed = {
        "supported": (["u", "u_y", "u_yy"], ["u", "u_x", "u_xx"]),
        "clamped": (
            ["u", "u_x", "u_y", "u_yy", "u_xy", "u_n"],
            ["u", "u_x", "u_y", "u_xx", "u_xy", "u_n"],
        ),
    }[edges]
    dofs = [
        basis.get_dofs(side).all(names)
        for side, names in zip(("long", "short"), fixed, strict=True)
    ]
    held = np.unique(np.concatenate(dofs))
    solved = skfem.solve(*skfem.condense(stiffness, load, D=held))
    values = dict(zip(basis.elem.dofnames[:6], solved[basis.nodal_dofs], strict=True))

    def node(x: float, y: float) -> int:
        return int(np.argmin((mesh.p[0] - x) ** 2 + (mesh.p[1] - y) ** 2))

    centre, edge = node(0.5, ratio / 2.0), node(0.0, ratio / 2.0)
    if edges == "clamped":
        return float(values["u"][centre]), float(values["u_xx"][edge])
    moment = -(values["u_xx"][centre] + POISSON * values["u_yy"][centre])
    return float(values["u"][centre]), float(moment)


@pytest.mark.parametrize("edges", ["supported", "clamped"])
@pytest.mark.parametrize("ratio", [1.0, 1.5, 3.0])
def test_factors_against_scikit_fem(ratio: float, edges: Edges) -> None:
    """Argyris elements, 8 squares across: right to 3e-6 and 1e-4 themselves."""
    deflection, moment = argyris(ratio, edges)
    assert float(deflection_factor(ratio, edges)) == pytest.approx(deflection, rel=5e-6)
    given = moment_factor(ratio, edges, poisson_ratio=POISSON)
    assert float(given) == pytest.approx(moment, rel=2e-4)


@pytest.mark.parametrize("edges", ["supported", "clamped"])
def test_a_floor_in_si_units_against_scikit_fem(edges: Edges) -> None:
    """2 mm of 70 GPa, 300 mm by 600 mm, under 2 kPa, in metres and pascals."""
    deflection, moment = argyris(2.0, edges)
    rigidity = 70e9 * 0.002**3 / (12.0 * (1.0 - POISSON**2))
    given_rigidity = rigidity_n_mm(70.0, 2.0, poisson_ratio=POISSON)
    assert float(given_rigidity) == pytest.approx(1000.0 * rigidity, rel=1e-12)
    sunk = deflection_mm(
        2.0,
        length_mm=600.0,
        width_mm=300.0,
        rigidity_n_mm=given_rigidity,
        edges=edges,
    )
    wanted = deflection * 2000.0 * 0.3**4 / rigidity
    assert float(sunk) / 1000.0 == pytest.approx(wanted, rel=5e-6)
    bent = greatest_moment_n(
        2.0, length_mm=300.0, width_mm=600.0, edges=edges, poisson_ratio=POISSON
    )
    assert float(bent) == pytest.approx(moment * 2000.0 * 0.3**2, rel=2e-4)


def test_stress_of_a_bent_plate_is_that_of_linear_stress() -> None:
    """A stress that grows evenly to the faces, integrated over the thickness."""
    thickness, moment = 2.0, 15.0
    faces = float(plate_stress_mpa(moment, thickness))
    points, weights = np.polynomial.legendre.leggauss(8)
    z = points * thickness / 2.0
    carried = np.sum(weights * faces * z / (thickness / 2.0) * z) * thickness / 2.0
    assert carried == pytest.approx(moment, rel=1e-12)


def test_where_thin_plates_end() -> None:
    """A clamped disc of radius a: ``q a^4 / (64 D) = w (1 + 0.488 (w/t)^2)``.

    Timoshenko, Theory of Plates and Shells, chapter 13, Poisson's ratio 0.3, recalled.
    At half of the thickness the plate bends about an eighth less than computed.
    """
    share = np.array([0.25, 0.5, 0.51, 1.0])
    too_much = 0.488 * share**2
    assert_allclose(is_thin_plate(share * 3.0, 3.0), too_much < 1.0 / 8.0)
    assert too_much[1] == pytest.approx(1.0 / 8.0, rel=0.03)
