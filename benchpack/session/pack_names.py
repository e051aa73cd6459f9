"""Names of packs as people give them on the command line."""

from __future__ import annotations

from difflib import get_close_matches

from benchpack.errors import Problem
from benchpack.model.library import Library


def lacking_pack(library: Library, name: str, *, purpose: str) -> Problem:
    """Say that there is no pack of a name, with the nearest one that there is.

    Parameters
    ----------
    library : Library
        The records; packs of which only joints are recorded count too.
    name : str
        The name that was given.
    purpose : str
        What the pack is wanted for, "to compare" for instance.
    """
    look = _plain(name)
    names = list(dict.fromkeys((*library.packs.names.tolist(), *library.joints)))
    alike = [known for known in names if _plain(known) == look]
    if not alike:
        plain = {_plain(known): known for known in reversed(names)}
        alike = [plain[word] for word in get_close_matches(look, plain, n=1)]
    remedy = (
        f"Did you mean {alike[0]!r}?"
        if alike
        else "It is not in the file, or its row was refused."
    )
    return Problem(f"There is no pack {name!r} {purpose}.", remedy)


def _plain(name: str) -> str:
    return " ".join(name.casefold().split())
