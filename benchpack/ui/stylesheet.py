"""The one stylesheet of the window, as text. No Qt here."""

from __future__ import annotations

from dataclasses import fields
from string import Template

from benchpack.ui.palette import Roles, mix

RADIUS = 4


def stylesheet(tokens: Roles, *, icons: str) -> str:
    """Give the one stylesheet of the window.

    Parameters
    ----------
    tokens : Roles
        The colours of the scheme.
    icons : str
        Folder of the arrows, with forward slashes.

    Returns
    -------
    str
        Text for ``QApplication.setStyleSheet``.
    """
    names = {one.name: getattr(tokens, one.name) for one in fields(tokens)}
    pale = mix(tokens.second, tokens.panel, share=0.6)
    tick = "tick-light" if tokens.on_subject == "#FFFFFF" else "tick-dark"
    return Template(_SHEET).substitute(
        names, pale=pale, icons=icons, radius=RADIUS, tick=tick
    )


_SHEET = """
QLabel[textRole="note"] { color: $second; }
QToolTip { background: $panel; color: $text; border: 1px solid $hairline;
  padding: 4px; }

QPushButton, QToolButton { background: $panel; color: $text;
  border: 1px solid $hairline; border-radius: ${radius}px; padding: 4px 12px; }
QToolButton { padding: 4px; }
QToolButton[autoRaise="true"] { background: transparent; border-color: transparent; }
QPushButton:hover, QToolButton:hover { border-color: $peer; }
QPushButton:pressed, QToolButton:pressed, QToolButton:checked,
QPushButton:checked { background: $pressed; }
QPushButton:disabled, QToolButton:disabled { color: $pale; }
QPushButton:default { background: $subject; color: $on_subject;
  border-color: $subject; }
QPushButton:focus, QToolButton:focus { border: 2px solid $subject; padding: 3px 11px; }
QToolButton:focus { padding: 3px; }
QPushButton:default:focus { border-color: $text; }
QPushButton:default:disabled { background: $panel; color: $pale;
  border-color: $hairline; }
QToolButton::menu-indicator { image: none; }

QLineEdit, QPlainTextEdit, QTextEdit, QAbstractSpinBox, QComboBox {
  background: $panel; color: $text; border: 1px solid $hairline;
  border-radius: ${radius}px; padding: 4px 8px;
  selection-background-color: $subject; selection-color: $on_subject; }
QLineEdit:hover, QAbstractSpinBox:hover, QComboBox:hover { border-color: $peer; }
QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus, QAbstractSpinBox:focus,
QComboBox:focus { border: 2px solid $subject; padding: 3px 7px; }
QLineEdit:disabled, QAbstractSpinBox:disabled, QComboBox:disabled { color: $pale; }
QAbstractItemView QLineEdit { border-radius: 0; padding: 0 2px; }
QAbstractSpinBox { padding: 4px 0 4px 8px; }
QAbstractSpinBox:focus { padding: 3px 0 3px 7px; }
QAbstractSpinBox QLineEdit, QAbstractSpinBox QLineEdit:focus { border: none;
  background: transparent; padding: 0; }
QComboBox { padding-right: 24px; combobox-popup: 0; }
QComboBox:focus { padding-right: 23px; }
QComboBox QLineEdit, QComboBox QLineEdit:focus { background: transparent; border: none;
  padding: 0; }
QComboBox::drop-down { border: none; width: 24px; }
QComboBox::down-arrow { image: url("$icons/arrow-down.svg"); width: 12px;
  height: 12px; }
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button { border: none;
  width: 16px; background: transparent; }
QAbstractSpinBox::up-arrow { image: url("$icons/arrow-up.svg"); width: 10px;
  height: 10px; }
QAbstractSpinBox::down-arrow { image: url("$icons/arrow-down.svg"); width: 10px;
  height: 10px; }

QCheckBox::indicator, QRadioButton::indicator, QAbstractItemView::indicator {
  width: 14px; height: 14px; border: 1px solid $peer; background: $panel; }
QCheckBox::indicator, QAbstractItemView::indicator { border-radius: 3px; }
QRadioButton::indicator { border-radius: 8px; }
QCheckBox::indicator:checked, QAbstractItemView::indicator:checked {
  background: $subject; border-color: $subject; image: url("$icons/$tick.svg"); }
QCheckBox::indicator:indeterminate { background: $pale; }
QRadioButton::indicator:checked { width: 6px; height: 6px;
  border: 5px solid $subject; }
QCheckBox::indicator:disabled, QRadioButton::indicator:disabled {
  border-color: $hairline; }
QCheckBox, QRadioButton { spacing: 8px; border: 1px solid transparent;
  border-radius: ${radius}px; padding: 1px; }
QCheckBox:focus, QRadioButton:focus { border-color: $subject; }

QAbstractItemView { background: $panel; color: $text; border: none;
  gridline-color: $hairline; outline: none; selection-background-color: $selected;
  selection-color: $text; }
QAbstractItemView::item:selected { background: $selected; color: $text; }
QAbstractItemView::item:focus { border: 1px solid $subject; }
QComboBox QAbstractItemView { border: 1px solid $hairline; padding: 4px; }
QListView#offers { border: 1px solid $hairline; }
QListView#offers::item { padding: 3px 6px; }
QHeaderView { background: $panel; border: none; }
QHeaderView::section { background: $panel; color: $second; border: none;
  border-bottom: 1px solid $hairline; padding: 4px 8px; }
QHeaderView::down-arrow, QHeaderView::up-arrow { width: 10px; height: 8px;
  subcontrol-origin: border; subcontrol-position: top center; }
QHeaderView::down-arrow { image: url("$icons/arrow-down.svg"); }
QHeaderView::up-arrow { image: url("$icons/arrow-up.svg"); }
QTableCornerButton::section { background: $panel; border: none;
  border-bottom: 1px solid $hairline; }

QMenuBar { background: $ground; color: $text; }
QMenuBar::item { padding: 4px 8px; background: transparent; }
QMenuBar::item:selected { background: $pressed; border-radius: ${radius}px; }
QMenu { background: $panel; color: $text; border: 1px solid $hairline; padding: 4px; }
QMenu::item { padding: 4px 24px 4px 8px; border-radius: ${radius}px; }
QMenu::item:selected { background: $selected; }
QMenu::item:disabled { color: $pale; }
QMenu::separator { height: 1px; background: $hairline; margin: 4px 0; }
QMenu::icon { padding-left: 4px; }
QStatusBar { background: $ground; color: $second; border-top: 1px solid $hairline; }
QStatusBar::item { border: none; }
QSplitter::handle { background: transparent; }
QSplitter::handle:hover { background: $hairline; }
QPushButton[look="side"] { background: transparent; border: 2px solid transparent;
  text-align: left; padding: 6px 8px; }
QPushButton[look="side"]:hover { background: $pressed; }
QPushButton[look="side"]:checked { background: $selected; }
QPushButton[look="side"]:focus { border-color: $subject; }
QPushButton[look="figure"] { background: transparent; border: 2px solid transparent;
  text-align: left; padding: 2px 4px; }
QPushButton[look="figure"]:hover { background: $pressed; }
QPushButton[look="figure"]:focus { border-color: $subject; }

QTabBar::tab { background: transparent; color: $second; padding: 6px 12px;
  border: none; border-bottom: 2px solid transparent; }
QTabBar::tab:selected { color: $text; border-bottom-color: $subject; }
QTabBar::tab:focus { border-bottom-color: $text; }
QTabWidget::pane { border: none; border-top: 1px solid $hairline; }

QAbstractScrollArea::corner { background: transparent; border: none; }
QScrollArea { border: none; background: transparent; }
QScrollBar { background: transparent; border: none; }
QScrollBar:vertical { width: 12px; }
QScrollBar:horizontal { height: 12px; }
QScrollBar::handle { background: $hairline; border-radius: 4px; margin: 2px; }
QScrollBar::handle:vertical { min-height: 24px; }
QScrollBar::handle:horizontal { min-width: 24px; }
QScrollBar::handle:hover { background: $peer; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }

QSlider::groove:horizontal { height: 2px; background: $hairline; }
QSlider::sub-page:horizontal { background: $subject; }
QSlider::handle:horizontal { background: $subject; width: 12px; height: 12px;
  margin: -5px 0; border-radius: 6px; }
QSlider::handle:horizontal:focus { border: 2px solid $text; width: 12px;
  height: 12px; margin: -7px 0; border-radius: 8px; }
QProgressBar { background: $hairline; border: none; border-radius: 2px;
  max-height: 4px; }
QProgressBar::chunk { background: $subject; border-radius: 2px; }
"""
