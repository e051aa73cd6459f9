"""The files of the demo as rows and numbers, read without the package."""

from __future__ import annotations

import csv
import math
from collections.abc import Iterable
from functools import cache
from pathlib import Path

DATASETS = Path(__file__).parents[3] / "datasets"
STUDY, FLOOR = "Avocet 81 against Dunlin 74", "Avocet 81, floor in short-fibre polymer"
SUBJECT, REFERENCE = "Avocet 81", "Dunlin 74"
Row = dict[str, str]
Ends = tuple[float, float, float]
RIM, LID = "rim by flow-drill screws", "lid and stiffeners in one moulding"
FILLER, BUSBAR = "thinner gap filler", "long busbars in aluminium"
DUCTS, PLATE = "cable ducts in the module covers", "fewer screws at the connector plate"
COUNTED = (RIM, LID, FILLER, BUSBAR, DUCTS, PLATE)


@cache
def rows(name: str, key: str) -> dict[str, Row]:
    """Give the rows of the subject, or of a table without packs, by a column."""
    with (DATASETS / name).open(encoding="utf-8", newline="") as stream:
        found = [
            r for r in csv.DictReader(stream) if r.get("pack", "") in ("", SUBJECT)
        ]
    return {row[key]: row for row in found}


def part(name: str) -> Row:
    return rows("demo/parts.csv", "part")[name]


def joint(name: str) -> Row:
    return rows("demo/joints.csv", "joint")[name]


def material(name: str) -> Row:
    return rows("demo/materials.csv", "material")[name]


def change(name: str) -> Row:
    return rows("demo/changes.csv", "change")[name]


@cache
def study(name: str) -> Row:
    with (DATASETS / "demo/studies.csv").open(encoding="utf-8", newline="") as stream:
        return next(row for row in csv.DictReader(stream) if row["study"] == name)


@cache
def pack(name: str) -> Row:
    with (DATASETS / "demo/packs.csv").open(encoding="utf-8", newline="") as stream:
        return next(row for row in csv.DictReader(stream) if row["pack"] == name)


def number(row: Row, column: str) -> float:
    return float(row[column])


def part_kg(name: str) -> float:
    return number(part(name), "count") * number(part(name), "mass each [kg]")


def joint_kg(name: str) -> float:
    return number(joint(name), "count") * number(joint(name), "mass each [g]") / 1000


def given(name: str, what: str, unit: str = "") -> Ends:
    """Give a range as a change states it, nothing where it states none."""
    row, tail = change(name), f" {unit}" if unit else ""
    texts = [row[f"{what} {end}{tail}"] for end in ("low", "likely", "high")]
    low, likely, high = (float(text) if text else 0.0 for text in texts)
    return low, likely, high


def total(ranges: Iterable[Ends]) -> Ends:
    low, likely, high = (math.fsum(ends) for ends in zip(*ranges, strict=True))
    return low, likely, high


def less(before: float, after: Ends) -> Ends:
    """Give what is saved: least where the new mass is greatest."""
    low, likely, high = after
    return before - high, before - likely, before - low
