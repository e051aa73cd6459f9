"""Processes: how parts are made, and what that usually takes and costs.

The figures are those of ``datasets/processes.csv``, with the source and the mark of
each.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache
from types import MappingProxyType

from benchpack.model.process_record import PROCESS_FIELDS, Process
from benchpack.model.process_table import PROCESSES

__all__ = ["PROCESSES", "PROCESS_FIELDS", "PROCESS_NAMES", "Process", "process_of"]

PROCESS_NAMES: tuple[str, ...] = tuple(process.name for process in PROCESSES)
"""Names of all processes."""


def _plain(text: str) -> str:
    return " ".join(re.sub(r"[\s\-_]+", " ", text.casefold()).split())


def _known_as() -> Mapping[str, Process]:
    known = {
        _plain(word): process
        for process in PROCESSES
        for word in (process.name, *process.synonyms)
    }
    return MappingProxyType(known)


_KNOWN_AS = _known_as()


@lru_cache(maxsize=1024)
def process_of(text: str) -> Process | None:
    """Give the process that a text names, None where it names none.

    Parameters
    ----------
    text : str
        A name or a synonym; case, blanks and hyphens make no difference, and of
        several steps with commas the first one counts.

    Examples
    --------
    >>> found = process_of("Die-cast, machined")
    >>> found.name if found else ""
    'die casting'
    """
    whole, first = _plain(text), _plain(text.partition(",")[0])
    return _KNOWN_AS.get(whole) or _KNOWN_AS.get(first)
