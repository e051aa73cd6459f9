"""A figure that can say where it comes from."""

from __future__ import annotations

import math
from dataclasses import dataclass

PRACTICE = "common practice, no source"
"""Mark of what is usual and published nowhere."""


@dataclass(frozen=True, slots=True)
class Input:
    """One number that went into a figure.

    Parameters
    ----------
    label : str
        What it is, with the pack it belongs to.
    value : float
        Its value in `unit`.
    unit : str
        Unit label, empty for a ratio.
    source : str
        Where it comes from: a source of the library, the study, how it is known.
    """

    label: str
    value: float
    unit: str = ""
    source: str = ""


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure with its formula, inputs and sources.

    Parameters
    ----------
    key : str
        Name by which the figure is asked for.
    label : str
        What it is, in words.
    value : float
        Its value in `unit`, NaN where it cannot be given.
    unit : str
        Unit label, empty for a ratio.
    formula : str
        The formula with the symbols of the inputs.
    inputs : tuple of Input
        What went in.
    source : str
        The published source of the formula, or "common practice, no source".
    low, high : float
        Ends of the range, NaN where there is none.
    range_meaning : str
        What the range means.
    missing : str
        Why there is no value, as a sentence.
    """

    key: str
    label: str
    value: float
    unit: str
    formula: str
    inputs: tuple[Input, ...] = ()
    source: str = ""
    low: float = math.nan
    high: float = math.nan
    range_meaning: str = ""
    missing: str = ""
