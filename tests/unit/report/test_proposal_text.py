"""Sentences about a proposal."""

from __future__ import annotations

from dataclasses import replace

from benchpack.model.change import ChangeKind, ProgrammeKind
from benchpack.model.ranges import Range
from benchpack.model.words import Basis
from benchpack.report.display import Display
from benchpack.report.plain_table import plain_spaces
from benchpack.report.proposal_chance import (
    chance_text,
    matters_text,
    suggestion_text,
)
from benchpack.report.proposal_print import proposal_print
from benchpack.report.proposal_resizing import resized_text
from benchpack.report.proposal_text import (
    add_back_text,
    cost_text,
    duty_text,
    note_texts,
    proposal_text,
    refusal_text,
    saving_text,
    secondary_text,
    volume_text,
)
from benchpack.results.ledger import build_ledger
from benchpack.results.proposal import ProposalResults
from benchpack.results.proposal_choice import suggest
from benchpack.results.proposal_matters import mass_matters
from benchpack.results.proposal_trials import simulate
from tests.unit.results.change_samples import STUDY as HEAT_STUDY
from tests.unit.results.change_samples import bench as heat_bench
from tests.unit.results.change_samples import into
from tests.unit.results.proposal_samples import (
    FLOOR_IN_PP,
    LID_IN_PP,
    NO_BRACKETS,
    RIM_BEAD,
    STUDY,
    change,
    proposal_of,
)

DISPLAY = Display(STUDY)
WEIGHED = replace(STUDY, basis=Basis.AS_WEIGHED, reference="Egret 80")
LIGHTER = change(
    "lighter", ChangeKind.ADJUST, parts=("side frame",), mass_kg=Range(7, 8, 10)
)


def plain(text: str) -> str:
    return plain_spaces(text)


def effect_text(results: ProposalResults, name: str) -> list[str]:
    effect = results.effect(name)
    assert effect is not None
    heavier = [one for one in effect.applied.resized if one.is_heavier]
    return [plain(resized_text(one, DISPLAY)) for one in heavier]


def test_the_lead_states_mass_gap_and_counts() -> None:
    mount = change("mount", ChangeKind.REMOVE, parts=("mount",))
    results = proposal_of(LIGHTER, mount, replace(NO_BRACKETS, is_on=False))
    assert plain(proposal_text(results)) == (
        "Heron 70 goes from 460.0 kg to 454.0 kg (453.0 to 456.0): 6.0 kg (4.0 to 7.0) "
        "saved. That is 12 % of the gap of 48.8 kg to Egret 80, counted at equal "
        "energy; 42.8 kg are left. 1 of 3 changes count, 1 is refused and 1 is "
        "switched off."
    )


def test_a_pack_that_is_lighter_already_says_so() -> None:
    said = plain(proposal_text(proposal_of(LIGHTER, study=WEIGHED)))
    assert "Heron 70 is 10.0 kg lighter than Egret 80 already." in said


def test_a_proposal_that_makes_it_heavier_says_so_first() -> None:
    said = plain(proposal_text(proposal_of(FLOOR_IN_PP)))
    assert said.startswith("The proposal makes Heron 70 heavier: from 460.0 kg to 47")
    assert "add-backs are in it" in said


def test_without_changes_there_is_a_sentence_too() -> None:
    assert "has no changes" in proposal_text(proposal_of())
    off = proposal_of(replace(LIGHTER, is_on=False))
    assert proposal_text(off).startswith("No change is switched on.")
    mount = change("mount", ChangeKind.REMOVE, parts=("mount",))
    assert "is refused" in proposal_text(proposal_of(mount))
    assert cost_text(off) == ""


def test_without_a_gap_the_reason_stands_there() -> None:
    alone = proposal_of(LIGHTER, study=replace(STUDY, reference=""))
    assert "There is no gap to close: No reference is chosen." in proposal_text(alone)


def test_where_the_new_material_does_not_help_it_is_said_plainly() -> None:
    (said,) = effect_text(proposal_of(FLOOR_IN_PP), "floor in PP")
    assert said == (
        "At equal function (panel bending stiffness) floor comes out 2.0 kg heavier in "
        "PP-LGF40: 12.0 kg in place of 10.0 kg by design values, wall 5.4 mm. "
        "Data-sheet values give 9.2 kg. The saving has to come from ribs, from "
        "integration and from joints that go, or from another material."
    )
    assert effect_text(proposal_of(LID_IN_PP), "lid in PP") == []


def test_the_data_sheet_result_stands_beside_and_the_other_way_round() -> None:
    results = proposal_of(LID_IN_PP)
    (found,) = results.effects[0].applied.resized
    said = plain(resized_text(found, DISPLAY))
    assert (
        "lid comes out 4.8 kg lighter in PP-LGF40: 7.2 kg in place of 12.0 kg" in said
    )
    assert said.endswith("Data-sheet values give 5.8 kg.")
    sheet = proposal_of(replace(FLOOR_IN_PP, uses_data_sheet=True))
    (found,) = sheet.effects[0].applied.resized
    said = plain(resized_text(found, DISPLAY))
    assert "by data-sheet values" in said
    assert said.endswith("Design values give 12.0 kg: knock-downs are off.")


def test_add_backs_in_words() -> None:
    texts = [
        plain(add_back_text(back, DISPLAY)) for back in proposal_of(LID_IN_PP).add_backs
    ]
    assert texts[0] == (
        "shield foil for lid: 0.54 kg (0.32 to 0.80) over 2.00 m2. An enclosure part "
        "that was metal no longer shields."
    )
    assert "0.9 kg (0.5 to 1.8) for 90 screws." in texts[2]
    waived = proposal_of(
        replace(LID_IN_PP, waived=(("bonding straps", "the frame bonds."),))
    )
    said = plain(add_back_text(waived.add_backs[1], DISPLAY))
    assert said.endswith("is taken out of the sum: the frame bonds.")


def test_a_sized_plate_says_what_it_was_sized_for() -> None:
    floor = into("PP-LGF40", "floor")
    ledger = build_ledger(heat_bench(), HEAT_STUDY, (floor,))
    (back,) = (b for b in ledger.add_backs if b.add_back.key == "heat plate")
    assert plain(add_back_text(back, DISPLAY)) == (
        "heat plate for floor: 4.1 kg (3.5 to 6.1) over 1.60 m2. A polymer in the heat "
        "path needs a plate that spreads the heat. Sized by its heat path: 0.9 mm (0.8 "
        "to 1.4) of aluminium keep within 5 K midway between coolant lines 60 mm apart "
        "at 2 kW/m²."
    )


def test_duties_carry_clause_and_mark() -> None:
    found = {one.duty.key: one for one in proposal_of(FLOOR_IN_PP).duties}
    said = duty_text(found["bottom impact"])
    assert said == (
        "bottom impact (floor in PP): ball of 30 mm, 10 kg, 150 J from below at three "
        "points that the maker names, GB 38031-2025, 8.2.16 [confirmed]."
    )
    assert "[from memory]" in duty_text(found["vibration"])


def test_refusals_and_notes_name_the_change() -> None:
    results = proposal_of(change("x", ChangeKind.REMOVE, parts=("mount",)))
    ((_, problem),) = results.ledger.refused
    assert refusal_text(problem).startswith(
        "x does not count: mount is carry-over: body bolt pattern."
    )
    (note,) = note_texts(proposal_of(FLOOR_IN_PP).notes)
    assert note.startswith("floor in PP: floor is polymer now")


def test_costs_in_words() -> None:
    given = replace(
        LIGHTER,
        part_cost=Range(1, 2, 3),
        tooling=Range.exactly(3e5),
        validation_cost=Range.exactly(1e5),
    )
    said = plain(cost_text(proposal_of(given)))
    assert said == (
        "At 3.00 EUR/kg it is worth 14 EUR (7 to 18) a pack after all costs. Line time "
        "changes by 0 s a pack; 0 pieces of joints go. Spent once: 300 000 EUR for "
        "tools and 100 000 EUR for validation. It pays from 4 802 packs a year on."
    )
    assert "Some money of lighter is not known" in cost_text(proposal_of(LIGHTER))
    late = replace(LIGHTER, lead_weeks=Range(20, 30, 52))
    said = plain(cost_text(proposal_of(late, LID_IN_PP)))
    assert "lid in PP takes longest: 33 weeks (26 to 40)." in said


def test_volumes_in_words() -> None:
    assert volume_text(float("inf"), DISPLAY) == "It pays at no volume."
    assert volume_text(0.0, DISPLAY) == "It pays from the first pack on."
    assert volume_text(float("nan"), DISPLAY) == ""


def test_secondary_mass_is_zero_in_a_running_change() -> None:
    running = replace(STUDY, programme=ProgrammeKind.RUNNING)
    assert secondary_text(proposal_of(study=running)) == (
        "Secondary mass is zero in a running change."
    )
    assert "not counted" in secondary_text(proposal_of())


def test_savings_in_words() -> None:
    assert plain(saving_text(Range(1, 2, 3), DISPLAY)) == "2.0 kg (1.0 to 3.0) saved"
    assert plain(saving_text(Range(-3, -2, -1), DISPLAY)) == (
        "2.0 kg (1.0 to 3.0) heavier"
    )
    assert saving_text(Range.exactly(0.0), DISPLAY) == "no mass saved"


def test_a_chance_is_never_none_and_never_sure() -> None:
    never = plain(chance_text(simulate(proposal_of(FLOOR_IN_PP)), STUDY))
    assert "The chance of saving the target of 5.0 kg or more is under 1 %." in never
    assert "heavier" in never
    sure = replace(LIGHTER, mass_kg=Range.exactly(2.0))
    said = plain(chance_text(simulate(proposal_of(sure)), STUDY))
    assert "is over 99 %." in said
    study = replace(STUDY, target_kg=None)
    open_end = chance_text(simulate(proposal_of(LIGHTER, study=study)), study)
    assert "The study has no target." in open_end
    assert chance_text(None, STUDY).startswith("No change counts")


def test_what_matters_in_words() -> None:
    results = proposal_of(LIGHTER)
    said = plain(matters_text(mass_matters(results), what="the mass saved"))
    assert said.startswith("lighter matters most for the mass saved: ")
    assert matters_text(None, what="the mass saved") == ""


def test_a_suggestion_says_that_it_is_one() -> None:
    study = replace(STUDY, tooling_budget=1e6)
    found = suggest(proposal_of(RIM_BEAD, study=study))
    said = plain(suggestion_text(found))
    assert said.startswith("1 of 1 together: 0.65 kg")
    assert " of 1 000 000 EUR." in said
    assert suggestion_text(found, ["rim bead"]).startswith("What is on is the best")
    none = suggestion_text(suggest(proposal_of(FLOOR_IN_PP)))
    assert none == "No change is worth its cost: best is to switch all of them off."


def test_pounds_and_commas_where_the_study_asks_for_them() -> None:
    study = replace(STUDY, mass_unit="lb", decimal_mark=",")
    results = proposal_of(LIGHTER, study=study)
    said = plain(proposal_text(results))
    assert "1 014,1 lb" in said
    printed = proposal_print(results, simulate(results, trials=100))
    assert "before lb" in printed
    assert "13,228" in printed


def test_the_print_holds_ledger_totals_chance_and_duties() -> None:
    mount = change("mount", ChangeKind.REMOVE, parts=("mount",))
    results = proposal_of(LID_IN_PP, RIM_BEAD, FLOOR_IN_PP, mount)
    text = proposal_print(results, simulate(results), matters=mass_matters(results))
    for title in (
        "Study Heron: proposal for Heron 70.",
        "Changes that do not count:",
        "New materials:",
        "Add-backs:",
        "To be known:",
        "Not known, counted as nothing:",
        "Checks:",
        "To be validated again, under the rules that apply:",
    ):
        assert title in text
    lines = text.splitlines()
    (total,) = [line for line in lines if line.startswith("all, Heron 70")]
    assert total.split()[3] == "460.000"
    assert "\u00a0" not in text
