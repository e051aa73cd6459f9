"""A study as it is named on the command line."""

from __future__ import annotations

from difflib import get_close_matches

from benchpack.errors import DataError, Problem
from benchpack.model.library import Library
from benchpack.model.study import Study


def take_study(
    library: Library, name: str = "", *, wanted: str, currency: str = ""
) -> Study:
    """Give the study that is asked for.

    Parameters
    ----------
    library : Library
        The records.
    name : str
        Name of the study; empty for the first one.
    wanted : str
        What is to be made of it, ``proposal`` for instance.
    currency : str
        Code of the file's money.

    Raises
    ------
    DataError
        When there is no such study, or the money of the file is in another currency.
    """
    found = _named(library, name, wanted)
    if currency not in ("", "CUR", found.currency):
        raise DataError(
            Problem(
                f"The money of the file is in {currency}, that of the study "
                f"{found.name} in {found.currency}; there are no exchange rates.",
                "Bring both to one currency.",
                column="currency",
            )
        )
    return found


def _named(library: Library, name: str, wanted: str) -> Study:
    if not library.studies:
        raise DataError(
            Problem(
                f"The file holds no study, and so no {wanted}.",
                "Open it in the window, and choose subject and reference there.",
            )
        )
    if not name:
        return library.studies[0]
    found = library.study(name)
    if found is not None:
        return found
    plain = {one.name.casefold(): one.name for one in reversed(library.studies)}
    alike = get_close_matches(name.casefold(), plain, n=1)
    remedy = "It is not in the file, or its row was refused."
    if alike:
        remedy = f"Did you mean {plain[alike[0]]!r}?"
    raise DataError(Problem(f"There is no study {name!r}.", remedy))
