"""A drive cycle that a person supplies: speed over time, as the text of one cell."""

from __future__ import annotations

import json
import math
from dataclasses import dataclass
from typing import Any

from benchpack.errors import DataError, Problem

MOST_SAMPLES = 6_000
"""Samples of one cycle; the text of a cell of a workbook holds no more."""

_LONGEST_TEXT = 32_000
_SHORTEST_S, _LONGEST_S = 0.01, 60.0
_REMEDY = "Read it from a table with the columns time [s] and speed [km/h]."


@dataclass(frozen=True, slots=True)
class DriveCycle:
    """Speed over time in even steps.

    Parameters
    ----------
    name : str
        What the cycle is called, and where it is from.
    step_s : float
        Seconds from one sample to the next, 0.01 to 60.
    speed_kmh : tuple of float
        Speeds, two at least, zero or more.

    Raises
    ------
    DataError
        For a cycle that cannot be driven, or is too long to be kept.
    """

    name: str
    step_s: float
    speed_kmh: tuple[float, ...]

    def __post_init__(self) -> None:
        why = _refusal(self.step_s, self.speed_kmh)
        if why:
            raise DataError(Problem(why, _REMEDY, column="drive cycle"))

    def to_text(self) -> str:
        """Give the cycle as one text, a JSON object."""
        found = {"name": self.name, "step_s": self.step_s, "speed_kmh": self.speed_kmh}
        return json.dumps(found, ensure_ascii=False, separators=(",", ":"))


def parse_cycle(text: str) -> DriveCycle | None:
    """Read a cycle from its text.

    Parameters
    ----------
    text : str
        As `DriveCycle.to_text` gives it; empty for none.

    Returns
    -------
    DriveCycle or None
        None where the text is empty.

    Raises
    ------
    DataError
        When the text is no cycle.
    """
    if not text.strip():
        return None
    try:
        found: Any = json.loads(text)
        name, step_s = str(found["name"]), float(found["step_s"])
        speeds = tuple(float(speed) for speed in found["speed_kmh"])
    except (KeyError, TypeError, ValueError, RecursionError):
        raise DataError(
            Problem("This is no drive cycle.", _REMEDY, column="drive cycle")
        ) from None
    return DriveCycle(name, step_s, speeds)


def _refusal(step_s: float, speeds: tuple[float, ...]) -> str:
    if not 2 <= len(speeds) <= MOST_SAMPLES:
        return f"A drive cycle has {len(speeds)} samples, not 2 to {MOST_SAMPLES}."
    if not _SHORTEST_S <= step_s <= _LONGEST_S:
        return (
            f"The step of a drive cycle is {step_s:g} s, not {_SHORTEST_S:g} to "
            f"{_LONGEST_S:g} s."
        )
    if not all(math.isfinite(speed) and 0 <= speed <= 500 for speed in speeds):
        return "A drive cycle has speeds that no vehicle drives."
    if not any(speeds):
        return "A drive cycle stands still throughout."
    if len(json.dumps(speeds)) > _LONGEST_TEXT:
        return "A drive cycle is too long to be kept."
    return ""
