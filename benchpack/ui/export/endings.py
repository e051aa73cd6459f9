"""The ending of a file that a person names without one."""

from __future__ import annotations

from pathlib import Path

from benchpack.session.opening import LIBRARY_ENDING

_ENDINGS = frozenset({LIBRARY_ENDING, ".xlsx", ".csv", ".json"})


def with_ending(path: Path, chosen: str) -> Path:
    """Give a path the ending of the chosen kind of file where it has none of any.

    A name that got its ending here was never checked by the file dialog: where a
    file of that name exists, a number is added.

    Parameters
    ----------
    path : Path
        What was typed.
    chosen : str
        The kind of file, such as ``Workbook (*.xlsx)``.
    """
    ending = chosen.rpartition("*")[2].rstrip(")") if "*" in chosen else ""
    if not ending or path.suffix.lower() in _ENDINGS:
        return path
    made = path.with_name(path.name + ending)
    number = 2
    while made.exists():
        made = path.with_name(f"{path.name} {number}{ending}")
        number += 1
    return made
