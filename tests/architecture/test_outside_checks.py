"""Every public calculation has a check from outside, and the table says which."""

from __future__ import annotations

import importlib
import inspect
import pkgutil
from pathlib import Path
from typing import get_args

import pytest

import benchpack.calc
from tests.outside.checks import CHECKS, Check, Mark, markdown_table

ROOT = Path(__file__).parents[2]


def public_calculations() -> set[str]:
    """Give the dotted names, below the package, of public functions and methods."""
    names: set[str] = set()
    for found in pkgutil.walk_packages(benchpack.calc.__path__, "benchpack.calc."):
        below = found.name.removeprefix("benchpack.calc.")
        if any(part.startswith("_") for part in below.split(".")):
            continue
        for name, member in vars(importlib.import_module(found.name)).items():
            own = getattr(member, "__module__", "") == found.name
            if name.startswith("_") or not own:
                continue
            if inspect.isfunction(member):
                names.add(f"{below}.{name}")
            elif inspect.isclass(member):
                names |= {
                    f"{below}.{name}.{method}"
                    for method, body in vars(member).items()
                    if inspect.isfunction(body) and not method.startswith("_")
                }
    return names


def test_every_public_calculation_is_in_the_register() -> None:
    registered = {check.function for check in CHECKS}
    assert public_calculations() - registered == set(), "without an outside check"
    assert registered - public_calculations() == set(), "registered but gone"


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.function)
def test_a_registered_check_exists_and_names_its_source(check: Check) -> None:
    file, _, test = check.check.partition("::")
    module = importlib.import_module(f"tests.outside.{file.removesuffix('.py')}")
    assert test.startswith("test_")
    body = getattr(module, test, None)
    assert inspect.isfunction(body)
    # The test has to call what it is said to check.
    called = check.function.rpartition(".")[2]
    assert called in inspect.getsource(body)
    assert check.source
    assert check.tolerance
    assert check.mark in get_args(Mark)


def test_every_outside_test_is_in_the_register() -> None:
    registered = {check.check for check in CHECKS}
    # This one checks the reading of the dataset, not a calculation.
    registered.add(
        "test_trend_nist.py::test_the_certified_values_are_the_published_ones"
    )
    found = {
        f"{path.name}::{name}"
        for path in (ROOT / "tests/outside").glob("test_*.py")
        for name in vars(importlib.import_module(f"tests.outside.{path.stem}"))
        if name.startswith("test_")
    }
    assert found == registered


def test_no_check_is_registered_twice() -> None:
    assert len({(check.function, check.check) for check in CHECKS}) == len(CHECKS)


def test_the_table_for_developers_is_the_register() -> None:
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    _, opened, rest = text.partition("<!-- outside checks -->")
    table, closed, _ = rest.partition("<!-- /outside checks -->")
    assert opened
    assert closed
    assert table.strip() == markdown_table()
