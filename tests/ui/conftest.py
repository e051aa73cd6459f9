"""Fixtures of the interface tests: theme, a small library, no leaks."""

from __future__ import annotations

import gc
import weakref
from collections.abc import Callable, Generator, Iterator

import pytest
from PySide6.QtCore import QCoreApplication, QEvent
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from benchpack.model.boundary import parse_boundary
from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.material import Source
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.model.words import EnergyBasis, KnownBy, Subsystem
from benchpack.session.document import Document
from benchpack.session.settings import Settings, settings_file
from benchpack.session.state import State
from benchpack.ui.notify import Notifier
from benchpack.ui.palette import Scheme
from benchpack.ui.tasks import DirectRunner
from benchpack.ui.theme import apply_theme
from benchpack.ui.workspace import Workspace

Watch = Callable[[QWidget], None]


@pytest.fixture(scope="session", autouse=True)
def _dressed(qapp: QApplication) -> None:
    """Set the shipped typeface and the light scheme for every test."""
    apply_theme(qapp, Scheme.LIGHT)


@pytest.fixture(autouse=True)
def _fresh_settings() -> Iterator[None]:
    """Let no test see the settings or the geometry another one left."""
    yield
    for file in (settings_file(), settings_file().with_name("window.ini")):
        file.unlink(missing_ok=True)


@pytest.fixture(autouse=True)
def _swept(qapp: QApplication) -> Iterator[None]:
    """Take away what a test left behind, so that the next is not slowed by it."""
    yield
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


def small_library() -> Library:
    """Give five invented packs, the first with parts and joints."""
    packs = [
        Pack(
            "Avocet 81",
            81.0,
            498.1,
            energy_basis=EnergyBasis.GROSS,
            mass_known_by=KnownBy.WEIGHED,
            mass_tolerance_kg=0.5,
            cells_mass_kg=330.24,
            volume_l=309.0,
            chemistry="NMC 811",
            year=2024,
            boundary=parse_boundary("cells=in; coolant=out 4.6"),
            source="bench protocol 1",
        ),
        Pack(
            "Dunlin 74",
            74.4,
            447.2,
            energy_basis=EnergyBasis.GROSS,
            mass_known_by=KnownBy.WEIGHED,
            cells_mass_kg=308.88,
            chemistry="NMC 811",
            year=2025,
            source="bench protocol 1",
        ),
        Pack("Turnstone 68", 68.1, 506.0, chemistry="LFP", year=2025),
        Pack("Knot 42", 42.2, 338.6, chemistry="LFP", year=2021),
        Pack("Ruff 12", 12.0, 700.0, note="Far too heavy."),
    ]
    parts = (
        Part(
            "Avocet 81",
            "cell",
            subsystem=Subsystem.CELLS,
            count=192,
            mass_each_kg=1.72,
            known_by=KnownBy.WEIGHED_BATCH,
            carry_over=True,
            reason="approved with the vehicle",
        ),
        Part("Avocet 81", "tray floor", subsystem=Subsystem.TRAY, mass_each_kg=62.0),
        Part("Avocet 81", "side section", "tray floor", Subsystem.TRAY, count=2),
        Part("Avocet 81", "lid panel", subsystem=Subsystem.LID, mass_each_kg=101.5),
    )
    joints = (
        Joint(
            "Avocet 81",
            "lid screws",
            "flange screw",
            "EN 1665 M6x20",
            "8.8",
            count=84,
            mass_each_g=8.7,
        ),
        Joint(
            "Avocet 81",
            "lid inserts",
            "threaded insert",
            "blind rivet nut M6",
            count=84,
            mass_each_g=4.0,
            joins="lid panel",
        ),
    )
    return Library(
        packs=PackTable.from_packs(packs),
        parts={"Avocet 81": parts},
        joints={"Avocet 81": joints},
        sources=(Source("bench protocol 1", "own weighing", "2026-02-10"),),
        studies=(Study(subject="Avocet 81", reference="Dunlin 74"),),
        note="Invented data.",
    )


@pytest.fixture
def library() -> Library:
    """Give the small library."""
    return small_library()


@pytest.fixture
def make_workspace(qapp: QApplication) -> Callable[[Library], Workspace]:
    """Give what opens a library in memory."""

    def make(library: Library) -> Workspace:
        document = Document(State(library, library.first_study().name))
        return Workspace(
            document, runner=DirectRunner(), notifier=Notifier(), settings=Settings()
        )

    return make


@pytest.fixture
def workspace(
    make_workspace: Callable[[Library], Workspace], library: Library
) -> Workspace:
    """Give the small library, open in memory."""
    return make_workspace(library)


@pytest.fixture
def watch_leaks(request: pytest.FixtureRequest, qtbot: QtBot) -> Iterator[Watch]:
    """Give what watches a widget: once deleted, nothing may keep it alive."""
    watched: list[tuple[str, weakref.ref[QWidget]]] = []

    def watch(widget: QWidget) -> None:
        watched.append((type(widget).__name__, weakref.ref(widget)))

    yield watch
    report = request.node.stash.get(_REPORT, None)
    if report is None or not report.passed:
        return
    for _, held in watched:
        widget = held()
        if widget is not None:
            widget.close()
            widget.deleteLater()
        del widget
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    QCoreApplication.processEvents()
    gc.collect()
    kept = [name for name, held in watched if held() is not None]
    assert not kept, f"kept alive after the test: {', '.join(kept)}"


_REPORT = pytest.StashKey[pytest.TestReport]()


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(
    item: pytest.Item, call: pytest.CallInfo[None]
) -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """Remember how the test itself went, for the leak check."""
    report = yield
    if call.when == "call":
        item.stash[_REPORT] = report
    return report
