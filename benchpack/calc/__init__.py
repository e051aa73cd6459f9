"""Numbers from numbers: numpy arrays in, numpy arrays out, NaN for unknown."""

from __future__ import annotations
