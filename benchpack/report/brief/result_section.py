"""Page one of a brief: the sentence, the figures that stand out, two waterfalls."""

from __future__ import annotations

import math
from collections.abc import Iterator

from benchpack.calc.worth import value_per_pack
from benchpack.model.ranges import Range
from benchpack.model.words import Basis
from benchpack.report.brief.blocks import Audience, Block, Figure, Figures, Paragraph
from benchpack.report.brief.charts import waterfall_block
from benchpack.report.change_charts import steps_from_today
from benchpack.report.display import Display
from benchpack.report.headline import headline, plain_text
from benchpack.report.proposal_text import NOTHING_KG, money_text, proposal_text
from benchpack.report.waterfall import waterfall_spec
from benchpack.results.pair_cautions import NOTHING_KG as NO_GAP_KG
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_trials import ProposalChance
from benchpack.results.results import Results
from benchpack.units.formatting import UNKNOWN, format_chance, format_range


def result_blocks(
    results: Results,
    proposal: ProposalResults | None,
    chance: ProposalChance | None,
    audience: Audience,
) -> tuple[Block, ...]:
    """Give the sentence that states the result, and its figures.

    Parameters
    ----------
    results : Results
        The gap.
    proposal : ProposalResults or None
        What should close it.
    chance : ProposalChance or None
        The trials of the proposal.
    audience : Audience
        A customer sees what the saving is worth, not what it costs to make.
    """
    lead = headline(results, has_remedy=audience is Audience.INTERNAL)
    blocks: list[Block] = [Paragraph(plain_text(lead), "lead")]
    if proposal is None:
        blocks.append(Paragraph("The study has no proposal yet."))
    else:
        blocks.append(Paragraph(proposal_text(proposal)))
    writer = _Writer(results, proposal, chance)
    return (*blocks, Figures(tuple(writer.figures(audience))))


def gap_block(results: Results, audience: Audience, *, width: float) -> Block:
    """Give the gap to the reference as a waterfall, or say why there is none.

    Parameters
    ----------
    results : Results
        The gap.
    audience : Audience
        A customer reads why, not what to do in the study.
    width : float
        Share of the line that it takes.
    """
    spec = waterfall_spec(results, has_remedy=audience is Audience.INTERNAL)
    return waterfall_block(spec, width=width)


def proposal_block(proposal: ProposalResults, *, width: float) -> Block:
    """Give the proposal as a waterfall, or say why there is none.

    Parameters
    ----------
    proposal : ProposalResults
        The proposal.
    width : float
        Share of the line that it takes.
    """
    return waterfall_block(steps_from_today(proposal), width=width)


class _Writer:
    """Writes the figures that stand out."""

    def __init__(
        self,
        results: Results,
        proposal: ProposalResults | None,
        chance: ProposalChance | None,
    ) -> None:
        self.results = results
        self.study = results.study
        self.display = Display(results.study)
        self.proposal = proposal
        self.chance = chance

    def figures(self, audience: Audience) -> Iterator[Figure]:
        yield self._gap()
        yield self._worth_of_gap()
        if self.proposal is not None and self.proposal.effects:
            yield self._saved(self.proposal.totals.saved_kg)
        yield self._target()
        yield self._chance()
        if self.proposal is not None and self.proposal.effects:
            if audience is Audience.INTERNAL:
                yield self._net_worth(self.proposal)
            else:
                yield self._worth_of_saving(self.proposal.totals.saved_kg)

    def _gap(self) -> Figure:
        gap_kg = self.results.gap_kg
        if math.isnan(gap_kg):
            problem = self.results.missing
            return Figure("Gap", UNKNOWN, problem.what if problem else "")
        low, high = self.results.gap_range_kg()
        to = self.study.reference
        counted = str(self.study.basis)
        if self.study.basis is Basis.TREND:
            to, counted = "the trend of its peers", ""
        text = self.display.ranged_mass_text(gap_kg, low, high)
        return Figure(f"Gap to {to}", text, counted)

    def _worth_per_mass(self) -> str:
        low, likely, high = self.study.worth_per_kg
        write = self.display.worth_text
        if low == high:
            return write(likely)
        return format_range(
            likely, low, high, lambda one: UNKNOWN if one is None else write(one)
        )

    def _worth_of_gap(self) -> Figure:
        results, valuation = self.results, self.results.valuation
        likely_text = self.display.worth_text(self.study.worth_likely_per_kg)
        note = f"a pack at {likely_text}"
        if valuation is None or results.place is None or math.isnan(results.gap_kg):
            return Figure("Worth", self._worth_per_mass(), "no gap to value")
        if results.gap_kg < NO_GAP_KG:
            return Figure("Worth", self._worth_per_mass(), "no gap that could be saved")
        low, likely, high = (
            float(values[results.place])
            for values in (valuation.low, valuation.likely, valuation.high)
        )
        if self.study.share_captured < 1:
            note += f", {self.display.share_text(self.study.share_captured)} captured"
        return Figure(
            "Worth of the gap", self.display.money_range_text(likely, low, high), note
        )

    def _saved(self, saved_kg: Range) -> Figure:
        if saved_kg.likely < -NOTHING_KG:
            text = self.display.ranged_mass_text(*_likely_first(-saved_kg))
            return Figure("Heavier by the proposal", text, "all changes released")
        text = self.display.ranged_mass_text(*_likely_first(saved_kg))
        return Figure("Saved by the proposal", text, "all changes released")

    def _target(self) -> Figure:
        if self.study.target_kg is None:
            return Figure("Target", UNKNOWN, "none is set in the study")
        value = self.study.target_kg * self.study.worth_likely_per_kg
        note = f"a pack, worth {self.display.money_text(value)}"
        return Figure("Target", self.display.mass_text(self.study.target_kg), note)

    def _chance(self) -> Figure:
        label = "Chance of the target"
        if self.study.target_kg is None:
            return Figure(label, UNKNOWN, "no target to reach")
        if self.chance is None:
            return Figure(label, UNKNOWN, "no change counts")
        saved = self.chance.saved_kg
        middle = self.display.ranged_mass_text(saved.p50, saved.p10, saved.p90)
        note = f"P50 {middle}"
        return Figure(label, format_chance(self.chance.chance_of_target), note)

    def _net_worth(self, proposal: ProposalResults) -> Figure:
        text = money_text(proposal.totals.net_worth, self.display)
        return Figure("Net worth", text, "a pack, after all costs")

    def _worth_of_saving(self, saved_kg: Range) -> Figure:
        low, _, high = self.study.worth_per_kg
        ends = [
            float(value_per_pack(end, worth))
            for end in (saved_kg.low, saved_kg.high)
            for worth in (low, high)
        ]
        likely = saved_kg.likely * self.study.worth_likely_per_kg
        text = self.display.money_range_text(likely, min(ends), max(ends))
        return Figure("Worth of the saving", text, "a pack, before any cost")


def _likely_first(mass_kg: Range) -> tuple[float, float, float]:
    return mass_kg.likely, mass_kg.low, mass_kg.high
