"""Units, numbers as text, and the labels both are shown with.

The modules are imported one by one; none of them loads pint before a unit other
than the canonical one has to be converted.
"""

from __future__ import annotations
