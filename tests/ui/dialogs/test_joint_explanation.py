"""The panel that says where a figure comes from answers for joints as well."""

from __future__ import annotations

import pytest
from PySide6.QtWidgets import QLabel, QWidget
from pytestqt.qtbot import QtBot

from benchpack.model.joint import Joint
from benchpack.results.explain_joints import joint_record
from benchpack.session.joint_edits import with_joint_values, with_new_joint
from benchpack.ui.dialogs.explanation import ExplanationPanel, show_explanation
from benchpack.ui.workspace import Workspace
from tests.ui.dialogs.small_library import Said

PLATE = Joint("Curlew 60", "plate", count=16, designation="ISO 4762 M6x16 8.8")
RECORD = joint_record("Curlew 60", "plate")


@pytest.fixture
def anchor(qtbot: QtBot, workspace: Workspace) -> QWidget:
    window = QWidget()
    qtbot.addWidget(window)
    window.show()
    assert workspace.edit("plate", lambda state: with_new_joint(state, PLATE))
    return window


def texts(panel: ExplanationPanel | None) -> list[str]:
    assert panel is not None
    return [w.text() for w in panel.findChildren(QLabel) if not w.isHidden()]


def test_all_joints_of_the_pack_that_is_named(
    workspace: Workspace, anchor: QWidget
) -> None:
    """The pack need be neither subject nor reference of the study."""
    shown = texts(show_explanation(workspace, "joints mass", "Curlew 60", anchor))
    assert "Mass of the joints of Curlew 60" in shown
    assert "0.09\u00a0kg (0.09 to 0.10)" in shown
    assert "standard table" in shown


def test_one_joint_follows_its_edits_until_it_is_gone(
    workspace: Workspace, anchor: QWidget
) -> None:
    panel = show_explanation(workspace, "joint mass", RECORD, anchor)
    assert "Mass of plate, Curlew 60" in texts(panel)
    assert panel is not None

    def fewer(count: int) -> None:
        values = {"count": count}
        assert workspace.edit(
            "count",
            lambda state: with_joint_values(state, "Curlew 60", "plate", values),
        )

    fewer(8)
    assert any(text.startswith("46.4\u00a0g") for text in texts(panel))
    workspace.undo()
    workspace.undo()
    assert not panel.isVisible()


def test_a_joint_that_is_not_there_is_said(
    workspace: Workspace, anchor: QWidget, said: Said
) -> None:
    record = joint_record("Curlew 60", "nothing")
    assert show_explanation(workspace, "joint mass", record, anchor) is None
    assert said.remarks == ["joint mass needs a joint."]
