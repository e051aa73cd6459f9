"""What belongs to a study and what does not; the rest does not change its answer."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings

from benchpack.files.demo import demo_library
from benchpack.model.change import Change, ChangeKind
from benchpack.model.joint import Joint
from benchpack.model.library import Library, by_pack, by_study
from benchpack.model.material import Material, Source
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.report.gap_table import gap_rows
from benchpack.report.proposal_print import proposal_print
from benchpack.report.proposal_table import ledger_rows
from benchpack.results.proposal import proposal
from benchpack.results.proposal_matters import mass_matters
from benchpack.results.proposal_trials import simulate
from benchpack.results.results import compute
from benchpack.results.study_scope import library_of_study, study_records
from tests.strategies.questions import questions
from tests.strategies.records import libraries

STUDY = Study(
    name="asked",
    subject="Heron 70",
    reference="Egret 80",
    peers=("Ibis 90",),
    worth_source="tender",
)


def whole() -> Library:
    """Four packs, three of them asked about, and records that nothing names."""
    packs = (
        Pack("Egret 80", 80, 470, source="scale"),
        Pack("Crane 60", 60, 400, source="leaflet"),
        Pack("Heron 70", 70, 460, source="Scale "),
        Pack("Ibis 90", 90, 520, enclosure_material="mild steel"),
    )
    parts = (
        Part("Heron 70", "lid", material=" Steel"),
        Part("Crane 60", "lid", material="brass"),
    )
    changes = (
        Change("asked", "lid in PP", ChangeKind.SUBSTITUTE, material="pp"),
        Change("other", "lid in PA", ChangeKind.SUBSTITUTE, material="PA"),
    )
    return Library(
        packs=PackTable.from_packs(packs),
        parts=by_pack(parts),
        joints=by_pack((Joint("Crane 60", "clips"), Joint("Egret 80", "clips"))),
        materials=tuple(
            Material(name, source=source)
            for name, source in (
                ("steel", "handbook"),
                ("PP", ""),
                ("PA", "data sheet"),
                ("brass", ""),
                ("mild steel", ""),
            )
        ),
        sources=tuple(
            map(Source, ("scale", "leaflet", "handbook", "data sheet", "tender"))
        ),
        studies=(replace(STUDY, name="other"), STUDY),
        changes=by_study(changes),
        title="All",
        note="Invented.",
    )


def test_only_what_the_study_names_stays() -> None:
    scope = library_of_study(whole(), STUDY)
    assert scope.packs.names.tolist() == ["Egret 80", "Heron 70", "Ibis 90"]
    assert list(scope.parts) == ["Heron 70"]
    assert list(scope.joints) == ["Egret 80"]
    assert [one.name for one in scope.materials] == ["steel", "PP", "mild steel"]
    assert [one.name for one in scope.sources] == ["scale", "handbook", "tender"]
    assert scope.studies == (STUDY,)
    assert {name: len(own) for name, own in scope.changes.items()} == {"asked": 1}
    assert (scope.title, scope.note) == ("All", "Invented.")


def test_a_study_without_peers_needs_every_pack() -> None:
    library = whole()
    scope = library_of_study(library, replace(STUDY, peers=()))
    assert scope.packs == library.packs
    assert scope.parts == library.parts
    assert [one.name for one in scope.materials] == [
        "steel",
        "PP",
        "brass",
        "mild steel",
    ]


def test_a_study_that_is_not_stored_has_a_scope() -> None:
    library = replace(whole(), studies=())
    scope = library_of_study(library, replace(STUDY, name="new"))
    assert [one.name for one in scope.studies] == ["new"]
    assert not scope.changes


@settings(max_examples=30, deadline=None, suppress_health_check=list(HealthCheck))
@given(libraries())
def test_the_scope_of_a_scope_is_itself(library: Library) -> None:
    for study in library.studies:
        scope = library_of_study(library, study)
        assert library_of_study(scope, study) == scope
        assert study_records(scope, study) == study_records(library, study)


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(questions())
def test_the_gaps_are_the_same_without_the_rest(
    question: tuple[Library, Study],
) -> None:
    library, study = question
    results = compute(library, study)
    again = compute(library_of_study(library, study), study)
    assert again.missing == results.missing
    assert again.cautions == results.cautions
    for one, other in zip(gap_rows(again), gap_rows(results), strict=True):
        np.testing.assert_equal(one, other)


@pytest.mark.parametrize("place", range(3))
def test_the_demo_answers_the_same_without_the_rest(place: int) -> None:
    library = demo_library()
    study = library.studies[place]
    scope = library_of_study(library, study)
    assert len(scope.materials) < len(library.materials)
    one, other = (list(gap_rows(compute(held, study))) for held in (scope, library))
    np.testing.assert_equal(one, other)
    if not library.changes_of(study.name):
        return
    found = [proposal(one, study) for one in (scope, library)]
    rows = [list(ledger_rows(one)) for one in found]
    assert rows[0] == rows[1]
    texts = [
        proposal_print(one, simulate(one), matters=mass_matters(one)) for one in found
    ]
    assert texts[0] == texts[1]
