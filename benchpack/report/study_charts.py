"""The charts of a study by name, for files of their own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from benchpack.report.chart_specs import ChartSpec
from benchpack.report.gap_charts import energy_mass_spec, gap_bars_spec, waterfall_spec
from benchpack.report.joint_charts import pareto_spec
from benchpack.report.proposal_charts import proposal_waterfall
from benchpack.report.worth_charts import fan_spec
from benchpack.results.inventory import Grouping, inventory
from benchpack.results.joint_totals import Measure
from benchpack.results.proposal import ProposalResults
from benchpack.results.results import Results


@dataclass(frozen=True, slots=True, eq=False)
class NamedChart:
    """A chart with a name for its file.

    Parameters
    ----------
    name : str
        What it shows.
    spec : ChartSpec
        The chart; it has something to draw.
    """

    name: str
    spec: ChartSpec


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
    return tuple(
        NamedChart(name, spec)
        for name, spec in _charts(results, proposal)
        if not spec.is_empty
    )


def _charts(
    results: Results, proposal: ProposalResults | None
) -> Iterator[tuple[str, ChartSpec]]:
    study = results.study
    yield "energy and mass", energy_mass_spec(results)
    yield "gaps", gap_bars_spec(results)
    yield "gap by subsystem", waterfall_spec(results)
    if results.library.joints_of(study.subject):
        stock = inventory(results.library, study, study.subject)
        for measure in (Measure.COUNT, Measure.MASS):
            spec = pareto_spec(stock, study, grouping=Grouping.KIND, measure=measure)
            yield f"joints by {measure}", spec
    if proposal is not None and proposal.effects:
        yield "proposal", proposal_waterfall(proposal)
    yield "worth", fan_spec(results)
