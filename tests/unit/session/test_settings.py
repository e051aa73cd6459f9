"""Settings: kept across starts, and never in the way of one."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import Field, fields
from pathlib import Path
from typing import Any

import pytest

from benchpack.session.settings import (
    RECENT_LIMIT,
    Settings,
    load_settings,
    save_settings,
    settings_file,
)


@pytest.fixture(autouse=True)
def _no_settings() -> Iterator[None]:
    yield
    settings_file().unlink(missing_ok=True)


def test_settings_come_back_as_they_were_saved() -> None:
    settings = Settings(
        look="dark",
        hidden_columns=("note",),
        recent_files=("a",),
        brief_audience="internal",
        brief_paper="Letter",
        brief_left_out=("ledger", "checks"),
    )
    save_settings(settings)
    assert load_settings() == settings


def test_without_a_file_the_defaults_hold() -> None:
    assert load_settings() == Settings()


@pytest.mark.parametrize("text", ["", "[]", "{", "null"])
def test_spoilt_file_gives_the_defaults(text: str) -> None:
    settings_file().write_text(text, encoding="utf-8")
    assert load_settings() == Settings()


def test_spoilt_value_falls_back_alone() -> None:
    stored = {"look": "pink", "hidden_columns": ["note"], "recent_files": 3, "new": 1}
    settings_file().write_text(json.dumps(stored), encoding="utf-8")
    assert load_settings() == Settings(hidden_columns=("note",))


@pytest.mark.parametrize("setting", fields(Settings), ids=lambda one: one.name)
def test_every_setting_says_what_it_is(setting: Field[Any]) -> None:
    assert setting.metadata["label"]
    assert setting.metadata["help"].endswith(".")
    choices = setting.metadata["choices"]
    assert not choices or getattr(Settings(), setting.name) in choices


@pytest.mark.parametrize(
    "stored",
    [
        {"brief_audience": "everyone"},
        {"brief_audience": ["internal"]},
        {"brief_paper": "A3"},
        {"brief_paper": None},
        {"brief_left_out": "ledger"},
        {"brief_left_out": [1]},
    ],
    ids=str,
)
def test_a_choice_that_is_not_offered_falls_back(stored: dict[str, object]) -> None:
    settings_file().write_text(json.dumps({**stored, "look": "dark"}), encoding="utf-8")
    assert load_settings() == Settings(look="dark")


def test_recent_files_are_bounded_and_newest_first() -> None:
    settings = Settings()
    for number in range(RECENT_LIMIT + 3):
        settings = settings.with_recent(Path(f"{number}.benchpack"))
    settings = settings.with_recent(Path("5.benchpack"))
    assert len(settings.recent_files) == RECENT_LIMIT
    assert settings.recent_files[0] == "5.benchpack"
    assert settings.recent_files.count("5.benchpack") == 1
