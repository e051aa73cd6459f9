"""What many trials say: mean, uncertainty, coverage intervals, chance of a target.

After JCGM 101:2008, clause 7: the trials, put in order, stand for the distribution.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats
from benchpack.errors import RequestError

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

DEFAULT_TRIALS = 200_000
MOST_TRIALS = 10_000_000
DEFAULT_BLOCK = 16_384
"""Trials at a time: the arrays of one block stay in the processor's own memory."""


@dataclass(frozen=True, slots=True, eq=False)
class Trials:
    """Values of one quantity in many trials, and what they amount to.

    Parameters
    ----------
    values : ndarray, shape (trials,)
        In the order in which they were drawn; trial i of two quantities of one
        simulation belongs together.
    ordered : ndarray, shape (trials,)
        The same, rising.
    mean : float
        The estimate (JCGM 101:2008, 7.6).
    standard_uncertainty : float
        Standard deviation of the trials with ``trials - 1`` (7.6).
    """

    values: FloatArray = field(repr=False)
    ordered: FloatArray = field(repr=False)
    mean: float
    standard_uncertainty: float

    @property
    def count(self) -> int:
        """How many trials there are."""
        return self.ordered.size

    @property
    def p10(self) -> float:
        """The value that a tenth of the trials lie below."""
        return float(self.quantile(0.1))

    @property
    def p50(self) -> float:
        """The median."""
        return float(self.quantile(0.5))

    @property
    def p90(self) -> float:
        """The value that nine tenths of the trials lie below."""
        return float(self.quantile(0.9))

    def quantile(self, probability: ArrayLike) -> FloatArray:
        """Give the value below which a share of the trials lies.

        Between two trials it is interpolated, ``(trials - 1) p`` steps from the least.

        Parameters
        ----------
        probability : array_like
            Shares, 0 to 1.

        Returns
        -------
        ndarray
            In the unit of the trials, of the shape of `probability`.

        Raises
        ------
        RequestError
            For a share outside 0 to 1.

        Examples
        --------
        >>> print(summarise([4.0, 1.0, 2.0]).quantile(0.75))
        3.0
        """
        shares = as_floats(probability)
        if not np.all((shares >= 0.0) & (shares <= 1.0)):
            raise RequestError("A share of the trials lies between 0 and 1.")
        place = shares * (self.count - 1)
        below = np.floor(place).astype(np.int64)
        above = np.minimum(below + 1, self.count - 1)
        start = self.ordered[below]
        return as_floats(start + (place - below) * (self.ordered[above] - start))

    def symmetric_interval(self, coverage: float = 0.95) -> tuple[float, float]:
        """Give the interval that leaves as many trials below it as above.

        The probabilistically symmetric coverage interval (JCGM 101:2008, 7.7).

        Parameters
        ----------
        coverage : float
            Share of the trials within, between 0 and 1.

        Returns
        -------
        tuple of float
            Low and high end, in the unit of the trials.

        Raises
        ------
        RequestError
            For a coverage that leaves no trial out, or none in.

        Examples
        --------
        >>> summarise(range(1, 101)).symmetric_interval(0.9)
        (5.0, 95.0)
        """
        within = self._within(coverage)
        first = (self.count - within + 1) // 2 - 1
        return float(self.ordered[first]), float(self.ordered[first + within])

    def shortest_interval(self, coverage: float = 0.95) -> tuple[float, float]:
        """Give the shortest interval that holds a share of the trials.

        Of several as short the lowest (JCGM 101:2008, 7.7).

        Parameters
        ----------
        coverage : float
            Share of the trials within, between 0 and 1.

        Returns
        -------
        tuple of float
            Low and high end, in the unit of the trials.

        Raises
        ------
        RequestError
            For a coverage that leaves no trial out, or none in.

        Examples
        --------
        >>> summarise([0, 10, 11, 12, 13, 30]).shortest_interval(0.5)
        (10.0, 13.0)
        """
        within = self._within(coverage)
        lengths = self.ordered[within:] - self.ordered[:-within]
        first = int(np.argmin(lengths))
        return float(self.ordered[first]), float(self.ordered[first + within])

    def chance_of_at_least(self, target: ArrayLike) -> FloatArray:
        """Give the share of the trials that reach a target.

        Its standard error is ``sqrt(p (1 - p) / trials)``.

        Parameters
        ----------
        target : array_like
            In the unit of the trials.

        Returns
        -------
        ndarray
            Shares 0 to 1, of the shape of `target`; NaN for an unknown target.

        Examples
        --------
        >>> summarise([1.0, 2.0, 2.0, 3.0]).chance_of_at_least([0.0, 2.0, 3.5])
        array([1.  , 0.75, 0.  ])
        """
        targets = as_floats(target)
        short = np.searchsorted(self.ordered, targets, side="left")
        reached = (self.count - short) / self.count
        return np.where(np.isnan(targets), np.nan, reached)

    def _within(self, coverage: float) -> int:
        """Give q of JCGM 101, the number of trials that an interval spans."""
        if not 0.0 < coverage < 1.0:
            said = f"A coverage lies between 0 and 1; {coverage:g} does not."
            raise RequestError(said)
        # The last digit of p M must not count as a fraction of a trial.
        wanted = round(coverage * self.count, 6)
        within = int(wanted) if wanted.is_integer() else int(wanted + 0.5)
        if not 0 < within < self.count:
            said = f"{self.count} trials are too few for a coverage of {coverage:g}."
            raise RequestError(said)
        return within


def summarise(values: ArrayLike) -> Trials:
    """Give what the trials of one quantity amount to.

    Parameters
    ----------
    values : array_like, shape (trials,)
        Two or more known values, in any unit; kept, and not to be written to later.

    Returns
    -------
    Trials
        With mean and standard uncertainty (JCGM 101:2008, 7.6) and the trials in order.

    Raises
    ------
    RequestError
        For fewer than two trials, or one whose value is not a finite number.

    Examples
    --------
    >>> trials = summarise([1.0, 3.0, 2.0])
    >>> trials.mean, trials.standard_uncertainty, trials.p50
    (2.0, 1.0, 2.0)
    """
    kept = as_floats(values).view()
    if kept.ndim != 1 or kept.size < 2:
        raise RequestError("A distribution needs at least two trials.")
    ordered = np.sort(kept)
    # NaN and infinity sort to the ends.
    if not math.isfinite(ordered[0]) or not math.isfinite(ordered[-1]):
        raise RequestError("A trial came to no finite number.")
    kept.flags.writeable = ordered.flags.writeable = False
    mean = float(kept.mean())
    return Trials(kept, ordered, mean, _standard_deviation(kept, mean))


def _standard_deviation(values: FloatArray, mean: float) -> float:
    """Give it in blocks: the usual one takes room for a second copy of the values."""
    block = 1 << 16
    squares = [
        float(np.square(values[start : start + block] - mean).sum())
        for start in range(0, values.size, block)
    ]
    return math.sqrt(math.fsum(squares) / (values.size - 1))
