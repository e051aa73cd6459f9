"""What regulations and practice require of a pack, with clause and mark."""

from __future__ import annotations

from dataclasses import dataclass

CONFIRMED, RECALLED = "confirmed", "from memory"

_DIGEST = "clause-referenced English digest of the standard"
_RECALLED = "recalled, not read"


@dataclass(frozen=True, slots=True)
class Rule:
    """One requirement and where it stands.

    Parameters
    ----------
    requirement : str
        What is required.
    clause : str
        Regulation or standard with its clause, empty where none is known.
    mark : str
        Whether it was confirmed or recalled, a word of ``model.material.MARKS``.
    source : str
        What was read.
    """

    requirement: str
    clause: str = ""
    mark: str = RECALLED
    source: str = _RECALLED


def _gb(requirement: str, clause: str) -> Rule:
    return Rule(requirement, f"GB 38031-2025, {clause}", CONFIRMED, _DIGEST)


CRUSH = (
    _gb(
        "at most 2 mm/s along x and y, to 100 kN or 30 % deformation, held 10 min: no "
        "fire, no explosion, at least 100 ohm/V",
        "8.2.4 and 5.2.4",
    ),
    Rule(
        "100 to 105 kN, reached within 3 min, held 100 ms to 10 s",
        "UN R100 Rev. 2, Annex 8D, 3.2.1 (Rev. 3: Annex 9D)",
        RECALLED,
        "values recalled; that the force stands there was read in a copy",
    ),
)
SIDE = (Rule("intrusion without contact to cells", "UN R95, R135, R94, R137"),)
BOTTOM = (
    _gb(
        "ball of 30 mm, 10 kg, 150 J from below at three points that the maker names",
        "8.2.16",
    ),
)
SHOCK = (
    _gb(
        "half-sine of 7 g and 6 ms, up and down, 12 shocks: no leak, no crack, no fire",
        "8.2.2 and 5.2.2",
    ),
)
COLLISION = (
    _gb("sled pulse along x and y by mass class", "8.2.3"),
    Rule("up to 28 g along and 15 g across for M1 and N1", "UN R100, Annex 8C (9C)"),
)
VIBRATION = (
    _gb("random and sine in each axis", "8.2.1 and 5.2.1"),
    Rule(
        "sine 7 to 50 Hz, 10 m/s2 up to 18 Hz, 3 h, vertical",
        "UN R100, Annex 8A (9A)",
    ),
)
IMMERSION = (
    _gb(
        "after vibration: 3.5 % salt water for 2 h without fire, or IPX7 for 30 min "
        "without leak and at least 100 ohm/V",
        "8.2.6 and 5.2.6",
    ),
)
LEAK = (Rule("the leak test limit of the line, usual 2 to 5 kPa pressure decay"),)
CLIMATE = (
    _gb(
        "damp heat, five shocks from -40 to 60 degC, six cycles of salt fog, 61.2 kPa",
        "8.2.5 and 8.2.8 to 8.2.10",
    ),
)
FIRE = (
    _gb("pool fire without explosion", "8.2.7.1 and 5.2.7"),
    Rule(
        "60 s of heating, 70 s in the flame, 60 s under it, watched for 3 h",
        "UN R100, Annex 8E (9E)",
        CONFIRMED,
        "description of the test by a maker of test equipment",
    ),
)
PROPAGATION = (
    _gb(
        "no fire, no explosion, warning 5 min ahead; watched for 2 h and down to "
        "60 degC",
        "8.2.7.2, 5.2.7 b and Appendix C",
    ),
    Rule(
        "warning 5 min before a hazard in the cabin",
        "UN GTR 20, Amendment 2",
        CONFIRMED,
        "proposal of the amendment, in formal review when it was read",
    ),
    Rule("warning 5 min before a hazard in the cabin", "UN R100, 03 series, 6.15"),
)
SCREENING = (
    Rule(
        "torch with grit and box test; the result does not stand for the end use",
        "UL 2596",
        CONFIRMED,
        "scope of the standard",
    ),
)
BONDING = (
    Rule(
        "under 0.1 ohm between what can be touched and the chassis, at 0.2 A or more",
        "UN R100, 5.1.2.2",
        CONFIRMED,
        "a national draft with the same wording and numbers",
    ),
    Rule("equipotential bonding", "ISO 6469-3:2021, 6.3.1"),
)
ISOLATION = (
    Rule(
        "at least 100 ohm/V d.c. and 500 ohm/V a.c.",
        "GB 38031-2025, Appendix B; UN R100",
        CONFIRMED,
        _DIGEST,
    ),
)
CREEPAGE = (
    Rule(
        "pollution degree 2 at 800 V: 4.0, 5.6, 8.0 mm by material group I, II, III",
        "IEC 60664-1, table F.4",
        RECALLED,
        "values recalled; that the table is there was seen in a catalogue",
    ),
)
TOUCHABLE = (Rule("IPXXB, IPXXD inside the cabin", "UN R100, 5.1.1"),)
EMC = (
    Rule(
        "a metal box shields 60 to 80 dB; a polymer one needs foil, mesh or a coating",
        "UN R10, CISPR 12 and 25",
    ),
)
GALVANIC = (
    Rule(
        "at most 0.15 V apart in harsh and 0.25 V in moderate surroundings, no small "
        "anode",
        "MIL-STD-889D; MIL-STD-1250A, 5.6",
        CONFIRMED,
        "a page of the standard and two articles on it",
    ),
)
VENTING = (Rule("the lid bears the pressure of venting, the burst area is kept"),)
CLAMP = (Rule("the guaranteed clamp load with the new size, count and tightening"),)
PLASTIC_CLAMP = (
    Rule(
        "a limiter or a metal path takes the clamp load, 75 % of the proof load",
        "",
        CONFIRMED,
        "design guide of a maker of limiters",
    ),
)
FLAMMABILITY = (
    Rule("HB to V-0 as asked, at the wall that is used", "UL 94, IEC 60695"),
)
MOUNTS = (Rule("no load path of a mount is clamped through plastic"),)
HEAT = (Rule("cells stay in their window, usual 20 to 40 degC and at most 5 K apart"),)
