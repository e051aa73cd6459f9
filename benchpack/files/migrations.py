"""Steps that bring the tables of an older library up to date."""

from __future__ import annotations

from collections.abc import Callable

from sqlalchemy import Connection

MIGRATIONS: dict[int, Callable[[Connection], None]] = {}
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
