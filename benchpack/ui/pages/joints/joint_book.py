"""The joints of a pack for the table: what is recorded and what is computed."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from operator import attrgetter
from typing import Any

import numpy as np
from numpy.typing import NDArray

from benchpack.errors import Problem
from benchpack.model.families import Counted
from benchpack.results.inventory import Inventory
from benchpack.results.joint_facts import JointFacts
from benchpack.ui.tables.records import RecordColumns
from benchpack.units.formatting import NumberStyle, format_number

_TEXTS = (
    "name",
    "family",
    "designation",
    "property_class",
    "role",
    "joins",
    "to",
    "tightening",
    "reason",
    "note",
)
_NUMBERS = ("mass_each_g", "time_each_s", "cost_each")


def _number(name: str) -> Callable[[JointFacts], float]:
    get = attrgetter(f"joint.{name}")

    def give(facts: JointFacts) -> float:
        value = get(facts)
        return math.nan if value is None else float(value)

    return give


def _word(path: str) -> Callable[[JointFacts], str]:
    get = attrgetter(path)

    def give(facts: JointFacts) -> str:
        return str(get(facts))

    return give


def _mass_all_g(facts: JointFacts) -> float:
    return facts.mass_kg * 1000


_SHOWN: Mapping[str, Callable[[JointFacts], Any]] = {
    **{name: attrgetter(f"joint.{name}") for name in _TEXTS},
    "count": _number("count"),
    "length_mm": _number("length_mm"),
    "mass_each_g": attrgetter("mass_each_g"),
    "known_by": _word("known_by"),
    "mass_all_g": _mass_all_g,
    "time_each_s": attrgetter("time_each_s"),
    "time_all_s": attrgetter("seconds"),
    "cost_each": attrgetter("cost_each"),
    "money_all": attrgetter("money"),
    "subsystem": _word("joint.subsystem"),
    "carry_over": attrgetter("joint.carry_over"),
}
_RECORDED: Mapping[str, Callable[[JointFacts], Any]] = {
    **{name: _number(name) for name in _NUMBERS},
    "known_by": _word("joint.known_by"),
}
_NUMERIC = frozenset(
    {"count", "length_mm", "mass_all_g", "time_all_s", "money_all", *_NUMBERS}
)


class RowKeys:
    """Numbers that stay with joints while they are renamed, added and removed."""

    def __init__(self) -> None:
        self._pack = ""
        self._names: tuple[str, ...] = ()
        self._keys: NDArray[np.int64] = np.empty(0, dtype=np.int64)
        self._next = 0

    def of(self, pack: str, names: tuple[str, ...]) -> NDArray[np.int64]:
        """Give the number of each joint, the same array while nothing changes.

        Parameters
        ----------
        pack : str
            The pack they belong to.
        names : tuple of str
            Their names, unique in the pack. Where a name is gone and another stands
            in its place, the joint was renamed.
        """
        if pack == self._pack and names == self._names:
            return self._keys
        known = dict(zip(self._names, self._keys.tolist(), strict=True))
        if pack != self._pack:
            known.clear()
        places = list(known)
        now = set(names)
        keys = []
        for place, name in enumerate(names):
            if name in known:
                keys.append(known[name])
            elif place < len(places) and places[place] not in now:
                keys.append(known[places[place]])
            else:
                keys.append(self._next)
                self._next += 1
        self._pack, self._names = pack, names
        self._keys = np.array(keys, dtype=np.int64)
        return self._keys


class JointBook:
    """The joints of one inventory as records of a table.

    Parameters
    ----------
    inventory : Inventory
        The joints.
    keys : ndarray of int, shape (n,)
        What stays with each joint through edits.
    style : NumberStyle
        How numbers are shown.
    """

    def __init__(
        self, inventory: Inventory, keys: NDArray[np.int64], style: NumberStyle
    ) -> None:
        self.facts: Sequence[JointFacts] = inventory.facts
        self._style = style
        self.records = RecordColumns(
            keys,
            {key: self._column(key) for key in _SHOWN},
            cells={key: self._cell(give) for key, give in _SHOWN.items()},
            stored={key: self._cell(give) for key, give in _RECORDED.items()},
        )

    def _column(self, key: str) -> Callable[[], NDArray[Any]]:
        def make() -> NDArray[Any]:
            values = list(map(_SHOWN[key], self.facts))
            if key in _NUMERIC:
                return np.array(values, dtype=np.float64)
            column = np.empty(len(values), dtype=object)
            column[:] = values
            return column

        return make

    def _cell(self, give: Callable[[JointFacts], Any]) -> Callable[[int], Any]:
        def cell(row: int) -> Any:
            return give(self.facts[row])

        return cell

    def warnings(self, row: int) -> tuple[Problem, ...]:
        """Give what is amiss with the joint in a row."""
        return self.facts[row].problems

    def remark(self, key: str, row: int) -> str:
        """Say how a figure that was not entered was found; empty where it was."""
        facts = self.facts[row]
        if key in ("mass_each_g", "known_by", "mass_all_g"):
            return self._mass_remark(facts) if facts.is_mass_computed else ""
        if key in ("time_each_s", "time_all_s"):
            return self._usual(facts, "s") if facts.is_time_usual else ""
        if key in ("cost_each", "money_all"):
            is_usual = facts.is_cost_usual or (key[0] == "m" and facts.is_time_usual)
            return self._usual(facts, "EUR") if is_usual else ""
        return ""

    def _mass_remark(self, facts: JointFacts) -> str:
        if facts.mass_each_g == 0 and facts.family is not None:
            return f"Computed, not weighed. {facts.family.note}".strip()
        said = f"Computed, not weighed: {facts.known_by}"
        if facts.mass_u_rel > 0:
            said += f", within {format_number(200 * facts.mass_u_rel)} %"
        return f"{said}."

    def _usual(self, facts: JointFacts, unit: str) -> str:
        family = facts.family
        if family is None:
            return ""
        usual = family.time_s if unit == "s" else family.cost
        low, high = (
            format_number(end, 1 if unit == "s" else 3, style=self._style)
            for end in (usual.low, usual.high)
        )
        per = "a metre" if family.counted is Counted.LINE else "a piece"
        return f"Not entered: usual for a {family.name}, {low} to {high} {unit} {per}."
