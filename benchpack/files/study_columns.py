"""The columns of a study in files; nothing of it is lost in them."""

from __future__ import annotations

import json
from typing import Any

from benchpack.errors import DataError, Problem
from benchpack.model.fields import Field, Kind
from benchpack.model.words import Basis, TrendKind

STUDY_FIELDS: tuple[Field, ...] = (
    Field("name", "study", required=True, help="Name of the study."),
    Field("subject", "subject", help="The pack under study."),
    Field("reference", "reference", help="The pack it is measured against."),
    Field("peers", "peers", help="Names of the compared packs as a JSON array."),
    Field(
        "basis",
        "basis",
        Kind.CHOICE,
        choices=tuple(Basis),
        help="How the gap is counted.",
    ),
    Field(
        "exponent",
        "exponent",
        Kind.NUMBER,
        "ratio",
        ceiling=1,
        help="How the mass that is not cells grows with energy.",
    ),
    Field(
        "trend",
        "trend",
        Kind.CHOICE,
        choices=tuple(TrendKind),
        help="Which line is laid through the peers.",
    ),
    Field(
        "worth_low_per_kg",
        "worth low per kg",
        Kind.NUMBER,
        "ratio",
        ceiling=1e6,
        help="Least worth of one kilogram saved, in the study's currency.",
    ),
    Field(
        "worth_likely_per_kg",
        "worth likely per kg",
        Kind.NUMBER,
        "ratio",
        ceiling=1e6,
        help="Likely worth of one kilogram saved, in the study's currency.",
    ),
    Field(
        "worth_high_per_kg",
        "worth high per kg",
        Kind.NUMBER,
        "ratio",
        ceiling=1e6,
        help="Greatest worth of one kilogram saved, in the study's currency.",
    ),
    Field("worth_reason", "worth reason", help="Why the worth is what it is."),
    Field("currency", "currency", help="Code of the study's currency."),
    Field(
        "share_captured",
        "share captured",
        Kind.NUMBER,
        "ratio",
        ceiling=1,
        help="Share of the gap that is thought to be reachable.",
    ),
    Field(
        "target_kg",
        "target",
        Kind.NUMBER,
        "mass",
        "kg",
        help="The saving that is promised per pack.",
    ),
    Field(
        "mass_unit",
        "mass unit",
        Kind.CHOICE,
        choices=("kg", "lb"),
        help="Unit of mass on screen.",
    ),
    Field(
        "decimal_mark",
        "decimal mark",
        Kind.CHOICE,
        choices=(".", ","),
        help="Decimal mark on screen.",
    ),
)
"""The columns of a study in their order in files."""


def peers_text(peers: tuple[str, ...]) -> str:
    """Give the peers' names as one text, empty where none are named."""
    return json.dumps(list(peers), ensure_ascii=False) if peers else ""


def parse_peers(text: str) -> tuple[str, ...]:
    """Read the peers' names from their text.

    Raises
    ------
    DataError
        When the text is no list of names.
    """
    if not text.strip():
        return ()
    try:
        found: Any = json.loads(text)
    except ValueError:
        found = None
    if not isinstance(found, list) or not all(isinstance(n, str) for n in found):
        raise DataError(
            Problem(
                "The peers are no list of names.",
                'Write them as ["Avocet 81", "Dunlin 74"] or leave the cell empty.',
                column="peers",
                value=text,
            )
        )
    return tuple(found)
