"""The dialog in which a boundary is recorded item by item."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from benchpack.errors import DataError, Problem
from benchpack.model.boundary import ITEMS, Boundary, Weighed
from benchpack.ui.dialogs.frame import ErrorLabel
from benchpack.ui.tables.choice_box import ChoiceBox
from benchpack.ui.widgets.controls import plain_button
from benchpack.units.formatting import NumberStyle
from benchpack.units.parsing import parse_quantity

_WORDS = {
    Weighed.UNKNOWN: "not known",
    Weighed.IN: "on the scale",
    Weighed.OUT: "not on the scale",
}


class BoundaryDialog(QDialog):
    """Asks for every item whether it was on the scale, and for its mass.

    Parameters
    ----------
    pack : str
        Name of the pack.
    boundary : Boundary
        What is recorded so far.
    style : NumberStyle
        Decimal mark and mass unit.
    parent : QWidget, optional
        Window the dialog belongs to.
    """

    def __init__(
        self,
        pack: str,
        boundary: Boundary,
        *,
        style: NumberStyle,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(f"Boundary of {pack}")
        self._style = style
        self._boundary = boundary
        self.states: dict[str, QComboBox] = {}
        self.masses: dict[str, QLineEdit] = {}
        layout = QVBoxLayout(self)
        layout.setContentsMargins(24, 16, 24, 16)
        layout.setSpacing(8)
        intro = QLabel(
            f"What was on the scale when {pack} was weighed. The mass of an item lets "
            "it be taken out when another pack was weighed without it."
        )
        intro.setWordWrap(True)
        layout.addWidget(intro)
        layout.addWidget(self._made_items(), 1)
        self.error = ErrorLabel()
        layout.addWidget(self.error)
        layout.addLayout(self._made_buttons())
        self.resize(520, 600)
        self.show_boundary(boundary)

    def _made_items(self) -> QScrollArea:
        body = QWidget()
        grid = QGridLayout(body)
        grid.setContentsMargins(0, 0, 8, 0)
        grid.setHorizontalSpacing(8)
        grid.setVerticalSpacing(4)
        grid.setColumnStretch(0, 1)
        for row, item in enumerate(ITEMS):
            label = QLabel(item[:1].upper() + item[1:])
            box = ChoiceBox()
            for state, words in _WORDS.items():
                box.addItem(words, str(state))
            box.setAccessibleName(f"{item}: was it on the scale")
            label.setBuddy(box)
            mass = QLineEdit()
            mass.setFixedWidth(88)
            mass.setAlignment(Qt.AlignmentFlag.AlignRight)
            mass.setPlaceholderText("mass")
            mass.setAccessibleName(f"mass of {item} [{self._style.mass_unit}]")
            for place, widget in enumerate((label, box, mass)):
                grid.addWidget(widget, row, place)
            grid.addWidget(QLabel(self._style.mass_unit), row, 3)
            self.states[item], self.masses[item] = box, mass
        area = QScrollArea()
        area.setAccessibleName("Items of the boundary")
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setWidgetResizable(True)
        area.setWidget(body)
        return area

    def _made_buttons(self) -> QHBoxLayout:
        every = QPushButton("All on the scale")
        every.clicked.connect(self._on_all_in_clicked)
        none = QPushButton("All not known")
        none.clicked.connect(self._on_all_unknown_clicked)
        for button in (every, none):
            button.setAutoDefault(False)
        cancel = plain_button("Cancel")
        keep = plain_button("Keep boundary")
        keep.setDefault(True)
        cancel.clicked.connect(self.reject)
        keep.clicked.connect(self.accept)
        row = QHBoxLayout()
        row.addWidget(every)
        row.addWidget(none)
        row.addStretch(1)
        row.addWidget(cancel)
        row.addWidget(keep)
        return row

    def show_boundary(self, boundary: Boundary) -> None:
        """Show a boundary in the items."""
        for item in ITEMS:
            self._set_state(item, boundary.state(item))
            self.masses[item].setText(self._shown(boundary.masses_kg.get(item)))

    def _shown(self, mass_kg: float | None) -> str:
        if mass_kg is None:
            return ""
        text = f"{self._style.in_mass_unit(mass_kg):.10g}"
        return text.replace(".", self._style.decimal_mark)

    def _set_state(self, item: str, state: Weighed) -> None:
        box = self.states[item]
        box.setCurrentIndex(box.findData(str(state)))

    def boundary(self) -> Boundary:
        """Give what the items say.

        Raises
        ------
        DataError
            When a mass cannot be read, with the item as the column.
        """
        states: dict[str, Weighed] = {}
        masses: dict[str, float] = {}
        for item in ITEMS:
            state = Weighed(self.states[item].currentData())
            if state is not Weighed.UNKNOWN:
                states[item] = state
            text = self.masses[item].text().strip()
            if text:
                masses[item] = self._mass_kg(item, text)
        return Boundary(states, masses)

    def _mass_kg(self, item: str, text: str) -> float:
        kept_kg = self._boundary.masses_kg.get(item)
        if kept_kg is not None and text == self._shown(kept_kg):
            return kept_kg
        try:
            mass_kg = parse_quantity(
                text,
                "mass",
                unit=self._style.mass_unit,
                decimal=self._style.decimal_mark,
            )
        except DataError as error:
            raise DataError(*(p.at(column=item) for p in error.problems)) from error
        if mass_kg < 0:
            what = f"The mass is {text}."
            raise DataError(Problem(what, "It has to be zero or more.", column=item))
        return mass_kg

    def accept(self) -> None:
        """Close when every mass can be read; else say which one cannot."""
        try:
            self.boundary()
        except DataError as error:
            problem = error.problems[0]
            item = problem.column
            said = f"{item[:1].upper()}{item[1:]}: {problem.at(column='')}"
            self.error.show_error(said)
            self.masses[item].setFocus()
            return
        super().accept()

    def _on_all_in_clicked(self) -> None:
        for item in ITEMS:
            self._set_state(item, Weighed.IN)

    def _on_all_unknown_clicked(self) -> None:
        for item in ITEMS:
            self._set_state(item, Weighed.UNKNOWN)
