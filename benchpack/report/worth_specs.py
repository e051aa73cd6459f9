"""What the charts of worth are told to show: arrays and words, nothing of the model.

As in `chart_specs`: arrays hold values in the units that the axis labels name, the
texts beside them come from the ``format_...`` callables.
"""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from benchpack.report.chart_specs import (
    ChartSpec,
    FloatArray,
    FormatValue,
    no_values,
    plain_text,
    signed_text,
)
from benchpack.report.chart_text import share_text

NAN = float("nan")


def no_grid() -> FloatArray:
    """Give an empty array of two dimensions."""
    return np.empty((0, 0), dtype=np.float64)


@dataclass(frozen=True, kw_only=True, eq=False)
class ProgrammeSpec(ChartSpec):
    """Money by year (n + 1,), the first of them year 0 with what is spent once.

    `years` are the words under the bars. `low`, `likely` and `high` are the money of
    each year; an end that is not known (nan) draws no whisker. `cumulative` is the
    present value down to the end of each year. `payback` is the place on the axis, in
    years after year 0, at which that line crosses zero; nan where it never does.
    """

    years: tuple[str, ...] = ()
    low: FloatArray = field(default_factory=no_values)
    likely: FloatArray = field(default_factory=no_values)
    high: FloatArray = field(default_factory=no_values)
    cumulative: FloatArray = field(default_factory=no_values)
    payback: float = NAN
    payback_text: str = ""
    x_label: str = "Year"
    y_label: str = "Value [EUR]"
    year_text: str = "in the year"
    cumulative_text: str = "present value so far"
    format_value: FormatValue = plain_text
    format_full: FormatValue = plain_text
    value_range: tuple[float, float] | None = None

    @property
    def is_empty(self) -> bool:
        """Whether there is no year with a value."""
        return not bool(np.any(np.isfinite(self.likely)))


@dataclass(frozen=True, kw_only=True, eq=False)
class WorthMapSpec(ChartSpec):
    """Money over two assumptions, and where it turns from loss to gain.

    `values` (ny, nx) stand at the rising places `x` (nx,) and `y` (ny,), nan where
    there is no answer. `break_even` are lines of places, each (k, 2) as x and y. `here`
    is where the study stands now. `limit` fixes the amount at which the colours are
    strongest, else the greatest amount does.
    """

    x: FloatArray = field(default_factory=no_values)
    y: FloatArray = field(default_factory=no_values)
    values: FloatArray = field(default_factory=no_grid)
    break_even: tuple[FloatArray, ...] = ()
    here: tuple[float, float] | None = None
    here_text: str = "this study"
    x_label: str = "Worth [EUR/kg]"
    y_label: str = "Share captured [%]"
    value_label: str = "Worth per pack [EUR]"
    gain_text: str = "gain"
    loss_text: str = "loss"
    break_even_text: str = "break-even"
    format_x: FormatValue = plain_text
    format_y: FormatValue = plain_text
    format_value: FormatValue = signed_text
    format_full: FormatValue = signed_text
    limit: float | None = None

    @property
    def is_empty(self) -> bool:
        """Whether there is no area or no value in it."""
        has_area = len(self.x) > 1 and len(self.y) > 1
        return not (has_area and bool(np.any(np.isfinite(self.values))))


@dataclass(frozen=True, kw_only=True, eq=False)
class SharesSpec(ChartSpec):
    """Sobol indices: the share of the variance that each input makes, each (n,).

    `first` is what an input makes alone, `total` with all it does together with others,
    both from 0 to 1; estimates may lie a little beyond. `first_error` and `total_error`
    are their standard errors, whiskers span two of them. `details` are further lines of
    each read-out.
    """

    names: tuple[str, ...] = ()
    first: FloatArray = field(default_factory=no_values)
    total: FloatArray = field(default_factory=no_values)
    first_error: FloatArray | None = None
    total_error: FloatArray | None = None
    details: tuple[str, ...] = ()
    axis_label: str = "Share of the variance [%]"
    first_text: str = "alone"
    total_text: str = "with others"
    format_share: FormatValue = share_text

    @property
    def is_empty(self) -> bool:
        """Whether there is no input."""
        return len(self.names) == 0


@dataclass(frozen=True, kw_only=True, eq=False)
class SetsSpec(ChartSpec):
    """One figure under each of several sets of assumptions, with its range, each (n,).

    `in_use` names the set that the study counts with. A figure of nan is a dash.
    `details` are further lines of each read-out. `row_head` says in a table what each
    of the names is.
    """

    names: tuple[str, ...] = ()
    low: FloatArray = field(default_factory=no_values)
    likely: FloatArray = field(default_factory=no_values)
    high: FloatArray = field(default_factory=no_values)
    in_use: str = ""
    row_head: str = "set"
    details: tuple[str, ...] = ()
    axis_label: str = "Worth per pack [EUR]"
    format_value: FormatValue = plain_text
    format_full: FormatValue = plain_text
    value_range: tuple[float, float] | None = None

    @property
    def is_empty(self) -> bool:
        """Whether there is no set."""
        return len(self.names) == 0
