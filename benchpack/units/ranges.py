"""Uncertain figures with their range, written the same way everywhere."""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import partial

from benchpack.units.figures import format_mass
from benchpack.units.number_style import (
    DEFAULT_STYLE,
    NO_BREAK_SPACE,
    UNKNOWN,
    NumberStyle,
)


def format_range(
    value: float | None,
    low: float | None,
    high: float | None,
    formatter: Callable[[float | None], str],
) -> str:
    r"""Write a figure and its range, the unit once: ``11.3 kg (8.9 to 13.6)``.

    Parameters
    ----------
    value, low, high : float or None
        The figure and the ends of its range, in the formatter's unit.
    formatter : callable
        Writes one figure; ``functools.partial`` gives it a style.

    Returns
    -------
    str
        The figure alone where an end is unknown; an en dash where the figure is.

    Examples
    --------
    >>> from benchpack.units.formatting import format_energy
    >>> format_range(81.0, 80.2, 81.8, format_energy)
    '81.0\xa0kWh (80.2 to 81.8)'
    """
    head, *ends = (formatter(one) for one in (value, low, high))
    if UNKNOWN in (head, *ends):
        return head
    label = head.rpartition(NO_BREAK_SPACE)[1:]
    suffix = "".join(label) if label[0] else ""
    if suffix and all(end.endswith(suffix) for end in ends):
        ends = [end.removesuffix(suffix) for end in ends]
    return f"{head} ({ends[0]} to {ends[1]})"


def format_mass_range(
    mass_kg: float | None,
    low_kg: float | None,
    high_kg: float | None,
    *,
    style: NumberStyle = DEFAULT_STYLE,
    decimals: int = 1,
    signed: bool = False,
) -> str:
    r"""Write a mass and its range, all three in the unit that suits the largest.

    Where all are below one kg or lb, or the ends would read alike, a further decimal
    keeps them apart.

    Parameters
    ----------
    mass_kg, low_kg, high_kg : float or None
        The mass and the ends of its range in kg.
    style, decimals, signed
        As in `format_mass`.

    Examples
    --------
    >>> format_mass_range(11.3, -0.05, 13.6)
    '11.3\xa0kg (\u22120.1 to 13.6)'
    >>> format_mass_range(0.145, 0.137, 0.152)
    '0.14\xa0kg (0.14 to 0.15)'
    >>> format_mass_range(1.173, 1.152, 1.194)
    '1.17\xa0kg (1.15 to 1.19)'
    """
    known = [
        abs(one)
        for one in (mass_kg, low_kg, high_kg)
        if one is not None and math.isfinite(one)
    ]
    largest_kg = max(known, default=None)
    write = partial(format_mass, style=style, signed=signed, like_kg=largest_kg)
    is_small = largest_kg is not None and style.in_mass_unit(largest_kg) < 1
    ends = {one for one in (low_kg, high_kg) if one is not None and math.isfinite(one)}
    reads_alike = (
        len(ends) == 2 and len({write(one, decimals=decimals) for one in ends}) == 1
    )
    write = partial(
        write, decimals=decimals + 1 if is_small or reads_alike else decimals
    )
    return format_range(mass_kg, low_kg, high_kg, write)
