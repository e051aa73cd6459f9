"""A fitted line of mass over energy, what it predicts, and within what band."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from benchpack.calc._arrays import FloatArray, as_floats, positive_or_nan
from benchpack.errors import RequestError
from benchpack.model.words import TrendKind

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

SLOPE_COVERAGE = 0.95


@dataclass(frozen=True, slots=True)
class LinearTrend:
    """A line through the peers: mass over energy, or their logarithms (power law).

    Parameters
    ----------
    kind : TrendKind
        How the line was fitted.
    n : int
        Peers that had both an energy and a mass.
    intercept, slope : float
        ``m = intercept + slope E`` in kg and kg/kWh; for the power law
        ``ln m = intercept + slope ln E``, so that ``m = exp(intercept) E^slope``.
    intercept_se, slope_se : float
        Standard errors, ``s sqrt(1/n + mean^2 / sxx)`` and ``s / sqrt(sxx)``; exact
        theory for least squares, an approximation for Theil-Sen.
    r_squared : float
        ``1 - SSE / SST`` in the space of the fit; NaN where all masses are equal.
    residual_s : float
        ``sqrt(SSE / (n - 2))``: kg, for the power law of ``ln m``. 0 when perfect.
    mean_energy_kwh : float
        Mean energy of the peers, for the power law the geometric mean.
    sxx : float
        Sum of squares of energy (power law: of its logarithm) about its mean.
    least_energy_kwh, greatest_energy_kwh : float
        The span of the peers; outside it the trend is extrapolated.
    sampled_pairs : int
        Theil-Sen: pairs drawn where there were too many to take all; otherwise 0.
    rank_limits : tuple of float or None
        Theil-Sen: 95 % confidence limits of the slope from Sen's ranks.
    """

    kind: TrendKind
    n: int
    intercept: float
    slope: float
    intercept_se: float
    slope_se: float
    r_squared: float
    residual_s: float
    mean_energy_kwh: float
    sxx: float
    least_energy_kwh: float
    greatest_energy_kwh: float
    sampled_pairs: int = 0
    rank_limits: tuple[float, float] | None = None

    @property
    def slope_low(self) -> float:
        """Lower 95 % confidence limit of the slope: Student t, or Sen's ranks."""
        return self._slope_limits()[0]

    @property
    def slope_high(self) -> float:
        """Upper 95 % confidence limit of the slope: Student t, or Sen's ranks."""
        return self._slope_limits()[1]

    def _slope_limits(self) -> tuple[float, float]:
        if self.rank_limits is not None:
            return self.rank_limits
        reach = student_quantile(SLOPE_COVERAGE, dof=self.n - 2) * self.slope_se
        return self.slope - reach, self.slope + reach

    def predict_kg(self, energy_kwh: ArrayLike) -> FloatArray:
        """Give the mass on the line at each energy.

        For the power law this is the median mass: the mean of masses that scatter in
        their logarithm lies higher by the factor ``exp(s^2 / 2)``.

        Parameters
        ----------
        energy_kwh : array_like
            Energies, kWh.

        Returns
        -------
        ndarray
            kg, of the shape of `energy_kwh`.

        Examples
        --------
        >>> from benchpack.calc.trend import fit_least_squares
        >>> trend = fit_least_squares([40.0, 60.0, 80.0], [260.0, 380.0, 480.0])
        >>> print(trend.predict_kg(60.0).round(2))
        373.33
        """
        return self._mass_kg(self._line(self._x(energy_kwh)))

    def prediction_uncertainty_kg(self, energy_kwh: ArrayLike) -> FloatArray:
        """Give the standard error of predicting one more pack.

        ``s sqrt(1 + 1/n + (E - mean)^2 / sxx)``; for the power law that, times the
        predicted mass (first order).

        Parameters
        ----------
        energy_kwh : array_like
            Energies, kWh.

        Returns
        -------
        ndarray
            kg, of the shape of `energy_kwh`.

        Examples
        --------
        >>> from benchpack.calc.trend import fit_least_squares
        >>> trend = fit_least_squares([40.0, 60.0, 80.0], [260.0, 380.0, 480.0])
        >>> print(trend.prediction_uncertainty_kg(60.0).round(3))
        9.428
        """
        x = self._x(energy_kwh)
        error = self._prediction_error(x)
        if self.kind is TrendKind.POWER_LAW:
            return error * self._mass_kg(self._line(x))
        return error

    def prediction_interval_kg(
        self, energy_kwh: ArrayLike, *, coverage: float = 0.95
    ) -> tuple[FloatArray, FloatArray]:
        """Give the band in which one more pack of each energy is expected.

        The line plus and minus Student t on ``n - 2`` degrees of freedom times the
        standard error of prediction (Draper and Smith, Applied Regression Analysis,
        section 1.4, from memory). Exact for least squares with normal scatter; for the
        power law taken in logarithms and raised back, so not symmetric. For Theil-Sen
        it is the same formula with the root mean square of the residuals to its own
        line: an approximation, and on purpose not robust. A pack far off the line moves
        the line little, but it does widen the band.

        Parameters
        ----------
        energy_kwh : array_like
            Energies, kWh.
        coverage : float
            Chance that the pack falls into the band, between 0 and 1.

        Returns
        -------
        tuple of ndarray
            Low and high end, kg, each of the shape of `energy_kwh`.

        Raises
        ------
        RequestError
            For a coverage that does not lie between 0 and 1.

        Examples
        --------
        >>> from benchpack.calc.trend import fit_least_squares
        >>> trend = fit_least_squares([40, 60, 80, 90], [260, 380, 480, 545])
        >>> low, high = trend.prediction_interval_kg(70.0)
        >>> print(low.round(1), high.round(1))
        398.9 461.6
        """
        x = self._x(energy_kwh)
        reach = student_quantile(coverage, dof=self.n - 2) * self._prediction_error(x)
        line = self._line(x)
        return self._mass_kg(line - reach), self._mass_kg(line + reach)

    def _x(self, energy_kwh: ArrayLike) -> FloatArray:
        if self.kind is TrendKind.POWER_LAW:
            return as_floats(np.log(positive_or_nan(energy_kwh)))
        return as_floats(energy_kwh)

    def _line(self, x: FloatArray) -> FloatArray:
        return self.intercept + self.slope * x

    def _mass_kg(self, y: FloatArray) -> FloatArray:
        if self.kind is not TrendKind.POWER_LAW:
            return y
        # Far outside the peers the band of a steep law has no upper end.
        with np.errstate(over="ignore"):
            return np.exp(y)

    def _prediction_error(self, x: FloatArray) -> FloatArray:
        from_mean = x - self._x(self.mean_energy_kwh)
        spread = 1.0 + 1.0 / self.n + from_mean**2 / self.sxx
        return self.residual_s * np.sqrt(spread)


def student_quantile(coverage: float, *, dof: float) -> float:
    """Give the Student t that holds `coverage` of the distribution between +-t.

    Parameters
    ----------
    coverage : float
        Between 0 and 1.
    dof : float
        Degrees of freedom, above zero; infinite for the normal distribution.

    Returns
    -------
    float
        The two-sided quantile.

    Raises
    ------
    RequestError
        For a coverage that does not lie between 0 and 1.

    Examples
    --------
    >>> print(round(student_quantile(0.95, dof=10), 3))
    2.228
    """
    from scipy.special import stdtrit

    if not 0.0 < coverage < 1.0:
        said = f"A coverage lies between 0 and 1; {coverage:g} does not."
        raise RequestError(said)
    return float(stdtrit(dof, 0.5 + coverage / 2.0))
