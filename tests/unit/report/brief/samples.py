"""The demo's brief, and what it is made from."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from functools import cache
from typing import Any

from benchpack.files.demo import demo_library
from benchpack.report.brief.blocks import (
    Audience,
    Block,
    Brief,
    Figure,
    Figures,
    Paragraph,
    Table,
)
from benchpack.report.brief.content import make_brief
from benchpack.report.plain_table import plain_spaces
from benchpack.results.proposal import ProposalResults, proposal
from benchpack.results.proposal_trials import ProposalChance, simulate
from benchpack.results.results import Results, compute

FINGERPRINT = "3f2a 91bc 55d0 77e1"
DAY = date(2026, 11, 30)


@dataclass(frozen=True)
class Made:
    """Results of the demo's first study."""

    gap: Results
    proposal: ProposalResults
    chance: ProposalChance


@cache
def demo() -> Made:
    library = demo_library()
    study = library.first_study()
    gap = compute(library, study)
    found = proposal(library, study, gap=gap)
    chance = simulate(found, trials=20_000)
    assert chance is not None
    return Made(gap, found, chance)


def brief_of(made: Made | None = None, **more: Any) -> Brief:
    made = made or demo()
    asked = {"fingerprint": FINGERPRINT, "made_on": DAY, **more}
    return make_brief(made.gap, made.proposal, made.chance, **asked)


def bare_brief(gap: Results, found: ProposalResults | None = None) -> Brief:
    return make_brief(gap, found, None, fingerprint=FINGERPRINT, made_on=DAY)


def customer_brief(**more: Any) -> Brief:
    return brief_of(audience=Audience.CUSTOMER, **more)


def blocks(brief: Brief, key: str) -> tuple[Block, ...]:
    section = brief.section(key)
    assert section is not None, key
    return section.blocks


def table(brief: Brief, key: str) -> Table:
    return next(one for one in blocks(brief, key) if isinstance(one, Table))


def figures(brief: Brief) -> dict[str, Figure]:
    found = next(one for one in blocks(brief, "result") if isinstance(one, Figures))
    return {figure.label: figure for figure in found.figures}


def texts(brief: Brief, key: str) -> list[str]:
    """Give the paragraphs of a section with plain spaces."""
    return [
        plain_spaces(one.text)
        for one in blocks(brief, key)
        if isinstance(one, Paragraph)
    ]


def words(brief: Brief) -> Iterator[str]:
    """Give every text of a brief."""
    yield brief.title
    for section in brief.sections:
        yield section.title
        for block in section.blocks:
            if isinstance(block, Paragraph):
                yield block.text
            elif isinstance(block, Figures):
                for one in block.figures:
                    yield from (one.label, one.value, one.note)
            elif isinstance(block, Table):
                for row in block.rows:
                    yield from row
