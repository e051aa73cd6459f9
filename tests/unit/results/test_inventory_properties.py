"""What holds of any inventory: sums, order, scale, quadrature."""

from __future__ import annotations

import math
from dataclasses import replace
from random import Random

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from benchpack.model.families import FAMILY_NAMES
from benchpack.model.joint import Joint
from benchpack.model.words import KnownBy, Subsystem
from benchpack.results.inventory import Grouping, Totals, grouped, totals_of
from benchpack.results.joint_facts import facts_of
from tests.strategies.records import joints as any_joints
from tests.unit.results.joint_samples import EUR, stock

thorough = settings(
    deadline=None, suppress_health_check=[HealthCheck.too_slow], max_examples=25
)
SUMS = ("pieces", "line_m", "mass_kg", "seconds", "money")
COUNTS = ("rows", "unknown_mass", "unknown_time", "unknown_money", "unstated")

_FIGURES = st.none() | st.floats(0, 500)
_KNOWN = st.sampled_from([way for way in KnownBy if way is not KnownBy.UNSTATED])
_JOINTS = st.builds(
    Joint,
    pack=st.just("Heron 70"),
    name=st.uuids().map(str),
    family=st.sampled_from(("", "magnet", *FAMILY_NAMES)),
    designation=st.sampled_from(
        ("", "ISO 4762 M6x16 8.8", "M8x25", "silicone foam 12x6", "4.8x12", "odd")
    ),
    count=st.integers(1, 400),
    length_mm=st.none() | st.floats(1, 9000),
    mass_each_g=_FIGURES,
    known_by=_KNOWN,
    role=st.sampled_from(("", "seal", "clamp")),
    joins=st.sampled_from(("", "lid", "tray")),
    to=st.sampled_from(("", "lid", "tray")),
    subsystem=st.sampled_from(Subsystem),
    time_each_s=_FIGURES,
    cost_each=_FIGURES,
)
SETS = st.lists(_JOINTS, max_size=6, unique_by=lambda joint: joint.name)


def agree(one: Totals, other: Totals) -> None:
    for name in SUMS:
        assert_allclose(getattr(one, name), getattr(other, name), rtol=1e-9, atol=1e-12)
    for name in COUNTS:
        assert getattr(one, name) == getattr(other, name)


@given(grouping=st.sampled_from(Grouping), joints=SETS)
@thorough
def test_groups_sum_to_the_totals(grouping: Grouping, joints: list[Joint]) -> None:
    held = stock(*joints)
    groups = grouped(held, grouping)
    places = sorted(place for group in groups for place in group.members)
    assert places == list(range(len(joints)))
    for name in SUMS:
        summed = math.fsum(getattr(group.totals, name) for group in groups)
        assert_allclose(summed, getattr(held.totals, name), rtol=1e-9, atol=1e-12)
    for name in COUNTS:
        summed = sum(getattr(group.totals, name) for group in groups)
        assert summed == getattr(held.totals, name)
    squares = math.fsum(group.totals.mass_u_kg**2 for group in groups)
    assert_allclose(math.sqrt(squares), held.totals.mass_u_kg, rtol=1e-9, atol=1e-12)


@given(joints=SETS, order=st.randoms(use_true_random=False))
@thorough
def test_the_order_does_not_matter(joints: list[Joint], order: Random) -> None:
    shuffled = list(joints)
    order.shuffle(shuffled)
    one, other = stock(*joints), stock(*shuffled)
    agree(one.totals, other.totals)
    assert_allclose(one.totals.mass_u_kg, other.totals.mass_u_kg, rtol=1e-9)
    assert (one.sizes, one.drives, one.tools) == (
        other.sizes,
        other.drives,
        other.tools,
    )
    names = [[g.name for g in grouped(held, Grouping.ROLE)] for held in (one, other)]
    assert names[0] == names[1]


@given(joints=SETS, factor=st.integers(2, 50))
@thorough
def test_twice_the_pieces_are_twice_of_everything(
    joints: list[Joint], factor: int
) -> None:
    one = totals_of(facts_of(joints, EUR))
    many = totals_of(
        facts_of([replace(j, count=factor * j.count) for j in joints], EUR)
    )
    for name in (*SUMS, "mass_u_kg"):
        scaled = factor * getattr(one, name)
        assert_allclose(getattr(many, name), scaled, rtol=1e-9, atol=1e-12)


@given(joints=SETS)
@thorough
def test_uncertainties_of_rows_add_in_quadrature(joints: list[Joint]) -> None:
    held = stock(*joints)
    squares = [f.mass_u_kg**2 for f in held.facts if f.mass_kg > 0]
    expected = math.sqrt(math.fsum(squares))
    assert_allclose(held.totals.mass_u_kg, expected, rtol=1e-9, atol=1e-15)


@given(joint=any_joints())
@thorough
def test_any_joint_at_all_is_worked_out(joint: Joint) -> None:
    """Awkward texts and figures never raise, and nothing is invented."""
    (found,) = facts_of((joint,), EUR)
    assert found.joint is joint
    if joint.mass_each_g is not None:
        assert found.mass_each_g == joint.mass_each_g
        assert not found.is_mass_computed
    for amount in (found.mass_kg, found.seconds, found.money, found.line_mm):
        assert math.isnan(amount) or amount >= 0
    assert all(problem.record == joint.name for problem in found.problems)
