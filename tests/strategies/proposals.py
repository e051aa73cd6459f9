"""Hypothesis strategies for proposals: changes, and the rows of their tables."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy

from benchpack.model.add_backs import ADD_BACKS, AddBack
from benchpack.model.change import CHANGE_FIELDS, Change, ChangeKind, ProgrammeKind
from benchpack.model.duties import DUTIES, Duty
from benchpack.model.duty_rules import Rule
from benchpack.model.fields import Field, Kind
from benchpack.model.library import by_study
from benchpack.model.process import PROCESSES, Process
from benchpack.model.ranges import Range
from benchpack.model.words import GOVERNS, Subsystem

Texts = Callable[[], SearchStrategy[str]]

_CHOICES: dict[str, Any] = {
    "kind": ChangeKind,
    "programme": ProgrammeKind,
    "subsystem": Subsystem,
}


def ranges(field: Field) -> SearchStrategy[Range]:
    """Ranges whose ends stand within the bounds of a column."""
    ends = st.floats(field.floor, field.ceiling).map(lambda end: end + 0.0)
    return st.lists(ends, min_size=3, max_size=3).map(
        lambda found: Range(*sorted(found))
    )


def _lists(names: Texts) -> SearchStrategy[tuple[str, ...]]:
    return st.lists(names(), max_size=3, unique=True).map(tuple)


def _attribute(field: Field, texts: Texts, names: Texts) -> SearchStrategy[Any]:
    if field.name == "governs":
        words = st.sampled_from(GOVERNS[1:])
        return st.lists(words, max_size=2, unique=True).map(tuple)
    if field.kind is Kind.NAMES:
        return _lists(names)
    if field.kind is Kind.REASONS:
        reasons = st.dictionaries(names(), names(), max_size=2)
        return reasons.map(lambda found: tuple(found.items()))
    if field.kind is Kind.CHOICE:
        return st.sampled_from(_CHOICES[field.name])
    if field.kind is Kind.FLAG:
        return st.booleans()
    if field.kind is Kind.COUNT:
        return st.none() | st.integers(1, int(field.ceiling))
    if field.kind is Kind.NUMBER:
        known = st.floats(0, field.ceiling, exclude_min=field.positive).map(abs)
        return st.none() | known if field.name in ("wall_mm", "length_mm") else known
    return names() if field.required else texts()


def changes(texts: Texts, names: Texts) -> SearchStrategy[Change]:
    """Changes with any figures that the model accepts.

    Parameters
    ----------
    texts, names : callable
        Strategies for texts, and for texts that are not blank.
    """
    attributes: dict[str, SearchStrategy[Any]] = {}
    for field in CHANGE_FIELDS:
        if field.attribute:
            attributes[field.attribute] = st.none() | ranges(field)
        else:
            attributes[field.name] = _attribute(field, texts, names)
    return st.fixed_dictionaries(attributes).map(_change)


def _change(values: dict[str, Any]) -> Change:
    others = {*values["requires"], values["name"]}
    values["requires"] = tuple(n for n in values["requires"] if n != values["name"])
    values["excludes"] = tuple(n for n in values["excludes"] if n not in others)
    return Change(**values)


@st.composite
def proposals(
    draw: st.DrawFn, records: SearchStrategy[Change], studies: Sequence[str]
) -> Mapping[str, tuple[Change, ...]]:
    """Changes by study, each with a name of its own there; none without studies."""
    if not studies:
        return {}
    drawn = draw(st.lists(records, max_size=3))
    placed = [replace(c, study=draw(st.sampled_from(studies))) for c in drawn]
    return by_study({(c.study, c.name): c for c in placed}.values())


def proposal_strategies(texts: Texts, names: Texts) -> dict[type, SearchStrategy[Any]]:
    """Give a strategy for each record of proposals."""
    return {
        AddBack: st.sampled_from(ADD_BACKS),
        Change: changes(texts, names),
        Duty: st.sampled_from(DUTIES),
        Process: st.sampled_from(PROCESSES),
        Rule: st.sampled_from([rule for duty in DUTIES for rule in duty.rules]),
    }
