"""Functions that have to be validated again, with requirement, clause and mark.

No official standard was read in full: a confirmed figure was read in a digest, a
reprint or a preview, which its source names.
"""

from __future__ import annotations

from dataclasses import dataclass

from benchpack.model import duty_rules as rules
from benchpack.model.duty_rules import Rule
from benchpack.model.touches import Touch

__all__ = ["DUTIES", "Duty", "Rule", "duties_for"]


@dataclass(frozen=True, slots=True)
class Duty:
    """One function that a change reopens.

    Parameters
    ----------
    key : str
        Name of the function.
    rules : tuple of Rule
        What is required of it, and where that stands.
    when : frozenset of Touch
        It is reopened by a change that touches any of these.
    """

    key: str
    rules: tuple[Rule, ...]
    when: frozenset[Touch]


def _duty(key: str, rules: tuple[Rule, ...], *when: Touch) -> Duty:
    return Duty(key, rules, frozenset(when))


_T = Touch

DUTIES: tuple[Duty, ...] = (
    _duty("crush", rules.CRUSH, _T.STRUCTURE),
    _duty("side and pole impact", rules.SIDE, _T.STRUCTURE),
    _duty("bottom impact", rules.BOTTOM, _T.FLOOR),
    _duty("mechanical shock", rules.SHOCK, _T.STRUCTURE, _T.MODULES, _T.JOINTS),
    _duty("simulated collision", rules.COLLISION, _T.STRUCTURE, _T.MODULES, _T.JOINTS),
    _duty(
        "vibration",
        rules.VIBRATION,
        _T.STRUCTURE,
        _T.LID,
        _T.MODULES,
        _T.JOINTS,
        _T.SCREWS,
        _T.SEAL,
    ),
    _duty("immersion", rules.IMMERSION, _T.SEAL, _T.LID, _T.STRUCTURE),
    _duty("leak test", rules.LEAK, _T.SEAL, _T.POLYMER_FLANGE),
    _duty("climate", rules.CLIMATE, _T.SEAL, _T.POLYMER_SHELL),
    _duty("external fire", rules.FIRE, _T.POLYMER_SHELL, _T.LID, _T.BARRIER),
    _duty(
        "thermal propagation",
        rules.PROPAGATION,
        _T.POLYMER_SHELL,
        _T.LID,
        _T.BARRIER,
        _T.MODULES,
        _T.COOLING,
    ),
    _duty("material screening", rules.SCREENING, _T.POLYMER_SHELL),
    _duty("equipotential bonding", rules.BONDING, _T.POLYMER_SHELL, _T.BONDING),
    _duty("isolation resistance", rules.ISOLATION, _T.POLYMER_SHELL, _T.CONDUCTORS),
    _duty("creepage", rules.CREEPAGE, _T.CONDUCTORS),
    _duty("touch protection", rules.TOUCHABLE, _T.CONDUCTORS, _T.LID),
    _duty("shielding", rules.EMC, _T.POLYMER_SHELL),
    _duty("galvanic corrosion", rules.GALVANIC, _T.UNLIKE_METALS),
    _duty("gas venting", rules.VENTING, _T.LID),
    _duty("clamp load", rules.CLAMP, _T.SCREWS),
    _duty("clamp in plastic", rules.PLASTIC_CLAMP, _T.SCREWED_POLYMER),
    _duty("flammability", rules.FLAMMABILITY, _T.NEW_POLYMER),
    _duty("creep at the mounts", rules.MOUNTS, _T.POLYMER_MOUNTS),
    _duty("cell temperature", rules.HEAT, _T.COOLING, _T.POLYMER_HEAT_PATH),
)
"""All functions, in the order in which they are listed."""


def duties_for(touched: frozenset[Touch]) -> tuple[Duty, ...]:
    """Give what has to be validated again after a change.

    Parameters
    ----------
    touched : frozenset of Touch
        What the change touches.

    Examples
    --------
    >>> [duty.key for duty in duties_for(frozenset({Touch.UNLIKE_METALS}))]
    ['galvanic corrosion']
    """
    return tuple(duty for duty in DUTIES if duty.when & touched)
