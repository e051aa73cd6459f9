"""What stands in a brief, and what a customer does not see of it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from benchpack import __version__
from benchpack.errors import DataError
from benchpack.model.words import Basis
from benchpack.report.brief.blocks import (
    Audience,
    ChartBlock,
    Column,
    Paragraph,
    Section,
    Table,
)
from benchpack.report.brief.choices import SECTIONS
from benchpack.report.brief.content import make_brief
from benchpack.report.cautions_text import CAUTIONS
from benchpack.report.headline import headline, plain_text
from benchpack.report.plain_table import plain_spaces
from benchpack.report.proposal_text import rule_text
from benchpack.results.check import Grade
from benchpack.results.proposal import proposal, with_changes
from benchpack.results.results import compute
from tests.unit.report.brief.samples import (
    DAY,
    FINGERPRINT,
    bare_brief,
    blocks,
    brief_of,
    customer_brief,
    demo,
    figures,
    table,
    texts,
    words,
)
from tests.unit.results.proposal_samples import NO_BRACKETS, proposal_of

INTERNAL = {"items", "money"}


def keys(*left_out: str) -> list[str]:
    return [s.key for s in brief_of(left_out=left_out).sections]


def test_an_internal_brief_has_every_section_in_order() -> None:
    assert keys() == [choice.key for choice in SECTIONS]


def test_a_brief_names_what_it_is_about_and_where_it_comes_from() -> None:
    brief = brief_of()
    assert brief.title == "Brief: Avocet 81 against Dunlin 74"
    assert (brief.language, brief.fingerprint, brief.made_on) == (
        "en",
        FINGERPRINT,
        DAY,
    )
    assert brief.footer == f"Benchpack {__version__}, 2026-11-30, {FINGERPRINT}"
    (said,) = texts(brief, "fingerprint")
    assert FINGERPRINT in said
    assert __version__ in said
    assert "2026-11-30" in said


def test_it_opens_with_the_sentence_of_the_headline() -> None:
    lead = blocks(brief_of(), "result")[0]
    assert isinstance(lead, Paragraph)
    assert lead.role == "lead"
    assert lead.text == plain_text(headline(demo().gap))


def test_headline_figures_have_units_and_ranges() -> None:
    shown = {name: plain_spaces(one.value) for name, one in figures(brief_of()).items()}
    assert shown["Gap to Dunlin 74"] == "11.2 kg (3.5 to 18.9)"
    assert shown["Worth of the gap"] == "34 EUR (11 to 67)"
    assert shown["Saved by the proposal"] == "5.8 kg (2.6 to 7.5)"
    assert shown["Target"] == "6.0 kg"
    assert shown["Chance of the target"].endswith(" %")
    assert shown["Net worth"].startswith("27 EUR (")


def test_both_waterfalls_share_a_line_and_tell_their_figures_in_words() -> None:
    (gap,), (steps,) = (blocks(brief_of(), key) for key in ("gap", "proposal"))
    assert isinstance(gap, ChartBlock)
    assert isinstance(steps, ChartBlock)
    assert gap.width + steps.width == 1
    assert "energy share +39.7 kg" in plain_spaces(gap.alternative)
    assert "Target −6.0 kg." in plain_spaces(steps.alternative)


def test_a_waterfall_alone_takes_the_whole_line() -> None:
    (gap,) = blocks(brief_of(left_out=["proposal"]), "gap")
    assert isinstance(gap, ChartBlock)
    assert gap.width == 1


def test_packs_stand_with_energy_basis_gap_and_boundary() -> None:
    rows = {row[0]: row for row in table(brief_of(), "comparison").rows}
    assert rows["Dunlin 74 (reference)"] == (
        "Dunlin 74 (reference)",
        "74.4",
        "gross",
        "447.2",
        "166",
        "+50.9",
        "+11.2 (+3.5 to +18.9)",
        "alike",
    )
    said = plain_spaces(rows["Oystercatcher 71"][-1])
    assert said == "out of Oystercatcher 71: coolant 5.4 kg and bottom shield 13.8 kg"
    assert rows["Ruff 79"][2] == "usable"
    assert rows["Ruff 79"][-2:] == ("–", "not recorded")


def test_another_basis_has_a_column_of_its_own() -> None:
    made = demo()
    study = replace(made.gap.study, basis=Basis.STRUCTURE)
    brief = bare_brief(compute(made.gap.library, study))
    heads = [column.head for column in table(brief, "comparison").columns]
    assert heads[-2:] == ["structure only", "on the scale"]
    assert "exponent of what is not cells" in {
        row[0] for row in table(brief, "assumptions").rows
    }


def test_the_ledger_sums_up_and_shows_its_add_backs() -> None:
    shown = table(brief_of(), "ledger")
    firsts = [row[0] for row in shown.rows]
    assert "in it: shield foil" in firsts
    assert "not in it: seal groove" in firsts
    assert shown.sums == {len(shown.rows) - 1}
    last = shown.rows[-1]
    assert last[1:4] == ("498.100", "492.296", "5.804 (2.629 to 7.474)")
    changes = [shown.rows[place] for place in sorted(shown.groups)]
    assert len(changes) == len(demo().proposal.effects)
    saved = sum(float(row[3].split(" ")[0].replace("−", "-")) for row in changes)
    assert saved == pytest.approx(5.804, abs=0.003)


def test_the_ledger_item_by_item_has_every_entry() -> None:
    shown = table(brief_of(), "items")
    entries = [entry for one in demo().proposal.effects for entry in one.entries]
    assert len(shown.rows) == len(entries) + len(demo().proposal.effects) + 1


def test_everything_reopened_stands_with_clause_and_mark() -> None:
    shown = {row[0]: row for row in table(brief_of(), "validation").rows}
    duties = demo().proposal.duties
    assert list(shown) == [one.duty.key for one in duties]
    for one in duties:
        for rule in one.duty.rules:
            assert rule_text(rule) in shown[one.duty.key][2]
    assert shown["leak test"][1] == "1, 2, 6"


def test_validation_names_the_changes_where_the_ledger_is_left_out() -> None:
    (said,) = texts(brief_of(left_out=["ledger"]), "validation")
    assert "3 thinner gap filler" in said


def test_checks_that_ask_come_failures_first() -> None:
    rows = table(brief_of(), "checks").rows
    grades = [row[0] for row in rows]
    assert grades == sorted(grades)
    asking = {
        f"{one.kind}, {one.record}"
        for one in demo().proposal.checks
        if one.grade in (Grade.FAIL, Grade.LOOK)
    }
    assert {row[1] for row in rows} == asking


def test_assumptions_have_sources_and_marks() -> None:
    rows = {row[0]: row for row in table(brief_of(), "assumptions").rows}
    assert rows["PP-LGF40"][2].endswith("[confirmed]")
    assert rows["range of the gap"][2].endswith("[common practice, no source]")
    assert "bench protocol 1, 2026-02-10" in rows["Avocet 81, energy gross"][2]
    worth = plain_spaces(rows["worth of the mass saved"][1])
    assert worth == "3.00 EUR/kg (1.00 to 6.00)"


def test_the_usual_cautions_and_those_of_the_records_are_there() -> None:
    said = texts(brief_of(), "cautions")
    assert said[:3] == list(CAUTIONS)
    assert any("All data is invented" in text for text in said)
    assert any(text.startswith("The gap to Dunlin 74 is") for text in said)


@pytest.mark.parametrize("key", ["cautions", "validation"])
def test_what_must_not_be_missed_cannot_be_left_out(key: str) -> None:
    with pytest.raises(DataError, match="cannot be left out") as caught:
        brief_of(left_out=[key, "checks"])
    assert [problem.value for problem in caught.value.problems] == [key]


@pytest.mark.parametrize("key", ["Cautions", " cautions", "VALIDATION"])
def test_no_spelling_leaves_out_what_must_not_be_missed(key: str) -> None:
    with pytest.raises(DataError, match="cannot be left out") as caught:
        brief_of(left_out=[key])
    assert [problem.value for problem in caught.value.problems] == [key.strip().lower()]


def test_a_section_that_there_is_not_cannot_be_left_out() -> None:
    with pytest.raises(DataError, match="Did you mean 'ledger'"):
        brief_of(left_out=["leger"])


def test_other_sections_can_be_left_out() -> None:
    free = [choice.key for choice in SECTIONS if choice.can_be_left_out]
    assert keys(*free) == ["validation", "cautions"]
    assert "checks" not in keys("checks")


def test_a_customer_sees_no_cost_and_no_internal_remark() -> None:
    made, brief = demo(), customer_brief()
    shown = " ".join(words(brief))
    assert {s.key for s in brief.sections} == {*keys()} - INTERNAL
    assert "Net worth" not in shown
    for word in ("interest a year", "an hour of labour", "budget", "released with"):
        assert word not in shown
    remedies = {one.remedy for one in made.gap.cautions}
    remedies |= {one.remedy for one in made.proposal.checks}
    assert not [one for one in remedies if one and one in shown]
    notes = {one.note for one in made.gap.library.sources}
    assert not [note for note in notes if note and note in shown]


def test_a_customer_sees_what_the_saving_is_worth() -> None:
    shown = figures(customer_brief())["Worth of the saving"]
    assert plain_spaces(shown.value) == "17 EUR (3 to 45)"


def test_cautions_and_validation_are_the_same_for_a_customer() -> None:
    own, theirs = brief_of(), customer_brief()
    assert table(own, "validation") == table(theirs, "validation")
    assert texts(theirs, "cautions")[:4] == texts(own, "cautions")[:4]
    assert len(texts(theirs, "cautions")) == len(texts(own, "cautions"))


def test_the_author_s_notes_are_in_no_brief() -> None:
    shown = " ".join(words(brief_of()))
    notes = [one.note for one in demo().proposal.changes if one.note]
    assert notes
    assert not [note for note in notes if note in shown]


def test_without_a_proposal_it_says_so() -> None:
    brief = bare_brief(demo().gap)
    assert "The study has no proposal yet." in texts(brief, "result")
    assert texts(brief, "validation") == [
        "No change counts, so nothing is validated again."
    ]
    assert any("no saving is promised" in text for text in texts(brief, "cautions"))
    assert figures(brief)["Chance of the target"].value == "–"
    for key in ("proposal", "ledger", "checks"):
        assert brief.section(key) is None


def test_without_a_target_it_says_so() -> None:
    made = demo()
    study = replace(made.gap.study, target_kg=None)
    gap = compute(made.gap.library, study)
    brief = bare_brief(gap, proposal(made.gap.library, study, gap=gap))
    assert figures(brief)["Target"].note == "none is set in the study"
    assert figures(brief)["Chance of the target"].note == "no target to reach"
    assert any("has no target" in text for text in texts(brief, "cautions"))


def test_without_a_reference_it_says_so() -> None:
    made = demo()
    study = replace(made.gap.study, reference="")
    brief = bare_brief(compute(made.gap.library, study))
    assert brief.title == "Brief: Avocet 81"
    assert figures(brief)["Gap"].note == "No reference is chosen."
    assert texts(brief, "gap") == [
        "No reference is chosen. Choose a pack other than the subject."
    ]
    assert "There is no gap to state: No reference is chosen." in texts(
        brief, "cautions"
    )


def test_a_customer_is_not_told_what_to_do_in_the_study() -> None:
    made = demo()
    study = replace(made.gap.study, reference="")
    gap = compute(made.gap.library, study)
    theirs = make_brief(
        gap,
        None,
        None,
        fingerprint=FINGERPRINT,
        made_on=DAY,
        audience=Audience.CUSTOMER,
    )
    assert texts(theirs, "gap") == ["No reference is chosen."]
    assert texts(theirs, "result")[0] == "No reference is chosen."
    assert not any("Choose" in text for text in words(theirs))


def test_without_a_second_pack_it_says_so() -> None:
    made = demo()
    library = replace(
        made.gap.library, packs=made.gap.library.packs.selected(np.array([0]))
    )
    study = replace(made.gap.study, reference="")
    brief = bare_brief(compute(library, study))
    assert texts(brief, "comparison")
    assert brief.section("validation") is not None


def test_changes_that_are_all_off_save_nothing() -> None:
    made = demo()
    off = with_changes(
        made.proposal, [replace(one, is_on=False) for one in made.proposal.changes]
    )
    brief = bare_brief(made.gap, off)
    assert brief.section("money") is None
    assert texts(brief, "ledger")[0] == "No change counts."
    assert "Saved by the proposal" not in figures(brief)


def test_refused_changes_are_an_internal_matter() -> None:
    results = proposal_of(
        NO_BRACKETS, replace(NO_BRACKETS, name="mount off", parts=("mount",))
    )
    own = bare_brief(results.gap, results)
    assert any("mount off does not count" in text for text in texts(own, "ledger"))


def test_further_sections_stand_before_the_validation_and_can_be_left_out() -> None:
    worth = Section("worth", "Worth", (Paragraph("So much a year."),))
    found = [s.key for s in brief_of(further=[worth]).sections]
    assert found.index("money") < found.index("worth") < found.index("validation")
    without = brief_of(further=[worth], left_out=["worth"])
    assert without.section("worth") is None
    with pytest.raises(ValueError, match="same key"):
        brief_of(further=[replace(worth, key="ledger")])


def test_a_table_has_as_many_cells_as_columns() -> None:
    with pytest.raises(ValueError, match="row 1"):
        Table("", (Column("one"), Column("two")), (("a", "b"), ("c",)))


def test_the_study_s_own_unit_and_mark_are_used() -> None:
    made = demo()
    study = replace(made.gap.study, mass_unit="lb", decimal_mark=",")
    gap = compute(made.gap.library, study)
    brief = make_brief(gap, fingerprint=FINGERPRINT, made_on=DAY)
    assert plain_spaces(figures(brief)["Gap to Dunlin 74"].value).startswith("24,8 lb")
    assert table(brief, "comparison").columns[3].unit == "lb"
