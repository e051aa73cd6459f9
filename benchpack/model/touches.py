"""What a change touches: from it follow the add-backs and what is validated again."""

from __future__ import annotations

from enum import StrEnum


class Touch(StrEnum):
    """One thing that a change touches, in words that follow "it touches"."""

    STRUCTURE = "the tray or the frame"
    FLOOR = "the floor"
    LID = "the lid"
    SEAL = "a seal line"
    SCREWS = "screws and their clamp load"
    JOINTS = "joints that carry"
    BONDING = "joints or straps that conduct"
    CONDUCTORS = "conductors and what insulates them"
    COOLING = "the heat path"
    MODULES = "cells or modules"
    BARRIER = "a fire barrier"
    UNLIKE_METALS = "metals that were not together before"
    NEW_POLYMER = "a polymer part"
    POLYMER_SHELL = "an enclosure part that was metal and becomes polymer"
    POLYMER_LID = "a lid part that was metal and becomes polymer"
    POLYMER_FLOOR = "a floor that was metal and becomes polymer"
    POLYMER_MOUNTS = "a load path of the mounts that becomes polymer"
    POLYMER_FLANGE = "a sealing flange that was metal and becomes polymer"
    POLYMER_HEAT_PATH = "a heat path that was metal and becomes polymer"
    SCREWED_POLYMER = "screws through a part that becomes polymer"
