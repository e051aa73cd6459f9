"""Inventories that were taken, so that only what changed is worked out anew."""

from __future__ import annotations

from dataclasses import dataclass

from benchpack.model.joint import Joint
from benchpack.model.pack_table import PackTable
from benchpack.results.inventory import Inventory, inventory
from benchpack.results.joint_facts import Rates, rates_of
from benchpack.session.state import State

_MOST_HELD = 4


@dataclass(frozen=True, slots=True)
class _Held:
    inventory: Inventory
    joints: tuple[Joint, ...]
    packs: PackTable
    takt_time_s: float
    rates: Rates


class InventoryShelf:
    """Gives the inventory of a pack, the same object while nothing it needs changed."""

    def __init__(self) -> None:
        self._held: dict[str, _Held] = {}

    def clear(self) -> None:
        """Forget everything, for instance because another library is open."""
        self._held.clear()

    def of(self, state: State, pack: str) -> Inventory:
        """Give the inventory of a pack that the library has.

        Parameters
        ----------
        state : State
            The library and the study.
        pack : str
            Name of the pack.
        """
        library, study = state.library, state.study
        joints, rates = library.joints_of(pack), rates_of(study)
        held = self._held.pop(pack, None)
        same = (
            held is not None
            and held.joints is joints
            and held.packs is library.packs
            and held.takt_time_s == study.takt_time_s
            and held.rates == rates
        )
        if held is None or not same:
            previous = held.inventory if held else None
            taken = inventory(library, study, pack, previous=previous)
            held = _Held(taken, joints, library.packs, study.takt_time_s, rates)
        self._held[pack] = held
        while len(self._held) > _MOST_HELD:
            del self._held[next(iter(self._held))]
        return held.inventory
