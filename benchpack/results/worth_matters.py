"""What the value of a programme hangs on: swings, and shares of its variance."""

from __future__ import annotations

from collections.abc import Callable

from benchpack.calc.sensitivity import sobol_indices, swing_table
from benchpack.errors import Problem
from benchpack.results.proposal_matters import Share, Swing
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_model import worth_model


def worth_swings(case: WorthCase) -> tuple[float, tuple[Swing, ...]] | Problem:
    """Give the value of the programme when one input goes to its ends; at once.

    Parameters
    ----------
    case : WorthCase
        The case.

    Returns
    -------
    tuple or Problem
        The value with all inputs at their likely figures, each change by its chance,
        and the swings, widest first, inputs without a width left out; or why there is
        none.
    """
    model = worth_model(case)
    if isinstance(model, Problem):
        return model
    low, likely, high = zip(*(one.range.ends for one in model.inputs), strict=True)
    table = swing_table(model.npv, low=low, likely=likely, high=high)
    swings = tuple(
        Swing(
            model.inputs[place].label,
            "",
            float(table.at_low[place]),
            float(table.at_high[place]),
        )
        for place in table.order
        if table.at_low[place] != table.at_high[place]
    )
    return table.base, swings


def worth_shares(
    case: WorthCase,
    *,
    points: int = 512,
    seed: int = 1,
    cancelled: Callable[[], bool] | None = None,
) -> tuple[Share, ...] | Problem:
    """Give the share of the variance of each input; meant for another thread.

    Parameters
    ----------
    case : WorthCase
        The case.
    points : int
        Size of each sample, a power of two.
    seed : int
        Zero or more; the same seed gives the same shares.
    cancelled : callable, optional
        Asked often whether to stop.

    Returns
    -------
    tuple of Share or Problem
        Greatest total first, inputs without a width left out; or why there is none.

    Raises
    ------
    CancelledError
        Once `cancelled` says so.
    """
    model = worth_model(case)
    if isinstance(model, Problem):
        return model
    open_ended = [i for i, one in enumerate(model.inputs) if one.range.width > 0]
    if not open_ended:
        return Problem(
            "No assumption has a range, so nothing varies.",
            "Give the worth, the volume or a change a range.",
        )
    found = sobol_indices(
        model.npv,
        model.quantiles(),
        groups=[[i] for i in open_ended],
        points=points,
        seed=seed,
        cancelled=cancelled,
    )
    columns = (found.first.tolist(), found.total.tolist(), found.total_error.tolist())
    shares = [
        Share(model.inputs[place].label, first, total, error)
        for place, first, total, error in zip(open_ended, *columns, strict=True)
    ]
    return tuple(sorted(shares, key=lambda share: -share.total))
