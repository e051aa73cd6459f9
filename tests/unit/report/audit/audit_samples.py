"""Studies whose audit workbooks the tests build, and what their cells should hold."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import date
from functools import cache
from typing import Any

from benchpack.files.demo import demo_library
from benchpack.model.change import Change, ChangeKind
from benchpack.model.library import Library, by_study
from benchpack.model.part import Part
from benchpack.model.ranges import Range
from benchpack.model.study import Study
from benchpack.model.words import EnergyBasis, KnownBy, Subsystem
from benchpack.report.audit.draft import address
from benchpack.report.audit.record import AuditSheet
from benchpack.report.audit.sheets import audit_sheets
from benchpack.results.proposal_trials import simulate
from benchpack.results.results import compute
from benchpack.results.worth_case import worth_case
from tests.unit.results import packs
from tests.unit.results import proposal_samples as samples

MADE_ON = date(2026, 11, 21)

EVERY_KIND = (
    samples.change(
        "less floor", ChangeKind.ADJUST, parts=("floor",), mass_kg=Range(7, 8, 9)
    ),
    samples.LID_IN_PP,
    samples.RIM_BEAD,
    samples.change(
        "floor again",
        ChangeKind.ADJUST,
        parts=("floor",),
        mass_kg=Range(6, 6.5, 8),
        part_cost=Range(-3, 1, 4),
        seconds=Range(-2, -1, 0),
        tooling=Range(10_000, 20_000, 50_000),
        validation_cost=Range(5_000, 9_000, 12_000),
        release_chance=0.8,
    ),
    samples.change(
        "no brackets", ChangeKind.REMOVE, parts=("bracket",), release_chance=0.9
    ),
    samples.change(
        "plate",
        ChangeKind.ADD,
        into="stiffening plate",
        subsystem=Subsystem.TRAY,
        material="aluminium",
        process="stamped",
        mass_kg=Range(1.0, 1.2, 1.5),
        requires=("floor again",),
        release_chance=0.7,
    ),
    samples.change("mount", ChangeKind.REMOVE, parts=("mount",)),
)
"""Changes of most kinds; two act on one part, one needs another, one is refused."""


def sheets_of(library: Library, study: Study, **more: Any) -> tuple[AuditSheet, ...]:
    """Give the sheets of a study with its proposal and a few trials."""
    case = worth_case(compute(library, study))
    chance = None if case.proposal is None else simulate(case.proposal, trials=200)
    return audit_sheets(case, chance, fingerprint="f00d", made_on=MADE_ON, **more)


def bare_sheets_of(library: Library, study: Study) -> tuple[AuditSheet, ...]:
    """Give the sheets of a study without a proposal."""
    case = worth_case(compute(replace(library, changes={}), study))
    return audit_sheets(case, None, fingerprint="f00d", made_on=MADE_ON)


def every_kind(**study: Any) -> tuple[Library, Study]:
    """Give a study whose proposal has changes of most kinds."""
    asked = replace(samples.STUDY, **study)
    return samples.bench(*EVERY_KIND, study=asked), asked


def merged() -> tuple[Library, Study]:
    """Give a study whose changes make one part of several, and change it again."""
    changes = (
        samples.ONE_LID,
        samples.change(
            "thinner",
            ChangeKind.ADJUST,
            parts=("whole lid",),
            mass_kg=Range(7, 8, 10),
            joining_cost=Range(-1, 0, 1),
        ),
        samples.FLOOR_IN_PP,
    )
    return samples.bench(*changes), samples.STUDY


def given_cost() -> tuple[Library, Study]:
    """Give a study in which the cost of one change is given as a whole."""
    floor = replace(samples.FLOOR_IN_PP, part_cost=Range(-4, 2, 9))
    return samples.bench(samples.ONE_LID, floor), samples.STUDY


def moulded() -> tuple[Library, Study]:
    """Give a study that moulds a part into its neighbour, which then changes."""
    changes = (samples.COVER_IN_LID, samples.LID_IN_PP)
    return samples.bench(*changes), samples.STUDY


def peers(**study: Any) -> tuple[Library, Study]:
    """Give packs that lack what gaps need: cells, tolerances, one basis of energy."""
    records = packs.library(
        packs.pack("Heron 70", 70, 460, cells_mass_kg=300, mass_tolerance_kg=1.5),
        packs.pack("Egret 80", 80, 470, cells_mass_kg=320, energy_tolerance_kwh=0.5),
        packs.pack("Bittern 60", 60, 400),
        packs.pack("Crane 100", 100, 600, energy_basis=EnergyBasis.USABLE),
        packs.pack("Stork 90", 90, 530, cells_mass_kg=350, mass_known_by="estimate"),
    )
    return records, Study(**{"subject": "Heron 70", "reference": "Egret 80", **study})


def many(parts: int = 300, changes: int = 50) -> tuple[Library, Study]:
    """Give a pack of many parts with many changes."""
    records = tuple(
        samples.part(f"part {i}", 0.2 + 0.01 * i, Subsystem.OTHER, material="steel")
        for i in range(parts)
    )
    every = [
        samples.change(
            f"change {i}",
            ChangeKind.ADJUST,
            parts=(f"part {2 * i}", f"part {2 * i + 1}"),
            mass_kg=Range(0.1, 0.2, 0.4),
            tooling=Range.exactly(1000.0 * i),
        )
        for i in range(changes)
    ]
    study = samples.STUDY
    return samples.bench(*every, parts=records, joints={}), study


HOSTILE = (
    "=cmd|' /C calc'!A0",
    '=HYPERLINK("http://localhost","open")',
    "+1",
    "-1+1|cmd",
    "@SUM(1+1)",
    "\t=1+1",
    "\r=1+1",
    "\u200b=1+1",
    "\uff1d1+1",
    "'=1+1",
    "{=1+1}",
    "A1:B2*?~<>\"&'",
)
"""Names that a spreadsheet might take for something to run or to look up."""


def hostile() -> tuple[Library, Study]:
    """Give a study in which packs, parts and changes have such names."""
    subject, *others = HOSTILE
    records = packs.library(
        *(
            packs.pack(name, 60.0 + 5 * i, 400.0 + 30 * i, note=name, source=name)
            for i, name in enumerate(HOSTILE)
        ),
        parts=tuple(
            Part(subject, name, mass_each_kg=2.0 + i, known_by=KnownBy.WEIGHED)
            for i, name in enumerate(HOSTILE)
        ),
        changes=by_study(
            Change(
                "hostile",
                name,
                ChangeKind.ADJUST,
                parts=(name,),
                mass_kg=Range(0.5, 1.0, 1.5),
                material=name,
            )
            for name in HOSTILE
        ),
    )
    study = Study(
        "hostile", subject=subject, reference=others[0], worth_reason=HOSTILE[4]
    )
    return records, study


@cache
def demo() -> Library:
    """Give the demo library."""
    return demo_library()


def formulas_of(
    sheets: Iterable[AuditSheet],
) -> dict[tuple[str, str], str | float | None]:
    """Give what each formula should come to, by sheet and address."""
    return {
        (sheet.title, address(*place)): cell.content
        for sheet in sheets
        for place, cell in sheet.cells.items()
        if cell.formula
    }


def named_cells(sheets: Iterable[AuditSheet]) -> Mapping[str, tuple[str, str]]:
    """Give sheet and address of each defined name."""
    return {
        cell.name: (sheet.title, address(*place))
        for sheet in sheets
        for place, cell in sheet.cells.items()
        if cell.name
    }


def cells_of_years(sheets: Iterable[AuditSheet]) -> list[tuple[str, str]]:
    """Give sheet and address of the packs of each year, in their order."""
    return [
        (sheet.title, address(row, 2))
        for sheet in sheets
        for (row, column), cell in sheet.cells.items()
        if column == 0 and str(cell.content).startswith("packs in year ")
    ]
