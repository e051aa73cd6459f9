"""One edit of a change costs the same in a library of many packs as of few."""

from __future__ import annotations

import math
import time
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest

from benchpack.files.library_file import LibraryFile
from benchpack.model.change import Change, ChangeKind
from benchpack.model.library import Library, by_study
from benchpack.model.pack_table import PackTable
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.session.change_edits import with_change_values
from benchpack.session.document import Document
from benchpack.session.edits import with_pack_values
from benchpack.session.state import State

pytestmark = [pytest.mark.benchmark, pytest.mark.timeout(300)]

MANY = 100_000
CHANGES = tuple(
    Change(
        "Study",
        f"change {i}",
        ChangeKind.ADJUST,
        parts=(f"part {i}",),
        mass_kg=Range(1.0, 2.0, 3.0),
        rationale="Invented.",
    )
    for i in range(50)
)


def _library(count: int) -> Library:
    names = np.array([f"Pack {i}" for i in range(count)], dtype=object)
    energy = np.linspace(40.0, 110.0, count)
    packs = PackTable({"name": names, "energy_kwh": energy, "mass_kg": 6.0 * energy})
    studies = (Study("Study", "Pack 0", "Pack 1"),)
    return Library(packs=packs, studies=studies, changes=by_study(CHANGES))


def _change(state: State, turn: int) -> State:
    values = {"mass_kg": Range(1.0, 2.0, 3.0 + turn)}
    return with_change_values(state, "Study", "change 7", values)


def _pack(state: State, turn: int) -> State:
    return with_pack_values(state, 0, {"mass_kg": 300.0 + turn})


def _edited_ms(document: Document) -> tuple[float, float]:
    """Give the best time of an edit of a change, and of one of a pack."""
    best = [math.inf, math.inf]
    for turn in range(1, 12):
        for place, edit in enumerate((_change, _pack)):
            state = edit(document.state, turn)
            start = time.perf_counter()
            document.apply("edit", state)
            best[place] = min(best[place], 1e3 * (time.perf_counter() - start))
    return best[0], best[1]


@pytest.fixture
def few_and_many(tmp_path: Path) -> Iterator[tuple[Document, Document]]:
    """Open libraries of ten and of a hundred thousand packs."""
    documents = []
    for count in (10, MANY):
        path = tmp_path / f"{count}.benchpack"
        store = LibraryFile.create(path, _library(count))
        documents.append(Document(State(store.read(), "Study"), store, path=path))
    yield documents[0], documents[1]
    for document in documents:
        document.close()


def test_an_edit_of_a_change_does_not_ask_how_many_packs_there_are(
    few_and_many: tuple[Document, Document],
) -> None:
    few, many = (_edited_ms(document) for document in few_and_many)
    print(f"\nchange: {few[0]:.1f} ms of 10 packs, {many[0]:.1f} ms of {MANY}")
    print(f"pack: {few[1]:.1f} ms of 10 packs, {many[1]:.1f} ms of {MANY}")
    assert 0.2 < many[0] <= 2 * few[0] + 1
    assert many[0] <= 3 * many[1] + 1
