"""What the program says where there is no display."""

from __future__ import annotations

import pytest

from benchpack import cli
from benchpack.commands.exit_codes import CALL_AT_FAULT


@pytest.fixture
def bare_linux(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sys.platform", "linux")
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)


@pytest.mark.usefixtures("bare_linux")
def test_without_a_display_the_window_says_so_in_one_line(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert cli.main([]) == CALL_AT_FAULT
    said = capsys.readouterr().err
    assert said.count("\n") == 1
    assert "no display" in said
    named = said.partition("; benchpack ")[2].partition(" need none")[0]
    assert named == (
        "gaps, joints, proposal, brief, workbook, bundle, check, convert and pictures"
    )


@pytest.mark.usefixtures("bare_linux")
@pytest.mark.parametrize("name", ["DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"])
def test_a_display_is_seen(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    assert not cli.has_display()
    monkeypatch.setenv(name, "something")
    assert cli.has_display()
