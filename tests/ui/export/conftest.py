from __future__ import annotations

import gc
from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QApplication

from benchpack.ui.theme import Scheme, apply_theme, theme


@pytest.fixture(autouse=True)
def light_theme(qapp: QApplication) -> Iterator[None]:
    """Start every test in the light scheme with the shipped typeface."""
    apply_theme(qapp, Scheme.LIGHT)
    yield
    if theme().scheme is not Scheme.LIGHT:
        gc.collect()  # deleted charts are cycles; a change of scheme would visit them
        apply_theme(qapp, Scheme.LIGHT)
