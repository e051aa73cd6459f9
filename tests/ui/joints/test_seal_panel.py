"""A seal line tried out with keys: what changes, what is said, what stays."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QAccessible, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QLabel, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from benchpack.model.joint import Joint
from benchpack.model.library import Library, by_pack
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.results.inventory import inventory
from benchpack.session.state import State
from benchpack.ui.pages.joints.seal_panel import NO_LINE, SealPanel
from benchpack.ui.palette import Scheme
from benchpack.ui.theme import apply_theme, theme
from benchpack.ui.workspace import Workspace
from tests.ui.conftest import Watch, small_library

PACK = "Avocet 81"
MATERIALS = (
    Material("EN AW-5754 sheet", "metal", modulus_gpa=70.0),
    Material("PP-LGF40", "thermoplastic", modulus_gpa=8.0, stiffness_knock_down=0.45),
    Material("PU foam", "elastomer"),
)
PARTS = (
    Part(PACK, "lid", material="EN AW-5754 sheet", thickness_mm=1.5, area_m2=1.5),
    Part(PACK, "rim", material="EN AW-5754 sheet", thickness_mm=20.0),
    Part(
        PACK,
        "flange ring",
        "rim",
        material="EN AW-5754 sheet",
        thickness_mm=2.0,
        length_mm=5900.0,
    ),
)
GASKET = Joint(
    PACK, "lid gasket", "gasket", "foam 12x6", length_mm=5950.0, joins="lid", to="rim"
)
SCREWS = Joint(
    PACK,
    "lid screws",
    "flange screw",
    "EN 1665 M6x20",
    property_class="8.8",
    count=85,
    role="clamp and seal",
    joins="lid",
    to="rim",
    tightening="torque",
)
COVER = replace(GASKET, name="cover gasket", designation="EPDM profile 8x6", to="cover")


@pytest.fixture
def library() -> Library:
    """Give the small library with a lid, its gasket and its screws."""
    return replace(
        small_library(),
        parts=by_pack(PARTS),
        joints=by_pack((GASKET, SCREWS, COVER)),
        materials=MATERIALS,
    )


def show(panel: SealPanel, joint: str, pack: str = PACK) -> None:
    state = panel.workspace.state
    panel.show(inventory(state.library, state.study, pack), joint)


@pytest.fixture
def panel(workspace: Workspace, qtbot: QtBot) -> SealPanel:
    made = SealPanel(workspace)
    qtbot.addWidget(made)
    made.resize(560, 900)
    made.show()
    qtbot.waitExposed(made)
    show(made, "lid gasket")
    return made


def enter(field: QLineEdit, text: str) -> None:
    field.setFocus()
    field.selectAll()
    QTest.keyClick(field, Qt.Key.Key_Delete)
    QTest.keyClicks(field, text)


def choose(box: QComboBox, text: str) -> None:
    """Type the start of an entry, as a person does with the keyboard."""
    box.setFocus()
    QTest.keyClicks(box, text)
    box.activated.emit(box.currentIndex())


def said(label: QLabel) -> str:
    return label.text().replace("\u00a0", " ")


def test_the_form_starts_from_what_is_recorded(panel: SealPanel) -> None:
    outcome, fields = panel.outcome, panel.form.fields
    assert outcome.title.text() == "Seal line: lid gasket"
    assert said(outcome.recorded) == (
        "Recorded: foam 12x6, 6.0 m; between lid and rim; 85 screws at 70 mm."
    )
    shown = {key: field.text() for key, field in fields.items()}
    assert shown == {
        "modulus_mpa": "70",
        "thickness_mm": "1.5",
        "flange_width_mm": "",
        "gasket_width_mm": "12",
        "pressure_low_mpa": "0.03",
        "pressure_high_mpa": "0.08",
        "allowed_loss_mm": "0.4",
        "length_mm": "5950",
        "count": "85",
        "pitch_mm": "70",
        "area_m2": "1.5",
        "overpressure_kpa": "5",
    }
    assert panel.form.material.currentText() == "EN AW-5754 sheet, 70\u00a0GPa"
    assert panel.form.kind.currentText() == "foam"
    assert not panel.back.isEnabled()


def test_another_material_and_thickness_answer_at_once(panel: SealPanel) -> None:
    choose(panel.form.material, "PP")
    enter(panel.form.fields["thickness_mm"], "6")
    enter(panel.form.fields["count"], "")
    assert panel.form.fields["modulus_mpa"].text() == "3.6"
    assert said(panel.outcome.headline) == (
        "6 mm of PP-LGF40 allows 128 mm: 47 screws hold 6.0 m; today 85 at 70 mm."
    )
    assert said(panel.outcome.verdict).startswith("Holds: 47 screws stand 127 mm apart")
    assert "The gasket puts 122 N on each screw" in said(panel.outcome.details)
    assert "today's clamp with at least" in said(panel.outcome.details)


def test_nothing_tried_changes_the_library(panel: SealPanel) -> None:
    before = panel.workspace.state
    enter(panel.form.fields["thickness_mm"], "6")
    assert panel.workspace.state is before
    assert panel.workspace.document.undo_label == ""


def test_screws_too_far_apart_fail_with_sign_and_word(panel: SealPanel) -> None:
    enter(panel.form.fields["count"], "40")
    assert panel.form.fields["pitch_mm"].text() == "148.8"
    assert said(panel.outcome.verdict).startswith("Too far apart: 40 screws stand")
    assert panel.outcome.sign.isVisible()
    assert not panel.outcome.sign.pixmap().isNull()


def test_a_pitch_sets_the_screws(panel: SealPanel) -> None:
    enter(panel.form.fields["pitch_mm"], "90")
    assert panel.form.fields["count"].text() == "67"
    assert said(panel.outcome.verdict).startswith("Holds: 67 screws stand 89 mm apart")
    assert panel.form.fields["pitch_mm"].text() == "90"


def test_own_figures_take_the_place_of_what_was_chosen(panel: SealPanel) -> None:
    enter(panel.form.fields["modulus_mpa"], "45")
    assert panel.form.material.currentText() == "own modulus"
    assert "1.5 mm at 45.0 GPa allows" in said(panel.outcome.headline)
    enter(panel.form.fields["allowed_loss_mm"], "0.2")
    assert panel.form.kind.currentText() == "own figures"
    choose(panel.form.kind, "rubber")
    assert panel.form.fields["pressure_high_mpa"].text() == "0.3"


def test_an_anaerobic_sealant_on_a_polymer_fails(panel: SealPanel) -> None:
    choose(panel.form.kind, "anaerobic")
    choose(panel.form.material, "PP")
    assert said(panel.outcome.verdict) == (
        "This sealant cures between metals only, not on PP-LGF40."
    )


@pytest.mark.parametrize(
    ("key", "text", "complaint"),
    [
        ("thickness_mm", "0", "It has to be above zero."),
        ("thickness_mm", "thick", "thick"),
        ("length_mm", "-5", "It has to be above zero."),
        ("count", "8.5", "It has to be a whole number."),
        ("pitch_mm", "0", "It has to be above zero."),
        ("overpressure_kpa", "-1", "It has to be zero or more."),
        ("modulus_mpa", "1e9", "check the unit"),
        ("pressure_low_mpa", "0.5", "It cannot be more than at a screw."),
    ],
)
def test_what_cannot_be_meant_is_said_below_its_field(
    panel: SealPanel, key: str, text: str, complaint: str
) -> None:
    enter(panel.form.fields[key], text)
    (error,) = [
        rows.errors[key] for rows in panel.form.rows.values() if key in rows.errors
    ]
    assert complaint in error.text()
    assert error.isVisible()
    enter(panel.form.fields[key], "")
    assert error.text() == ""


def test_what_is_missing_is_asked_for(panel: SealPanel) -> None:
    enter(panel.form.fields["thickness_mm"], "")
    enter(panel.form.fields["pressure_low_mpa"], "")
    assert said(panel.outcome.headline) == (
        "Enter the thickness and the pressure midway to see the pitch."
    )
    assert panel.outcome.verdict.text() == ""
    assert not panel.outcome.sign.isVisible()


def test_back_to_what_is_recorded_by_key(panel: SealPanel) -> None:
    headline = panel.outcome.headline.text()
    enter(panel.form.fields["thickness_mm"], "6")
    assert panel.outcome.headline.text() != headline
    panel.back.setFocus()
    QTest.keyClick(panel.back, Qt.Key.Key_Space)
    assert panel.outcome.headline.text() == headline
    assert panel.form.fields["thickness_mm"].text() == "1.5"
    assert not panel.back.isEnabled()


def test_what_was_typed_outlives_other_edits_but_not_its_own(panel: SealPanel) -> None:
    enter(panel.form.fields["thickness_mm"], "6")
    show(panel, "lid screws")
    assert panel.form.fields["thickness_mm"].text() == "6"
    show(panel, "something else")
    assert panel.outcome.title.text() == "Seal line: lid gasket"
    assert panel.form.fields["thickness_mm"].text() == "6"
    thicker = (replace(PARTS[0], thickness_mm=2.0), *PARTS[1:])

    def edit(state: State) -> State:
        return replace(state, library=replace(state.library, parts=by_pack(thicker)))

    panel.workspace.edit("thickness of lid", edit)
    show(panel, "lid screws")
    assert panel.form.fields["thickness_mm"].text() == "2"


def test_another_line_fills_the_form_anew(panel: SealPanel) -> None:
    enter(panel.form.fields["thickness_mm"], "6")
    show(panel, "cover gasket")
    assert panel.outcome.title.text() == "Seal line: cover gasket"
    assert panel.form.kind.currentText() == "rubber profile"
    assert panel.form.fields["thickness_mm"].text() == "1.5"
    assert panel.form.fields["count"].text() == ""
    assert panel.form.fields["count"].placeholderText() == "least"


def test_a_pack_without_seals_says_what_to_enter(panel: SealPanel) -> None:
    show(panel, "", pack="Knot 42")
    assert panel.outcome.recorded.text() == NO_LINE
    assert not panel.form.isVisible()
    assert not panel.back.isVisible()
    assert panel.outcome.headline.text() == ""


def test_a_stiffener_can_be_left_out(panel: SealPanel) -> None:
    soft_rim = (PARTS[0], replace(PARTS[1], thickness_mm=1.0), PARTS[2])

    def edit(state: State) -> State:
        return replace(state, library=replace(state.library, parts=by_pack(soft_rim)))

    panel.workspace.edit("thickness of rim", edit)
    show(panel, "lid gasket")
    assert not panel.form.stiffened.isVisible()
    thick_lid = (replace(PARTS[0], thickness_mm=9.0), *soft_rim[1:])

    def edit_again(state: State) -> State:
        return replace(state, library=replace(state.library, parts=by_pack(thick_lid)))

    panel.workspace.edit("thickness of lid", edit_again)
    show(panel, "lid gasket")
    assert panel.form.heads["Flange"].text() == "Flange: rim"
    assert panel.form.stiffened.text() == "Stiffened by flange ring"
    assert panel.form.stiffened.isChecked()
    with_ring = panel.outcome.headline.text()
    panel.form.stiffened.setFocus()
    QTest.keyClick(panel.form.stiffened, Qt.Key.Key_Space)
    assert panel.outcome.headline.text() != with_ring
    assert panel.back.isEnabled()


def test_a_decimal_comma_is_shown_and_read(panel: SealPanel) -> None:
    panel.workspace.edit("mark", _with_comma)
    show(panel, "lid gasket")
    assert panel.form.fields["pressure_low_mpa"].text() == "0,03"
    enter(panel.form.fields["thickness_mm"], "1,75")
    assert "1,8 mm of EN AW-5754 sheet" in said(panel.outcome.headline)


def _with_comma(state: State) -> State:
    return state.with_study(decimal_mark=",")


def test_tab_walks_the_form_from_top_to_bottom(panel: SealPanel) -> None:
    # The button at the end takes the focus only while there is a way back.
    enter(panel.form.fields["count"], "80")
    panel.form.material.setFocus()
    walked: list[QWidget | None] = []
    for _ in range(14):
        walked.append(QApplication.focusWidget())
        QTest.keyClick(walked[-1] or panel, Qt.Key.Key_Tab)
    fields = panel.form.fields
    assert walked == [
        panel.form.material,
        fields["modulus_mpa"],
        fields["thickness_mm"],
        fields["flange_width_mm"],
        panel.form.kind,
        fields["gasket_width_mm"],
        fields["pressure_low_mpa"],
        fields["pressure_high_mpa"],
        fields["allowed_loss_mm"],
        fields["length_mm"],
        fields["count"],
        fields["pitch_mm"],
        fields["area_m2"],
        fields["overpressure_kpa"],
    ]
    assert QApplication.focusWidget() is panel.back


def test_every_control_has_a_name_of_its_own(panel: SealPanel) -> None:
    controls: list[QWidget] = [
        *panel.form.fields.values(),
        panel.form.material,
        panel.form.kind,
        panel.back,
    ]
    names = [
        QAccessible.queryAccessibleInterface(one).text(QAccessible.Text.Name)
        for one in controls
    ]
    assert all(names)
    assert len(set(names)) == len(names)


@pytest.mark.parametrize("has_focus", [False, True])
def test_a_passing_wheel_changes_nothing(panel: SealPanel, has_focus: bool) -> None:
    box, inverted = panel.form.material, False
    (box if has_focus else panel.form.fields["count"]).setFocus()
    before, middle = box.currentText(), QPointF(box.rect().center())
    event = QWheelEvent(
        middle,
        QPointF(box.mapToGlobal(middle.toPoint())),
        QPoint(),
        QPoint(0, -120),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        inverted,
    )
    QApplication.sendEvent(box, event)
    assert (box.currentText() == before) is not has_focus


@pytest.mark.parametrize("width", [380, 560, 900])
def test_nothing_is_cut_off_at_any_width(
    panel: SealPanel, width: int, qtbot: QtBot
) -> None:
    panel.resize(width, 900)
    qtbot.wait(1)
    right = panel.mapToGlobal(QPoint(width, 0)).x()
    for widget in panel.findChildren(QWidget):
        if widget.isVisible():
            assert widget.mapToGlobal(QPoint(widget.width(), 0)).x() <= right
    beside = panel.outcome.x() >= panel.form_area.geometry().right()
    assert beside is (width >= 720)


def test_the_sign_follows_the_scheme(panel: SealPanel, qapp: QApplication) -> None:
    enter(panel.form.fields["count"], "40")
    light = panel.outcome.sign.pixmap().toImage()
    try:
        apply_theme(qapp, Scheme.DARK)
        assert theme().scheme is Scheme.DARK
        assert panel.outcome.sign.pixmap().toImage() != light
    finally:
        apply_theme(qapp, Scheme.LIGHT)


def test_the_panel_is_let_go(
    make_workspace: Callable[[Library], Workspace], library: Library, watch_leaks: Watch
) -> None:
    panel = SealPanel(make_workspace(library))
    show(panel, "lid gasket")
    watch_leaks(panel)
