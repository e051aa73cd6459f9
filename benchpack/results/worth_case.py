"""Everything that the Worth page shows of a study, but for what takes trials."""

from __future__ import annotations

from dataclasses import dataclass

from benchpack.errors import DataError, Problem
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.results.change_supply import (
    Supply,
    planned_volumes,
    subject_volume_of,
    supply_of,
)
from benchpack.results.proposal import ProposalResults, proposal
from benchpack.results.results import Results, compute
from benchpack.results.worth_density import subject_density_of
from benchpack.results.worth_derived import DerivedWorth, derived_worth
from benchpack.results.worth_price import Price, price_of
from benchpack.results.worth_programme import Programme, programme_of
from benchpack.results.worth_saving import ValuedSaving, valued_saving
from benchpack.results.worth_target import Target, target_of


@dataclass(frozen=True, slots=True, eq=False)
class WorthCase:
    """What a saving is worth in one study.

    Parameters
    ----------
    gap : Results
        The gap, with the study.
    proposal : ProposalResults or None
        The proposal, None where the study has no changes or no subject.
    saving : ValuedSaving
        What is valued.
    supply : Supply
        Volume, years and rates.
    programme : Programme or Problem
        The value by year, or why there is none.
    price : Price or Problem
        What the new parts may cost, or why that cannot be said.
    derived : DerivedWorth
        The worth by the vehicle.
    target : Target
        What is promised.
    """

    gap: Results
    proposal: ProposalResults | None
    saving: ValuedSaving
    supply: Supply
    programme: Programme | Problem
    price: Price | Problem
    derived: DerivedWorth
    target: Target

    @property
    def study(self) -> Study:
        """The study."""
        return self.gap.study


def worth_case(gap: Results, *, previous: WorthCase | None = None) -> WorthCase:
    """Give what a saving is worth in one study.

    Parameters
    ----------
    gap : Results
        The gap, with library and study.
    previous : WorthCase, optional
        The state before; what cannot have changed is taken over, so that a tick of
        the worth costs a few products.
    """
    library, study = gap.library, gap.study
    found = _proposal(gap, previous)
    volume = subject_volume_of(library, study)
    density = subject_density_of(library, study)
    saving = valued_saving(gap, found)
    supply = supply_of(study, subject_volume=volume)
    return WorthCase(
        gap=gap,
        proposal=found,
        saving=saving,
        supply=supply,
        programme=programme_of(study, saving, planned_volumes(study, volume)),
        price=price_of(study, saving, supply),
        derived=derived_worth(study, subject_density=density, saved_kg=saving.saved_kg),
        target=target_of(gap, found),
    )


def case_with(case: WorthCase, study: Study) -> WorthCase:
    """Give the case of the same library with other assumptions.

    Parameters
    ----------
    case : WorthCase
        The case as it is.
    study : Study
        The study with other assumptions.
    """
    gap = compute(case.gap.library, study, previous=case.gap)
    return worth_case(gap, previous=case)


def _proposal(gap: Results, previous: WorthCase | None) -> ProposalResults | None:
    library: Library = gap.library
    if not library.changes_of(gap.study.name):
        return None
    try:
        before = None if previous is None else previous.proposal
        return proposal(library, gap.study, previous=before, gap=gap)
    except DataError:
        return None
