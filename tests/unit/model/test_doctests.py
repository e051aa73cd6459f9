"""The examples in the model's docstrings give what they say."""

from __future__ import annotations

import doctest
import importlib
import pkgutil

import pytest

import benchpack.model

MODULES = sorted(
    found.name
    for found in pkgutil.iter_modules(benchpack.model.__path__, "benchpack.model.")
)


@pytest.mark.parametrize("name", MODULES)
def test_examples_give_what_they_say(name: str) -> None:
    assert doctest.testmod(importlib.import_module(name)).failed == 0


def test_the_readers_of_joining_have_examples() -> None:
    for name in ("designation", "families", "fastener_sizes", "property_classes"):
        module = importlib.import_module(f"benchpack.model.{name}")
        assert doctest.testmod(module).attempted > 0, name
