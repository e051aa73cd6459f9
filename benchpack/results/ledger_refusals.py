"""Why a change does not count: what it acts on is gone, has to stay, is not known."""

from __future__ import annotations

from benchpack.errors import DataError, Problem
from benchpack.model.change import Change
from benchpack.results.ledger_record import Item, ItemKind


class RefusedError(Exception):
    """A change that does not count.

    Parameters
    ----------
    problem : Problem
        The reason, with the name of the change as its record.
    is_conflict : bool
        True where another change is in the way.
    """

    def __init__(self, problem: Problem, *, is_conflict: bool = False) -> None:
        super().__init__(str(problem))
        self.problem = problem
        self.is_conflict = is_conflict


def refused(change: Change, what: str, remedy: str, *, value: str = "") -> RefusedError:
    """Refuse a change for what its records say.

    Parameters
    ----------
    change : Change
        The change.
    what, remedy : str
        The reason and what to do, as sentences.
    value : str
        Name of the part, joint or material that is in the way.
    """
    return RefusedError(Problem(what, remedy, record=change.name, value=value))


def conflict(change: Change, what: str, remedy: str, *, value: str) -> RefusedError:
    """Refuse a change for what another one does.

    Parameters
    ----------
    change : Change
        The change that comes later.
    what, remedy : str
        The reason, which names the other, and what to do, as sentences.
    value : str
        Name of the part, joint or change that both are about.
    """
    problem = Problem(what, remedy, record=change.name, value=value)
    return RefusedError(problem, is_conflict=True)


def not_recordable(change: Change, error: DataError) -> RefusedError:
    """Refuse a change whose part or joint has figures that no record can hold.

    Parameters
    ----------
    change : Change
        The change.
    error : DataError
        What the record said.
    """
    problem = error.problems[0]
    return refused(
        change,
        f"{problem.record or 'What comes of it'} cannot be recorded so: {problem.what}",
        "Check the masses and counts that it starts from, or give its mass.",
        value=problem.record,
    )


def taken_away(change: Change, name: str, *, by: str, into: str) -> RefusedError:
    """Refuse to act on what an earlier change has taken.

    Parameters
    ----------
    change : Change
        The change that comes later.
    name : str
        Part or joint that both are about.
    by : str
        Name of the earlier change.
    into : str
        What the part has become, empty where it is gone.
    """
    remedy = "Switch one of the two off, or change their order."
    if into:
        remedy = f"Act on {into}, switch one of the two off, or change their order."
    what = f"{change.name} acts on {name}, which {by} has taken before it."
    return conflict(change, what, remedy, value=name)


def not_there(change: Change, name: str, *, kind: ItemKind, pack: str) -> RefusedError:
    """Refuse to act on what is not in the pack."""
    return refused(
        change,
        f"{pack} has no {kind} {name!r}.",
        f"Choose a {kind} that is recorded, or one that an earlier change makes.",
        value=name,
    )


def twice_there(change: Change, name: str) -> RefusedError:
    """Refuse a name that more than one record bears."""
    what = f"More than one record bears the name {name!r}."
    return refused(change, what, "Give each a name of its own.", value=name)


def stays(change: Change, item: Item, *, along_with: str = "") -> RefusedError:
    """Refuse to touch a carry-over part or joint, with its recorded reason."""
    why = item.record.reason.strip() or "no reason was recorded"
    with_it = f" It would go with {along_with}." if along_with else ""
    return refused(
        change,
        f"{item.name} is carry-over: {why}.{with_it}",
        "Leave it as it is, or take the carry-over mark off where it no longer holds.",
        value=item.name,
    )


def only_assumed(change: Change, item: Item) -> RefusedError:
    """Refuse a saving of what is only assumed to close the balance."""
    return refused(
        change,
        f"The mass of {item.name} is only assumed to close the balance.",
        "Weigh it: what is assumed to close never enters a saving.",
        value=item.name,
    )


def not_weighed(change: Change, item: Item) -> RefusedError:
    """Refuse a saving of a part whose mass nobody knows."""
    what = f"No mass is recorded for {item.name}."
    return refused(change, what, "Weigh it, or enter its mass.", value=item.name)


def seals(change: Change, item: Item, line: str) -> RefusedError:
    """Refuse to take a joint off a seal line without a replacement."""
    of = f"the seal line {line}" if line else "a seal"
    itself = item.name == line
    said = f"{item.name} is a seal line" if itself else f"{item.name} keeps {of} tight"
    return refused(
        change,
        f"{said}, and nothing is named that takes its place.",
        "Swap it for another joint, or make the parts that it joins one.",
        value=item.name,
    )


def name_in_use(change: Change, name: str, *, kind: ItemKind) -> RefusedError:
    """Refuse a name for what comes that something else bears."""
    what = f"There is a {kind} {name!r} already."
    return refused(change, what, "Choose another name.", value=name)
