"""Hypothesis strategies for assumptions and for named sets of them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy

from benchpack.model.assumption_fields import NEW_FIELDS
from benchpack.model.assumptions import (
    LEAST_YEARS,
    MOST_YEARS,
    Assumptions,
    AssumptionSet,
)
from benchpack.model.change_words import ProgrammeKind
from benchpack.model.drive_cycle import DriveCycle
from benchpack.model.fields import Field, Kind
from benchpack.model.library import by_study
from benchpack.model.worth_words import EnergyFrom, Sizing, ValuedMass
from tests.strategies.proposals import ranges

Texts = Callable[[], SearchStrategy[str]]

_CHOICES: dict[str, Any] = {
    "valued_mass": ValuedMass,
    "energy_from": EnergyFrom,
    "sizing": Sizing,
}
_OPTIONAL = frozenset(
    {"part_price", "old_part_price", "pack_density_wh_per_kg", "secondary_share"}
)


def drive_cycles(texts: Texts) -> SearchStrategy[DriveCycle]:
    """Short cycles that can be driven."""
    speeds = st.lists(st.floats(0, 150).map(abs), min_size=1, max_size=5)
    return st.builds(
        DriveCycle,
        name=texts(),
        step_s=st.floats(0.1, 60.0),
        speed_kmh=speeds.map(lambda found: (*found, 50.0)),
    )


def _attribute(field: Field, texts: Texts) -> SearchStrategy[Any]:
    if field.name == "drive_cycle":
        return st.just("") | drive_cycles(texts).map(DriveCycle.to_text)
    if field.kind is Kind.CHOICE:
        return st.sampled_from(_CHOICES[field.name])
    if field.kind is Kind.COUNTS:
        return st.lists(st.integers(0, 10**9), max_size=4).map(tuple)
    if field.kind is Kind.COUNT:
        floor, ceiling = int(field.floor), int(field.ceiling)
        return st.none() | st.integers(floor, ceiling)
    if field.kind is Kind.NUMBER:
        known = st.floats(field.floor, field.ceiling).map(abs)
        return st.none() | known if field.name in _OPTIONAL else known
    return texts()


def assumptions(texts: Texts) -> SearchStrategy[dict[str, Any]]:
    """Assumptions by attribute, any that the model accepts.

    Parameters
    ----------
    texts : callable
        A strategy for texts.
    """
    worths = st.lists(st.floats(0, 1e6).map(abs), min_size=3, max_size=3).map(sorted)
    shares = st.floats(0, 1).map(abs)
    attributes: dict[str, SearchStrategy[Any]] = {
        "worth_reason": texts(),
        "share_captured": shares,
        "programme": st.sampled_from(ProgrammeKind),
        "yearly_volume": st.none() | st.integers(1, 10**9),
        "programme_years": st.floats(LEAST_YEARS, MOST_YEARS),
        "discount_rate": shares,
    }
    for field in NEW_FIELDS:
        if field.attribute:
            attributes[field.attribute] = ranges(field)
        else:
            attributes[field.name] = _attribute(field, texts)
    named = ("worth_low_per_kg", "worth_likely_per_kg", "worth_high_per_kg")
    return st.builds(
        lambda worth, others: {**dict(zip(named, worth, strict=True)), **others},
        worths,
        st.fixed_dictionaries(attributes),
    )


@st.composite
def kept_sets(
    draw: st.DrawFn, texts: Texts, names: Texts, studies: Sequence[str]
) -> Mapping[str, tuple[AssumptionSet, ...]]:
    """Named sets by study; none without studies."""
    if not studies:
        return {}
    kept = st.builds(
        lambda study, name, values: AssumptionSet(study, name, **values),
        st.sampled_from(studies),
        names(),
        assumptions(texts),
    )
    drawn = draw(st.lists(kept, max_size=2))
    return by_study({(one.study, one.name): one for one in drawn}.values())


def assumption_strategies(
    texts: Texts, names: Texts
) -> dict[type, SearchStrategy[Any]]:
    """Give a strategy for each record of assumptions."""
    return {
        Assumptions: assumptions(texts).map(lambda values: Assumptions(**values)),
        AssumptionSet: st.builds(
            lambda study, name, values: AssumptionSet(study, name, **values),
            names(),
            names(),
            assumptions(texts),
        ),
        DriveCycle: drive_cycles(texts),
    }
