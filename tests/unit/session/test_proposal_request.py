"""A proposal as the command line asks for it, and its ledger as CSV."""

from __future__ import annotations

import csv
import json
from dataclasses import replace
from pathlib import Path

import pytest
from frictionless import Resource, Schema

from benchpack.errors import DataError
from benchpack.model.change import ChangeKind
from benchpack.model.library import Library, by_study
from benchpack.model.ranges import Range
from benchpack.session.proposal_request import (
    answer_text,
    take_proposal,
    write_ledger_csv,
)
from tests.unit.results.proposal_samples import (
    LID_IN_PP,
    NO_BRACKETS,
    STUDY,
    bench,
    change,
    proposal_of,
)


def two_studies() -> Library:
    other = replace(STUDY, name="Other")
    library = bench(NO_BRACKETS)
    mine = replace(LID_IN_PP, study="Other")
    return replace(
        library, studies=(STUDY, other), changes=by_study((NO_BRACKETS, mine))
    )


def test_the_first_study_or_the_one_that_is_named() -> None:
    library = two_studies()
    assert [one.name for one in take_proposal(library).changes] == ["no brackets"]
    assert take_proposal(library, "Other").effects[0].name == "lid in PP"


def test_a_study_that_is_not_there_has_a_near_one() -> None:
    with pytest.raises(DataError, match=r"no study 'heron'\. Did you mean 'Heron'"):
        take_proposal(two_studies(), "heron")
    with pytest.raises(DataError, match="not in the file"):
        take_proposal(two_studies(), "qqqqq")


def test_a_study_without_changes_names_one_that_has() -> None:
    library = replace(two_studies(), changes=by_study([NO_BRACKETS]))
    with pytest.raises(DataError, match=r"Other has no changes\. Choose .*'Heron'"):
        take_proposal(library, "Other")
    with pytest.raises(DataError, match="holds no study"):
        take_proposal(replace(library, studies=()))


def test_money_in_another_currency_is_refused() -> None:
    with pytest.raises(DataError, match="no exchange rates"):
        take_proposal(two_studies(), currency="USD")
    assert take_proposal(two_studies(), currency="EUR").effects


def test_the_text_states_the_chance() -> None:
    assert "The chance of saving the target" in answer_text(proposal_of(NO_BRACKETS))


def test_the_ledger_is_a_valid_table_with_its_schema_beside_it(tmp_path: Path) -> None:
    out = tmp_path / "ledger.csv"
    write_ledger_csv(proposal_of(LID_IN_PP, NO_BRACKETS), out)
    described = json.loads((tmp_path / "ledger.schema.json").read_text("utf-8"))
    schema = Schema.from_descriptor(described)
    report = Resource(path=out.name, basepath=str(tmp_path), schema=schema).validate()
    assert report.valid
    with out.open(encoding="utf-8", newline="") as file:
        heads, *rows = list(csv.reader(file))
    assert [field["name"] for field in described["fields"]] == heads
    assert len(rows) >= 6


def test_text_that_a_spreadsheet_would_run_is_neutralised(tmp_path: Path) -> None:
    formula = change(
        "=1+1",
        ChangeKind.ADD,
        into="@part",
        mass_kg=Range.exactly(1.0),
    )
    out = tmp_path / "ledger.csv"
    write_ledger_csv(proposal_of(formula), out)
    with out.open(encoding="utf-8", newline="") as file:
        (row,) = list(csv.DictReader(file))
    assert row["change"] == "'=1+1"
    assert row["item"] == "'@part"
    # Numbers stay numbers, a negative one too.
    assert row["saved [kg]"] == "-1.0"
