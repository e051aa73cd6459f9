"""The proposals of the demo: their rows by csv alone, and what they come to."""

from __future__ import annotations

import csv
import json
import math
from pathlib import Path

import pytest

from benchpack.files.demo import demo_library
from benchpack.model.change import ChangeKind
from benchpack.model.change_needs import lacking
from benchpack.results.proposal import ProposalResults, proposal

DEMO = Path(__file__).parents[3] / "datasets" / "demo"
MAIN = "Avocet 81 against Dunlin 74"
FLAT = "Avocet 81, floor in short-fibre polymer"
RANGES = (
    *("mass {} [kg]", "part cost {}", "joining cost {}", "time {} [s]"),
    *("tooling {}", "validation cost {}", "lead time {} [weeks]"),
)

Row = dict[str, str]


def _read(name: str) -> list[Row]:
    with (DEMO / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file, strict=True))


CHANGES = _read("changes")
STUDIES = {row["study"]: row for row in _read("studies")}
PARTS = {(row["pack"], row["part"]): row for row in _read("parts")}
JOINTS = {(row["pack"], row["joint"]): row for row in _read("joints")}
MATERIALS = {row["material"]: row for row in _read("materials")}


def _names(row: Row, column: str) -> list[str]:
    found: list[str] = json.loads(row[column] or "[]")
    return found


def _of(study: str) -> list[Row]:
    return [row for row in CHANGES if row["study"] == study]


def test_two_studies_have_a_proposal_the_first_of_six_to_twelve_changes() -> None:
    assert next(iter(STUDIES)) == MAIN
    assert {row["study"] for row in CHANGES} == {MAIN, FLAT}
    assert 6 <= len(_of(MAIN)) <= 12
    assert len({(row["study"], row["change"]) for row in CHANGES}) == len(CHANGES)
    assert {row["on"] for row in _of(MAIN)} == {"true", "false"}


def test_changes_act_on_what_is_there_and_may_go() -> None:
    for row in CHANGES:
        subject = STUDIES[row["study"]]["subject"]
        acted_on = [PARTS[subject, name] for name in _names(row, "parts")]
        acted_on += [JOINTS[subject, name] for name in _names(row, "joints")]
        assert acted_on
        assert {found["carry-over"] for found in acted_on} == {"false"}
        assert "assumed to close" not in {found["known by"] for found in acted_on}
        assert not row["material"] or row["material"] in MATERIALS
        names = {other["change"] for other in _of(row["study"])}
        assert {*_names(row, "requires"), *_names(row, "excludes")} <= names


def test_every_change_has_reasons_and_says_that_it_is_invented() -> None:
    for row in CHANGES:
        assert len(row["rationale"]) > 40, row["change"]
        assert row["note"].startswith("Invented figures."), row["change"]
        assert row["programme"]
        assert 0 < float(row["release chance"]) < 1
        assert all(reason for reason in json.loads(row["waived"] or "{}").values())


def test_ranges_are_ordered_and_stand_whole() -> None:
    seen = 0
    for row in CHANGES:
        for head in RANGES:
            cells = [row[head.format(end)] for end in ("low", "likely", "high")]
            if any(cells):
                low, likely, high = map(float, cells)
                assert low < likely < high, (row["change"], head)
                seen += 1
    assert seen >= 25


def _by_hand(old: Row, new: Row, *, by_design: bool) -> float:
    """Mass ratio of plates of equal bending stiffness, E t^3 / (12 (1 - nu^2))."""

    def stiffness(row: Row) -> float:
        modulus = float(row["modulus [GPa]"]) / (1 - float(row["Poisson ratio"]) ** 2)
        return modulus * (float(row["stiffness knock-down"]) if by_design else 1.0)

    wall = math.cbrt(stiffness(old) / stiffness(new))
    return wall * float(new["density [kg/m3]"]) / float(old["density [kg/m3]"])


def test_the_flat_swap_is_lighter_by_the_data_sheet_only() -> None:
    row = next(r for r in _of(FLAT) if r["on"] == "true")
    planks = PARTS["Avocet 81", _names(row, "parts")[0]]
    old, new = MATERIALS[planks["material"]], MATERIALS[row["material"]]
    assert old["kind"] == "metal"
    assert new["kind"] == "thermoplastic"
    assert planks["governs"] == "panel bending stiffness"
    assert _by_hand(old, new, by_design=False) < 0.95
    assert _by_hand(old, new, by_design=True) > 1.15


@pytest.fixture(scope="module", params=[MAIN, FLAT])
def results(request: pytest.FixtureRequest) -> ProposalResults:
    """The proposal of a study, as the program computes it."""
    library = demo_library()
    study = library.study(request.param)
    assert study is not None
    return proposal(library, study)


def test_every_change_that_is_on_counts(results: ProposalResults) -> None:
    assert results.ledger.refused == ()
    counted = {applied.change.name for applied in results.ledger.applied}
    assert counted == {change.name for change in results.changes if change.is_on}
    assert all(lacking(change) == () for change in results.changes)


def test_the_sums_of_both_proposals(results: ProposalResults) -> None:
    """The gap is 498.1 - 447.2 * 81 / 74.4 kg, by hand."""
    gap_kg = 498.1 - 447.2 * 81 / 74.4
    totals = results.totals
    assert totals.gap_kg == pytest.approx(gap_kg)
    entries = math.fsum(entry.saved_kg for entry in results.ledger.entries)
    assert totals.saved_kg.likely == pytest.approx(entries, rel=1e-9)
    if results.study.name == MAIN:
        assert 0.45 <= totals.saved_kg.likely / gap_kg <= 0.57
        assert 5.5 <= totals.saved_kg.likely <= 6.5
        waived = [back for back in results.add_backs if back.waived]
        counted = {b.add_back.key for b in results.add_backs if b.is_counted}
        assert [back.add_back.key for back in waived] == ["seal groove"]
        assert {"shield foil", "bonding straps", "compression limiters"} <= counted
        return
    (resized,) = results.ledger.applied[0].resized
    old, new = (MATERIALS[n] for n in (resized.old_material, resized.new_material))
    ratio = _by_hand(old, new, by_design=True)
    assert resized.design_kg == pytest.approx(5 * 3.122 * ratio)
    assert resized.data_sheet_kg < resized.before_kg < resized.design_kg
    assert resized.is_heavier
    assert totals.saved_kg.high < 0
    assert totals.net_worth.likely < 0


def test_kinds_of_changes_differ() -> None:
    kinds = {row["kind"] for row in _of(MAIN)}
    assert {
        ChangeKind.INTEGRATE,
        ChangeKind.MOULD_IN,
        ChangeKind.SUBSTITUTE,
        ChangeKind.SWAP_JOINTS,
        ChangeKind.ADJUST,
    } <= kinds
