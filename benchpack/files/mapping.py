"""Which column of a table means which attribute, and in what unit."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache

from benchpack.files.head_words import BASIS_WORDS, BESIDE_UNITS, HEAD_WORDS
from benchpack.files.sheet import Sheet
from benchpack.files.study_columns import STUDY_FIELDS
from benchpack.model.assumption_fields import SET_FIELDS
from benchpack.model.change import CHANGE_FIELDS
from benchpack.model.fields import Field
from benchpack.model.joint import JOINT_FIELDS
from benchpack.model.material import MATERIAL_FIELDS, SOURCE_FIELDS
from benchpack.model.pack import PACK_FIELDS
from benchpack.model.part import PART_FIELDS

_CURRENCY = re.compile(r"\[([A-Z]{3})(?:/kg|/kWh)?\]$")
_EXACT, _UNIT_ALONE = -1, 1000


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
    known = _known(tuple(fields))
    claims = [
        claim
        for i, head in enumerate(sheet.header)
        for claim in _claims(i, head, known)
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


@dataclass(frozen=True, slots=True)
class _Known:
    """The attributes that are sought, by their heads and by their titles."""

    heads: dict[str, Field]
    titles: dict[str, list[tuple[int, Field]]]
    measured: tuple[Field, ...]


@cache
def _known(fields: tuple[Field, ...]) -> _Known:
    titles: dict[str, list[tuple[int, Field]]] = {}
    for field in fields:
        for rank, title in enumerate(dict.fromkeys(field_titles(field))):
            titles.setdefault(title, []).append((rank, field))
    measured = tuple(f for f in fields if f.required and f.is_numeric)
    return _Known({field.header(): field for field in fields}, titles, measured)


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


def _claims(column: int, head: str, known: _Known) -> list[_Claim]:
    text = head.strip()
    if not text:
        return []
    currency = head_currency(text)
    plain = text.replace(f"[{currency}", "[CUR") if currency else text
    exact = known.heads.get(plain)
    if exact is not None:
        unit = exact.unit.replace("CUR", currency or "CUR")
        return [_Claim(_EXACT, column, exact.name, unit)]
    whole, title, unit = _split(text)
    found = [
        _Claim(rank, column, field.name, unit)
        for rank, field in known.titles.get(title, ())
        if not unit or _measures(unit, field)
    ]
    claimed = {claim.field for claim in found}
    for rank, field in known.titles.get(whole, ()) if whole != title else ():
        if field.name not in claimed:
            found.append(_Claim(rank, column, field.name, ""))
    return found or _unit_alone(column, text, known)


def _unit_alone(column: int, text: str, known: _Known) -> list[_Claim]:
    """Take ``kg`` and ``usable kWh`` for the attribute that has to be known."""
    words = [
        word
        for word in re.split(r"[\s()\[\],;:]+", text)
        if folded(word) not in BASIS_WORDS and folded(word) not in BESIDE_UNITS
    ]
    label = "".join(words)
    if not label or len(label) > 12:
        return []
    unit = _split(f"x [{label}]")[2]
    fields = [f for f in known.measured if unit and _measures(unit, f)]
    return [_Claim(_UNIT_ALONE, column, f.name, unit) for f in fields]


def _split(text: str) -> tuple[str, str, str]:
    from benchpack.units.parsing import split_header

    title, unit = split_header(text)
    return folded(text), folded(title), unit or ""


def _measures(unit: str, field: Field) -> bool:
    from benchpack.units.labels import quantity

    return bool(field.quantity) and quantity(field.quantity).find(unit) is not None


@cache
def field_titles(field: Field) -> list[str]:
    """Titles of an attribute, folded, the best first."""
    names = (field.title, field.name.replace("_", " "), *field.synonyms)
    return [folded(name) for name in (*names, *HEAD_WORDS.get(field.title, ()))]


_ALL_FIELDS = (
    *PACK_FIELDS,
    *PART_FIELDS,
    *JOINT_FIELDS,
    *MATERIAL_FIELDS,
    *SOURCE_FIELDS,
    *STUDY_FIELDS,
    *CHANGE_FIELDS,
    *SET_FIELDS,
)


@cache
def _all_titles() -> frozenset[str]:
    return frozenset(title for field in _ALL_FIELDS for title in field_titles(field))


@cache
def _words_only() -> frozenset[str]:
    numbers = {
        t for field in _ALL_FIELDS if field.is_numeric for t in field_titles(field)
    }
    return _all_titles() - numbers


def is_head_of_words(head: str) -> bool:
    """Tell whether a column head means words, so that no unit can stand below it."""
    return folded(head) in _words_only()


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
            return next((BASIS_WORDS[w] for w in words if w in BASIS_WORDS), "")
    return ""
