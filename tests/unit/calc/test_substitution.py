"""What must hold for every part that changes its material."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.testing import assert_allclose, assert_array_equal

from benchpack.calc.equal_function import (
    MaterialValues,
    combined_knock_down,
    mass_ratio,
    size_ratio,
    wall_ratio,
)
from benchpack.calc.substitution import substitute
from benchpack.errors import RequestError
from benchpack.model.words import GOVERNS

untimed = settings(deadline=None, max_examples=50)

FUNCTIONS = [word for word in GOVERNS if word]
NAN = float("nan")
STEEL = MaterialValues(7850.0, 210.0, 340.0, 0.3)
ALUMINIUM = MaterialValues(2700.0, 69.5, 170.0, 0.33)
POLYMER = MaterialValues(1210.0, 3.6, 35.0, 0.36)

words = st.sampled_from(FUNCTIONS)
several = st.lists(words, min_size=1, max_size=4)
knock_downs = st.floats(0.05, 1.0)
shapes = st.floats(0.2, 8.0)
walls = st.floats(0.3, 10.0)
materials = st.builds(
    MaterialValues,
    st.floats(100.0, 20_000.0),
    st.floats(0.5, 500.0),
    st.floats(5.0, 2000.0),
    st.floats(0.0, 0.5),
)


def ratio_of(word: str, old: MaterialValues, new: MaterialValues) -> float:
    return float(size_ratio(word, old=old, new=new))


def test_every_word_of_the_record_is_known() -> None:
    part = substitute(FUNCTIONS, old=STEEL, new=ALUMINIUM)
    assert part.size_ratios.shape == (8,)
    assert np.isfinite(part.mass_ratios).all()


@pytest.mark.parametrize("word", ["", "bending"])
def test_an_unknown_function_is_refused(word: str) -> None:
    with pytest.raises(RequestError, match="Nothing is known of the function"):
        substitute([word], old=STEEL, new=ALUMINIUM)
    with pytest.raises(RequestError, match="Nothing is known of the function"):
        wall_ratio(word, 1.0)


def test_no_function_is_refused() -> None:
    with pytest.raises(RequestError, match="No function is named"):
        substitute([], old=STEEL, new=ALUMINIUM)


@untimed
@given(words, materials)
def test_the_same_material_changes_nothing(word: str, same: MaterialValues) -> None:
    part = substitute([word], old=same, new=same, wall_mm=2.0)
    assert float(part.mass_ratio) == pytest.approx(1.0, rel=1e-12)
    assert float(part.wall_mm) == pytest.approx(2.0, rel=1e-12)


@untimed
@given(words, materials, materials, materials)
def test_two_changes_are_one(
    word: str, one: MaterialValues, two: MaterialValues, three: MaterialValues
) -> None:
    steps = ratio_of(word, one, two) * ratio_of(word, two, three)
    assert steps == pytest.approx(ratio_of(word, one, three), rel=1e-9)


@untimed
@given(st.floats(0.5, 500.0), st.floats(5.0, 2000.0), st.floats(0.1, 10.0))
def test_sizes_go_with_their_powers(
    modulus: float, strength: float, factor: float
) -> None:
    old = MaterialValues(2700.0, modulus, strength)
    new = MaterialValues(1200.0, modulus / factor, strength / factor)
    powers = [1 / 3, 1 / 2, 1 / 3, 1 / 2, 2 / 3, 1.0, 1.0, 0.0]
    for word, power in zip(FUNCTIONS, powers, strict=True):
        assert ratio_of(word, old, new) == pytest.approx(factor**power, rel=1e-9)


@untimed
@given(words, materials, materials, knock_downs, knock_downs)
def test_a_knock_down_never_makes_a_part_lighter(
    word: str,
    old: MaterialValues,
    new: MaterialValues,
    stiffness: float,
    strength: float,
) -> None:
    design = new.knocked_down(stiffness, strength)
    assert ratio_of(word, old, design) >= ratio_of(word, old, new) * (1.0 - 1e-12)


@untimed
@given(several, materials, materials, walls, walls)
def test_the_heaviest_governs_and_is_named(
    names: list[str],
    old: MaterialValues,
    new: MaterialValues,
    wall: float,
    minimum: float,
) -> None:
    part = substitute(names, old=old, new=new, wall_mm=wall, minimum_wall_mm=minimum)
    assert float(part.mass_ratio) == pytest.approx(part.mass_ratios.max(), rel=1e-9)
    chosen = int(part.governing)
    assert part.mass_ratios[chosen] == part.mass_ratio
    alone = substitute(
        [names[chosen]], old=old, new=new, wall_mm=wall, minimum_wall_mm=minimum
    )
    assert float(alone.wall_mm) == float(part.wall_mm) >= minimum
    free = substitute([names[chosen]], old=old, new=new, wall_mm=wall)
    assert bool(part.wall_is_minimum) == (float(free.wall_mm) < minimum)


@untimed
@given(words, materials, materials, walls, walls)
def test_a_wall_that_cannot_be_made_costs_its_mass(
    word: str, old: MaterialValues, new: MaterialValues, wall: float, minimum: float
) -> None:
    free = substitute([word], old=old, new=new, wall_mm=wall)
    made = substitute([word], old=old, new=new, wall_mm=wall, minimum_wall_mm=minimum)
    thicker = float(made.wall_mm) / float(free.wall_mm)
    assert thicker >= 1.0
    grown = thicker * float(free.mass_ratio)
    assert float(made.mass_ratio) == pytest.approx(grown, rel=1e-9)


@untimed
@given(shapes, shapes, st.floats(0.0, 1.0))
def test_a_shape_counts_like_more_stiffness_or_strength(
    stiffness: float, strength: float, ribs: float
) -> None:
    better = MaterialValues(1210.0, 3.6 * stiffness, 35.0 * strength, 0.36)
    shaped = substitute(
        FUNCTIONS[:5],
        old=STEEL,
        new=POLYMER,
        stiffness_shape=stiffness,
        strength_shape=strength,
        rib_allowance=ribs,
    )
    plain = substitute(FUNCTIONS[:5], old=STEEL, new=better)
    assert_allclose(shaped.size_ratios, plain.size_ratios, rtol=1e-12)
    assert_allclose(shaped.mass_ratios, plain.mass_ratios * (1.0 + ribs), rtol=1e-12)


def test_a_shape_does_nothing_for_axial_functions() -> None:
    for word in FUNCTIONS[5:]:
        shaped = size_ratio(
            word, old=STEEL, new=POLYMER, stiffness_shape=4.0, strength_shape=2.0
        )
        assert float(shaped) == ratio_of(word, STEEL, POLYMER)


def test_equal_walls_name_the_function_that_asks_for_most() -> None:
    names = ["panel bending strength", "panel bending stiffness"]
    part = substitute(names, old=STEEL, new=ALUMINIUM, wall_mm=0.8, minimum_wall_mm=3.0)
    assert part.mass_ratios[0] == pytest.approx(part.mass_ratios[1], rel=1e-12)
    assert part.size_ratios[1] > part.size_ratios[0]
    assert part.governing == 1
    assert bool(part.wall_is_minimum)


def test_a_volume_kept_still_has_to_be_made() -> None:
    part = substitute(
        ["geometry only"],
        old=STEEL,
        new=POLYMER,
        wall_mm=[0.8, 3.0, NAN],
        minimum_wall_mm=2.0,
    )
    density = 1210.0 / 7850.0
    assert_allclose(part.mass_ratio, [2.5 * density, density, density])
    assert_array_equal(part.wall_mm, [2.0, 3.0, NAN])
    assert_array_equal(part.wall_is_minimum, [True, False, False])


def test_the_ratio_of_poisson_is_left_out_where_one_is_unknown() -> None:
    word = "panel bending stiffness"
    plain = ratio_of(word, MaterialValues(1.0, 210.0), MaterialValues(1.0, 70.0))
    half = MaterialValues(1.0, 70.0, poisson_ratio=[0.33, NAN])
    given = size_ratio(word, old=STEEL, new=half)
    plates = (0.91 / (1.0 - 0.33**2)) ** (1 / 3)
    assert_allclose(given, [plain / plates, plain], rtol=1e-12)
    beam = size_ratio("beam bending stiffness", old=STEEL, new=half)
    assert_allclose(beam, [3.0**0.5] * 2, rtol=1e-12)


def test_one_unknown_function_leaves_the_heaviest_unknown() -> None:
    new = MaterialValues(2700.0, 69.5, [170.0, NAN, 0.0])
    names = ["panel bending stiffness", "panel bending strength"]
    part = substitute(names, old=STEEL, new=new, wall_mm=0.8)
    assert part.mass_ratios.shape == (2, 3)
    assert np.isfinite(part.mass_ratios[0]).all()
    assert_array_equal(np.isnan(part.mass_ratio), [False, True, True])
    assert_array_equal(np.isnan(part.wall_mm), [False, True, True])
    assert_array_equal(part.governing, [0, -1, -1])
    assert not part.wall_is_minimum.any()


def test_materials_and_walls_broadcast() -> None:
    new = MaterialValues([[2700.0], [1210.0]], [[69.5], [3.6]], [[170.0], [35.0]])
    names = ["panel bending stiffness", "axial strength", "geometry only"]
    part = substitute(names, old=STEEL, new=new, wall_mm=[0.8, 1.5, 3.0])
    assert part.mass_ratios.shape == (3, 2, 3)
    assert part.governing.shape == part.wall_mm.shape == (2, 3)
    assert (part.mass_ratio[1] > 1.0).all()


@untimed
@given(st.lists(knock_downs, max_size=6))
def test_knock_downs_multiply(factors: list[float]) -> None:
    combined = float(combined_knock_down(factors))
    assert 0.0 < combined <= min(factors, default=1.0) <= 1.0
    assert combined == pytest.approx(float(np.prod(factors)), rel=1e-12)


def test_a_factor_that_is_none_gives_none() -> None:
    factors = [[0.5, 0.5], [0.0, 0.5], [1.1, 0.5], [NAN, 0.5], [-0.5, 0.5]]
    known = np.isfinite(combined_knock_down(factors))
    assert_array_equal(known, [True, False, False, False, False])
    design = STEEL.knocked_down([0.5, 1.5], 0.0)
    assert_array_equal(design.modulus_gpa, [105.0, NAN])
    assert np.isnan(design.strength_mpa)
    assert design.poisson_ratio == STEEL.poisson_ratio


def test_masses_of_unknown_or_impossible_parts() -> None:
    given = mass_ratio([1.0, 0.0, NAN], old=STEEL, new=POLYMER)
    assert_array_equal(np.isnan(given), [False, True, True])
    ribs = mass_ratio(1.0, old=STEEL, new=POLYMER, rib_allowance=[0.0, -0.1, NAN])
    assert_array_equal(np.isnan(ribs), [False, True, True])
    unknown = MaterialValues([1210.0, NAN, 0.0])
    assert_array_equal(
        np.isnan(mass_ratio(1.0, old=STEEL, new=unknown)), [False, True, True]
    )
