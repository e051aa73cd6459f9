"""The ledger: what changes take, what they refuse, and how they compose."""

from __future__ import annotations

from dataclasses import replace

import pytest
from numpy.testing import assert_allclose

from benchpack.model.change import Change, ChangeKind, ProgrammeKind
from benchpack.model.joint import Joint
from benchpack.model.library import by_pack
from benchpack.model.ranges import Range
from benchpack.results.ledger import ItemKind, Ledger
from tests.unit.results.proposal_samples import (
    COVER_IN_LID,
    JOINTS,
    LID_IN_PP,
    NO_BRACKETS,
    ONE_LID,
    PARTS,
    RIM_BEAD,
    STUDY,
    change,
    ledger_of,
)

REMOVE, ADJUST = ChangeKind.REMOVE, ChangeKind.ADJUST


def refusal(ledger: Ledger, name: str) -> str:
    return next(str(why) for one, why in ledger.refused if one.name == name)


def joint_of(ledger: Ledger, name: str) -> Joint:
    record = ledger.joints[name].record
    assert isinstance(record, Joint)
    return record


def moves(ledger: Ledger, name: str) -> dict[str, tuple[float, float]]:
    applied = ledger.applied_to(name)
    assert applied is not None
    return {
        entry.item: (entry.before_kg.likely, entry.after_kg.likely)
        for entry in applied.entries
    }


def test_without_changes_the_pack_stays_as_it_is() -> None:
    ledger = ledger_of()
    assert ledger.entries == ()
    assert_allclose(ledger.proposed_kg.ends, [460.0] * 3, rtol=1e-12)
    assert len(ledger.parts) == len(PARTS)
    assert len(ledger.joints) == len(JOINTS)


def test_a_part_that_goes_takes_its_joints_along() -> None:
    ledger = ledger_of(NO_BRACKETS)
    assert moves(ledger, "no brackets") == {
        "bracket": (2.0, 0.0),
        "bracket screws": (0.044, 0.0),
    }
    assert_allclose(ledger.proposed_kg.likely, 460 - 2.044, rtol=1e-12)
    assert [e.pieces_before for e in ledger.entries] == [4, 8]
    assert "bracket" not in ledger.parts


def test_a_change_that_is_off_does_nothing() -> None:
    ledger = ledger_of(replace(NO_BRACKETS, is_on=False))
    assert ledger.entries == ()
    assert ledger.refused == ()


def test_integrated_parts_become_one_and_the_joints_between_them_go() -> None:
    ledger = ledger_of(ONE_LID)
    assert moves(ledger, "one lid")["cover gasket"] == (0.046, 0.0)
    assert moves(ledger, "one lid")["cover screws"] == (0.044, 0.0)
    assert "lid" not in ledger.parts
    assert ledger.parts["whole lid"].made_by == "one lid"
    held = {joint_of(ledger, name).joins for name in ("lid screws", "lid gasket")}
    assert held == {"whole lid"}
    assert ledger.final_part("service cover") is ledger.parts["whole lid"]


def test_what_is_moulded_in_weighs_on_its_neighbour() -> None:
    ledger = ledger_of(replace(COVER_IN_LID, mass_kg=Range(0.5, 0.6, 0.8)))
    found = moves(ledger, "cover in lid")
    assert found["service cover"] == (1.2, 0.0)
    assert_allclose(found["lid"], (12.0, 12.6))
    assert ledger.parts["lid"].mass_kg == Range(12.5, 12.6, 12.8)
    assert "cover gasket" not in ledger.joints


def test_of_one_material_what_is_moulded_in_keeps_its_mass() -> None:
    ledger = ledger_of(COVER_IN_LID)
    assert_allclose(moves(ledger, "cover in lid")["lid"], (12.0, 13.2))
    assert_allclose(ledger.saved_kg, 0.046 + 0.044, rtol=1e-12)


def test_swapped_joints_go_and_the_new_one_comes() -> None:
    ledger = ledger_of(RIM_BEAD)
    found = moves(ledger, "rim bead")
    assert found["lid screws"] == (0.696, 0.0)
    before, after = found["lid bead"]
    assert before == 0.0
    assert 0.1 < after < 0.2
    assert joint_of(ledger, "lid bead").joins == "lid"


def test_fewer_screws_by_another_tightening_keep_what_is_not_said() -> None:
    fewer = change(
        "angle",
        ChangeKind.SWAP_JOINTS,
        joints=("floor screws",),
        into="floor screws",
        count=14,
        tightening="torque and angle",
    )
    ledger = ledger_of(fewer)
    record = joint_of(ledger, "floor screws")
    assert (record.count, record.mass_each_g) == (14, 12.3)
    assert_allclose(ledger.saved_kg, 6 * 0.0123, rtol=1e-12)


def test_added_and_adjusted_masses_count_with_their_ranges() -> None:
    ledger = ledger_of(
        change("plate", ChangeKind.ADD, into="plate", mass_kg=Range(1, 2, 4)),
        change("thinner", ADJUST, parts=("floor",), mass_kg=Range(7, 8, 9)),
    )
    assert_allclose(ledger.proposed_kg.ends, (458.0, 460.0, 463.0), rtol=1e-12)
    kinds = [entry.item_kind for entry in ledger.entries]
    assert kinds == [ItemKind.ADDED, ItemKind.PART]


def test_an_adjusted_cost_moves_no_mass() -> None:
    dearer = change("dearer", ADJUST, parts=("floor",), part_cost=Range(1, 2, 3))
    ledger = ledger_of(dearer)
    assert ledger.saved_kg == 0.0
    assert ledger.applied[0].touches == frozenset()


def test_changes_compose_in_order_on_what_is_left() -> None:
    thinner = change("thinner", ADJUST, parts=("bracket",), mass_kg=Range(1, 1.5, 2))
    ledger = ledger_of(thinner, NO_BRACKETS)
    assert moves(ledger, "no brackets")["bracket"] == (1.5, 0.0)
    assert_allclose(ledger.saved_kg, 2.044, rtol=1e-12)
    # The other way round nothing is left to be made thinner.
    ledger = ledger_of(NO_BRACKETS, thinner)
    assert_allclose(ledger.saved_kg, 2.044, rtol=1e-12)
    assert refusal(ledger, "thinner").startswith(
        "thinner: thinner acts on bracket, which no brackets has taken before it."
    )


def test_a_change_of_what_an_earlier_one_made_needs_it() -> None:
    ribs = change("ribs", ADJUST, parts=("whole lid",), mass_kg=Range(8, 9, 10))
    ledger = ledger_of(ONE_LID, ribs)
    applied = ledger.applied_to("ribs")
    assert applied is not None
    assert applied.needs == {"one lid"}
    assert "has no part 'whole lid'" in refusal(ledger_of(ribs), "ribs")


CARRY_OVER = "mount is carry-over: body bolt pattern."


@pytest.mark.parametrize(
    ("refused", "said"),
    [
        (change("x", REMOVE, parts=("mount",)), CARRY_OVER),
        (change("x", REMOVE, joints=("mount screws",)), "mount screws is carry-over"),
        (
            change("x", REMOVE, parts=("side frame",)),
            "keeps the seal line lid gasket tight",
        ),
        (change("x", REMOVE, parts=("ballast",)), "assumed to close the balance"),
        (change("x", REMOVE, parts=("foam",)), "No mass is recorded for foam."),
        (change("x", REMOVE, parts=("roof",)), "has no part 'roof'"),
        (
            change("x", REMOVE, joints=("lid screws",)),
            "lid screws keeps the seal line lid gasket tight, and nothing is named",
        ),
        (change("x", REMOVE, joints=("lid gasket",)), "lid gasket is a seal line"),
        (change("x", REMOVE, parts=("service cover",)), "cover screws keeps the seal"),
        (change("x", ChangeKind.SUBSTITUTE, parts=("lid",)), "names no new material"),
        (
            change("x", ChangeKind.SUBSTITUTE, parts=("lid",), material="unobtainium"),
            "The material 'unobtainium' is not in the library.",
        ),
        (
            change("x", ChangeKind.SUBSTITUTE, parts=("bracket",), material="PP-GF30"),
            "Nobody has said what sizes bracket.",
        ),
        (
            change("x", ChangeKind.ADD, into="lid", mass_kg=Range.exactly(1.0)),
            "There is a part 'lid' already.",
        ),
        (
            change(
                "x",
                ChangeKind.SWAP_JOINTS,
                joints=("clips",),
                into="magnets",
                family="magnet",
            ),
            "Nothing is known of the joint magnets",
        ),
        (
            change(
                "x",
                ChangeKind.SWAP_JOINTS,
                joints=("floor screws",),
                into="clips",
                family="clip",
                designation="edge clip",
            ),
            "There is a joint 'clips' already.",
        ),
        (
            change("x", ChangeKind.MOULD_IN, parts=("bracket",), into="mount"),
            CARRY_OVER,
        ),
    ],
)
def test_what_cannot_be_is_refused_with_its_reason(refused: Change, said: str) -> None:
    ledger = ledger_of(refused, NO_BRACKETS)
    assert said in refusal(ledger, "x")
    assert [one.change.name for one in ledger.applied] == ["no brackets"]
    assert ledger.conflicts == ()


def test_a_change_is_refused_as_a_whole() -> None:
    ledger = ledger_of(change("x", REMOVE, parts=("bracket", "mount")))
    assert ledger.entries == ()
    assert "bracket" in ledger.parts


def test_seal_joints_go_with_a_replacement_or_where_parts_become_one() -> None:
    assert ledger_of(RIM_BEAD).refused == ()
    assert ledger_of(ONE_LID).refused == ()
    again = change("no bead", REMOVE, joints=("lid bead",))
    said = refusal(ledger_of(RIM_BEAD, again), "no bead")
    assert "keeps the seal line lid gasket tight" in said


def test_a_joint_that_goes_along_may_not_be_carry_over() -> None:
    stays = tuple(
        replace(one, carry_over=True, reason="service")
        if "bracket" in one.name
        else one
        for one in JOINTS
    )
    ledger = ledger_of(NO_BRACKETS, joints=by_pack(stays))
    said = refusal(ledger, "no brackets")
    assert "bracket screws is carry-over: service. It would go with bracket." in said


def test_two_records_of_one_name_are_not_guessed_between() -> None:
    ledger = ledger_of(NO_BRACKETS, parts=(*PARTS, PARTS[-1]))
    assert "More than one record bears the name 'bracket'" in refusal(
        ledger, "no brackets"
    )
    assert_allclose(ledger.proposed_kg.likely, 460.0, rtol=1e-12)


def test_conflicts_name_both_changes() -> None:
    rival = replace(NO_BRACKETS, name="other idea")
    ledger = ledger_of(NO_BRACKETS, rival)
    (problem,) = ledger.conflicts
    assert problem.record == "other idea"
    assert "no brackets" in problem.what
    ledger = ledger_of(NO_BRACKETS, replace(LID_IN_PP, excludes=("no brackets",)))
    (problem,) = ledger.conflicts
    assert problem.what == "lid in PP and no brackets exclude each other."


def test_a_change_without_what_it_requires_is_refused_and_so_on() -> None:
    first = change("first", REMOVE, parts=("mount",))
    second = replace(NO_BRACKETS, name="second", requires=("first",))
    third = replace(LID_IN_PP, requires=("second",))
    ledger = ledger_of(third, second, first)
    assert ledger.applied == ()
    assert "second requires first, and first does not count" in refusal(
        ledger, "second"
    )
    assert "lid in PP requires second" in refusal(ledger, "lid in PP")
    off = ledger_of(second, replace(first, is_on=False))
    assert "first is switched off" in refusal(off, "second")
    assert "no change 'first'" in refusal(ledger_of(second), "second")


def test_what_is_refused_frees_what_it_named() -> None:
    greedy = change("greedy", REMOVE, parts=("bracket", "mount"))
    ledger = ledger_of(greedy, NO_BRACKETS)
    assert [one.change.name for one in ledger.applied] == ["no brackets"]
    needy = replace(NO_BRACKETS, name="needy", requires=("nobody",))
    ledger = ledger_of(needy, NO_BRACKETS)
    assert [one.change.name for one in ledger.applied] == ["no brackets"]


def test_a_running_change_takes_no_change_of_a_new_programme() -> None:
    running = replace(STUDY, programme=ProgrammeKind.RUNNING)
    late = replace(NO_BRACKETS, programme=ProgrammeKind.NEW)
    ledger = ledger_of(late, study=running)
    assert "It fits a new programme, the study is of a running change." in refusal(
        ledger, "no brackets"
    )
    new = replace(STUDY, programme=ProgrammeKind.NEW)
    early = replace(NO_BRACKETS, programme=ProgrammeKind.RUNNING)
    assert ledger_of(early, study=new).refused == ()


def test_a_joint_without_a_mass_goes_and_saves_nothing() -> None:
    ledger = ledger_of(change("no clips", REMOVE, joints=("clips",)))
    (entry,) = ledger.entries
    assert (entry.saved_kg, entry.pieces_before, entry.pieces_after) == (0.0, 12, 0)
    (note,) = ledger.applied[0].notes
    assert note.what == "No mass is known for clips: it saves nothing here."


def test_what_sat_in_a_part_is_named() -> None:
    cover = change("no lid", REMOVE, parts=("bracket",))
    inside = tuple(
        replace(one, inside="bracket") if one.name == "foam" else one for one in PARTS
    )
    ledger = ledger_of(cover, parts=inside)
    (note,) = ledger.applied[0].notes
    assert note.what == "foam sat in bracket and stays."


def test_one_part_under_two_spellings_goes_once() -> None:
    twice = change("twice", REMOVE, parts=("bracket", " Bracket"))
    ledger = ledger_of(twice)
    assert_allclose(ledger.saved_kg, 2.044, rtol=1e-12)
    both = replace(RIM_BEAD, joints=("lid screws", "LID SCREWS", "lid gasket"))
    assert_allclose(ledger_of(both).saved_kg, ledger_of(RIM_BEAD).saved_kg)
    itself = replace(COVER_IN_LID, into="Service Cover")
    assert "cannot be moulded into itself" in refusal(ledger_of(itself), "cover in lid")
    alone = replace(ONE_LID, parts=("lid", "Lid"))
    assert ledger_of(alone).parts["whole lid"].mass_kg.likely < 12.0
