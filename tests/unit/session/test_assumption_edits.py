"""Named sets of assumptions: kept, used, renamed, removed, and all of it undone."""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from benchpack.errors import DataError
from benchpack.files.library_file import LibraryFile
from benchpack.model.assumptions import AssumptionSet, assumption_values
from benchpack.model.change import Change, ChangeKind
from benchpack.model.library import Library, by_study
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.study import Study
from benchpack.session.assumption_edits import (
    with_kept_set,
    with_renamed_set,
    with_used_set,
    without_set,
)
from benchpack.session.document import Document
from benchpack.session.state import Changed, State, difference
from benchpack.session.study_edits import with_stored_study, without_study
from tests.strategies.assumptions import assumptions

PACKS = PackTable.from_packs([Pack("A", 80.0, 400.0), Pack("B", 60.0, 330.0)])
FIRST = Study("First", "A", "B", worth_likely_per_kg=4.0)
SECOND = Study("Second", "B", "A")
DEAR = AssumptionSet("First", "dear", worth_likely_per_kg=5.0)
CHEAP = AssumptionSet("First", "cheap", worth_low_per_kg=0.5, programme_years=3.0)
OTHER = AssumptionSet("Second", "dear", customer_share=0.2)
NO_LID = Change("First", "no lid", ChangeKind.REMOVE, parts=("lid",))


def start() -> State:
    library = Library(
        packs=PACKS,
        studies=(FIRST, SECOND),
        assumption_sets=by_study((DEAR, CHEAP, OTHER)),
        changes=by_study(
            (Change("First", "no lid", ChangeKind.REMOVE, parts=("lid",)),)
        ),
    )
    return State(library, "First")


def names(state: State, study: str = "First") -> list[str]:
    return [one.name for one in state.library.sets_of(study)]


def found(state: State, name: str) -> AssumptionSet:
    return next(one for one in state.library.sets_of("First") if one.name == name)


def test_what_the_study_reckons_with_is_kept_under_a_name() -> None:
    before = start()
    state = with_kept_set(before, "  as agreed ")
    assert names(state) == ["dear", "cheap", "as agreed"]
    assert assumption_values(found(state, "as agreed")) == assumption_values(FIRST)
    assert difference(before, state) is Changed.STUDY
    assert names(state, "Second") == ["dear"]


def test_a_name_that_is_there_is_kept_anew_in_its_place() -> None:
    state = with_kept_set(start(), "dear")
    assert names(state) == ["dear", "cheap"]
    assert found(state, "dear").worth_likely_per_kg == 4.0


def test_keeping_stores_a_study_that_is_only_on_screen() -> None:
    state = with_kept_set(State(Library(packs=PACKS)), "one")
    assert [study.subject for study in state.library.studies] == ["A"]
    assert names(state, state.study.name) == ["one"]


def test_using_a_set_changes_the_assumptions_and_nothing_else() -> None:
    state = with_used_set(start(), "cheap")
    assert assumption_values(state.study) == assumption_values(CHEAP)
    back = replace(state.study, **assumption_values(FIRST))
    assert back == FIRST
    assert names(state) == names(start())


def test_renaming_and_removing() -> None:
    state = with_renamed_set(start(), "dear", " likely ")
    assert names(state) == ["likely", "cheap"]
    assert with_renamed_set(state, "likely", "likely").library == state.library
    assert names(without_set(state, "likely")) == ["cheap"]
    bare = without_set(without_set(state, "likely"), "cheap")
    assert "First" not in bare.library.assumption_sets
    assert names(bare, "Second") == ["dear"]


@pytest.mark.parametrize(
    ("edit", "said"),
    [
        (lambda s: with_kept_set(s, "  "), "no name"),
        (lambda s: with_used_set(s, "none"), "no set of assumptions 'none'"),
        (lambda s: with_renamed_set(s, "none", "x"), "no set of assumptions 'none'"),
        (lambda s: with_renamed_set(s, "dear", "cheap"), "already called 'cheap'"),
        (lambda s: with_renamed_set(s, "dear", " "), "no name"),
        (lambda s: without_set(s, "none"), "no set of assumptions 'none'"),
    ],
)
def test_what_cannot_be_is_refused_with_a_remedy(
    edit: Callable[[State], State], said: str
) -> None:
    with pytest.raises(DataError, match=said) as caught:
        edit(start())
    assert caught.value.problems[0].remedy


def test_a_renamed_study_carries_its_sets_along() -> None:
    state = with_stored_study(
        start(), replace(FIRST, name="Renamed"), instead_of="First"
    )
    assert names(state, "Renamed") == ["dear", "cheap"]
    assert {one.study for one in state.library.sets_of("Renamed")} == {"Renamed"}
    assert names(state) == []
    assert names(state, "Second") == ["dear"]


def test_a_removed_study_drops_its_sets() -> None:
    state = without_study(start(), "First")
    assert dict(state.library.assumption_sets) == {"Second": (OTHER,)}


def test_another_study_starts_without_changes_and_without_sets() -> None:
    """Its assumptions it has from the one on screen; what hangs on that one stays."""
    state = with_stored_study(start(), replace(FIRST, name="Third"), instead_of="")
    assert assumption_values(state.study) == assumption_values(FIRST)
    assert state.changes == ()
    assert names(state, "Third") == []
    assert names(state) == ["dear", "cheap"]
    assert len(state.library.changes_of("First")) == 1


_NAMES = st.sampled_from(["dear", "cheap", "new", "other"])
_EDITS = st.lists(
    st.tuples(
        st.sampled_from(["keep", "use", "rename", "remove", "assume"]),
        _NAMES,
        _NAMES,
        assumptions(lambda: st.sampled_from(("", "agreed"))),
    ),
    max_size=8,
)


@settings(
    max_examples=25,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)
@given(edits=_EDITS)
def test_any_edits_undone_are_the_start_on_the_disk_too(
    edits: list[tuple[str, str, str, dict[str, object]]],
) -> None:
    first = start()
    with tempfile.TemporaryDirectory() as folder:
        store = LibraryFile.create(Path(folder) / "a.benchpack", first.library)
        document = Document(first, store=store)
        for what, one, other, values in edits:
            made: dict[str, Callable[[State], State]] = {
                "keep": lambda s, one=one: with_kept_set(s, one),  # type: ignore[misc]
                "use": lambda s, one=one: with_used_set(s, one),  # type: ignore[misc]
                "rename": lambda s, one=one, other=other: with_renamed_set(  # type: ignore[misc]
                    s, one, other
                ),
                "remove": lambda s, one=one: without_set(s, one),  # type: ignore[misc]
                "assume": lambda s, values=values: s.with_study(**values),  # type: ignore[misc]
            }
            try:
                document.apply(what, made[what](document.state))
            except DataError:
                continue
            assert (
                store.read().assumption_sets == document.state.library.assumption_sets
            )
            assert store.read().studies == document.state.library.studies
        while document.undo():
            pass
        assert document.state.library.assumption_sets == first.library.assumption_sets
        assert document.state.study == first.study
        assert store.read().assumption_sets == first.library.assumption_sets
        document.close()
