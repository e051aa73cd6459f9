"""The Changes page over a small library with a proposal."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from pytestqt.qtbot import QtBot

from benchpack.model.change import Change, ChangeKind
from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.words import KnownBy, Subsystem
from benchpack.ui.pages.changes.page import ChangesPage
from benchpack.ui.workspace import Workspace
from tests.ui.conftest import small_library
from tests.ui.showing import settle, shown

SUBJECT, REFERENCE, STUDY = "Avocet 81", "Dunlin 74", "Study"
STEEL = Material(
    "mild steel",
    "metal",
    7850,
    210,
    210,
    0.3,
    50,
    12,
    300,
    "",
    1.0,
    1.0,
    1.0,
    0.6,
    "bench table",
    "confirmed",
)
POLYMER = Material(
    "PP-LGF40",
    "thermoplastic",
    1210,
    8.0,
    121,
    0.36,
    0.3,
    40,
    110,
    "HB",
    2.5,
    0.5,
    0.4,
    2.0,
    "data sheet",
    "from memory",
)


def changed_library() -> Library:
    """Give the small library with parts, joints, materials and three changes."""
    library = small_library()
    parts = (
        Part(
            SUBJECT,
            "cell",
            subsystem=Subsystem.CELLS,
            count=192,
            mass_each_kg=1.72,
            carry_over=True,
            reason="approved with the vehicle",
        ),
        Part(
            SUBJECT,
            "tray floor",
            subsystem=Subsystem.TRAY,
            material=STEEL.name,
            mass_each_kg=62.0,
        ),
        Part(
            SUBJECT,
            "lid panel",
            subsystem=Subsystem.LID,
            material=STEEL.name,
            mass_each_kg=12.7,
            known_by=KnownBy.WEIGHED,
            thickness_mm=0.8,
            area_m2=1.9,
            governs="panel bending stiffness",
        ),
        Part(SUBJECT, "lid stiffener", "lid panel", Subsystem.LID, mass_each_kg=1.1),
        Part(SUBJECT, "cable duct", subsystem=Subsystem.CONDUCTORS, mass_each_kg=0.4),
        Part(
            SUBJECT,
            "rest",
            subsystem=Subsystem.OTHER,
            mass_each_kg=5.0,
            known_by=KnownBy.ASSUMED,
        ),
    )
    joints = (
        Joint(
            SUBJECT,
            "lid screws",
            "flange screw",
            "EN 1665 M6x20",
            "8.8",
            count=84,
            mass_each_g=8.7,
            joins="lid panel",
            to="tray floor",
            role="clamp",
            time_each_s=6.0,
            cost_each=0.07,
        ),
        Joint(
            SUBJECT,
            "mount bolts",
            "hexagon screw",
            "ISO 4014 M12x90",
            "10.9",
            count=8,
            mass_each_g=95.0,
            joins="tray floor",
            carry_over=True,
            reason="vehicle mounts are fixed",
        ),
        Joint(SUBJECT, "duct clips", "clip", "edge clip", count=22, mass_each_g=3.0),
    )
    changes = (
        Change(
            STUDY,
            "fewer lid screws",
            ChangeKind.SWAP_JOINTS,
            joints=("lid screws",),
            into="lid screws by angle",
            count=60,
            tightening="torque and angle",
            tooling=Range(1000.0, 2000.0, 4000.0),
            validation_cost=Range.exactly(5000.0),
            release_chance=0.9,
        ),
        Change(
            STUDY,
            "lid in polymer",
            ChangeKind.SUBSTITUTE,
            parts=("lid panel",),
            material=POLYMER.name,
            process="injection moulding",
            release_chance=0.8,
        ),
        Change(
            STUDY,
            "duct goes",
            ChangeKind.REMOVE,
            is_on=False,
            parts=("cable duct",),
            joints=("duct clips",),
        ),
    )
    study = Study(
        subject=SUBJECT, reference=REFERENCE, target_kg=2.0, yearly_volume=20_000
    )
    return replace(
        library,
        parts={SUBJECT: parts},
        joints={SUBJECT: joints},
        materials=(STEEL, POLYMER),
        studies=(study,),
        changes={STUDY: changes},
    )


@pytest.fixture
def library() -> Library:
    """Give the library with a proposal."""
    return changed_library()


MakePage = Callable[[Workspace], ChangesPage]


@pytest.fixture
def make_page(qtbot: QtBot) -> MakePage:
    """Give what shows the page of a workspace."""

    def make(workspace: Workspace) -> ChangesPage:
        made = shown(qtbot, ChangesPage(workspace))
        made.setFocus()
        settle()
        return made

    return make


@pytest.fixture
def page(make_page: MakePage, workspace: Workspace) -> ChangesPage:
    """Give the page over the library with a proposal."""
    return make_page(workspace)
