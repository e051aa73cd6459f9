"""Parts in another material: design values by default, the data sheet's beside."""

from __future__ import annotations

from dataclasses import replace

import pytest
from numpy.testing import assert_allclose

from benchpack.model.change import Change, ChangeKind
from benchpack.model.material import Material
from benchpack.model.part import Part
from benchpack.model.ranges import Range
from benchpack.results.ledger import Resized
from benchpack.results.ledger_resizing import is_metal, is_polymer
from tests.unit.results.proposal_samples import (
    ALUMINIUM,
    FLOOR_IN_PP,
    LID_IN_PP,
    LONG_GLASS_PP,
    MATERIALS,
    ONE_LID,
    PARTS,
    change,
    ledger_of,
)


def resized(one: Change) -> Resized:
    (found,) = ledger_of(one).applied[0].resized
    return found


def test_design_values_count_and_the_data_sheet_stands_beside() -> None:
    found = resized(FLOOR_IN_PP)
    # Derived table of the trade: long-glass PP against aluminium, panel stiffness.
    assert_allclose(found.design.mass_ratio, 1.20, atol=0.005)
    assert_allclose(found.data_sheet.mass_ratio, 0.92, atol=0.005)
    assert found.is_heavier
    assert found.counted is found.design
    assert_allclose(found.after_kg, 12.0, atol=0.05)
    assert_allclose(found.data_sheet_kg, 9.2, atol=0.05)
    assert found.design.governing == "panel bending stiffness"


def test_against_steel_it_saves() -> None:
    found = resized(LID_IN_PP)
    # The same table: against a steel panel 0.60, hot and in the long term.
    assert_allclose(found.design.mass_ratio, 0.60, atol=0.01)
    assert not found.is_heavier


def test_the_data_sheet_counts_only_where_that_is_asked() -> None:
    hot = ledger_of(FLOOR_IN_PP)
    cold = ledger_of(replace(FLOOR_IN_PP, uses_data_sheet=True))
    assert hot.applied[0].entries[0].saved_kg < 0 < cold.applied[0].entries[0].saved_kg


def test_of_several_functions_the_heaviest_governs_and_is_named() -> None:
    both = ("panel bending stiffness", "beam bending stiffness")
    found = resized(replace(LID_IN_PP, governs=both))
    assert found.design.governing == "beam bending stiffness"
    assert found.design.mass_ratio > resized(LID_IN_PP).design.mass_ratio


def test_the_minimum_wall_is_kept_and_said() -> None:
    thin = tuple(
        replace(one, thickness_mm=0.5) if one.name == "lid" else one for one in PARTS
    )
    (found,) = ledger_of(LID_IN_PP, parts=thin).applied[0].resized
    assert found.design.wall_is_minimum
    assert found.design.wall_mm == 2.5
    assert found.design.mass_ratio > resized(LID_IN_PP).design.mass_ratio


def test_ribs_make_it_stiffer_and_weigh_something() -> None:
    flat = resized(FLOOR_IN_PP).design.mass_ratio
    ribbed = resized(
        replace(FLOOR_IN_PP, stiffness_shape=4.0, rib_allowance=0.3)
    ).design.mass_ratio
    assert_allclose(ribbed, flat * 1.3 * (1 / 4) ** (1 / 3), rtol=1e-12)


def test_the_changed_part_carries_material_wall_and_a_range() -> None:
    part = ledger_of(FLOOR_IN_PP).parts["floor"]
    record = part.record
    assert isinstance(record, Part)
    assert record.known_by == "estimate"
    assert (record.material, record.process) == ("PP-LGF40", "")
    assert_allclose(record.thickness_mm or 0.0, 5.36, atol=0.01)
    low, likely, high = part.mass_kg.ends
    assert_allclose((low / likely, high / likely), (0.95, 1.12))


def test_a_mass_of_ones_own_goes_before_and_the_computed_one_stays_beside() -> None:
    own = replace(FLOOR_IN_PP, mass_kg=Range(7, 8, 9))
    ledger = ledger_of(own)
    assert ledger.parts["floor"].mass_kg == Range(7, 8, 9)
    (found,) = ledger.applied[0].resized
    assert found.is_overridden
    assert_allclose(found.after_kg, 12.0, atol=0.05)


def test_a_mass_of_ones_own_needs_no_material_data() -> None:
    own = replace(ONE_LID, material="unobtainium", mass_kg=Range(7, 8, 9))
    ledger = ledger_of(own)
    assert ledger.parts["whole lid"].mass_kg == Range(7, 8, 9)
    assert ledger.applied[0].resized == ()


def test_several_parts_share_a_mass_by_what_they_weigh() -> None:
    both = change(
        "both",
        ChangeKind.SUBSTITUTE,
        parts=("lid", "floor"),
        material="PP-LGF40",
        mass_kg=Range(11, 11, 22),
    )
    parts = ledger_of(both).parts
    assert_allclose(parts["lid"].mass_kg.ends, (6, 6, 12))
    assert_allclose(parts["floor"].mass_kg.ends, (5, 5, 10))


def test_twice_substituted_acts_on_the_first_result() -> None:
    back = change("back", ChangeKind.SUBSTITUTE, parts=("floor",), material="aluminium")
    ledger = ledger_of(FLOOR_IN_PP, back)
    assert_allclose(ledger.parts["floor"].mass_kg.likely, 10.0, rtol=1e-9)
    # What the polymer would have needed is not needed by a floor of metal.
    assert ledger.add_backs == ()


@pytest.mark.parametrize(
    ("lacking", "said"),
    [
        (
            replace(LONG_GLASS_PP, density_kg_m3=None),
            "PP-LGF40 has no density on record.",
        ),
        (
            replace(LONG_GLASS_PP, modulus_gpa=None),
            "PP-LGF40 has no modulus on record.",
        ),
    ],
)
def test_a_lacking_figure_is_named(lacking: Material, said: str) -> None:
    ledger = ledger_of(LID_IN_PP, materials=(*MATERIALS[:2], lacking))
    ((_, problem),) = ledger.refused
    assert problem.what == said


def test_a_polymer_without_knock_downs_says_so() -> None:
    found = resized(replace(LID_IN_PP, material="bare PA"))
    assert found.without_knock_down == ("bare PA",)
    assert found.design.mass_ratio == found.data_sheet.mass_ratio
    # A metal needs none.
    assert resized(LID_IN_PP).without_knock_down == ()


def test_metals_and_polymers() -> None:
    assert is_metal(ALUMINIUM)
    assert not is_polymer(ALUMINIUM)
    assert is_polymer(LONG_GLASS_PP)
    assert not is_metal(None)
    assert not is_polymer(None)
