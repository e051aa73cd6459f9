"""The columns of the sheet of the proposal."""

from __future__ import annotations

from enum import IntEnum

ENDS = ("low", "likely", "high")
"""The rows of each change, each figure at that end of its own range."""


class ProposalColumn(IntEnum):
    """The columns of the sheet."""

    NUMBER = 0
    CHANGE = 1
    KIND = 2
    END = 3
    BEFORE = 4
    AFTER = 5
    ADD_BACKS = 6
    SAVED = 7
    SECONDS = 8
    PARTS = 9
    JOINING = 10
    ADD_BACK_COST = 11
    TOOLS = 12
    VALIDATION = 13
    TOOLS_PER_PACK = 14
    VALIDATION_PER_PACK = 15
    NET_WORTH = 16
    OWN_CHANCE = 17
    CHANCE = 18
    EXPECTED = 19
    BREAK_EVEN = 20
    UNKNOWN = 21


HEADS = (
    "no.",
    "change",
    "kind",
    "end",
    "before [kg]",
    "after [kg]",
    "add-backs [kg]",
    "saved [kg]",
    "time on the line [s]",
    "parts [CUR]",
    "joining [CUR]",
    "add-backs [CUR]",
    "tools, once [CUR]",
    "validation, once [CUR]",
    "tools per pack [CUR]",
    "validation per pack [CUR]",
    "net worth per pack [CUR]",
    "own chance of release",
    "with what it needs",
    "expected saving [kg]",
    "pays from [packs/year]",
    "not known, counted as nothing",
)
WIDTHS = (5, 34, 14, 8, *(11,) * 4, 10, *(11,) * 3, *(12,) * 2, *(11,) * 7, 60)
MONEY_PER_PACK = (
    ProposalColumn.PARTS,
    ProposalColumn.JOINING,
    ProposalColumn.ADD_BACK_COST,
)
ONCE_PER_PACK = (ProposalColumn.TOOLS_PER_PACK, ProposalColumn.VALIDATION_PER_PACK)
