"""The density of the battery saved is that of installed energy, on a stated basis."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from benchpack.model.study import Study
from benchpack.model.words import EnergyBasis
from benchpack.results.explain_worth import explain_worth
from benchpack.results.results import compute
from benchpack.results.worth_case import WorthCase, worth_case
from benchpack.results.worth_density import density_source, subject_density_of
from tests.unit.results import packs

EPS = "eps, density of the battery saved"


def case_on(basis: EnergyBasis, energy_kwh: float = 76.0, **study: Any) -> WorthCase:
    library = packs.library(
        packs.pack("Heron 70", energy_kwh, 460, energy_basis=basis),
        packs.pack("Egret 80", 80, 470, energy_basis=basis),
    )
    asked = Study(**{"subject": "Heron 70", "reference": "Egret 80", **study})
    return worth_case(compute(library, asked))


@given(share=st.floats(0.05, 1))
def test_usable_and_gross_figures_of_one_pack_give_one_worth(share: float) -> None:
    """A pack of 80 kWh is the same pack if its usable energy is recorded."""
    gross = case_on(EnergyBasis.GROSS, 80.0, usable_share=share).derived
    usable = case_on(EnergyBasis.USABLE, 80.0 * share, usable_share=share).derived
    assert_allclose(usable.density_wh_per_kg, gross.density_wh_per_kg, rtol=1e-12)
    assert (usable.worth_per_kg is None) == (gross.worth_per_kg is None)
    if usable.worth_per_kg is not None and gross.worth_per_kg is not None:
        assert_allclose(usable.worth_per_kg.ends, gross.worth_per_kg.ends, rtol=1e-9)


@pytest.mark.parametrize(
    ("basis", "said"),
    [
        (EnergyBasis.GROSS, "gross energy over mass of Heron 70"),
        (
            EnergyBasis.USABLE,
            "usable energy over mass of Heron 70, divided by the usable share",
        ),
        (
            EnergyBasis.UNKNOWN,
            "energy over mass of Heron 70, basis not stated, taken as installed",
        ),
    ],
)
def test_the_source_says_the_basis(basis: EnergyBasis, said: str) -> None:
    case = case_on(basis, usable_share=0.95)
    assert density_source(case.gap.library, case.study) == said
    eps = next(
        one for one in explain_worth(case, "derived worth").inputs if one.label == EPS
    )
    assert eps.source == said
    wanted = 1000 * 76 / 460 / (0.95 if basis is EnergyBasis.USABLE else 1)
    assert eps.value == pytest.approx(wanted, rel=1e-12)


def test_a_density_of_its_own_is_taken_as_it_is() -> None:
    case = case_on(EnergyBasis.USABLE, pack_density_wh_per_kg=170.0)
    assert case.derived.density_wh_per_kg == 170.0
    assert density_source(case.gap.library, case.study) == "the study"


def test_without_a_subject_there_is_none() -> None:
    library = packs.library(packs.pack("Heron 70", 70, 460))
    assert math.isnan(subject_density_of(library, Study(subject="")))
    assert density_source(library, Study(subject="")) == "no subject"
