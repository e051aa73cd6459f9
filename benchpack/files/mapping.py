"""Which column of a table means which attribute, and in what unit."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cache

from benchpack.files.sheet import Sheet
from benchpack.files.study_columns import STUDY_FIELDS
from benchpack.model.fields import Field
from benchpack.model.joint import JOINT_FIELDS
from benchpack.model.material import MATERIAL_FIELDS, SOURCE_FIELDS
from benchpack.model.pack import PACK_FIELDS
from benchpack.model.part import PART_FIELDS

_CURRENCY = re.compile(r"\[([A-Z]{3})(?:/kg)?\]$")
_EXACT = -1


@dataclass(frozen=True, slots=True)
class Mapping:
    """What each column of a sheet means.

    Parameters
    ----------
    fields : tuple of str or None
        Attribute name by column; None keeps the column in the note.
    units : tuple of str
        Unit label by column as the head states it; empty where it states none.
    energy_basis : str
        The basis that the head of the energy column names, ``usable`` for instance.
    """

    fields: tuple[str | None, ...]
    units: tuple[str, ...]
    energy_basis: str = ""

    def column_of(self, field: str) -> int | None:
        """Give the column that means an attribute, None where none does."""
        return self.fields.index(field) if field in self.fields else None

    def with_field(self, column: int, field: str | None, *, unit: str = "") -> Mapping:
        """Give the mapping in which a column means another attribute.

        Parameters
        ----------
        column : int
            The column, from 0.
        field : str or None
            Attribute name, None for the note. A column that meant it before goes to
            the note.
        unit : str
            Unit of the column's bare numbers; empty for the usual one.
        """
        fields = [None if old == field else old for old in self.fields]
        units = list(self.units)
        fields[column], units[column] = field, unit
        return replace(self, fields=tuple(fields), units=tuple(units))


@dataclass(frozen=True, slots=True)
class _Claim:
    rank: int
    column: int
    field: str
    unit: str


def suggest_mapping(sheet: Sheet, fields: Sequence[Field] = PACK_FIELDS) -> Mapping:
    """Guess what the columns of a sheet mean from their heads.

    A head that is written just as this program writes it comes first, then one with
    the right title, then synonyms in their order. Each attribute takes one column.

    Parameters
    ----------
    sheet : Sheet
        The table.
    fields : sequence of Field
        The attributes that are sought.
    """
    claims = [
        claim
        for i, head in enumerate(sheet.header)
        for claim in _claims(i, head, tuple(fields))
    ]
    meant: dict[int, _Claim] = {}
    taken: set[str] = set()
    for claim in sorted(claims, key=lambda claim: (claim.rank, claim.column)):
        if claim.column not in meant and claim.field not in taken:
            meant[claim.column] = claim
            taken.add(claim.field)
    columns = range(len(sheet.header))
    return Mapping(
        tuple(meant[i].field if i in meant else None for i in columns),
        tuple(meant[i].unit if i in meant else "" for i in columns),
        _energy_basis(sheet, meant, taken),
    )


def known_heads(row: Iterable[str]) -> int:
    """Count the cells of a row that are column heads of any record."""
    titles = _all_titles()
    return sum(_is_known(str(cell), titles) for cell in row)


def folded(text: str) -> str:
    """Give a title without case, punctuation and diacritics, ``+-`` as a word."""
    text = text.replace("+/-", " pm ").replace("+-", " pm ").replace("±", " pm ")
    text = unicodedata.normalize("NFKD", text).casefold()
    kept = (c if c.isalnum() else " " for c in text if not unicodedata.combining(c))
    return " ".join("".join(kept).split())


def head_currency(head: str) -> str:
    """Give the currency that a column head names as this program writes it."""
    match = _CURRENCY.search(head)
    return match[1] if match else ""


def _claims(column: int, head: str, fields: tuple[Field, ...]) -> list[_Claim]:
    text = head.strip()
    for field in fields:
        currency = head_currency(text) if "CUR" in field.unit else ""
        if text == field.header(currency=currency or "CUR"):
            unit = field.unit.replace("CUR", currency or "CUR")
            return [_Claim(_EXACT, column, field.name, unit)]
    if not text:
        return []
    whole, title, unit = _split(text)
    found = []
    for field in fields:
        names = _titles(field)
        if title in names and (not unit or _measures(unit, field)):
            found.append(_Claim(names.index(title), column, field.name, unit))
        elif whole in names and whole != title:
            found.append(_Claim(names.index(whole), column, field.name, ""))
    return found


def _split(text: str) -> tuple[str, str, str]:
    from benchpack.units.parsing import split_header

    title, unit = split_header(text)
    return folded(text), folded(title), unit or ""


def _measures(unit: str, field: Field) -> bool:
    from benchpack.units.labels import quantity

    return bool(field.quantity) and quantity(field.quantity).find(unit) is not None


@cache
def _titles(field: Field) -> list[str]:
    """Titles of an attribute, folded, the best first."""
    names = (field.title, field.name.replace("_", " "), *field.synonyms)
    return [folded(name) for name in names]


@cache
def _all_titles() -> frozenset[str]:
    tables = (
        PACK_FIELDS,
        PART_FIELDS,
        JOINT_FIELDS,
        MATERIAL_FIELDS,
        SOURCE_FIELDS,
        STUDY_FIELDS,
    )
    return frozenset(
        title for fields in tables for field in fields for title in _titles(field)
    )


def _is_known(cell: str, titles: frozenset[str]) -> bool:
    text = cell.strip()
    if not text or len(text) > 60:
        return False
    bare = re.sub(r"\s*[\[(].*[\])]\s*$", "", text)
    if folded(bare) in titles or folded(text) in titles:
        return True
    return _split(text)[1] in titles


def _energy_basis(sheet: Sheet, meant: dict[int, _Claim], taken: set[str]) -> str:
    if "energy_basis" in taken:
        return ""
    for column, claim in meant.items():
        if claim.field == "energy_kwh":
            words = folded(sheet.header[column]).split()
            return next((w for w in ("usable", "gross") if w in words), "")
    return ""
