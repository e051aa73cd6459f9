"""What a part costs: material, process, finishing, and its share of the tooling.

Money is in one currency throughout. All functions broadcast; what is unknown, or a
figure outside of its range, gives NaN.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc._ranges import not_negative_or_nan, share_or_nan

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

_S_PER_H = 3600.0


def material_cost(
    mass_kg: ArrayLike,
    price_per_kg: ArrayLike,
    *,
    scrap: ArrayLike = 0.0,
    scrap_price_per_kg: ArrayLike = 0.0,
) -> FloatArray:
    """Give the cost of the material of a part, ``m p / (1 - s)`` less the scrap sold.

    Parameters
    ----------
    mass_kg : array_like
        Mass of the finished part, kg, 0 or more.
    price_per_kg : array_like
        Price of the material.
    scrap : array_like
        Share of the material bought that is not in the finished part, 0 to below 1.
    scrap_price_per_kg : array_like
        What a kilogram of scrap brings in.

    Returns
    -------
    ndarray
        Money per part, of the broadcast shape.

    Examples
    --------
    >>> print(material_cost(8.0, 3.1, scrap=0.2))
    31.0
    """
    bought_kg = not_negative_or_nan(mass_kg) / share_or_nan(1.0 - as_floats(scrap))
    sold_kg = bought_kg * as_floats(scrap)
    credit = sold_kg * as_floats(scrap_price_per_kg)
    return bought_kg * as_floats(price_per_kg) - credit


def process_cost(
    cycle_s: ArrayLike,
    *,
    machine_rate_per_h: ArrayLike,
    labour_rate_per_h: ArrayLike,
    operators: ArrayLike = 1.0,
    cavities: ArrayLike = 1.0,
    utilisation: ArrayLike = 1.0,
    good_share: ArrayLike = 1.0,
) -> FloatArray:
    """Give the cost of one step, ``t (r_m + n r_l) / (3600 cavities utilisation)``.

    Common practice of process-based cost models.

    Parameters
    ----------
    cycle_s : array_like
        Cycle time, s, 0 or more.
    machine_rate_per_h : array_like
        Money per hour of the machine.
    labour_rate_per_h : array_like
        Money per hour of one person.
    operators : array_like
        People at the machine, 0 or more.
    cavities : array_like
        Parts per cycle, above 0.
    utilisation : array_like
        Share of paid time in which the machine makes parts, above 0 and at most 1.
    good_share : array_like
        Share of the parts that pass, above 0 and at most 1.

    Returns
    -------
    ndarray
        Money per good part, of the broadcast shape.

    Examples
    --------
    A large injection moulding:

    >>> cost = process_cost(
    ...     110.0, machine_rate_per_h=220.0, labour_rate_per_h=35.0, utilisation=0.85
    ... )
    >>> print(cost.round(1))
    9.2
    """
    labour = not_negative_or_nan(operators) * as_floats(labour_rate_per_h)
    hours = not_negative_or_nan(cycle_s) / _S_PER_H
    parts = positive_or_nan(cavities) * share_or_nan(utilisation)
    return (
        hours
        * (as_floats(machine_rate_per_h) + labour)
        / (parts * share_or_nan(good_share))
    )


def part_cost(
    material: ArrayLike, process: ArrayLike, *, finishing: ArrayLike = 0.0
) -> FloatArray:
    """Give the cost of a part without its tooling: material, process, finishing.

    Parameters
    ----------
    material : array_like, shape (...)
        From `material_cost`.
    process : array_like, shape (..., steps)
        From `process_cost`, one step after another.
    finishing : array_like, shape (...)
        Whatever else each part costs.

    Returns
    -------
    ndarray, shape (...)
        Money per part.

    Examples
    --------
    >>> print(part_cost(31.0, [11.25, 3.5], finishing=2.0))
    47.75
    """
    steps = np.atleast_1d(as_floats(process)).sum(axis=-1)
    return as_floats(as_floats(material) + steps + as_floats(finishing))
