"""The columns of the packs table, recorded and derived."""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import cached_property
from typing import Any

import numpy as np
from numpy.typing import NDArray

from benchpack.errors import Problem
from benchpack.model.fields import Kind
from benchpack.model.library import Library
from benchpack.model.pack import PACK_FIELD, PACK_FIELDS
from benchpack.results import pack_columns
from benchpack.results.cautions import pack_cautions
from benchpack.results.closure import Closure, closure_of
from benchpack.results.library_check import doubtful_packs
from benchpack.ui.tables.columns import TableColumn, mass_scale, recorded_column
from benchpack.ui.tables.records import RecordColumns, pack_records
from benchpack.units.formatting import NumberStyle

_FIRST = ("name", "energy_kwh", "mass_kg")


def table_columns(style: NumberStyle) -> list[TableColumn]:
    """Give the columns of the packs table from left to right.

    Parameters
    ----------
    style : NumberStyle
        The study's mass unit and decimal mark.
    """
    first = [recorded_column(PACK_FIELD[name], style) for name in _FIRST]
    rest = [
        recorded_column(field, style)
        for field in PACK_FIELDS
        if field.name not in _FIRST
    ]
    return [*first, *_derived(style), *rest]


def _derived(style: NumberStyle) -> list[TableColumn]:
    mass, factor = mass_scale(style)
    needs_cells = "It needs the mass of the cells."
    return [
        TableColumn(
            "density_wh_per_kg",
            "density",
            Kind.NUMBER,
            "Wh/kg",
            decimals=0,
            help="Energy over mass of the pack.",
            reason="It needs energy and mass.",
        ),
        TableColumn(
            "cells_share",
            "cells share",
            Kind.NUMBER,
            "%",
            decimals=0,
            factor=100.0,
            help="Mass of the cells over mass of the pack.",
            reason=needs_cells,
        ),
        TableColumn(
            "structure_kg_per_kwh",
            "structure per energy",
            Kind.NUMBER,
            f"{mass}/kWh",
            decimals=2,
            factor=factor,
            help="Mass that is not cells over the energy of the pack.",
            reason=needs_cells,
        ),
        TableColumn(
            "closure",
            "closure",
            Kind.NUMBER,
            "%",
            decimals=1,
            factor=100.0,
            help="Sum of the recorded parts and joints over the mass of the pack.",
            reason="No parts are recorded.",
        ),
        TableColumn(
            "structure_kg",
            "structure",
            Kind.NUMBER,
            mass,
            factor=factor,
            help="Mass that is not cells.",
            reason=needs_cells,
        ),
        TableColumn(
            "density_wh_per_l",
            "density by volume",
            Kind.NUMBER,
            "Wh/L",
            decimals=0,
            help="Energy over volume of the pack.",
            reason="It needs the volume of the pack.",
        ),
    ]


class PackBook:
    """The packs of a library with what follows from them, made when asked for.

    Parameters
    ----------
    library : Library
        The records.
    """

    def __init__(self, library: Library) -> None:
        self.library = library
        packs = library.packs
        derived: dict[str, Callable[[], NDArray[Any]]] = {
            "density_wh_per_kg": self._maker(pack_columns.density_wh_per_kg),
            "density_wh_per_l": self._maker(pack_columns.density_wh_per_l),
            "cells_share": self._maker(pack_columns.cells_share),
            "structure_kg": self._maker(pack_columns.structure_kg),
            "structure_kg_per_kwh": self._maker(pack_columns.structure_kg_per_kwh),
            "closure": self._all_closures,
        }
        cells = {"closure": self._closure_ratio}
        self.records: RecordColumns = pack_records(packs, derived, cells=cells)
        self._closures: dict[str, Closure] = {}
        self._warnings: dict[int, tuple[Problem, ...]] = {}

    def _maker(self, make: Callable[[Any], NDArray[Any]]) -> Callable[[], NDArray[Any]]:
        def give() -> NDArray[Any]:
            with np.errstate(divide="ignore", invalid="ignore"):
                return make(self.library.packs)

        return give

    def closure(self, row: int) -> Closure | None:
        """Give the closure of the pack in a row, None where it has no parts."""
        name = str(self.library.packs.names[row])
        if not self.library.parts_of(name) and not self.library.joints_of(name):
            return None
        if name not in self._closures:
            self._closures[name] = closure_of(self.library, name)
        return self._closures[name]

    def _closure_ratio(self, row: int) -> float:
        closure = self.closure(row)
        return math.nan if closure is None else closure.ratio

    def _all_closures(self) -> NDArray[Any]:
        packs = self.library.packs
        ratios = np.full(len(packs), np.nan)
        for name in dict.fromkeys((*self.library.parts, *self.library.joints)):
            if packs.has(name):
                row = packs.position(name)
                ratios[row] = self._closure_ratio(row)
        return ratios

    @cached_property
    def _doubtful(self) -> NDArray[np.bool_]:
        """Rows that draw a caution: only these are looked at closer."""
        return doubtful_packs(self.library)

    def warnings(self, row: int) -> tuple[Problem, ...]:
        """Give what has to be known of the pack in a row before it is trusted."""
        if not self._doubtful[row]:
            return ()
        if row not in self._warnings:
            pack = self.library.packs[row]
            self._warnings[row] = tuple(pack_cautions(self.library, pack))
        return self._warnings[row]
