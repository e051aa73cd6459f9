"""What beads and seams are made of, from the words of their designation."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from benchpack.model.gaskets import gasket_kind


@dataclass(frozen=True, slots=True)
class LineMaterial:
    """The material of a bead or seam.

    Parameters
    ----------
    name : str
        The material's word.
    density_kg_m3 : float
        Density, foam with its pores, kg/m3.
    fill : float
        Share of width times height that the section fills: a half for an adhesive
        bead, which leaves its nozzle as a triangle.
    source, mark : str
        Where the figures come from, and whether they were confirmed or recalled.
    """

    name: str
    density_kg_m3: float
    fill: float
    source: str
    mark: str


_RECALLED = "density recalled"
_MATERIALS: tuple[tuple[str, str, float], ...] = (
    (r"\bsilicone\b", "silicone", 1320.0),
    (r"\bepoxy\b", "epoxy", 1333.0),
    (r"\b(polyurethane|PUR?)\b", "polyurethane", 1333.0),
    (r"\bbutyl\b", "butyl", 1400.0),
    (r"\bacryl", "acrylic", 1100.0),
    (r"\bpolysulfide\b", "polysulfide", 1450.0),
    (r"\bsteel\b", "steel", 7850.0),
    (r"\balumini?um\b", "aluminium", 2700.0),
)


def _in_words(text: str) -> tuple[str, float] | None:
    for pattern, name, density in _MATERIALS:
        if re.search(pattern, text, re.IGNORECASE):
            return name, density
    return None


@lru_cache(maxsize=4096)
def line_material(family: str, designation_text: str) -> LineMaterial | None:
    """Give what a line joint is made of, None where its words do not say.

    Parameters
    ----------
    family : str
        Name of the joint's family.
    designation_text : str
        The designation, "polyurethane bead 8x3" for instance.

    Examples
    --------
    >>> found = line_material("structural adhesive", "polyurethane bead 8x3")
    >>> (found.name, found.fill) if found else None
    ('polyurethane', 0.5)
    """
    kind = gasket_kind(family, designation_text)
    if family == "gasket":
        if kind is None:
            return None
        return LineMaterial(kind.name, kind.density_kg_m3, 1.0, kind.source, kind.mark)
    found = _in_words(designation_text)
    if found is None:
        return None
    fill = 0.5 if family == "structural adhesive" else 1.0
    return LineMaterial(*found, fill, _RECALLED, "from memory")
