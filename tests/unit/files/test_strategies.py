"""Every record of the model has a strategy, and the strategy makes it."""

from __future__ import annotations

import dataclasses
import importlib
import inspect
import pkgutil
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import benchpack.model
from benchpack.model.fields import Field
from benchpack.model.pack_table import PackTable
from tests.strategies.records import STRATEGIES

_MODULES = [
    importlib.import_module(f"benchpack.model.{found.name}")
    for found in pkgutil.iter_modules(benchpack.model.__path__)
]
RECORDS = {
    kind
    for module in _MODULES
    for _, kind in inspect.getmembers(module, dataclasses.is_dataclass)
    if inspect.isclass(kind)
    and kind.__module__ == module.__name__
    and kind is not Field
}


def test_every_record_has_a_strategy() -> None:
    assert RECORDS | {PackTable} == set(STRATEGIES)


@pytest.mark.parametrize("kind", STRATEGIES, ids=lambda kind: kind.__name__)
@settings(max_examples=5, suppress_health_check=list(HealthCheck), deadline=None)
@given(data=st.data())
def test_a_strategy_makes_its_record(kind: type, data: Any) -> None:
    assert isinstance(data.draw(STRATEGIES[kind]), kind)
