"""Kinds of gasket, and the pressure each wants between its flanges."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache


@dataclass(frozen=True, slots=True)
class GasketKind:
    """A kind of gasket.

    Parameters
    ----------
    name : str
        The kind's word.
    pressure_low_mpa, pressure_high_mpa : float
        Gasket pressure midway between two screws and at a screw, MPa.
    allowed_loss_mm : float
        Loss of compression between two screws that it stands, mm.
    density_kg_m3 : float
        Density as it lies in the joint, foam with its pores, kg/m3.
    metal_flanges_only : bool
        True where it cures between metals only.
    source, mark : str
        Where the figures come from, and whether they were confirmed or recalled.
    """

    name: str
    pressure_low_mpa: float
    pressure_high_mpa: float
    allowed_loss_mm: float
    density_kg_m3: float
    metal_flanges_only: bool
    source: str
    mark: str


ANAEROBIC = GasketKind(
    "anaerobic between metal flanges",
    pressure_low_mpa=0.5,
    pressure_high_mpa=1.0,
    allowed_loss_mm=0.1,
    density_kg_m3=1100.0,
    metal_flanges_only=True,
    source="cures without air between metals, in gaps under 0.3 mm; all figures "
    "recalled",
    mark="from memory",
)
CURED_IN_PLACE = GasketKind(
    "cured in place",
    pressure_low_mpa=0.05,
    pressure_high_mpa=0.15,
    allowed_loss_mm=0.3,
    density_kg_m3=400.0,
    metal_flanges_only=False,
    source="foamed polyurethane bead: 25 % compression at about 0.076 MPa in a "
    "supplier's table; the range about it, the allowed loss and the density recalled",
    mark="from memory",
)
FORMED_IN_PLACE = GasketKind(
    "formed in place",
    pressure_low_mpa=0.05,
    pressure_high_mpa=0.1,
    allowed_loss_mm=0.2,
    density_kg_m3=1320.0,
    metal_flanges_only=False,
    source="silicone assembled wet, bonds to both flanges: opening destroys it; screw "
    "pitch of 60 to 120 mm is a rule of thumb; all figures recalled",
    mark="from memory",
)
FOAM = GasketKind(
    "foam",
    pressure_low_mpa=0.03,
    pressure_high_mpa=0.08,
    allowed_loss_mm=0.4,
    density_kg_m3=250.0,
    metal_flanges_only=False,
    source="silicone foam: 25 % compression at about 0.027 MPa in a supplier's table; "
    "the high end, the allowed loss and the density recalled",
    mark="from memory",
)
RUBBER_PROFILE = GasketKind(
    "rubber profile",
    pressure_low_mpa=0.1,
    pressure_high_mpa=0.3,
    allowed_loss_mm=0.3,
    density_kg_m3=1200.0,
    metal_flanges_only=False,
    source="EPDM: 20 to 40 % compression, 1 to 5 N/mm; all figures recalled",
    mark="from memory",
)

GASKET_KINDS: tuple[GasketKind, ...] = (
    ANAEROBIC,
    CURED_IN_PLACE,
    FORMED_IN_PLACE,
    FOAM,
    RUBBER_PROFILE,
)
"""All kinds; see ``gasket_kind``."""

_WORDS: tuple[tuple[str, GasketKind], ...] = (
    (r"\banaerob", ANAEROBIC),
    (r"\bcured?[\s-]*in[\s-]*place|\bCIPG?\b", CURED_IN_PLACE),
    (r"\bfoam(ed)?[\s-]*in[\s-]*place|\bFIPFG\b", CURED_IN_PLACE),
    (r"\bformed?[\s-]*in[\s-]*place|\bFIPG\b|\bRTV\b|\bwet\b", FORMED_IN_PLACE),
    (r"\bfoam", FOAM),
    (r"\b(EPDM|rubber|profile|NBR|HNBR|FKM|solid|o[\s-]?ring|cord)\b", RUBBER_PROFILE),
)


@lru_cache(maxsize=4096)
def gasket_kind(family: str, designation_text: str) -> GasketKind | None:
    """Give the kind of gasket that a joint is, None where it is none or none is said.

    Parameters
    ----------
    family : str
        Name of the joint's family.
    designation_text : str
        The designation, "silicone foam 12x6" for instance.

    Examples
    --------
    >>> found = gasket_kind("gasket", "silicone foam 12x6")
    >>> found.name if found else ""
    'foam'
    """
    if family not in ("gasket", "sealant bead"):
        return None
    for words, kind in _WORDS:
        if re.search(words, designation_text, re.IGNORECASE):
            return kind
    return FORMED_IN_PLACE if family == "sealant bead" else None
