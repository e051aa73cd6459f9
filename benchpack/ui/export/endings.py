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
    return _unused(path, ending)


def with_own_ending(path: Path, ending: str) -> Path:
    """Give a path the ending of a file that can have no other, see `with_ending`.

    Parameters
    ----------
    path : Path
        What was typed.
    ending : str
        The ending, ``.bundle.zip`` for instance; its last part is enough.
    """
    last = ending[ending.rindex(".") :]
    return path if path.name.lower().endswith(last) else _unused(path, ending)


def _unused(path: Path, ending: str) -> Path:
    made = path.with_name(path.name + ending)
    number = 2
    while made.exists():
        made = path.with_name(f"{path.name} {number}{ending}")
        number += 1
    return made
