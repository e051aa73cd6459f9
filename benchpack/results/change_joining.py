"""What joints cost and take, with the ranges that are usual of their families."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from benchpack.calc.joining import joint_money
from benchpack.model.families import Range as FamilyRange
from benchpack.model.ranges import Range
from benchpack.results.joint_facts import JointFacts, Rates
from benchpack.results.wording import listed

_NONE = Range.exactly(0.0)


@dataclass(frozen=True, slots=True)
class JoiningChange:
    """What joints cost and take more, after less before, per pack.

    Parameters
    ----------
    money : Range
        Money per pack, pieces with labour and station time.
    seconds : Range
        Seconds on the line per pack.
    why : tuple of str
        What is not known, as sentences without a full stop.
    """

    money: Range
    seconds: Range
    why: tuple[str, ...] = ()


def compare_joining(
    before: Iterable[JointFacts], after: Iterable[JointFacts], rates: Rates
) -> JoiningChange:
    """Give what new joints cost more than the old ones.

    Parameters
    ----------
    before, after : iterable of JointFacts
        Joints that go and joints that come.
    rates : Rates
        What time costs.
    """
    gone, come = list(before), list(after)
    money = seconds = _NONE
    for sign, joints in ((-1.0, gone), (1.0, come)):
        for facts in joints:
            money += _money(facts, rates).scaled(sign)
            seconds += _seconds(facts).scaled(sign)
    lacking = tuple(
        facts.joint.name
        for facts in (*come, *gone)
        if math.isnan(facts.money) or math.isnan(facts.seconds)
    )
    why = (
        (f"time or cost of {listed(lacking, most=3)} is not known",) if lacking else ()
    )
    return JoiningChange(money, seconds, why)


def _seconds(facts: JointFacts) -> Range:
    if math.isnan(facts.seconds):
        return _NONE
    if not facts.is_time_usual or facts.family is None:
        return Range.exactly(facts.seconds)
    return Range(*(facts.seconds * end for end in _relative(facts.family.time_s)))


@lru_cache(maxsize=8192)
def _money(facts: JointFacts, rates: Rates) -> Range:
    if math.isnan(facts.money):
        return _NONE
    family = facts.family
    if family is None or not (facts.is_time_usual or facts.is_cost_usual):
        return Range.exactly(facts.money)
    costs = _relative(family.cost) if facts.is_cost_usual else (1.0, 1.0, 1.0)
    times = _relative(family.time_s) if facts.is_time_usual else (1.0, 1.0, 1.0)
    ends = joint_money(
        facts.joint.count,
        piece_cost=facts.cost_each * np.array(costs),
        time_each_s=facts.time_each_s * np.array(times),
        labour_rate_per_h=rates.labour_per_h,
        station_rate_per_h=rates.station_per_h,
    )
    return Range(*ends.tolist())


def _relative(usual: FamilyRange) -> tuple[float, float, float]:
    if not usual.likely > 0:
        return 1.0, 1.0, 1.0
    return usual.low / usual.likely, 1.0, usual.high / usual.likely
