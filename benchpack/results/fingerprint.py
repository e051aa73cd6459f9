"""The fingerprint of a study: the same where, and only where, its data is the same."""

from __future__ import annotations

import hashlib
import json
import re
import unicodedata
from collections.abc import Iterable
from dataclasses import fields, is_dataclass
from typing import Any

from benchpack.model.boundary import Boundary, Weighed
from benchpack.model.fields import Kind
from benchpack.model.library import Library
from benchpack.model.pack import PACK_FIELDS
from benchpack.model.pack_table import PackTable
from benchpack.model.study import Study
from benchpack.results.study_scope import library_of_study, study_records

CANONICAL_VERSION = 1
"""Which canonical form is hashed; another one gives other fingerprints."""

_DIGITS = 12
_ON_SCREEN = ("mass_unit", "decimal_mark")
_SHOWN_DIGITS, _GROUP = 16, 4
_BEFORE = re.compile(r"\A['\s]+")
_ANY_ORDER = ("parts", "joints", "materials", "sources")


def fingerprint_of(library: Library, study: Study) -> str:
    """Give the fingerprint of a study and the records it is answered from.

    Parameters
    ----------
    library : Library
        All records; those that the study does not need are left out.
    study : Study
        The study.

    Returns
    -------
    str
        SHA-256 of `canonical_text`, 64 hexadecimal digits; see `short_fingerprint`.
    """
    text = canonical_text(library, study)
    return hashlib.sha256(text.encode("ascii")).hexdigest()


def short_fingerprint(fingerprint: str) -> str:
    """Give the first digits of a fingerprint in groups, for people to compare.

    Parameters
    ----------
    fingerprint : str
        As `fingerprint_of` gives it.

    Examples
    --------
    >>> short_fingerprint("0123456789abcdef" * 4)
    '0123 4567 89ab cdef'
    """
    head = fingerprint[:_SHOWN_DIGITS]
    return " ".join(
        head[start : start + _GROUP] for start in range(0, len(head), _GROUP)
    )


def canonical_text(library: Library, study: Study) -> str:
    """Give the text that is hashed: one line of JSON per record, ASCII.

    Numbers have 12 significant digits. Text is in normal form C with plain line ends,
    without blanks around it and apostrophes before it. What is unknown or empty is left
    out, and so is what only the screen uses. Packs, parts, joints, materials and
    sources are sorted; the changes of the study and what else is its own keep their
    order.

    Parameters
    ----------
    library : Library
        All records.
    study : Study
        The study.
    """
    scope = library_of_study(library, study)
    lines = [_line(["study of packs, canonical form", CANONICAL_VERSION])]
    asked = _attributes(study)
    for name in _ON_SCREEN:
        asked.pop(name)
    if "peers" in asked:
        asked["peers"] = sorted(set(asked["peers"]))
    lines.append(_line(["study", asked]))
    lines += sorted(_line(["packs", pack]) for pack in _pack_values(scope.packs))
    for kind in _ANY_ORDER:
        held = getattr(scope, kind)
        groups = (held,) if isinstance(held, tuple) else held.values()
        records = (record for group in groups for record in group)
        lines += sorted(_line([kind, _attributes(record)]) for record in records)
    for kind, group in sorted(study_records(scope, study).items()):
        lines += [_line([kind, _attributes(record)]) for record in group]
    return "\n".join(lines) + "\n"


def _line(value: Any) -> str:
    return json.dumps(value, sort_keys=True, separators=(",", ":"))


def _pack_values(packs: PackTable) -> Iterable[dict[str, Any]]:
    names = [field.name for field in PACK_FIELDS]
    columns = [
        _column(packs.columns[field.name].tolist(), field.kind) for field in PACK_FIELDS
    ]
    for row in zip(*columns, strict=True):
        yield {name: value for name, value in zip(names, row, strict=True) if value}


def _column(cells: list[Any], kind: Kind) -> list[Any]:
    if kind is not Kind.BOUNDARY:
        return [_canonical(cell) for cell in cells]
    # Packs often share a boundary, which is put into words once.
    different = {id(cell): cell for cell in cells}
    words = {key: _canonical(cell) for key, cell in different.items()}
    return [words[id(cell)] for cell in cells]


def _attributes(record: Any) -> dict[str, Any]:
    found = {}
    for field in fields(record):
        value = _canonical(getattr(record, field.name))
        if value:
            found[field.name] = value
    return found


def _canonical(value: Any) -> Any:
    """Give a value as text, list or mapping; empty where nothing is known."""
    if isinstance(value, str):
        return _text(value)
    if value is None or value != value:
        return ""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int | float):
        # Adding zero takes the sign off a zero.
        return f"{value + 0.0:.{_DIGITS}g}"
    if isinstance(value, Boundary):
        return _boundary(value)
    if is_dataclass(value):
        return _attributes(value)
    return [_canonical(one) for one in value]


def _text(value: str) -> str:
    plain = value.replace("\r\n", "\n").replace("\r", "\n")
    # A workbook that is read in takes an apostrophe before a sign such as = away.
    return _BEFORE.sub("", unicodedata.normalize("NFC", plain).rstrip())


def _boundary(boundary: Boundary) -> list[list[str]]:
    items = sorted({*boundary.states, *boundary.masses_kg})
    found = (
        [item, str(boundary.state(item)), _canonical(boundary.masses_kg.get(item))]
        for item in items
    )
    return [[*words] for words in found if words[1:] != [str(Weighed.UNKNOWN), ""]]
