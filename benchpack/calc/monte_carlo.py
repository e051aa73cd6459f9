"""Propagation of distributions through any model by Monte Carlo (JCGM 101:2008).

Trials are drawn in blocks, each input from a random stream of its own (PCG64), so that
the same seed gives the same trials whatever the size of a block.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np

from benchpack.calc._arrays import FloatArray
from benchpack.calc._streams import Cancelled, check_size, random_stream, stop_if
from benchpack.calc.trials import DEFAULT_BLOCK, DEFAULT_TRIALS, Trials, summarise
from benchpack.errors import RequestError


def propagate(
    model: Callable[[FloatArray], FloatArray],
    quantiles: Sequence[Callable[[FloatArray], FloatArray]],
    *,
    trials: int = DEFAULT_TRIALS,
    seed: int = 1,
    block: int = DEFAULT_BLOCK,
    cancelled: Cancelled | None = None,
) -> Trials:
    """Give the distribution of a quantity that depends on independent inputs.

    Inputs are drawn through the inverse of their CDF (JCGM 101:2008, 6.4 and C.2).

    Parameters
    ----------
    model : callable
        Takes an array of shape (inputs, n) and gives n values.
    quantiles : sequence of callable
        One for each input: takes n probabilities and gives n values.
    trials : int
        2 to 10,000,000.
    seed : int
        Zero or more; the same seed gives the same trials.
    block : int
        Trials at a time; changes nothing but speed and memory.
    cancelled : callable, optional
        Asked before each block whether to stop.

    Returns
    -------
    Trials
        In the unit that the model gives.

    Raises
    ------
    RequestError
        For a number of trials, a block or a seed that is out of bounds, and for a
        model that does not come to one finite number for each trial.
    CancelledError
        Once `cancelled` says so.

    Examples
    --------
    >>> from benchpack.calc.distributions import Distribution, quantile_of_range
    >>> die = quantile_of_range(0.0, 1.0, likely=0.5, kind=Distribution.RECTANGULAR)
    >>> total = propagate(lambda x: x[0] + x[1], [die, die])
    >>> print(round(total.mean, 2), round(total.standard_uncertainty, 2))
    1.0 0.41
    """
    check_size(trials, block)
    streams = [random_stream(seed, index) for index in range(len(quantiles))]
    values = np.empty(trials)
    for start in range(0, trials, block):
        stop_if(cancelled)
        part = values[start : start + block]
        inputs = np.empty((len(quantiles), part.size))
        for row, stream, quantile in zip(inputs, streams, quantiles, strict=True):
            row[:] = quantile(stream.random(part.size))
        given = model(inputs)
        if given.shape != part.shape:
            raise RequestError("The model has to give one value for each trial.")
        part[:] = given
    return summarise(values)
