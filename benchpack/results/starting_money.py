"""Starting values in money: they hold in one currency, and are not converted."""

from __future__ import annotations

from collections.abc import Iterable

from benchpack.errors import Problem
from benchpack.model.assumptions import Assumptions
from benchpack.model.study import Study
from benchpack.results.joint_facts import USUAL_CURRENCY

_NAMES = {"battery_cost": "cost of battery", "energy_price": "price of energy"}
_COLUMNS = {"battery_cost": "battery cost", "energy_price": "energy price"}
STARTING_MONEY = tuple(_NAMES)
"""Assumptions that start with a sum of money and enter the worth by the vehicle."""
_STARTING = Assumptions()


def holds_elsewhere(study: Study, attribute: str) -> bool:
    """Say whether an assumption is a sum at its starting value, in another currency.

    Parameters
    ----------
    study : Study
        The study with its currency.
    attribute : str
        One of `ASSUMPTION_NAMES`.
    """
    if attribute not in STARTING_MONEY or study.currency == USUAL_CURRENCY:
        return False
    is_starting: bool = getattr(study, attribute) == getattr(_STARTING, attribute)
    return is_starting


def unconverted(
    study: Study, attributes: Iterable[str] = STARTING_MONEY
) -> Problem | None:
    """Give the problem that sums are starting values in another currency.

    Parameters
    ----------
    study : Study
        The study with its currency.
    attributes : iterable of str
        Which of `STARTING_MONEY` are asked for.

    Returns
    -------
    Problem or None
        None where all of them are in the currency of the study.
    """
    found = [one for one in attributes if holds_elsewhere(study, one)]
    if not found:
        return None
    names = " and ".join(_NAMES[one] for one in found)
    what = "are starting values" if len(found) > 1 else "is a starting value"
    them = "them" if len(found) > 1 else "it"
    return Problem(
        f"{names[0].upper()}{names[1:]} {what} in {USUAL_CURRENCY}.",
        f"Enter {them} in {study.currency}.",
        column=_COLUMNS[found[0]],
    )
