"""The drive of a screw or nut: what the driver on the line needs as a bit."""

from __future__ import annotations

from benchpack.model.designation import Designation
from benchpack.model.fastener_sizes import HeadSize, head_size

USUAL_STANDARDS = {
    "hex screw": "ISO 4017",
    "flange screw": "EN 1665",
    "socket screw": "ISO 4762",
    "button head screw": "ISO 7380-1",
    "nut": "ISO 4032",
}
"""What a fastener without a standard is taken to be (common practice, no source)."""


def head_of(read: Designation) -> tuple[HeadSize | None, bool]:
    """Give the head of a screw or nut, and whether its standard was only assumed.

    Parameters
    ----------
    read : Designation
        What its designation says.
    """
    found = head_size(read.standard, read.thread) if read.standard else None
    if found is not None or read.standard:
        return found, False
    usual = USUAL_STANDARDS.get(read.family, "")
    return head_size(usual, read.thread), True


def drive_of(read: Designation) -> str:
    """Give the drive, ``hex 10`` or ``socket 5``; empty where it is not known.

    Parameters
    ----------
    read : Designation
        What the designation of a joint says.
    """
    head, _ = head_of(read)
    if head is None:
        return ""
    if head.drive_size_mm is not None:
        return f"socket {head.drive_size_mm:g}"
    if head.across_flats_mm is not None:
        return f"hex {head.across_flats_mm:g}"
    return ""
