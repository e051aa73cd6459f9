"""What is known of a family of joints."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from benchpack.model.ranges import Range

__all__ = ["Counted", "FamilySort", "JointFamily", "Range"]


class Counted(StrEnum):
    """What is counted of a joint."""

    PIECE = "piece"
    LINE = "metre"


class FamilySort(StrEnum):
    """What a family of joints is made of."""

    SCREW = "screw"
    NUT = "nut"
    INSERT = "insert"
    RIVET = "rivet"
    FORMED = "formed"
    WELD = "weld"
    BEAD = "bead"
    FIT = "fit"


@dataclass(frozen=True, slots=True)
class JointFamily:
    """A family of joints with what is usual of it.

    Parameters
    ----------
    name : str
        The family's word.
    counted : Counted
        Pieces, or metres of a line; time, cost and mass are for one of them.
    sort : FamilySort
        What it is made of.
    threaded : bool
        True where it has a thread.
    one_sided : bool
        True where the tool reaches it from one side.
    density_kg_m3 : float or None
        Density of what it is made of, None where nothing is added or it varies.
    time_s : Range
        Seconds for one piece or one metre.
    cost : Range
        EUR for one piece or one metre, without labour.
    mass_g : float or None
        Usual mass of one piece or one metre, None where it goes by the size.
    source, mark : str
        Where the figures come from, and whether they were confirmed or recalled.
    note : str
        What has to be known of it.
    synonyms : tuple of str
        Further names.
    """

    name: str
    counted: Counted
    sort: FamilySort
    threaded: bool
    one_sided: bool
    density_kg_m3: float | None
    time_s: Range
    cost: Range
    mass_g: float | None
    source: str
    mark: str
    note: str = ""
    synonyms: tuple[str, ...] = ()
