"""Unknown stays unknown, nothing warns, and one subject meets many references."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc import (
    densities,
    gap,
    gap_uncertainty,
    groups,
    scaled_uncertainty,
    uncertainty,
    worth,
)
from benchpack.errors import RequestError

if TYPE_CHECKING:
    from numpy.typing import ArrayLike

NAN = float("nan")
DENOMINATORS = [100.0, 0.0, -5.0, NAN]


@pytest.mark.parametrize(
    "ratio",
    [
        densities.gravimetric_density_wh_per_kg,
        densities.volumetric_density_wh_per_l,
        densities.cell_to_pack_ratio,
        densities.per_energy,
    ],
)
def test_only_a_positive_denominator_gives_a_ratio(ratio: object) -> None:
    assert callable(ratio)
    known = np.isfinite(ratio(50.0, DENOMINATORS))
    assert_array_equal(known, [True, False, False, False])


def test_none_is_unknown() -> None:
    listed: list[object] = [70.0, None]
    given = densities.gravimetric_density_wh_per_kg(np.array(listed, object), 460.0)
    assert_array_equal(np.isnan(given), [False, True])


def test_a_single_figure_comes_back_as_one_float() -> None:
    results: list[object] = [
        gap.gap_scaled_kg(
            460.0,
            470.0,
            subject_energy_kwh=70.0,
            reference_energy_kwh=80.0,
            reference_cells_mass_kg=305.5,
        ),
        uncertainty.combine_kg([1.0, 2.0]),
        uncertainty.triangular_standard_uncertainty(0.0, 2.0, likely=1.0),
        worth.programme_npv(1.0, [1.0], discount_rate=0.1),
    ]
    assert [type(result) for result in results] == [np.float64] * len(results)


def test_gaps_to_references_that_lack_something() -> None:
    energy, mass = [80.0, 0.0, -80.0, NAN, 80.0], [470.0, 470.0, 470.0, 470.0, NAN]
    both: dict[str, ArrayLike] = {
        "subject_energy_kwh": 70.0,
        "reference_energy_kwh": energy,
    }
    gaps = [
        gap.energy_share_kg(mass, **both),
        gap.density_share_kg(460.0, mass, **both),
        gap.gap_scaled_kg(460.0, mass, **both, reference_cells_mass_kg=300.0),
        gap.gap_structure_kg(
            460.0,
            mass,
            **both,
            subject_cells_mass_kg=290.0,
            reference_cells_mass_kg=300.0,
        ),
    ]
    for given in gaps:
        assert_array_equal(np.isnan(given), [False, True, True, True, True])
    as_weighed = gap.gap_as_weighed_kg(460.0, mass)
    assert_array_equal(np.isnan(as_weighed), [False, False, False, False, True])


def test_the_structure_gap_at_exponent_zero_needs_no_energy() -> None:
    given = gap.gap_structure_kg(
        460.0,
        470.0,
        subject_energy_kwh=NAN,
        reference_energy_kwh=80.0,
        subject_cells_mass_kg=290.0,
        reference_cells_mass_kg=300.0,
        exponent=0.0,
    )
    assert given == 0.0


def test_a_band_of_exponents_against_many_references() -> None:
    given = gap.gap_scaled_kg(
        460.0,
        [470.0, 400.0, 520.0],
        subject_energy_kwh=70.0,
        reference_energy_kwh=[80.0, 65.0, 70.0],
        reference_cells_mass_kg=[305.5, 260.0, NAN],
        exponent=[[0.0], [0.5], [1.0]],
    )
    assert given.shape == (3, 3)
    assert_array_equal(np.isnan(given).all(axis=0), [False, False, True])
    one = gap.gap_scaled_kg(
        460.0,
        400.0,
        subject_energy_kwh=70.0,
        reference_energy_kwh=65.0,
        reference_cells_mass_kg=260.0,
    )
    assert given[1, 1] == pytest.approx(one, rel=1e-14)


def test_a_split_against_many_references() -> None:
    split = groups.split_by_group(
        [290.0, 150.0],
        [[300.0, 160.0], [NAN, 100.0]],
        subject_mass_kg=460.0,
        reference_mass_kg=[470.0, 400.0],
        subject_energy_kwh=70.0,
        reference_energy_kwh=[80.0, 65.0],
    )
    assert split.as_weighed_kg.shape == (2, 3)
    assert_allclose(split.as_weighed_kg[0], [-10.0, -10.0, 10.0])
    assert_allclose(split.equal_energy_kg[1], [NAN, 150.0 - 100.0 * 70.0 / 65.0, NAN])
    assert_allclose(
        split.energy_share_kg + split.equal_energy_kg, split.as_weighed_kg, rtol=1e-12
    )


def test_packs_split_into_other_groups_are_refused() -> None:
    with pytest.raises(RequestError, match="2 groups and the reference 1"):
        groups.split_by_group(
            [290.0, 150.0],
            [300.0],
            subject_mass_kg=460.0,
            reference_mass_kg=470.0,
            subject_energy_kwh=70.0,
            reference_energy_kwh=80.0,
        )


def test_an_unknown_uncertainty_makes_the_result_unknown() -> None:
    energies = {"subject_energy_kwh": 70.0, "reference_energy_kwh": 80.0}
    known = {
        "reference_mass_u_kg": 2.0,
        "subject_energy_u_kwh": 0.5,
        "reference_energy_u_kwh": 0.5,
    }
    cells = {"reference_cells_mass_kg": 300.0, "reference_cells_mass_u_kg": 2.0}
    mass_u = [2.0, NAN]
    results = [
        gap_uncertainty.gap_as_weighed_uncertainty_kg(mass_u, 2.0),
        gap_uncertainty.gap_to_trend_uncertainty_kg(mass_u, 9.0),
        gap_uncertainty.gap_equal_energy_uncertainty_kg(
            470.0, **energies, **known, subject_mass_u_kg=mass_u
        ),
        gap_uncertainty.energy_share_uncertainty_kg([470.0, NAN], **energies, **known),
        scaled_uncertainty.gap_scaled_uncertainty_kg(
            470.0, **energies, **known, **cells, subject_mass_u_kg=mass_u
        ),
        scaled_uncertainty.gap_structure_uncertainty_kg(
            470.0,
            **energies,
            **known,
            **cells,
            subject_mass_u_kg=2.0,
            subject_cells_mass_u_kg=mass_u,
        ),
        uncertainty.standard_uncertainty_from_tolerance(mass_u),
    ]
    for given in results:
        assert_array_equal(np.isnan(given), [False, True])


def test_a_likely_value_outside_of_its_ends_is_no_estimate() -> None:
    given = uncertainty.triangular_standard_uncertainty(
        [0.0, 0.0, 0.0, 2.0], 2.0, likely=[0.0, 2.0, 3.0, 1.0]
    )
    assert_array_equal(np.isnan(given), [False, False, True, True])


def test_no_masses_add_no_uncertainty() -> None:
    assert uncertainty.combine_kg([]) == 0.0
    assert_allclose(uncertainty.combine_kg([[3.0, 4.0], [5.0, 12.0]]), [5.0, 13.0])
    assert_allclose(uncertainty.combine_kg([[3.0], [4.0]], axis=0), [5.0])


def test_a_programme_for_several_values_and_rates() -> None:
    given = worth.programme_npv(
        [[50.0], [100.0]], [1000.0, 2000.0], discount_rate=[0.0, 1.0, -1.0]
    )
    assert_allclose(given, [[150_000.0, 50_000.0, NAN], [300_000.0, 100_000.0, NAN]])
