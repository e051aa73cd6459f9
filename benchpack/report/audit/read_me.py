"""The first sheet: what the workbook is, where to change what, and the cautions."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from benchpack import __version__
from benchpack.report.audit.draft import Draft
from benchpack.report.audit.record import AuditCell, AuditSheet, Look, text
from benchpack.report.cautions_text import CAUTIONS
from benchpack.report.proposal_text import duty_text, note_texts
from benchpack.results.proposal import ProposalResults
from benchpack.results.results import Results

_PURPOSE = "An audit workbook: the figures of a study as formulas that can be followed."
_WIDTHS = (30, 120)
_ASSUMPTIONS = (
    "Change the shaded cells of sheet Assumptions: worth, share captured, basis, "
    "exponent, packs by year, interest a year, rates, prices, vehicle. All sheets "
    "follow."
)
_RECORDS = (
    "Records of packs, masses and given costs are the blue figures of the other "
    "sheets; what is changed there is followed as well."
)
_VALUES = (
    "Grey figures are values of the program and do not move: a Theil-Sen trend, the "
    "chance of the target, a pattern of driving, the figures as handed over, and "
    "masses after a change that were sized by the function that governs them. The last "
    "may be overwritten."
)
_SAFE = (
    "Nothing in the workbook runs: it has no macros and no links. Text that a "
    "spreadsheet would run has an apostrophe in front."
)
_RANGES = (
    "A range is given as low, likely and high: each figure at that end, all at once, "
    "without chance."
)
_CHANGE = (_ASSUMPTIONS, _RECORDS, _VALUES, _RANGES, _SAFE)


def read_me_sheet(
    results: Results,
    proposal: ProposalResults | None,
    sheets: Iterable[AuditSheet],
    *,
    fingerprint: str,
    made_on: date,
) -> AuditSheet:
    """Build the first sheet.

    Parameters
    ----------
    results : Results
        The results.
    proposal : ProposalResults or None
        The proposal.
    sheets : iterable of AuditSheet
        All other sheets, for the list.
    fingerprint : str
        Fingerprint of study and library.
    made_on : date
        Date of the workbook.
    """
    study = results.study
    draft = Draft("Read me", _PURPOSE, _WIDTHS, is_wide=False)
    draft.head_row = 1
    draft.section("What it is")
    for title, said in (
        ("study", study.name),
        ("subject", study.subject),
        ("reference", study.reference or "none chosen"),
        ("counted", str(study.basis)),
        ("currency", study.currency),
        ("units", _units(study.mass_unit)),
        ("fingerprint", fingerprint),
        ("made with", f"Benchpack {__version__}"),
        ("made on", made_on.isoformat()),
    ):
        draft.line(text(title), text(said))
    draft.section("Where to change what")
    for said in _CHANGE:
        draft.line(None, text(said))
    draft.section("How cells look")
    for look, said in (
        (Look.CHANGEABLE, "an assumption that may be changed"),
        (Look.RECORD, "a record: of a pack, a part, a joint or a change"),
        (Look.FIXED, "a value of the program that does not move"),
        (Look.FORMULA, "a formula"),
        (Look.SUM, "a formula that is a sum or a result"),
    ):
        draft.line(AuditCell(look.value, look), text(said))
    draft.section("The sheets")
    for sheet in sheets:
        draft.line(text(sheet.title), text(sheet.purpose))
    _cautions(draft, results, proposal)
    return draft.sheet()


def _units(mass_unit: str) -> str:
    if mass_unit == "lb":
        return "kg and kWh (the study shows lb on screen; 1 lb = 0.45359237 kg)"
    return "kg and kWh"


def _cautions(draft: Draft, results: Results, proposal: ProposalResults | None) -> None:
    """Write the cautions, and what has to be validated again."""
    draft.section("Cautions")
    for said in CAUTIONS:
        draft.line(text("in general"), text(said))
    if results.missing is not None:
        problem = results.missing
        draft.line(text("gap"), text(f"{problem.what} {problem.remedy}".strip()))
    for caution in results.cautions:
        said = f"{caution.what} {caution.remedy}".strip()
        draft.line(text(caution.record or "comparison"), text(said))
    if proposal is None:
        return
    for note in note_texts(proposal.notes):
        draft.line(text("proposal"), text(note))
    draft.section("To be validated again")
    for reopened in proposal.duties:
        draft.line(None, text(duty_text(reopened)))
    if not proposal.duties:
        draft.line(None, text("No change touches a function that has to be validated."))
