"""The shipped tables of materials, fasteners and joints, read with csv alone."""

from __future__ import annotations

import csv
import itertools
import math
from pathlib import Path

import pytest

DATASETS = Path(__file__).parents[3] / "datasets"
MARKS = {"confirmed", "derived", "from memory"}
STEEL_G_MM3 = 7.85e-3

Row = dict[str, str]


def _read(name: str) -> list[Row]:
    with (DATASETS / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file, strict=True))


MATERIALS = {row["material"]: row for row in _read("materials.csv")}
FASTENERS = {(row["standard"], row["size"]): row for row in _read("fasteners.csv")}
JOINING = _read("joining.csv")


def _mass_g(standard: str, size: str) -> float:
    return float(FASTENERS[standard, size]["mass each [g]"])


@pytest.mark.parametrize(
    "name", ["materials.csv", "demo/materials.csv", "fasteners.csv", "joining.csv"]
)
def test_every_row_has_a_source_and_a_mark(name: str) -> None:
    rows = _read(name)
    assert len(rows) >= 20
    for row in rows:
        assert len(row["source"]) > 8, row
        assert row["mark"] in MARKS, row


def test_names_are_unique() -> None:
    assert len(MATERIALS) == len(_read("materials.csv"))
    assert len(FASTENERS) == len(_read("fasteners.csv"))


def test_the_demo_has_the_shipped_materials() -> None:
    for row in _read("demo/materials.csv"):
        assert row == MATERIALS[row["material"]]


@pytest.mark.parametrize(
    ("material", "at_room", "hot"),
    [
        ("DP600", 2.01, 2.01),
        ("AlSi10MnMg die casting", 0.96, 0.96),
        ("PP-LGF40", 0.92, 1.20),
        ("PA6-GF30 conditioned", 1.13, 1.47),
        ("SMC GF25", 1.35, 1.53),
        ("SMC GF50", 1.21, 1.34),
        ("GMT PP-GM40", 1.01, 1.27),
        ("CF-SMC", 0.72, 0.77),
        ("GF/epoxy quasi-isotropic", 1.08, 1.17),
        ("CF/epoxy quasi-isotropic", 0.64, 0.66),
    ],
)
def test_equal_panel_stiffness_against_aluminium(
    material: str, at_room: float, hot: float
) -> None:
    """Mass ratios of the project's own screening table, trade reference 6.2."""
    aluminium, other = MATERIALS["EN AW-6063-T6 extrusion"], MATERIALS[material]
    ratio = float(other["density [kg/m3]"]) / float(aluminium["density [kg/m3]"])
    stiffness = float(aluminium["modulus [GPa]"]) / float(other["modulus [GPa]"])
    knock_down = float(other["stiffness knock-down"])
    # The table rounds to 0.01.
    assert ratio * stiffness ** (1 / 3) == pytest.approx(at_room, abs=0.006)
    design = ratio * (stiffness / knock_down) ** (1 / 3)
    assert design == pytest.approx(hot, abs=0.006)


def test_metals_keep_their_values_and_polymers_do_not() -> None:
    for row in MATERIALS.values():
        if row["kind"] == "metal":
            assert row["stiffness knock-down"] == row["strength knock-down"] == "1"
        elif row["stiffness knock-down"]:
            assert float(row["stiffness knock-down"]) < 1
            assert float(row["strength knock-down"]) < 0.5


def test_material_figures_are_plausible() -> None:
    for row in MATERIALS.values():
        for name, text in row.items():
            if "[" in name and text:
                assert 0 < float(text) < math.inf, (name, row)
        assert row["price [EUR/kg]"] or row["kind"] == "assembly"
    copper = MATERIALS["copper Cu-ETP"]
    # ht.insulation.building_materials: copper 8900 kg/m3, 380 W/(m K).
    assert float(copper["density [kg/m3]"]) == pytest.approx(8900, rel=0.005)
    assert float(copper["conductivity [W/(m K)]"]) == 380


@pytest.mark.parametrize(
    ("standard", "size", "mass_g", "rel"),
    [
        # Published chart of DIN 912 masses.
        ("ISO 4762", "M5x25", 4.8, 0),
        ("ISO 4762", "M6x25", 7.6, 0),
        ("ISO 4762", "M8x25", 15.0, 0),
        ("ISO 4762", "M8x40", 20.9, 0),
        # CAD volumes by an independent package, head height at its maximum.
        ("ISO 4017", "M8x25", 14.478, 0.06),
        ("ISO 4017", "M6x25", 7.386, 0.06),
    ],
)
def test_fastener_masses(standard: str, size: str, mass_g: float, rel: float) -> None:
    assert _mass_g(standard, size) == pytest.approx(mass_g, rel=rel, abs=1e-9)


def test_fasteners_grow_with_length() -> None:
    for standard in ("ISO 4762", "ISO 4017", "EN 1665", "ISO 7380-1"):
        for diameter in ("5", "6", "8", "10", "12"):
            masses = [
                (float(row["length [mm]"]), float(row["mass each [g]"]))
                for (name, _), row in FASTENERS.items()
                if name == standard and row["diameter [mm]"] == diameter
            ]
            assert masses == sorted(masses)
            for (short, light), (long, heavy) in itertools.pairwise(masses):
                per_mm = (heavy - light) / (long - short)
                solid = math.pi / 4 * float(diameter) ** 2 * STEEL_G_MM3
                # Longer screws have a plain shank, so a step can exceed the solid bar.
                assert 0.5 * solid < per_mm < 1.25 * solid, (standard, diameter)


def test_stress_areas_follow_from_the_thread() -> None:
    """ISO 898-1: As = pi/4 ((d2 + d3)/2)^2, rounded in the table."""
    for row in FASTENERS.values():
        if row["stress area [mm2]"]:
            d, p = float(row["diameter [mm]"]), float(row["pitch [mm]"])
            area = math.pi / 4 * (d - 0.9381943 * p) ** 2
            assert float(row["stress area [mm2]"]) == pytest.approx(area, rel=0.004)


def test_demo_screws_weigh_what_the_table_says() -> None:
    """Weighed batches and nominal geometry differ by the table's own range."""
    checked = 0
    for row in _read("demo/joints.csv"):
        standard, _, size = row["designation"].rpartition(" ")
        fastener = FASTENERS.get((standard, size))
        if fastener is not None:
            share = float(fastener["mass +- [%]"]) / 100
            expected = pytest.approx(float(fastener["mass each [g]"]), rel=share)
            assert float(row["mass each [g]"]) == expected, row["joint"]
            checked += 1
    assert checked >= 30


def test_joining_covers_the_families_of_the_demo() -> None:
    families = {row["family"] for row in JOINING}
    assert len(families) == len(JOINING) == 22
    assert families == {row["family"] for row in _read("demo/joints.csv")}


def test_joining_ranges_are_ordered() -> None:
    for row in JOINING:
        assert row["counted by"] in {"piece", "metre"}
        for quantity, unit in (("time", "s"), ("cost", "EUR")):
            low, likely, high = (
                float(row[f"{quantity} {level} [{unit}]"])
                for level in ("low", "likely", "high")
            )
            assert 0 <= low <= likely <= high < 1000
