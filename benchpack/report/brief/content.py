"""The brief of a study, from its results.

What a customer does not see: what the parts cost and the supplier earns (the section
on money, net worth, rates, interest, budget, chances of release one by one), the ledger
item by item, changes that are refused, what is to be done about a check, and how
records are to be mended. Notes of the author are in no brief. Which checks ask for a
look, add-backs that were taken out of the sum, validation and cautions are the same for
both.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from datetime import date

from benchpack import __version__
from benchpack.model.study import Study
from benchpack.model.words import Basis
from benchpack.report.brief.assumptions_section import assumptions_blocks
from benchpack.report.brief.blocks import Audience, Block, Brief, Section
from benchpack.report.brief.cautions_section import cautions_blocks, fingerprint_blocks
from benchpack.report.brief.choices import (
    ASSUMPTIONS,
    CAUTIONS,
    CHECKS,
    COMPARISON,
    FINGERPRINT,
    GAP,
    ITEMS,
    LEDGER,
    MONEY,
    PROPOSAL,
    RESULT,
    SECTIONS,
    TITLES,
    VALIDATION,
    check_left_out,
)
from benchpack.report.brief.comparison_section import comparison_blocks
from benchpack.report.brief.ledger_section import items_blocks, ledger_blocks
from benchpack.report.brief.money_section import money_blocks
from benchpack.report.brief.result_section import (
    gap_block,
    proposal_block,
    result_blocks,
)
from benchpack.report.brief.validation_section import checks_blocks, validation_blocks
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_trials import ProposalChance
from benchpack.results.results import Results

_UNHEADED = (RESULT, GAP, PROPOSAL, FINGERPRINT)
_FURTHER_AFTER = MONEY
_AUDIENCES = {
    Audience.INTERNAL: "internal",
    Audience.CUSTOMER: "for the customer",
}


def make_brief(
    results: Results,
    proposal: ProposalResults | None = None,
    chance: ProposalChance | None = None,
    *,
    fingerprint: str,
    made_on: date,
    audience: Audience = Audience.INTERNAL,
    left_out: Collection[str] = (),
    further: Sequence[Section] = (),
) -> Brief:
    """Make the brief of a study.

    Parameters
    ----------
    results : Results
        The gap.
    proposal : ProposalResults, optional
        What should close it.
    chance : ProposalChance, optional
        The trials of the proposal.
    fingerprint : str
        Hash of the study and of the records that it uses.
    made_on : date
        Day on which it is made.
    audience : Audience
        Whom it is for.
    left_out : collection of str
        Keys of sections that are left out, see `choices.SECTIONS`.
    further : sequence of Section
        Sections that come from elsewhere, as those on the worth; they stand after the
        ledger and its money, before what has to be validated again.

    Returns
    -------
    Brief
        It says what is missing where there is no proposal, target or reference.

    Raises
    ------
    DataError
        When what a reader must not miss, or a section that there is not, is left out.
    ValueError
        When a further section has the key of another one.
    """
    keys = [section.key for section in further]
    if len({*keys, *TITLES}) < len(keys) + len(TITLES):
        raise ValueError(f"sections have the same key: {', '.join(keys)}")
    check_left_out(left_out, [one.key for one in further if one.can_be_left_out])
    builder = _Builder(results, proposal, chance, audience, frozenset(left_out))
    sections = builder.sections(further, fingerprint=fingerprint, made_on=made_on)
    title = f"Brief: {_about(results.study)}"
    return Brief(
        title=title,
        language="en",
        audience=audience,
        sections=tuple(one for one in sections if one.key not in left_out),
        header=f"{title}, {_AUDIENCES[audience]}",
        footer=f"Benchpack {__version__}, {made_on.isoformat()}, {fingerprint}",
        fingerprint=fingerprint,
        version=__version__,
        made_on=made_on,
    )


def _about(study: Study) -> str:
    subject = study.subject or study.name
    if study.basis is Basis.TREND:
        return f"{subject} against the trend of its peers"
    if not study.reference:
        return subject
    return f"{subject} against {study.reference}"


class _Builder:
    """Builds the sections of one brief."""

    def __init__(
        self,
        results: Results,
        proposal: ProposalResults | None,
        chance: ProposalChance | None,
        audience: Audience,
        left_out: frozenset[str],
    ) -> None:
        self.results = results
        self.proposal = proposal
        self.chance = chance
        self.audience = audience
        self.left_out = left_out

    def sections(
        self, further: Sequence[Section], *, fingerprint: str, made_on: date
    ) -> Iterator[Section]:
        for choice in SECTIONS:
            key = choice.key
            if key == FINGERPRINT:
                blocks = fingerprint_blocks(
                    self.results,
                    fingerprint=fingerprint,
                    version=__version__,
                    made_on=made_on,
                )
            else:
                blocks = () if key in self.left_out else self._blocks(key)
            if blocks:
                yield Section(
                    key,
                    choice.title,
                    blocks,
                    can_be_left_out=choice.can_be_left_out,
                    is_headed=key not in _UNHEADED,
                )
            if key == _FURTHER_AFTER:
                yield from further

    def _blocks(self, key: str) -> tuple[Block, ...]:
        if key in (GAP, PROPOSAL):
            return self._waterfalls(key)
        if key in (ITEMS, MONEY):
            return self._internal(key)
        results, proposal, audience = self.results, self.proposal, self.audience
        if key == RESULT:
            return result_blocks(results, proposal, self.chance, audience)
        if key == COMPARISON:
            return comparison_blocks(results)
        if key == LEDGER:
            return () if proposal is None else ledger_blocks(proposal, audience)
        if key == VALIDATION:
            has_ledger = LEDGER not in self.left_out
            return validation_blocks(proposal, has_ledger=has_ledger)
        if key == CHECKS:
            return () if proposal is None else checks_blocks(proposal, audience)
        if key == ASSUMPTIONS:
            return assumptions_blocks(results, proposal, self.chance, audience)
        if key == CAUTIONS:
            return cautions_blocks(results, proposal, audience)
        raise AssertionError(key)

    def _waterfalls(self, key: str) -> tuple[Block, ...]:
        """Give one of the two waterfalls; both together share a line."""
        has_steps = self.proposal is not None and bool(self.proposal.effects)
        is_split = self.results.split is not None
        shown = [is_split and GAP not in self.left_out]
        shown.append(has_steps and PROPOSAL not in self.left_out)
        width = 0.5 if all(shown) else 1.0
        if key == GAP:
            return (gap_block(self.results, self.audience, width=width),)
        if self.proposal is None or not has_steps:
            return ()
        return (proposal_block(self.proposal, width=width),)

    def _internal(self, key: str) -> tuple[Block, ...]:
        proposal = self.proposal
        if proposal is None or not proposal.effects:
            return ()
        if self.audience is Audience.CUSTOMER:
            return ()
        return items_blocks(proposal) if key == ITEMS else money_blocks(proposal)
