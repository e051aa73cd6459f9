"""Speed of the Joints page with 5,000 joints in one pack, as ratios within one run."""

from __future__ import annotations

import math
import time
from collections.abc import Callable, Iterator

import numpy as np
import pytest
from PySide6.QtWidgets import QApplication

from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.study import Study
from benchpack.session.document import Document
from benchpack.session.settings import Settings
from benchpack.session.state import Changed, State
from benchpack.ui.notify import Notifier
from benchpack.ui.pages.joints.page import JointsPage
from benchpack.ui.palette import Scheme
from benchpack.ui.tables.ordering import Direction
from benchpack.ui.tasks import DirectRunner
from benchpack.ui.theme import apply_theme
from benchpack.ui.workspace import Workspace

pytestmark = pytest.mark.benchmark
PACK = "Heron 70"
FEW, TENTH, MANY = 50, 500, 5_000
KINDS = (
    ("flange screw", "EN 1665 M6x20"),
    ("socket screw", "ISO 4762 M8x40"),
    ("blind rivet", "ISO 15977 4.8x12"),
    ("clip", "edge clip"),
    ("spot weld", "spot 5 mm"),
)


def joints(count: int) -> tuple[Joint, ...]:
    """Give invented joints, two of three without a weighed mass."""
    return tuple(
        Joint(
            PACK,
            f"joint {row}",
            *KINDS[row % len(KINDS)],
            count=row % 90 + 1,
            mass_each_g=None if row % 3 else 4.0 + row % 7,
            joins=f"part {row % 61}",
            to=f"part {row % 53}",
            carry_over=row % 11 == 0,
        )
        for row in range(count)
    )


def seconds(work: Callable[[], object], *, times: int = 7) -> float:
    """Give the best of some runs."""
    best = math.inf
    for _ in range(times):
        start = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - start)
    return best


class Bench:
    """A page over so many joints."""

    def __init__(self, count: int) -> None:
        library = Library(
            packs=PackTable.from_packs([Pack(PACK, 70.0, 430.0)]),
            joints={PACK: joints(count)},
            studies=(Study(subject=PACK),),
        )
        self.workspace = Workspace(
            Document(State(library, "Study")),
            runner=DirectRunner(),
            notifier=Notifier(),
            settings=Settings(),
        )
        self.page = JointsPage(self.workspace)
        self.page.resize(1150, 640)
        self.page.show()
        QApplication.processEvents()
        self._edits = 0

    def refresh(self) -> float:
        """Give the seconds that the page takes after one cell was edited."""
        best = math.inf
        for _ in range(9):
            self._edits += 1
            self.page.hide()
            change = {"count": 100 + self._edits}
            self.page.joints.change("count", [(self._edits, change)])
            self.page._stale = Changed.NOTHING
            start = time.perf_counter()
            self.page.refresh(Changed.JOINTS)
            best = min(best, time.perf_counter() - start)
            self.page.show()
            QApplication.processEvents()
        return best

    def sort(self) -> float:
        table = self.page.table
        took = seconds(lambda: table.sort_by("mass_all_g", Direction.FALLING))
        table.sort_by("mass_all_g", None)
        return took

    def frame(self) -> float:
        """Give the 95th percentile of drawing a screenful that was not seen yet."""
        bar = self.page.table.verticalScrollBar()
        viewport = self.page.table.viewport()
        took = []
        for step in range(60):
            bar.setValue(step * 149 % max(1, bar.maximum()))
            start = time.perf_counter()
            viewport.repaint()
            took.append(time.perf_counter() - start)
        return float(np.percentile(took, 95))


@pytest.fixture(scope="module")
def benches(qapp: QApplication) -> Iterator[dict[int, Bench]]:
    apply_theme(qapp, Scheme.LIGHT)
    made = {count: Bench(count) for count in (FEW, TENTH, MANY)}
    yield made
    for bench in made.values():
        bench.page.close()
        bench.page.deleteLater()


def test_an_edit_costs_a_frame_or_three(benches: dict[int, Bench]) -> None:
    few, tenth, many = (benches[count].refresh() for count in (FEW, TENTH, MANY))
    print(
        f"\nrefresh after one edit: {1e3 * many:.1f} ms with {MANY} joints, "
        f"{1e3 * tenth:.1f} with {TENTH}, {1e3 * few:.1f} with {FEW}"
    )
    assert many < 12 * tenth


def test_sorting_grows_no_faster_than_the_rows(benches: dict[int, Bench]) -> None:
    tenth, many = benches[TENTH].sort(), benches[MANY].sort()
    print(f"\nsort by a computed column: {1e3 * many:.1f} ms")
    assert many < 14 * tenth


def test_scrolling_does_not_know_how_many_rows_there_are(
    benches: dict[int, Bench],
) -> None:
    tenth, many = benches[TENTH].frame(), benches[MANY].frame()
    print(f"\nframe: {1e3 * many:.1f} ms, {1e3 * tenth:.1f} with {TENTH} joints")
    assert many < 2.5 * tenth
