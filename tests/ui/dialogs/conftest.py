"""A workspace in memory whose work runs at once."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QApplication

from benchpack.session.document import Document
from benchpack.session.settings import Settings
from benchpack.ui.notify import Notifier
from benchpack.ui.tasks import DirectRunner
from benchpack.ui.workspace import Workspace
from tests.ui.dialogs.small_library import Said, small_state


@pytest.fixture
def workspace(qapp: QApplication) -> Iterator[Workspace]:
    notifier = Notifier()
    made = Workspace(
        Document(small_state()),
        runner=DirectRunner(),
        notifier=notifier,
        settings=Settings(),
    )
    yield made
    made.document.close()


@pytest.fixture
def said(workspace: Workspace) -> Said:
    return Said(workspace.notifier)
