"""What each chart is told to show: arrays and words, nothing of the model.

Arrays hold values in the units that the axis labels name; the texts that a
chart writes beside them come from the ``format_...`` callables of the spec.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Literal

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]
FormatValue = Callable[[float], str]
StepKind = Literal["sum", "energy", "step"]
Verdict = Literal["good", "look", "fail", "unknown"]


def plain_text(value: float) -> str:
    """Write a value to one decimal with the true minus, a dash for none."""
    return "–" if np.isnan(value) else f"{value:.1f}".replace("-", "−")


def signed_text(value: float) -> str:
    """Write a value to one decimal with its sign, a dash for none."""
    return "–" if np.isnan(value) else f"{value:+.1f}".replace("-", "−")


def no_values() -> FloatArray:
    """Give an empty array."""
    return np.empty(0, dtype=np.float64)


@dataclass(frozen=True, kw_only=True, eq=False)
class ChartSpec:
    """Words that every chart has.

    `title` says the finding, `note` stands under the plot, `explain_key` is
    what F1 asks about. With nothing to draw the chart shows `empty_sentence`
    and, unless it is "", a button with `empty_action_text`. `decimal_mark` is
    for the figures along the axes.
    """

    title: str = ""
    note: str = ""
    explain_key: str = ""
    empty_sentence: str = "There is nothing to draw yet."
    empty_action_text: str = ""
    decimal_mark: str = "."

    @property
    def is_empty(self) -> bool:
        """Whether there is nothing to draw; bare words have nothing."""
        return True


@dataclass(frozen=True, kw_only=True, eq=False)
class TrendBand:
    """A trend line and its prediction band on a grid of x, each (k,)."""

    x: FloatArray
    low: FloatArray
    mid: FloatArray
    high: FloatArray


@dataclass(frozen=True, kw_only=True, eq=False)
class EnergyMassSpec(ChartSpec):
    """Packs by energy (x) and mass (y), each (n,), with rays of equal density.

    On the ray of a density d lies ``mass = ray_factor * energy / d``; 1000 for
    kWh, kg and Wh/kg. Packs without energy or mass (nan) are not drawn.
    `energy_range` and `mass_range` fix the first view, else the data does.
    """

    names: tuple[str, ...] = ()
    energy: FloatArray = field(default_factory=no_values)
    mass: FloatArray = field(default_factory=no_values)
    subject: str = ""
    reference: str = ""
    trend: TrendBand | None = None
    x_label: str = "Energy [kWh]"
    y_label: str = "Mass [kg]"
    density_unit: str = "Wh/kg"
    ray_factor: float = 1000.0
    format_energy: FormatValue = plain_text
    format_mass: FormatValue = plain_text
    format_density: FormatValue = plain_text
    energy_range: tuple[float, float] | None = None
    mass_range: tuple[float, float] | None = None

    @property
    def is_empty(self) -> bool:
        """Whether no pack has both energy and mass."""
        return not bool(np.any(np.isfinite(self.energy) & np.isfinite(self.mass)))


@dataclass(frozen=True, kw_only=True, eq=False)
class GapBarsSpec(ChartSpec):
    """Gap of the subject to each peer (n,), positive: the subject is heavier.

    `uncertainty` (n,) is the standard uncertainty u; whiskers span +-2 u.
    `format_value` writes the signed figure at the bar's end, `format_full`
    the figure with its unit for the read-out. A gap of nan is listed last
    with a dash. `value_range` fixes the value axis, else the data does.
    """

    names: tuple[str, ...] = ()
    gap: FloatArray = field(default_factory=no_values)
    uncertainty: FloatArray | None = None
    reference: str = ""
    axis_label: str = "Gap [kg]"
    lighter_text: str = "subject lighter"
    heavier_text: str = "subject heavier"
    format_value: FormatValue = signed_text
    format_full: FormatValue = signed_text
    value_range: tuple[float, float] | None = None

    @property
    def is_empty(self) -> bool:
        """Whether there is no peer."""
        return len(self.names) == 0


@dataclass(frozen=True, kw_only=True, eq=False)
class WaterfallSpec(ChartSpec):
    """Steps that add up, from the top down.

    `kinds` (n): "energy" and "step" add their value to the running total;
    "sum" draws its value from zero and starts the next step there.
    `target`, where given, is drawn as a line with `target_text`.
    """

    names: tuple[str, ...] = ()
    kinds: tuple[StepKind, ...] = ()
    values: FloatArray = field(default_factory=no_values)
    uncertainty: FloatArray | None = None
    axis_label: str = "Mass [kg]"
    format_value: FormatValue = signed_text
    format_full: FormatValue = signed_text
    target: float | None = None
    target_text: str = ""
    value_range: tuple[float, float] | None = None

    @property
    def is_empty(self) -> bool:
        """Whether there is no step."""
        return len(self.names) == 0


@dataclass(frozen=True, kw_only=True)
class FanPoint:
    """A marked place on the fan, for instance "share captured".

    `low` and `high`, where given, draw a whisker through the point.
    """

    name: str
    saved: float
    value: float
    low: float | None = None
    high: float | None = None
    kind: Literal["subject", "peer"] = "peer"


@dataclass(frozen=True, kw_only=True)
class FanTarget:
    """The promised saving, drawn as a cross-hair with both values in words."""

    saved: float
    value: float
    saved_text: str
    value_text: str


@dataclass(frozen=True, kw_only=True, eq=False)
class FanSpec(ChartSpec):
    """Worth per pack (low, likely, high) over mass saved, each (k,)."""

    saved: FloatArray = field(default_factory=no_values)
    low: FloatArray = field(default_factory=no_values)
    likely: FloatArray = field(default_factory=no_values)
    high: FloatArray = field(default_factory=no_values)
    points: tuple[FanPoint, ...] = ()
    target: FanTarget | None = None
    x_label: str = "Mass saved [kg]"
    y_label: str = "Worth per pack [EUR]"
    low_text: str = "low"
    likely_text: str = "likely"
    high_text: str = "high"
    format_saved: FormatValue = plain_text
    format_value: FormatValue = plain_text
    saved_range: tuple[float, float] | None = None
    value_range: tuple[float, float] | None = None

    @property
    def is_empty(self) -> bool:
        """Whether there are fewer than two places to join by a line."""
        return len(self.saved) < 2


@dataclass(frozen=True, kw_only=True, eq=False)
class ClosureSpec(ChartSpec):
    """Recorded masses by subsystem (n,) against the pack's weighed mass.

    `verdict_text` stands beside the sign of `verdict`; `pack_mass` may be nan.
    """

    names: tuple[str, ...] = ()
    masses: FloatArray = field(default_factory=no_values)
    pack_mass: float = float("nan")
    verdict: Verdict = "unknown"
    verdict_text: str = ""
    pack_text: str = "pack"
    value_label: str = "Mass [kg]"
    format_value: FormatValue = plain_text

    @property
    def is_empty(self) -> bool:
        """Whether nothing is recorded."""
        return not bool(np.any(self.masses > 0))


@dataclass(frozen=True, kw_only=True, eq=False)
class ParetoSpec(ChartSpec):
    """Groups from the greatest down, each with the running share of the whole.

    `values` (n,) fall, those that are not known (nan) come last; `staying` (n,) is the
    part of each value that is carry-over; `running` (n,) is the share from 0 to 1 of
    all groups down to here. `details` are further lines of each read-out. `role` says
    whose groups they are.
    """

    names: tuple[str, ...] = ()
    values: FloatArray = field(default_factory=no_values)
    staying: FloatArray = field(default_factory=no_values)
    running: FloatArray = field(default_factory=no_values)
    details: tuple[str, ...] = ()
    role: Literal["subject", "reference", "peer"] = "peer"
    axis_label: str = "Mass [kg]"
    running_text: str = "running share"
    format_value: FormatValue = plain_text
    format_full: FormatValue = plain_text

    @property
    def is_empty(self) -> bool:
        """Whether there is no group."""
        return len(self.names) == 0
