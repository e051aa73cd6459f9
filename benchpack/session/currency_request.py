"""The currency that a command is asked to name."""

from __future__ import annotations

import re

from benchpack.errors import RequestError


def asked_currency(asked: str | None, stored: str) -> str:
    """Give the currency to name in a file; money is never converted.

    Parameters
    ----------
    asked : str or None
        What was given with ``--currency``, None for nothing.
    stored : str
        The currency of the file's money.

    Raises
    ------
    RequestError
        When it is no code, or the file's money is in another currency.

    Examples
    --------
    >>> asked_currency("eur", "CUR"), asked_currency(None, "USD")
    ('EUR', 'USD')
    """
    if asked is None:
        return stored
    code = asked.upper()
    if not re.fullmatch("[A-Z]{3}", code):
        raise RequestError(f"--currency is {asked!r}; give three letters such as EUR")
    if stored not in ("", "CUR", code):
        raise RequestError(
            f"the file's money is in {stored} and there are no exchange rates: leave "
            "--currency out"
        )
    return code
