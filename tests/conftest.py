"""What every test runs under: no display, no folder of the person's, no Qt in unit."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

import pytest

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

_UNIT = Path(__file__).parent / "unit"
_QT_FIXTURES = {"qapp", "qtbot", "qtmodeltester"}


@pytest.fixture(scope="session", autouse=True)
def benchpack_home(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """Keep settings, libraries and logs of the tests in a folder of their own."""
    home = tmp_path_factory.mktemp("benchpack-home")
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("BENCHPACK_HOME", str(home))
        yield home


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Refuse unit tests that ask for the toolkit: what they test has to run without."""
    for item in items:
        if not item.path.is_relative_to(_UNIT):
            continue
        asked = _QT_FIXTURES & set(getattr(item, "fixturenames", ()))
        if asked:
            names = ", ".join(sorted(asked))
            raise pytest.UsageError(f"{item.nodeid} asks for {names}; move it to ui/")
