"""Neither a change nor what only a proposal asks can alter a gap."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from benchpack.files.demo import demo_library
from benchpack.model.change import ProgrammeKind
from benchpack.model.study import PROPOSAL_ASSUMPTIONS
from benchpack.results.results import compute

VALUES: dict[str, Any] = {
    "programme": ProgrammeKind.NEW,
    "yearly_volume": 12_345,
    "programme_years": 3.0,
    "discount_rate": 0.15,
    "tooling_budget": 1.0,
}


def test_every_assumption_of_the_proposal_is_tried() -> None:
    assert set(VALUES) == set(PROPOSAL_ASSUMPTIONS)


@pytest.mark.parametrize("name", PROPOSAL_ASSUMPTIONS)
def test_gaps_are_taken_over_and_would_come_out_the_same(name: str) -> None:
    library = demo_library()
    study = library.studies[0]
    before = compute(library, study)
    other = replace(study, **{name: VALUES[name]})
    assert other != study
    kept = compute(library, other, previous=before)
    assert kept.comparison is before.comparison
    assert kept.study == other
    assert compute(library, other).gap_kg == before.gap_kg


def test_no_change_alters_a_gap() -> None:
    library = demo_library()
    study = library.studies[0]
    before = compute(library, study)
    bare = replace(library, changes={})
    assert compute(bare, study, previous=before).comparison is before.comparison
    assert compute(bare, study).gap_kg == before.gap_kg
