"""What a reader has to know before trusting the money of a proposal."""

from __future__ import annotations

from collections.abc import Mapping

from benchpack.errors import Problem
from benchpack.model.change import Change
from benchpack.model.change_words import ChangeKind
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.results.joint_facts import USUAL_CURRENCY
from benchpack.results.ledger_resizing import is_polymer
from benchpack.results.pair_cautions import caution
from benchpack.results.starting_money import unconverted

_PARTS, _JOINING, _TOOLS = "part_cost", "joining_cost", "tooling"
_ASKED: Mapping[ChangeKind, tuple[str, ...]] = {
    ChangeKind.REMOVE: (_PARTS, _JOINING),
    ChangeKind.SUBSTITUTE: (_PARTS, _JOINING, _TOOLS),
    ChangeKind.INTEGRATE: (_PARTS, _JOINING, _TOOLS),
    ChangeKind.MOULD_IN: (_PARTS, _JOINING),
    ChangeKind.ADD: (_PARTS, _JOINING, _TOOLS),
    ChangeKind.SWAP_JOINTS: (_JOINING,),
    ChangeKind.ADJUST: (_PARTS,),
}
"""Money of each kind of change that usual figures stand in for where none is given."""
_TITLES = {_PARTS: "part cost", _JOINING: "joining cost", _TOOLS: "tooling"}


def money_cautions(library: Library, study: Study) -> tuple[Problem, ...]:
    """Give the cautions that usual costs and starting values are in another currency.

    It reads the changes alone and works no proposal out, so that it may come with
    every state: money that a change leaves open may turn out to be none.

    Parameters
    ----------
    library : Library
        The records, with the changes of the study.
    study : Study
        Its currency.

    Returns
    -------
    tuple of Problem
        None where the currency is that of the usual costs.
    """
    if study.currency == USUAL_CURRENCY:
        return ()
    starting = unconverted(study)
    found = _of_changes(library, study)
    if starting is not None:
        what, remedy = starting.what, starting.remedy
        found += (caution(what, remedy, study.name, starting.column),)
    return found


def _of_changes(library: Library, study: Study) -> tuple[Problem, ...]:
    """Give the caution of the first change that asks for a usual cost."""
    for change in library.changes_of(study.name):
        asked = _asked(change, library) if change.is_on else ""
        if asked:
            return (_caution(study, change.name, asked),)
    return ()


def _asked(change: Change, library: Library) -> str:
    """Give the column of the first money that is left to usual figures, "" for none."""
    for attribute in _ASKED[change.kind]:
        if getattr(change, attribute) is None:
            return _TITLES[attribute]
    # What add-backs cost is never entered, and metal in a polymer asks for some.
    wanted = change.material.strip().casefold()
    named = (one for one in library.materials if one.name.strip().casefold() == wanted)
    is_made_of_polymer = bool(wanted) and is_polymer(next(named, None))
    return _TITLES[_PARTS] if is_made_of_polymer else ""


def _caution(study: Study, record: str, column: str) -> Problem:
    money = study.currency
    return caution(
        f"Usual costs of processes, joints and add-backs are in {USUAL_CURRENCY}. In "
        f"{money} they are not known and count as nothing, so what the proposal is "
        "worth may be far off.",
        f"Enter what parts, joining and tools of each change cost in {money}, or value "
        f"the study in {USUAL_CURRENCY}.",
        record,
        column,
    )
