"""Seal lines that were found, so that they are not looked for anew."""

from __future__ import annotations

import math

from benchpack.model.library import Library
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.results.inventory import Inventory
from benchpack.results.seal import SealLine, least_clamp_n, seal_lines


class SealShelf:
    """Gives the seal lines of a pack, the same ones while nothing they need changed."""

    def __init__(self) -> None:
        self._inventory: Inventory | None = None
        self._parts: tuple[Part, ...] = ()
        self._materials: tuple[Material, ...] = ()
        self._lines: tuple[SealLine, ...] = ()
        self._clamped: tuple[SealLine, Study] | None = None
        self._least_n = math.nan

    def of(self, library: Library, inventory: Inventory) -> tuple[SealLine, ...]:
        """Give the seal lines of an inventory.

        Parameters
        ----------
        library : Library
            Parts and materials.
        inventory : Inventory
            The joints of the pack.
        """
        parts = library.parts_of(inventory.pack)
        same = (
            inventory is self._inventory
            and parts is self._parts
            and library.materials is self._materials
        )
        if not same:
            self._lines = seal_lines(library, inventory)
            self._inventory, self._parts = inventory, parts
            self._materials = library.materials
        return self._lines

    def least_clamp_n(self, line: SealLine, study: Study) -> float:
        """Give the least clamp load of the screws of a line, N; NaN where unknown.

        Parameters
        ----------
        line : SealLine
            The line that is shown.
        study : Study
            Friction of the screws.
        """
        held = self._clamped
        if held is None or held[0] is not line or held[1] is not study:
            self._clamped, self._least_n = (line, study), least_clamp_n(line, study)
        return self._least_n
