"""The weigh-in bar: part, mass, count, next, with the keyboard alone."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from itertools import pairwise

from PySide6.QtCore import QStringListModel, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QCompleter,
    QGridLayout,
    QLabel,
    QLineEdit,
    QWidget,
)

from benchpack.errors import DataError, Problem
from benchpack.model.words import Subsystem
from benchpack.ui.forms.weighing import parse_count, parse_weighing
from benchpack.ui.tables.choice_box import ChoiceBox
from benchpack.ui.theme import set_text_role, theme
from benchpack.units.formatting import NumberStyle

_HINT = (
    "Enter adds the part, Esc leaves. 3.06 kg / 20 is twenty pieces weighed together."
)


class WeighIn(QWidget):
    """Takes parts as fast as they come off the scale.

    Signals
    -------
    weighed(str, str, object, int)
        Name, subsystem, the `Weighing` and the count of a part to be added; the
        receiver answers with `taken` or `show_problem`.
    left()
        Esc was pressed.
    """

    weighed = Signal(str, str, object, int)
    left = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("Weigh-in")
        self._style = NumberStyle()
        self._known: Mapping[str, str] = {}
        self._wrong = False
        theme().theme_changed.connect(self._recolour)
        self.name, self.mass, self.count = QLineEdit(), QLineEdit(), QLineEdit()
        self.subsystem = ChoiceBox()
        self.subsystem.addItems([str(word) for word in Subsystem])
        self.note = QLabel(_HINT)
        self.note.setWordWrap(True)
        set_text_role(self.note, "note")
        self._names = QStringListModel(self)
        completer = QCompleter(self._names, self)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        completer.setFilterMode(Qt.MatchFlag.MatchContains)
        self.name.setCompleter(completer)
        self.name.textChanged.connect(self._on_name_changed)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 8, 0, 8)
        grid.setSpacing(4)
        grid.setHorizontalSpacing(8)
        fields: tuple[tuple[str, QWidget, int], ...] = (
            ("Part", self.name, 0),
            ("Mass each", self.mass, 1),
            ("Count", self.count, 2),
        )
        for words, editor, place in fields:
            label = QLabel(words)
            label.setBuddy(editor)
            set_text_role(label, "note")
            editor.setAccessibleName(f"Weigh-in: {words.lower()}")
            grid.addWidget(label, 0, place)
            grid.addWidget(editor, 1, place)
        self.subsystem.setAccessibleName("Weigh-in: subsystem")
        self.mass.setFixedWidth(96)
        self.count.setFixedWidth(56)
        grid.setColumnStretch(0, 1)
        words_of_subsystem = QLabel("Subsystem")
        words_of_subsystem.setBuddy(self.subsystem)
        set_text_role(words_of_subsystem, "note")
        below = QGridLayout()
        below.setHorizontalSpacing(8)
        below.addWidget(words_of_subsystem, 0, 0)
        below.addWidget(self.subsystem, 1, 0)
        below.addWidget(self.note, 0, 1, 2, 1)
        below.setColumnStretch(1, 1)
        grid.addLayout(below, 2, 0, 1, 3)
        chain = (self.name, self.subsystem, self.mass, self.count)
        for before, after in pairwise(chain):
            self.setTabOrder(before, after)

    def begin(self, known: Mapping[str, str], style: NumberStyle) -> None:
        """Open with an empty entry.

        Parameters
        ----------
        known : mapping of str to str
            Subsystem by the name of parts that are known from anywhere.
        style : NumberStyle
            Decimal mark and mass unit.
        """
        self._known, self._style = known, style
        self._names.setStringList(sorted(known))
        unit = style.mass_unit
        self.mass.setPlaceholderText("2.4 kg" if unit == "kg" else f"5.3 {unit}")
        self.show()
        self.taken("")

    def taken(self, said: str) -> None:
        """Clear for the next part and say what was added."""
        for line in (self.name, self.mass, self.count):
            line.clear()
        self._say(f"{said} {_HINT}".strip(), wrong=False)
        self.name.setFocus()

    def show_problem(self, problem: Problem) -> None:
        """Say why the part cannot be added; nothing that was typed is lost."""
        self._say(f"{problem.what} {problem.remedy}".strip(), wrong=True)

    def _say(self, text: str, *, wrong: bool) -> None:
        self._wrong = wrong
        self._recolour()
        self.note.setText(text)
        self.note.setAccessibleName(text)

    def _recolour(self) -> None:
        colour = theme().roles.fail if self._wrong else theme().roles.second
        self.note.setStyleSheet(f"color: {colour};")

    def _on_name_changed(self, text: str) -> None:
        subsystem = self._known.get(text.strip())
        if subsystem:
            self.subsystem.setCurrentText(subsystem)

    def _enter(self) -> None:
        name = self.name.text().strip()
        if not name:
            self.show_problem(Problem("The part has no name.", "Give it one."))
            self.name.setFocus()
            return
        line = self.mass
        try:
            weighing = parse_weighing(self.mass.text(), self._style)
            line = self.count
            count = parse_count(self.count.text(), weighing)
        except DataError as error:
            self.show_problem(error.problems[0])
            line.setFocus()
            line.selectAll()
            return
        self.weighed.emit(name, self.subsystem.currentText(), weighing, count)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Add the part on Enter from any of the fields, leave on Esc."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._enter()
        elif event.key() == Qt.Key.Key_Escape:
            self.hide()
            self.left.emit()
        else:
            super().keyPressEvent(event)


def known_parts(parts: Iterable[Iterable[object]], *, most: int) -> dict[str, str]:
    """Give the subsystem of every part name, of so many names at most."""
    known: dict[str, str] = {}
    for group in parts:
        for part in group:
            known[str(getattr(part, "name", ""))] = str(getattr(part, "subsystem", ""))
            if len(known) >= most:
                return known
    return known
