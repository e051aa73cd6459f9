"""Taking in a loose table: what its columns mean, what comes of it, where it goes."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QCheckBox,
    QComboBox,
    QGridLayout,
    QRadioButton,
    QSplitter,
    QWidget,
)

from benchpack.files.mapping import suggest_mapping
from benchpack.files.sheet import Sheet
from benchpack.report.display import number_style
from benchpack.ui.dialogs.frame import ErrorLabel, FormDialog, in_a_row
from benchpack.ui.dialogs.import_columns import ColumnsField
from benchpack.ui.dialogs.import_plan import (
    FIELDS,
    PACKS,
    Plan,
    record_names,
    suggest_plan,
)
from benchpack.ui.dialogs.import_preview import Preview, Sample, preview_of, sample_of
from benchpack.ui.dialogs.import_words import (
    about_text,
    counted,
    found_marks,
    goal_text,
    preview_sentence,
)
from benchpack.ui.dialogs.preview_table import PreviewTable, PreviewTableModel
from benchpack.ui.dialogs.taking_in import TableIntake, fail
from benchpack.ui.tasks import Token
from benchpack.ui.widgets.controls import named, text_label
from benchpack.ui.workspace import Workspace

PREVIEW_KEY = "import preview"


class ImportDialog(FormDialog):
    """Asks how a table is to be read; Enter takes it as it is proposed.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    path : Path
        The file.
    sheet : Sheet
        Its table.
    parent : QWidget, optional
        The window it belongs to.

    Signals
    -------
    sheet_wanted(str)
        Another sheet of the workbook is to be shown.
    """

    sheet_wanted = Signal(str)

    def __init__(
        self,
        workspace: Workspace,
        path: Path,
        *,
        sheet: Sheet,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(f"Take in {path.name}", "Add", parent=parent)
        self.workspace = workspace
        self.path = path
        self._packs = frozenset(workspace.state.library.packs.names.tolist())
        self._about = text_label(role="note")
        self._sheets = named(QComboBox(), "Sheet of the workbook")
        self._kind = named(QComboBox(), "What the table holds")
        self._decimal = named(QComboBox(), "Decimal mark")
        self.columns_field = ColumnsField()
        self._model = PreviewTableModel()
        self.preview_table = PreviewTable(self._model)
        self._count = text_label()
        self._error = ErrorLabel()
        self._to_open = QRadioButton("Add to this library")
        self._to_new = QRadioButton("Open as a new library")
        self._replace = QCheckBox("Replace packs of the same name")
        self._goal = text_label(role="note")
        self._lay_out()
        self._connect()
        self.show_sheet(sheet)
        room = self.screen().availableGeometry().size()
        self.resize(QSize(960, 700).boundedTo(room - QSize(48, 64)))
        self.accept_button.setFocus()

    def _lay_out(self) -> None:
        choices = QGridLayout()
        choices.setHorizontalSpacing(16)
        self._sheets_label = text_label("Sheet", "note")
        for column, (label, box) in enumerate(
            (
                (self._sheets_label, self._sheets),
                (text_label("The table holds", "note"), self._kind),
                (text_label("Decimal mark", "note"), self._decimal),
            )
        ):
            choices.addWidget(label, 0, column)
            choices.addWidget(box, 1, column)
        choices.setColumnStretch(3, 1)
        self._kind.addItems(list(FIELDS))
        parts = QSplitter(Qt.Orientation.Vertical)
        parts.setChildrenCollapsible(False)
        parts.setHandleWidth(12)
        parts.setStyleSheet("QSplitter::handle { background: transparent; }")
        parts.addWidget(self.columns_field)
        parts.addWidget(self.preview_table)
        self.body.setSpacing(12)
        self.body.addWidget(text_label(self.path.name, "section"))
        self.body.addWidget(self._about)
        self.body.addLayout(choices)
        self.body.addWidget(parts, 1)
        self.body.addWidget(self._error)
        self.body.addWidget(self._count)
        self._goals = QButtonGroup(self)
        self._goals.addButton(self._to_open)
        self._goals.addButton(self._to_new)
        self._to_open.setChecked(True)
        self.body.addWidget(in_a_row(self._to_open, self._replace))
        self._new_row = in_a_row(self._to_new)
        self.body.addWidget(self._new_row)
        self.body.addWidget(self._goal)

    def _connect(self) -> None:
        self._sheets.activated.connect(self._on_sheet_activated)
        self._kind.activated.connect(self._on_kind_activated)
        self._decimal.activated.connect(self._on_decimal_activated)
        self.columns_field.plan_changed.connect(self._on_plan_changed)
        self._to_open.toggled.connect(self._on_goal_changed)
        self._replace.toggled.connect(self._on_goal_changed)

    @property
    def plan(self) -> Plan:
        """How the table will be read."""
        return self._plan

    def show_sheet(self, sheet: Sheet) -> None:
        """Show another table of the same file, read as its heads suggest."""
        self._sheet = sheet
        self._sample: Sample = sample_of(sheet)
        self._about.setText(about_text(sheet))
        self._sheets.clear()
        self._sheets.addItems(list(sheet.sheet_names))
        self._sheets.setCurrentText(sheet.name)
        several = len(sheet.sheet_names) > 1
        self._sheets.setVisible(several)
        self._sheets_label.setVisible(several)
        self._decimal.clear()
        found = f"as found: {found_marks(self._sample.sheet)}"
        for words, mark in ((found, None), ("point", "."), ("comma", ",")):
            self._decimal.addItem(words, mark)
        plan = suggest_plan(sheet, pack=self.workspace.shown_pack())
        self._plan = self._with_goal(plan)
        self._kind.setCurrentText(self._plan.kind)
        self.columns_field.show_sheet(self._sample.sheet, self._plan)
        self._refresh()

    def accept(self) -> None:
        """Read the whole table in the background and close."""
        if self._plan.fault():
            return
        intake = TableIntake(
            self.workspace, self.path, sheet=self._sheet, plan=self._plan
        )
        super().accept()
        intake.start()

    def done(self, result: int) -> None:
        """Stop the preview and close."""
        self.workspace.runner.cancel(PREVIEW_KEY)
        super().done(result)

    def _with_goal(self, plan: Plan) -> Plan:
        """Give the plan with where it goes; parts and joints need packs to go to."""
        are_packs = plan.kind == PACKS
        self._new_row.setVisible(are_packs)
        self._replace.setVisible(are_packs)
        if not are_packs:
            self._to_open.setChecked(True)
        as_new = self._to_new.isChecked()
        self._replace.setEnabled(not as_new)
        replaces = self._replace.isChecked() and not as_new
        return replace(plan, as_new=as_new, replace=replaces)

    def _on_sheet_activated(self, _index: int) -> None:
        self.sheet_wanted.emit(self._sheets.currentText())

    def _on_kind_activated(self, _index: int) -> None:
        kind = self._kind.currentText()
        mapping = suggest_mapping(self._sample.sheet, FIELDS[kind])
        plan = Plan(kind, mapping, self._plan.decimal, pack=self._plan.pack)
        self._plan = self._with_goal(plan)
        self.columns_field.show_plan(self._plan)
        self._refresh()

    def _on_decimal_activated(self, _index: int) -> None:
        self._plan = replace(self._plan, decimal=self._decimal.currentData())
        self._refresh()

    def _on_plan_changed(self, plan: Plan) -> None:
        self._plan = plan
        self._refresh()

    def _on_goal_changed(self) -> None:
        self._plan = self._with_goal(self._plan)
        self.columns_field.show_plan(self._plan)
        self._refresh()

    def _refresh(self) -> None:
        """Read the sample anew, unless the columns do not do yet."""
        fault = self._plan.fault()
        self._goal.setText(goal_text(self._plan))
        self._goal.setVisible(self._plan.kind != PACKS)
        self.accept_button.setEnabled(not fault)
        self._say_action("")
        if fault:
            self.workspace.runner.cancel(PREVIEW_KEY)
            self._error.show_error(fault)
            self._count.clear()
            self._model.show_preview(None, currency="")
            return
        self._error.show_error("")
        # Taken here: the worker must not read what the person goes on changing.
        study, sample, plan = self.workspace.state.study, self._sample, self._plan
        held = record_names(self.workspace.state.library, plan.kind)

        def read_sample(_token: Token) -> Preview:
            return preview_of(
                sample,
                plan,
                packs=self._packs,
                held=held,
                currency=None if plan.as_new else study.currency,
                style=number_style(study),
            )

        self.workspace.runner.start(
            PREVIEW_KEY, read_sample, done=self._show, failed=self._on_failed
        )

    def _show(self, preview: Preview) -> None:
        self._model.show_preview(preview, currency=self.workspace.state.study.currency)
        self._count.setText(preview_sentence(preview, self._plan))
        taken = preview.rows_read - preview.refused
        if preview.is_whole:
            self._say_action(counted(taken, self._plan.kind.removesuffix("s")))
            self.accept_button.setEnabled(taken > 0)

    def _say_action(self, what: str) -> None:
        verb = "Open with" if self._plan.as_new else "Add"
        self.accept_button.setText(f"{verb} {what or self._plan.kind}")

    def _on_failed(self, error: BaseException) -> None:
        fail(self.workspace, f"Not read: {self.path.name}", error)
