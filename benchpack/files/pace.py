"""How far reading is, and whether the person has had enough of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from benchpack.errors import CancelledError

Progress = Callable[[int, int, str], None]
"""Told how much is done, of how much, and what is being done."""

Cancelled = Callable[[], bool]
"""Asked whether the person has had enough."""


@dataclass(frozen=True, slots=True)
class Pace:
    """Tells how far the work is and stops it when the person asks.

    Parameters
    ----------
    progress : callable or None
        Told ``(done, total, words)``.
    cancelled : callable or None
        Gives True to stop the work.
    """

    progress: Progress | None = None
    cancelled: Cancelled | None = None

    def step(self, done: int, total: int, words: str) -> None:
        """Report, and stop if asked to.

        Raises
        ------
        CancelledError
            When the person stopped the work.
        """
        if self.cancelled is not None and self.cancelled():
            raise CancelledError("Reading was stopped.")
        if self.progress is not None:
            self.progress(done, total, words)
