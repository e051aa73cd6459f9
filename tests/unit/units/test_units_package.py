"""The package as a whole: what importing it loads, and its examples."""

from __future__ import annotations

import doctest
import importlib
import pkgutil
import subprocess
import sys

import pytest

import benchpack.units

MODULES = [
    found.name
    for found in pkgutil.iter_modules(benchpack.units.__path__, "benchpack.units.")
]


def test_pint_waits_until_a_unit_is_converted() -> None:
    code = f"""
import sys
for name in {MODULES!r}:
    __import__(name)
from benchpack.units.parsing import parse_quantity
assert parse_quantity("431 kg", "mass", unit="lb") == 431.0
assert "pint" not in sys.modules
parse_quantity("950", "mass", unit="lb")
assert "pint" in sys.modules
"""
    ran = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=False
    )
    assert (ran.returncode, ran.stderr) == (0, "")


@pytest.mark.parametrize("name", MODULES)
def test_examples_give_what_they_say(name: str) -> None:
    assert doctest.testmod(importlib.import_module(name)).failed == 0


def test_there_are_examples() -> None:
    runs = [doctest.testmod(importlib.import_module(name)) for name in MODULES]
    assert sum(run.attempted for run in runs) > 20
