"""The figures above the fan: worth, gap, share captured, value, target."""

from __future__ import annotations

import math

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtWidgets import (
    QDoubleSpinBox,
    QGridLayout,
    QLabel,
    QPushButton,
    QSpinBox,
    QWidget,
)

from benchpack.report.display import Display
from benchpack.session.state import State
from benchpack.ui.theme import SPACE_AROUND, SPACE_INSIDE, set_text_role
from benchpack.ui.widgets.controls import text_margin
from benchpack.ui.widgets.steady import Steady
from benchpack.ui.workspace import Workspace


class WorthFigures(QWidget):
    """Figures that answer where they come from, and the two choices of this page."""

    def __init__(self, workspace: Workspace) -> None:
        super().__init__()
        self.workspace = workspace
        self.value = _figure_button(
            "Value per pack", "At likely worth (at low and at high worth)."
        )
        self.gap = _figure_button("Gap", "With two standard uncertainties each way.")
        self.per_kg = QLabel()
        self.share = QSpinBox()
        self.target = QDoubleSpinBox()
        self._lay_out()
        self.value.clicked.connect(self._on_value_clicked)
        self.gap.clicked.connect(self._on_gap_clicked)
        self.share.valueChanged.connect(self._on_share_changed)
        self.target.valueChanged.connect(self._on_target_changed)

    def _lay_out(self) -> None:
        for spin in (self.share, self.target):
            text_margin(spin)
        self.share.setRange(0, 100)
        self.share.setSuffix(" %")
        self.share.setAccessibleName("Share of the gap captured")
        self.share.setKeyboardTracking(False)
        self.target.setRange(0, 1e5)
        self.target.setDecimals(1)
        self.target.setSpecialValueText("none")
        self.target.setAccessibleName("Target saving per pack")
        self.target.setKeyboardTracking(False)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(SPACE_AROUND)
        grid.setVerticalSpacing(SPACE_INSIDE)
        columns = (
            ("Value per pack", self.value, Steady(self.value)),
            ("Gap counted", self.gap, Steady(self.gap)),
            ("Worth", self.per_kg, Steady(self.per_kg)),
            ("Share captured", self.share, self.share),
            ("Target", self.target, self.target),
        )
        for place, (words, widget, holder) in enumerate(columns):
            label = QLabel(words)
            set_text_role(label, "note")
            label.setBuddy(widget)
            grid.addWidget(label, 0, place)
            grid.addWidget(holder, 1, place, Qt.AlignmentFlag.AlignLeft)
        grid.setColumnStretch(len(columns), 1)

    def refresh(self) -> None:
        """Show the figures of the present results."""
        results = self.workspace.results
        study, display = results.study, Display(results.study)
        valuation, place = results.valuation, results.place
        value = "–"
        if valuation is not None and place is not None:
            low, likely, high = (
                float(values[place])
                for values in (valuation.low, valuation.likely, valuation.high)
            )
            if not math.isnan(likely):
                value = display.money_range_text(likely, low, high)
        self.value.setText(value)
        gap = display.ranged_mass_text(results.gap_kg, *results.gap_range_kg())
        self.gap.setText(gap)
        self.per_kg.setText(
            f"{display.worth_text(study.worth_likely_per_kg)}\n"
            f"{display.other_worth_text(study.worth_likely_per_kg)}"
        )
        suffix = f" {study.mass_unit}"
        with QSignalBlocker(self.share), QSignalBlocker(self.target):
            if suffix != self.target.suffix():
                self.target.setSuffix(suffix)
            self.share.setValue(round(100 * study.share_captured))
            self.target.setValue(display.mass(study.target_kg or 0.0))

    def _on_value_clicked(self) -> None:
        self.workspace.explain_requested.emit("value likely", "")

    def _on_gap_clicked(self) -> None:
        self.workspace.explain_requested.emit("gap", "")

    def _on_share_changed(self, percent: int) -> None:
        def change(state: State) -> State:
            return state.with_study(share_captured=percent / 100)

        self.workspace.edit("share captured", change, merge="share captured")

    def _on_target_changed(self, shown: float) -> None:
        display = Display(self.workspace.results.study)
        target_kg = display.mass_kg(shown) if shown > 0 else None

        def change(state: State) -> State:
            return state.with_study(target_kg=target_kg)

        self.workspace.edit("target", change, merge="target")


def _figure_button(words: str, tip: str) -> QPushButton:
    """Make a figure that can be clicked to ask where it comes from."""
    button = QPushButton("–")
    button.setProperty("look", "figure")
    button.setAccessibleName(words)
    button.setToolTip(f"{tip} Click: where does this come from?")
    button.setCursor(Qt.CursorShape.PointingHandCursor)
    set_text_role(button, "section")
    return button
