"""Cases of worth that several tests share."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy

from benchpack.model.change import Change
from benchpack.model.library import Library
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.results.results import compute
from benchpack.results.worth_case import WorthCase, worth_case
from tests.strategies.assumptions import assumptions
from tests.unit.results.proposal_samples import (
    LID_IN_PP,
    NO_BRACKETS,
    PACK,
    RIM_BEAD,
    STUDY,
    bench,
)

COSTED = replace(
    LID_IN_PP,
    validation_cost=Range(1e5, 2e5, 3e5),
    joining_cost=Range(0.5, 1.0, 2.0),
    mass_kg=Range(6.0, 7.0, 9.0),
)
CHANGES = (COSTED, RIM_BEAD, NO_BRACKETS)
RICH = replace(
    STUDY,
    worth_low_per_kg=10.0,
    worth_likely_per_kg=30.0,
    worth_high_per_kg=40.0,
    yearly_volume=100_000,
    old_part_price=60.0,
    part_price=45.0,
    required_saving=10.0,
    target_kg=4.0,
)
"""A study in which nearly everything pays."""


def case_of(*changes: Change, study: Study = RICH) -> WorthCase:
    """Give the case of a study on the pack of the samples."""
    return worth_case(compute(library_of(*changes, study=study), study))


def library_of(*changes: Change, study: Study = RICH) -> Library:
    """Give the library of a case."""
    return bench(*changes, study=study)


def with_assumed(case: WorthCase, **values: Any) -> WorthCase:
    """Give the case with other assumptions, computed from the start."""
    study = replace(case.study, **values)
    return worth_case(compute(case.gap.library, study))


def studies() -> SearchStrategy[Study]:
    """Studies of the pack of the samples with any assumptions."""
    return st.builds(
        lambda values, target: replace(
            STUDY, reference="Egret 80", subject=PACK, target_kg=target, **values
        ),
        assumptions(lambda: st.sampled_from(("", "agreed", "bench sheet"))),
        st.none() | st.floats(0, 100).map(abs),
    )
