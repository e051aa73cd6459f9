"""What the words and standards of a designation say of the family."""

from __future__ import annotations

import re
from functools import cache

_STANDARDS: dict[str, str] = {
    "hex screw": "ISO 4014, ISO 4016, ISO 4017, ISO 4018, ISO 8676, ISO 8765, "
    "DIN 931, DIN 933, DIN 960, DIN 961",
    "flange screw": "EN 1662, EN 1665, ISO 4162, ISO 15071, ISO 15072, DIN 6921",
    "socket screw": "ISO 4762, ISO 12474, ISO 14579, ISO 10642, DIN 912, "
    "DIN 6912, DIN 7984, DIN 7991",
    "button head screw": "ISO 7380-1, ISO 7380-2, ISO 14583",
    "nut": "ISO 4032, ISO 4033, ISO 4035, ISO 8673, ISO 7040, ISO 7042, ISO 10511, "
    "ISO 4161, ISO 21670, EN 1661, EN 1663, EN 1664, EN 1666, EN 1667, DIN 928, "
    "DIN 929, DIN 934, DIN 936, DIN 980, DIN 982, DIN 985, DIN 6923",
    "stud": "ISO 13918, DIN 835, DIN 938, DIN 939, DIN 976",
    "blind rivet": "ISO 15973, ISO 15974, ISO 15975, ISO 15976, ISO 15977, "
    "ISO 15978, ISO 15979, ISO 15980, ISO 15981, ISO 15982, ISO 15983, ISO 15984, "
    "ISO 16582, ISO 16583, ISO 16584, ISO 16585, DIN 7337",
    "solid rivet": "ISO 1051, DIN 660, DIN 661, DIN 662",
    "arc weld": "ISO 2553",
    "friction stir weld": "ISO 25239",
    "spot weld": "ISO 14373",
    "press fit": "ISO 286",
}

STANDARD_FAMILIES: dict[str, str] = {
    standard: family
    for family, standards in _STANDARDS.items()
    for standard in standards.split(", ")
}
"""The family that a product or drawing standard is about."""

SAME_STANDARD: dict[str, str] = {"ISO 7380": "ISO 7380-1"}
"""Older numbers of standards that went on under another."""

_WORD_FAMILIES: tuple[tuple[str, str], ...] = (
    (
        r"rivet\s*nut|\binsert\b|threaded\s*bush|moulded[\s-]*in\s*bush",
        "threaded insert",
    ),
    (r"flow[\s-]*(drill|form)", "flow-drill screw"),
    (r"self[\s-]*pierc|\bpunch\s*rivet|\bSPR\b", "self-piercing rivet"),
    (r"blind\s*rivet", "blind rivet"),
    (r"solid\s*rivet|\bfull\s*rivet", "solid rivet"),
    (r"\b(weld|flange|hex(agon)?|lock|cage)?\s*nuts?\b", "nut"),
    (r"\bstuds?\b|threaded\s*rod", "stud"),
    (r"flanged?\s*(head\s*)?(screw|bolt)", "flange screw"),
    (r"button\s*(head)?", "button head screw"),
    (r"socket\s*(head\s*)?(cap\s*)?(screw|bolt)|\bcap\s*screw", "socket screw"),
    (r"\bhex(agon)?\s*(head\s*)?(screw|bolt)", "hex screw"),
    (r"\bclinch|\bround\s*point", "clinch"),
    (r"friction\s*stir|\bFSW\b", "friction stir weld"),
    (r"\blaser\b|\bwobble\b", "laser weld"),
    (r"\bspot\b", "spot weld"),
    (r"\bfillet\b|\b(MIG|MAG|TIG|GMAW)\b|\barc\b", "arc weld"),
    (r"\bfoam|\bEPDM\b|\brubber\b|\bgasket\b|\bo[\s-]?ring\b|\banaerob", "gasket"),
    (r"\bcured?[\s-]*in[\s-]*place|\bprofile\b", "gasket"),
    (r"\badhesive\b|\bepoxy\b|\bpolyurethane\b|\bacrylic\b", "structural adhesive"),
    (r"\bsealant\b|\bsilicone\b|\bbutyl\b|\bpolysulfide\b", "sealant bead"),
    (r"\bclip\b|\bfir[\s-]*tree\b", "clip"),
    (r"\bsnap\b|\bhook\b", "snap fit"),
    (r"\b(press|interference)[\s-]*fit\b|\bmoulded\s*around\b", "press fit"),
)


@cache
def _patterns() -> tuple[tuple[re.Pattern[str], str], ...]:
    # Compiled on first need: most rows of a list name their family.
    return tuple((re.compile(p, re.IGNORECASE), name) for p, name in _WORD_FAMILIES)


def standard_family(standard: str) -> str:
    """Give the family that a standard is about, empty where it is not known."""
    return STANDARD_FAMILIES.get(standard, "")


def family_in_words(text: str) -> str:
    """Give the family that the words of a designation speak of, empty for none.

    Examples
    --------
    >>> family_in_words("EPDM profile 8x6")
    'gasket'
    """
    for pattern, family in _patterns():
        if pattern.search(text):
            return family
    return ""
