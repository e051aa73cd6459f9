"""Where the figures of a joining inventory come from."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from benchpack.errors import RequestError
from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.study import Study
from benchpack.results.explained_joint import (
    PRACTICE,
    TWO_U,
    mass_figure,
    money_figure,
    rate_inputs,
    time_figure,
)
from benchpack.results.figure import Figure, Input
from benchpack.results.inventory import Grouping, Inventory, grouped, inventory
from benchpack.results.joint_facts import JointFacts, joint_facts, rates_of
from benchpack.results.joint_totals import Measure, Totals, totals_of

SUM_KEYS = {measure: f"joints {measure}" for measure in Measure}
"""Keys of the sums over joints, by measure."""
ONE_KEYS: dict[Measure, str] = {
    measure: f"joint {measure}" for measure in Measure if measure is not Measure.COUNT
}
"""Keys of the figures of a single joint, by measure."""
_OF_ALL = {key: measure for measure, key in SUM_KEYS.items()}
JOINT_KEYS = (*SUM_KEYS.values(), *ONE_KEYS.values())
"""Keys that `explain_joints` answers."""

_BETWEEN = "\x1f"
"""Stands between the names where some joints of a pack are meant."""
_MOST_KINDS = 10
_LABELS = {
    Measure.COUNT: "Pieces",
    Measure.MASS: "Mass of the joints",
    Measure.TIME: "Time for the joints",
    Measure.MONEY: "Money for the joints",
}
_FORMULAS = {
    Measure.COUNT: "sum of n; seams and beads count by their length",
    Measure.MASS: "sum of n m_1",
    Measure.TIME: "sum of n t_1",
    Measure.MONEY: "sum of n [c_1 + t_1 (r_l + r_s) / 3600]",
}
_SOURCES = {
    Measure.COUNT: "counted",
    Measure.MASS: "sum over the rows",
    Measure.TIME: f"sum over the rows; {PRACTICE}",
    Measure.MONEY: f"pieces with labour and station time; {PRACTICE}",
}


def joint_record(pack: str, joint: str) -> str:
    """Give the text that names one joint of a pack where a figure is asked for.

    Parameters
    ----------
    pack, joint : str
        Their names.
    """
    return f"{pack}\n{joint}"


def joints_record(pack: str, joints: Iterable[str]) -> str:
    """Give the text that names some joints of a pack where their sum is asked for.

    Parameters
    ----------
    pack : str
        Its name.
    joints : iterable of str
        Their names.
    """
    return _BETWEEN.join((pack, *joints))


def explain_joints(library: Library, study: Study, key: str, record: str) -> Figure:
    """Say where one figure of the joints comes from.

    Parameters
    ----------
    library : Library
        The records.
    study : Study
        Rates and currency; its subject is the pack where no record is named.
    key : str
        One of `JOINT_KEYS`.
    record : str
        Name of the pack, `joint_record` for the figures of one joint, `joints_record`
        for the sums of some. For the sums of a pack `joint_record` will do as well.

    Raises
    ------
    RequestError
        For a key that is not known, or a pack or joint that is not there.
    """
    if key not in JOINT_KEYS:
        raise RequestError(f"There is no figure {key!r}.")
    if key in _OF_ALL and _BETWEEN in record:
        return _sum_of_some(library, study, key, record)
    joint = _joint(library, record)
    if key in _OF_ALL:
        pack = joint.pack if joint else record or study.subject
        if not library.packs.has(pack):
            raise RequestError(f"{key} needs a pack.")
        return _total(inventory(library, study, pack), key, _OF_ALL[key])
    if joint is None:
        raise RequestError(f"{key} needs a joint.")
    facts = joint_facts(joint, study)
    if key == "joint money":
        return money_figure(facts, rates_of(study))
    return mass_figure(facts) if key == "joint mass" else time_figure(facts)


def _joint(library: Library, record: str) -> Joint | None:
    for pack, name in _readings(record):
        for joint in library.joints_of(pack):
            if joint.name == name:
                return joint
    return None


def _readings(record: str) -> Iterator[tuple[str, str]]:
    """Give each way to part a record: names may hold line breaks themselves."""
    for place, letter in enumerate(record):
        if letter == "\n":
            yield record[:place], record[place + 1 :]


def _sum_of_some(library: Library, study: Study, key: str, record: str) -> Figure:
    pack, *names = record.split(_BETWEEN)
    if not library.packs.has(pack):
        raise RequestError(f"{key} needs a pack.")
    stock, wanted = inventory(library, study, pack), frozenset(names)
    some = tuple(facts for facts in stock.facts if facts.joint.name in wanted)
    if not some:
        raise RequestError(f"These joints of {pack} are no longer there.")
    return _total(
        replace(stock, facts=some, totals=totals_of(some), stations=None),
        key,
        _OF_ALL[key],
        of_rows=len(stock.facts),
    )


def _total(stock: Inventory, key: str, measure: Measure, *, of_rows: int = 0) -> Figure:
    """Explain a sum over the rows of an inventory, which may be some `of_rows`."""
    totals, rows = stock.totals, len(stock.facts)
    label = f"{_LABELS[measure]} of {stock.pack}"
    if of_rows:
        label += f", {rows} of {of_rows} row{'' if of_rows == 1 else 's'}"
    # A few chosen rows are told one by one, a pack by its kinds.
    one_by_one = of_rows and rows <= _MOST_KINDS
    addends = (_members if one_by_one else _kinds)(stock, measure)
    value = totals.of(measure) if stock.facts else math.nan
    half = 2 * totals.mass_u_kg if measure is Measure.MASS else math.nan
    has_range = half > 0 and not math.isnan(value)
    return Figure(
        key=key,
        label=label,
        value=value,
        unit=_unit(measure, stock.rates.currency),
        formula=_FORMULAS[measure],
        inputs=(*addends, *_besides(stock, measure)),
        source=_SOURCES[measure],
        low=max(0.0, value - half) if has_range else math.nan,
        high=value + half if has_range else math.nan,
        range_meaning=f"{TWO_U}; rows in quadrature (5.1.2), the pieces of one row "
        "alike",
        missing=_why_none(stock, measure) if math.isnan(value) else "",
    )


def _why_none(stock: Inventory, measure: Measure) -> str:
    if not stock.facts:
        return f"No joints of {stock.pack} are recorded."
    return f"No row of {stock.pack} has a {measure}."


def _members(stock: Inventory, measure: Measure) -> Iterator[Input]:
    """Give every row."""
    # A row is told in g as in the table: many weigh less than a tenth of a kg.
    is_mass = measure is Measure.MASS
    unit = "g" if is_mass else _unit(measure, stock.rates.currency)
    for facts in stock.facts:
        totals = totals_of((facts,))
        value = totals.of(measure) * (1000 if is_mass else 1)
        label = _counted(facts.joint.name, totals, between=": ")
        yield Input(label, value, unit, _how(facts, measure))


def _kinds(stock: Inventory, measure: Measure) -> Iterator[Input]:
    """Give the greatest kinds, and all others as one."""
    unit = _unit(measure, stock.rates.currency)
    groups = sorted(
        grouped(stock, Grouping.KIND),
        key=lambda group: (math.isnan(v := group.totals.of(measure)), -v),
    )
    for group in groups[:_MOST_KINDS]:
        members = [stock.facts[place] for place in group.members]
        value = group.totals.of(measure)
        label = _counted(group.name, group.totals)
        yield Input(label, value, unit, _origin(members, measure))
    others = groups[_MOST_KINDS:]
    if others:
        members = [stock.facts[place] for group in others for place in group.members]
        value = totals_of(members).of(measure)
        label = f"{len(others)} other kinds"
        yield Input(label, value, unit, _origin(members, measure))


def _counted(name: str, totals: Totals, *, between: str = ", ") -> str:
    said = [f"{totals.pieces} pieces"] if totals.pieces else []
    said += [f"{totals.line_m:.1f} m"] if totals.line_m else []
    return between.join(filter(None, (name, ", ".join(said))))


def _besides(stock: Inventory, measure: Measure) -> Iterator[Input]:
    if measure is Measure.MONEY:
        yield from rate_inputs(stock.rates)
    unknown = stock.totals.unknown(measure)
    if unknown:
        yield Input("rows that add nothing", unknown, "", f"they have no {measure}")
    if measure is Measure.MASS and stock.totals.unstated:
        source = "how their mass is known is not said: the sum has no range"
        yield Input("rows without a range", stock.totals.unstated, "", source)
    if measure is Measure.TIME and stock.stations is not None:
        source = f"at a takt time of {stock.takt_time_s:g} s, rounded up"
        yield Input("stations that it fills", stock.stations, "", source)


def _unit(measure: Measure, currency: str) -> str:
    units = {Measure.MASS: "kg", Measure.TIME: "s", Measure.MONEY: currency}
    return units.get(measure, "")


def _origin(members: Sequence[JointFacts], measure: Measure) -> str:
    """Say how the figures of some rows are known, the most frequent first."""
    said = Counter(_how(facts, measure) for facts in members).most_common()
    if len(said) == 1:
        return said[0][0]
    return ", ".join(
        f"{count} row{'' if count == 1 else 's'} {how}" for how, count in said
    )


def _how(facts: JointFacts, measure: Measure) -> str:
    if measure is Measure.COUNT:
        return "counted"
    if measure is Measure.MASS:
        if math.isnan(facts.mass_kg):
            return "without a mass"
        return str(facts.known_by) or "not said how known"
    value = facts.seconds
    is_usual = facts.is_time_usual
    if measure is Measure.MONEY:
        value, is_usual = facts.money, is_usual or facts.is_cost_usual
    if math.isnan(value):
        return "not known"
    return "usual for the family" if is_usual else "as entered"
