"""Seal lines are found once while nothing they need changed."""

from __future__ import annotations

from dataclasses import replace

import pytest

from benchpack.model.library import Library
from benchpack.results.inventory import Inventory, inventory
from benchpack.results.seal import least_clamp_n
from benchpack.ui.pages.joints.seal_shelf import SealShelf
from tests.ui.joints.conftest import SUBJECT


@pytest.fixture
def stock(library: Library) -> Inventory:
    """Give the joints of the subject."""
    return inventory(library, library.first_study(), SUBJECT)


def test_the_lines_are_kept(library: Library, stock: Inventory) -> None:
    shelf = SealShelf()
    lines = shelf.of(library, stock)
    assert [line.name for line in lines] == ["lid gasket"]
    assert shelf.of(replace(library, note="Read again."), stock) is lines


def test_other_joints_parts_or_materials_are_looked_at_anew(
    library: Library, stock: Inventory
) -> None:
    shelf = SealShelf()
    lines = shelf.of(library, stock)
    again = inventory(library, library.first_study(), SUBJECT)
    assert shelf.of(library, again) is not lines
    lid = replace(library.parts_of(SUBJECT)[3], thickness_mm=1.5)
    parts = {SUBJECT: (*library.parts_of(SUBJECT)[:3], lid)}
    assert shelf.of(replace(library, parts=parts), again) is not lines


def test_the_clamp_load_follows_the_study(library: Library, stock: Inventory) -> None:
    shelf, study = SealShelf(), library.first_study()
    (line,) = shelf.of(library, stock)
    first = shelf.least_clamp_n(line, study)
    assert first == shelf.least_clamp_n(line, study) == least_clamp_n(line, study)
    dry = replace(study, thread_friction=0.2)
    assert shelf.least_clamp_n(line, dry) == least_clamp_n(line, dry) < first
