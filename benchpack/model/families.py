"""The families of joints: how each is counted, and what one usually takes and costs.

The figures are those of ``datasets/joining.csv``, with the source and the mark of each.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache
from types import MappingProxyType

from benchpack.model.family_record import Counted, FamilySort, JointFamily, Range
from benchpack.model.family_table import FAMILIES
from benchpack.model.gaskets import GASKET_KINDS, GasketKind, gasket_kind
from benchpack.model.line_materials import LineMaterial, line_material

__all__ = [
    "FAMILIES",
    "FAMILY_NAMES",
    "GASKET_KINDS",
    "Counted",
    "FamilySort",
    "GasketKind",
    "JointFamily",
    "LineMaterial",
    "Range",
    "family_of",
    "gasket_kind",
    "line_material",
]

FAMILY_NAMES: tuple[str, ...] = tuple(family.name for family in FAMILIES)
"""Names of all families."""

_BOLT = re.compile(r"\bbolt(s?)\b")


def _plain(text: str) -> str:
    """Give a name without case, hyphens, plural and the word bolt."""
    words = _BOLT.sub(r"screw\1", re.sub(r"[\s\-_]+", " ", text.casefold()).strip())
    return words[:-1] if words.endswith("s") and not words.endswith("ss") else words


def _known_as() -> Mapping[str, JointFamily]:
    known = {
        _plain(word): family
        for family in FAMILIES
        for word in (*family.synonyms, family.name)
    }
    known |= {f"{word}e": f for word, f in known.items() if word.endswith("ch")}
    return MappingProxyType(known)


_KNOWN_AS = _known_as()


@lru_cache(maxsize=1024)
def family_of(text: str) -> JointFamily | None:
    """Give the family that a text names, None where it names none.

    Parameters
    ----------
    text : str
        A family's name or a synonym; case, blanks, hyphens, plural and "bolt" for
        "screw" make no difference.

    Examples
    --------
    >>> found = family_of("Flange bolts")
    >>> found.name if found else ""
    'flange screw'
    """
    return _KNOWN_AS.get(_plain(text))
