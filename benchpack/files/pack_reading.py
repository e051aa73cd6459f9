"""Checking many packs at once: whole columns by mask, words from the model."""

from __future__ import annotations

import unicodedata
from collections.abc import Collection, Mapping
from typing import Any

import numpy as np
from numpy.typing import NDArray

from benchpack.errors import DataError, Problem, Severity
from benchpack.files.head_words import TOTALS
from benchpack.files.record_reading import Pace, Rows
from benchpack.model.fields import Field, Kind
from benchpack.model.pack import PACK_FIELD, PACK_FIELDS, Pack, pack_problems
from benchpack.model.pack_table import PackTable, empty_column
from benchpack.model.words import EnergyBasis, KnownBy
from benchpack.units.number_text import shortened

_USUAL_DENSITY = (40.0, 350.0)
_TOTALS = frozenset(name + end for name in TOTALS for end in ("", ":"))
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
                low, high = field.plausible
                low, high = max(low, 0.0), min(high, field.ceiling)
                found |= _outside(field, values[field.name], low, high)
    return found


def impossible(values: Mapping[str, Any]) -> NDArray[np.bool_]:
    """Tell which packs the model refuses for one of their figures.

    Parameters
    ----------
    values : mapping of str to array, shape (n,)
        All columns of packs.
    """
    found = np.zeros(len(values["mass_kg"]), dtype=bool)
    with np.errstate(invalid="ignore"):
        for inner, outer in _INNER:
            found |= values[inner] > values[outer]
        for field in PACK_FIELDS:
            if field.is_numeric:
                column = values[field.name]
                found |= _outside(field, column, 0.0, field.ceiling)
                if field.required:
                    found |= np.isnan(column)
    return found


def _outside(
    field: Field, column: NDArray[Any], low: float, high: float
) -> NDArray[np.bool_]:
    found = (column < low) | (column > high)
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


def check_names(
    rows: Rows, existing: Collection[str], *, replace: bool, distinct: bool = False
) -> int:
    """Refuse packs whose name came before; gives how many take a known one's place.

    Parameters
    ----------
    rows : Rows
        The packs.
    existing : collection of str
        Names that are taken.
    replace : bool
        True to let a pack take the place of the one of its name.
    distinct : bool
        True where the names are known to differ from each other.
    """
    names = rows.values["name"].tolist()
    taken = set(existing)
    replaced = 0
    if not distinct and len(set(names)) < len(names):
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
            shown = shortened(name)
            what = f"The name {shown!r} is already in row {rows.row(first[name])}."
            rows.add(at, "name", Problem(what, "Give one of the two another name."))
        else:
            first[name] = at


def check_hand_made(rows: Rows) -> bool:
    """Refuse lines of totals, and warn of names that only look alike.

    Returns
    -------
    bool
        True where no two names are the same or look alike.
    """
    names = rows.values["name"].tolist()
    joined = "\n".join(names)
    # Folding all names at once takes a tenth of folding each.
    folded = joined.casefold().split("\n")
    if not joined.isascii() or "  " in joined or len(folded) != len(names):
        folded = list(map(_look, names))
    different = set(folded)
    if not _TOTALS.isdisjoint(different):
        for at, name in enumerate(names):
            if name.casefold() in _TOTALS:
                what = f"{name!r} looks like a line of totals, not like a pack."
                rows.add(
                    at, "name", Problem(what, "Delete the row, or rename the pack.")
                )
    if len(different) == len(names):
        return True
    _note_alike(rows, names, folded)
    return False


def _note_alike(rows: Rows, names: list[str], folded: list[str]) -> None:
    first: dict[str, int] = {}
    for at, look in enumerate(folded):
        before = first.setdefault(look, at)
        if names[before] != names[at]:
            shown = shortened(names[before])
            what = f"The name reads like {shown!r} in row {rows.row(before)}."
            remedy = "Delete one of the two, or tell the names apart."
            rows.add(at, "name", Problem(what, remedy, severity=Severity.WARNING))


def _look(name: str) -> str:
    return " ".join(unicodedata.normalize("NFKC", name).casefold().split())


def _taken(name: str) -> Problem:
    return Problem(
        f"The library has a pack called {shortened(name)!r} already.",
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
            blank = field.kind is Kind.CHOICE and not str(field.choices[0])
            if field.is_numeric or field.kind is Kind.TEXT or blank:
                # Tables share columns: one serves all that nothing is known of.
                if field.is_numeric not in unknown:
                    unknown[field.is_numeric] = empty_column(field, count)
                columns[field.name] = unknown[field.is_numeric]
            continue
        column = rows.values[field.name]
        column = column if everything else column[keep]
        if field.kind is Kind.CHOICE:
            words: dict[str | None, str] = {word: str(word) for word in field.choices}
            words[None] = words[field.choices[0]]
            chosen = np.empty(count, dtype=object)
            chosen[:] = [words[word] for word in column.tolist()]
            column = chosen
        columns[field.name] = column
    return PackTable(columns)
