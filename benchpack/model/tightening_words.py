"""Ways of tightening a screw and how far the preload scatters; friction classes."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from functools import lru_cache


@dataclass(frozen=True, slots=True)
class TighteningMethod:
    """A way of tightening (VDI 2230-1 table A8).

    Parameters
    ----------
    name : str
        The method's words.
    spread_low, spread_high : float
        Least and greatest scatter of the preload about its middle, as a share.
    factor_low, factor_high : float
        Least and greatest tightening factor, greatest over least preload.
    source, mark : str
        Where the figures come from, and whether they were confirmed or recalled.
    """

    name: str
    spread_low: float
    spread_high: float
    factor_low: float
    factor_high: float
    source: str
    mark: str

    @property
    def factor(self) -> float:
        """The factor to reckon with: the greater one, which promises less clamp."""
        return self.factor_high


_TABLE = "VDI 2230-1 table A8"
_1986 = "scatter: table of the 1986 edition in a handbook"

METHODS: tuple[TighteningMethod, ...] = (
    TighteningMethod(
        "elongation by ultrasound",
        0.02,
        0.10,
        1.05,
        1.2,
        _TABLE + ", recalled",
        "from memory",
    ),
    TighteningMethod(
        "yield-controlled",
        0.09,
        0.17,
        1.2,
        1.4,
        _TABLE + ", recalled (a handbook has 5 to 12 % of the 1986 edition)",
        "from memory",
    ),
    TighteningMethod(
        "torque and angle",
        0.09,
        0.17,
        1.2,
        1.4,
        _TABLE + ", recalled (a handbook has 5 to 12 % of the 1986 edition)",
        "from memory",
    ),
    TighteningMethod(
        "hydraulic",
        0.09,
        0.23,
        1.2,
        1.6,
        _1986 + "; factor follows from it",
        "confirmed",
    ),
    TighteningMethod(
        "torque set on the joint",
        0.17,
        0.23,
        1.4,
        1.6,
        _1986 + "; factor: an engineering wiki",
        "confirmed",
    ),
    TighteningMethod(
        "torque",
        0.23,
        0.33,
        1.6,
        2.0,
        _TABLE + ": torque from estimated friction, class B; factor in a handbook",
        "confirmed",
    ),
    TighteningMethod(
        "torque, driver switched off by torque",
        0.26,
        0.43,
        1.7,
        2.5,
        _1986 + " for a precision power driver; factor recalled",
        "from memory",
    ),
    TighteningMethod(
        "impact",
        0.43,
        0.60,
        2.5,
        4.0,
        "impact or impulse driver without feedback: an engineering wiki",
        "confirmed",
    ),
)
"""Ways of tightening, the one that scatters least first."""

_BY_NAME = {method.name: method for method in METHODS}

_PATTERNS: tuple[tuple[re.Pattern[str], TighteningMethod], ...] = tuple(
    (re.compile(pattern, re.IGNORECASE), _BY_NAME[name])
    for pattern, name in (
        (r"ultraso|elongation", "elongation by ultrasound"),
        (r"yield|gradient", "yield-controlled"),
        (r"angle|torque\s*[-+/&]\s*turn|turn of (the )?nut", "torque and angle"),
        (r"hydraul|stretch|tension(er|ing)", "hydraulic"),
        (r"impact|impulse|pulse", "impact"),
        (r"set on (the )?(real |original )?joint|precision", "torque set on the joint"),
        (
            r"switche?[ds]?[\s-]*off|shut[\s-]*off|cut[\s-]*off|power (tool|driver)",
            "torque, driver switched off by torque",
        ),
        (r"torque|wrench|\bN\s*m\b", "torque"),
    )
)


@lru_cache(maxsize=1024)
def method_of(text: str) -> TighteningMethod | None:
    """Give the way of tightening that a text names, None where it names none.

    Parameters
    ----------
    text : str
        What was written down, "torque and angle" for instance.

    Examples
    --------
    >>> found = method_of("Torque + angle, 20 Nm")
    >>> found.name if found else ""
    'torque and angle'
    """
    for pattern, method in _PATTERNS:
        if pattern.search(text):
            return method
    return None


@dataclass(frozen=True, slots=True)
class FrictionClass:
    """A friction class of VDI 2230-1 table A5.

    Parameters
    ----------
    letter : str
        A to E.
    low, high : float
        Ends of the friction coefficient in the thread and under the head.
    typical : str
        Surfaces and lubricants that are taken to have it.
    source, mark : str
        Where the figures come from, and whether they were confirmed or recalled.
    """

    letter: str
    low: float
    high: float
    typical: str
    source: str = "VDI 2230-1 table A5 as reprinted in two handbooks"
    mark: str = "confirmed"


FRICTION_CLASSES: tuple[FrictionClass, ...] = (
    FrictionClass(
        "A", 0.04, 0.10, "solid lubricant or wax on bare, phosphated or zinc surfaces"
    ),
    FrictionClass(
        "B",
        0.08,
        0.16,
        "the same with wax dispersion, grease or oil, as delivered; aluminium and "
        "magnesium; stainless with solid lubricant",
    ),
    FrictionClass(
        "C",
        0.14,
        0.24,
        "stainless with wax; bare or phosphated, lightly oiled; zinc dry",
    ),
    FrictionClass("D", 0.20, 0.35, "stainless with oil; electroplated zinc, dry"),
    FrictionClass(
        "E", 0.30, math.inf, "zinc alloys, stainless, aluminium or magnesium, dry"
    ),
)
"""Friction classes, least friction first; class E has no upper end."""


def friction_class(coefficient: float) -> FrictionClass | None:
    """Give the lowest class that a friction coefficient lies in, None outside all.

    Examples
    --------
    >>> found = friction_class(0.12)
    >>> found.letter if found else ""
    'B'
    """
    for found in FRICTION_CLASSES:
        if found.low <= coefficient <= found.high:
            return found
    return None
