"""The entry bar: family, designation, count, Enter, next."""

from __future__ import annotations

from itertools import pairwise

from PySide6.QtCore import QStringListModel, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from benchpack.errors import DataError, Problem
from benchpack.model.families import Counted
from benchpack.model.joint import Joint
from benchpack.ui.pages.joints.counted_entry import (
    CountedTexts,
    counted_joint,
    meant_family,
    read_family,
)
from benchpack.ui.pages.joints.family_box import family_box
from benchpack.ui.tables.offers import is_choosing, offer
from benchpack.ui.theme import set_text_role, theme
from benchpack.ui.widgets.controls import unbroken
from benchpack.ui.widgets.steady import Steady
from benchpack.units.formatting import NumberStyle

_HINT = (
    "Enter adds the joint and goes on with the next, Esc leaves. 9.6 g / 20 is twenty "
    "weighed together; without a mass it is computed."
)
_WIDTHS = {"family": 176, "count": 72, "length": 88, "mass": 104}
_LABELS = {
    "family": "Family",
    "designation": "Designation",
    "count": "Count",
    "joins": "Joins",
    "length": "Length [mm]",
    "mass": "Mass each",
}


class CountIn(QWidget):
    """Takes joints as fast as they are counted.

    Signals
    -------
    counted(object)
        A `Joint` is to be added; the receiver answers with `taken` or `show_problem`.
    typed(object)
        What would be added as the fields stand, a `Joint`, or None.
    left()
        Esc was pressed.
    """

    counted = Signal(object)
    typed = Signal(object)
    left = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("Count in")
        self._style = NumberStyle()
        self._pack = ""
        self._joints: tuple[Joint, ...] = ()
        self._wrong = False
        self.family = family_box(self)
        lines = ("designation", "count", "joins", "length", "mass")
        self.lines = {key: QLineEdit(self) for key in lines}
        self._parts = offer(self.lines["joins"], ())
        self.note = QLabel(_HINT, self)
        self.note.setWordWrap(True)
        self.note.setTextFormat(Qt.TextFormat.PlainText)
        self.note.setAlignment(Qt.AlignmentFlag.AlignTop)
        set_text_role(self.note, "note")
        self._lay_out()
        for line in self._every_line():
            line.returnPressed.connect(self._on_enter)
            line.textChanged.connect(self._on_text_changed)
        theme().theme_changed.connect(self._recolour)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 0)
        column.setSpacing(4)
        for keys in (("family", "designation", "count"), ("joins", "length", "mass")):
            row = QHBoxLayout()
            row.setSpacing(8)
            for key in keys:
                row.addLayout(self._labelled(key), 0 if key in _WIDTHS else 1)
            column.addLayout(row)
        column.addWidget(Steady(self.note, least_lines=2))
        self.lines["designation"].setPlaceholderText("ISO 4762 M6x20 8.8")
        self.lines["mass"].setPlaceholderText("9.6 g / 20")
        order = ("designation", "count", "length", "joins", "mass")
        chain = [self.family, *(self.lines[key] for key in order)]
        for before, after in pairwise(chain):
            self.setTabOrder(before, after)

    def _labelled(self, key: str) -> QVBoxLayout:
        """Give a field with its label above it."""
        editor: QWidget = self.family if key == "family" else self.lines[key]
        label = QLabel(_LABELS[key], self)
        label.setBuddy(editor)
        set_text_role(label, "note")
        editor.setAccessibleName(f"Count in: {_LABELS[key].lower()}")
        if key in _WIDTHS:
            editor.setFixedWidth(_WIDTHS[key])
        held = QVBoxLayout()
        held.setSpacing(2)
        held.addWidget(label)
        held.addWidget(editor)
        return held

    def _every_line(self) -> list[QLineEdit]:
        edit = self.family.lineEdit()
        return [*self.lines.values(), *([edit] if edit else [])]

    def show_pack(
        self,
        pack: str,
        joints: tuple[Joint, ...],
        parts: tuple[str, ...],
        style: NumberStyle,
    ) -> None:
        """Take over the pack that is counted.

        Parameters
        ----------
        pack : str
            Its name.
        joints : tuple of Joint
            Its joints so far.
        parts : tuple of str
            Names of its parts, offered for what a joint joins.
        style : NumberStyle
            Decimal mark.
        """
        self._pack, self._joints, self._style = pack, joints, style
        model = self._parts.model()
        if isinstance(model, QStringListModel) and model.stringList() != list(parts):
            model.setStringList(list(parts))

    def begin(self) -> None:
        """Open with an empty entry."""
        self.show()
        self.taken("")

    def taken(self, said: str) -> None:
        """Clear for the next joint, keep the family, and say what was added."""
        for line in self.lines.values():
            line.clear()
        self._allow_length()
        self._say(said or _HINT, wrong=False)
        self.family.setFocus()
        edit = self.family.lineEdit()
        if edit is not None:
            edit.selectAll()

    def show_problem(self, problem: Problem) -> None:
        """Say why the joint cannot be added; nothing that was typed is lost."""
        self._say(f"{problem.what} {problem.remedy}".strip(), wrong=True)
        title = problem.column.partition(" [")[0]
        keys = {"mass each": "mass", "joint": "designation"}
        line = self.lines.get(keys.get(title, title))
        target: QWidget = self.family if line is None else line
        target.setFocus()
        if line is not None:
            line.selectAll()

    def show_preview(self, text: str) -> None:
        """Say what would be added as the fields stand."""
        self._say(text or _HINT, wrong=False)

    def joint(self) -> Joint:
        """Give what the fields say; raises a `DataError` where they cannot be read."""
        return counted_joint(self.texts(), self._pack, self._joints, self._style)

    def texts(self) -> CountedTexts:
        """Give what stands in the fields."""
        texts = {key: line.text() for key, line in self.lines.items()}
        return CountedTexts(family=self.family.currentText(), **texts)

    def _say(self, text: str, *, wrong: bool) -> None:
        self._wrong = wrong
        self._recolour()
        self.note.setText(unbroken(text))
        self.note.setAccessibleName(text)

    def _recolour(self) -> None:
        colour = theme().roles.fail if self._wrong else theme().roles.second
        self.note.setStyleSheet(f"color: {colour};")

    def _on_text_changed(self) -> None:
        self._allow_length()
        if not self.lines["designation"].text() and not self.lines["count"].text():
            self.typed.emit(None)
            return
        try:
            joint = self.joint()
        except DataError:
            self.typed.emit(None)
            return
        self.typed.emit(joint)

    def _allow_length(self) -> None:
        """Leave the length out for joints that are counted in pieces."""
        family, _ = read_family(self.texts())
        is_line = family is not None and family.counted is Counted.LINE
        self.lines["length"].setEnabled(is_line)

    def _on_enter(self) -> None:
        if is_choosing(self.lines["joins"]):
            return
        popup = self._parts.popup()
        if popup is not None:
            popup.hide()
        self.family.setEditText(meant_family(self.family.currentText()))
        try:
            joint = self.joint()
        except DataError as error:
            self.show_problem(error.problems[0])
            return
        self.family.setEditText(joint.family)
        self.counted.emit(joint)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Leave on Esc."""
        if event.key() == Qt.Key.Key_Escape:
            self.hide()
            self.left.emit()
        elif event.key() not in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            super().keyPressEvent(event)
