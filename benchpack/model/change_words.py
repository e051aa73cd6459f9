"""The words of changes: what kind they are, and which programme they fit."""

from __future__ import annotations

from enum import StrEnum


class ChangeKind(StrEnum):
    """What a change does."""

    REMOVE = "remove"
    SUBSTITUTE = "substitute"
    INTEGRATE = "integrate"
    MOULD_IN = "mould in"
    ADD = "add"
    SWAP_JOINTS = "swap joints"
    ADJUST = "adjust"


class ProgrammeKind(StrEnum):
    """When in the life of a pack a change can come, the earliest first."""

    UNSTATED = ""
    RUNNING = "running change"
    FACELIFT = "facelift"
    NEW = "new programme"

    def fits(self, programme: ProgrammeKind) -> bool:
        """Tell whether a change of this kind can come in a programme.

        What fits a running change fits the later ones as well. Where either is
        unstated nothing speaks against it.

        Parameters
        ----------
        programme : ProgrammeKind
            The programme of the study.
        """
        order = list(ProgrammeKind)
        if ProgrammeKind.UNSTATED in (self, programme):
            return True
        return order.index(self) <= order.index(programme)
