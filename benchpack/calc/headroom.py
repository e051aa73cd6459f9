"""What a new part may cost before its customer stops gaining, and who gains what.

Money is per pack and in one currency. All functions broadcast; what is unknown, or
outside of its range, gives NaN. Tooling per pack is NaN without volume or years, and
so is what builds on it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc._ranges import closed_share_or_nan, not_negative_or_nan

if TYPE_CHECKING:
    from numpy.typing import ArrayLike


@dataclass(frozen=True, slots=True, eq=False)
class GainSplit:
    """Who keeps what of the whole gain, and the price that does it.

    Parameters
    ----------
    whole, customer, supplier : ndarray
        Money per pack; negative where the part costs more than it gains.
    price : ndarray
        Price of the new part per pack.
    """

    whole: FloatArray
    customer: FloatArray
    supplier: FloatArray
    price: FloatArray


def price_headroom(
    worth_per_kg: ArrayLike,
    saved_kg: ArrayLike,
    *,
    joining_removed: ArrayLike = 0.0,
    assembly_removed: ArrayLike = 0.0,
    old_part_cost: ArrayLike = 0.0,
    tooling_per_pack: ArrayLike = 0.0,
    required_saving: ArrayLike = 0.0,
) -> FloatArray:
    """Give the highest price at which the customer keeps the saving they ask for.

    ``H = w dm + joining removed + assembly removed + old part - tooling - saving``;
    common practice, no source.

    Parameters
    ----------
    worth_per_kg : array_like
        ``w``, money per kilogram, 0 or more.
    saved_kg : array_like
        ``dm`` per pack, kg; negative where the new part is heavier.
    joining_removed, assembly_removed : array_like
        Cost of joints and of assembly that goes; negative where more comes.
    old_part_cost : array_like
        Cost of the parts that go, 0 or more.
    tooling_per_pack : array_like
        The customer's share of new tooling in each pack; negative where tooling goes.
    required_saving : array_like
        What the customer asks to keep; 0 for the price at which they are even.

    Returns
    -------
    ndarray
        Money per pack, of the broadcast shape; negative where no price would do.

    Examples
    --------
    >>> figures = {"joining_removed": 6.0, "old_part_cost": 80.0}
    >>> price_headroom([1.0, 3.0], 12.0, **figures, tooling_per_pack=4.0)
    array([ 94., 118.])
    """
    gained = not_negative_or_nan(worth_per_kg) * as_floats(saved_kg)
    removed = as_floats(joining_removed) + as_floats(assembly_removed)
    old = not_negative_or_nan(old_part_cost)
    kept = as_floats(tooling_per_pack) + as_floats(required_saving)
    return as_floats(gained + removed + old - kept)


def headroom_per_kg(headroom: ArrayLike, new_mass_kg: ArrayLike) -> FloatArray:
    """Give the highest price of a kilogram of the new part, ``H / m_new``.

    Parameters
    ----------
    headroom : array_like
        From `price_headroom`.
    new_mass_kg : array_like
        New material per pack, above 0, kg.

    Returns
    -------
    ndarray
        Money per kilogram of new material, of the broadcast shape.

    Examples
    --------
    >>> print(headroom_per_kg(118.0, 20.0))
    5.9
    """
    return as_floats(as_floats(headroom) / positive_or_nan(new_mass_kg))


def customer_gain(even_price: ArrayLike, price: ArrayLike) -> FloatArray:
    """Give what the customer gains at a price, ``H_0 - p``.

    Parameters
    ----------
    even_price : array_like
        ``H_0``, from `price_headroom` without a required saving.
    price : array_like
        Price ``p`` of the new part per pack, 0 or more.

    Returns
    -------
    ndarray
        Money per pack, of the broadcast shape; negative where the customer loses.

    Examples
    --------
    >>> print(customer_gain(118.0, [100.0, 120.0]))
    [18. -2.]
    """
    return as_floats(as_floats(even_price) - not_negative_or_nan(price))


def price_at_gain(even_price: ArrayLike, gain: ArrayLike) -> FloatArray:
    """Give the price at which the customer gains so much, ``H_0 - gain``.

    Parameters
    ----------
    even_price : array_like
        ``H_0``, from `price_headroom` without a required saving.
    gain : array_like
        Money per pack that the customer keeps; negative where they pay more.

    Returns
    -------
    ndarray
        Price per pack, of the broadcast shape; NaN where it would be below zero.

    Examples
    --------
    >>> print(price_at_gain(118.0, [18.0, 120.0]))
    [100.  nan]
    """
    return not_negative_or_nan(as_floats(even_price) - as_floats(gain))


def split_gain(
    even_price: ArrayLike, cost: ArrayLike, *, customer_share: ArrayLike
) -> GainSplit:
    """Give the whole gain ``H_0 - c`` and its shares, and the price ``H_0 - s gain``.

    Parameters
    ----------
    even_price : array_like
        ``H_0``, from `price_headroom` without a required saving.
    cost : array_like
        ``c``, what it costs to make the new part, 0 or more, per pack.
    customer_share : array_like
        ``s``, share of the whole gain that the customer keeps, 0 to 1.

    Returns
    -------
    GainSplit
        Each of the broadcast shape. Where the whole gain is below zero, both bear
        their share of the loss: no price leaves both without one.

    Examples
    --------
    >>> found = split_gain(118.0, 90.0, customer_share=0.25)
    >>> print(found.whole, found.customer, found.supplier, found.price)
    28.0 7.0 21.0 111.0
    """
    share = closed_share_or_nan(customer_share)
    made = not_negative_or_nan(cost)
    whole = as_floats(even_price) - made
    customer, supplier = share * whole, (1.0 - share) * whole
    # A share that is not known leaves the whole known, of the same shape.
    whole = np.broadcast_to(whole, np.shape(customer))
    return GainSplit(
        as_floats(whole),
        as_floats(customer),
        as_floats(supplier),
        as_floats(made + supplier),
    )
