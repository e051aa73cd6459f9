"""Figures as a study shows them: its mass unit, decimal mark and currency."""

from __future__ import annotations

import math
from typing import overload

import numpy as np
from numpy.typing import NDArray

from benchpack.model.study import Study
from benchpack.units.formatting import (
    KG_PER_LB,
    NumberStyle,
    format_density,
    format_energy,
    format_mass,
    format_mass_range,
    format_money,
    format_number,
    format_range,
    format_share,
    format_worth,
)

FloatArray = NDArray[np.float64]


def number_style(study: Study) -> NumberStyle:
    """Give how a study wants its numbers shown."""
    return NumberStyle(decimal_mark=study.decimal_mark, mass_unit=study.mass_unit)


class Display:
    """Writes figures the way one study wants them.

    Parameters
    ----------
    study : Study
        Sets mass unit, decimal mark and currency.
    """

    def __init__(self, study: Study) -> None:
        self.style = number_style(study)
        self.currency = study.currency
        self.mass_unit = study.mass_unit

    @overload
    def mass(self, mass_kg: float) -> float: ...
    @overload
    def mass(self, mass_kg: FloatArray) -> FloatArray: ...
    def mass(self, mass_kg: float | FloatArray) -> float | FloatArray:
        """Give masses in the unit shown, unrounded."""
        return mass_kg / KG_PER_LB if self.mass_unit == "lb" else mass_kg

    def mass_kg(self, shown: float) -> float:
        """Give the kilograms of a mass in the unit shown."""
        return shown * KG_PER_LB if self.mass_unit == "lb" else shown

    def mass_text(self, mass_kg: float) -> str:
        """Write a mass given in kg."""
        return format_mass(mass_kg, style=self.style)

    def ranged_mass_text(self, mass_kg: float, low_kg: float, high_kg: float) -> str:
        """Write a mass with its range, all in kg; alone where there is none."""
        if math.isnan(low_kg) or math.isnan(high_kg) or low_kg == high_kg:
            return self.mass_text(mass_kg)
        return format_mass_range(mass_kg, low_kg, high_kg, style=self.style)

    def shown_mass_text(self, shown: float) -> str:
        """Write a mass that is in the unit shown already."""
        return self.mass_text(self.mass_kg(shown))

    def signed_mass_text(self, shown: float) -> str:
        """Write a gap in the unit shown with sign and unit."""
        return format_mass(self.mass_kg(shown), style=self.style, signed=True)

    def signed_mass_number(self, shown: float) -> str:
        """Write a gap in the unit shown with its sign, the unit left to the axis."""
        return format_number(shown, 1, style=self.style, signed=True)

    def energy_text(self, energy_kwh: float) -> str:
        """Write an energy given in kWh."""
        return format_energy(energy_kwh, style=self.style)

    def difference_text(self, energy_kwh: float) -> str:
        """Write a difference of energies in kWh, a small one with its first digit."""
        decimals = 1
        if 0 < energy_kwh < 0.05:
            decimals = min(6, math.ceil(-math.log10(energy_kwh)))
        return format_energy(energy_kwh, style=self.style, decimals=decimals)

    def ratio_text(self, ratio: float) -> str:
        """Write a ratio with the digits it needs, three at most."""
        digits = f"{ratio:.3f}".rstrip("0").partition(".")[2]
        return format_number(ratio, len(digits), style=self.style)

    def density_text(self, density_wh_per_kg: float) -> str:
        """Write a density given in Wh/kg."""
        return format_density(density_wh_per_kg, style=self.style)

    def share_text(self, share: float) -> str:
        """Write a share given as a fraction."""
        return format_share(share, style=self.style)

    def money_text(self, value: float) -> str:
        """Write money per pack."""
        return format_money(value, self.currency, style=self.style)

    def least_money_text(self, value: float) -> str:
        """Write money per pack; what rounds to nothing but is more says so."""
        if 0 < value < 0.5:
            return f"under {self.money_text(1)}"
        return self.money_text(value)

    def signed_money_number(self, value: float) -> str:
        """Write money with its sign, the currency left to the axis."""
        return format_number(value, 0, style=self.style, signed=True)

    def money_range_text(self, value: float, low: float, high: float) -> str:
        """Write money per pack with its range, the lower end first."""
        if low == high:
            return self.money_text(value)
        low, high = sorted((low, high))
        return format_range(value, low, high, self._optional_money_text)

    def worth_text(self, worth_per_kg: float) -> str:
        """Write a worth given per kg, per unit shown."""
        return format_worth(worth_per_kg, self.currency, style=self.style)

    def other_worth_text(self, worth_per_kg: float) -> str:
        """Write a worth given per kg, per the unit that is not shown."""
        other = "kg" if self.mass_unit == "lb" else "lb"
        style = NumberStyle(decimal_mark=self.style.decimal_mark, mass_unit=other)
        return format_worth(worth_per_kg, self.currency, style=style)

    def _optional_money_text(self, value: float | None) -> str:
        return format_money(value, self.currency, style=self.style)
