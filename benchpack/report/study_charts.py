"""The charts of a study by name, for files of their own."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from benchpack.model.worth_words import ValuedMass
from benchpack.report.chart_specs import ChartSpec
from benchpack.report.gap_charts import energy_mass_spec, gap_bars_spec, waterfall_spec
from benchpack.report.joint_charts import pareto_spec
from benchpack.report.proposal_charts import proposal_waterfall
from benchpack.report.worth_charts import fan_spec
from benchpack.report.worth_matters import worth_swings_spec
from benchpack.report.worth_price import price_spec
from benchpack.report.worth_programme import programme_spec
from benchpack.report.worth_vehicle import vehicle_spec
from benchpack.results.inventory import Grouping, inventory
from benchpack.results.joint_totals import Measure
from benchpack.results.proposal import ProposalResults
from benchpack.results.results import Results
from benchpack.results.worth_case import worth_case
from benchpack.results.worth_matters import worth_swings
from benchpack.results.worth_programme import Programme


@dataclass(frozen=True, slots=True, eq=False)
class NamedChart:
    """A chart with a name for its file.

    Parameters
    ----------
    name : str
        What it shows.
    spec : ChartSpec
        The chart; it has something to draw.
    is_internal : bool
        True where it shows what a customer does not see: costs, interest, programme.
    """

    name: str
    spec: ChartSpec
    is_internal: bool = False


def study_charts(
    results: Results, proposal: ProposalResults | None
) -> tuple[NamedChart, ...]:
    """Give the charts of a study that have something to draw.

    Parameters
    ----------
    results : Results
        The gap.
    proposal : ProposalResults or None
        What should close it.
    """
    charts = (*_of_gap(results), *_of_proposal(proposal), *_of_worth(results))
    return tuple(chart for chart in charts if not chart.spec.is_empty)


def _of_gap(results: Results) -> Iterator[NamedChart]:
    study = results.study
    yield NamedChart("energy and mass", energy_mass_spec(results))
    yield NamedChart("gaps", gap_bars_spec(results))
    yield NamedChart("gap by subsystem", waterfall_spec(results))
    if results.library.joints_of(study.subject):
        stock = inventory(results.library, study, study.subject)
        for measure in (Measure.COUNT, Measure.MASS):
            spec = pareto_spec(stock, study, grouping=Grouping.KIND, measure=measure)
            yield NamedChart(f"joints by {measure}", spec)


def _of_proposal(proposal: ProposalResults | None) -> Iterator[NamedChart]:
    if proposal is not None and proposal.effects:
        yield NamedChart("proposal", proposal_waterfall(proposal))


def _of_worth(results: Results) -> Iterator[NamedChart]:
    case = worth_case(results)
    saving = case.saving
    proposed = saving.saved_kg if saving.valued is ValuedMass.PROPOSAL else None
    yield NamedChart("worth", fan_spec(results, proposed))
    yield NamedChart("worth by the vehicle", vehicle_spec(case))
    programme = case.programme
    released = programme.npv.likely if isinstance(programme, Programme) else math.nan
    found = worth_swings(case)
    swings = worth_swings_spec(found, results.study, released=released)
    yield NamedChart("programme", programme_spec(case), is_internal=True)
    yield NamedChart("price", price_spec(case), is_internal=True)
    yield NamedChart("what matters", swings, is_internal=True)
