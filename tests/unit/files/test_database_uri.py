"""Addresses of library files on every system."""

from __future__ import annotations

from pathlib import PurePath, PurePosixPath, PureWindowsPath

import pytest

from benchpack.files.library_file import database_uri


@pytest.mark.parametrize(
    ("path", "uri"),
    [
        (
            PurePosixPath("/data/my packs.benchpack"),
            "file:///data/my%20packs.benchpack",
        ),
        (PureWindowsPath("C:/data/a.benchpack"), "file:///C:/data/a.benchpack"),
        (
            PureWindowsPath("//server/share/a.benchpack"),
            "file:////server/share/a.benchpack",
        ),
    ],
)
def test_a_network_share_gets_an_empty_authority(path: PurePath, uri: str) -> None:
    assert database_uri(path) == uri
