"""The columns of a study in files; nothing of it is lost in them."""

from __future__ import annotations

from benchpack.model.assumption_fields import ASSUMPTION_FIELDS
from benchpack.model.fields import Field, Kind
from benchpack.model.words import Basis, TrendKind

STUDY_FIELDS: tuple[Field, ...] = (
    Field("name", "study", required=True, help="Name of the study."),
    Field("subject", "subject", help="The pack under study."),
    Field("reference", "reference", help="The pack it is measured against."),
    Field("peers", "peers", Kind.NAMES, help="Names of the compared packs."),
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
    Field("currency", "currency", help="Code of the study's currency."),
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
    Field(
        "labour_rate_per_h",
        "labour rate per h",
        Kind.NUMBER,
        "ratio",
        ceiling=10_000,
        help="One hour of a person, in the study's currency.",
    ),
    Field(
        "station_rate_per_h",
        "station rate per h",
        Kind.NUMBER,
        "ratio",
        ceiling=100_000,
        help="One hour of an assembly station, in the study's currency.",
    ),
    Field(
        "takt_time_s",
        "takt time",
        Kind.NUMBER,
        "time",
        "s",
        positive=True,
        ceiling=86_400,
        help="Seconds in which the line finishes one pack.",
    ),
    Field(
        "thread_friction",
        "thread friction",
        Kind.NUMBER,
        "ratio",
        positive=True,
        ceiling=1,
        help="Friction coefficient in the thread.",
        decimals=2,
    ),
    Field(
        "head_friction",
        "head friction",
        Kind.NUMBER,
        "ratio",
        positive=True,
        ceiling=1,
        help="Friction coefficient under the head.",
        decimals=2,
    ),
    Field(
        "tooling_budget",
        "tooling budget",
        Kind.NUMBER,
        "ratio",
        ceiling=1e9,
        help="One-time money that may be spent, in the study's currency.",
        decimals=0,
    ),
    *ASSUMPTION_FIELDS,
)
"""The columns of a study in their order in files."""
