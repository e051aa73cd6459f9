"""Money spent once is shared as the programme brings it in, parts of years too."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose

from benchpack.calc.worth import programme_npv
from benchpack.model.study import Study
from benchpack.results.change_supply import (
    planned_volumes,
    subject_volume_of,
    supply_of,
)
from benchpack.results.explained_money import supply_inputs
from benchpack.results.worth_price import Price
from benchpack.results.worth_programme import Programme
from benchpack.results.worth_shares_of_gain import GainShares, shares_of_programme
from tests.unit.results.worth_samples import COSTED, RICH, case_of, library_of

CASE = case_of(COSTED, study=replace(RICH, old_part_price=None))


@settings(max_examples=40, deadline=None)
@given(years=st.floats(0.1, 12), rate=st.floats(0, 0.5))
def test_the_whole_gain_of_all_packs_is_the_value(years: float, rate: float) -> None:
    """At reckoned old cost, shares over the programme sum to its value."""
    study = replace(
        RICH, old_part_price=None, programme_years=years, discount_rate=rate
    )
    case = case_of(COSTED, study=study)
    assert isinstance(case.price, Price)
    assert isinstance(case.programme, Programme)
    shares = shares_of_programme(case)
    assert isinstance(shares, GainShares)
    slack = 1e-9 * case.programme.spend.likely
    assert_allclose(
        shares.whole.likely, case.programme.npv.likely, rtol=1e-9, atol=slack
    )
    packs = programme_npv(1.0, case.programme.volumes, discount_rate=rate)
    assert_allclose(shares.packs, float(packs), rtol=1e-12)


def test_a_part_of_a_year_makes_an_even_volume() -> None:
    """3.5 years of 1,000 packs at no interest: 3,500 packs in 4 years (by hand)."""
    study = Study(yearly_volume=1000, programme_years=3.5, discount_rate=0.0)
    found = supply_of(study, subject_volume=None)
    assert found.yearly_volume == pytest.approx(875.0, rel=1e-12)
    assert found.years == 4.0
    whole = supply_of(replace(study, programme_years=4.0), subject_volume=None)
    assert (whole.yearly_volume, whole.years) == (1000.0, 4.0)


@pytest.mark.parametrize(
    ("study", "whose", "years"),
    [
        (replace(RICH, programme_years=4.0), "the study", "the study"),
        (
            replace(RICH, programme_years=4.0, yearly_volume=None),
            "the subject",
            "the study",
        ),
        (
            replace(RICH, volumes=(20_000, 40_000, 60_000)),
            "even volume of the same present value",
            "volumes by year of the study",
        ),
        (
            replace(RICH, volumes=(20_000, 40_000), yearly_volume=None),
            "even volume of the same present value",
            "volumes by year of the study",
        ),
        (
            replace(RICH, programme_years=3.5),
            "even volume of the same present value",
            "the study; the last is a part of one",
        ),
    ],
)
def test_every_explanation_says_whose_volume_it_is(
    study: Study, whose: str, years: str
) -> None:
    volume, span, _ = supply_inputs(study, supply_of(study, subject_volume=500))
    assert (volume.source, span.source) == (whose, years)


def test_the_volume_of_a_subject_that_is_not_there_is_not_known() -> None:
    library = library_of(COSTED)
    assert subject_volume_of(library, replace(RICH, subject="nobody")) is None
    assert planned_volumes(replace(RICH, yearly_volume=None), None).size == 0
