"""Speed of the packs table with 100,000 packs, as ratios within one run."""

from __future__ import annotations

import math
import time
from collections.abc import Callable, Iterator

import numpy as np
import pytest
from PySide6.QtWidgets import QApplication

from benchpack.model.library import Library
from benchpack.model.pack_table import PackTable
from benchpack.model.study import Study
from benchpack.session.document import Document
from benchpack.session.settings import Settings
from benchpack.session.state import State
from benchpack.ui.notify import Notifier
from benchpack.ui.pages.packs.page import PacksPage
from benchpack.ui.palette import Scheme
from benchpack.ui.tables.ordering import Direction
from benchpack.ui.tasks import DirectRunner
from benchpack.ui.theme import apply_theme
from benchpack.ui.workspace import Workspace

pytestmark = pytest.mark.benchmark
MANY, TENTH, FEW = 100_000, 10_000, 100


def library(count: int) -> Library:
    random = np.random.default_rng(7)
    names = np.array([f"Pack {n}" for n in random.permutation(count)], dtype=object)
    words = np.array(["NMC 811", "LFP", "NMC 622", ""], dtype=object)
    energy_kwh = random.uniform(30, 120, count)
    mass_kg = energy_kwh * random.uniform(5.4, 7.2, count)
    cells_kg = np.where(random.random(count) < 0.3, np.nan, 0.65 * mass_kg)
    packs = PackTable(
        {
            "name": names,
            "energy_kwh": energy_kwh,
            "mass_kg": mass_kg,
            "cells_mass_kg": cells_kg,
            "chemistry": words[random.integers(0, 4, count)],
        }
    )
    study = Study(subject="Pack 5", reference="Pack 7")
    return Library(packs=packs, studies=(study,))


def seconds(work: Callable[[], object], *, times: int = 5) -> float:
    """Give the best of some runs, the queue of the window emptied each time."""
    best = math.inf
    for _ in range(times):
        start = time.perf_counter()
        work()
        QApplication.processEvents()
        best = min(best, time.perf_counter() - start)
    return best


class Bench:
    """A page over so many packs, and how long it took to open."""

    def __init__(self, count: int) -> None:
        self.library = library(count)
        workspace = Workspace(
            Document(State(self.library, "Study")),
            runner=DirectRunner(),
            notifier=Notifier(),
            settings=Settings(),
        )
        start = time.perf_counter()
        self.page = PacksPage(workspace)
        self.page.resize(1150, 640)
        self.page.show()
        QApplication.processEvents()
        self.opening = time.perf_counter() - start

    def sort(self, key: str) -> float:
        table = self.page.table
        table.sort_by(key, Direction.RISING)
        took = seconds(lambda: table.sort_by(key, Direction.FALLING))
        table.sort_by(key, None)
        return took

    def filter(self, text: str) -> float:
        took = seconds(lambda: self.page.filter.filter_changed.emit(text))
        self.page.filter.filter_changed.emit("")
        return took

    def frame(self) -> float:
        """Give the 95th percentile of drawing a screenful that was not seen yet."""
        bar = self.page.table.verticalScrollBar()
        viewport = self.page.table.viewport()
        took = []
        for step in range(60):
            bar.setValue(step * 1499 % max(1, bar.maximum()))
            start = time.perf_counter()
            viewport.repaint()
            took.append(time.perf_counter() - start)
        return float(np.percentile(took, 95))


@pytest.fixture(scope="module")
def benches(qapp: QApplication) -> Iterator[dict[int, Bench]]:
    apply_theme(qapp, Scheme.LIGHT)
    Bench(FEW).page.deleteLater()
    made = {count: Bench(count) for count in (FEW, TENTH, MANY)}
    yield made
    for bench in made.values():
        bench.page.close()
        bench.page.deleteLater()


def exponent(tenth: float, many: float) -> float:
    return math.log10(many / tenth)


def test_sort_costs_little_more_than_numpy(benches: dict[int, Bench]) -> None:
    many = benches[MANY]
    column = many.library.packs.columns["mass_kg"]
    bare = seconds(lambda: np.argsort(-column, kind="stable"))
    drawn = benches[FEW].sort("mass_kg")
    print()
    for key in ("mass_kg", "name", "chemistry", "cells_share"):
        tenth, full = benches[TENTH].sort(key), many.sort(key)
        print(
            f"sort {key}: {1e3 * full:.1f} ms ({1e3 * drawn:.1f} of it drawing), "
            f"{full / bare:.1f} x bare argsort, "
            f"exponent {exponent(tenth, full):.2f}"
        )
        assert full < 12 * bare + 4 * drawn


def test_filter_costs_little_more_than_numpy(benches: dict[int, Bench]) -> None:
    many = benches[MANY]
    column = many.library.packs.columns["energy_kwh"]
    names = np.array(many.library.packs.names.tolist())
    bare = seconds(lambda: (column > 60, np.strings.find(names, "55") >= 0))
    drawn = benches[FEW].sort("mass_kg")
    print()
    for text in ("55", "energy > 60", "energy > 60 and chemistry = LFP"):
        tenth, full = benches[TENTH].filter(text), many.filter(text)
        print(
            f"filter {text}: {1e3 * full:.1f} ms ({1e3 * drawn:.1f} of it drawing), "
            f"{full / bare:.1f} x bare numpy, "
            f"exponent {exponent(tenth, full):.2f}"
        )
        assert full < 8 * bare + 4 * drawn


def test_frame_does_not_grow_with_the_library(benches: dict[int, Bench]) -> None:
    few, many = benches[FEW].frame(), benches[MANY].frame()
    print(f"\nframe: {1e3 * many:.1f} ms at {MANY}, {many / few:.2f} x that at {FEW}")
    assert many < 3 * few


def test_opening_does_not_stall_with_many_packs(benches: dict[int, Bench]) -> None:
    few, many = benches[FEW].opening, benches[MANY].opening
    print(
        f"\nopening: {1e3 * many:.0f} ms at {MANY}, "
        f"{1e3 * (many - few):.0f} ms more than at {FEW}"
    )
    assert many < 4 * few


def test_selecting_everything_is_quick(benches: dict[int, Bench]) -> None:
    few, many = benches[FEW].page.table, benches[MANY].page.table
    ratio = seconds(many.selectAll) / seconds(few.selectAll)
    print(f"\nselect all: {ratio:.2f} x that of {FEW} packs")
    many.clearSelection()
    assert ratio < 10
