"""The Joints page over a small library with an inventory."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from pytestqt.qtbot import QtBot

from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.part import Part
from benchpack.model.words import KnownBy, Subsystem
from benchpack.ui.pages.joints.page import JointsPage
from benchpack.ui.workspace import Workspace
from tests.ui.conftest import small_library
from tests.ui.showing import settle, shown

SUBJECT, REFERENCE = "Avocet 81", "Dunlin 74"


def names(page: JointsPage) -> list[str]:
    """Give the joints shown, from the top down."""
    model = page.table.table
    return [model.name(int(row)) for row in model.order]


def joint(page: JointsPage, name: str) -> Joint:
    """Give a recorded joint of the pack that is shown."""
    return next(one for one in page.joints.joints() if one.name == name)


def joined_library() -> Library:
    """Give the small library with joints of every sort in two of its packs."""
    library = small_library()
    parts = (*library.parts[SUBJECT], Part(SUBJECT, "connector plate"))
    joints = (
        Joint(
            SUBJECT,
            "lid screws",
            "flange screw",
            "EN 1665 M6x20",
            "8.8",
            count=84,
            mass_each_g=8.7,
            known_by=KnownBy.WEIGHED_BATCH,
            role="clamp and seal",
            joins="lid panel",
            to="tray floor",
            tightening="torque",
            time_each_s=6.0,
            cost_each=0.07,
        ),
        Joint(
            SUBJECT,
            "lid gasket",
            "gasket",
            "silicone foam 12x6",
            count=1,
            length_mm=5920,
            role="seal",
            joins="lid panel",
            to="tray floor",
            subsystem=Subsystem.SEALS,
        ),
        Joint(
            SUBJECT,
            "connector plate screws",
            "socket screw",
            "ISO 4762 M6x20",
            "8.8",
            count=16,
            joins="connector plate",
            to="tray floor",
            role="clamp",
            carry_over=True,
            reason="vehicle harness is fixed",
        ),
        Joint(SUBJECT, "harness clips", "clip", "edge clip", count=64),
        Joint(SUBJECT, "odd fixings", "bracket thing", "as drawn", count=3),
    )
    reference = (
        Joint(
            REFERENCE,
            "lid screws",
            "flange screw",
            "EN 1665 M6x25",
            "8.8",
            count=44,
            mass_each_g=9.6,
            known_by=KnownBy.WEIGHED_BATCH,
        ),
    )
    return replace(
        library,
        parts={SUBJECT: parts},
        joints={SUBJECT: joints, REFERENCE: reference},
    )


@pytest.fixture
def library() -> Library:
    """Give the library with joints."""
    return joined_library()


MakePage = Callable[[Workspace], JointsPage]


@pytest.fixture
def make_page(qtbot: QtBot) -> MakePage:
    """Give what shows the page of a workspace."""

    def make(workspace: Workspace) -> JointsPage:
        made = shown(qtbot, JointsPage(workspace))
        made.setFocus()
        settle()
        return made

    return make


@pytest.fixture
def page(make_page: MakePage, workspace: Workspace) -> JointsPage:
    """Give the page over the library with joints."""
    return make_page(workspace)
