"""The right side: chance, waterfall, what matters, suggestion, never out of date."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from benchpack.model.library import Library
from benchpack.session.document import Document
from benchpack.session.settings import Settings
from benchpack.session.state import State
from benchpack.ui.dialogs.explanation import ExplanationPanel
from benchpack.ui.notify import Notifier
from benchpack.ui.pages.changes.chance_figures import SAVED, TARGET, VALUE
from benchpack.ui.pages.changes.checks_tab import COMPUTING
from benchpack.ui.pages.changes.page import ChangesPage
from benchpack.ui.tasks import DirectRunner, Token, Work
from benchpack.ui.workspace import Workspace
from tests.ui.changes.conftest import MakePage, changed_library
from tests.ui.showing import plain

KEY, LEFT = Qt.Key, Qt.MouseButton.LeftButton


class HeldRunner(DirectRunner):
    """Keeps work until it is let go; the newest of a key wins."""

    def __init__(self) -> None:
        self.held: dict[str, tuple[Work, Callable[[Any], None]]] = {}

    def start(self, key: str, work: Work, **calls: Any) -> None:
        """Keep work."""
        self.held[key] = (work, calls["done"])

    def cancel(self, key: str) -> None:
        """Forget work."""
        self.held.pop(key, None)

    def let_go(self, key: str) -> None:
        """Do the work that is kept."""
        work, done = self.held.pop(key)
        done(work(Token(_nothing)))


def _nothing(done: int, total: int, words: str) -> None:
    """Take no notice."""


def figures(page: ChangesPage) -> dict[str, str]:
    buttons = page.view.outcome.chance.figures
    return {key: plain(button.text()) for key, button in buttons.items()}


@pytest.fixture
def runner() -> HeldRunner:
    """Give a runner that waits."""
    return HeldRunner()


@pytest.fixture
def waiting(make_page: MakePage, runner: HeldRunner, qapp: object) -> ChangesPage:
    """Give the page whose work in the background waits."""
    library = changed_library()
    document = Document(State(library, library.first_study().name))
    return make_page(
        Workspace(document, runner=runner, notifier=Notifier(), settings=Settings())
    )


def test_chance_and_range_are_those_of_the_trials(page: ChangesPage) -> None:
    chance = page.desk.chance
    assert chance is not None
    shown = figures(page)
    assert shown[TARGET] == f"{round(100 * chance.chance_of_target)} %"
    assert shown[SAVED].startswith(f"{chance.saved_kg.p50:.1f} kg (")
    low, high = np.percentile(chance.saved_kg.values, [10, 90])
    assert chance.saved_kg.p10 == pytest.approx(low, abs=0.01)
    assert chance.saved_kg.p90 == pytest.approx(high, abs=0.01)


def test_nothing_out_of_date_is_shown(waiting: ChangesPage, runner: HeldRunner) -> None:
    key = "proposal chance"
    assert set(figures(waiting).values()) == {COMPUTING}
    runner.let_go(key)
    first = figures(waiting)
    assert COMPUTING not in first.values()
    waiting.edits.switch("lid in polymer")
    assert set(figures(waiting).values()) == {COMPUTING}
    assert not waiting.view.outcome.chance.figures[TARGET].isEnabled()
    runner.let_go(key)
    assert figures(waiting) != first


def test_the_older_of_two_results_is_dropped(
    waiting: ChangesPage, runner: HeldRunner
) -> None:
    work, done = runner.held["proposal chance"]
    late = work(Token(_nothing))
    waiting.edits.switch("lid in polymer")
    done(late)
    assert set(figures(waiting).values()) == {COMPUTING}
    runner.let_go("proposal chance")
    assert COMPUTING not in figures(waiting).values()


def test_a_passing_worth_makes_its_chance_out_of_date(page: ChangesPage) -> None:
    before = figures(page)
    page.workspace.preview(
        "worth", lambda state: state.with_study(worth_likely_per_kg=4.0)
    )
    assert figures(page)[VALUE] == COMPUTING
    assert figures(page)[SAVED] == before[SAVED]
    page.workspace.settle("worth")
    assert figures(page)[VALUE] not in (COMPUTING, before[VALUE])


def test_the_chance_is_never_sure(
    make_page: MakePage, make_workspace: Callable[[Library], Workspace]
) -> None:
    library = changed_library()
    study = replace(library.studies[0], target_kg=500.0)
    page = make_page(make_workspace(replace(library, studies=(study,))))
    assert figures(page)[TARGET] == "under 1 %"


def test_a_click_and_f1_say_where_the_chance_comes_from(page: ChangesPage) -> None:
    button = page.view.outcome.chance.figures[SAVED]
    button.setFocus()
    QTest.keyClick(button, KEY.Key_F1)
    panel = page.window().findChild(ExplanationPanel)
    assert panel is not None
    assert panel.isVisible()
    texts = [label.text() for label in panel.findChildren(QLabel)]
    assert any("JCGM 101" in text for text in texts)
    page.edits.switch("duct goes")
    assert not panel.isVisible()
    QTest.mouseClick(page.view.outcome.chance.figures[TARGET], LEFT)
    assert panel.isVisible()
    assert "target" in panel._label.text()


def test_the_waterfall_runs_from_today_to_the_proposal(page: ChangesPage) -> None:
    spec = page.view.outcome.waterfall.spec
    results = page.desk.results
    assert results is not None
    assert spec.names[0] == "today"
    assert spec.names[-1] == "proposed"
    steps = float(spec.values[1:-1].sum())
    assert steps == pytest.approx(float(spec.values[-1]), rel=1e-9)
    assert float(spec.values[-1]) == pytest.approx(-results.totals.saved_kg.likely)
    assert spec.target == pytest.approx(-2.0)
    assert "add-backs" in spec.names


def test_a_step_that_is_picked_is_the_current_change(page: ChangesPage) -> None:
    page.view.outcome.waterfall.picked.emit("lid in polymer")
    assert page.view.table.current == "lid in polymer"
    assert page.view.outcome.waterfall.selected == "lid in polymer"


def test_what_matters_is_worked_out_when_it_is_seen(
    waiting: ChangesPage, runner: HeldRunner
) -> None:
    outcome = waiting.view.outcome
    assert "proposal what matters" not in runner.held
    outcome.tabs.setCurrentIndex(1)
    assert outcome.swings.spec.empty_sentence == COMPUTING
    runner.let_go("proposal what matters")
    spec = outcome.swings.spec
    assert not spec.is_empty
    widths = np.abs(spec.at_high - spec.at_low)
    assert np.all(widths[1:] <= widths[:-1] + 1e-9)
    outcome.measure.setCurrentIndex(1)
    assert "EUR" in outcome.swings.spec.axis_label


def test_the_suggestion_is_taken_over_with_one_press(page: ChangesPage) -> None:
    outcome = page.view.outcome
    outcome.tabs.setCurrentWidget(outcome.suggestion)
    suggestion = page.desk.suggestion
    assert suggestion is not None
    # At three EUR per kilogram the lid does not pay for its add-backs and tools.
    assert "lid in polymer" not in suggestion.chosen
    assert "lid in polymer (switched off)" in outcome.suggestion.names.text()
    QTest.mouseClick(outcome.suggestion.button, LEFT)
    on = tuple(one.name for one in page.workspace.state.changes if one.is_on)
    assert on == suggestion.chosen
    assert not outcome.suggestion.button.isEnabled()
    page.workspace.undo()
    assert page.workspace.state.changes[1].is_on
