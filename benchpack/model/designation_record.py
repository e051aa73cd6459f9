"""What a designation says, once it is read."""

from __future__ import annotations

from dataclasses import dataclass

from benchpack.model.designation_text import number_text
from benchpack.model.designation_words import standard_family
from benchpack.model.fastener_sizes import COARSE_PITCHES_MM


@dataclass(frozen=True, slots=True)
class Designation:
    """What a designation says; empty text and None mean that it does not say.

    Parameters
    ----------
    text : str
        The designation as it was written.
    standard : str
        Product standard, ``ISO 4762`` for instance.
    family : str
        Name of the family: the one given, else the one that the text speaks of.
    size : str
        The size in one spelling: ``M6x20``, ``4.8x12``, ``8x3``, ``a3``, ``5 mm``.
    diameter_mm : float or None
        Nominal diameter of a thread, rivet, round bead, spot or fit.
    pitch_mm : float or None
        Pitch of the thread, the coarse one where none is named.
    length_mm : float or None
        Nominal length of a screw or rivet, or of one seam.
    width_mm, height_mm : float or None
        Width and height of a bead or profile; the height alone is the thickness of a
        layer or of the sheet that a seam goes through.
    throat_mm : float or None
        Throat of a fillet weld.
    property_class : str
        Strength class as `property_class` takes it.
    understood : bool
        True where the size, or the kind of a joint that needs none, was found.
    """

    text: str
    standard: str = ""
    family: str = ""
    size: str = ""
    diameter_mm: float | None = None
    pitch_mm: float | None = None
    length_mm: float | None = None
    width_mm: float | None = None
    height_mm: float | None = None
    throat_mm: float | None = None
    property_class: str = ""
    understood: bool = False

    @property
    def thread(self) -> str:
        """The thread, ``M6``, empty where there is none."""
        if self.diameter_mm is None or not self.size.startswith("M"):
            return ""
        return f"M{number_text(self.diameter_mm)}"

    @property
    def is_fine(self) -> bool:
        """True where the thread has another pitch than the coarse one."""
        if not self.thread or self.pitch_mm is None or self.diameter_mm is None:
            return False
        return self.pitch_mm != COARSE_PITCHES_MM.get(self.diameter_mm)

    @property
    def standard_family(self) -> str:
        """The family that the standard is about, which may not be `family`."""
        return standard_family(self.standard)
