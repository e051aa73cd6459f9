"""What the figures of a brief rest on: value, where it comes from, how far checked."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

from benchpack.model.pack import Pack
from benchpack.model.words import Basis
from benchpack.report.brief.blocks import Audience, Block, Column, Table
from benchpack.report.display import Display
from benchpack.report.worth_figures import years_text
from benchpack.results.change_supply import subject_volume_of
from benchpack.results.comparison import Comparison
from benchpack.results.explained_assumed import worth_source_of
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_effect import Effect
from benchpack.results.proposal_trials import ProposalChance
from benchpack.results.results import Results
from benchpack.units.formatting import (
    UNKNOWN,
    format_chance,
    format_number,
    format_range,
)
from benchpack.units.number_style import NO_BREAK_SPACE, labelled

_STUDY = "study"
_PRACTICE = "common practice, no source"
_MEMORY = "from memory"
_MOST_VOLUMES = 10
"""Years whose packs are named one by one."""
_Row = tuple[str, str, str, str]


def assumptions_blocks(
    results: Results,
    proposal: ProposalResults | None,
    chance: ProposalChance | None,
    audience: Audience,
) -> tuple[Block, ...]:
    """Give the assumptions as a table.

    Parameters
    ----------
    results : Results
        The gap.
    proposal : ProposalResults or None
        What should close it.
    chance : ProposalChance or None
        The trials of the proposal.
    audience : Audience
        Rates, interest, budget and chances of release are internal matters.
    """
    writer = _Writer(results)
    rows = [*writer.packs(), *writer.worth()]
    if proposal is not None and proposal.effects:
        rows += writer.materials(proposal)
        rows += writer.programme(proposal)
        if audience is Audience.INTERNAL:
            rows += writer.rates(proposal)
    if chance is not None:
        rows += writer.trials(chance)
    columns = (
        Column("assumption"),
        Column("value"),
        Column("where it comes from [how far it was checked]"),
    )
    cells = ((name, value, _marked(source, mark)) for name, value, source, mark in rows)
    return (Table("", columns, tuple(cells)),)


def _marked(source: str, mark: str) -> str:
    """Give a source with its mark, as the rules of validation have it."""
    return f"{source} [{mark}]" if mark and mark != source else source


class _Writer:
    """Writes the rows."""

    def __init__(self, results: Results) -> None:
        self.results = results
        self.study = results.study
        self.display = Display(results.study)

    def packs(self) -> Iterator[_Row]:
        """Give how energies and masses of the two packs are known, and the range."""
        library = self.results.library
        for name in (self.study.subject, self.study.reference):
            if name and library.packs.has(name):
                yield self._pack(library.packs[library.packs.position(name)])
        comparison, place = self.results.comparison, self.results.place
        if comparison is None or place is None:
            return
        if comparison.basis in (Basis.SCALED, Basis.STRUCTURE):
            exponent = self.display.ratio_text(comparison.exponent)
            yield ("exponent of what is not cells", exponent, _STUDY, _PRACTICE)
        if not math.isnan(float(comparison.gap_u_kg[place])):
            yield self._range(comparison, place)

    def _range(self, comparison: Comparison, place: int) -> _Row:
        """Say how wide the range of the gap is; unstated tolerances are usual ones."""
        factor = comparison.uncertain.coverage_factor(place)
        factor_text = self.display.ratio_text(round(factor, 2))
        where = "JCGM 100:2008; where no tolerance is stated, a usual one"
        if comparison.basis is Basis.TREND:
            where = "Student t for 95 %, JCGM 100:2008, G.4.1"
        value = f"± {factor_text} standard uncertainties"
        return ("range of the gap", value, where, _PRACTICE)

    def _pack(self, pack: Pack) -> _Row:
        mass = _with_tolerance(
            self.display.mass_text, pack.mass_kg, pack.mass_tolerance_kg
        )
        energy = _with_tolerance(
            self.display.energy_text, pack.energy_kwh, pack.energy_tolerance_kwh
        )
        known = str(pack.mass_known_by) or "how known not recorded"
        return (
            f"{pack.name}, energy {pack.energy_basis}",
            f"{mass}; {energy}",
            self._source(pack.source) or "no source recorded",
            known,
        )

    def _source(self, name: str) -> str:
        """Give a source with date and reference; its note is the author's."""
        found = next((s for s in self.results.library.sources if s.name == name), None)
        if found is None:
            return name
        said = (found.name, found.date, found.reference)
        return ", ".join(filter(None, said))

    def worth(self) -> Iterator[_Row]:
        """Give the worth, the share captured and the target."""
        study, write = self.study, self.display.worth_text
        low, likely, high = study.worth_per_kg
        text = format_range(
            likely, low, high, lambda one: UNKNOWN if one is None else write(one)
        )
        yield ("worth of the mass saved", text, worth_source_of(study), _STUDY)
        if study.share_captured < 1:
            share = self.display.share_text(study.share_captured)
            yield ("share of the gap captured", share, _STUDY, _STUDY)
        if study.target_kg is not None:
            target = self.display.mass_text(study.target_kg)
            yield ("target", f"{target} a pack", "promised", _STUDY)

    def materials(self, proposal: ProposalResults) -> Iterator[_Row]:
        """Give where the values of new materials and the add-backs come from."""
        known = {one.name: one for one in self.results.library.materials}
        names = (effect.change.material for effect in proposal.effects)
        for name in dict.fromkeys(filter(None, names)):
            material = known.get(name)
            source = material.source if material else ""
            mark = material.mark if material else ""
            yield (name, "design values", source or "no source recorded", mark)
        counted = (back for back in proposal.add_backs if back.is_counted)
        by_source: dict[tuple[str, str], list[str]] = {}
        for back in counted:
            origin = (back.add_back.source, back.add_back.mark)
            by_source.setdefault(origin, []).append(back.add_back.key)
        for (source, mark), keys in by_source.items():
            yield ("add-backs", ", ".join(dict.fromkeys(keys)), source, mark)

    def programme(self, proposal: ProposalResults) -> Iterator[_Row]:
        """Give kind of programme, volume and years."""
        study, style = self.study, self.display.style
        said = [str(study.programme)] if study.programme else []
        volume = study.yearly_volume or subject_volume_of(proposal.library, study)
        years = years_text(study.programme_years, self.display)
        if study.volumes:
            said.append(self._by_year(study.volumes))
        elif volume:
            said += [f"{format_number(volume, style=style)} a year", years]
        else:
            said.append(years)
        whose = "study"
        if not (study.yearly_volume or study.volumes):
            whose = f"volume of {study.subject}, else the study"
        yield ("programme", ", ".join(said), whose, _STUDY)

    def _by_year(self, volumes: tuple[int, ...]) -> str:
        """Write the packs of each year, of many years their sum."""
        style = self.display.style
        if len(volumes) > _MOST_VOLUMES:
            total = format_number(sum(volumes), style=style)
            return f"{total} packs in all over {len(volumes)} years"
        packs = (format_number(one, style=style) for one in volumes)
        return f"by year {', '.join(packs)}"

    def rates(self, proposal: ProposalResults) -> Iterator[_Row]:
        """Give rates, interest, budget and chances of release."""
        study, style = self.study, self.display.style
        hour = f"{study.currency}/h"
        labour, station = (
            labelled(format_number(rate, style=style), hour)
            for rate in (study.labour_rate_per_h, study.station_rate_per_h)
        )
        yield (
            "an hour of labour, of a station",
            f"{labour}, {station}",
            _STUDY,
            _STUDY,
        )
        interest = self.display.share_text(proposal.supply.rate)
        yield ("interest a year", interest, _STUDY, _STUDY)
        if study.tooling_budget is not None:
            budget = self.display.money_text(study.tooling_budget)
            yield ("budget for tools", budget, _STUDY, _STUDY)
        chances = ", ".join(
            f"{number} {_chance(effect)}"
            for number, effect in enumerate(proposal.effects, 1)
        )
        yield ("chance of release by change", chances, "given with the change", _STUDY)

    def trials(self, chance: ProposalChance) -> Iterator[_Row]:
        """Give how the chance was worked out."""
        style, common = self.display.style, chance.common
        count = format_number(chance.saved_kg.count, style=style)
        ranges = ", ".join(
            f"{name} × {format_number(one.low, 2, style=style)} to "
            f"{format_number(one.high, 2, style=style)}"
            for name, one in (
                ("new masses", common.mass_bias),
                ("prices", common.price_level),
            )
        )
        method = f"JCGM 101:2008; common to all changes: {ranges}"
        yield ("trials", f"{count}, seed {chance.seed}", method, _PRACTICE)


def _with_tolerance(
    write: Callable[[float], str], value: float, tolerance: float | None
) -> str:
    """Write a figure with its tolerance, the unit once where both have the same."""
    text = write(value)
    if tolerance is None:
        return text
    number, space, unit = text.rpartition(NO_BREAK_SPACE)
    half, _, unit_of_half = write(tolerance).rpartition(NO_BREAK_SPACE)
    if unit_of_half != unit:
        return f"{text} ± {write(tolerance)}"
    return f"{number} ± {half}{space}{unit}"


def _chance(effect: Effect) -> str:
    chance = effect.release_chance
    return "sure" if chance == 1 else format_chance(chance)
