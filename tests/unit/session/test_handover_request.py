"""What is handed over of a study, as the command line asks for it."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest

from benchpack.errors import DataError
from benchpack.files.demo import demo_library
from benchpack.model.change import ChangeKind
from benchpack.results.fingerprint import fingerprint_of
from benchpack.session.handover_request import (
    hand_over,
    sheets_of,
    take_handover,
    today,
)
from benchpack.session.study_request import take_study


def test_the_first_study_or_the_one_that_is_named() -> None:
    library = demo_library()
    given = take_handover(library, "", wanted="brief", currency="EUR")
    assert given.results.study == library.studies[0]
    assert given.proposal is not None
    assert given.chance is not None
    assert given.proposal.gap is given.results
    assert given.refused == ()
    assert given.fingerprint == fingerprint_of(library, library.studies[0])
    name = library.studies[1].name
    other = take_handover(library, name, wanted="brief", currency="")
    assert other.results.study.name == name
    assert (other.proposal, other.chance, other.refused) == (None, None, ())


def test_the_case_and_the_sheets_are_of_the_same_study() -> None:
    library = demo_library()
    given = hand_over(library, library.studies[0])
    assert given.case.gap is given.results
    assert given.case.proposal is given.proposal
    sheets = sheets_of(given, made_on=date(2026, 11, 30))
    titles = [sheet.title for sheet in sheets]
    assert titles[5:10] == ["Value", "Programme", "By year", "Price", "Vehicle"]
    said = [cell.content for cell in sheets[0].cells.values()]
    assert given.fingerprint in said
    assert "2026-11-30" in said


def test_changes_that_do_not_count_are_said() -> None:
    library = demo_library()
    study = library.studies[0]
    own = library.changes_of(study.name)
    lost = next(one for one in own if one.kind is ChangeKind.SUBSTITUTE)
    lost = replace(lost, parts=("no such part",))
    changed = tuple(lost if one.name == lost.name else one for one in own)
    library = replace(library, changes={study.name: changed})
    (problem,) = hand_over(library, study).refused
    assert "no such part" in str(problem)


def test_what_cannot_be_asked() -> None:
    library = demo_library()
    with pytest.raises(DataError, match="and so no brief"):
        take_study(replace(library, studies=()), wanted="brief")
    with pytest.raises(DataError, match="there are no exchange rates"):
        take_study(library, wanted="brief", currency="USD")
    with pytest.raises(DataError, match="Did you mean 'Avocet 81 among"):
        take_study(library, "avocet 81 among gross packs", wanted="brief")
    alone = replace(library.studies[0], subject="Wren 9")
    with pytest.raises(DataError, match="Wren 9"):
        hand_over(library, alone)


def test_today_is_a_day_of_now() -> None:
    now = datetime.now(tz=UTC).date()
    assert abs(today() - now) <= timedelta(days=1)
