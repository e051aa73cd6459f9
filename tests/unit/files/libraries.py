"""A small library for the tests of files."""

from __future__ import annotations

from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.material import Material, Source
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.part import Part
from benchpack.model.study import Study


def small_library() -> Library:
    """Give two packs with a part and a joint, and one of everything else."""
    packs = (Pack("Avocet 81", 81, 498.1), Pack("Dunlin 74", 74.4, 447.2))
    return Library(
        packs=PackTable.from_packs(packs),
        parts={"Avocet 81": (Part("Avocet 81", "tray", mass_each_kg=40.0),)},
        joints={"Dunlin 74": (Joint("Dunlin 74", "lid screws", count=84),)},
        materials=(Material("steel", density_kg_m3=7850),),
        sources=(Source("scale"),),
        studies=(Study(subject="Avocet 81", reference="Dunlin 74"),),
        title="Small",
        note="Invented.",
    )
