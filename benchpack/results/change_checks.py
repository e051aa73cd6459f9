"""Checks of the changes of a proposal: what holds, what wants a look, what fails.

A check that fails forbids nothing; it stands beside the change in the proposal and in
the brief. Estimates for comparing designs, by design values: licensed practice and
tests decide.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np

from benchpack.model.change import Change, ChangeKind
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.results.change_checks_beam import BEAM, beam_check
from benchpack.results.change_checks_cooling import cooling_check
from benchpack.results.change_checks_fit import EXPANSION, expansion_check
from benchpack.results.change_checks_function import (
    EQUAL_FUNCTION,
    HEAVIER,
    MINIMUM_WALL,
    function_check,
    wall_check,
)
from benchpack.results.change_checks_heat import HeatCase
from benchpack.results.change_checks_joining import JOINING, joining_checks
from benchpack.results.change_checks_material import (
    FLAMMABILITY,
    SERVICE_TEMPERATURE,
    flammability_check,
    temperature_check,
)
from benchpack.results.change_checks_panel import PANEL, panel_check
from benchpack.results.change_checks_parts import PartChange
from benchpack.results.change_checks_plate import HEAT_PATH
from benchpack.results.change_checks_retention import (
    CLAMP_RETENTION,
    retention_checks,
)
from benchpack.results.change_checks_sag import LOADS, LoadCase
from benchpack.results.change_checks_seal import seal_line_checks
from benchpack.results.change_checks_state import Proposed, Subject
from benchpack.results.change_checks_swap import swap_checks
from benchpack.results.check import Check
from benchpack.results.clamp import KIND as CLAMP_LOAD
from benchpack.results.closure import Grade
from benchpack.results.inventory import Inventory
from benchpack.results.ledger import build_ledger
from benchpack.results.ledger_record import Applied, Ledger
from benchpack.results.ledger_today import folded
from benchpack.results.seal import KIND as SEAL_LINE

__all__ = [
    "CAUTION",
    "HEAVIER",
    "KINDS",
    "LOADS",
    "REFUSED",
    "HeatCase",
    "LoadCase",
    "change_checks",
    "checks_of",
    "proposal_checks",
]

KINDS = (
    EQUAL_FUNCTION,
    MINIMUM_WALL,
    PANEL,
    BEAM,
    HEAT_PATH,
    EXPANSION,
    FLAMMABILITY,
    SERVICE_TEMPERATURE,
    CLAMP_LOAD,
    SEAL_LINE,
    JOINING,
    CLAMP_RETENTION,
)
"""What is checked, in the order of the checks of a part."""
REFUSED = "refused"
"""Kind of the one check of a change that does not count."""
CAUTION = (
    "Estimates by design values for comparing designs, not a release: what is to be "
    "validated again is tested, by licensed practice."
)
"""What has to stand beside the checks."""
_CHECKED = (
    ChangeKind.SUBSTITUTE,
    ChangeKind.INTEGRATE,
    ChangeKind.MOULD_IN,
    ChangeKind.ADD,
    ChangeKind.SWAP_JOINTS,
)


def change_checks(
    library: Library,
    study: Study,
    change: Change,
    *,
    ledger: Ledger | None = None,
    inventory: Inventory | None = None,
    loads: Sequence[LoadCase] = LOADS,
    heat: HeatCase | None = None,
) -> tuple[Check, ...]:
    """Check one change of a proposal.

    Parameters
    ----------
    library : Library
        The records of today.
    study : Study
        Names the subject; sets friction and how figures are written.
    change : Change
        The change.
    ledger : Ledger, optional
        The proposal that it belongs to, so that the other changes count; without it
        the change is looked at alone.
    inventory : Inventory, optional
        Today's joints, where they were taken up already.
    loads : sequence of LoadCase
        Loads on panels, the one that is judged first.
    heat : HeatCase, optional
        What heat paths are checked with.

    Returns
    -------
    tuple of Check
        In the order of `KINDS` for each part; a change that is refused has one of the
        kind `REFUSED`. Empty for changes that remove or adjust.

    Raises
    ------
    KeyError
        When the library has no such pack.
    """
    if ledger is None:
        alone = replace(change, is_on=True, requires=(), excludes=())
        ledger = build_ledger(library, study, (alone,))
    applied = ledger.applied_to(change.name)
    if applied is not None:
        proposed = Proposed(Subject(library, study, inventory), ledger)
        return checks_of(applied, proposed, loads=loads, heat=heat)
    return tuple(
        Check(REFUSED, other.name, Grade.NONE, problem.what, (), problem.remedy)
        for other, problem in ledger.refused
        if other.name == change.name
    )


def proposal_checks(
    library: Library,
    study: Study,
    ledger: Ledger,
    *,
    inventory: Inventory | None = None,
    loads: Sequence[LoadCase] = LOADS,
    heat: HeatCase | None = None,
) -> dict[str, tuple[Check, ...]]:
    """Check all changes of a proposal that count.

    Parameters
    ----------
    library, study, inventory, loads, heat
        As in `change_checks`.
    ledger : Ledger
        The proposal.

    Returns
    -------
    dict of str to tuple of Check
        By the name of the change, in order.
    """
    proposed = Proposed(Subject(library, study, inventory), ledger)
    return {
        applied.change.name: checks_of(applied, proposed, loads=loads, heat=heat)
        for applied in ledger.applied
    }


def checks_of(
    applied: Applied,
    proposed: Proposed,
    *,
    loads: Sequence[LoadCase] = LOADS,
    heat: HeatCase | None = None,
) -> tuple[Check, ...]:
    """Check one change that counts.

    Parameters
    ----------
    applied : Applied
        What a ledger says of the change.
    proposed : Proposed
        The subject after all changes of that ledger.
    loads, heat
        As in `change_checks`.
    """
    # A figure that is out of all proportion is unknown, not worth a warning each time.
    with np.errstate(all="ignore"):
        return tuple(_checks(applied, proposed, loads, heat or HeatCase()))


def _checks(
    applied: Applied, proposed: Proposed, loads: Sequence[LoadCase], heat: HeatCase
) -> Iterator[Check]:
    change = applied.change
    if change.kind not in _CHECKED:
        return
    made = proposed.made[change.name]
    for one in made:
        yield from _part_checks(one, proposed, loads, heat)
    yield from swap_checks(change, proposed)
    changed = [folded(one.after.name) for one in made]
    if change.kind is ChangeKind.SWAP_JOINTS:
        changed = [folded(item.name) for item in applied.after]
    if change.kind is not ChangeKind.ADD:
        yield from seal_line_checks(changed, proposed)
    for one in made:
        yield from joining_checks(one, proposed)
        yield from retention_checks(one, proposed)


def _part_checks(
    made: PartChange, proposed: Proposed, loads: Sequence[LoadCase], heat: HeatCase
) -> Iterator[Check]:
    wording = proposed.wording
    found = (
        function_check(made, wording),
        wall_check(made, wording),
        panel_check(made, loads, wording),
        beam_check(made, wording),
        cooling_check(made, proposed, heat),
        expansion_check(made, proposed),
        flammability_check(made),
        temperature_check(made, wording),
    )
    yield from filter(None, found)
