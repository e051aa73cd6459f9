"""The person's settings, each declared once with its words and range."""

from __future__ import annotations

import json
import logging
import os
import tempfile
from collections.abc import Mapping
from dataclasses import Field, asdict, dataclass, field, fields, replace
from pathlib import Path
from typing import Any

from benchpack.places import config_folder

RECENT_LIMIT = 10
"""How many recent files are remembered."""

_log = logging.getLogger(__name__)


def _setting(default: Any, label: str, text: str, *choices: str) -> Any:
    metadata = {"label": label, "help": text, "choices": choices}
    if isinstance(default, (list, tuple)):
        return field(default_factory=lambda: tuple(default), metadata=metadata)
    return field(default=default, metadata=metadata)


@dataclass(frozen=True, slots=True)
class Settings:
    """Choices that belong to the person and the machine, not to a study."""

    look: str = _setting(
        "system",
        "Look",
        "Light or dark, or as the system has it.",
        "system",
        "light",
        "dark",
    )
    hidden_columns: tuple[str, ...] = _setting(
        (
            "energy_tolerance_kwh",
            "mass_tolerance_kg",
            "cells_volume_l",
            "voltage_v",
            "cell_count",
            "cooling",
            "boundary",
            "state_of_health_pct",
            "yearly_volume",
            "note",
            "structure_kg",
            "density_wh_per_l",
        ),
        "Hidden columns",
        "Columns of the packs table that are not shown.",
    )
    recent_files: tuple[str, ...] = _setting(
        (), "Recent files", "Library files opened last, newest first."
    )
    brief_audience: str = _setting(
        "customer",
        "Brief is for",
        "A customer does not see what making it costs.",
        "internal",
        "customer",
    )
    brief_paper: str = _setting(
        "A4", "Paper of a brief", "The sheet that a brief is set on.", "A4", "Letter"
    )
    brief_left_out: tuple[str, ...] = _setting(
        ("programme", "price", "target", "vehicle"),
        "Left out of briefs",
        "Sections that are unticked on the Brief page; at first those on the worth, "
        "without which a brief fills two pages.",
    )

    def with_recent(self, path: Path) -> Settings:
        """Give the settings with a file at the top of the recent ones."""
        text = str(path)
        others = [old for old in self.recent_files if old != text]
        return replace(self, recent_files=(text, *others)[:RECENT_LIMIT])


def _valid(setting: Field[Any], value: Any) -> bool:
    """Tell whether a stored value can stand for a setting."""
    choices = setting.metadata["choices"]
    if choices:
        return value in choices
    return isinstance(value, list) and all(isinstance(text, str) for text in value)


def _parsed(stored: Mapping[str, Any]) -> Settings:
    known = {setting.name: setting for setting in fields(Settings)}
    values: dict[str, Any] = {
        name: tuple(value) if isinstance(value, list) else value
        for name, value in stored.items()
        if name in known and _valid(known[name], value)
    }
    return Settings(**values)


def settings_file() -> Path:
    """Give the file the settings lie in."""
    return config_folder() / "settings.json"


def load_settings() -> Settings:
    """Read the settings; what is missing or spoilt falls back to its default."""
    path = settings_file()
    try:
        stored = json.loads(path.read_text(encoding="utf-8"))
    except FileNotFoundError:
        return Settings()
    except (OSError, ValueError) as error:
        _log.info("settings could not be read: %s", error)
        return Settings()
    return _parsed(stored) if isinstance(stored, dict) else Settings()


def save_settings(settings: Settings) -> None:
    """Write the settings so that a crash leaves the old or the new file.

    Raises
    ------
    OSError
        When the folder cannot be written.
    """
    path = settings_file()
    handle, name = tempfile.mkstemp(dir=path.parent, prefix="settings-", text=True)
    with os.fdopen(handle, "w", encoding="utf-8") as file:
        json.dump(asdict(settings), file, indent=2, ensure_ascii=False)
    Path(name).replace(path)
