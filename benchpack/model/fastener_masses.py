"""Masses of fasteners that a table knows and an outline does not give as well.

Rows of ``datasets/fasteners.csv``, with the source and the mark of each; its other
masses are those that the program works out from the head and the thread.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True, slots=True)
class TableMass:
    """The mass of one fastener.

    Parameters
    ----------
    mass_g : float
        Mass of one piece, g.
    tolerance : float
        Half width of its range, as a share of the mass.
    source, mark : str
        Where it comes from, and whether it was confirmed, derived or recalled.
    """

    mass_g: float
    tolerance: float
    source: str
    mark: str


_AREAS = "; stress areas as in the load table of ISO 898-1 in a fastener handbook"
_JOINING = "mass: geometry in public joining data, to be replaced by weighing"


def _rows(
    name: str, sizes: str, *, tolerance: float, source: str, mark: str
) -> dict[tuple[str, str], TableMass]:
    pairs = (word.split("=") for word in sizes.split())
    return {
        (name, size): TableMass(float(mass_g), tolerance, source, mark)
        for size, mass_g in pairs
    }


TABLE_MASSES: Mapping[tuple[str, str], TableMass] = MappingProxyType(
    {
        **_rows(
            "ISO 4762",
            "M5x12=3 M5x16=3.5 M5x20=4 M5x25=4.8 M5x30=5.6 M5x40=7.1 M5x50=8.6 "
            "M6x12=5.1 M6x16=5.8 M6x20=6.5 M6x25=7.6 M6x30=8.3 M6x40=11 M6x50=13.2 "
            "M8x12=10.9 M8x16=12.1 M8x20=13.4 M8x25=15 M8x30=16.9 M8x40=20.9 "
            "M8x50=24.9 M10x16=20.9 M10x20=22.9 M10x25=25.4 M10x30=27.9 M10x40=32.9 "
            "M10x50=39.3 M12x20=32.1 M12x25=35.7 M12x30=39.3 M12x40=46.5 M12x50=54.5",
            tolerance=0.07,
            source="mass: weight chart DIN 912/ISO 4762 of a fastener handbook, kg per "
            "1000; head height and socket: parameter table of the package "
            "bd-warehouse; diameter of the plain head recalled" + _AREAS,
            mark="confirmed",
        ),
        **_rows(
            "DIN 985",
            "M5=1.4 M6=2.4 M8=5.1 M10=10.6 M12=17.2",
            tolerance=0.07,
            source="mass: DIN 985 table of a fastener handbook, kg per 1000" + _AREAS,
            mark="confirmed",
        ),
        **_rows(
            "flow-drill screw",
            "M5x20=5.1 M5x25=5.7 M6x25=9.1",
            tolerance=0.15,
            source=_JOINING,
            mark="derived",
        ),
        **_rows(
            "self-piercing rivet",
            "3.35x5=0.36 5.3x5=0.8 5.3x6.5=1",
            tolerance=0.15,
            source=_JOINING,
            mark="derived",
        ),
        **_rows(
            "blind rivet",
            "4.8x12=2.5",
            tolerance=0.25,
            source="2 to 3 g installed, steel, recalled",
            mark="from memory",
        ),
        **_rows(
            "blind rivet nut",
            "M6=4",
            tolerance=0.25,
            source="3 to 5 g, recalled",
            mark="from memory",
        ),
        **_rows(
            "blind rivet nut",
            "M8=7.5",
            tolerance=0.25,
            source="6 to 9 g, recalled",
            mark="from memory",
        ),
    }
)
"""Mass by standard, or by family where there is no standard, and size."""

_SAME_MASS = {"DIN 912": "ISO 4762"}
_BLIND_RIVET_NUT = "blind rivet nut"


def table_mass(
    standard: str, family: str, size: str, *, text: str = ""
) -> TableMass | None:
    """Give the mass that the table holds for a size, None where it holds none.

    Parameters
    ----------
    standard, family, size : str
        As a `Designation` has them.
    text : str
        The designation itself, which tells a blind rivet nut from other inserts.

    Examples
    --------
    >>> found = table_mass("DIN 912", "socket screw", "M6x20")
    >>> found.mass_g if found else None
    6.5
    """
    by_standard = TABLE_MASSES.get((_SAME_MASS.get(standard, standard), size))
    if by_standard is not None:
        return by_standard
    if family == "threaded insert":
        is_rivet_nut = _BLIND_RIVET_NUT in text.casefold()
        return TABLE_MASSES.get((_BLIND_RIVET_NUT, size)) if is_rivet_nut else None
    return TABLE_MASSES.get((family, size))
