"""What is amiss with the joints of whole packs, said briefly or row by row."""

from __future__ import annotations

import math
from collections.abc import Iterator

from benchpack.errors import Problem, Severity
from benchpack.model.library import Library
from benchpack.results.joint_mass import joint_mass_kg
from benchpack.results.joint_problems import is_amiss, joint_problems
from benchpack.results.wording import listed

_UNSOUND = {
    True: "is incomplete or contradicts itself",
    False: "are incomplete or contradict themselves",
}
_NAMED = 3
"""Names of joints in one sentence; the rest is counted."""


def has_joint_problems(library: Library, pack: str) -> bool:
    """Tell whether anything is amiss with a joint of a pack."""
    return any(is_amiss(joint) for joint in library.joints_of(pack))


def joint_cautions(library: Library, pack: str) -> Iterator[Problem]:
    """Give what has to be known of a pack's joints, two sentences at most.

    Parameters
    ----------
    library : Library
        The records.
    pack : str
        Name of the pack.
    """
    joints = library.joints_of(pack)
    amiss = [joint for joint in joints if is_amiss(joint)]
    massless: list[str] = []
    others: list[str] = []
    for joint in amiss:
        lacks_mass = math.isnan(joint_mass_kg(joint))
        (massless if lacks_mass else others).append(joint.name)
    if massless:
        yield _caution(
            pack,
            f"{len(massless)} of {len(joints)} joints of {pack} "
            f"{'has' if len(massless) == 1 else 'have'} no mass: "
            f"{listed(tuple(massless), most=_NAMED)}.",
            "Weigh 20 of each and divide.",
        )
    if others:
        yield _caution(
            pack,
            f"{len(others)} of {len(joints)} joints of {pack} "
            f"{_UNSOUND[len(others) == 1]}: {listed(tuple(others), most=_NAMED)}.",
            "Look at what is said of each of them.",
        )


def joint_row_problems(library: Library) -> Iterator[Problem]:
    """Give one line for each joint row of a library with which something is amiss.

    Parameters
    ----------
    library : Library
        The records.

    Yields
    ------
    Problem
        Its record is the pack, its column the one that explains the rest; the
        sentence begins with the joint.
    """
    for pack, joints in library.joints.items():
        for joint in joints:
            found = joint_problems(joint)
            if found:
                remedies = dict.fromkeys(problem.remedy for problem in found)
                yield Problem(
                    f"{joint.name}: " + " ".join(problem.what for problem in found),
                    " ".join(remedies),
                    record=pack,
                    column=found[0].column,
                    value=found[0].value,
                    severity=Severity.WARNING,
                )


def _caution(pack: str, what: str, remedy: str) -> Problem:
    return Problem(
        what, remedy, record=pack, column="joints", severity=Severity.WARNING
    )
