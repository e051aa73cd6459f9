"""Streams of random numbers: one seed, and a stream of its own for each quantity."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from benchpack.calc.trials import MOST_TRIALS
from benchpack.errors import CancelledError, RequestError

Cancelled = Callable[[], bool]


def random_stream(seed: int, *key: int) -> np.random.Generator:
    """Give the generator (PCG64) of one quantity: same seed and key, same numbers."""
    if seed < 0:
        said = f"A seed is zero or more; {seed} is not."
        raise RequestError(said)
    return np.random.Generator(
        np.random.PCG64(np.random.SeedSequence(seed, spawn_key=key))
    )


def stop_if(cancelled: Cancelled | None) -> None:
    """Raise CancelledError once the person has asked to stop."""
    if cancelled is not None and cancelled():
        raise CancelledError("the trials")


def check_size(trials: int, block: int) -> None:
    """Refuse a number of trials or a block that is out of bounds."""
    if not 2 <= trials <= MOST_TRIALS:
        said = f"A simulation takes 2 to {MOST_TRIALS:,} trials, not {trials:,}."
        raise RequestError(said)
    if block < 1:
        said = f"A block is one trial or more, not {block}."
        raise RequestError(said)
