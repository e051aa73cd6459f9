"""Reading the designation of a joint: standard, size, strength class.

What is not understood stays as text; nothing here ever raises.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from typing import Any

from benchpack.model.designation_record import Designation
from benchpack.model.designation_text import (
    class_in,
    number_text,
    plain_text,
    standard_in,
    without_tolerance,
)
from benchpack.model.designation_words import family_in_words, standard_family
from benchpack.model.families import Counted, FamilySort, JointFamily, family_of
from benchpack.model.fastener_sizes import COARSE_PITCHES_MM

__all__ = ["Designation", "read_designation"]

_GREATEST_THREAD_MM = 100.0
_SEAM_WORDS = re.compile(r"\b(seam|lap|butt|overlap)\b", re.IGNORECASE)
_FLAT_WORDS = re.compile(r"\b(foam|profile|strip|tape)\b", re.IGNORECASE)
_NUMBER = r"([0-9]{1,4}(?:\.[0-9]{1,3})?)"
_END = (
    r"(?:\s?mm\b)?(?![\w.])(?!\s?(?:(?:cm|dm|m|inch(?:es)?|in|ft|\u03bcm|um|N|kN|Nm|g"
    r"|kg|s|min|V|A|Shore)\b|[\"\u2033'\u2032\u00b0%]))"
)
_THREAD = re.compile(
    rf"(?<![\w./])(?:M\s?|m){_NUMBER}(?:x{_NUMBER})?(?:x{_NUMBER})?{_END}"
)
_FIT = re.compile(
    rf"(?<![\w.]){_NUMBER}(?:\s?mm)?\s?([A-Z]{{1,2}}[0-9]{{1,2}})\s?/\s?"
    r"([a-z]{1,2}[0-9]{1,2})(?!\w)"
)
_THROAT = re.compile(rf"(?<![\w.])([az])(\s?=\s?|\s)?{_NUMBER}(?!-[0-9]){_END}")
_PAIR = re.compile(rf"(?<![\w./]){_NUMBER}x{_NUMBER}(?:x{_NUMBER})?{_END}")
_SINGLE = re.compile(rf"(?<![\w./-]){_NUMBER}{_END}(?!\s?/)")


@lru_cache(maxsize=16_384)
def read_designation(text: str, *, family: str = "") -> Designation:
    """Read a designation.

    Parameters
    ----------
    text : str
        What was written down: standard, size and class in the usual forms, or words.
    family : str
        Family of the joint where it is known; it decides what two bare numbers mean.

    Returns
    -------
    Designation
        Never raises; what is not understood is said by ``understood``.

    Examples
    --------
    >>> found = read_designation("ISO 4762 M6 x 20 - 8,8")
    >>> found.family, found.size, found.property_class
    ('socket screw', 'M6x20', '8.8')
    >>> read_designation("EPDM profile 8x6").width_mm
    8.0
    """
    plain = plain_text(text)
    given = family_of(family)
    if plain is None:
        return Designation(text, family=given.name if given else "")
    standard, rest = standard_in(plain)
    known = given or family_of(standard_family(standard) or family_in_words(plain))
    start = Designation(text, standard, known.name if known else "")
    for reader in _READERS:
        found = reader(start, rest, known)
        if found is not None:
            return found
    return _in_words(start, rest, known)


def _fit(
    start: Designation, text: str, known: JointFamily | None
) -> Designation | None:
    found = _FIT.search(text)
    if found is None or (known is not None and known.sort is not FamilySort.FIT):
        return None
    size = f"{number_text(float(found[1]))} {found[2]}/{found[3]}"
    family = known.name if known is not None else "press fit"
    return _sized(start, size, family=family, diameter_mm=float(found[1]))


def _thread(
    start: Designation, text: str, known: JointFamily | None
) -> Designation | None:
    text = without_tolerance(text)
    threads = list(_THREAD.finditer(text))
    if not threads:
        return None
    found = threads[0]
    is_nut = known is not None and known.sort is FamilySort.NUT
    strength, _ = class_in(text[: found.start()] + text[found.end() :], is_nut=is_nut)
    if len(threads) > 1:
        return replace(start, property_class=strength)
    numbers = [float(number) for number in found.groups() if number is not None]
    return _threaded(start, strength, *numbers)


def _threaded(
    start: Designation, strength: str, diameter: float, *others: float
) -> Designation:
    """Tell pitch and length apart: no screw is as short as its thread is coarse."""
    coarse = COARSE_PITCHES_MM.get(diameter)
    longest_pitch = diameter / 4 if coarse is None else coarse
    pitches = [number for number in others if number <= longest_pitch]
    lengths = [number for number in others if number > longest_pitch]
    meant = 1 <= diameter <= _GREATEST_THREAD_MM and all(others)
    if not meant or len(pitches) > 1 or len(lengths) > 1:
        return replace(start, property_class=strength)
    pitch = pitches[0] if pitches else coarse
    length = lengths[0] if lengths else None
    size = f"M{number_text(diameter)}"
    if pitch is not None and pitch != coarse:
        size += f"x{number_text(pitch)}"
    if length is not None:
        size += f"x{number_text(length)}"
    return replace(
        start,
        size=size,
        diameter_mm=diameter,
        pitch_mm=pitch,
        length_mm=length,
        property_class=strength,
        understood=True,
    )


def _throat(
    start: Designation, text: str, known: JointFamily | None
) -> Designation | None:
    found = _THROAT.search(text)
    is_weld = known is not None and known.sort is FamilySort.WELD
    if found is None or (known is not None and not is_weld):
        return None
    letter, joined, number = found[1], found[2] or "", float(found[3])
    # "a 3 mm seam" is English, unless a weld is spoken of.
    if number == 0 or (joined.isspace() and not is_weld):
        return None
    family = known.name if known is not None else "arc weld"
    throat = number if letter == "a" else number / math.sqrt(2)
    size = f"{letter}{number_text(number)}"
    return _sized(start, size, family=family, throat_mm=throat)


def _pair(
    start: Designation, text: str, known: JointFamily | None
) -> Designation | None:
    pairs = list(_PAIR.finditer(text))
    if not pairs:
        return None
    if len(pairs) > 1:
        return start
    numbers = [float(number) for number in pairs[0].groups() if number is not None]
    if not all(numbers):
        return start
    if known is not None and known.threaded and numbers[0] in COARSE_PITCHES_MM:
        strength, _ = class_in(text, is_nut=known.sort is FamilySort.NUT)
        return _threaded(start, strength, *numbers)
    size = "x".join(map(number_text, numbers))
    if known is not None and known.sort is FamilySort.RIVET and len(numbers) == 2:
        return _sized(start, size, diameter_mm=numbers[0], length_mm=numbers[1])
    if known is not None and known.sort is FamilySort.BEAD:
        length = numbers[2] if len(numbers) > 2 else None
        size = "x".join(map(number_text, numbers[:2]))
        return _sized(
            start, size, width_mm=numbers[0], height_mm=numbers[1], length_mm=length
        )
    return replace(start, size=size)


def _single(
    start: Designation, text: str, known: JointFamily | None
) -> Designation | None:
    strength, rest = class_in(text, is_nut=False)
    if known is None or known.sort is not FamilySort.SCREW:
        strength, rest = "", text
    start = replace(start, property_class=strength)
    found = [float(match[1]) for match in _SINGLE.finditer(rest)]
    if not found:
        return start if strength else None
    name = _measured(known, text)
    if len(found) > 1 or not found[0] or not name:
        return start
    values: dict[str, Any] = {
        "size": f"{number_text(found[0])} mm",
        name: found[0],
    }
    return replace(start, **values, understood=True)


def _measured(known: JointFamily | None, text: str) -> str:
    """Give the attribute that one bare number fills, empty where none."""
    if known is None:
        return "height_mm" if _SEAM_WORDS.search(text) else ""
    if known.sort is FamilySort.BEAD:
        if "layer" in text.casefold():
            return "height_mm"
        return "" if _FLAT_WORDS.search(text) else "diameter_mm"
    if known.sort is FamilySort.WELD and known.counted is Counted.LINE:
        return "length_mm" if "wobble" in text.casefold() else "height_mm"
    return "" if known.threaded else "diameter_mm"


def _in_words(start: Designation, text: str, known: JointFamily | None) -> Designation:
    """Take the words for it where the family needs no size."""
    if known is None or re.search("[0-9]", text):
        return start
    needs_none = known.mass_g == 0 or known.sort is FamilySort.FIT
    says_so = family_in_words(text) == known.name
    return replace(start, understood=needs_none and says_so)


def _sized(
    start: Designation, size: str, *, family: str = "", **lengths_mm: float | None
) -> Designation:
    values: dict[str, Any] = dict(lengths_mm)
    return replace(
        start, size=size, family=family or start.family, understood=True, **values
    )


_READERS: tuple[
    Callable[[Designation, str, JointFamily | None], Designation | None], ...
] = (_fit, _thread, _throat, _pair, _single)
