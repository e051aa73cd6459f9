"""What a change of each kind cannot do without."""

from __future__ import annotations

from benchpack.errors import Problem
from benchpack.model.change import RANGES, Change, ChangeKind


def lacking(change: Change) -> tuple[Problem, ...]:
    """Say what a change still lacks before it can be counted.

    Parameters
    ----------
    change : Change
        The change.

    Returns
    -------
    tuple of Problem
        Empty where it is complete; whether its parts and joints are there is for the
        ledger to say.

    Examples
    --------
    >>> change = Change("Study", "lighter lid", ChangeKind.SUBSTITUTE, parts=("lid",))
    >>> print(lacking(change)[0])
    lighter lid, column material: It names no new material. Choose one.
    """
    found = [
        Problem(what, remedy, column=column, record=change.name)
        for holds, column, what, remedy in _needs(change)
        if not holds
    ]
    return tuple(found)


def _needs(change: Change) -> list[tuple[bool, str, str, str]]:
    kind = change.kind
    parts = (bool(change.parts), "parts", "It names no part.", "Choose the parts.")
    into = (bool(change.into.strip()), "into")
    material = (
        bool(change.material.strip()),
        "material",
        "It names no new material.",
        "Choose one.",
    )
    if kind is ChangeKind.SUBSTITUTE:
        return [parts, material]
    if kind is ChangeKind.INTEGRATE:
        known = bool(change.material.strip()) or change.mass_kg is not None
        return [
            (
                len(change.parts) > 1,
                "parts",
                "It joins fewer than two parts into one.",
                "Choose the parts that become one.",
            ),
            (*into, "The part that comes has no name.", "Name it."),
            (
                known,
                "material",
                "Neither material nor mass of the part that comes is given.",
                "Choose a material, or give its mass.",
            ),
        ]
    if kind is ChangeKind.MOULD_IN:
        return [
            parts,
            (*into, "It names no neighbour to be moulded into.", "Choose one."),
            (
                change.into not in change.parts,
                "into",
                f"{change.into} cannot be moulded into itself.",
                "Choose the neighbour, or take the part out.",
            ),
        ]
    if kind is ChangeKind.ADD:
        return [
            (*into, "The part that comes has no name.", "Name it."),
            (
                change.mass_kg is not None,
                "mass likely [kg]",
                "The mass of the part that comes is not given.",
                "Give it as low, likely and high.",
            ),
        ]
    return _needs_of_joints(change)


def _needs_of_joints(change: Change) -> list[tuple[bool, str, str, str]]:
    if change.kind is ChangeKind.SWAP_JOINTS:
        new = (change.family, change.designation, change.tightening)
        said = any(map(str.strip, new)) or bool(change.count or change.length_mm)
        return [
            (
                bool(change.joints),
                "joints",
                "It names no joint.",
                "Choose the joints that are swapped.",
            ),
            (
                bool(change.into.strip()),
                "into",
                "The joint that comes has no name.",
                "Name it.",
            ),
            (
                said,
                "family",
                "Nothing is said about the joint that comes.",
                "Give its family, count, length or tightening.",
            ),
        ]
    something = (
        bool(change.parts or change.joints),
        "parts",
        "It names neither part nor joint.",
        "Choose what it acts on.",
    )
    if change.kind is ChangeKind.REMOVE:
        return [something]
    return [
        something,
        (
            any(getattr(change, name) is not None for name in RANGES),
            "mass likely [kg]",
            "Nothing is adjusted.",
            "Give the mass after the change, or a cost.",
        ),
    ]
