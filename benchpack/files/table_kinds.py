"""What a loose table holds, told by its column heads."""

from __future__ import annotations

from benchpack.files.descriptor import RESOURCES, Resource
from benchpack.files.mapping import Mapping, field_titles, folded, suggest_mapping
from benchpack.files.sheet import Sheet

PACKS, PARTS, JOINTS = "packs", "parts", "joints"

_RESOURCES = {resource.name: resource for resource in RESOURCES}
_MARGIN = 2
"""Heads that a table without a word such as ``joint`` has more than one of packs."""


def holds_packs(sheet: Sheet) -> bool:
    """Tell whether a table has all columns that packs need."""
    meant = suggest_mapping(sheet, _RESOURCES[PACKS].fields)
    return all(
        meant.column_of(field.name) is not None
        for field in _RESOURCES[PACKS].fields
        if field.required
    )


def table_kind(sheet: Sheet) -> str:
    """Tell what a table holds.

    A table that can hold packs does. Else it holds parts or joints where more heads
    are known of them than of any other record, and one of these heads says so.

    Parameters
    ----------
    sheet : Sheet
        The table.

    Returns
    -------
    str
        ``packs``, ``parts`` or ``joints``; packs where the heads do not tell.
    """
    if holds_packs(sheet):
        return PACKS
    meant = {r.name: suggest_mapping(sheet, r.fields) for r in RESOURCES}
    known = {name: _known(mapping) for name, mapping in meant.items()}
    kind = max((PARTS, JOINTS), key=lambda name: known[name])
    most = max(number for name, number in known.items() if name not in (PARTS, JOINTS))
    if known[kind] <= most or meant[kind].column_of("name") is None:
        return PACKS
    says_so = _says_so(sheet, meant[kind], _RESOURCES[kind])
    return kind if says_so or known[kind] >= known[PACKS] + _MARGIN else PACKS


def names_packs(sheet: Sheet, kind: str) -> bool:
    """Tell whether a table of parts or joints says which pack each belongs to.

    Parameters
    ----------
    sheet : Sheet
        The table.
    kind : str
        ``parts`` or ``joints``.
    """
    meant = suggest_mapping(sheet, _RESOURCES[kind].fields)
    return meant.column_of("pack") is not None


def _known(mapping: Mapping) -> int:
    return sum(name is not None for name in mapping.fields)


def _says_so(sheet: Sheet, mapping: Mapping, resource: Resource) -> bool:
    """Tell whether the head of the names is a word that packs have not."""
    column = mapping.column_of("name")
    if column is None:
        return False
    own = next(field for field in resource.fields if field.name == "name")
    of_packs = next(f for f in _RESOURCES[PACKS].fields if f.name == "name")
    words = set(field_titles(own)) - set(field_titles(of_packs))
    return folded(sheet.header[column]) in words
