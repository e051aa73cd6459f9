"""What happens to the joints that the entry bar gives."""

from __future__ import annotations

import math

from PySide6.QtCore import QObject, Signal

from benchpack.model.joint import Joint
from benchpack.model.words import KnownBy
from benchpack.report.display import Display
from benchpack.report.joint_text import selection_text
from benchpack.results.joint_facts import JointFacts, joint_facts
from benchpack.ui.pages.joints.count_in import CountIn
from benchpack.ui.pages.joints.pack_joints import PackJoints
from benchpack.ui.workspace import Workspace

_COMPUTED = {
    KnownBy.GEOMETRY: "computed from its geometry",
    KnownBy.STANDARD_TABLE: "from a standard table",
}


class Counting(QObject):
    """Adds what is counted and says what it comes to, before and after.

    Signals
    -------
    added(str)
        Name of a joint that was added.

    Parameters
    ----------
    workspace : Workspace
        The open document.
    bar : CountIn
        Where joints are typed.
    joints : PackJoints
        Where they go.
    """

    added = Signal(str)

    def __init__(self, workspace: Workspace, bar: CountIn, joints: PackJoints) -> None:
        super().__init__(bar)
        self._workspace = workspace
        self._bar = bar
        self._joints = joints
        bar.counted.connect(self._on_joint_counted)
        bar.typed.connect(self._on_joint_typed)

    def _facts(self, joint: Joint) -> JointFacts:
        return joint_facts(joint, self._workspace.state.study)

    def _on_joint_counted(self, joint: Joint) -> None:
        problems = self._joints.add(joint, f"count of {joint.name}")
        if problems:
            self._bar.show_problem(problems[0])
            return
        self.added.emit(joint.name)
        self._bar.taken(f"Added {joint.name}. {self._said(joint)}")

    def _on_joint_typed(self, joint: Joint | None) -> None:
        self._bar.show_preview("" if joint is None else self._said(joint))

    def _said(self, joint: Joint) -> str:
        """Say what a joint comes to, and what is missing or amiss."""
        study = self._workspace.state.study
        facts = self._facts(joint)
        said = [selection_text((facts,), study)]
        if facts.is_mass_computed and not math.isnan(facts.mass_each_g):
            each = Display(study).mass_text(facts.mass_each_g / 1000)
            said.append(f"{each} each, {_COMPUTED.get(facts.known_by, 'computed')}.")
        said += [f"{one.what} {one.remedy}" for one in facts.problems[:1]]
        return " ".join(said)
