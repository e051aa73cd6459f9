"""Proposals for the tests of the calculations."""

from __future__ import annotations

import numpy as np
from hypothesis import strategies as st

from benchpack.calc.change_ranges import (
    ChangeRanges,
    CommonFactors,
    MoneyRanges,
    Ranges,
)
from benchpack.calc.distributions import Distribution

KINDS = list(Distribution)


def some_ranges(random: np.random.Generator, count: int, *, around: float) -> Ranges:
    """Give ranges of every kind, one in five of them without width."""
    low = random.uniform(-around, 2.0 * around, count)
    widths = random.uniform(0.1, around, (2, count)) * (random.random(count) < 0.8)
    kinds = [KINDS[place] for place in random.integers(0, len(KINDS), count)]
    return Ranges(low, low + widths[0], low + widths.sum(axis=0), kinds=kinds)


def some_changes(seed: int, count: int) -> ChangeRanges:
    """Give changes with two kinds of money, some of them sure to be released."""
    random = np.random.default_rng(seed)
    chances = np.minimum(random.uniform(0.2, 1.3, count), 1.0)
    return ChangeRanges(
        some_ranges(random, count, around=3.0),
        money=[
            MoneyRanges(some_ranges(random, count, around=8.0), moves_with_price=True),
            MoneyRanges(
                some_ranges(random, count, around=4.0),
                moves_with_price=True,
                moves_with_exchange=True,
            ),
            MoneyRanges(some_ranges(random, count, around=2.0)),
        ],
        release_chance=chances,
    )


def some_factors(seed: int) -> CommonFactors:
    """Give worth, prices and exchange rate, each with a width."""
    random = np.random.default_rng(seed)
    return CommonFactors(
        Ranges(1.0, 3.0, float(random.uniform(4.0, 9.0))),
        price=Ranges(0.7, 1.0, float(random.uniform(1.1, 1.6))),
        exchange=Ranges(0.9, 1.0, 1.2, kinds=Distribution.PERT),
    )


proposals = st.builds(some_changes, st.integers(0, 10_000), st.integers(1, 6))
factors = st.builds(some_factors, st.integers(0, 10_000))
