"""The tables of a library, made from the columns of the records."""

from __future__ import annotations

from typing import Any

from sqlalchemy import (
    BigInteger,
    Boolean,
    Column,
    Double,
    ForeignKey,
    Integer,
    MetaData,
    Table,
    Text,
)

from benchpack.files.stored_columns import own_fields
from benchpack.files.study_columns import STUDY_FIELDS
from benchpack.model.assumption_fields import SET_FIELDS
from benchpack.model.change import CHANGE_FIELDS
from benchpack.model.fields import Field, Kind
from benchpack.model.joint import JOINT_FIELDS
from benchpack.model.material import MATERIAL_FIELDS, SOURCE_FIELDS
from benchpack.model.pack import PACK_FIELDS
from benchpack.model.part import PART_FIELDS

_TYPES: dict[Kind, Any] = {
    Kind.TEXT: Text,
    Kind.NUMBER: Double,
    Kind.COUNT: BigInteger,
    Kind.CHOICE: Text,
    Kind.FLAG: Boolean,
    Kind.BOUNDARY: Text,
    Kind.NAMES: Text,
    Kind.REASONS: Text,
    Kind.COUNTS: Text,
}

METADATA = MetaData()
"""All tables; compiles for SQLite and for PostgreSQL."""


def _column(field: Field) -> Column[Any]:
    unknown = field.is_numeric and not field.required
    return Column(field.name, _TYPES[field.kind], nullable=unknown)


def _key(name: str) -> Column[int]:
    # SQLite numbers rows by a column only when its type is plainly INTEGER.
    return Column(name, BigInteger().with_variant(Integer, "sqlite"), primary_key=True)


def _owned(name: str, fields: tuple[Field, ...], owner: str, key: str) -> Table:
    return Table(
        name,
        METADATA,
        _key("id"),
        Column(
            owner,
            BigInteger().with_variant(Integer, "sqlite"),
            ForeignKey(key, ondelete="CASCADE"),
            nullable=False,
            index=True,
        ),
        Column("position", BigInteger, nullable=False),
        *map(_column, own_fields(fields)),
    )


def _listed(name: str, fields: tuple[Field, ...]) -> Table:
    return Table(name, METADATA, _key("position"), *map(_column, fields))


PACKS = Table(
    "packs",
    METADATA,
    _key("id"),
    Column("position", BigInteger, nullable=False),
    *map(_column, PACK_FIELDS),
)
PARTS = _owned("parts", PART_FIELDS, "pack_id", "packs.id")
JOINTS = _owned("joints", JOINT_FIELDS, "pack_id", "packs.id")
MATERIALS = _listed("materials", MATERIAL_FIELDS)
SOURCES = _listed("sources", SOURCE_FIELDS)
STUDIES = _listed("studies", STUDY_FIELDS)
CHANGES = _owned("changes", CHANGE_FIELDS, "study_id", "studies.position")
_owned("assumption_sets", SET_FIELDS, "study_id", "studies.position")
ABOUT = Table(
    "about",
    METADATA,
    Column("key", Text, primary_key=True),
    Column("value", Text, nullable=False),
)
