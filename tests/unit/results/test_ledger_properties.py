"""No order of changes breaks the ledger: each kilogram and each joint goes once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from benchpack.model.change import Change
from benchpack.results.ledger import ItemKind, Ledger, build_ledger
from benchpack.results.ledger_today import Today, today_of
from tests.unit.results.proposal_samples import JOINTS, PARTS, STUDY, bench
from tests.unit.results.proposal_strategies import proposals

LIBRARY = bench()
TODAY: Today = today_of(LIBRARY, STUDY)
STAYING = {one.name for one in (*PARTS, *JOINTS) if one.carry_over}


def ledger_of(changes: Sequence[Change]) -> Ledger:
    return build_ledger(LIBRARY, STUDY, changes, today=TODAY)


def check(ledger: Ledger) -> None:
    assert_allclose(
        ledger.today_kg - ledger.saved_kg, ledger.proposed_kg.likely, rtol=1e-9
    )
    _check_chains(ledger)
    assert not STAYING & {entry.item for entry in ledger.entries}
    assert "ballast" not in {entry.item for entry in ledger.entries}
    refused = {change.name for change, _ in ledger.refused}
    applied = {one.change.name for one in ledger.applied}
    assert not refused & applied
    assert len(refused) == len(ledger.refused)


def _check_chains(ledger: Ledger) -> None:
    """Follow each part and joint: a change starts from what the one before left."""
    today = {(False, i.name): i for i in TODAY.parts.values()}
    today |= {(True, i.name): i for i in TODAY.joints.values()}
    kilograms = {key: item.mass_kg for key, item in today.items()}
    pieces = {key: item.pieces for key, item in today.items()}
    for entry in ledger.entries:
        if entry.item_kind is ItemKind.ADD_BACK:
            continue
        key = (entry.item_kind is ItemKind.JOINT, entry.item)
        if entry.before_kg.likely or entry.pieces_before:
            assert kilograms[key] == entry.before_kg
            assert pieces[key] == entry.pieces_before
        else:
            assert pieces.get(key, 0) == 0
        kilograms[key], pieces[key] = entry.after_kg, entry.pieces_after
    for held in (ledger.parts, ledger.joints):
        for item in held.values():
            key = (held is ledger.joints, item.name)
            assert kilograms[key] == item.mass_kg
            assert pieces[key] == item.pieces
    left = [*ledger.parts.values(), *ledger.joints.values()]
    assert sum(1 for count in pieces.values() if count) == len(left)


@settings(deadline=None, max_examples=120)
@given(proposals())
def test_no_kilogram_and_no_joint_leaves_twice(changes: tuple[Change, ...]) -> None:
    check(ledger_of(changes))


@settings(deadline=None, max_examples=60)
@given(proposals(), st.data())
def test_no_order_breaks_the_closure(
    changes: tuple[Change, ...], data: st.DataObject
) -> None:
    shuffled = data.draw(st.permutations(changes))
    check(ledger_of(shuffled))


@settings(deadline=None, max_examples=60)
@given(proposals(), st.data())
def test_switching_off_and_on_gives_the_same_ledger(
    changes: tuple[Change, ...], data: st.DataObject
) -> None:
    before = ledger_of(changes)
    place = data.draw(st.integers(0, len(changes) - 1))
    off = [
        replace(one, is_on=False) if at == place else one
        for at, one in enumerate(changes)
    ]
    check(ledger_of(off))
    on = [
        replace(one, is_on=changes[at].is_on) if at == place else one
        for at, one in enumerate(off)
    ]
    after = ledger_of(on)
    assert after.entries == before.entries
    assert after.refused == before.refused
    assert after.proposed_kg == before.proposed_kg


@settings(deadline=None, max_examples=50)
@given(proposals())
def test_what_is_refused_is_refused_alone_or_for_another_change(
    changes: tuple[Change, ...],
) -> None:
    ledger = ledger_of(changes)
    for change, problem in ledger.refused:
        assert problem.record == change.name
        assert problem.what
        assert problem.remedy
    names = {change.name for change in changes}
    for problem in ledger.conflicts:
        others = [n for n in names - {problem.record} if n in problem.what]
        assert others
