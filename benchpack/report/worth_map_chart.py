"""What the map of two assumptions shows, and where it breaks even."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from benchpack.errors import Problem
from benchpack.model.study import Study
from benchpack.model.worth_words import ValuedMass
from benchpack.report.chart_specs import FloatArray
from benchpack.report.display import Display
from benchpack.report.worth_figures import emptied
from benchpack.report.worth_money import money_scale
from benchpack.report.worth_specs import WorthMapSpec
from benchpack.results.worth_map import MAP_KEYS, WorthMap
from benchpack.results.worth_model import SHARE_WORDS
from benchpack.units.formatting import KG_PER_LB, format_share

_WORDS = {
    "worth": "worth",
    "share": SHARE_WORDS[ValuedMass.SHARE],
    "volume": "volume against plan",
    "interest": "interest a year",
    "price level": "price level",
    "mass estimate": "mass saved against plan",
    "tooling": "tools against plan",
    "validation": "validation against plan",
}
_NOT_OF_THE_GAP = {
    ValuedMass.PROPOSAL: "The share is of the mass that the proposal saves, its costs "
    "stay whole; the study's share captured is of the gap and not used.",
    ValuedMass.TARGET: "The share is of the target; the study's share captured is of "
    "the gap and not used.",
}
"""What a share along a side is of, where it is not that of the gap."""
SIDES: tuple[tuple[str, str], ...] = tuple((key, _WORDS[key]) for key in MAP_KEYS)
"""Key and words of what a map may have along its sides."""


@dataclass(frozen=True, slots=True)
class Side:
    """How an assumption stands along a side of the map.

    Parameters
    ----------
    label : str
        Axis label with its unit.
    factor : float
        Shown value of one of the assumption's own unit.
    write : callable
        Writes a shown value with its name.
    """

    label: str
    factor: float
    write: Callable[[float], str]


def side_of(key: str, study: Study, *, valued: ValuedMass = ValuedMass.SHARE) -> Side:
    """Give how an assumption stands along a side.

    Parameters
    ----------
    key : str
        One of `MAP_KEYS`.
    study : Study
        How figures are shown.
    valued : ValuedMass
        Which saving is valued, so that it can be said what a share is of.
    """
    display, words = Display(study), _words(key, valued)
    if key == "worth":
        per_unit = KG_PER_LB if study.mass_unit == "lb" else 1.0

        def worth(shown: float) -> str:
            return f"{words} {display.worth_text(shown / per_unit)}"

        unit = f"{study.currency}/{study.mass_unit}"
        return Side(f"Worth of mass saved [{unit}]", per_unit, worth)

    def percent(shown: float) -> str:
        decimals = 1 if key == "interest" else 0
        share = format_share(shown / 100.0, style=display.style, decimals=decimals)
        return f"{words} {share}"

    return Side(f"{words[0].upper()}{words[1:]} [%]", 100.0, percent)


def map_spec(found: WorthMap | Problem, study: Study) -> WorthMapSpec:
    """Give the programme's value over two assumptions, with where it breaks even.

    Parameters
    ----------
    found : WorthMap or Problem
        What `worth_map` gives.
    study : Study
        How figures are shown.
    """
    if isinstance(found, Problem):
        return emptied(WorthMapSpec, found)
    display = Display(study)
    keys = (found.x.key, found.y.key)
    x, y = (side_of(key, study, valued=found.valued) for key in keys)
    share = _NOT_OF_THE_GAP.get(found.valued, "") if "share" in keys else ""
    scale = money_scale(found.values.ravel().tolist(), display)
    sizes = np.array([x.factor, y.factor])
    return WorthMapSpec(
        title=_finding(found, x, y),
        note="Programme value, each change by its chance; all else as it is likely. "
        f"Double click takes over both values. {share}".rstrip(),
        explain_key="expected programme value",
        decimal_mark=study.decimal_mark,
        x=found.x_values * x.factor,
        y=found.y_values * y.factor,
        values=found.values / scale.size,
        break_even=tuple(line * sizes for line in found.lines),
        here=(found.now[0] * x.factor, found.now[1] * y.factor),
        here_text="now",
        x_label=x.label,
        y_label=y.label,
        value_label=f"Programme value [{scale.unit}]",
        format_x=x.write,
        format_y=y.write,
        format_value=scale.signed_number,
        format_full=scale.signed_text,
    )


def _finding(found: WorthMap, x: Side, y: Side) -> str:
    """Say where it breaks even along the horizontal side, the other as it is now."""
    at = y.write(found.now[1] * y.factor)
    ends = (found.x_values[0], found.x_values[-1])
    room = 1e-6 * (ends[1] - ends[0])
    places = [
        place
        for place in crossings(found.lines, at=found.now[1])
        if ends[0] + room < place < ends[1] - room
    ]
    if len(places) == 1:
        return f"Breaks even at {x.write(places[0] * x.factor)}, with {at}"
    if len(places) > 1:
        texts = " and ".join(x.write(one * x.factor) for one in places[:2])
        return f"Breaks even at {texts}, with {at}"
    word = "Gains" if found.now[2] > 0 else "Loses"
    low, high = (x.write(end * x.factor) for end in ends)
    high = high.removeprefix(f"{_words(found.x.key, found.valued)} ")
    return f"{word} everywhere between {low} and {high}, with {at}"


def _words(key: str, valued: ValuedMass) -> str:
    """Name an assumption; a share by what it is taken of."""
    return SHARE_WORDS[valued] if key == "share" else _WORDS[key]


def crossings(lines: list[FloatArray], *, at: float) -> list[float]:
    """Give the places along x at which lines cross a height, rising.

    Parameters
    ----------
    lines : list of ndarray, shape (points, 2)
        Lines in x and y.
    at : float
        The height.
    """
    found: list[float] = []
    for line in lines:
        above = line[:, 1] - at
        for place in np.flatnonzero(above[:-1] * above[1:] <= 0):
            rise = line[place + 1, 1] - line[place, 1]
            share = 0.5 if rise == 0 else -above[place] / rise
            found.append(
                float(line[place, 0] + share * (line[place + 1, 0] - line[place, 0]))
            )
    found.sort()
    least = 1e-6 * max((abs(one) for one in found), default=1.0)
    return [
        one
        for place, one in enumerate(found)
        if place == 0 or one - found[place - 1] > least
    ]
