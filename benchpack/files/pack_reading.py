"""Checking many packs at once: whole columns by mask, words from the model."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

import numpy as np
from numpy.typing import NDArray

from benchpack.errors import DataError, Problem, Severity
from benchpack.files.record_reading import Pace, Rows
from benchpack.model.fields import Field, Kind
from benchpack.model.pack import PACK_FIELD, PACK_FIELDS, Pack, pack_problems
from benchpack.model.pack_table import PackTable, empty_column
from benchpack.model.words import EnergyBasis, KnownBy

_USUAL_DENSITY = (40.0, 350.0)
_INNER = (("cells_mass_kg", "mass_kg"), ("cells_volume_l", "volume_l"))


def check_packs(rows: Rows, pace: Pace) -> None:
    """Note what is wrong or unusual in each pack.

    Masks find the packs that may be at fault; what is said of them comes from the
    model, so that a pack is judged here as it is when typed by hand.
    """
    _settle_basis(rows)
    suspects = np.flatnonzero(suspicious(rows.values)).tolist()
    for done, at in enumerate(suspects):
        if done % 4096 == 0:
            pace.step(done, len(suspects), "Checking packs")
        rows.add_all(at, _problems(rows, at))


def suspicious(values: dict[str, Any]) -> NDArray[np.bool_]:
    """Tell which packs the model would refuse or call unusual.

    Parameters
    ----------
    values : mapping of str to array, shape (n,)
        Columns of packs; at least energy and mass.
    """
    energy, mass = values["energy_kwh"], values["mass_kg"]
    with np.errstate(invalid="ignore", divide="ignore", over="ignore"):
        # A little wider than the model's bounds, for its rounding is its own.
        density = 1000 * energy / mass
        low, high = _USUAL_DENSITY[0] * 1.000001, _USUAL_DENSITY[1] * 0.999999
        found: NDArray[np.bool_] = ~((density >= low) & (density <= high))
        for inner, outer in _INNER:
            if inner in values and outer in values:
                found |= values[inner] > values[outer]
        for field in PACK_FIELDS:
            if field.is_numeric and field.name in values:
                found |= _unusual(field, values[field.name])
    return found


def _unusual(field: Field, column: NDArray[Any]) -> NDArray[np.bool_]:
    low, high = field.plausible
    low = max(low, 0.0)
    found = (column < low) | (column > min(high, field.ceiling))
    if field.positive:
        found |= column == 0
    if field.kind is Kind.COUNT:
        found |= column != np.trunc(column)
        found &= ~np.isnan(column)
    return np.asarray(found)


def _problems(rows: Rows, at: int) -> list[Problem]:
    values = dict(_attributes(rows, at))
    if not rows.refused[at]:
        try:
            pack = Pack(**values)
        except DataError as error:
            return list(error.problems)
        return [p for p in pack_problems(pack) if p.severity is Severity.WARNING]
    found = []
    for name, value in values.items():
        field = PACK_FIELD[name]
        if field.is_numeric:
            found.append(field.refusal(value) or field.doubt(value))
    return [problem for problem in found if problem is not None]


def _attributes(rows: Rows, at: int) -> Any:
    for field, value in rows.attributes(at):
        if field.kind is Kind.COUNT and value == int(value):
            yield field.name, int(value)
        elif field.name == "energy_basis":
            yield field.name, EnergyBasis(value)
        elif field.name == "mass_known_by":
            yield field.name, KnownBy(value)
        else:
            yield field.name, float(value) if field.is_numeric else value


def _settle_basis(rows: Rows) -> None:
    basis = rows.mapping.energy_basis
    if basis:
        rows.values["energy_basis"] = np.full(len(rows), basis, dtype=object)


def check_names(rows: Rows, existing: Collection[str], *, replace: bool) -> int:
    """Refuse packs whose name came before; gives how many take a known one's place.

    Parameters
    ----------
    rows : Rows
        The packs.
    existing : collection of str
        Names that are taken.
    replace : bool
        True to let a pack take the place of the one of its name.
    """
    names = rows.values["name"].tolist()
    taken = set(existing)
    replaced = 0
    if len(set(names)) < len(names):
        _refuse_repeated(rows, names)
    if not taken:
        return 0
    for at, name in enumerate(names):
        if name in taken and not rows.refused[at]:
            replaced += 1
            if not replace:
                rows.add(at, "name", _taken(name))
    return replaced if replace else 0


def _refuse_repeated(rows: Rows, names: list[str]) -> None:
    first: dict[str, int] = {}
    for at, name in enumerate(names):
        if rows.refused[at]:
            continue
        if name in first:
            what = f"The name {name!r} is already in row {rows.row(first[name])}."
            rows.add(at, "name", Problem(what, "Give one of the two another name."))
        else:
            first[name] = at


def _taken(name: str) -> Problem:
    return Problem(
        f"The library has a pack called {name!r} already.",
        "Rename it here, or ask for packs to be replaced.",
    )


def accepted_packs(rows: Rows) -> PackTable:
    """Give the packs that nothing speaks against."""
    keep = ~rows.refused
    count = int(keep.sum())
    everything = count == len(rows)
    columns = {}
    unknown: dict[bool, Any] = {}
    for field in PACK_FIELDS:
        if field.name not in rows.values:
            if field.is_numeric or field.kind is Kind.TEXT:
                # Tables share columns: one serves all that nothing is known of.
                if field.is_numeric not in unknown:
                    unknown[field.is_numeric] = empty_column(field, count)
                columns[field.name] = unknown[field.is_numeric]
            continue
        column = rows.values[field.name]
        column = column if everything else column[keep]
        if field.kind is Kind.CHOICE:
            words = {word: str(word) for word in field.choices}
            words[None] = str(field.choices[0])  # type: ignore[index]
            chosen = empty_column(field, count)
            chosen[:] = [words[word] for word in column.tolist()]
            column = chosen
        columns[field.name] = column
    return PackTable(columns)
