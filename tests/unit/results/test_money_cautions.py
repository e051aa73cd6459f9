"""Usual costs in another currency are said as long as a change leans on them."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import pytest

from benchpack.errors import Problem
from benchpack.files.demo import demo_library
from benchpack.model.change import Change, ChangeKind
from benchpack.model.library import Library, by_study
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.results.money_cautions import money_cautions
from benchpack.results.proposal import proposal
from benchpack.results.results import compute
from tests.unit.results.proposal_samples import (
    COVER_IN_LID,
    FLOOR_IN_PP,
    LID_IN_PP,
    NO_BRACKETS,
    ONE_LID,
    RIM_BEAD,
    change,
)
from tests.unit.results.worth_samples import CHANGES, RICH, library_of

FRANCS = replace(
    RICH, currency="CHF", battery_cost=Range.exactly(95.0), energy_price=0.3
)
EUROS_OF_OLD = replace(RICH, currency="JPY")
NOTHING = Range.exactly(0.0)
EVERY_KIND = (
    LID_IN_PP,
    ONE_LID,
    COVER_IN_LID,
    RIM_BEAD,
    FLOOR_IN_PP,
    NO_BRACKETS,
    change("thin mount", ChangeKind.ADJUST, parts=("mount",), mass_kg=NOTHING),
    change("new rib", ChangeKind.ADD, into="rib", material="steel", mass_kg=NOTHING),
)


def said(*changes: Change, study: Study = FRANCS) -> tuple[Problem, ...]:
    return money_cautions(library_of(*changes, study=study), study)


def test_in_euro_or_without_changes_there_is_nothing_to_say() -> None:
    assert said(*CHANGES, study=RICH) == ()
    assert said() == ()
    assert said(replace(LID_IN_PP, is_on=False)) == ()


def test_starting_values_in_another_currency_are_said_without_any_change() -> None:
    (found,) = said(study=EUROS_OF_OLD)
    assert found.what == (
        "Cost of battery and price of energy are starting values in EUR."
    )
    assert found.remedy == "Enter them in JPY."
    assert (found.record, found.column) == (RICH.name, "battery cost")
    (price,) = said(study=replace(EUROS_OF_OLD, battery_cost=Range.exactly(14_000.0)))
    assert price.what == "Price of energy is a starting value in EUR."
    assert (price.remedy, price.column) == ("Enter it in JPY.", "energy price")
    assert said(study=replace(EUROS_OF_OLD, currency="EUR")) == ()
    both = said(LID_IN_PP, study=EUROS_OF_OLD)
    assert [one.column for one in both] == ["part cost", "battery cost"]


def test_in_francs_it_is_said_once_with_the_place_to_mend() -> None:
    (found,) = said(replace(NO_BRACKETS, is_on=False), RIM_BEAD, LID_IN_PP)
    assert "in EUR" in found.what
    assert "In CHF they are not known and count as nothing" in found.what
    assert (found.record, found.column) == ("rim bead", "joining cost")
    (found,) = said(LID_IN_PP)
    assert (found.record, found.column) == ("lid in PP", "part cost")


@pytest.mark.parametrize("count", [1, 2])
def test_it_is_said_wherever_money_is_known_in_euro_alone(count: int) -> None:
    """Whatever the currency alone makes unknown, the caution is there."""
    seen = 0
    for changes in combinations(EVERY_KIND, count):
        unknown = [
            sum(len(one.unknown) for one in proposal(library, study).effects)
            for study in (RICH, FRANCS)
            for library in [library_of(*changes, study=study)]
        ]
        if unknown[1] > unknown[0]:
            seen += 1
            assert said(*changes), [one.name for one in changes]
    assert seen > 3


@pytest.mark.parametrize("kind", list(ChangeKind))
def test_who_enters_the_money_is_not_warned(kind: ChangeKind) -> None:
    plain = next(one for one in EVERY_KIND if one.kind is kind)
    entered = replace(
        plain,
        material="steel" if plain.material else "",
        part_cost=NOTHING,
        joining_cost=NOTHING,
        tooling=NOTHING,
    )
    assert said(entered) == ()
    lean = {"joining_cost": None}
    if kind is ChangeKind.ADJUST:
        lean = {"part_cost": None}
    assert said(replace(entered, **lean))  # type: ignore[arg-type]  # names are attributes


def test_a_polymer_asks_for_add_backs_whose_cost_cannot_be_entered() -> None:
    given = {"part_cost": NOTHING, "joining_cost": NOTHING, "tooling": NOTHING}
    assert said(replace(LID_IN_PP, **given))  # type: ignore[arg-type]  # names are attributes


def without_changes(library: Library) -> Library:
    return replace(library, changes=by_study(()))


def test_the_caution_comes_and_goes_with_the_currency_and_the_changes() -> None:
    library = demo_library()
    study = library.first_study()
    euro = compute(library, study)
    francs = compute(library, replace(study, currency="CHF"), previous=euro)
    assert francs.comparison is euro.comparison
    assert len(francs.cautions) == len(euro.cautions) + 2
    assert "count as nothing" in francs.cautions[0].what
    fresh = compute(library, replace(study, currency="CHF"))
    assert fresh.cautions == francs.cautions
    dearer = replace(francs.study, worth_high_per_kg=9.0)
    assert compute(library, dearer, previous=francs).cautions is francs.cautions
    bare = without_changes(library)
    emptied = compute(bare, francs.study, previous=francs)
    assert len(emptied.cautions) == len(euro.cautions) + 1
    assert "starting values" in emptied.cautions[0].what
    again = compute(library, francs.study, previous=emptied)
    assert again.cautions == francs.cautions
    back = compute(library, study, previous=francs)
    assert back.cautions == euro.cautions
    alone = compute(library, replace(francs.study, reference=""))
    assert alone.cautions[0] == francs.cautions[0]
