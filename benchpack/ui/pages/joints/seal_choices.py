"""Lists from which the flange's material and the kind of gasket are chosen."""

from __future__ import annotations

import math
from collections.abc import Iterable

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QComboBox, QSizePolicy, QStyleOptionComboBox

from benchpack.model.material import Material
from benchpack.results.seal_flange import MPA_PER_GPA, design_modulus_mpa, folded
from benchpack.results.wording import Wording
from benchpack.ui.widgets.controls import named, plain_tip
from benchpack.units.number_style import labelled

_EDGES = 60
"""Pixels of a list that its edge, padding and arrow take."""


class ChoiceBox(QComboBox):
    """A list that the wheel passes by, with one entry for figures of one's own.

    Parameters
    ----------
    name : str
        What a screen reader says.
    own : str
        The first entry, which names nothing.
    """

    def __init__(self, name: str, *, own: str) -> None:
        super().__init__()
        named(self, name)
        self._own = own
        self.addItem(own)
        self.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.setMinimumContentsLength(8)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.currentIndexChanged.connect(self._show_tip)

    def _show_tip(self) -> None:
        self.setToolTip(plain_tip(self.currentText()))

    def offer(self, entries: Iterable[tuple[str, object]]) -> None:
        """Offer entries, each with what it stands for; the chosen text stays chosen."""
        chosen = self.currentText()
        with QSignalBlocker(self):
            self.clear()
            self.addItem(self._own)
            for text, meaning in entries:
                self.addItem(text, meaning)
            self.setCurrentIndex(max(0, self.findText(chosen)))
        # The list is as wide as its longest entry, however narrow the field.
        self.view().setMinimumWidth(self.view().sizeHintForColumn(0) + 24)
        self._show_tip()

    def choose(self, place: int) -> None:
        """Show an entry as chosen without telling anyone; 0 for one's own."""
        with QSignalBlocker(self):
            self.setCurrentIndex(place)
        self._show_tip()

    def initStyleOption(self, option: QStyleOptionComboBox) -> None:
        """Shorten what does not fit with dots instead of cutting it off."""
        super().initStyleOption(option)
        room = self.width() - _EDGES
        words = option.fontMetrics.elidedText(
            self.currentText(), Qt.TextElideMode.ElideRight, room
        )
        option.currentText = words

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Let the wheel pass by unless the list has the focus."""
        if self.hasFocus():
            super().wheelEvent(event)
        else:
            event.ignore()


class MaterialBox(ChoiceBox):
    """The library's materials that have a modulus, each with its design modulus."""

    def __init__(self) -> None:
        super().__init__("Material of the flange", own="own modulus")
        self._moduli_mpa: dict[str, float] = {}

    def show_materials(
        self, materials: Iterable[Material], *, wording: Wording
    ) -> None:
        """Offer the materials of a library."""
        entries: list[tuple[str, object]] = []
        self._moduli_mpa = {}
        for material in materials:
            modulus_mpa, _ = design_modulus_mpa(material)
            if math.isnan(modulus_mpa):
                continue
            self._moduli_mpa[material.name] = modulus_mpa
            shown = _in_gpa(modulus_mpa, wording)
            entries.append((f"{material.name}, {shown}", material))
        self.offer(entries)

    @property
    def material(self) -> Material | None:
        """The chosen material, None for a modulus of one's own."""
        chosen = self.currentData()
        return chosen if isinstance(chosen, Material) else None

    @property
    def modulus_mpa(self) -> float:
        """Design modulus of the chosen material, NaN for one's own."""
        material = self.material
        return math.nan if material is None else self._moduli_mpa[material.name]

    def choose_name(self, name: str) -> None:
        """Show a material as chosen by its name, one's own where it is not offered."""
        for place in range(1, self.count()):
            offered = self.itemData(place)
            if isinstance(offered, Material) and folded(offered.name) == folded(name):
                self.choose(place)
                return
        self.choose(0)


def _in_gpa(modulus_mpa: float, wording: Wording) -> str:
    """Write a modulus in GPa with at least two digits that say something."""
    modulus_gpa = modulus_mpa / MPA_PER_GPA
    decimals = 0 if modulus_gpa >= 20 else 1 if modulus_gpa >= 1 else 3
    return labelled(wording.number(modulus_gpa, decimals=decimals), "GPa")
