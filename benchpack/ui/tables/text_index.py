"""Finding and ranking the texts of one column."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

Mask = NDArray[np.bool_]
_SHORT = 64


class TextIndex:
    """The texts of a column without regard to case, each different one once.

    Where most are different, names for instance, they are held row by row instead.

    Parameters
    ----------
    texts : list of str
        The column.
    """

    def __init__(self, texts: list[Any]) -> None:
        folded = [str(text).casefold() for text in texts]
        distinct = set(folded)
        self._codes: NDArray[np.int64] | None = None
        if 2 * len(distinct) <= len(folded):
            ordered = sorted(distinct)
            places = dict(zip(ordered, range(len(ordered)), strict=True))
            found = map(places.__getitem__, folded)
            self._codes = np.fromiter(found, np.int64, len(folded))
            folded = ordered
        longest = max(map(len, folded), default=0)
        # Fixed width is five times quicker to search, and a waste for long notes.
        dtype = np.dtype(np.str_) if longest <= _SHORT else np.dtypes.StringDType()
        self._texts: NDArray[Any] = np.array(folded, dtype=dtype)

    def _by_row(self, found: NDArray[Any]) -> NDArray[Any]:
        return found if self._codes is None else found[self._codes]

    def ranks(self) -> NDArray[np.float64]:
        """Give the place of every row's text in order, NaN for an empty one."""
        texts = self._texts
        order = np.argsort(texts, kind="stable")
        ranks = np.empty(len(texts), dtype=np.float64)
        starts = np.ones(len(texts), dtype=bool)
        starts[1:] = texts[order][1:] != texts[order][:-1]
        ranks[order] = np.cumsum(starts)
        ranks[texts == ""] = np.nan
        return self._by_row(ranks)

    def containing(self, word: str) -> Mask:
        """Tell which rows contain a word, whatever its case."""
        hits: Mask = np.strings.find(self._texts, word.casefold()) >= 0
        return self._by_row(hits)

    def equal_to(self, text: str) -> Mask:
        """Tell which rows are a text, whatever its case."""
        hits: Mask = self._texts == text.casefold()
        return self._by_row(hits)
