"""One check of what holds a pack together, with its reason in words."""

from __future__ import annotations

from dataclasses import dataclass

from benchpack.results.closure import Grade
from benchpack.results.figure import Input

__all__ = ["Check", "Grade"]


@dataclass(frozen=True, slots=True)
class Check:
    """What was checked, how it stands, and why.

    Parameters
    ----------
    kind : str
        What was checked: ``clamp load``, ``seal line``.
    record : str
        Name of the joint.
    grade : Grade
        How well it stands; none where it cannot be said or does not apply.
    words : str
        The result and its reason as sentences, with figures.
    figures : tuple of Input
        What went in and what came out.
    remedy : str
        What to do or to record, as a sentence; empty where nothing is to be done.
    """

    kind: str
    record: str
    grade: Grade
    words: str
    figures: tuple[Input, ...] = ()
    remedy: str = ""
