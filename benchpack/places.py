"""Where shipped files lie and where the person's own files go."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import platformdirs

_FINDERS: dict[str, Callable[..., Path]] = {
    "data": platformdirs.user_data_path,
    "config": platformdirs.user_config_path,
    "log": platformdirs.user_log_path,
}
_PACKAGE = Path(__file__).resolve().parent


def _shipped(installed: str, checkout: str) -> Path:
    inside = _PACKAGE / installed
    return inside if inside.is_dir() else _PACKAGE.parent / checkout


def resources_folder() -> Path:
    """Give the folder with icons, fonts and licence texts."""
    return _shipped("_resources", "resources")


def datasets_folder() -> Path:
    """Give the folder with the demo library and the material tables."""
    return _shipped("_datasets", "datasets")


def _own(kind: str) -> Path:
    """Give a folder of the person's, under BENCHPACK_HOME when that is set."""
    home = os.environ.get("BENCHPACK_HOME")
    if home:
        folder = Path(home) / kind
        folder.mkdir(parents=True, exist_ok=True)
        return folder
    return Path(_FINDERS[kind]("benchpack", appauthor=False, ensure_exists=True))


def data_folder() -> Path:
    """Give the folder where libraries lie that have no place of their own."""
    return _own("data")


def config_folder() -> Path:
    """Give the folder of the settings file."""
    return _own("config")


def log_file() -> Path:
    """Give the file that tracebacks go to."""
    return _own("log") / "benchpack.log"
