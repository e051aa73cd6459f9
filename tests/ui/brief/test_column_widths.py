"""How columns share the paper, and the examples in what sets a brief."""

from __future__ import annotations

import doctest
import importlib

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchpack.ui.brief.column_widths import column_widths

MODULES = ("column_widths", "html_parts", "pdf_words")
SIZES = st.floats(1.0, 2000.0)


@given(st.lists(st.tuples(SIZES, st.floats(0.05, 1.0)), min_size=1, max_size=6))
def test_widths_fill_the_room_and_hold_the_longest_words(
    columns: list[tuple[float, float]],
) -> None:
    texts = np.array([[size for size, _ in columns]])
    least = np.array([size * share for size, share in columns])
    widths = column_widths(texts, least, room=700.0, beside=6.0)
    assert widths.sum() == pytest.approx(700.0)
    assert (widths > 0).all()
    if (least + 6.0).sum() < 700.0:
        assert (widths >= least + 6.0 - 1e-6).all()


def test_texts_that_fit_are_not_broken() -> None:
    texts = np.array([[100.0, 60.0], [80.0, 90.0]])
    widths = column_widths(texts, np.full(2, 10.0), room=400.0, beside=6.0)
    assert (widths >= [106.0, 96.0]).all()


def test_room_goes_where_it_saves_lines() -> None:
    """One long text beside many that fit in a little more than a fair share."""
    texts = np.array([[300.0, 900.0]] * 12)
    widths = column_widths(texts, np.full(2, 20.0), room=700.0)
    lines = np.ceil(texts * 1.04 / widths).max(axis=1).sum()
    fair = np.ceil(texts * 1.04 / 350.0).max(axis=1).sum()
    assert lines < fair


@pytest.mark.parametrize("name", MODULES)
def test_examples_hold(name: str) -> None:
    found = doctest.testmod(importlib.import_module(f"benchpack.ui.brief.{name}"))
    assert found.attempted > 0
    assert found.failed == 0
