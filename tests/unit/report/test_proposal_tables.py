"""The waterfall of a proposal, and its ledger as a table."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.testing import assert_allclose

from benchpack.model.change import ChangeKind
from benchpack.model.ranges import Range
from benchpack.report.proposal_charts import proposal_waterfall
from benchpack.report.proposal_table import ledger_columns, ledger_rows
from tests.unit.results.proposal_samples import (
    FLOOR_IN_PP,
    LID_IN_PP,
    NO_BRACKETS,
    RIM_BEAD,
    STUDY,
    change,
    proposal_of,
)

MOUNT = change("mount", ChangeKind.REMOVE, parts=("mount",))


def test_the_steps_lead_from_today_to_the_proposed_mass() -> None:
    results = proposal_of(LID_IN_PP, RIM_BEAD, NO_BRACKETS)
    spec = proposal_waterfall(results)
    assert spec.names == (
        "today",
        "lid in PP",
        "rim bead",
        "no brackets",
        "add-backs",
        "proposed",
    )
    assert spec.kinds == ("sum", "step", "step", "step", "step", "sum")
    assert_allclose(spec.values[0] + spec.values[1:-1].sum(), spec.values[-1])
    assert_allclose(spec.values[-1], results.totals.proposed_kg.likely)
    assert_allclose(spec.target or 0.0, 455.0)
    assert spec.target_text.startswith("target 455.0")
    assert "short of the target" in spec.title


def test_the_axis_holds_all_levels_and_the_target() -> None:
    spec = proposal_waterfall(proposal_of(FLOOR_IN_PP))
    assert spec.value_range is not None
    low, high = spec.value_range
    levels = np.cumsum(spec.values[:-1])
    assert low < min(levels.min(), spec.target or 0.0)
    assert high > levels.max()
    assert "does not start at zero" in spec.note
    assert spec.title.endswith("heavier than today")


def test_a_reached_target_and_no_target() -> None:
    big = change(
        "big", ChangeKind.ADJUST, parts=("side frame",), mass_kg=Range.exactly(4.0)
    )
    assert "if every change is released" in proposal_waterfall(proposal_of(big)).title
    study = replace(STUDY, target_kg=None)
    spec = proposal_waterfall(proposal_of(big, study=study))
    assert spec.target is None
    assert spec.title == "10.0\u00a0kg saved"


def test_refused_changes_are_not_drawn_but_counted() -> None:
    spec = proposal_waterfall(proposal_of(NO_BRACKETS, MOUNT))
    assert "mount" not in spec.names
    assert "1 that is refused not shown." in spec.note


def test_many_changes_keep_the_large_ones_apart() -> None:
    adds = [
        change(f"a{i}", ChangeKind.ADD, into=f"a{i}", mass_kg=Range.exactly(0.1 + i))
        for i in range(20)
    ]
    spec = proposal_waterfall(proposal_of(*adds))
    assert len(spec.names) == 16
    assert spec.names[-2] == "7 others"
    assert_allclose(spec.values[0] + spec.values[1:-1].sum(), spec.values[-1])


def test_without_a_change_there_is_a_sentence() -> None:
    spec = proposal_waterfall(proposal_of())
    assert spec.is_empty
    assert spec.empty_sentence.startswith("No change counts yet")


def test_in_pounds() -> None:
    study = replace(STUDY, mass_unit="lb")
    spec = proposal_waterfall(proposal_of(NO_BRACKETS, study=study))
    assert spec.axis_label == "Mass [lb]"
    assert_allclose(spec.values[0], 460 / 0.45359237)


def test_the_rows_sum_to_the_saving() -> None:
    waived = replace(LID_IN_PP, waived=(("bonding straps", "frame"),))
    results = proposal_of(waived, RIM_BEAD, MOUNT)
    heads = [column.name for column in ledger_columns()]
    rows = [dict(zip(heads, row, strict=True)) for row in ledger_rows(results)]
    saved = [row["saved [kg]"] for row in rows]
    assert_allclose(
        sum(value for value in saved if isinstance(value, float)),
        results.totals.saved_kg.likely,
        rtol=1e-9,
    )
    by_status = {str(row["status"]) for row in rows}
    assert by_status == {"counted", "taken out of the sum", "refused"}
    (refused,) = [row for row in rows if row["status"] == "refused"]
    assert refused["change"] == "mount"
    assert "body bolt pattern" in str(refused["reason"])
    (out,) = [row for row in rows if row["status"] == "taken out of the sum"]
    assert (out["item"], out["reason"], out["mass after [kg]"]) == (
        "bonding straps",
        "frame",
        None,
    )


def test_the_columns_say_unit_and_type() -> None:
    columns = {column.name: column for column in ledger_columns()}
    assert columns["mass before [kg]"].unit == "kg"
    assert columns["pieces after"].type == "integer"
    assert all(column.description.endswith(".") for column in columns.values())
