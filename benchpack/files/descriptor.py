"""The description of a Data Package: which tables, which columns, in what unit."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from benchpack.files.study_columns import STUDY_FIELDS
from benchpack.model.assumption_fields import SET_FIELDS
from benchpack.model.assumptions import AssumptionSet
from benchpack.model.change import CHANGE_FIELDS, Change
from benchpack.model.fields import Field, Kind
from benchpack.model.joint import JOINT_FIELDS, Joint
from benchpack.model.library import Library
from benchpack.model.material import MATERIAL_FIELDS, SOURCE_FIELDS, Material, Source
from benchpack.model.pack import PACK_FIELDS
from benchpack.model.part import PART_FIELDS, Part
from benchpack.model.study import Study

DESCRIPTOR = "datapackage.json"
"""File name of the description."""


@dataclass(frozen=True, slots=True)
class Resource:
    """One table of the package.

    Parameters
    ----------
    name : str
        Name of the table, of the sheet in a workbook, and of the file without ending.
    fields : tuple of Field
        Its columns.
    key : tuple of str
        Attributes that no two rows share.
    description : str
        What a row is.
    record : type or None
        The record a row makes; None for packs, which are held as columns.
    """

    name: str
    fields: tuple[Field, ...]
    key: tuple[str, ...]
    description: str
    record: type | None = None


RESOURCES: tuple[Resource, ...] = (
    Resource("packs", PACK_FIELDS, ("name",), "One row per pack."),
    Resource("parts", PART_FIELDS, ("pack", "name"), "One row per part.", Part),
    Resource("joints", JOINT_FIELDS, ("pack", "name"), "One row per joint.", Joint),
    Resource(
        "materials", MATERIAL_FIELDS, ("name",), "One row per material.", Material
    ),
    Resource("sources", SOURCE_FIELDS, ("name",), "One row per source.", Source),
    Resource("studies", STUDY_FIELDS, ("name",), "One row per study.", Study),
    Resource(
        "changes",
        CHANGE_FIELDS,
        ("study", "name"),
        "One row per change of a study's proposal, in order.",
        Change,
    ),
    Resource(
        "assumption_sets",
        SET_FIELDS,
        ("study", "name"),
        "One row per named set of a study's assumptions, in order.",
        AssumptionSet,
    ),
)
"""The tables of a library, packs first."""

_TYPES = {
    Kind.NUMBER: "number",
    Kind.COUNT: "integer",
    Kind.FLAG: "boolean",
    Kind.NAMES: "array",
    Kind.REASONS: "object",
    Kind.COUNTS: "array",
}

_OWNERS = {"pack": "packs", "study": "studies"}
"""The table that a key's first column points into."""


def package_descriptor(library: Library, currency: str) -> dict[str, Any]:
    """Give the description of a library as a Data Package.

    Parameters
    ----------
    library : Library
        For title and note.
    currency : str
        Code of the currency of all money.
    """
    return {
        "profile": "tabular-data-package",
        "name": "benchpack-library",
        "title": library.title,
        "description": library.note,
        "currency": currency,
        "resources": [_resource(resource, currency) for resource in RESOURCES],
    }


def _resource(resource: Resource, currency: str) -> dict[str, Any]:
    return {
        "profile": "tabular-data-resource",
        "name": resource.name,
        "path": f"{resource.name}.csv",
        "title": resource.name.capitalize(),
        "description": resource.description,
        "format": "csv",
        "mediatype": "text/csv",
        "encoding": "utf-8",
        "dialect": {
            "delimiter": ",",
            "quoteChar": '"',
            "doubleQuote": True,
            "lineTerminator": "\r\n",
            "header": True,
        },
        "schema": table_schema(resource, currency=currency),
    }


def table_schema(resource: Resource, *, currency: str) -> dict[str, Any]:
    """Give the Table Schema of one table.

    Parameters
    ----------
    resource : Resource
        The table.
    currency : str
        Code that stands in for ``CUR``.
    """
    heads = {f.name: f.header(currency=currency) for f in resource.fields}
    schema: dict[str, Any] = {
        "fields": [_field(field, currency) for field in resource.fields],
        "missingValues": [""],
        "primaryKey": [heads[name] for name in resource.key],
    }
    owner = resource.key[0]
    if owner in _OWNERS:
        schema["foreignKeys"] = [
            {
                "fields": [owner],
                "reference": {"resource": _OWNERS[owner], "fields": [owner]},
            }
        ]
    return schema


def _field(field: Field, currency: str) -> dict[str, Any]:
    found: dict[str, Any] = {
        "name": field.header(currency=currency),
        "type": _TYPES.get(field.kind, "string"),
        "title": field.title,
        "description": field.help,
    }
    if field.unit:
        found["unit"] = field.unit.replace("CUR", currency)
    constraints: dict[str, Any] = {}
    if field.required:
        constraints["required"] = True
    if field.is_numeric:
        constraints["minimum"] = _bound(field.floor)
        if math.isfinite(field.ceiling):
            constraints["maximum"] = _bound(field.ceiling)
    if field.kind is Kind.CHOICE:
        constraints["enum"] = [str(word) for word in field.choices if word]
    if constraints:
        found["constraints"] = constraints
    return found


def _bound(value: float) -> float:
    return int(value) if value == int(value) else value
