"""Hypothesis strategies for joining: designations, and the rows of the tables."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy

from benchpack.model.designation import Designation, read_designation
from benchpack.model.families import (
    FAMILIES,
    GASKET_KINDS,
    GasketKind,
    JointFamily,
    LineMaterial,
    Range,
    line_material,
)
from benchpack.model.fastener_masses import TABLE_MASSES, TableMass
from benchpack.model.fastener_sizes import (
    COARSE_PITCHES_MM,
    HEADS,
    PROPERTY_CLASSES,
    HeadSize,
    PropertyClass,
)
from benchpack.model.tightening_words import (
    FRICTION_CLASSES,
    METHODS,
    FrictionClass,
    TighteningMethod,
)

SIZES = st.integers(1, 9999).map(lambda hundredths: hundredths / 100)
"""Dimensions in mm as people write them."""

STANDARDS = ("ISO 4762", "ISO 4017", "EN 1665", "DIN 912", "ISO 7380-1", "ISO 4014")
CLASSES = ("", "8.8", "10.9", "12.9", "4.6", "A2-70", "A4-80")


@st.composite
def screws(draw: st.DrawFn) -> dict[str, Any]:
    """What a screw's designation has to say: standard, thread, length, class."""
    diameter = draw(st.sampled_from(sorted(COARSE_PITCHES_MM)))
    coarse = COARSE_PITCHES_MM[diameter]
    pitch = draw(st.just(coarse) | st.sampled_from((0.75 * coarse, 0.5 * coarse)))
    return {
        "standard": draw(st.sampled_from(("", *STANDARDS))),
        "diameter_mm": diameter,
        "pitch_mm": round(pitch, 3),
        "length_mm": draw(st.integers(4, 200).map(float)),
        "property_class": draw(st.sampled_from(CLASSES)),
    }


def designations() -> SearchStrategy[Designation]:
    """Designations of all sorts, understood and not."""
    pairs = st.tuples(SIZES, SIZES).map(lambda pair: f"{pair[0]}x{pair[1]}")
    texts = st.sampled_from(("M6x20", "a3", "16 H7/r6", "silicone bead 5 mm")) | pairs
    families = st.sampled_from(("", *(family.name for family in FAMILIES)))
    return st.builds(
        lambda text, family: read_designation(text, family=family), texts, families
    )


def _materials() -> SearchStrategy[LineMaterial]:
    lines = (
        line_material("structural adhesive", "epoxy bead 8x3"),
        line_material("gasket", "EPDM profile 8x6"),
    )
    return st.sampled_from([line for line in lines if line is not None])


JOINING_STRATEGIES: dict[type, SearchStrategy[Any]] = {
    Designation: designations(),
    FrictionClass: st.sampled_from(FRICTION_CLASSES),
    GasketKind: st.sampled_from(GASKET_KINDS),
    HeadSize: st.sampled_from(list(HEADS.values())),
    JointFamily: st.sampled_from(FAMILIES),
    LineMaterial: _materials(),
    PropertyClass: st.sampled_from(list(PROPERTY_CLASSES.values())),
    Range: st.lists(st.floats(0, 1e6), min_size=3, max_size=3).map(
        lambda ends: Range(*sorted(ends))
    ),
    TableMass: st.sampled_from(list(TABLE_MASSES.values())),
    TighteningMethod: st.sampled_from(METHODS),
}
"""A strategy for each record of joining."""
