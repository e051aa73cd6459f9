"""The headline on top of every page: the choices, and the sentence they give."""

from __future__ import annotations

import html
from collections.abc import Callable

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QFrame,
    QHBoxLayout,
    QLabel,
    QSizePolicy,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from benchpack.calc.worth import worth_per_kg_from_lb, worth_per_lb_from_kg
from benchpack.model.words import Basis
from benchpack.report.headline import Sentence, headline, plain_text
from benchpack.session.document import Change
from benchpack.session.state import Changed, State
from benchpack.ui.assets import icon
from benchpack.ui.theme import SPACE_AROUND, SPACE_BETWEEN, theme
from benchpack.ui.widgets.pack_picker import PackPicker
from benchpack.ui.widgets.steady import Steady
from benchpack.ui.widgets.worth_box import WorthBox
from benchpack.ui.widgets.worth_slider import WorthSlider
from benchpack.ui.workspace import Workspace

_WORTH_LABEL = "worth of a kilogram"


class HeadlineBar(QFrame):
    """Subject, reference, basis and worth as controls, and the result as a sentence.

    Signals
    -------
    cautions_requested()
        The count of warnings was clicked.
    study_requested()
        The button for everything else about the study was clicked.
    """

    cautions_requested = Signal()
    study_requested = Signal()

    def __init__(self, workspace: Workspace) -> None:
        super().__init__()
        self.workspace = workspace
        self.subject = PackPicker("Subject")
        self.reference = PackPicker("Reference")
        self.basis = QComboBox()
        self.worth = WorthBox()
        self.slider = WorthSlider()
        self.sentence = QLabel()
        self.warnings = QToolButton()
        self.study_button = QToolButton()
        self._lay_out()
        self._connect()
        self._refresh(Changed.EVERYTHING)

    def _lay_out(self) -> None:
        self.basis.setAccessibleName("Basis of the gap")
        self.basis.addItems([str(basis) for basis in Basis])
        widest = max(map(self.basis.fontMetrics().horizontalAdvance, Basis))
        self.basis.setMinimumWidth(widest + 58)
        self.study_button.setIcon(icon("settings"))
        self.study_button.setAccessibleName("All choices of the study")
        self.study_button.setToolTip(
            "All choices of the study: peers, exponent, trend, share captured, target"
        )
        self.sentence.setWordWrap(True)
        self.sentence.setTextFormat(Qt.TextFormat.RichText)
        self.sentence.setTextInteractionFlags(
            Qt.TextInteractionFlag.LinksAccessibleByMouse
            | Qt.TextInteractionFlag.LinksAccessibleByKeyboard
            | Qt.TextInteractionFlag.TextSelectableByMouse
        )
        self.sentence.setAlignment(
            Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop
        )
        self.sentence.setSizePolicy(
            QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum
        )
        self.sentence.setAccessibleName("Result")
        self.warnings.setAutoRaise(True)
        self.warnings.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.warnings.setIcon(icon("warning", "look"))
        self.warnings.setIconSize(QSize(16, 16))
        self.warnings.setAccessibleName("Warnings")

        choices = QHBoxLayout()
        choices.setSpacing(SPACE_BETWEEN)
        for word, widget, stretch in (
            ("", self.subject, 0),
            ("against", self.reference, 0),
            ("counted", self.basis, 0),
            ("worth", self.worth, 0),
            ("", self.slider, 0),
            ("", self.study_button, 0),
        ):
            if word:
                label = QLabel(word)
                label.setProperty("textRole", "note")
                choices.addWidget(label)
            choices.addWidget(widget, stretch)

        result = QHBoxLayout()
        result.setSpacing(SPACE_AROUND)
        # Two lines are kept free so that the page does not jump while dragging.
        result.addWidget(Steady(self.sentence, least_lines=2), 1)
        result.addWidget(self.warnings, 0, Qt.AlignmentFlag.AlignTop)

        layout = QVBoxLayout(self)
        layout.setContentsMargins(
            SPACE_AROUND, SPACE_BETWEEN, SPACE_AROUND, SPACE_BETWEEN
        )
        layout.setSpacing(SPACE_BETWEEN)
        layout.addLayout(choices)
        layout.addLayout(result)

    def _connect(self) -> None:
        self.subject.picked.connect(self._on_subject_picked)
        self.reference.picked.connect(self._on_reference_picked)
        self.basis.activated.connect(self._on_basis_activated)
        self.worth.valueChanged.connect(self._on_worth_typed)
        self.slider.moved.connect(self._on_slider_moved)
        self.slider.released.connect(self._on_slider_released)
        self.sentence.linkActivated.connect(self._on_link_activated)
        self.warnings.clicked.connect(self.cautions_requested)
        self.study_button.clicked.connect(self.study_requested)
        self.workspace.changed.connect(self._on_changed)
        self.workspace.opened.connect(self._on_opened)
        theme().theme_changed.connect(self._show_sentence)

    def focus_order(self) -> tuple[QWidget, ...]:
        """Give the controls in the order in which Tab should reach them."""
        return (
            self.subject,
            self.reference,
            self.basis,
            self.worth,
            self.slider,
            self.study_button,
            self.sentence,
            self.warnings,
        )

    def text(self) -> str:
        """Give the sentence as it reads."""
        return plain_text(headline(self.workspace.results))

    def _refresh(self, changed: Changed) -> None:
        results = self.workspace.results
        study = results.study
        if changed & Changed.PACKS:
            names = results.library.packs.names.tolist()
            self.subject.show_names(names)
            self.reference.show_names(names)
        self.subject.show_name(study.subject)
        self.reference.show_name(study.reference)
        self.basis.setCurrentText(str(study.basis))
        self._show_worth()
        self._show_sentence()
        self._show_warnings()

    def _per_unit(self, worth_per_kg: float) -> float:
        if self.workspace.results.study.mass_unit == "lb":
            return float(worth_per_lb_from_kg(worth_per_kg))
        return worth_per_kg

    def _per_kg(self, worth: float) -> float:
        if self.workspace.results.study.mass_unit == "lb":
            return float(worth_per_kg_from_lb(worth))
        return worth

    def _show_worth(self) -> None:
        study = self.workspace.results.study
        self.worth.show_worth(
            self._per_unit(study.worth_likely_per_kg),
            unit=f"{study.currency}/{study.mass_unit}",
            decimal_mark=study.decimal_mark,
        )
        self.slider.show_worths(*map(self._per_unit, study.worth_per_kg))

    def _show_sentence(self) -> None:
        sentence = headline(self.workspace.results)
        self.sentence.setText(_rich(sentence, theme().roles.text))
        self.sentence.setAccessibleDescription(plain_text(sentence))

    def _show_warnings(self) -> None:
        count = len(self.workspace.results.cautions)
        self.warnings.setVisible(count > 0)
        self.warnings.setText(f"{count} warning{'' if count == 1 else 's'}")
        self.warnings.setToolTip("What to know before the figures are trusted")

    def _edit(self, label: str, change: Callable[[State], State]) -> None:
        self.workspace.edit(label, change)
        self._refresh(Changed.STUDY)

    def _on_changed(self, change: Change) -> None:
        if change.passing:
            self._show_worth()
            self._show_sentence()
        else:
            self._refresh(change.changed)

    def _on_opened(self) -> None:
        self._refresh(Changed.EVERYTHING)

    def _on_subject_picked(self, name: str) -> None:
        study = self.workspace.state.study
        reference = study.reference if name != study.reference else study.subject

        def change(state: State) -> State:
            return state.with_study(subject=name, reference=reference)

        self._edit(f"subject {name}", change)

    def _on_reference_picked(self, name: str) -> None:
        study = self.workspace.state.study
        subject = study.subject if name != study.subject else study.reference

        def change(state: State) -> State:
            return state.with_study(subject=subject, reference=name)

        self._edit(f"reference {name}", change)

    def _on_basis_activated(self, index: int) -> None:
        basis = Basis(self.basis.itemText(index))

        def change(state: State) -> State:
            return state.with_study(basis=basis)

        self._edit(f"basis {basis}", change)

    def _on_worth_typed(self, shown: float) -> None:
        likely = self._per_kg(shown)

        def change(state: State) -> State:
            low, _, high = state.study.worth_per_kg
            return state.with_study(
                worth_low_per_kg=min(low, likely),
                worth_likely_per_kg=likely,
                worth_high_per_kg=max(high, likely),
            )

        self._edit(_WORTH_LABEL, change)

    def _on_slider_moved(self, low: float, likely: float, high: float) -> None:
        worths = {
            "worth_low_per_kg": self._per_kg(low),
            "worth_likely_per_kg": self._per_kg(likely),
            "worth_high_per_kg": self._per_kg(high),
        }

        def change(state: State) -> State:
            return state.with_study(**worths)

        self.workspace.preview(_WORTH_LABEL, change)

    def _on_slider_released(self) -> None:
        self.workspace.settle(_WORTH_LABEL)
        self._show_worth()

    def _on_link_activated(self, key: str) -> None:
        self.workspace.explain_requested.emit(key, "")


def _rich(sentence: Sentence, text_colour: str) -> str:
    """Give a sentence with its figures as links that look like figures."""
    pieces = []
    for piece in sentence:
        text = html.escape(piece.text)
        if piece.key:
            style = f"color:{text_colour}; font-weight:600; text-decoration:none;"
            text = f'<a href="{html.escape(piece.key)}" style="{style}">{text}</a>'
        pieces.append(text)
    return "".join(pieces)
