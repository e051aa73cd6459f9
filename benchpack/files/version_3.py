"""The step to version 3: proposals, with the tables as they were at that version.

The columns stand here once more, so that later columns do not change this step.
"""

from __future__ import annotations

from typing import Any

from sqlalchemy import (
    BigInteger,
    Boolean,
    Column,
    Connection,
    Double,
    ForeignKey,
    Index,
    Integer,
    MetaData,
    Table,
    Text,
)

_ID = BigInteger().with_variant(Integer, "sqlite")

STUDY_COLUMNS: tuple[tuple[str, type[Any]], ...] = (
    *((name, Text) for name in ("name", "subject", "reference", "peers", "basis")),
    ("exponent", Double),
    ("trend", Text),
    ("worth_low_per_kg", Double),
    ("worth_likely_per_kg", Double),
    ("worth_high_per_kg", Double),
    ("worth_reason", Text),
    ("currency", Text),
    ("share_captured", Double),
    ("target_kg", Double),
    ("mass_unit", Text),
    ("decimal_mark", Text),
    ("labour_rate_per_h", Double),
    ("station_rate_per_h", Double),
    ("takt_time_s", Double),
    ("thread_friction", Double),
    ("head_friction", Double),
)
"""The columns of a study in version 2."""

NEW_STUDY_COLUMNS: tuple[tuple[str, type[Any], str], ...] = (
    ("programme", Text, "''"),
    ("yearly_volume", BigInteger, "NULL"),
    ("programme_years", Double, "7.0"),
    ("discount_rate", Double, "0.08"),
    ("tooling_budget", Double, "NULL"),
)
"""What version 3 adds, with what a study starts from."""

_RANGES = (
    *("mass_kg", "part_cost", "joining_cost", "seconds"),
    *("tooling", "validation_cost", "lead_weeks"),
)
CHANGE_COLUMNS: tuple[tuple[str, type[Any]], ...] = (
    ("name", Text),
    ("kind", Text),
    ("is_on", Boolean),
    *((name, Text) for name in ("parts", "joints", "into", "subsystem")),
    *((name, Text) for name in ("material", "process", "governs")),
    ("wall_mm", Double),
    ("stiffness_shape", Double),
    ("strength_shape", Double),
    ("rib_allowance", Double),
    ("uses_data_sheet", Boolean),
    ("count", BigInteger),
    ("length_mm", Double),
    *((name, Text) for name in ("family", "designation", "tightening")),
    *(
        (f"{name}_{end}", Double)
        for name in _RANGES
        for end in ("low", "likely", "high")
    ),
    ("release_chance", Double),
    *((name, Text) for name in ("programme", "requires", "excludes", "waived")),
    *((name, Text) for name in ("rationale", "note")),
)
"""The columns of a change in version 3, its study and place left out."""


def add_proposals(connection: Connection) -> None:
    """Add what a proposal assumes to the studies, and the table of changes."""
    tables = MetaData()
    columns = (*STUDY_COLUMNS, *((name, kind) for name, kind, _ in NEW_STUDY_COLUMNS))
    studies = Table(
        "studies",
        tables,
        Column("position", _ID, primary_key=True),
        *(column(name, kind) for name, kind in columns),
    )
    # A text that may not be empty cannot be added to a table that has rows.
    connection.exec_driver_sql("ALTER TABLE studies RENAME TO studies_before")
    studies.create(connection)
    kept = ", ".join(f'"{name}"' for name, _ in (("position", _ID), *STUDY_COLUMNS))
    new = ", ".join(f'"{name}"' for name, *_ in NEW_STUDY_COLUMNS)
    starts = ", ".join(start for *_, start in NEW_STUDY_COLUMNS)
    connection.exec_driver_sql(
        f"INSERT INTO studies ({kept}, {new}) SELECT {kept}, {starts} "
        "FROM studies_before"
    )
    connection.exec_driver_sql("DROP TABLE studies_before")
    owner = Column(
        "study_id",
        _ID,
        ForeignKey(studies.c.position, ondelete="CASCADE"),
        nullable=False,
    )
    changes = Table(
        "changes",
        tables,
        Column("id", _ID, primary_key=True),
        owner,
        Column("position", BigInteger, nullable=False),
        *(column(name, kind) for name, kind in CHANGE_COLUMNS),
    )
    Index("ix_changes_study_id", owner)
    changes.create(connection)


def column(name: str, kind: type[Any]) -> Column[Any]:
    """Give a column as the tables have it: texts and flags are never missing."""
    return Column(name, kind, nullable=kind not in (Text, Boolean))
