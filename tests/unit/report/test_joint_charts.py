"""What the pareto is told: order, units, shares, and a finding that is true."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from numpy.testing import assert_allclose

from benchpack.model.joint import Joint
from benchpack.model.library import Library
from benchpack.model.pack import Pack
from benchpack.model.pack_table import PackTable
from benchpack.model.study import Study
from benchpack.report.joint_charts import pareto_spec
from benchpack.results.inventory import Grouping, Inventory, Measure, inventory

PACK = "Avocet 81"
STUDY = Study(subject=PACK, reference="Dunlin 74")
JOINTS = (
    Joint(PACK, "a", "flange screw", "EN 1665 M6x20", count=80, mass_each_g=8.7),
    Joint(
        PACK,
        "b",
        "flange screw",
        "EN 1665 M8x25",
        count=10,
        mass_each_g=18.0,
        carry_over=True,
    ),
    Joint(PACK, "c", "socket screw", "ISO 4762 M6x20", count=16),
    Joint(PACK, "d", "gasket", "silicone foam 12x6", length_mm=2000, mass_each_g=90),
    Joint(PACK, "e", "clinch", "round point", count=24),
    Joint(PACK, "f", "clip", "edge clip", count=64),
)


def taken(joints: tuple[Joint, ...] = JOINTS, study: Study = STUDY) -> Inventory:
    packs = PackTable.from_packs([Pack(PACK, 81.0, 498.1)])
    return inventory(Library(packs=packs, joints={PACK: joints}), study, PACK)


def test_groups_fall_and_the_unknown_comes_last() -> None:
    spec = pareto_spec(taken(), STUDY, grouping=Grouping.KIND, measure=Measure.MASS)
    assert spec.names == ("flange screw", "socket screw", "gasket", "clip")
    assert_allclose(spec.values[:3], [0.876, 0.104, 0.09])
    assert np.isnan(spec.values[3])
    assert_allclose(spec.staying[:2], [0.18, 0.0])
    assert_allclose(spec.running[:3], [0.876 / 1.07, 0.98 / 1.07, 1.0])
    assert np.isnan(spec.running[3])
    assert spec.title == "Flange screw: 82 % of the mass"
    assert spec.role == "subject"
    assert spec.explain_key == "joints mass"


def test_what_is_left_out_or_computed_is_in_the_note() -> None:
    spec = pareto_spec(taken(), STUDY, grouping=Grouping.KIND, measure=Measure.MASS)
    assert spec.note == (
        "Hatched: has to stay. Nothing is added by clinch. 1 row without a mass: not "
        "in it. 2 of 6 rows: computed, not weighed."
    )
    spec = pareto_spec(taken(), STUDY, grouping=Grouping.KIND, measure=Measure.TIME)
    assert spec.note.endswith("6 of 6 rows: usual figures.")


def test_lines_are_not_pieces() -> None:
    spec = pareto_spec(taken(), STUDY, grouping=Grouping.KIND, measure=Measure.COUNT)
    assert spec.names == ("flange screw", "clip", "clinch", "socket screw")
    assert spec.values.tolist() == [90, 64, 24, 16]
    assert "Seams and beads are lines, 2.0 m, not pieces." in spec.note
    assert spec.axis_label == "Pieces a pack"
    assert spec.format_full(1.0) == "1 piece"
    assert spec.format_full(90.0) == "90 pieces"


@pytest.mark.parametrize(
    ("grouping", "first"),
    [
        (Grouping.SIZE, "M6x20"),
        (Grouping.ROLE, "not recorded"),
        (Grouping.SUBSYSTEM, "joints"),
        (Grouping.JOINED_PAIR, "not recorded"),
    ],
)
def test_every_grouping_is_drawn(grouping: Grouping, first: str) -> None:
    spec = pareto_spec(taken(), STUDY, grouping=grouping, measure=Measure.COUNT)
    assert spec.names[0] == first
    assert_allclose(spec.running[-1], 1.0)


def test_several_groups_that_make_up_most_are_counted() -> None:
    spec = pareto_spec(taken(), STUDY, grouping=Grouping.KIND, measure=Measure.COUNT)
    assert spec.title == "3 of 4 kinds make up 92 % of the pieces"
    assert_allclose(spec.running[2], 178 / 194)


def test_one_group_alone_is_all_of_it() -> None:
    alone = taken(JOINTS[:1])
    spec = pareto_spec(alone, STUDY, grouping=Grouping.KIND, measure=Measure.MASS)
    assert spec.title == "Flange screw: all of the mass"


def test_nothing_known_is_said_plainly() -> None:
    unknown = taken((JOINTS[5],))
    spec = pareto_spec(unknown, STUDY, grouping=Grouping.KIND, measure=Measure.MASS)
    assert spec.title == "The mass is not known"
    assert not spec.is_empty


def test_an_empty_pack_and_one_of_nothing_have_their_sentence() -> None:
    spec = pareto_spec(taken(()), STUDY, grouping=Grouping.KIND, measure=Measure.MASS)
    assert spec.is_empty
    assert spec.empty_sentence == "No joints of Avocet 81 are recorded yet."
    nothing = taken((JOINTS[4],))
    spec = pareto_spec(nothing, STUDY, grouping=Grouping.KIND, measure=Measure.MASS)
    assert spec.empty_sentence == "No joint of Avocet 81 adds any mass."


def test_units_mark_and_currency_are_the_study_s() -> None:
    study = replace(STUDY, mass_unit="lb", decimal_mark=",")
    spec = pareto_spec(taken(), study, grouping=Grouping.KIND, measure=Measure.MASS)
    assert spec.axis_label == "Mass a pack [lb]"
    assert_allclose(spec.values[0], 0.876 / 0.45359237)
    assert spec.format_value(1.5) == "1,50"
    assert spec.decimal_mark == ","
    spec = pareto_spec(taken(), study, grouping=Grouping.KIND, measure=Measure.MONEY)
    assert spec.axis_label == "Money a pack [EUR]"


def test_the_role_follows_the_study() -> None:
    for subject, reference, role in (
        ("Knot 42", PACK, "reference"),
        ("Knot 42", "", "peer"),
    ):
        study = Study(subject=subject, reference=reference)
        spec = pareto_spec(
            taken(study=study), study, grouping=Grouping.KIND, measure=Measure.MASS
        )
        assert spec.role == role
