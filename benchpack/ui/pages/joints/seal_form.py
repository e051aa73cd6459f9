"""The form in which a seal line is tried out."""

from __future__ import annotations

import math
from dataclasses import replace

from PySide6.QtCore import QSignalBlocker, Signal
from PySide6.QtWidgets import QCheckBox, QVBoxLayout, QWidget

from benchpack.calc.seal_line import least_joint_count
from benchpack.model.families import GASKET_KINDS, GasketKind
from benchpack.model.library import Library
from benchpack.model.material import Material
from benchpack.results.seal import SealTrial
from benchpack.results.seal_rows import BONDING
from benchpack.results.wording import Wording, listed
from benchpack.ui.dialogs.frame import FormRows, in_a_row
from benchpack.ui.pages.joints.seal_choices import ChoiceBox, MaterialBox
from benchpack.ui.pages.joints.seal_fields import (
    FIELDS,
    FLANGE,
    GASKET,
    GROUPS,
    LINE,
    PITCH,
    SealField,
    cross_errors,
    made_field,
    read_field,
)
from benchpack.ui.theme import SPACE_AROUND
from benchpack.ui.widgets.controls import plain_tip, text_label

_PRESSED = ("pressure_low_mpa", "pressure_high_mpa", "allowed_loss_mm")
_SPECS = {spec.key: spec for spec in FIELDS}


class SealForm(QWidget):
    """Fields for flange, gasket and line.

    Signals
    -------
    edited()
        The person changed something.
    """

    edited = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.material = MaterialBox()
        self.kind = ChoiceBox("Kind of gasket", own="own figures")
        self.kind.offer([(kind.name, kind) for kind in GASKET_KINDS])
        self.stiffened = QCheckBox()
        self.fields = {spec.key: made_field(spec) for spec in (*FIELDS, PITCH)}
        self.rows = {group: FormRows() for group in GROUPS}
        self.heads = {group: text_label(group, "strong") for group in GROUPS}
        self._mark = "."
        self._start = SealTrial()
        self._lay_out()
        self.material.activated.connect(self._on_material_chosen)
        self.kind.activated.connect(self._on_kind_chosen)
        self.stiffened.toggled.connect(self.edited)
        for key, field in self.fields.items():
            field.textEdited.connect(
                {
                    "modulus_mpa": self._on_modulus_edited,
                    **dict.fromkeys(_PRESSED, self._on_pressure_edited),
                    **dict.fromkeys(("count", "length_mm"), self._on_count_edited),
                    "pitch_mm": self._on_pitch_edited,
                }.get(key, self._on_edited)
            )

    def _lay_out(self) -> None:
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(8)
        for group in GROUPS:
            # A widget that has its place before it is filled is styled but once.
            layout.addWidget(self.heads[group])
            layout.addWidget(self.rows[group])
            self._fill(group)
            if group == FLANGE:
                layout.addWidget(self.stiffened)
            if group != LINE:
                layout.addSpacing(SPACE_AROUND - 8)
        layout.addStretch(1)

    def _fill(self, group: str) -> None:
        if group == FLANGE:
            self.rows[group].add_row("material", "Material", field=self.material)
        elif group == GASKET:
            self.rows[group].add_row("kind", "Kind", field=self.kind)
        for spec in FIELDS:
            if spec.group == group:
                self._add(spec)
            if spec.group == group and spec.key == "count":
                self._add(PITCH)

    def _add(self, spec: SealField) -> None:
        field = self.fields[spec.key]
        unit = text_label(spec.unit)
        unit.setWordWrap(False)
        self.rows[spec.group].add_row(
            spec.key, spec.label, field=in_a_row(field, unit), tip=spec.tip, focus=field
        )

    def show_library(self, library: Library, *, wording: Wording) -> None:
        """Offer the materials of a library; figures are written as told."""
        self._mark = wording.style.decimal_mark
        self.material.show_materials(library.materials, wording=wording)

    def show_trial(
        self,
        trial: SealTrial,
        *,
        flange: str,
        material: str,
        kind: GasketKind | None,
        stiffeners: tuple[str, ...],
    ) -> None:
        """Fill the fields.

        Parameters
        ----------
        trial : SealTrial
            What the fields start from.
        flange, material : str
            Name of the part that bends, and of its material.
        kind : GasketKind or None
            Kind of gasket, None for figures of one's own.
        stiffeners : tuple of str
            Names of the parts that bend with it.
        """
        self._start = trial
        self.heads[FLANGE].setText(f"{FLANGE}: {flange}" if flange else FLANGE)
        self.material.choose_name(material)
        self.kind.choose(0 if kind is None else 1 + GASKET_KINDS.index(kind))
        for spec in FIELDS:
            self._show(spec, getattr(trial, spec.key))
        self._show_modulus(trial.modulus_mpa)
        self._show_pitch()
        self.stiffened.setVisible(bool(stiffeners))
        words = f"Stiffened by {listed(stiffeners)}"
        self.stiffened.setText(words.replace("&", "&&"))
        self.stiffened.setToolTip(plain_tip(words))
        with QSignalBlocker(self.stiffened):
            self.stiffened.setChecked(trial.added_n_mm > 0)
        self._show_errors({})

    def trial(self) -> SealTrial:
        """Give what stands in the fields; what is empty or wrong is NaN."""
        values, errors = self._values()
        self._show_errors(errors)
        count = values.pop("count")
        known = {key: value for key, value in values.items() if key not in errors}
        return replace(
            self._start,
            **dict.fromkeys(values, math.nan) | known,
            count=None if math.isnan(count) else int(count),
            added_n_mm=self._start.added_n_mm if self.stiffened.isChecked() else 0.0,
            bonds=self.chosen_kind in BONDING,
        )

    @property
    def chosen_kind(self) -> GasketKind | None:
        """The kind of gasket that is chosen, None for figures of one's own."""
        chosen = self.kind.currentData()
        return chosen if isinstance(chosen, GasketKind) else None

    @property
    def chosen_material(self) -> Material | None:
        """The material that is chosen, None for a modulus of one's own."""
        return self.material.material

    def _values(self) -> tuple[dict[str, float], dict[str, str]]:
        values: dict[str, float] = {}
        errors: dict[str, str] = {}
        for spec in FIELDS:
            number, error = read_field(
                spec, self.fields[spec.key], decimal_mark=self._mark
            )
            values[spec.key] = number
            if error:
                errors[spec.key] = error
        _, wrong = read_field(PITCH, self.fields[PITCH.key], decimal_mark=self._mark)
        if wrong:
            errors[PITCH.key] = wrong
        return values, errors | cross_errors(values)

    def _show_errors(self, errors: dict[str, str]) -> None:
        for rows in self.rows.values():
            rows.show_errors(errors)

    def _show(self, spec: SealField, value: float | None) -> None:
        known = None if value is None or math.isnan(value) else value
        self.fields[spec.key].show_number(
            known, decimal_mark=self._mark, factor=spec.factor
        )

    def _show_modulus(self, modulus_mpa: float) -> None:
        # A product of two figures of a data sheet has no digits to go on with.
        self._show(_SPECS["modulus_mpa"], float(f"{modulus_mpa:.4g}"))

    def _show_pitch(self) -> None:
        """Write the pitch that the screws have."""
        values, _ = self._values()
        pitch = values["length_mm"] / values["count"]
        self._show(PITCH, pitch if math.isnan(pitch) else round(pitch, 1))

    def _on_material_chosen(self) -> None:
        modulus_mpa = self.material.modulus_mpa
        if not math.isnan(modulus_mpa):
            self._show_modulus(modulus_mpa)
        self.edited.emit()

    def _on_kind_chosen(self) -> None:
        kind = self.chosen_kind
        if kind is not None:
            for key in _PRESSED:
                self._show(_SPECS[key], getattr(kind, key))
        self.edited.emit()

    def _on_modulus_edited(self) -> None:
        self.material.choose(0)
        self.edited.emit()

    def _on_pressure_edited(self) -> None:
        self.kind.choose(0)
        self.edited.emit()

    def _on_count_edited(self) -> None:
        self._show_pitch()
        self.edited.emit()

    def _on_pitch_edited(self) -> None:
        pitch, _ = read_field(PITCH, self.fields[PITCH.key], decimal_mark=self._mark)
        values, _ = self._values()
        count = float(least_joint_count(values["length_mm"], pitch))
        self._show(_SPECS["count"], count)
        self.edited.emit()

    def _on_edited(self) -> None:
        self.edited.emit()
