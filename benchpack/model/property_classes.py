"""Strength classes of screws and nuts."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True, slots=True)
class PropertyClass:
    """A strength class; stresses are the least that the standard asks for, MPa.

    Parameters
    ----------
    name : str
        The class as it is written, ``8.8`` for instance.
    tensile_mpa : float
        Tensile strength; of a nut, that of the strongest screw it goes with.
    yield_mpa : float
        Yield strength or 0.2 % proof strength, NaN for a nut.
    proof_mpa : float
        Stress under proof load.
    over_16 : tuple of float or None
        Tensile, yield and proof where they differ above 16 mm diameter.
    greatest_diameter_mm : float
        Above it the class is not defined.
    source, mark : str
        Where the figures come from, and whether they were confirmed or recalled.
    """

    name: str
    tensile_mpa: float
    yield_mpa: float
    proof_mpa: float
    over_16: tuple[float, float, float] | None = None
    greatest_diameter_mm: float = math.inf
    source: str = ""
    mark: str = "confirmed"

    @property
    def is_nut(self) -> bool:
        """True for the class of a nut."""
        return math.isnan(self.yield_mpa)

    def stresses_mpa(self, diameter_mm: float) -> tuple[float, float, float]:
        """Give tensile, yield and proof stress at a diameter, MPa.

        Parameters
        ----------
        diameter_mm : float
            Nominal diameter, mm.

        Returns
        -------
        tuple of float
            NaN where the class is not defined at that diameter.
        """
        if diameter_mm > self.greatest_diameter_mm:
            return math.nan, math.nan, math.nan
        if self.over_16 is not None and diameter_mm > 16:
            return self.over_16
        return self.tensile_mpa, self.yield_mpa, self.proof_mpa


_SCREWS = "ISO 898-1, tables of mechanical properties as reprinted in a handbook"
_NUTS = "ISO 898-2: carries the screw of its class up to its strength; recalled"
_STAINLESS = (
    "ISO 3506-1, recalled; it states no proof load, so the 0.2 % stress stands in"
)


def _classes() -> Mapping[str, PropertyClass]:
    screws = (
        PropertyClass("4.6", 400, 240, 225, source=_SCREWS),
        PropertyClass("4.8", 420, 340, 310, source=_SCREWS),
        PropertyClass("5.6", 500, 300, 280, source=_SCREWS),
        PropertyClass("5.8", 520, 420, 380, source=_SCREWS),
        PropertyClass("6.8", 600, 480, 440, source=_SCREWS),
        PropertyClass("8.8", 800, 640, 580, (830, 660, 600), source=_SCREWS),
        PropertyClass("9.8", 900, 720, 650, None, 16, source=_SCREWS),
        PropertyClass("10.9", 1040, 940, 830, source=_SCREWS),
        PropertyClass("12.9", 1220, 1100, 970, source=_SCREWS),
    )
    nuts = tuple(
        PropertyClass(name, mpa, math.nan, mpa, source=_NUTS, mark="from memory")
        for name, mpa in (
            ("5", 520),
            ("6", 600),
            ("8", 800),
            ("10", 1040),
            ("12", 1220),
        )
    )
    stainless = tuple(
        PropertyClass(
            f"{steel}-{strength}",
            tensile,
            stress,
            stress,
            source=_STAINLESS,
            mark="from memory",
        )
        for steel in ("A2", "A4")
        for strength, tensile, stress in (
            ("50", 500, 210),
            ("70", 700, 450),
            ("80", 800, 600),
        )
    )
    return MappingProxyType({c.name: c for c in (*screws, *nuts, *stainless)})


PROPERTY_CLASSES: Mapping[str, PropertyClass] = _classes()
"""Classes by name: screws of ISO 898-1, nuts of ISO 898-2, stainless of ISO 3506-1."""

_WORDS = re.compile(r"^(property|strength|class|grade|cl\.?|[\s:])+", re.IGNORECASE)
_STAINLESS_TEXT = re.compile(r"(A[24])[\s\-–_/]*(50|70|80)", re.IGNORECASE)


def property_class(text: str) -> PropertyClass | None:
    """Give the class that a text names, None where it names none that is known.

    Parameters
    ----------
    text : str
        ``8.8``, ``8,8``, ``class 10.9``, ``A2-70``; a nut's class is ``8``.

    Examples
    --------
    >>> found = property_class("class 8,8")
    >>> found.proof_mpa if found else None
    580
    """
    bare = _WORDS.sub("", text).strip().replace(",", ".")
    stainless = _STAINLESS_TEXT.fullmatch(bare)
    if stainless is not None:
        bare = f"{stainless[1].upper()}-{stainless[2]}"
    return PROPERTY_CLASSES.get(bare)
