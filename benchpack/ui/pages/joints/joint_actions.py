"""What can be done with the joints of the pack that is shown."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QFileDialog, QWidget

from benchpack.errors import BenchpackError, CancelledError, Problem
from benchpack.model.joint import JOINT_FIELDS, Joint
from benchpack.session.opening import file_stem
from benchpack.ui.export.endings import with_ending
from benchpack.ui.forms.record_dialog import RecordDialog
from benchpack.ui.pages.joints.joint_table import JointTable
from benchpack.ui.pages.joints.pack_joints import PackJoints
from benchpack.ui.tables.columns import TableColumn
from benchpack.ui.tasks import Token
from benchpack.ui.widgets.key_text import key_text
from benchpack.ui.workspace import Workspace

Entry = tuple[str, str, Callable[[], None]]
_TITLES = {field.name: field.title for field in JOINT_FIELDS}
_PLACES = {field.name: place for place, field in enumerate(JOINT_FIELDS)}


class JointActions(QObject):
    """Adds, edits, removes and exports joints, and shows the parts they hold.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    table : JointTable
        Where joints are selected.
    joints : PackJoints
        Where edits go.
    page : QWidget
        What dialogs belong to.
    """

    def __init__(
        self,
        workspace: Workspace,
        table: JointTable,
        joints: PackJoints,
        page: QWidget,
    ) -> None:
        super().__init__(page)
        self._workspace = workspace
        self._table = table
        self._joints = joints
        self._page = page

    def entries(self) -> list[Entry]:
        """Give what the context menu offers: words, key and the call."""
        return [
            ("Add joint", "Ctrl+Shift+N", self.add_joint),
            ("Edit joint", "Ctrl+Return", self.edit_joint),
            ("Remove", "Ctrl+Shift+Del", self.remove_joints),
            ("Show part", "Ctrl+Shift+P", self.show_part),
        ]

    def add_joint(self) -> None:
        """Ask for a new joint."""
        if not self._joints.pack:
            return
        dialog = self._dialog("Add joint", self._added)
        dialog.show_record(Joint(self._joints.pack, "new joint"))
        dialog.form.rows["name"].set_text("")
        dialog.open()
        dialog.form.focus_field("name")

    def edit_joint(self) -> None:
        """Ask for all fields of the current joint."""
        joint = self._table.current_joint()
        if joint is None:
            return

        def changed(values: Mapping[str, Any]) -> tuple[Problem, ...]:
            new = {k: v for k, v in values.items() if v != getattr(joint, k)}
            if new.get("count", 1) is None:
                new["count"] = 1
            what = _TITLES[next(iter(new))] if len(new) == 1 else "joint"
            return self._joints.change_one(f"{what} of {joint.name}", joint.name, new)

        dialog = self._dialog(f"Joint {joint.name}", changed)
        dialog.show_record(joint)
        dialog.open()

    def _dialog(self, title: str, submit: Any) -> RecordDialog:
        columns = [c for c in self._table.table.columns if c.field is not None]
        columns.sort(key=_place_in_form)
        return RecordDialog(
            title,
            columns,
            style=self._table.table.style,
            submit=submit,
            parent=self._page.window(),
        )

    def _added(self, values: Mapping[str, Any]) -> tuple[Problem, ...]:
        known = {key: value for key, value in values.items() if value is not None}
        name = str(values["name"])
        problems = self._joints.change(f"joint {name}", (), added=(known,))
        if not problems:
            self._table.go_to_joint(name)
        return problems

    def remove_joints(self) -> None:
        """Remove the selected joints; undo brings them back."""
        names = [facts.joint.name for facts in self._table.selected_facts()]
        if names and self._joints.remove(names):
            many = len(names) > 1
            what = f"{len(names)} joints" if many else names[0]
            it, key = "them" if many else "it", key_text("Ctrl+Z")
            self._workspace.notifier.say(f"Removed {what}. {key} brings {it} back.")

    def show_part(self) -> None:
        """Go to the part that the current joint holds, on the Packs page."""
        joint = self._table.current_joint()
        if joint is None:
            return
        library = self._workspace.state.library
        known = {part.name for part in library.parts_of(joint.pack)}
        held = [name for name in (joint.joins, joint.to) if name]
        found = [name for name in held if name in known]
        if self._table.current_key() == "to" and joint.to in known:
            found = [joint.to]
        if found:
            self._workspace.place_requested.emit(found[0], "")
        elif held:
            self._workspace.notifier.say(f"{joint.pack} has no part {held[0]}.")
        else:
            say = f"What {joint.name} joins is not recorded."
            self._workspace.notifier.say(say)

    def export_joints(self) -> None:
        """Ask where, and write the joints of the pack with their schema."""
        inventory = self._table.inventory
        if inventory is None or not inventory.facts:
            self._workspace.notifier.say("There are no joints to write.")
            return
        pack = inventory.pack
        opened = self._workspace.document.path
        folder = opened.parent if opened else Path.home()
        kind = "CSV (*.csv)"
        name, _ = QFileDialog.getSaveFileName(
            self._page,
            "Export joints",
            str(folder / f"{file_stem(f'joints of {pack}')}.csv"),
            kind,
        )
        if not name:
            return
        path = with_ending(Path(name), kind)

        def work(token: Token) -> Path:
            from benchpack.session.handover import write_joints_csv

            if token.cancelled():
                raise CancelledError(str(path))
            write_joints_csv(inventory, path)
            return path

        self._workspace.runner.start(
            f"write {path}",
            work,
            done=self._on_written,
            failed=self._on_not_written,
            words="Writing joints",
        )

    def _on_written(self, path: Path) -> None:
        self._workspace.notifier.say(f"Written: {path}")

    def _on_not_written(self, error: BaseException) -> None:
        if isinstance(error, BenchpackError):
            self._workspace.notifier.show_error("Not written", error)
        else:
            self._workspace.notifier.report(error)


def _place_in_form(column: TableColumn) -> int:
    """Give the fields the order of the record, whatever the table shows first."""
    return _PLACES[column.key]
