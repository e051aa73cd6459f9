"""The headline: real clicks and keys change the study and the sentence."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from benchpack.model.study import Study
from benchpack.model.words import Basis
from benchpack.session.document import Change, Document
from benchpack.session.settings import Settings
from benchpack.session.state import State
from benchpack.ui.finding import RecordKind, found_record
from benchpack.ui.notify import Notifier
from benchpack.ui.tasks import DirectRunner
from benchpack.ui.widgets.headline_bar import HeadlineBar
from benchpack.ui.workspace import Workspace
from tests.ui.changes.conftest import changed_library
from tests.unit.results.packs import library, pack


def headline_on(qtbot: QtBot, **study: object) -> HeadlineBar:
    records = library(
        pack("Heron 82", 82, 489), pack("Egret 75", 75, 439), pack("Crane 60", 60, 340)
    )
    values = {"subject": "Heron 82", "reference": "Egret 75", **study}
    question = Study("Question", **values)  # type: ignore[arg-type]  # checked by Study
    document = Document(State(records.with_study(question), "Question"))
    workspace = Workspace(
        document, runner=DirectRunner(), notifier=Notifier(), settings=Settings()
    )
    bar = HeadlineBar(workspace)
    qtbot.addWidget(bar)
    bar.resize(1100, 120)
    bar.show()
    return bar


def test_the_sentence_is_there_at_once(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    assert bar.text().startswith("Heron 82 is 50.0")
    assert "worth 27" in bar.text()
    count = len(bar.workspace.results.cautions)
    assert count > 1
    assert bar.warnings.text() == f"{count} warnings"


def test_typing_a_pack_picks_it(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    edit = bar.reference.edit
    edit.setFocus()
    edit.selectAll()
    QTest.keyClicks(edit, "crane 60")
    QTest.keyClick(edit, Qt.Key.Key_Return)
    assert bar.workspace.state.study.reference == "Crane 60"
    assert "than Crane 60" in bar.text()
    assert bar.workspace.document.undo_label == "reference Crane 60"


def test_a_piece_of_one_name_picks_it(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    edit = bar.reference.edit
    edit.selectAll()
    QTest.keyClicks(edit, "cra")
    QTest.keyClick(edit, Qt.Key.Key_Return)
    assert bar.workspace.state.study.reference == "Crane 60"


def test_a_piece_of_several_names_picks_none(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    edit = bar.reference.edit
    edit.selectAll()
    QTest.keyClicks(edit, "r")
    QTest.keyClick(edit, Qt.Key.Key_Return)
    assert bar.workspace.state.study.reference == "Egret 75"
    assert bar.reference.currentText() == "Egret 75"


def test_the_wheel_changes_no_pack_in_passing(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    bar.worth.setFocus()
    place = QPointF(20, 10)
    turned = QWheelEvent(
        place,
        bar.reference.mapToGlobal(place),
        QPoint(0, -120),
        QPoint(0, -120),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,  # noqa: FBT003 - Qt takes it by place only
    )
    QApplication.sendEvent(bar.reference, turned)
    assert bar.workspace.state.study.reference == "Egret 75"


def test_nonsense_in_the_field_changes_nothing(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    edit = bar.subject.edit
    edit.selectAll()
    QTest.keyClicks(edit, "no such pack")
    QTest.keyClick(edit, Qt.Key.Key_Return)
    assert bar.workspace.state.study.subject == "Heron 82"
    assert bar.subject.currentText() == "Heron 82"
    assert bar.workspace.document.undo_label == ""


def test_picking_the_other_one_swaps_the_two(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    bar.subject._pick("Egret 75")
    study = bar.workspace.state.study
    assert (study.subject, study.reference) == ("Egret 75", "Heron 82")


def test_the_basis_is_chosen_by_key(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    bar.basis.setFocus()
    QTest.keyClick(bar.basis, Qt.Key.Key_Up)
    assert bar.workspace.state.study.basis is Basis.AS_WEIGHED
    assert "As weighed it is 50.0" in bar.text()


def test_the_worth_is_typed(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    bar.worth.setFocus()
    bar.worth.selectAll()
    QTest.keyClicks(bar.worth, "10")
    QTest.keyClick(bar.worth, Qt.Key.Key_Return)
    assert list(bar.workspace.state.study.worth_per_kg) == [1, 10, 10]
    assert "worth 90" in bar.text()


def test_the_worth_per_pound_is_kept_per_kilogram(qtbot: QtBot) -> None:
    bar = headline_on(qtbot, mass_unit="lb")
    assert bar.worth.suffix().strip() == "EUR/lb"
    assert bar.worth.text().startswith("1.36")
    bar.worth.setValue(2)
    assert abs(bar.workspace.state.study.worth_likely_per_kg - 4.409245) < 1e-6


def test_dragging_shows_every_step_and_keeps_the_last(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    slider = bar.slider
    middle = slider.height() // 2
    start = QPoint(round(slider._x(3.0)), middle)
    seen: list[Change] = []
    bar.workspace.changed.connect(seen.append)
    QTest.mousePress(slider, Qt.MouseButton.LeftButton, pos=start)
    for step in range(1, 6):
        QTest.mouseMove(slider, start + QPoint(4 * step, 0))
    during = bar.workspace.state.study.worth_likely_per_kg
    assert during > 3
    assert all(change.passing for change in seen)
    assert bar.workspace.document.undo_label == ""
    QTest.mouseRelease(slider, Qt.MouseButton.LeftButton, pos=start + QPoint(20, 0))
    assert bar.workspace.document.undo_label == "worth of a kilogram"
    kept = bar.workspace.state.study.worth_likely_per_kg
    assert kept == during
    bar.workspace.undo()
    assert bar.workspace.state.study.worth_likely_per_kg == 3
    assert bar.worth.value() == 3


def test_keys_move_the_three_handles(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    bar.slider.setFocus()
    QTest.keyClick(bar.slider, Qt.Key.Key_Right)
    QTest.keyClick(bar.slider, Qt.Key.Key_Left, Qt.KeyboardModifier.ShiftModifier)
    QTest.keyClick(bar.slider, Qt.Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    low, likely, high = bar.workspace.state.study.worth_per_kg
    assert low < 1
    assert likely > 3
    assert high > 6


def test_handles_push_each_other(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    bar.slider._move(0, 7.0)
    assert bar.slider.worths == (7, 7, 7)


def test_a_figure_in_the_sentence_asks_where_it_comes_from(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    with qtbot.waitSignal(bar.workspace.explain_requested) as blocker:
        bar.sentence.linkActivated.emit("energy share")
    assert blocker.args == ["energy share", ""]


def test_the_count_of_warnings_opens_them(qtbot: QtBot) -> None:
    bar = headline_on(qtbot)
    with qtbot.waitSignal(bar.cautions_requested):
        QTest.mouseClick(bar.warnings, Qt.MouseButton.LeftButton)


def test_usual_costs_in_another_currency_are_among_the_warnings(
    workspace: Workspace, qtbot: QtBot
) -> None:
    library = changed_library()
    state = State(library, library.first_study().name)
    workspace.document.apply("a proposal", state)
    bar = HeadlineBar(workspace)
    qtbot.addWidget(bar)
    before = workspace.results.cautions
    workspace.edit("currency", lambda state: state.with_study(currency="CHF"))
    # One tells of the usual costs of changes, one of the starting values.
    added = set(workspace.results.cautions) - set(before)
    assert len(added) == 2
    assert bar.warnings.text().startswith(f"{len(before) + 2} warning")
    said = "In CHF they are not known and count as nothing"
    (costs,) = (one for one in added if said in one.what)
    kind, _ = found_record(library, costs.record, column=costs.column, first="")
    assert kind is RecordKind.CHANGE
    workspace.edit("currency", lambda state: state.with_study(currency="EUR"))
    assert workspace.results.cautions == before
