"""The ledger of a proposal as a table: a row for each thing that a change does."""

from __future__ import annotations

from collections.abc import Iterator

from benchpack.report.handed_column import HandedColumn
from benchpack.results.ledger import AddedBack, LedgerEntry
from benchpack.results.proposal import Effect, ProposalResults

LedgerCell = str | int | float | None
"""A cell: text or a number; None where there is none."""

COUNTED, TAKEN_OUT, IS_THERE, REFUSED = (
    "counted",
    "taken out of the sum",
    "there already",
    "refused",
)
"""How a row stands; only what is counted has masses."""


_COLUMNS = (
    ("study", "string", "", "The study."),
    ("pack", "string", "", "Its subject."),
    ("change", "string", "", "Name of the change."),
    ("kind", "string", "", "What the change does."),
    ("status", "string", "", "Whether the row is counted, or why it is not."),
    ("item kind", "string", "", "Part, joint, added part or add-back."),
    ("item", "string", "", "Name of the part, joint or add-back."),
    ("mass before", "number", "kg", "Mass per pack before the change."),
    ("mass after low", "number", "kg", "Mass per pack after it, low."),
    ("mass after", "number", "kg", "Mass per pack after it, likely."),
    ("mass after high", "number", "kg", "Mass per pack after it, high."),
    ("saved", "number", "kg", "Mass before less likely mass after."),
    ("pieces before", "integer", "", "Pieces before the change."),
    ("pieces after", "integer", "", "Pieces after it."),
    ("release chance", "number", "", "Chance that the change comes, 0 to 1."),
    ("reason", "string", "", "What happens, or why it is not counted."),
)


def ledger_columns() -> tuple[HandedColumn, ...]:
    """Give the columns of the table."""
    return tuple(
        HandedColumn(f"{title} [{unit}]" if unit else title, kind, unit, help_text)
        for title, kind, unit, help_text in _COLUMNS
    )


def ledger_rows(results: ProposalResults) -> Iterator[list[LedgerCell]]:
    """Give the rows: change by change what it does, then the changes that are refused.

    Parameters
    ----------
    results : ProposalResults
        The proposal.

    Yields
    ------
    list
        Cells in the order of `ledger_columns`, full precision. The sum over "saved" is
        what the proposal saves.
    """
    for effect in results.effects:
        for entry in effect.entries:
            yield _counted(results, effect, entry)
        for back in effect.add_backs:
            if not back.is_counted:
                yield _left_out(results, effect, back)
    for change, problem in results.ledger.refused:
        yield [
            *_head(results, change.name, str(change.kind)),
            REFUSED,
            *[None] * (len(_COLUMNS) - 6),
            f"{problem.what} {problem.remedy}".strip(),
        ]


def _head(results: ProposalResults, change: str, kind: str) -> list[LedgerCell]:
    return [results.study.name, results.study.subject, change, kind]


def _counted(
    results: ProposalResults, effect: Effect, entry: LedgerEntry
) -> list[LedgerCell]:
    return [
        *_head(results, effect.name, str(effect.change.kind)),
        COUNTED,
        str(entry.item_kind),
        entry.item,
        entry.before_kg.likely,
        *entry.after_kg.ends,
        entry.saved_kg,
        entry.pieces_before,
        entry.pieces_after,
        effect.release_chance,
        entry.reason,
    ]


def _left_out(
    results: ProposalResults, effect: Effect, back: AddedBack
) -> list[LedgerCell]:
    return [
        *_head(results, effect.name, str(effect.change.kind)),
        TAKEN_OUT if back.waived else IS_THERE,
        "add-back",
        back.add_back.key,
        *[None] * 7,
        effect.release_chance,
        back.waived or back.covered_by,
    ]
