"""The subject against its references, on all bases."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from benchpack.errors import DataError
from benchpack.model.boundary import parse_boundary
from benchpack.model.study import Study
from benchpack.model.words import Basis, EnergyBasis, KnownBy
from benchpack.results.comparison import compare
from tests.unit.results.packs import bench, library, pack


def test_every_basis_stands_beside_the_others() -> None:
    records, study = bench()
    found = compare(records, study)
    place = found.place("Egret 80")
    assert place is not None
    # Worked vector of the trade reference: 460 kg, 70 kWh against 470 kg, 80 kWh.
    assert_allclose(found.as_weighed_kg[place], -10.0)
    assert_allclose(found.density_share_kg[place], 48.75)
    assert_allclose(found.scaled_kg[place], 38.81, atol=0.005)
    assert_allclose(found.scaled_low_kg[place], 28.19, atol=0.005)
    assert_allclose(found.scaled_high_kg[place], 48.75)
    shares = found.energy_share_kg + found.density_share_kg
    assert_allclose(shares, found.as_weighed_kg, rtol=1e-9)


@pytest.mark.parametrize("basis", list(Basis))
def test_the_counted_gap_is_that_of_the_basis(basis: Basis) -> None:
    records, study = bench(basis=basis)
    found = compare(records, study)
    assert_allclose(found.gap_kg, found.by_basis(basis))
    assert np.all(np.isfinite(found.gap_kg))
    assert np.all(found.gap_u_kg > 0)


def test_the_trend_leaves_the_subject_out() -> None:
    records, study = bench(basis=Basis.TREND)
    moved = records.packs.with_cells("mass_kg", [0], [4000.0])
    before, after = (
        compare(records, study),
        compare(replace(records, packs=moved), study),
    )
    assert before.trend is not None
    assert before.trend == after.trend
    assert before.trend.n == 3


def test_two_peers_give_no_trend_but_all_other_gaps() -> None:
    records, study = bench(basis=Basis.TREND)
    few = replace(records, packs=records.packs.without([3]))
    found = compare(few, study)
    assert found.trend is None
    assert found.trend_problem is not None
    assert np.all(np.isnan(found.to_trend_kg))
    assert np.all(np.isfinite(found.density_share_kg))


def test_gross_and_usable_energy_are_never_mixed() -> None:
    records = library(
        pack("Heron 70", 70, 460),
        pack("Egret 80", 80, 470, energy_basis=EnergyBasis.USABLE),
        pack("Ibis 75", 75, 465, energy_basis=EnergyBasis.UNKNOWN),
    )
    found = compare(records, Study(subject="Heron 70", reference="Egret 80"))
    assert found.comparable.tolist() == [False, True]
    assert np.isnan(found.density_share_kg[0])
    assert np.isnan(found.energy_share_kg[0])
    assert found.as_weighed_kg[0] == -10
    assert np.isfinite(found.density_share_kg[1])


def test_known_boundary_differences_are_taken_out() -> None:
    records = library(
        pack("Heron 70", 70, 460, boundary=parse_boundary("coolant=out")),
        pack("Egret 80", 80, 470, boundary=parse_boundary("coolant=in 6.5")),
    )
    found = compare(records, Study(subject="Heron 70", reference="Egret 80"))
    assert found.reference_mass_kg.tolist() == [463.5]
    assert found.as_weighed_kg.tolist() == [-3.5]
    match = found.boundary(0)
    assert [(item.item, item.pack) for item in match.taken_out] == [
        ("coolant", "Egret 80")
    ]


def test_unknown_masses_of_unlike_boundaries_are_left_and_named() -> None:
    records = library(
        pack("Heron 70", 70, 460, boundary=parse_boundary("bottom shield=in")),
        pack("Egret 80", 80, 470, boundary=parse_boundary("bottom shield=out")),
    )
    found = compare(records, Study(subject="Heron 70", reference="Egret 80"))
    assert found.as_weighed_kg.tolist() == [-10]
    assert found.boundary(0).unlike == ("bottom shield",)


def test_a_mass_of_unstated_origin_has_no_uncertainty() -> None:
    records = library(
        pack("Heron 70", 70, 460),
        pack("Egret 80", 80, 470, mass_known_by=KnownBy.UNSTATED),
        pack("Ibis 75", 75, 465, mass_known_by=KnownBy.UNSTATED, mass_tolerance_kg=3),
    )
    found = compare(records, Study(subject="Heron 70", basis=Basis.AS_WEIGHED))
    assert np.isnan(found.gap_u_kg[0])
    # 0.2 % of 460 kg, and 3 kg as a rectangular tolerance (JCGM 100:2008 4.3.7).
    assert_allclose(found.gap_u_kg[1], np.hypot(0.92, 3 / np.sqrt(3)))


def test_peers_and_named_references_choose_the_rows() -> None:
    records, study = bench(peers=("Bittern 60",))
    assert compare(records, study).names.tolist() == ["Egret 80", "Bittern 60"]
    named = compare(records, study, references=["Crane 100"])
    assert named.names.tolist() == ["Crane 100"]


@pytest.mark.parametrize("name", ["", "Stork 90"])
def test_a_subject_that_is_not_there_is_said(name: str) -> None:
    records, study = bench(subject=name)
    with pytest.raises(DataError, match="subject"):
        compare(records, study)
