"""Where the figures of the Worth page come from: formula, inputs, sources."""

from __future__ import annotations

from benchpack.errors import RequestError
from benchpack.results.explained_expected import EXPECTED_KEYS, expected_figure
from benchpack.results.explained_price import PRICE_KEYS, price_figure
from benchpack.results.explained_programme import PROGRAMME_KEYS, programme_figure
from benchpack.results.explained_shares import SHARE_KEYS, share_figure
from benchpack.results.explained_target import TARGET_KEYS, target_figure
from benchpack.results.explained_vehicle import VEHICLE_KEYS, vehicle_figure
from benchpack.results.figure import Figure
from benchpack.results.worth_case import WorthCase

WORTH_KEYS = (
    *PROGRAMME_KEYS,
    *EXPECTED_KEYS,
    *PRICE_KEYS,
    *SHARE_KEYS,
    *VEHICLE_KEYS,
    *TARGET_KEYS,
)
"""Keys that `explain_worth` answers."""


def explain_worth(case: WorthCase, key: str) -> Figure:
    """Say where one figure of what a saving is worth comes from.

    Parameters
    ----------
    case : WorthCase
        The case.
    key : str
        One of `WORTH_KEYS`.

    Returns
    -------
    Figure
        With formula, inputs and sources; why there is no value where there is none.

    Raises
    ------
    RequestError
        For a key that is not known.
    """
    for keys, explained in (
        (PROGRAMME_KEYS, programme_figure),
        (EXPECTED_KEYS, expected_figure),
        (PRICE_KEYS, price_figure),
        (SHARE_KEYS, share_figure),
        (VEHICLE_KEYS, vehicle_figure),
        (TARGET_KEYS, target_figure),
    ):
        if key in keys:
            return explained(case, key)
    raise RequestError(f"There is no figure {key!r}.")
