"""The same data, the same fingerprint; other data, another one."""

from __future__ import annotations

import os
import random
import subprocess
import sys
from dataclasses import fields, replace
from enum import StrEnum
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from benchpack.files.demo import demo_library
from benchpack.model.boundary import Boundary, Weighed, parse_boundary
from benchpack.model.library import Library, by_pack, by_study
from benchpack.model.pack_table import PackTable
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.results.fingerprint import (
    canonical_text,
    fingerprint_of,
    short_fingerprint,
)
from benchpack.session.document import Document
from benchpack.session.state import State
from tests.strategies.records import libraries

ROOT = Path(__file__).parents[3]
_settings = settings(
    max_examples=40, deadline=None, suppress_health_check=list(HealthCheck)
)


@pytest.fixture(scope="module")
def demo() -> Library:
    return demo_library()


def first(library: Library, **changes: Any) -> str:
    """Give the fingerprint of the first study, some of it replaced."""
    return fingerprint_of(library, replace(library.studies[0], **changes))


def with_pack(library: Library, **changes: Any) -> Library:
    packs = list(library.packs)
    packs[0] = replace(packs[0], **changes)
    return replace(library, packs=PackTable.from_packs(packs))


def test_it_is_a_hash_shown_in_groups(demo: Library) -> None:
    found = first(demo)
    assert len(bytes.fromhex(found)) == 32
    assert short_fingerprint(found).replace(" ", "") == found[:16]
    assert [len(group) for group in short_fingerprint(found).split()] == [4] * 4


def test_two_processes_with_other_hash_seeds_agree(demo: Library) -> None:
    code = (
        "from benchpack.files.demo import demo_library as d\n"
        "from benchpack.results.fingerprint import fingerprint_of as f\n"
        "l = d()\nprint(*(f(l, s) for s in l.studies))"
    )
    found = {
        subprocess.run(
            [sys.executable, "-c", code],
            capture_output=True,
            text=True,
            check=True,
            cwd=ROOT,
            env={**os.environ, "PYTHONHASHSEED": seed},
        ).stdout.split()[0]
        for seed in ("1", "2")
    }
    assert found == {first(demo)}


def shuffled(library: Library, seed: int) -> Library:
    """Give the records in another order, but for what is the study's own."""
    order = random.Random(seed)

    def mixed(records: Any) -> list[Any]:
        return order.sample(list(records), len(records))

    parts = mixed([one for group in library.parts.values() for one in group])
    joints = mixed([one for group in library.joints.values() for one in group])
    return replace(
        library,
        packs=PackTable.from_packs(mixed(library.packs)),
        parts=by_pack(parts),
        joints=by_pack(joints),
        materials=tuple(mixed(library.materials)),
        sources=tuple(mixed(library.sources)),
    )


@_settings
@given(libraries(), st.integers(0, 99))
def test_order_without_meaning_is_none(library: Library, seed: int) -> None:
    other = shuffled(library, seed)
    for study in library.studies:
        peers = tuple(reversed(study.peers))
        expected = fingerprint_of(library, study)
        assert fingerprint_of(other, replace(study, peers=peers)) == expected


def test_the_order_of_changes_has_meaning(demo: Library) -> None:
    name = demo.studies[0].name
    turned = by_study(reversed(demo.changes_of(name)))
    assert first(replace(demo, changes=turned)) != first(demo)


def another(value: Any) -> Any:
    """Give a value near another one, None where it is a choice or unknown."""
    if isinstance(value, StrEnum) or value is None:
        return None
    if isinstance(value, Range):
        return value.scaled(1.01)
    if isinstance(value, str):
        return f"{value}x"
    if isinstance(value, int):
        return value + 1
    if isinstance(value, float):
        return 0.99 * value or 0.01
    return (*value, *value[:1])


def test_every_assumption_but_those_of_the_screen_counts(demo: Library) -> None:
    study = replace(
        demo.studies[0], yearly_volume=30_000, target_kg=6.0, tooling_budget=2e6
    )
    before = fingerprint_of(demo, study)
    special: dict[str, Any] = {
        "mass_unit": "lb",
        "decimal_mark": ",",
        "currency": "USD",
    }
    special["peers"] = ("Dunlin 74",)
    seen = {}
    for field in fields(Study):
        value = special.get(field.name) or another(getattr(study, field.name))
        if value in (None, ()) or field.name == "drive_cycle":
            continue
        changed = replace(study, **{field.name: value})
        seen[field.name] = fingerprint_of(demo, changed)
    same = {name for name, found in seen.items() if found == before}
    assert same == {"mass_unit", "decimal_mark"}
    assert len(set(seen.values())) == len(seen) - 1
    assert len(seen) > 20


def test_what_is_not_the_studys_does_not_count(demo: Library) -> None:
    others = tuple(replace(one, note="x") for one in demo.packs)
    study = demo.studies[1]
    outside = {one.name for one in others} - {
        study.subject,
        study.reference,
        *study.peers,
    }
    packs = [
        new if new.name in outside else old
        for old, new in zip(demo.packs, others, strict=True)
    ]
    changed = replace(demo, packs=PackTable.from_packs(packs), title="x", note="y")
    assert outside
    assert fingerprint_of(changed, study) == fingerprint_of(demo, study)
    assert first(changed) != first(demo)


@pytest.mark.parametrize(
    ("one", "other", "is_same"),
    [
        ({"mass_kg": 500.0}, {"mass_kg": 500.0 + 3e-11}, True),
        ({"mass_kg": 500.0}, {"mass_kg": 500.0 + 3e-9}, False),
        ({"mass_tolerance_kg": 0.0}, {"mass_tolerance_kg": -0.0}, True),
        ({"mass_tolerance_kg": 0.0}, {"mass_tolerance_kg": None}, False),
        ({"note": " caf\u00e9\r\nbar "}, {"note": "cafe\u0301\nbar"}, True),
        ({"note": "'=1"}, {"note": "=1"}, True),
        ({"note": "a b"}, {"note": "a  b"}, False),
        ({"note": "a"}, {"chemistry": "a"}, False),
        (
            {"boundary": Boundary({"lid": Weighed.UNKNOWN, "tray": Weighed.IN})},
            {"boundary": parse_boundary("tray=in")},
            True,
        ),
        (
            {"boundary": parse_boundary("tray=in 14.2")},
            {"boundary": parse_boundary("tray=in 14.3")},
            False,
        ),
    ],
)
def test_what_counts_as_the_same_value(
    demo: Library, one: dict[str, Any], other: dict[str, Any], *, is_same: bool
) -> None:
    found = first(with_pack(demo, **one)), first(with_pack(demo, **other))
    assert (found[0] == found[1]) is is_same


def test_undo_and_redo_bring_it_back(demo: Library) -> None:
    document = Document(State(demo, demo.studies[0].name))
    before = fingerprint_of(document.state.library, document.state.study)
    document.apply("target", document.state.with_study(target_kg=7.5))
    after = fingerprint_of(document.state.library, document.state.study)
    document.undo()
    assert fingerprint_of(document.state.library, document.state.study) == before
    document.redo()
    assert fingerprint_of(document.state.library, document.state.study) == after
    assert after != before


def test_the_text_is_one_line_of_plain_json_for_each_record(demo: Library) -> None:
    text = canonical_text(demo, demo.studies[0])
    assert text.isascii()
    packs = [line for line in text.splitlines() if line.startswith('["packs",')]
    assert len(packs) == len(demo.packs)
    assert packs == sorted(packs)
    assert text.splitlines()[0] == '["study of packs, canonical form",1]'
