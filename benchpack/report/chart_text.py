"""Figures that several charts write alike."""

from __future__ import annotations

import math


def share_text(share: float) -> str:
    """Write a share in whole per cent; only nothing is 0 % and only all is 100 %.

    Parameters
    ----------
    share : float
        From 0 to 1, nan where it is not known.

    Examples
    --------
    >>> share_text(0.004), share_text(0.62), share_text(0.999)
    ('< 1 %', '62 %', '> 99 %')
    """
    if math.isnan(share):
        return "–"
    percent = round(100 * share)
    if percent == 100 and share < 1 - 1e-9:
        return "> 99 %"
    if percent == 0 and share > 0:
        return "< 1 %"
    return f"{percent} %".replace("-", "−")
