"""What the program ends with."""

from __future__ import annotations

DONE, DATA_AT_FAULT, CALL_AT_FAULT, STOPPED = 0, 1, 2, 130
