"""The heat path against the ht package, scikit-fem, worked layers and pint's units."""

from __future__ import annotations

from typing import TYPE_CHECKING

import ht
import numpy as np
import pint
import pytest
import skfem
from ht.insulation import building_materials
from skfem.helpers import dot, grad

from benchpack.calc.heat import (
    adiabatic_rise_k,
    film_resistance_m2k_w,
    layer_resistance_m2k_w,
    least_plate_mm,
    plate_mass_kg,
    resistance_k_w,
    series_resistance_m2k_w,
    spreading_rise_k,
    temperature_rise_k,
)

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

UNITS: pint.UnitRegistry[float] = pint.UnitRegistry()
FLUX = 2000.0

# Thickness in mm, conductivity in W/(m K), resistance in 1e-4 m2 K/W and rise in K at
# 2 kW/m2, as printed.
LAYERS = [
    pytest.param(1.5, 2.0, 7.5, 1.5, id="gap filler, 2 W/(m K)"),
    pytest.param(1.5, 3.0, 5.0, 1.0, id="gap filler, 3 W/(m K)"),
    pytest.param(1.0, 1.5, 6.7, 1.3, id="pad"),
    pytest.param(0.3, 1.0, 3.0, 0.6, id="adhesive"),
    pytest.param(0.1, 0.15, 6.7, 1.3, id="PET film"),
    pytest.param(2.0, 190.0, 0.11, 0.02, id="aluminium"),
    pytest.param(3.0, 0.3, 100.0, 20.0, id="glass-filled PP floor"),
    pytest.param(3.0, 0.4, 75.0, 15.0, id="SMC"),
    pytest.param(3.0, 1.5, 20.0, 4.0, id="filled polymer"),
]


@pytest.mark.parametrize(("thickness", "conductivity", "printed", "rise"), LAYERS)
def test_layers_at_two_kilowatts_per_square_metre(
    thickness: float, conductivity: float, printed: float, rise: float
) -> None:
    """Derived once by hand, printed with two digits."""
    resistance = layer_resistance_m2k_w(thickness, conductivity)
    assert 1e4 * float(resistance) == pytest.approx(printed, rel=0.045)
    given = temperature_rise_k(FLUX, resistance)
    assert float(given) == pytest.approx(rise, rel=0.06)


def test_the_coolant_film() -> None:
    """1000 W/(m2 K) are 1e-3 m2 K/W and 2.0 K, by hand."""
    film = film_resistance_m2k_w(1000.0)
    assert float(film) == pytest.approx(1e-3, rel=1e-12)
    assert float(temperature_rise_k(FLUX, film)) == pytest.approx(2.0, rel=1e-12)
    coefficient, area = UNITS.Quantity(0.1, "W/(cm^2 K)"), UNITS.Quantity(1.0, "m^2")
    wall = (1.0 / (coefficient * area)).to("K/W").magnitude
    assert float(film) == pytest.approx(wall, rel=1e-12)


def test_a_path_of_three_layers() -> None:
    """3 mm of 160, 1 of 3, 3 of 0.35: 0.00892351 m2 K/W; 0.223088 K/W, by hand."""
    path = series_resistance_m2k_w([3.0, 1.0, 3.0], [160.0, 3.0, 0.35])
    assert float(path) == pytest.approx(0.00892351, abs=5e-9)
    assert float(resistance_k_w(path, 0.04)) == pytest.approx(0.223088, abs=5e-7)


@pytest.mark.parametrize("area", [1.0, 0.04])
def test_walls_of_tabulated_materials_against_ht(area: float) -> None:
    """Materials of ht's table of building materials, 3, 1.5 and 2 mm, and a film."""
    names = [
        "Metals, aluminium alloys",
        "Plastics, polyamide 6.6 with 25% glass fibre",
        "Metals, steel",
    ]
    conductivities = [building_materials[name][1] for name in names]
    millimetres = [3.0, 1.5, 2.0]
    walls = [
        ht.conduction.k_to_R(k=conductivity, t=thickness / 1000.0, A=area)
        for thickness, conductivity in zip(millimetres, conductivities, strict=True)
    ]
    layers = layer_resistance_m2k_w(millimetres, conductivities)
    assert resistance_k_w(layers, area) == pytest.approx(walls, rel=1e-12)
    path = series_resistance_m2k_w(
        millimetres,
        conductivities,
        contact_m2k_w=[2e-4, float(film_resistance_m2k_w(800.0))],
    )
    whole = sum(walls) + (2e-4 + 1.0 / 800.0) / area
    assert float(resistance_k_w(path, area)) == pytest.approx(whole, rel=1e-12)


def test_a_path_against_scikit_fem() -> None:
    """Conduction through three layers, cold on one side, heated on the other."""
    ends = np.array([0.0, 3.0, 4.0, 7.0]) / 1000.0
    conductivities = np.array([160.0, 3.0, 0.35])
    mesh = skfem.MeshLine(np.unique(np.concatenate([ends, np.linspace(0, 7e-3, 15)])))
    basis = skfem.Basis(mesh, skfem.ElementLineP1())
    middles = mesh.p[0][mesh.t].mean(axis=0)
    layer = np.searchsorted(ends, middles) - 1

    def conduct(u: object, v: object, w: dict[str, np.ndarray]) -> object:
        return w["k"] * dot(grad(u), grad(v))

    conductance = skfem.BilinearForm(conduct).assemble(
        basis, k=conductivities[layer][:, np.newaxis]
    )
    hot = int(np.argmax(mesh.p[0]))
    heat = np.zeros(basis.N)
    heat[hot] = FLUX
    cold = np.array([int(np.argmin(mesh.p[0]))])
    solved = skfem.solve(*skfem.condense(conductance, heat, D=cold))
    path = series_resistance_m2k_w([3.0, 1.0, 3.0], conductivities)
    rise = temperature_rise_k(FLUX, path)
    assert float(rise) == pytest.approx(float(solved[hot]), rel=1e-10)


# Thickness in mm; rise in K at half pitches of 30, 60 and 100 mm, as printed.
SPREADERS = [(1.0, [4.7, 19.0, 53.0]), (2.0, [2.4, 9.5, 26.0]), (3.0, [1.6, 6.3, 17.5])]


@pytest.mark.parametrize(("thickness", "printed"), SPREADERS)
def test_spreading_plates_of_a_table(thickness: float, printed: list[float]) -> None:
    """Derived once by hand: 190 W/(m K), 2 kW/m2."""
    plate: dict[str, ArrayLike] = {
        "half_pitch_mm": [30.0, 60.0, 100.0],
        "conductivity_w_mk": 190.0,
    }
    rises = spreading_rise_k(FLUX, thickness_mm=thickness, **plate)
    assert rises == pytest.approx(printed, rel=0.021)
    least = least_plate_mm(FLUX, allowed_rise_k=printed, **plate)
    assert least == pytest.approx([thickness] * 3, rel=0.021)


def test_a_spreading_plate_against_scikit_fem() -> None:
    """Heated evenly, cold at the line, insulated midway: rise and thickness."""
    half_pitch, thickness, conductivity = 0.06, 0.002, 190.0
    mesh = skfem.MeshLine(np.linspace(0.0, half_pitch, 9))
    basis = skfem.Basis(mesh, skfem.ElementLineP2())
    conductance = skfem.BilinearForm(
        lambda u, v, _: conductivity * thickness * dot(grad(u), grad(v))
    ).assemble(basis)
    heat = skfem.LinearForm(lambda v, _: FLUX * v).assemble(basis)
    cold = basis.get_dofs(lambda x: x[0] == 0.0)
    solved = skfem.solve(*skfem.condense(conductance, heat, D=cold))
    plate = {"half_pitch_mm": 60.0, "conductivity_w_mk": conductivity}
    rise = spreading_rise_k(FLUX, thickness_mm=2.0, **plate)
    assert float(rise) == pytest.approx(float(solved.max()), rel=1e-10)
    least = least_plate_mm(FLUX, allowed_rise_k=float(solved.max()), **plate)
    assert float(least) == pytest.approx(2.0, rel=1e-10)


def test_masses_of_plates_and_fillers() -> None:
    """By hand: aluminium 2.7 kg per m2 and mm; 1.6 m2 of 1.5 mm filler are 7.0 kg."""
    aluminium = plate_mass_kg(1.0, area_m2=1.0, density_kg_m3=2700.0)
    assert float(aluminium) == pytest.approx(2.7, rel=1e-12)
    filler = plate_mass_kg(1.5, area_m2=1.6, density_kg_m3=2900.0)
    assert float(filler) == pytest.approx(7.0, abs=0.05)


def test_rise_without_cooling_in_the_units_of_pint() -> None:
    """5 % loss of 60 kWh in half an hour, in 300 kg of cells and 20 kg of aluminium."""
    heat = 0.05 * UNITS.Quantity(60.0, "kWh") / UNITS.Quantity(0.5, "hour")
    watts = heat.to("W").magnitude
    assert watts == pytest.approx(6000.0, rel=1e-12)
    aluminium = building_materials["Metals, aluminium alloys"][2]
    held = UNITS.Quantity(300.0 * 1.0 + 20.0 * aluminium / 1000.0, "kJ/K")
    rise = (heat * UNITS.Quantity(10.0, "minute") / held).to("K").magnitude
    given = adiabatic_rise_k(
        watts, 600.0, mass_kg=[300.0, 20.0], heat_capacity_j_kgk=[1000.0, aluminium]
    )
    assert float(given) == pytest.approx(rise, rel=1e-12)
