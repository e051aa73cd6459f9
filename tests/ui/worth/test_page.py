"""The Worth page: its figures, its tabs, what is shown while work is under way."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.model.worth_words import Sizing
from benchpack.report.worth_matters import WORKING
from benchpack.report.worth_target import COMPUTING
from benchpack.results.explain import explain
from benchpack.results.explain_worth import WORTH_KEYS
from benchpack.session.document import Document
from benchpack.session.settings import Settings
from benchpack.session.state import State
from benchpack.ui.charts.chart import Chart
from benchpack.ui.dialogs.explanation import ExplanationPanel
from benchpack.ui.notify import Notifier
from benchpack.ui.pages.worth.asked_figure import AskedFigure
from benchpack.ui.pages.worth.page import WorthPage
from benchpack.ui.tasks import Token
from benchpack.ui.workspace import Workspace
from benchpack.units.formatting import UNKNOWN
from tests.ui.changes.test_outcome import HeldRunner, _nothing
from tests.ui.conftest import Watch, small_library
from tests.ui.showing import focused, plain, settle
from tests.ui.worth.conftest import MakePage, MakeWorkspace, open_tab, valued_library

KEY, LEFT = Qt.Key, Qt.MouseButton.LeftButton
TITLES = (
    "Fan",
    "Programme",
    "Price",
    "Vehicle",
    "Target",
    "What matters",
    "Map",
    "Sets",
    "Peers",
)


def asked_figures(widget: QWidget) -> list[AskedFigure]:
    return [one for one in widget.findChildren(AskedFigure) if one.isVisible()]


@pytest.fixture
def runner() -> HeldRunner:
    """Give a runner that waits."""
    return HeldRunner()


@pytest.fixture
def waiting(make_page: MakePage, runner: HeldRunner, qapp: object) -> WorthPage:
    """Give the page whose work in the background waits."""
    library = valued_library()
    document = Document(State(library, library.first_study().name))
    return make_page(
        Workspace(document, runner=runner, notifier=Notifier(), settings=Settings())
    )


def test_the_tabs_stand_in_this_order(page: WorthPage) -> None:
    titles = [page.tabs.tabText(place) for place in range(page.tabs.count())]
    assert tuple(titles) == TITLES


@pytest.mark.parametrize("title", TITLES)
def test_each_tab_shows_something_with_a_finding(page: WorthPage, title: str) -> None:
    open_tab(page, title)
    view = page.views[TITLES.index(title)]
    assert view.isVisible()
    for chart in view.charts:
        if chart.isVisible():
            assert not chart.spec.is_empty
            assert chart.spec.title
    if not view.charts:
        assert "promised" in page.target.text()


@pytest.mark.parametrize("title", TITLES)
def test_each_chart_has_its_table(page: WorthPage, title: str) -> None:
    open_tab(page, title)
    view = page.views[TITLES.index(title)]
    for chart in view.charts:
        if not chart.isVisible():
            continue
        buttons = [b for b in chart.findChildren(QWidget) if b.isVisible()]
        (table,) = [b for b in buttons if b.accessibleName() == "Show as table"]
        QTest.mouseClick(table, LEFT)
        assert table.accessibleName() == "Show as chart"


def test_the_figures_at_the_top_are_those_of_the_case(page: WorthPage) -> None:
    case = page.desk.case
    saved = case.saving.saved_kg
    assert saved is not None
    row = page.figures
    assert plain(row.worth.main.text()) == f"{60 * saved.likely:.0f} EUR"
    assert plain(row.target.main.text()) == "2.0 kg, 120 EUR"
    chance = page.desk.chance
    assert chance is not None
    assert plain(row.target.small[1].text()) == (
        f"chance {100 * chance.chance_of_target:.0f} %"
    )
    assert row.programme.small[0].text().startswith("paid back")


def test_every_figure_says_where_it_comes_from(
    make_page: MakePage, make_workspace: MakeWorkspace, qtbot: QtBot
) -> None:
    page = make_page(make_workspace(valued_library(part_price=55.0)))
    seen: set[str] = set()
    drawn: set[str] = set()
    for sizing in (Sizing.RANGE_KEPT, Sizing.BATTERY_KEPT):
        page.workspace.edit("sizing", partial(sized, sizing=sizing))
        for title in TITLES:
            open_tab(page, title)
            drawn |= {chart.spec.explain_key for chart in visible_charts(page)}
            ask_each(page, qtbot, seen)
    assert set(WORTH_KEYS) - seen == {"expected programme value"}
    assert set(WORTH_KEYS) <= seen | drawn


def sized(state: State, *, sizing: Sizing) -> State:
    return state.with_study(sizing=sizing)


def visible_charts(page: WorthPage) -> list[Chart]:
    charts = [chart for view in page.views for chart in view.charts]
    return [chart for chart in charts if chart.isVisible()]


def ask_each(page: WorthPage, qtbot: QtBot, seen: set[str]) -> None:
    """Click on each figure that is known and was not asked for before."""
    for button in asked_figures(page):
        key = button.shown.key
        if key in seen or key not in WORTH_KEYS or UNKNOWN in button.text():
            continue
        with qtbot.waitSignal(page.workspace.explain_requested) as told:
            QTest.mouseClick(button, LEFT)
        assert told.args == [key, ""]
        assert explain(page.workspace.results, key).formula
        seen.add(key)


def test_f1_on_a_figure_asks_like_a_click(page: WorthPage, qtbot: QtBot) -> None:
    button = page.figures.programme.main
    button.setFocus()
    with qtbot.waitSignal(page.workspace.explain_requested) as told:
        QTest.keyClick(button, KEY.Key_F1)
    assert told.args == ["programme value", ""]


def test_figures_of_the_trials_are_explained_too(page: WorthPage) -> None:
    open_tab(page, "Target")
    values = []
    for key in ("chance of the target", "chance saved", "chance stretch"):
        button = page.target.figures.figure(key)
        button.setFocus()
        QTest.mouseClick(button, LEFT)
        panel = page.findChild(ExplanationPanel)
        assert panel is not None
        values.append(panel._value.text())
        panel.close()
    assert len(set(values)) == 3


def test_a_figure_that_is_not_known_says_why(page: WorthPage, qtbot: QtBot) -> None:
    open_tab(page, "Price")
    button = page.price.figures.figure("customer gain")  # type: ignore[union-attr]  # this tab has figures
    with qtbot.waitSignal(page.workspace.notifier.said) as told:
        QTest.mouseClick(button, LEFT)
    assert "Enter the price of the new parts" in told.args[0]


def test_only_the_tab_that_is_seen_is_refreshed(page: WorthPage) -> None:
    open_tab(page, "Programme")
    before = page.fan.chart.spec
    page.workspace.edit("worth", lambda s: s.with_study(worth_likely_per_kg=65.0))
    assert page.fan.chart.spec is before
    programme = page.programme.chart.spec
    open_tab(page, "Fan")
    assert page.fan.chart.spec is not before
    open_tab(page, "Programme")
    assert page.programme.chart.spec is programme


def test_a_hidden_page_waits(page: WorthPage) -> None:
    before = page.desk.case
    page.hide()
    page.workspace.edit("worth", lambda s: s.with_study(worth_likely_per_kg=65.0))
    assert page.desk.case is before
    page.show()
    settle()
    assert page.desk.case.study.worth_likely_per_kg == 65.0


def test_nothing_out_of_date_is_shown(waiting: WorthPage, runner: HeldRunner) -> None:
    chance = waiting.figures.target.small[1]
    assert chance.text() == f"chance {COMPUTING}"
    runner.let_go("worth chance")
    first = chance.text()
    assert first.startswith("chance ")
    waiting.workspace.edit("target", lambda s: s.with_study(target_kg=3.0))
    assert chance.text() == f"chance {COMPUTING}"
    runner.let_go("worth chance")
    assert chance.text() not in (f"chance {COMPUTING}", first)


def test_the_older_of_two_results_is_dropped(
    waiting: WorthPage, runner: HeldRunner
) -> None:
    work, done = runner.held["worth chance"]
    late = work(Token(_nothing))
    waiting.workspace.edit("target", lambda s: s.with_study(target_kg=3.0))
    done(late)
    assert waiting.figures.target.small[1].text() == f"chance {COMPUTING}"


def test_a_worth_that_passes_keeps_the_chance_and_drops_the_shares(
    waiting: WorthPage, runner: HeldRunner
) -> None:
    runner.let_go("worth chance")
    open_tab(waiting, "What matters")
    matters = waiting.matters
    matters.choice.setFocus()
    QTest.keyClick(matters.choice, KEY.Key_Down)
    assert matters.shares.spec.empty_sentence == WORKING
    runner.let_go("worth shares")
    first = matters.shares.spec
    assert "of the variance" in first.title

    def dearer(state: State) -> State:
        return state.with_study(worth_likely_per_kg=75.0)

    waiting.workspace.preview("worth", dearer)
    assert matters.shares.spec.empty_sentence == WORKING
    assert waiting.figures.target.small[1].text().startswith("chance ")
    assert "worth shares" not in runner.held
    waiting.workspace.settle("worth")
    runner.let_go("worth shares")
    assert matters.shares.spec.title
    assert "worth chance" not in runner.held


def test_f6_goes_round_the_parts_of_the_page(page: WorthPage) -> None:
    def part() -> int:
        parts = (page.figures, page.assumptions, page.tabs)
        return next(i for i, one in enumerate(parts) if one.isAncestorOf(focused()))

    page.figures.worth.main.setFocus()
    visited = []
    for _ in range(3):
        QTest.keyClick(focused(), KEY.Key_F6)
        visited.append(part())
    assert visited == [1, 2, 0]


def test_alt_and_arrows_go_from_tab_to_tab(page: WorthPage) -> None:
    page.figures.worth.main.setFocus()
    alt = Qt.KeyboardModifier.AltModifier
    QTest.keyClick(focused(), KEY.Key_Left, alt)
    assert page.tabs.currentWidget() is page.peers
    QTest.keyClick(focused(), KEY.Key_Right, alt)
    assert page.tabs.currentWidget() is page.fan


def test_the_target_is_entered_at_the_left(page: WorthPage) -> None:
    open_tab(page, "Target")
    QTest.mouseClick(page.target.button, LEFT)
    editor = focused()
    assert page.assumptions.isAncestorOf(editor)
    QTest.keyClick(editor, KEY.Key_A, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClicks(editor, "3")
    QTest.keyClick(editor, KEY.Key_Return)
    assert page.workspace.state.study.target_kg == 3.0
    assert "3.0 kg a pack are promised" in plain(page.target.text())


def test_without_volume_the_chart_leads_to_the_field(
    make_page: MakePage, make_workspace: MakeWorkspace
) -> None:
    page = make_page(make_workspace(valued_library(yearly_volume=None)))
    open_tab(page, "Programme")
    chart = page.programme.chart
    assert chart.spec.empty_sentence.startswith("No yearly volume is known")
    QTest.mouseClick(chart.parts.empty_button, LEFT)
    editor = focused()
    assert page.assumptions.isAncestorOf(editor)
    QTest.keyClicks(editor, "30000")
    QTest.keyClick(editor, KEY.Key_Return)
    assert page.workspace.state.study.yearly_volume == 30_000
    assert not chart.spec.is_empty


def test_without_a_proposal_the_gap_is_valued(
    make_page: MakePage, make_workspace: MakeWorkspace
) -> None:
    library = replace(valued_library(), changes={})
    page = make_page(make_workspace(library))
    for title in TITLES:
        open_tab(page, title)
    assert page.fan.chart.spec.title.startswith("Saving")
    assert page.figures.target.small[1].text() == "chance –"
    assert "There is no proposal" in page.target.text()
    assert "our cost" not in page.price.chart.spec.title


def test_without_a_gap_each_tab_says_a_sentence(
    make_page: MakePage, make_workspace: MakeWorkspace
) -> None:
    turned = Study(subject="Dunlin 74", reference="Avocet 81")
    page = make_page(make_workspace(replace(small_library(), studies=(turned,))))
    for title in TITLES:
        open_tab(page, title)
        view = page.views[TITLES.index(title)]
        for chart in view.charts:
            if chart.isVisible() and chart.spec.is_empty:
                assert chart.spec.empty_sentence.endswith(".")
    assert page.programme.chart.spec.is_empty
    assert page.figures.worth.main.text() == "–"


def test_an_empty_library_says_what_to_do(
    make_page: MakePage, make_workspace: MakeWorkspace
) -> None:
    page = make_page(make_workspace(Library()))
    for title in TITLES:
        open_tab(page, title)
    assert page.fan.chart.spec.empty_sentence
    assert page.peers.chart.spec.empty_sentence


def test_pounds_and_commas_are_kept_everywhere(
    make_page: MakePage, make_workspace: MakeWorkspace
) -> None:
    library = valued_library(mass_unit="lb", decimal_mark=",")
    page = make_page(make_workspace(library))
    assert "lb" in page.figures.target.main.text()
    assert "EUR/lb" in page.figures.derived.main.text()
    assert "," in page.figures.derived.main.text()
    for title in TITLES:
        open_tab(page, title)
    assert "[lb]" in page.fan.chart.spec.x_label
    assert "[EUR/lb]" in page.vehicle.chart.spec.axis_label
    assert "[EUR/lb]" in page.map.chart.spec.x_label
    assert "." not in page.vehicle.figure("driver saving").text()


def test_another_library_starts_from_nothing(
    page: WorthPage, make_workspace: MakeWorkspace
) -> None:
    open_tab(page, "Sets")
    other = make_workspace(replace(valued_library(target_kg=1.0), assumption_sets={}))
    page.workspace.open_document(other.document)
    settle()
    assert page.desk.case.study.target_kg == 1.0
    assert page.sets.chart.item_names() == ("now",)


def test_the_page_is_let_go(
    make_page: MakePage, make_workspace: MakeWorkspace, watch_leaks: Watch
) -> None:
    page = make_page(make_workspace(valued_library()))
    for title in TITLES:
        open_tab(page, title)
    watch_leaks(page)
