"""Seal lines that studs and nuts clamp: the nuts say how they are tightened."""

from __future__ import annotations

from dataclasses import replace

import pytest

from benchpack.model.joint import Joint
from benchpack.results.clamp import clamp_checks
from benchpack.results.inventory import inventory
from benchpack.results.seal import least_clamp_n, seal_checks, seal_lines
from tests.unit.results.test_seal import GASKET, PACK, SCREWS, STUDY, bench

STUDS = replace(SCREWS, name="studs", family="stud", designation="M6x20", tightening="")
NUTS = replace(
    SCREWS,
    name="nuts",
    family="nut",
    designation="EN 1661 M6 8",
    property_class="8",
    tightening="torque and angle",
    role="carry",
)


def least_n(*joints: Joint) -> float:
    records = bench(GASKET, *joints)
    (line,) = seal_lines(records, inventory(records, STUDY, PACK))
    return least_clamp_n(line, STUDY)


def test_studs_clamp_a_seal_as_their_nuts_are_tightened() -> None:
    stated = least_n(replace(STUDS, tightening="torque and angle"))
    assert least_n(STUDS, NUTS) == stated
    assert stated / least_n(STUDS) == pytest.approx(2.0 / 1.4)


def test_a_nut_of_another_thread_says_nothing_of_a_stud() -> None:
    other = replace(NUTS, designation="EN 1661 M8 8")
    assert least_n(STUDS, other) == least_n(STUDS)


def test_both_checks_name_one_clamp_load() -> None:
    records = bench(GASKET, STUDS, NUTS)
    stock = inventory(records, STUDY, PACK)
    (clamp,) = clamp_checks(stock, STUDY, library=records)
    (seal,) = seal_checks(records, stock, STUDY)
    least = {figure.label: figure.value for figure in clamp.figures}["F_min"]
    assert {f.label: f.value for f in seal.figures}["least clamp load"] == least
    assert "7.3\u00a0kN" in clamp.words
    assert "7.3\u00a0kN" in seal.words
