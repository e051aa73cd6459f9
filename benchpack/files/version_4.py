"""The step to version 4: what a study assumes of money, vehicle and driver, and sets.

The columns stand here once more, so that later columns do not change this step.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from sqlalchemy import (
    BigInteger,
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

from benchpack.files.version_3 import (
    CHANGE_COLUMNS,
    NEW_STUDY_COLUMNS,
    STUDY_COLUMNS,
    column,
)

_ID = BigInteger().with_variant(Integer, "sqlite")

_NEW: tuple[tuple[str, type[Any], str], ...] = (
    ("worth_source", Text, "''"),
    ("valued_mass", Text, "'the proposal'"),
    ("volumes", Text, "''"),
    ("volume_spread", Double, "0.2"),
    ("start_year", BigInteger, "NULL"),
    ("customer_share", Double, "0.5"),
    ("required_saving", Double, "0.0"),
    ("part_price", Double, "NULL"),
    ("old_part_price", Double, "NULL"),
    ("mass_energy_low", Double, "0.4"),
    ("mass_energy_likely", Double, "0.6"),
    ("mass_energy_high", Double, "0.9"),
    ("energy_from", Text, "'given'"),
    ("rolling_resistance", Double, "0.01"),
    ("drive_efficiency", Double, "0.9"),
    ("recuperated_share", Double, "0.65"),
    ("steady_speed_kmh", Double, "100.0"),
    ("drive_cycle", Text, "''"),
    ("vehicle_range_km", Double, "400.0"),
    ("usable_share", Double, "0.95"),
    ("battery_cost_low", Double, "80.0"),
    ("battery_cost_likely", Double, "100.0"),
    ("battery_cost_high", Double, "140.0"),
    ("pack_density_wh_per_kg", Double, "NULL"),
    ("sizing", Text, "'range kept'"),
    ("consumption_kwh", Double, "17.0"),
    ("secondary_share", Double, "NULL"),
    ("driver_km_per_year", Double, "15000.0"),
    ("driver_years", Double, "13.0"),
    ("energy_price", Double, "0.25"),
    ("charging_efficiency", Double, "0.88"),
    ("driver_rate", Double, "0.05"),
)
"""What version 4 adds to a study, with what a study starts from."""

_OLD = (*STUDY_COLUMNS, *((name, kind) for name, kind, _ in NEW_STUDY_COLUMNS))
_ASSUMED_BEFORE = (
    "worth_low_per_kg",
    "worth_likely_per_kg",
    "worth_high_per_kg",
    "worth_reason",
    "share_captured",
    "programme",
    "yearly_volume",
    "programme_years",
    "discount_rate",
)
_SET_COLUMNS = (
    ("name", Text),
    *((name, dict(_OLD)[name]) for name in _ASSUMED_BEFORE),
    *((name, kind) for name, kind, _ in _NEW),
)


def add_assumptions(connection: Connection) -> None:
    """Add assumptions to the studies, and the table of named sets of them."""
    run = connection.exec_driver_sql
    tables = MetaData()
    columns = (*_OLD, *((name, kind) for name, kind, _ in _NEW))
    studies = Table(
        "studies",
        tables,
        Column("position", _ID, primary_key=True),
        *(column(name, kind) for name, kind in columns),
    )
    changes = _owned("changes", tables, studies, CHANGE_COLUMNS)
    # A text that may not be empty cannot be added to a table that has rows, and
    # what points to a renamed table follows it: both tables are made anew.
    run('DROP INDEX "ix_changes_study_id"')
    run('ALTER TABLE "changes" RENAME TO "changes_before"')
    run('ALTER TABLE "studies" RENAME TO "studies_before"')
    studies.create(connection)
    kept = _names(("position", *(name for name, _ in _OLD)))
    starts = ", ".join(start for *_, start in _NEW)
    run(
        f"INSERT INTO studies ({kept}, {_names(name for name, *_ in _NEW)}) "
        f"SELECT {kept}, {starts} FROM studies_before"
    )
    changes.create(connection)
    every = _names(one.name for one in changes.columns)
    run(f"INSERT INTO changes ({every}) SELECT {every} FROM changes_before")
    run('DROP TABLE "changes_before"')
    run('DROP TABLE "studies_before"')
    _owned("assumption_sets", tables, studies, _SET_COLUMNS).create(connection)


def _names(names: Iterable[str]) -> str:
    return ", ".join(f'"{name}"' for name in names)


def _owned(
    name: str,
    tables: MetaData,
    studies: Table,
    columns: Iterable[tuple[str, type[Any]]],
) -> Table:
    owner = Column(
        "study_id",
        _ID,
        ForeignKey(studies.c.position, ondelete="CASCADE"),
        nullable=False,
    )
    made = Table(
        name,
        tables,
        Column("id", _ID, primary_key=True),
        owner,
        Column("position", BigInteger, nullable=False),
        *(column(one, kind) for one, kind in columns),
    )
    Index(f"ix_{name}_study_id", owner)
    return made
