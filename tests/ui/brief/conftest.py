from __future__ import annotations

import gc
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QCoreApplication, QEvent
from PySide6.QtWidgets import QApplication

from benchpack.ui.theme import Scheme, apply_theme, theme


@pytest.fixture
def dark(qapp: QApplication) -> Iterator[None]:
    """Put the window in its dark colours."""
    apply_theme(qapp, Scheme.DARK)
    yield
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    gc.collect()  # deleted charts are cycles; a change of scheme would visit them
    apply_theme(qapp, Scheme.LIGHT)
    assert theme().scheme is Scheme.LIGHT
