from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontInfo, QFontMetricsF, QPalette
from PySide6.QtWidgets import QApplication, QLabel
from pytestqt.qtbot import QtBot

from benchpack.places import resources_folder
from benchpack.ui.palette import Roles, Scheme, roles
from benchpack.ui.theme import (
    TextRole,
    apply_theme,
    font,
    scheme_for,
    set_text_role,
    theme,
)


@pytest.mark.parametrize("role", ["body", "strong", "note", "section"])
def test_figures_have_equal_width(qapp: QApplication, role: TextRole) -> None:
    metrics = QFontMetricsF(font(role))
    widths = [metrics.horizontalAdvance(digit) for digit in "0123456789"]
    assert max(widths) - min(widths) <= 1 / 64  # the renderer's rounding


@pytest.mark.parametrize(
    ("role", "points", "weight"),
    [("body", 11, 400), ("note", 9, 400), ("section", 13, 600), ("figure", 20, 600)],
)
def test_sizes_of_text(
    qapp: QApplication, role: TextRole, points: int, weight: int
) -> None:
    used = QFontInfo(font(role))
    assert used.family() == "Inter"
    assert used.pointSize() == points
    assert used.weight() == weight


def test_the_typeface_is_small_and_has_its_licence() -> None:
    folder = resources_folder() / "fonts"
    total = sum(one.stat().st_size for one in folder.glob("*.otf"))
    assert 0 < total < 1_500_000
    assert "SIL OPEN FONT LICENSE" in (folder / "OFL.txt").read_text(encoding="utf-8")


def test_figures_stay_equal_under_the_stylesheet(qtbot: QtBot) -> None:
    ones, eights = QLabel("1111"), QLabel("8888")
    for label in (ones, eights):
        qtbot.addWidget(label)
        set_text_role(label, "note")
        label.ensurePolished()
    assert ones.sizeHint().width() == eights.sizeHint().width()


@pytest.mark.parametrize("scheme", Scheme)
def test_applying_a_scheme_sets_palette_and_sheet(
    qapp: QApplication, scheme: Scheme
) -> None:
    apply_theme(qapp, scheme)
    tokens = roles(scheme)
    shown = qapp.palette()
    assert shown.color(QPalette.ColorRole.Window).name().upper() == tokens.ground
    assert shown.color(QPalette.ColorRole.Base).name().upper() == tokens.panel
    assert shown.color(QPalette.ColorRole.Text).name().upper() == tokens.text
    assert tokens.subject in qapp.styleSheet()
    assert theme().roles is tokens


def test_a_change_of_scheme_is_told_once(qapp: QApplication) -> None:
    heard: list[Roles] = []
    theme().theme_changed.connect(heard.append)
    apply_theme(qapp, Scheme.DARK)
    apply_theme(qapp, Scheme.DARK)
    apply_theme(qapp, Scheme.LIGHT)
    theme().theme_changed.disconnect(heard.append)
    assert heard == [roles(Scheme.DARK), roles(Scheme.LIGHT)]


def test_the_system_decides_and_unknown_is_light() -> None:
    assert scheme_for(Qt.ColorScheme.Dark) is Scheme.DARK
    assert scheme_for(Qt.ColorScheme.Light) is Scheme.LIGHT
    assert scheme_for(Qt.ColorScheme.Unknown) is Scheme.LIGHT
