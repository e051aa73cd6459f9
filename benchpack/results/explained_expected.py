"""Where the value of a programme comes from that counts each change by its chance."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from benchpack.errors import Problem
from benchpack.model.worth_words import ValuedMass
from benchpack.results.explained_assumed import assumed, saving_inputs, worth_inputs
from benchpack.results.explained_money import counted_source
from benchpack.results.explained_programme import (
    ECONOMY,
    present_packs,
    volume_inputs,
)
from benchpack.results.figure import Figure, Input
from benchpack.results.worth_case import WorthCase
from benchpack.results.worth_model import Term, WorthModel, worth_model
from benchpack.results.worth_programme import Programme

EXPECTED_KEYS = ("expected programme value",)
"""Keys that `expected_figure` answers."""
_CHANCES = (
    "each change counts by its chance of release with those that it needs; validation "
    "is paid for in any case"
)
_OF_PACKS = "P = sum over the years y of n_y / (1 + i)^y"
_WITH_CHANGES = (
    "NPV = P (w sum of r_k m_k - sum of r_k c_k) - sum of r_k T_k - validation, "
    "k each change, " + _OF_PACKS
)
_ALONE = "NPV = P w dm, " + _OF_PACKS


def expected_figure(case: WorthCase, key: str) -> Figure:
    """Say where the value comes from that charts of what matters start from.

    Parameters
    ----------
    case : WorthCase
        The case.
    key : str
        One of `EXPECTED_KEYS`.
    """
    model = worth_model(case)
    figure = Figure(
        key=key,
        label="Programme value (net present value), each change by its chance",
        value=math.nan,
        unit=case.study.currency,
        formula=_ALONE,
        inputs=(
            *worth_inputs(case.study),
            *volume_inputs(case),
            *assumed(case.study, "discount_rate", "i, interest a year"),
        ),
        source=f"{ECONOMY}; {_CHANCES}",
    )
    if isinstance(model, Problem):
        return replace(figure, missing=model.what)
    is_proposal = case.saving.valued is ValuedMass.PROPOSAL
    return replace(
        figure,
        value=model.base,
        formula=_WITH_CHANGES if is_proposal else _ALONE,
        inputs=(*figure.inputs, *_packs(case, figure), *_saving(case, model)),
    )


def _packs(case: WorthCase, figure: Figure) -> Iterator[Input]:
    """Give the present packs where the volumes do not bring them along."""
    if isinstance(case.programme, Programme):
        packs = present_packs(case, case.programme)
        if packs not in figure.inputs:
            yield packs


def _saving(case: WorthCase, model: WorthModel) -> Iterator[Input]:
    """Give what is saved and what it costs, change by change."""
    terms = model.terms
    if not terms:
        yield from saving_inputs(case)
        return
    money = case.study.currency
    unknown = () if case.proposal is None else case.proposal.totals.unknown
    for number, term in enumerate(terms, start=1):
        lacking = (
            "; what is not known counts as nothing" if term.name in unknown else ""
        )
        yield from _of_change(number, term, money=money, lacking=lacking)
    validation = case.saving.validation_cost.likely
    yield Input("validation", validation, money, counted_source(case))


def _of_change(number: int, term: Term, *, money: str, lacking: str) -> Iterator[Input]:
    """Give chance, mass and money of one change; tools where it has any."""
    name, source = term.name, f"the ledger{lacking}"
    yield Input(f"r_{number}, chance of {name}", term.chance, "", "with what it needs")
    yield Input(f"m_{number}, mass saved by it", term.saved_kg, "kg", "the ledger")
    label = f"c_{number}, its parts, add-backs and joining"
    yield Input(label, term.money, money, source)
    if term.tooling:
        yield Input(f"T_{number}, its tools", term.tooling, money, source)
