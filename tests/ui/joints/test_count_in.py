"""Counting in: family, designation, count, Enter, next."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QComboBox, QLineEdit, QWidget

from benchpack.errors import DataError
from benchpack.model.words import KnownBy, Subsystem
from benchpack.ui.pages.joints.count_in import CountIn
from benchpack.ui.pages.joints.counted_entry import (
    CountedTexts,
    counted_joint,
    meant_family,
)
from benchpack.ui.pages.joints.page import JointsPage
from benchpack.units.formatting import NumberStyle
from tests.ui.joints.conftest import joint, names
from tests.ui.showing import focused, plain

KEY, MOD = Qt.Key, Qt.KeyboardModifier
CTRL_SHIFT = MOD.ControlModifier | MOD.ShiftModifier


@pytest.fixture
def bar(page: JointsPage) -> CountIn:
    """Give the entry bar, opened by its key."""
    QTest.keyClick(page.table, KEY.Key_W, CTRL_SHIFT)
    assert page.count_in.isVisible()
    return page.count_in


def type_fields(*texts: str) -> None:
    """Type into the fields in turn, Tab between them."""
    for place, text in enumerate(texts):
        if place:
            QTest.keyClick(focused(), KEY.Key_Tab)
        target = focused()
        line = target.lineEdit() if isinstance(target, QComboBox) else target
        assert isinstance(line, QLineEdit)
        QTest.keyClicks(line, text)


def enter() -> None:
    target = focused()
    line = target.lineEdit() if isinstance(target, QComboBox) else target
    assert line is not None
    QTest.keyClick(line, KEY.Key_Return)


def test_sixteen_screws_are_counted_in_a_few_keys(
    page: JointsPage, bar: CountIn
) -> None:
    type_fields("soc", "ISO 4762 M6x16", "16")
    assert plain(bar.note.text()) == (
        "16 screws: 92.8 g, 96 s, 3.76 EUR a pack. 5.8 g each, from a standard table."
    )
    enter()
    added = joint(page, "socket screw M6x16")
    assert (added.family, added.designation, added.count) == (
        "socket screw",
        "ISO 4762 M6x16",
        16,
    )
    assert added.mass_each_g is None
    assert bar.note.text().startswith("Added socket screw M6x16.")
    assert bar.family.hasFocus()
    assert bar.texts() == CountedTexts(family="socket screw")
    current = page.table.current_joint()
    assert current is not None
    assert current.name == "socket screw M6x16"
    assert page.workspace.document.undo_label == "count of socket screw M6x16"


def test_the_family_stays_for_the_next_and_the_name_is_free(
    page: JointsPage, bar: CountIn
) -> None:
    type_fields("clip", "fir tree 6.5", "22")
    enter()
    type_fields("", "fir tree 6.5", "8")
    enter()
    assert names(page)[-2:] == ["clip fir tree 6.5", "clip fir tree 6.5 2"]
    assert joint(page, "clip fir tree 6.5 2").family == "clip"


def test_a_standard_names_the_family_itself(page: JointsPage, bar: CountIn) -> None:
    type_fields("clip", "EN 1665 M6x20 10.9", "4")
    enter()
    added = joint(page, "flange screw M6x20")
    assert added.property_class == "10.9"
    assert bar.family.currentText() == "flange screw"


def test_what_it_joins_names_it_and_weighing_a_batch_divides(
    page: JointsPage, bar: CountIn
) -> None:
    type_fields("button", "ISO 7380-1 M6x16", "", "lid panel", "96 g / 20")
    enter()
    added = joint(page, "lid panel button head screws")
    assert added.mass_each_g == 4.8
    assert added.known_by is KnownBy.WEIGHED_BATCH
    assert added.count == 20
    assert added.joins == "lid panel"


def test_a_line_asks_for_its_length(page: JointsPage, bar: CountIn) -> None:
    assert not bar.lines["length"].isEnabled()
    type_fields("gasket", "EPDM profile 8x6", "")
    assert bar.lines["length"].isEnabled()
    type_fields("")
    QTest.keyClick(focused(), KEY.Key_Tab)
    type_fields("2.4 m")
    enter()
    added = joint(page, "gasket EPDM profile 8x6")
    assert added.length_mm == 2400
    assert added.subsystem is Subsystem.SEALS


@pytest.mark.parametrize(
    ("count", "said"),
    [("0", "count is 0. It has to be above zero."), ("few", "“few” is not a number.")],
)
def test_a_count_that_cannot_be_keeps_what_was_typed(
    page: JointsPage, bar: CountIn, count: str, said: str
) -> None:
    before = names(page)
    type_fields("nut", "EN 1661 M6", count)
    enter()
    assert said.split(".", maxsplit=1)[0] in bar.note.text()
    assert focused() is bar.lines["count"]
    assert bar.lines["designation"].text() == "EN 1661 M6"
    assert names(page) == before


def test_an_empty_entry_is_refused(page: JointsPage, bar: CountIn) -> None:
    enter()
    assert bar.note.text() == (
        "Neither family nor designation is filled in. Give one of them."
    )
    assert bar.family.hasFocus()


def test_a_second_enter_adds_no_empty_joint(page: JointsPage, bar: CountIn) -> None:
    type_fields("nut", "EN 1661 M6", "6")
    enter()
    before = names(page)
    enter()
    assert names(page) == before
    assert bar.note.text() == (
        "Nothing but the family, nut, is filled in. "
        "Give a designation, a count or a mass."
    )
    assert bar.lines["designation"].hasFocus()


def test_a_batch_of_no_pieces_leads_back_to_the_mass(
    page: JointsPage, bar: CountIn
) -> None:
    before = names(page)
    type_fields("nut", "EN 1661 M6", "6", "", "12 g / 0")
    enter()
    assert bar.note.text() == (
        "“0” is no number of pieces behind the /. Give it as 9.6 g / 20."
    )
    assert bar.lines["mass"].hasFocus()
    assert names(page) == before


def test_a_designation_that_is_not_understood_asks_for_a_mass(
    page: JointsPage, bar: CountIn
) -> None:
    type_fields("solid rivet", "as on the drawing", "6")
    assert "Weigh 20 and divide" in bar.note.text()
    enter()
    assert joint(page, "solid rivet as on the drawing").count == 6


def test_enter_takes_the_entry_while_parts_are_offered(
    page: JointsPage, bar: CountIn
) -> None:
    type_fields("clip", "edge clip", "3", "lid panel")
    popup = bar.lines["joins"].completer().popup()
    assert popup is not None
    QTest.keyClick(popup if popup.isVisible() else bar.lines["joins"], KEY.Key_Return)
    assert joint(page, "lid panel clips").joins == "lid panel"
    assert not popup.isVisible()


def test_esc_leaves_the_bar(page: JointsPage, bar: CountIn) -> None:
    QTest.keyClick(focused(), KEY.Key_Escape)
    assert not bar.isVisible()
    assert page.table.hasFocus()


def test_the_fields_are_named_and_in_order(page: JointsPage, bar: CountIn) -> None:
    order: list[QWidget] = [bar.family]
    for _ in range(4):
        QTest.keyClick(focused(), KEY.Key_Tab)
        order.append(focused())
    lines = bar.lines
    assert order == [
        bar.family,
        lines["designation"],
        lines["count"],
        lines["joins"],
        lines["mass"],
    ]
    assert all(line.accessibleName() for line in lines.values())


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("Flange bolts", "flange screw"),
        ("sock", "socket screw"),
        ("adhesive", "structural adhesive"),
        ("rivet nut thing", "rivet nut thing"),
        ("", ""),
    ],
)
def test_families_are_found_by_name_synonym_and_part(typed: str, meant: str) -> None:
    assert meant_family(typed) == meant


def test_a_comma_is_read_where_the_study_has_one() -> None:
    style = NumberStyle(decimal_mark=",")
    texts = CountedTexts("clip", "edge clip", "4", "", "", "24,6 g / 20")
    read = counted_joint(texts, "Avocet 81", (), style)
    assert read.mass_each_g == 1.23
    with pytest.raises(DataError, match="pieces behind"):
        counted_joint(CountedTexts("clip", mass="9 g /"), "Avocet 81", (), style)
