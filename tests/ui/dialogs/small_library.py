"""A small library for the dialogs, and a record of what a notifier was told."""

from __future__ import annotations

from benchpack.errors import Problem
from benchpack.model.library import Library
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.study import Study
from benchpack.model.words import EnergyBasis, KnownBy
from benchpack.session.state import State
from benchpack.ui.notify import Notifier

ROWS = (
    ("Avocet 81", 81.0, 500.0),
    ("Dunlin 74", 74.0, 448.0),
    ("Curlew 60", 60.0, 392.0),
    ("Plover 92", 92.0, 541.0),
)


class Said:
    """What the notifier was told."""

    def __init__(self, notifier: Notifier) -> None:
        self.remarks: list[str] = []
        self.lists: list[tuple[str, tuple[Problem, ...]]] = []
        notifier.said.connect(self.remarks.append)
        notifier.problems_found.connect(self._on_problems_found)

    def _on_problems_found(self, heading: str, problems: tuple[Problem, ...]) -> None:
        self.lists.append((heading, problems))


def small_state() -> State:
    """Give four packs and a study of the first two."""
    packs = [
        Pack(
            name,
            energy_kwh,
            mass_kg,
            energy_basis=EnergyBasis.GROSS,
            mass_known_by=KnownBy.WEIGHED,
        )
        for name, energy_kwh, mass_kg in ROWS
    ]
    study = Study(name="Tray study", subject="Avocet 81", reference="Dunlin 74")
    library = Library(packs=PackTable.from_packs(packs), studies=(study,))
    return State(library, study.name)
