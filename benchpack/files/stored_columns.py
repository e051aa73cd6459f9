"""What a library file is known by, and which columns its tables hold.

Apart from the tables themselves, so that a library is read without what writes it.
"""

from __future__ import annotations

from benchpack.model.fields import Field

APPLICATION_ID = 0x42507031
"""Marks an SQLite file as a library (``BPp1``)."""

SCHEMA_VERSION = 4
"""Version of the tables in ``schema``; see ``migrations``."""


def own_fields(fields: tuple[Field, ...]) -> tuple[Field, ...]:
    """Give the columns of a record that are not the name of its pack or study."""
    return tuple(field for field in fields if field.name not in ("pack", "study"))
