"""The audit sheets before they are a file: what stands where, and what moves it."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from benchpack.errors import DataError
from benchpack.model.study import Study
from benchpack.model.words import Basis
from benchpack.model.worth_words import Sizing, ValuedMass
from benchpack.report.audit import names
from benchpack.report.audit.draft import Draft
from benchpack.report.audit.names import Triple
from benchpack.report.audit.record import AuditSheet, Look, formula, text
from benchpack.report.audit.sheets import audit_sheets
from benchpack.report.audit.vehicle import ABOVE, AGREES, BELOW, KEPT, UNKNOWN
from benchpack.report.cautions_text import CAUTIONS
from benchpack.results.proposal import proposal
from benchpack.results.results import compute
from benchpack.results.worth_case import worth_case
from tests.unit.report.audit import audit_samples as samples
from tests.unit.results import packs

MAIN = (
    "Read me",
    "Assumptions",
    "Packs",
    "Gaps",
    "Proposal",
    "Value",
    "Programme",
    "By year",
    "Price",
    "Vehicle",
)


def by_title(sheets: tuple[AuditSheet, ...]) -> dict[str, AuditSheet]:
    return {sheet.title: sheet for sheet in sheets}


def words_of(sheet: AuditSheet) -> list[str]:
    return [
        cell.content for cell in sheet.cells.values() if isinstance(cell.content, str)
    ]


def all_names() -> set[str]:
    found: set[str] = set()
    for key, value in vars(names).items():
        if key.isupper():
            found |= {value} if isinstance(value, str) else set(value)
    return found


def test_the_sheets_stand_in_their_order() -> None:
    sheets = samples.sheets_of(*samples.every_kind())
    titles = [sheet.title for sheet in sheets]
    assert tuple(titles[:10]) == MAIN
    assert titles[10:] == ["Uncertainty", "Ledger", "Part costs", "Joint costs"]
    listed = words_of(sheets[0])
    assert set(titles[1:]) <= set(listed)


def test_every_name_is_defined_once() -> None:
    sheets = samples.sheets_of(*samples.every_kind())
    given = [c.name for sheet in sheets for c in sheet.cells.values() if c.name]
    assert len(given) == len(set(given))
    assert set(given) == all_names()


def test_formulas_hold_nothing_that_people_wrote() -> None:
    """Only references, names, numbers, functions and the program's own words."""
    allowed = {"no", "yes", "gross", "usable", "never", "low", "likely", "high", ""}
    allowed |= {str(word) for words in (Basis, ValuedMass, Sizing) for word in words}
    allowed |= {ABOVE, AGREES, BELOW, KEPT, UNKNOWN}
    for make in (samples.every_kind, samples.peers, samples.many):
        for sheet in samples.sheets_of(*make()):
            for cell in sheet.cells.values():
                assert set(re.findall(r'"([^"]*)"', cell.formula)) <= allowed


def test_derived_figures_are_formulas() -> None:
    """On the sheets that derive, a number is a formula, a record, or marked fixed."""
    sheets = by_title(samples.sheets_of(*samples.every_kind()))
    for sheet in sheets.values():
        for cell in sheet.cells.values():
            if isinstance(cell.content, int | float) and not cell.formula:
                assert cell.look in (Look.RECORD, Look.CHANGEABLE, Look.FIXED)
    gaps = [c for c in sheets["Gaps"].cells.values() if isinstance(c.content, float)]
    assert gaps
    assert all(cell.formula for cell in gaps)


def test_all_assumptions_are_on_one_sheet() -> None:
    sheets = samples.sheets_of(*samples.every_kind())
    for sheet in sheets:
        looks = {cell.look for cell in sheet.cells.values() if cell.content is not None}
        # The legend of the first sheet shows the look as well.
        if sheet.title not in ("Assumptions", "Read me"):
            assert Look.CHANGEABLE not in looks
    rows = by_title(sheets)["Assumptions"].cells
    changeable = {row for (row, _), c in rows.items() if c.look is Look.CHANGEABLE}
    assert len(changeable) > 20
    for row in changeable:
        assert rows[row, 5].content == "yes"
        assert rows[row, 6].content


def test_read_me_says_what_it_is_and_warns() -> None:
    library, study = samples.every_kind()
    said = words_of(samples.sheets_of(library, study)[0])
    for expected in ("f00d", "2026-11-21", "Heron 70", "Egret 80", "EUR", *CAUTIONS):
        assert expected in said
    for reopened in proposal(library, study).duties:
        assert any(words.startswith(reopened.duty.key) for words in said)


def test_a_study_without_a_proposal() -> None:
    sheets = by_title(samples.bare_sheets_of(*samples.peers()))
    assert tuple(sheets)[:10] == MAIN
    assert "The study has no proposal." in words_of(sheets["Proposal"])
    assert "The proposal" not in words_of(sheets["Value"])
    assert "Ledger" not in sheets


def test_a_subject_without_a_reference_says_so() -> None:
    library, study = samples.every_kind(reference="")
    sheets = samples.sheets_of(library, study)
    said = words_of(by_title(sheets)["Value"])
    assert "No reference is chosen." in said
    assert names.GAP not in samples.named_cells(sheets)
    assert "none chosen" in words_of(sheets[0])


def test_nothing_to_compare_is_an_error() -> None:
    library, study = samples.peers(subject="")
    with pytest.raises(DataError, match="No subject"):
        audit_sheets(
            worth_case(compute(library, study)),
            None,
            fingerprint="",
            made_on=samples.MADE_ON,
        )


def test_a_pack_alone_has_empty_tables() -> None:
    library = packs.library(packs.pack("Heron 70", 70, 460))
    sheets = by_title(samples.bare_sheets_of(library, Study(subject="Heron 70")))
    assert sheets["Gaps"].size[0] == 3
    assert "Trend" not in sheets


def test_masses_stay_in_kg_where_the_screen_shows_lb() -> None:
    kilograms = samples.sheets_of(*samples.every_kind())
    pounds = samples.sheets_of(*samples.every_kind(mass_unit="lb"))
    gaps, same = by_title(kilograms)["Gaps"], by_title(pounds)["Gaps"]
    assert [c.content for (_, column), c in gaps.cells.items() if column != 22] == [
        c.content for (_, column), c in same.cells.items() if column != 22
    ]
    assert any("the study shows lb" in words for words in words_of(pounds[0]))
    worth = [c for c in by_title(pounds)["Assumptions"].cells.values() if c.formula]
    assert any(cell.formula == "=Worth_likely*0.45359237" for cell in worth)


def test_money_is_in_the_currency_of_the_study() -> None:
    sheets = by_title(samples.sheets_of(*samples.every_kind(currency="CHF")))
    heads = words_of(sheets["Proposal"])
    assert "parts [CHF]" in heads
    assert not [head for head in heads if "EUR]" in head]
    prices = [
        cells
        for cells in sheets["Assumptions"].cells.values()
        if isinstance(cells.content, str) and "usual prices are in EUR" in cells.content
    ]
    assert prices


def test_what_is_not_known_stays_empty_and_can_be_filled_in() -> None:
    sheets = by_title(samples.bare_sheets_of(*samples.peers()))
    cells = {
        str(sheets["Packs"].cells[row, 0].content): sheets["Packs"].cells[row, 8]
        for row in range(3, 8)
    }
    assert cells["Bittern 60"].content is None
    assert cells["Bittern 60"].look is Look.RECORD
    assert cells["Heron 70"].content == 300
    gaps = {
        str(sheets["Gaps"].cells[row, 0].content): sheets["Gaps"].cells[row, 12]
        for row in range(3, 7)
    }
    assert gaps["Bittern 60"].content is None
    assert gaps["Bittern 60"].formula.startswith("=IF(COUNT(")


def test_further_sheets_find_the_figures_by_name() -> None:
    draft = Draft("Twice", "Twice the net worth.", (30, 10))
    draft.heads("figure", "value")
    draft.line(text("twice"), formula(f"2*{names.NET_WORTH[1]}", 1.0))
    sheets = samples.sheets_of(*samples.every_kind(), further=(draft.sheet(),))
    titles = [sheet.title for sheet in sheets]
    assert titles[9:11] == ["Vehicle", "Twice"]
    assert "Twice the net worth." in words_of(sheets[0])


def test_a_triple_of_names_runs_from_low_to_high() -> None:
    triples: list[Triple] = [
        value for key, value in vars(names).items() if isinstance(value, tuple)
    ]
    assert triples
    for triple in triples:
        assert [name.rpartition("_")[2] for name in triple] == ["low", "likely", "high"]


def test_the_same_study_gives_the_same_sheets() -> None:
    assert samples.sheets_of(*samples.merged()) == samples.sheets_of(*samples.merged())


def test_another_worth_changes_figures_and_nothing_else() -> None:
    library, study = samples.every_kind()
    one = samples.sheets_of(library, study)
    other = samples.sheets_of(library, replace(study, worth_likely_per_kg=5.0))
    for first, second in zip(one, other, strict=True):
        assert {k: c.formula for k, c in first.cells.items()} == {
            k: c.formula for k, c in second.cells.items()
        }
