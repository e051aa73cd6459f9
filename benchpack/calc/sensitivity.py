"""What matters for a quantity: Sobol indices, and one input at a time."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from benchpack.calc._arrays import FloatArray, as_floats
from benchpack.calc._streams import Cancelled, random_stream, stop_if
from benchpack.errors import RequestError

Model = Callable[[FloatArray], FloatArray]
"""Takes an array of shape (inputs, n) and gives n values."""


@dataclass(frozen=True, slots=True, eq=False)
class SobolIndices:
    """Shares of the variance that inputs, or groups of them, account for.

    Parameters
    ----------
    first : ndarray, shape (groups,)
        Share that would go, were this input known: its effect alone.
    total : ndarray, shape (groups,)
        Share that would stay, were all others known: with its interactions.
    first_error, total_error : ndarray, shape (groups,)
        Standard errors of the estimates; 0 where the indices are exact.
    variance : float
        Variance of the quantity; where it is 0 all indices are NaN.
    """

    first: FloatArray
    total: FloatArray
    first_error: FloatArray
    total_error: FloatArray
    variance: float


@dataclass(frozen=True, slots=True, eq=False)
class Swings:
    """The quantity when one input at a time goes to its ends.

    Parameters
    ----------
    base : float
        All inputs at their likely values.
    at_low, at_high : ndarray, shape (inputs,)
        One input at its low or high end, all others at their likely values.
    """

    base: float
    at_low: FloatArray
    at_high: FloatArray

    @property
    def order(self) -> list[int]:
        """Inputs by the width of their swing, widest first."""
        widths = np.abs(self.at_high - self.at_low)
        return [int(index) for index in np.argsort(-widths, kind="stable")]


def sobol_indices(
    model: Model,
    quantiles: Sequence[Callable[[FloatArray], FloatArray]],
    *,
    groups: Sequence[Sequence[int]] | None = None,
    points: int = 1024,
    repeats: int = 8,
    seed: int = 1,
    cancelled: Cancelled | None = None,
) -> SobolIndices:
    """Give first-order and total Sobol indices of a model of independent inputs.

    With samples A and B, and A whose group i is taken from B: first order ``mean(f(B)
    (f(A_i) - f(A))) / V`` (Saltelli et al., Computer Physics Communications 181, 2010,
    table 2 b), total ``mean((f(A) - f(A_i))^2) / (2 V)`` (Jansen, ibid. 117, 1999).
    The samples are scrambled Sobol sequences; the standard errors come from repeating
    the whole with other scramblings.

    Parameters
    ----------
    model : callable
        Takes an array of shape (inputs, n) and gives n values.
    quantiles : sequence of callable
        One for each input: takes probabilities and gives values.
    groups : sequence of sequences of int, optional
        Inputs that count together; each input alone where not given.
    points : int
        Size of each sample, a power of two.
    repeats : int
        How often to sample, 2 or more; the model runs ``repeats points (groups + 2)``
        times.
    seed : int
        Zero or more; the same seed gives the same indices.
    cancelled : callable, optional
        Asked often whether to stop.

    Returns
    -------
    SobolIndices
        In the order of the groups.

    Raises
    ------
    RequestError
        For no inputs, for a group that names an input that is not there, for `points`
        that are no power of two, for fewer than two repeats, and for a model that does
        not come to finite numbers.
    CancelledError
        Once `cancelled` says so.

    Examples
    --------
    >>> from benchpack.calc.distributions import Distribution, quantile_of_range
    >>> one = quantile_of_range(0.0, 1.0, likely=0.5, kind=Distribution.RECTANGULAR)
    >>> indices = sobol_indices(lambda x: x[0] + 2.0 * x[1], [one, one])
    >>> print(indices.first.round(2), indices.total.round(2))
    [0.2 0.8] [0.2 0.8]
    """
    inputs = len(quantiles)
    chosen = _groups(groups, inputs)
    if points < 2 or points & (points - 1):
        said = f"The sample is a power of two, which {points} is not."
        raise RequestError(said)
    if repeats < 2:
        raise RequestError("A standard error needs two repeats or more.")
    # Loads scipy.stats, two seconds, which no start of the program may pay for.
    from scipy.stats.qmc import Sobol

    first, total = np.empty((2, repeats, len(chosen)))
    variances = np.empty(repeats)
    for repeat in range(repeats):
        sequence = Sobol(2 * inputs, rng=random_stream(seed, repeat))
        # Half a step of its grid on, so that no input is asked for the value at 0.
        sample = np.ascontiguousarray(sequence.random(points).T) + 2.0**-31
        a, b = _mapped(sample[:inputs], quantiles), _mapped(sample[inputs:], quantiles)
        at_a, at_b = _values(model, a), _values(model, b)
        both = np.concatenate((at_a, at_b))
        variances[repeat] = both.var()
        # Taken from the middle, products lose less to rounding and to chance.
        at_b = at_b - both.mean()
        for place, group in enumerate(chosen):
            stop_if(cancelled)
            mixed = a.copy()
            mixed[group] = b[group]
            change = _values(model, mixed) - at_a
            first[repeat, place] = (at_b * change).mean()
            total[repeat, place] = 0.5 * np.square(change).mean()
    return _indices(first, total, variances)


def swing_table(
    model: Model, *, low: ArrayLike, likely: ArrayLike, high: ArrayLike
) -> Swings:
    """Give what a quantity becomes when one input at a time goes to its ends.

    Parameters
    ----------
    model : callable
        Takes an array of shape (inputs, n) and gives n values.
    low, likely, high : array_like, shape (inputs,)
        Ends and base of each input, in its own unit.

    Returns
    -------
    Swings
        In the unit that the model gives, in the order of the inputs. Common practice,
        no source.

    Raises
    ------
    RequestError
        For ends that are not one for each input, and for a model that does not come to
        finite numbers.

    Examples
    --------
    >>> table = swing_table(
    ...     lambda x: x[0] * x[1], low=[1.0, 3.0], likely=[2.0, 4.0], high=[3.0, 6.0]
    ... )
    >>> print(table.base, table.at_low, table.at_high, table.order)
    8.0 [4. 6.] [12. 12.] [0, 1]
    """
    base, lows, highs = (np.atleast_1d(as_floats(part)) for part in (likely, low, high))
    inputs = base.size
    if base.ndim != 1 or lows.shape != base.shape or highs.shape != base.shape:
        raise RequestError("Every input needs a low, a likely and a high value.")
    columns = np.repeat(base[:, np.newaxis], 2 * inputs + 1, axis=1)
    each = np.arange(inputs)
    columns[each, each + 1] = lows
    columns[each, each + 1 + inputs] = highs
    values = _values(model, columns)
    return Swings(float(values[0]), values[1 : inputs + 1], values[inputs + 1 :])


def _groups(groups: Sequence[Sequence[int]] | None, inputs: int) -> list[list[int]]:
    if inputs == 0:
        raise RequestError("A model without inputs has no indices.")
    if groups is None:
        return [[index] for index in range(inputs)]
    chosen = [list(group) for group in groups]
    for index in (index for group in chosen for index in group):
        if not 0 <= index < inputs:
            said = f"There is no input {index} among {inputs}."
            raise RequestError(said)
    return chosen


def _mapped(
    uniform: FloatArray, quantiles: Sequence[Callable[[FloatArray], FloatArray]]
) -> FloatArray:
    mapped = np.empty_like(uniform)
    for row, given, quantile in zip(mapped, uniform, quantiles, strict=True):
        row[:] = quantile(given)
    return mapped


def _values(model: Model, inputs: FloatArray) -> FloatArray:
    values = as_floats(model(inputs))
    if values.shape != inputs.shape[1:] or not np.isfinite(values).all():
        raise RequestError("The model has to give one finite value for each trial.")
    return values


def _indices(
    first: FloatArray, total: FloatArray, variances: FloatArray
) -> SobolIndices:
    """Give indices and errors from the partial variances of each repeat."""
    variance = float(variances.mean())
    if variance == 0.0:
        unknown = np.full(first.shape[1], np.nan)
        return SobolIndices(unknown, unknown, unknown, unknown, 0.0)
    root = np.sqrt(variances.size)
    return SobolIndices(
        first.mean(axis=0) / variance,
        total.mean(axis=0) / variance,
        (first / variances[:, np.newaxis]).std(axis=0, ddof=1) / root,
        (total / variances[:, np.newaxis]).std(axis=0, ddof=1) / root,
        variance,
    )
