"""What sort of thing a joint is, from its family and designation alone."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from benchpack.model.designation import Designation
from benchpack.model.families import Counted, FamilySort, JointFamily
from benchpack.results.joint_drives import drive_of
from benchpack.results.joint_mass import reading_of


@dataclass(frozen=True, slots=True)
class Nature:
    """What many joints have in common.

    Parameters
    ----------
    family : JointFamily or None
        Their family, None where no text names one.
    read : Designation
        What their designation says.
    drive, tool : str
        Their drive, and what the line needs for them.
    is_line, is_fastener, is_bead, is_seal, is_clamp : bool
        Seams and beads; bought pieces; beads; gaskets and sealant; screws, studs and
        nuts.
    """

    family: JointFamily | None
    read: Designation
    drive: str = ""
    tool: str = ""
    is_line: bool = False
    is_fastener: bool = False
    is_bead: bool = False
    is_seal: bool = False
    is_clamp: bool = False


@lru_cache(maxsize=16_384)
def nature_of(family_text: str, text: str) -> Nature:
    """Say what sort of thing a joint is.

    Parameters
    ----------
    family_text, text : str
        Family and designation as they were entered.
    """
    family, read = reading_of(family_text, text)
    drive = drive_of(read)
    if family is None:
        return Nature(None, read, drive, drive)
    is_fastener = family.counted is Counted.PIECE and family.mass_g is None
    return Nature(
        family,
        read,
        drive,
        drive or _tool(family, read, is_fastener=is_fastener),
        is_line=family.counted is Counted.LINE,
        is_fastener=is_fastener,
        is_bead=family.sort is FamilySort.BEAD,
        is_seal=family.name in ("gasket", "sealant bead"),
        is_clamp=family.sort in (FamilySort.SCREW, FamilySort.NUT),
    )


def _tool(family: JointFamily, read: Designation, *, is_fastener: bool) -> str:
    """Give what sets a joint without a drive; clips and snaps go in by hand."""
    if family.sort is FamilySort.FIT:
        return ""
    if not is_fastener:
        return family.name
    of_size = read.thread
    if not of_size and read.diameter_mm is not None:
        of_size = f"{read.diameter_mm:g}"
    return f"{family.name} {of_size}".strip()
