"""Briefs that are hard to set: many rows, long names, other scripts."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from benchpack.model.change import Change, ChangeKind
from benchpack.model.library import Library
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.part import Part
from benchpack.model.study import Study
from benchpack.model.words import EnergyBasis, KnownBy, Subsystem
from benchpack.report.brief.blocks import Brief, Column, Paragraph, Section, Table
from benchpack.report.brief.content import make_brief
from benchpack.results.proposal import proposal
from benchpack.results.proposal_trials import simulate
from benchpack.results.results import compute
from tests.unit.report.brief.samples import DAY, FINGERPRINT, brief_of

HEBREW = "עגור 81 " + "חבילתסוללהארוכה" * 4
CHINESE = "电池包参考样品非常长的名称" * 5
UNBROKEN = "Longestnameofall" * 6
LONG = UNBROKEN[:32]
ARABIC = "طائر الكركي 77"


def one_section(*blocks: Paragraph | Table, title: str = "Rows") -> Brief:
    """Give a brief of one section."""
    brief = brief_of()
    return replace(brief, sections=(Section("rows", title, blocks),))


def rows_brief(count: int, *, text: str = "a word") -> Brief:
    columns = (Column("place"), Column("mass", "kg", "right"), Column("said"))
    rows = tuple((f"row {n} of all", f"{n}.25", text) for n in range(count))
    return one_section(Table("", columns, rows, sums=frozenset({count - 1})))


@cache
def hard_brief() -> Brief:
    """Give the brief of a pack with 300 parts and names in other scripts."""
    basis, known = EnergyBasis.GROSS, KnownBy.WEIGHED
    names = {HEBREW: 81.0, CHINESE: 74.0, UNBROKEN: 60.0, ARABIC: 77.0}
    packs = [
        Pack(name, kwh, 6 * kwh, energy_basis=basis, mass_known_by=known)
        for name, kwh in names.items()
    ]
    parts = tuple(
        Part(HEBREW, f"part {n} {LONG}", subsystem=Subsystem.TRAY, mass_each_kg=1.0)
        for n in range(300)
    )
    study = Study("hard", subject=HEBREW, reference=CHINESE, target_kg=20)
    changes = tuple(
        Change(
            "hard",
            f"remove {n} {name}",
            ChangeKind.REMOVE,
            parts=tuple(part.name for part in parts[75 * n : 75 * n + 75]),
        )
        for n, name in enumerate(names)
    )
    library = Library(
        packs=PackTable.from_packs(packs),
        parts={HEBREW: parts},
        studies=(study,),
        changes={"hard": changes},
    )
    gap = compute(library, study)
    found = proposal(library, study, gap=gap)
    chance = simulate(found, trials=1000)
    return make_brief(
        gap,
        found,
        chance,
        fingerprint=FINGERPRINT,
        made_on=DAY,
        left_out=["money"],
    )
