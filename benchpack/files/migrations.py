"""Steps that bring the tables of an older library up to date."""

from __future__ import annotations

from collections.abc import Callable

from sqlalchemy import Connection, Double

from benchpack.files.version_3 import add_proposals
from benchpack.files.version_4 import add_assumptions


def _joining_assumptions(connection: Connection) -> None:
    """Version 2: what a study reckons joints with, at its starting figures."""
    number = Double().compile(connection.dialect)
    for name, start in (
        ("labour_rate_per_h", 45.0),
        ("station_rate_per_h", 60.0),
        ("takt_time_s", 60.0),
        ("thread_friction", 0.12),
        ("head_friction", 0.12),
    ):
        connection.exec_driver_sql(f'ALTER TABLE studies ADD COLUMN "{name}" {number}')
        connection.exec_driver_sql(f'UPDATE studies SET "{name}" = {start}')


MIGRATIONS: dict[int, Callable[[Connection], None]] = {
    1: _joining_assumptions,
    2: add_proposals,
    3: add_assumptions,
}
"""The step away from each older version, by that version; one version at a time."""


def migrate(connection: Connection, *, found: int, wanted: int) -> None:
    """Take every step from one version to another, in the transaction at hand.

    Raises
    ------
    LookupError
        When a step is missing.
    """
    for version in range(found, wanted):
        MIGRATIONS[version](connection)
