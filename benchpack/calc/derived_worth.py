"""Worth of a kilogram derived from the vehicle: a smaller battery, or more range.

Maker's and driver's money are different pockets, never added. ``e`` is the energy that
mass costs, in kWh per 100 km and kilogram: a hundredth of the usual figure per 100 kg.
All functions broadcast; what is unknown, or outside of its range, gives NaN.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.calc._ranges import not_negative_or_nan, share_or_nan
from benchpack.calc.tooling import capital_recovery_factor

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

MOST_BATTERY_SHARE = 0.5
"""From this battery mass per kilogram on, the loop is no longer believed."""


def energy_saved_kwh_per_kg(
    mass_energy_per_kg: ArrayLike, range_km: ArrayLike, *, usable_share: ArrayLike
) -> FloatArray:
    """Give the pack energy no longer needed at equal range, ``dE = e R / (100 u)``.

    Parameters
    ----------
    mass_energy_per_kg : array_like
        ``e``, kWh per 100 km and kilogram, 0 or more.
    range_km : array_like
        Range ``R`` that is kept, above 0, km.
    usable_share : array_like
        ``u``, usable over installed energy, above 0 and at most 1.

    Returns
    -------
    ndarray
        kWh per kilogram saved, of the broadcast shape.

    Examples
    --------
    >>> print(energy_saved_kwh_per_kg(0.006, 500.0, usable_share=0.95).round(4))
    0.0316
    """
    way = not_negative_or_nan(mass_energy_per_kg) * positive_or_nan(range_km)
    return way / (100.0 * share_or_nan(usable_share))


def battery_saved_kg_per_kg(
    energy_saved_kwh_per_kg: ArrayLike, pack_density_kwh_per_kg: ArrayLike
) -> FloatArray:
    """Give the battery mass no longer needed, ``g = dE / eps``.

    Parameters
    ----------
    energy_saved_kwh_per_kg : array_like
        ``dE``, 0 or more, kWh per kilogram saved.
    pack_density_kwh_per_kg : array_like
        ``eps`` of the battery that becomes smaller, above 0, kWh/kg.

    Returns
    -------
    ndarray
        Kilograms per kilogram saved, of the broadcast shape.

    Examples
    --------
    >>> print(battery_saved_kg_per_kg(0.0316, 0.16).round(4))
    0.1975
    """
    saved = not_negative_or_nan(energy_saved_kwh_per_kg)
    return saved / positive_or_nan(pack_density_kwh_per_kg)


def worth_at_equal_range(
    energy_saved_kwh_per_kg: ArrayLike,
    battery_cost_per_kwh: ArrayLike,
    *,
    pack_density_kwh_per_kg: ArrayLike,
    secondary_share: ArrayLike = 0.0,
) -> FloatArray:
    """Give the maker's worth of a kilogram, ``V = dE C (1 + s) / (1 - g)``.

    A lighter vehicle needs less battery, which makes it lighter again: the geometric
    series of ``g = dE / eps``. With the battery kept, there is no such worth.

    Parameters
    ----------
    energy_saved_kwh_per_kg : array_like
        ``dE``, 0 or more, kWh per kilogram saved.
    battery_cost_per_kwh : array_like
        ``C``, what one more kWh of pack costs, 0 or more.
    pack_density_kwh_per_kg : array_like
        ``eps``, above 0, kWh/kg.
    secondary_share : array_like
        ``s``, kilograms of other parts that may go per kilogram saved, 0 or more; 0 in
        a running change.

    Returns
    -------
    ndarray
        Money per kilogram, of the broadcast shape; NaN where ``g`` is 0.5 or more.

    Examples
    --------
    >>> saved = energy_saved_kwh_per_kg([0.0047, 0.006], [400, 500], usable_share=0.95)
    >>> worth_at_equal_range(saved, 100.0, pack_density_kwh_per_kg=0.16).round(2)
    array([2.26, 3.93])
    """
    saved = not_negative_or_nan(energy_saved_kwh_per_kg)
    loop = battery_saved_kg_per_kg(saved, pack_density_kwh_per_kg)
    left = 1.0 - np.where(loop < MOST_BATTERY_SHARE, loop, np.nan)
    with_others = 1.0 + not_negative_or_nan(secondary_share)
    return saved * not_negative_or_nan(battery_cost_per_kwh) * with_others / left


def range_gain_share(
    mass_energy_per_kg: ArrayLike, saved_kg: ArrayLike, *, consumption_kwh: ArrayLike
) -> FloatArray:
    """Give what range gains with the battery kept, ``dR/R = e dm / c``.

    To first order: at 2 % the exact gain ``1 / (1 - e dm / c) - 1`` is 2.04 %.

    Parameters
    ----------
    mass_energy_per_kg : array_like
        ``e``, kWh per 100 km and kilogram, 0 or more.
    saved_kg : array_like
        ``dm``, kg; negative where the vehicle becomes heavier.
    consumption_kwh : array_like
        ``c``, kWh per 100 km, above 0.

    Returns
    -------
    ndarray
        Share of the range, of the broadcast shape.

    Examples
    --------
    >>> print(range_gain_share(0.006, 50.0, consumption_kwh=15.0))
    0.02
    """
    energy = not_negative_or_nan(mass_energy_per_kg) * as_floats(saved_kg)
    return as_floats(energy / positive_or_nan(consumption_kwh))


def charged_kwh_per_kg(
    mass_energy_per_kg: ArrayLike,
    distance_km: ArrayLike,
    *,
    charging_efficiency: ArrayLike,
) -> FloatArray:
    """Give the energy from the socket that a kilogram costs, ``e d / (100 eta)``.

    Parameters
    ----------
    mass_energy_per_kg : array_like
        ``e``, kWh per 100 km and kilogram, 0 or more.
    distance_km : array_like
        Way ``d``, 0 or more, km.
    charging_efficiency : array_like
        ``eta`` from socket to battery, above 0 and at most 1.

    Returns
    -------
    ndarray
        kWh per kilogram, of the broadcast shape.

    Examples
    --------
    >>> print(charged_kwh_per_kg(0.006, 200_000.0, charging_efficiency=0.88).round(1))
    13.6
    """
    driven = not_negative_or_nan(mass_energy_per_kg) * not_negative_or_nan(distance_km)
    return driven / (100.0 * share_or_nan(charging_efficiency))


def driver_saving_per_kg(
    charged_kwh_per_kg_year: ArrayLike,
    energy_price: ArrayLike,
    *,
    years: ArrayLike,
    rate: ArrayLike,
) -> FloatArray:
    """Give what a kilogram saves the driver, as present value.

    A year's energy at its price, times the annuity factor ``(1 - (1+i)^-n) / i``.

    Parameters
    ----------
    charged_kwh_per_kg_year : array_like
        From `charged_kwh_per_kg` with the way of one year, 0 or more, kWh/kg.
    energy_price : array_like
        Money per kWh, 0 or more.
    years : array_like
        Years ``n`` of driving, above 0.
    rate : array_like
        The driver's interest ``i`` per year as a fraction, above -1; 0 does not
        discount.

    Returns
    -------
    ndarray
        Money per kilogram, of the broadcast shape.

    Examples
    --------
    >>> a_year = charged_kwh_per_kg(0.006, 15_000.0, charging_efficiency=0.88)
    >>> driver_saving_per_kg(a_year, 0.25, years=13.0, rate=[0.0, 0.05]).round(2)
    array([3.32, 2.4 ])
    """
    a_year = not_negative_or_nan(charged_kwh_per_kg_year)
    # A factor that rounds to zero has no annuity that could be told.
    recovery = positive_or_nan(capital_recovery_factor(rate, years))
    return a_year * not_negative_or_nan(energy_price) / recovery
