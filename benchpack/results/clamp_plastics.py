"""Plastic parts that screws squeeze: where nothing metal takes the clamp for them."""

from __future__ import annotations

from benchpack.model.families import FamilySort
from benchpack.model.library import Library
from benchpack.results.inventory import Inventory
from benchpack.results.joint_facts import JointFacts

_PLASTIC = ("thermoplastic", "thermoset", "plastic", "polymer")
_TAKES_CLAMP = ("limiter", "sleeve", "bush")
"""Words of what stands in a plastic part so that it is not squeezed."""


def joined_parts(facts: JointFacts) -> tuple[str, ...]:
    """Give the names of the parts that a joint joins, as they are compared.

    Parameters
    ----------
    facts : JointFacts
        The joint.
    """
    names = (_folded(facts.joint.joins), _folded(facts.joint.to))
    return tuple(dict.fromkeys(filter(None, names)))


class PlasticParts:
    """Finds the plastic parts that a screw squeezes.

    A limiter inside a part takes the clamp of all its screws; an insert, sleeve or bush
    that was recorded as a joint takes it where it joins the same two parts.

    Parameters
    ----------
    library : Library or None
        Parts and materials; without them no plastic is known.
    inventory : Inventory
        The joints of the pack.
    """

    def __init__(self, library: Library | None, inventory: Inventory) -> None:
        self._plastic: dict[str, str] = {}
        self._relieved: set[tuple[str, frozenset[str]]] = set()
        if library is None:
            return
        parts = library.parts_of(inventory.pack)
        kinds = {
            _folded(material.name): _folded(material.kind)
            for material in library.materials
        }
        limited = {_folded(part.inside) for part in parts if _takes_clamp(part.name)}
        for part in parts:
            kind = kinds.get(_folded(part.material), "")
            is_plastic = any(word in kind for word in _PLASTIC)
            if is_plastic and _folded(part.name) not in limited:
                self._plastic[_folded(part.name)] = f"{part.name} is {part.material}"
        for facts in inventory.facts:
            pair = joined_parts(facts)
            self._relieved |= {
                (name, frozenset(pair)) for name in _relieved_by(facts, pair)
            }

    def squeezed_by(self, facts: JointFacts) -> tuple[str, ...]:
        """Give each plastic part that a screw squeezes with its material, as a clause.

        Parameters
        ----------
        facts : JointFacts
            The screw.
        """
        pair = joined_parts(facts)
        return tuple(
            self._plastic[name]
            for name in pair
            if name in self._plastic and (name, frozenset(pair)) not in self._relieved
        )


def _relieved_by(facts: JointFacts, pair: tuple[str, ...]) -> tuple[str, ...]:
    """Give the parts that a joint relieves: a threaded insert the one it sits in."""
    if _takes_clamp(f"{facts.joint.name} {facts.joint.designation}"):
        return pair
    family = facts.family
    if family is not None and family.sort is FamilySort.INSERT:
        return (_folded(facts.joint.joins),)
    return ()


def _takes_clamp(text: str) -> bool:
    return any(word in text.casefold() for word in _TAKES_CLAMP)


def _folded(name: str) -> str:
    return name.strip().casefold()
