"""Figures inside the sentences of a caution, for the screen and for files."""

from __future__ import annotations

from dataclasses import dataclass

from benchpack.units.formatting import (
    DEFAULT_STYLE,
    NumberStyle,
    format_energy,
    format_mass,
    format_number,
    format_share,
)
from benchpack.units.number_style import MINUS, NO_BREAK_SPACE, THIN_SPACE

_IN_FILES = str.maketrans({MINUS: "-", THIN_SPACE: "", NO_BREAK_SPACE: " "})


@dataclass(frozen=True, slots=True)
class Wording:
    """How figures are written.

    Parameters
    ----------
    style : NumberStyle
        Mass unit and decimal mark of the screen.
    in_files : bool
        True for kg, a decimal point and a hyphen, whatever the style.
    """

    style: NumberStyle = DEFAULT_STYLE
    in_files: bool = False

    def mass(self, mass_kg: float, *, signed: bool = False) -> str:
        """Write a mass given in kg."""
        return self._text(format_mass(mass_kg, style=self._style, signed=signed))

    def energy(self, energy_kwh: float) -> str:
        """Write an energy given in kWh."""
        return self._text(format_energy(energy_kwh, style=self._style))

    def share(self, share: float, *, decimals: int = 0) -> str:
        """Write a share given as a fraction."""
        return self._text(format_share(share, style=self._style, decimals=decimals))

    def number(self, value: float, *, decimals: int = 0) -> str:
        """Write a bare number."""
        return self._text(format_number(value, decimals, style=self._style))

    @property
    def _style(self) -> NumberStyle:
        return DEFAULT_STYLE if self.in_files else self.style

    def _text(self, text: str) -> str:
        return text.translate(_IN_FILES) if self.in_files else text


ON_SCREEN = Wording()
"""Kilograms and a decimal point, as the screen shows them."""
IN_FILES = Wording(in_files=True)
"""As files hold them."""


def listed(items: tuple[str, ...], *, most: int | None = None) -> str:
    """Write a list in words: ``a, b and c``, or ``a, b, c and 4 more``.

    Parameters
    ----------
    items : tuple of str
        What is listed.
    most : int, optional
        Name at most so many.
    """
    shown = list(items)
    if most is not None and len(items) > most:
        shown = [*items[:most], f"{len(items) - most} more"]
    if len(shown) < 2:
        return "".join(shown)
    return f"{', '.join(shown[:-1])} and {shown[-1]}"
