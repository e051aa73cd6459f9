"""The busbar calculator: what a conductor carries, how it grows, what a short does."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtGui import QGuiApplication, QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QApplication,
    QDialog,
    QFrame,
    QHBoxLayout,
    QLineEdit,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from benchpack.model.part import Part
from benchpack.report.busbar_text import CAUTION, busbar_lines
from benchpack.report.display import number_style
from benchpack.report.explanation import explanation_table
from benchpack.results.busbar import BusbarTrial, prefilled, with_conductor
from benchpack.results.busbar_conductors import (
    Conductor,
    conductors,
    is_conductor,
    metal_of,
)
from benchpack.results.busbar_fields import TRIAL_FIELD
from benchpack.results.busbar_figures import BusbarFigures, busbar_figures
from benchpack.results.figure import Figure
from benchpack.ui.dialogs.busbar_entry import shown_figure, typed_trial
from benchpack.ui.dialogs.busbar_explanation import BusbarExplanation
from benchpack.ui.dialogs.busbar_lines import BusbarLines
from benchpack.ui.dialogs.frame import FormRows, in_a_row
from benchpack.ui.tables.choice_box import ChoiceBox
from benchpack.ui.widgets.controls import (
    hairline,
    named,
    place_beside,
    plain_button,
    text_label,
)
from benchpack.ui.workspace import Workspace
from benchpack.units.labels import screen_label

_OWN = "own figures"
_LEGS = {1: "offset, one leg", 2: "U-loop, two legs"}
_GROUPS: tuple[tuple[str, tuple[tuple[str, str], ...]], ...] = (
    (
        "",
        (
            ("length_mm", "Length"),
            ("width_mm", "Width"),
            ("thickness_mm", "Thickness"),
            ("foils", "Foils"),
            ("current_a", "Steady current"),
        ),
    ),
    (
        "Growth",
        (
            ("rise_k", "Temperature rise"),
            ("leg_mm", "Leg"),
            ("allowed_stress_mpa", "Allowed stress"),
        ),
    ),
    (
        "Short circuit",
        (
            ("fault_current_a", "Peak current"),
            ("distance_mm", "Distance"),
            ("duration_s", "Duration"),
        ),
    ),
)
_OF_PART = ("length_mm", "width_mm", "thickness_mm", "foils")
_PLACEHOLDERS = {"leg_mm": "shortest", "current_a": "none"}
_FIELD_WIDTH = 96
_FORM_WIDTH = 384
_SIZE, _LEAST_SIZE = (960, 672), (860, 420)


class BusbarDialog(QDialog):
    """Works out the figures of a busbar while they are typed; changes no record.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    parent : QWidget, optional
        The window it belongs to.
    pack : str
        The pack whose conductors are offered; by default the one that is selected.
    part : str
        The part it is filled from; by default the first that is a busbar.
    """

    def __init__(
        self,
        workspace: Workspace,
        parent: QWidget | None = None,
        *,
        pack: str = "",
        part: str = "",
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Busbar figures")
        named(self, "Busbar figures")
        self.workspace = workspace
        self._library = workspace.state.library
        self._style = number_style(workspace.results.study)
        study = workspace.state.study
        pack = pack or workspace.selection or study.subject
        self._parts = _offered(self._library.parts_of(pack), part)
        self._base = BusbarTrial()
        self._figures: BusbarFigures | None = None
        self._explained = "ampacity"
        self.part_box = named(ChoiceBox(), "Part")
        self.metal_box = named(ChoiceBox(), "Material")
        self.legs_box = named(ChoiceBox(), "Kind of offset")
        self.fields: dict[str, QLineEdit] = {}
        self.rows: list[FormRows] = []
        self.notes = text_label("", "note")
        self.lines = BusbarLines()
        self.copy_button = plain_button("Copy", "Copy all figures at full precision")
        self.close_button = plain_button("Close", "Close (Esc)")
        self._fill_boxes()
        self._lay_out()
        self._show_base()
        at = next((i for i, p in enumerate(self._parts) if p.name == part), None)
        if at is None:
            at = next((i for i, p in enumerate(self._parts) if p.length_mm), None)
        self.part_box.setCurrentIndex(0 if at is None else at + 1)
        self._on_part_chosen()
        self._connect()
        empty = (self.fields[name] for name in _OF_PART)
        first = next((line for line in empty if not line.text()), None)
        (first or self.fields["length_mm"]).setFocus()

    def _fill_boxes(self) -> None:
        self.part_box.addItems([_OWN, *(part.name for part in self._parts)])
        self._metals = list(conductors(self._library))
        self.metal_box.addItems([metal.name for metal in self._metals])
        for legs, words in _LEGS.items():
            self.legs_box.addItem(words, legs)
        for box in (self.part_box, self.metal_box):
            box.setMinimumContentsLength(12)
            box.setSizeAdjustPolicy(
                ChoiceBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
            )

    def _lay_out(self) -> None:
        form = QVBoxLayout()
        form.setContentsMargins(0, 0, 8, 0)
        form.setSpacing(4)
        first = FormRows()
        first.add_row("part", "Part", field=self.part_box)
        first.add_row("metal", "Material", field=self.metal_box)
        form.addWidget(first)
        form.addWidget(self.notes)
        form.addSpacing(6)
        for heading, names in _GROUPS:
            if heading:
                form.addSpacing(4)
                form.addWidget(text_label(heading, "strong"))
            form.addWidget(self._made_rows(names))
        form.addStretch(1)
        sides = QHBoxLayout()
        sides.setSpacing(24)
        sides.addWidget(_scrolled(form, "Inputs of the busbar", width=_FORM_WIDTH))
        figures = QVBoxLayout()
        figures.setContentsMargins(0, 0, 8, 0)
        figures.addWidget(self.lines)
        sides.addWidget(_scrolled(figures, "Figures of the busbar"), 1)
        buttons = QHBoxLayout()
        buttons.setSpacing(8)
        buttons.addWidget(text_label(CAUTION, "note"), 1)
        buttons.addSpacing(16)
        buttons.addWidget(self.copy_button)
        buttons.addWidget(self.close_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 24, 16, 16)
        column.setSpacing(12)
        column.addLayout(sides, 1)
        column.addWidget(hairline())
        column.addLayout(buttons)
        self.setMinimumSize(*_LEAST_SIZE)
        self.resize(QSize(*_SIZE).boundedTo(self.screen().availableSize()))

    def _made_rows(self, names: tuple[tuple[str, str], ...]) -> FormRows:
        rows = FormRows()
        for name, label in names:
            field = TRIAL_FIELD[name]
            line = named(QLineEdit(), field.header())
            line.setAlignment(Qt.AlignmentFlag.AlignRight)
            line.setFixedWidth(_FIELD_WIDTH)
            line.setPlaceholderText(_PLACEHOLDERS.get(name, ""))
            unit = text_label(screen_label(field.unit))
            rows.add_row(
                name,
                label,
                field=in_a_row(line, unit),
                tip=field.help,
                focus=line,
            )
            self.fields[name] = line
            if name == "rise_k":
                rows.add_row("legs", "Offset", field=self.legs_box)
        self.rows.append(rows)
        return rows

    def _connect(self) -> None:
        for line in self.fields.values():
            line.textChanged.connect(self._on_edited)
        self.part_box.currentIndexChanged.connect(self._on_part_chosen)
        self.metal_box.currentIndexChanged.connect(self._on_metal_chosen)
        self.legs_box.currentIndexChanged.connect(self._on_edited)
        self.lines.explain_requested.connect(self.explain)
        self.copy_button.clicked.connect(self.copy_figures)
        self.close_button.clicked.connect(self.close)
        shortcut = QShortcut(QKeySequence("F1"), self)
        shortcut.activated.connect(self._on_explain_requested)

    def trial(self) -> BusbarTrial:
        """Give the busbar that stands in the fields."""
        texts = {name: line.text() for name, line in self.fields.items()}
        mark = self._style.decimal_mark
        base = replace(self._base, legs=self.legs_box.currentData())
        typed = typed_trial(base, texts, decimal_mark=mark)
        for rows in self.rows:
            rows.show_errors(dict(typed.errors))
        return typed.trial

    def _show_base(self, names: tuple[str, ...] = tuple(TRIAL_FIELD)) -> None:
        """Show figures of the busbar the fields are filled from, by attribute."""
        for name in names:
            value = getattr(self._base, name)
            text = shown_figure(value, decimal_mark=self._style.decimal_mark)
            self.fields[name].setText(text)

    def _on_part_chosen(self) -> None:
        at = self.part_box.currentIndex() - 1
        self.notes.setText("")
        if at >= 0:
            filled = prefilled(self._parts[at], self._library)
            known_by = {**self._base.known_by, **filled.trial.known_by}
            changes = {name: getattr(filled.trial, name) for name in _OF_PART}
            self._base = replace(self._base, **changes, known_by=known_by)
            self._show_base(_OF_PART)
            self.notes.setText(" ".join(filled.notes))
            self._choose_metal(filled.trial.conductor)
        self.notes.setVisible(bool(self.notes.text()))
        self._refresh()

    def _choose_metal(self, metal: Conductor) -> None:
        names = [one.name for one in self._metals]
        if metal.name not in names:
            self._metals.append(metal)
            self.metal_box.addItem(metal.name)
            names.append(metal.name)
        self.metal_box.setCurrentIndex(names.index(metal.name))
        self._on_metal_chosen()

    def _on_metal_chosen(self) -> None:
        line = self.fields["allowed_stress_mpa"]
        shown = shown_figure(
            self._base.allowed_stress_mpa, decimal_mark=self._style.decimal_mark
        )
        metal = self._metals[self.metal_box.currentIndex()]
        if line.text().strip() == shown:
            self._base = with_conductor(self._base, metal)
            self._show_base(("allowed_stress_mpa",))
        else:
            self._base = replace(self._base, conductor=metal)
        self._refresh()

    def _on_edited(self) -> None:
        self._refresh()

    def _refresh(self) -> None:
        self._figures = busbar_figures(self.trial())
        self.lines.show_lines(busbar_lines(self._figures, style=self._style))
        panel = self.findChild(BusbarExplanation)
        if panel is not None and panel.isVisible():
            self._show_explained(panel)

    def _on_explain_requested(self) -> None:
        figure = self.lines.figure_of(QApplication.focusWidget())
        if figure is None and self._figures is not None:
            figure = self._figures.ampacity
        if figure is not None:
            self.explain(figure)

    def explain(self, figure: Figure) -> None:
        """Say where a figure comes from, in a panel beside it."""
        self._explained = figure.key
        panel = self.findChild(BusbarExplanation) or BusbarExplanation(
            self.workspace, self
        )
        self._show_explained(panel)
        if not panel.isVisible():
            shown = self.lines.button_of(figure.key)
            anchor = QRect(shown.mapToGlobal(QPoint(0, 0)), shown.size())
            around = self.screen().availableGeometry()
            panel.move(place_beside(anchor, panel.rect(), around))
        panel.show()
        panel.raise_()
        panel.activateWindow()

    def _show_explained(self, panel: BusbarExplanation) -> None:
        every = self._figures.every() if self._figures is not None else ()
        for figure in every:
            if figure.key == self._explained:
                panel.show_figure(figure, style=self._style)

    def copy_figures(self) -> None:
        """Put all figures with their inputs on the clipboard as tab-separated text."""
        if self._figures is None:
            return
        tables = [explanation_table(figure) for figure in self._figures.every()]
        texts = ["\n".join("\t".join(row) for row in table) for table in tables]
        QGuiApplication.clipboard().setText("\n\n".join(texts))
        self.workspace.notifier.say("Copied: the figures of the busbar")


def _offered(parts: tuple[Part, ...], wanted: str) -> list[Part]:
    """Give the parts of copper and aluminium that conduct, and the one asked for."""
    return [
        part
        for part in parts
        if part.name == wanted or (is_conductor(part) and metal_of(part.material))
    ]


def _scrolled(content: QVBoxLayout, name: str, *, width: int = 0) -> QScrollArea:
    holder = QWidget()
    holder.setLayout(content)
    area = named(QScrollArea(), name)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setWidgetResizable(True)
    area.setWidget(holder)
    if width:
        area.setFixedWidth(width)
    return area


def open_busbar(
    workspace: Workspace, parent: QWidget, *, pack: str = "", part: str = ""
) -> BusbarDialog:
    """Open the calculator over a window, filled from a part.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    parent : QWidget
        The window it belongs to.
    pack, part : str
        As for `BusbarDialog`.
    """
    dialog = BusbarDialog(workspace, parent, pack=pack, part=part)
    dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    dialog.open()
    return dialog
