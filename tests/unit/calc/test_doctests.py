"""Every module's examples run, and every public function has one."""

from __future__ import annotations

import doctest
import importlib
import inspect
import pkgutil
from typing import TYPE_CHECKING

import pytest

import benchpack.calc

if TYPE_CHECKING:
    from collections.abc import Callable
    from types import ModuleType

MODULES = [
    importlib.import_module(found.name)
    for found in pkgutil.iter_modules(benchpack.calc.__path__, "benchpack.calc.")
    if not found.name.rpartition(".")[2].startswith("_")
]


def public_functions(module: ModuleType) -> list[Callable[..., object]]:
    """Give the public functions of a module and its classes' public methods."""
    members = [
        member
        for name, member in vars(module).items()
        if not name.startswith("_")
        and getattr(member, "__module__", "") == module.__name__
    ]
    functions: list[Callable[..., object]] = [
        member for member in members if inspect.isfunction(member)
    ]
    for owner in filter(inspect.isclass, members):
        functions += [
            member
            for name, member in vars(owner).items()
            if inspect.isfunction(member) and not name.startswith("_")
        ]
    return functions


@pytest.mark.parametrize("module", MODULES, ids=lambda module: module.__name__)
def test_examples_give_what_they_say(module: ModuleType) -> None:
    result = doctest.testmod(module)
    assert result.attempted > 0
    assert result.failed == 0


@pytest.mark.parametrize(
    "function",
    [function for module in MODULES for function in public_functions(module)],
    ids=lambda function: function.__qualname__,
)
def test_every_public_function_has_an_example(
    function: Callable[..., object],
) -> None:
    text = function.__doc__ or ""
    assert doctest.DocTestParser().get_examples(text)
    for heading in ("Parameters", "Returns", "Examples"):
        assert f"{heading}\n" in text
