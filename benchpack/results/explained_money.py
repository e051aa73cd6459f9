"""Money of a case as inputs of a figure: per pack, spent once, spread over packs."""

from __future__ import annotations

import math

from benchpack.calc.tooling import capital_recovery_factor
from benchpack.model.study import Study
from benchpack.model.worth_words import ValuedMass
from benchpack.results.change_supply import Supply, is_uneven
from benchpack.results.explained_assumed import (
    OF_STUDY,
    assumed,
    ranged_inputs,
    source_of,
)
from benchpack.results.figure import Input
from benchpack.results.worth_case import WorthCase

RECOVERY = "CRF = i (1 + i)^n / ((1 + i)^n - 1)"
"""How money spent once is spread over the years, as formulas say it."""


def money_inputs(case: WorthCase) -> tuple[Input, ...]:
    """Give what parts, joints and add-backs cost more, per pack, with their ends.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    saving, money, whence = case.saving, case.study.currency, counted_source(case)
    return (
        *ranged_inputs("parts", saving.part_cost, unit=money, source=whence),
        *ranged_inputs("joining", saving.joining_cost, unit=money, source=whence),
        *ranged_inputs("add-backs", saving.add_back_cost, unit=money, source=whence),
    )


def spend_inputs(case: WorthCase) -> tuple[Input, ...]:
    """Give what is spent once, as one sum in the formula and in its two parts.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    saving, money, whence = case.saving, case.study.currency, counted_source(case)
    validation = saving.validation_cost
    return (
        *ranged_inputs("I, spent once", saving.spend, unit=money, source=whence),
        *ranged_inputs("of it tools", saving.tooling, unit=money, source=whence),
        *ranged_inputs("of it validation", validation, unit=money, source=whence),
    )


def counted_source(case: WorthCase) -> str:
    """Say where the money that is counted comes from, and what counts as nothing.

    Parameters
    ----------
    case : WorthCase
        The case.
    """
    if case.saving.valued is not ValuedMass.PROPOSAL or case.proposal is None:
        return "no proposal is valued, so no cost is counted"
    return ledger_source(case.proposal.totals.unknown)


def ledger_source(unknown: tuple[str, ...]) -> str:
    """Name the ledger, and what of it counts as nothing.

    Parameters
    ----------
    unknown : tuple of str
        Changes of which some money is not known.
    """
    lacking = f"; what is not known of {', '.join(unknown)} counts as nothing"
    return "the ledger of the proposal" + (lacking if unknown else "")


def supply_inputs(study: Study, supply: Supply) -> tuple[Input, ...]:
    """Give volume, years and interest as inputs of a figure.

    Parameters
    ----------
    study : Study
        Volumes by year, interest.
    supply : Supply
        Volume, years and interest.
    """
    years = source_of(study, "programme_years")
    if study.volumes:
        years = "volumes by year of the study"
    elif is_uneven(study):
        years += "; the last is a part of one"
    return (
        Input("V, packs a year", supply.yearly_volume, "", volume_source(study)),
        Input("n, years of the programme", supply.years, "", years),
        *assumed(study, "discount_rate", "i, interest a year"),
    )


def volume_source(study: Study) -> str:
    """Say where the packs a year come from that spread what is spent once.

    Parameters
    ----------
    study : Study
        Volumes by year, or one volume and the years.
    """
    if is_uneven(study):
        return "even volume of the same present value"
    return OF_STUDY if study.yearly_volume else "the subject"


def recovery_inputs(study: Study, supply: Supply) -> tuple[Input, ...]:
    """Give what spreads money that is spent once over the packs.

    Parameters
    ----------
    study : Study
        Volumes by year, interest.
    supply : Supply
        Volume, years and interest.
    """
    factor = float(capital_recovery_factor(supply.rate, supply.years))
    spread = "by the formula" if supply.rate else "1 / n without interest"
    found = factor if math.isfinite(factor) else math.nan
    return (
        Input("CRF, of what is spent once a year", found, "1/a", spread),
        *supply_inputs(study, supply),
    )
