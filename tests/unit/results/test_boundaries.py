"""What is taken out so that two packs are compared on one boundary."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from numpy.testing import assert_allclose

from benchpack.model.boundary import parse_boundary
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.model.words import Basis, Subsystem
from benchpack.results.comparison import compare
from benchpack.results.results import Results, compute
from benchpack.results.uncounted import why_no_gap
from tests.unit.results.packs import library, pack, part

QUESTION = Study(subject="Heron", reference="Egret")


def pair(subject: str, reference: str, **more: Any) -> Library:
    """Give two packs with the boundaries that are written down."""
    return library(
        pack("Heron", 70, 460, cells_mass_kg=300, boundary=parse_boundary(subject)),
        pack("Egret", 80, 470, cells_mass_kg=305, boundary=parse_boundary(reference)),
        **more,
    )


def split_of(results: Results) -> dict[str, float]:
    """Give the gap as weighed by subsystem."""
    assert results.split is not None
    gaps = results.split.gaps.as_weighed_kg.tolist()
    return dict(zip(results.split.names, gaps, strict=True))


def test_a_part_that_was_taken_out_leaves_its_own_row() -> None:
    parts = (
        part("Heron", "cell", 300, Subsystem.CELLS),
        part("Heron", "bottom shield", 14, Subsystem.TRAY),
        part("Heron", "tray", 60, Subsystem.TRAY),
        part("Egret", "cell", 305, Subsystem.CELLS),
        part("Egret", "tray", 55, Subsystem.TRAY),
    )
    records = pair("bottom shield=in", "bottom shield=out", parts=parts)
    results = compute(records, QUESTION)
    rows = split_of(results)
    assert_allclose(rows["tray"], 60 - 55)
    assert_allclose(rows["unaccounted"], (460 - 374) - (470 - 360))
    assert_allclose(sum(rows.values()), -24)
    assert results.split is not None
    assert [item.subsystem for item in results.split.taken_out] == ["tray"]


def test_an_item_that_no_part_is_named_like_is_unaccounted() -> None:
    parts = (
        part("Heron", "cell", 300, Subsystem.CELLS),
        part("Egret", "cell", 305, Subsystem.CELLS),
    )
    records = pair("coolant=in 6", "coolant=out", parts=parts)
    rows = split_of(compute(records, QUESTION))
    assert_allclose(rows["unaccounted"], (460 - 300 - 6) - (470 - 305))
    assert rows["cooling"] == 0


@pytest.mark.parametrize("item", ["coolant", "bottom shield", "onboard charger"])
def test_silence_about_a_large_item_is_not_agreement(item: str) -> None:
    found = compare(pair("tray=in", "tray=in"), QUESTION)
    assert item in found.boundary(0).unsure


def test_cells_are_never_taken_out() -> None:
    records = pair("cells=in 300", "cells=out")
    found = compare(records, QUESTION)
    assert found.boundary(0).unlike == ("cells",)
    assert found.as_weighed_kg.tolist() == [-10]
    for basis in (Basis.EQUAL_ENERGY, Basis.SCALED, Basis.STRUCTURE):
        assert np.isnan(found.by_basis(basis)[0])
        reason = why_no_gap(found, 0, basis=basis)
        assert reason is not None
        assert reason.what.startswith("Egret was weighed without its cells")


def test_a_peer_without_its_cells_is_no_part_of_the_trend() -> None:
    bare = parse_boundary("cells=out")
    peers = [pack(f"Tern {i}", 50 + 10 * i, 330 + 60 * i) for i in range(4)]
    records = library(
        pack("Heron", 70, 460), *peers, pack("Knot", 60, 90, boundary=bare)
    )
    found = compare(records, Study(subject="Heron", basis=Basis.TREND))
    assert found.trend is not None
    assert found.trend.n == 4
    assert_allclose(found.to_trend_kg, 460 - 450)


def test_more_taken_out_than_there_is_gives_no_gap() -> None:
    found = compare(pair("bottom shield=in 170", "bottom shield=out"), QUESTION)
    assert np.isnan(found.subject_mass_kg[0])
    reason = why_no_gap(found, 0, basis=Basis.AS_WEIGHED)
    assert reason is not None
    assert "More would be taken out of Heron" in reason.what


def test_many_references_are_matched_like_one_by_one() -> None:
    texts = ("", "coolant=in 5; tray=in", "coolant=out", "bottom shield=in; lid=in 9")
    packs = [
        pack(f"Tern {i}", 60 + i, 400 + 6 * i, boundary=parse_boundary(texts[i % 4]))
        for i in range(12)
    ]
    shields = tuple(
        part(f"Tern {i}", "bottom shield", 11, Subsystem.OTHER) for i in (3, 7)
    )
    boundary = parse_boundary("coolant=out; bottom shield=out; lid=out")
    records = library(pack("Heron", 70, 460, boundary=boundary), *packs, parts=shields)
    found = compare(records, Study(subject="Heron", reference="Tern 0"))
    for place, one in enumerate(packs):
        taken_kg = found.boundary(place).mass_kg(one.name)
        assert_allclose(found.reference_mass_kg[place], one.mass_kg - taken_kg)
    taken = (found.reference_mass_kg - [one.mass_kg for one in packs]).tolist()
    assert taken == [0, -5, 0, -20, 0, -5, 0, -20, 0, -5, 0, -9]
