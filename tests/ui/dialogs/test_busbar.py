"""The busbar calculator: filled from a part, worked out while it is typed."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QApplication,
    QComboBox,
    QLabel,
    QLineEdit,
    QWidget,
)
from pytestqt.qtbot import QtBot

from benchpack.model.library import Library
from benchpack.model.part import Part
from benchpack.model.words import Subsystem
from benchpack.ui.dialogs.busbar import BusbarDialog, open_busbar
from benchpack.ui.dialogs.busbar_explanation import BusbarExplanation
from benchpack.ui.palette import Scheme
from benchpack.ui.theme import apply_theme
from benchpack.ui.workspace import Workspace
from tests.ui.conftest import Watch, small_library

KEY, LEFT = Qt.Key, Qt.MouseButton.LeftButton
CONDUCTORS = Subsystem.CONDUCTORS


def conducting_library() -> Library:
    """Give the small library with conductors in its first pack."""
    library = small_library()
    parts = (
        Part("Avocet 81", "sleeve", "", CONDUCTORS, "silicone rubber"),
        Part(
            "Avocet 81",
            "long busbar",
            "",
            CONDUCTORS,
            "copper Cu-ETP",
            mass_each_kg=0.8037,
            thickness_mm=3.0,
            length_mm=1500.0,
        ),
        Part(
            "Avocet 81",
            "end busbar",
            "",
            CONDUCTORS,
            "EN AW-1350 busbar",
            thickness_mm=5.0,
            length_mm=520.0,
        ),
    )
    kept = library.parts_of("Avocet 81")
    return replace(library, parts={"Avocet 81": (*kept, *parts)})


@pytest.fixture
def workspace(make_workspace: Callable[[Library], Workspace]) -> Workspace:
    return make_workspace(conducting_library())


@pytest.fixture
def dialog(qtbot: QtBot, workspace: Workspace) -> BusbarDialog:
    made = BusbarDialog(workspace, pack="Avocet 81", part="long busbar")
    qtbot.addWidget(made)
    made.resize(960, 672)
    made.show()
    qtbot.waitExposed(made)
    return made


def enter(line: QLineEdit, text: str) -> None:
    """Type a text over what stands in a field."""
    line.setFocus()
    QTest.keyClick(line, KEY.Key_A, Qt.KeyboardModifier.ControlModifier)
    QTest.keyClick(line, KEY.Key_Delete)
    QTest.keyClicks(line, text)


def choose(box: QComboBox, text: str) -> None:
    """Choose an entry with the keyboard."""
    box.setFocus()
    while box.currentText() != text:
        before = box.currentIndex()
        wanted = box.findText(text)
        QTest.keyClick(box, KEY.Key_Down if wanted > before else KEY.Key_Up)
        assert box.currentIndex() != before


def values(dialog: BusbarDialog) -> list[str]:
    return [button.text() for button in dialog.lines.figures]


def shown(dialog: BusbarDialog) -> list[str]:
    return [w.text() for w in dialog.findChildren(QLabel) if w.isVisible()]


def test_it_opens_filled_from_the_part(dialog: BusbarDialog) -> None:
    """0.8037 kg / (8930 kg/m3 * 3 mm * 1500 mm) = 20.0 mm."""
    fields = {name: line.text() for name, line in dialog.fields.items()}
    assert fields["length_mm"] == "1500"
    assert (fields["width_mm"], fields["thickness_mm"]) == ("20", "3")
    assert (fields["leg_mm"], fields["current_a"]) == ("", "")
    assert dialog.metal_box.currentText() == "copper Cu-ETP"
    assert "mass, density, thickness and length" in dialog.notes.text()
    assert values(dialog)[0] == "about 267\u00a0A (240 to 293)"
    assert values(dialog)[2] == "1.53\u00a0mm"
    assert values(dialog)[6:] == ["250\u00a0N/m", "8.09\u00a0kA"]
    assert dialog.fields["length_mm"].hasFocus()


def test_figures_follow_each_key(dialog: BusbarDialog) -> None:
    enter(dialog.fields["length_mm"], "0.3 m")
    assert values(dialog)[2] == "0.306\u00a0mm"
    enter(dialog.fields["fault_current_a"], "10 kA")
    assert values(dialog)[6] == "1\u00a0kN/m"
    enter(dialog.fields["current_a"], "300 A")
    assert values(dialog)[1] == "5\u00a0A/mm²"
    assert "At 300\u00a0A." in shown(dialog)
    assert any("300\u00a0A is more than that." in text for text in shown(dialog))


def test_a_u_loop_and_foils_soften_the_offset(dialog: BusbarDialog) -> None:
    before = dialog.trial()
    assert before.legs == 1
    assert values(dialog)[4] == "166\u00a0mm"
    choose(dialog.legs_box, "U-loop, two legs")
    # 165.95 mm / sqrt(2), and again / sqrt(9) by nine foils.
    assert values(dialog)[4] == "118\u00a0mm"
    enter(dialog.fields["foils"], "9")
    assert values(dialog)[4] == "39.2\u00a0mm"
    assert dialog.trial().legs == 2


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        ("length_mm", "long", "“long” is not a number"),
        ("width_mm", "5 kA", "the unit “kA” is not known for a length"),
        ("thickness_mm", "-3", "thickness is -3 mm. It has to be above zero."),
        ("foils", "1.5", "It has to be a whole number."),
        ("rise_k", "60 kg", "a rise of temperature is expected here"),
        ("duration_s", "2 min", "duration is 120 s, more than can be meant."),
    ],
)
def test_a_bad_entry_gets_a_sentence_and_stays(
    dialog: BusbarDialog, name: str, text: str, said: str
) -> None:
    enter(dialog.fields[name], text)
    assert dialog.fields[name].text() == text
    assert any(said in words for words in shown(dialog))
    assert "\u2013" in values(dialog)
    assert any("Not known: " in words for words in shown(dialog))
    enter(dialog.fields[name], "2")
    assert not any(said in words for words in shown(dialog))
    assert "\u2013" not in values(dialog)


def test_a_bad_entry_outlives_another_part(dialog: BusbarDialog) -> None:
    enter(dialog.fields["distance_mm"], "near")
    enter(dialog.fields["leg_mm"], "40")
    choose(dialog.part_box, "end busbar")
    assert dialog.fields["distance_mm"].text() == "near"
    assert dialog.fields["leg_mm"].text() == "40"
    assert dialog.fields["length_mm"].text() == "520"
    assert dialog.fields["width_mm"].text() == ""
    assert "Not recorded: width." in dialog.notes.text()


def test_what_was_typed_exactly_is_not_rounded_by_the_screen(
    dialog: BusbarDialog,
) -> None:
    choose(dialog.part_box, "own figures")
    enter(dialog.fields["width_mm"], "21.123456")
    assert dialog.trial().width_mm == 21.123456
    assert dialog.trial().source("width_mm") == "entered"


def test_the_metal_brings_its_stress_unless_one_was_typed(
    dialog: BusbarDialog,
) -> None:
    assert dialog.fields["allowed_stress_mpa"].text() == "60"
    choose(dialog.metal_box, "aluminium")
    assert dialog.fields["allowed_stress_mpa"].text() == "30"
    assert values(dialog)[0].startswith("about 210\u00a0A")
    enter(dialog.fields["allowed_stress_mpa"], "45")
    choose(dialog.metal_box, "copper")
    assert dialog.fields["allowed_stress_mpa"].text() == "45"


def test_only_metal_is_offered_beside_the_part_that_was_asked_for(
    qtbot: QtBot, workspace: Workspace
) -> None:
    workspace.select("Avocet 81")
    unasked = BusbarDialog(workspace)
    qtbot.addWidget(unasked)
    texts = [unasked.part_box.itemText(i) for i in range(unasked.part_box.count())]
    assert texts == ["own figures", "long busbar", "end busbar"]
    assert unasked.part_box.currentText() == "long busbar"
    asked = BusbarDialog(workspace, pack="Avocet 81", part="sleeve")
    qtbot.addWidget(asked)
    assert asked.part_box.currentText() == "sleeve"
    assert "neither copper nor aluminium" in asked.notes.text()


def test_a_pack_without_conductors_starts_empty(
    qtbot: QtBot, workspace: Workspace
) -> None:
    empty = BusbarDialog(workspace, pack="Knot 42")
    qtbot.addWidget(empty)
    assert empty.part_box.count() == 1
    assert [empty.fields[n].text() for n in ("length_mm", "width_mm")] == ["", ""]
    assert values(empty)[:1] == ["\u2013"]


def test_the_decimal_mark_of_the_study_holds(
    qtbot: QtBot, workspace: Workspace
) -> None:
    workspace.edit("mark", lambda state: state.with_study(decimal_mark=","))
    dialog = BusbarDialog(workspace, pack="Avocet 81", part="long busbar")
    qtbot.addWidget(dialog)
    dialog.show()
    enter(dialog.fields["length_mm"], "0,3 m")
    assert values(dialog)[2] == "0,306\u00a0mm"


def test_a_click_says_where_a_figure_comes_from(dialog: BusbarDialog) -> None:
    QTest.mouseClick(dialog.lines.figures[2], LEFT)
    panel = dialog.findChild(BusbarExplanation)
    assert panel is not None
    assert panel.isVisible()
    texts = [w.text() for w in panel.findChildren(QLabel) if not w.isHidden()]
    assert "Free growth" in texts
    assert "1.53\u00a0mm" in texts
    assert "recorded with the part" in texts
    enter(dialog.fields["length_mm"], "750")
    texts = [w.text() for w in panel.findChildren(QLabel) if not w.isHidden()]
    assert "0.765\u00a0mm" in texts
    assert "entered" in texts


def test_f1_explains_the_figure_in_focus(dialog: BusbarDialog) -> None:
    dialog.lines.figures[6].setFocus()
    QTest.keyClick(dialog.lines.figures[6], KEY.Key_F1)
    panel = dialog.findChild(BusbarExplanation)
    assert panel is not None
    texts = [w.text() for w in panel.findChildren(QLabel)]
    assert "Force between parallel bars" in texts
    assert any("IEC 60865" in text for text in texts)
    dialog.fields["length_mm"].setFocus()
    QTest.keyClick(dialog.fields["length_mm"], KEY.Key_F1)
    texts = [w.text() for w in panel.findChildren(QLabel) if not w.isHidden()]
    assert "Steady current in still air, 50 K over 40 °C" in texts


def test_copy_takes_full_precision(dialog: BusbarDialog) -> None:
    QTest.mouseClick(dialog.copy_button, LEFT)
    rows = [line.split("\t") for line in QGuiApplication.clipboard().text().split("\n")]
    growth = next(row for row in rows if row[0] == "Free growth")
    assert float(growth[1]) == pytest.approx(17e-6 * 60 * 1500, rel=1e-12)
    assert growth[2] == "mm"
    assert ["formula", "α L ΔT", "", ""] in rows


def test_keys_reach_every_field_and_enter_closes_nothing(
    dialog: BusbarDialog,
) -> None:
    first = dialog.fields["length_mm"]
    assert first.hasFocus()
    reached: list[QWidget] = []
    for _ in range(40):
        focused = QApplication.focusWidget()
        assert focused is not None
        reached.append(focused)
        QTest.keyClick(focused, KEY.Key_Tab)
    wanted = [
        *dialog.fields.values(),
        *dialog.lines.figures,
        dialog.part_box,
        dialog.metal_box,
        dialog.legs_box,
        dialog.copy_button,
        dialog.close_button,
    ]
    assert set(map(id, wanted)) <= set(map(id, reached))
    order = [id(widget) for widget in reached]
    assert order.index(id(dialog.fields["duration_s"])) < order.index(
        id(dialog.lines.figures[0])
    )
    QTest.keyClick(first, KEY.Key_Return)
    assert dialog.isVisible()
    QTest.keyClick(first, KEY.Key_Escape)
    assert not dialog.isVisible()


def test_everything_has_a_name_that_can_be_said(dialog: BusbarDialog) -> None:
    controls = [
        control
        for control in dialog.findChildren(QWidget)
        if isinstance(control, (QAbstractButton, QComboBox, QLineEdit))
        and control.isVisible()
    ]
    assert len(controls) >= 24
    for control in (dialog, *controls):
        interface = QAccessible.queryAccessibleInterface(control)
        assert interface.text(QAccessible.Text.Name), control
    growth = QAccessible.queryAccessibleInterface(dialog.lines.figures[2])
    assert growth.text(QAccessible.Text.Name) == "Grows by: 1.53\u00a0mm"
    assert "60\u00a0K warmer" in growth.text(QAccessible.Text.Description)


@pytest.mark.parametrize("scheme", list(Scheme))
def test_all_inputs_and_figures_are_in_sight(
    qapp: QApplication, dialog: BusbarDialog, scheme: Scheme
) -> None:
    apply_theme(qapp, scheme)
    enter(dialog.fields["leg_mm"], "40")
    qapp.processEvents()
    for widget in (*dialog.fields.values(), *dialog.lines.figures):
        assert not widget.visibleRegion().isEmpty()
        assert widget.visibleRegion().boundingRect() == widget.rect()
    apply_theme(qapp, Scheme.LIGHT)


def test_it_says_that_it_is_no_design(dialog: BusbarDialog) -> None:
    assert any("licensed practice under the codes" in text for text in shown(dialog))


def test_it_leaves_nothing_behind(
    qtbot: QtBot, workspace: Workspace, watch_leaks: Watch
) -> None:
    window = QWidget()
    qtbot.addWidget(window)
    dialog = open_busbar(workspace, window, pack="Avocet 81", part="long busbar")
    watch_leaks(dialog)
    QTest.mouseClick(dialog.lines.figures[0], LEFT)
    before = workspace.state
    QTest.mouseClick(dialog.close_button, LEFT)
    assert workspace.state is before
