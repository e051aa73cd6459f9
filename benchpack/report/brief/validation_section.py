"""What a proposal reopens: functions to be validated again, and its checks."""

from __future__ import annotations

import re
from collections import Counter

from benchpack.report.brief.blocks import Audience, Block, Column, Paragraph, Table
from benchpack.report.chart_words import plural
from benchpack.report.proposal_text import rule_text
from benchpack.results.check import Check, Grade
from benchpack.results.proposal import ProposalResults
from benchpack.results.wording import listed

_SENTENCE_END = re.compile(r"(?<=[.!?]) (?=[A-Z0-9])")
_ASKING = (Grade.FAIL, Grade.LOOK)


def validation_blocks(
    proposal: ProposalResults | None, *, has_ledger: bool
) -> tuple[Block, ...]:
    """Give every function that is validated again, with requirement, clause and mark.

    Parameters
    ----------
    proposal : ProposalResults or None
        The proposal.
    has_ledger : bool
        False where the changes and their numbers are named nowhere else.
    """
    if proposal is None or not proposal.effects:
        return (Paragraph("No change counts, so nothing is validated again."),)
    if not proposal.duties:
        text = "The changes touch no function that is known to be validated again."
        return (Paragraph(text),)
    number = {effect.name: str(n) for n, effect in enumerate(proposal.effects, 1)}
    rows = tuple(
        (
            reopened.duty.key,
            ", ".join(number[name] for name in reopened.changes),
            "; ".join(rule_text(rule) for rule in reopened.duty.rules),
        )
        for reopened in proposal.duties
    )
    columns = (
        Column("function"),
        Column("by change"),
        Column("what is required, where it stands [how far it was checked]"),
    )
    lead = "By licensed practice, under the rules that apply"
    if has_ledger:
        lead += "; the changes have the numbers of the ledger."
    else:
        changes = "; ".join(f"{n} {name}" for name, n in number.items())
        lead += f", for {changes}."
    return (Paragraph(lead, "note"), Table("", columns, rows))


def checks_blocks(proposal: ProposalResults, audience: Audience) -> tuple[Block, ...]:
    """Give the checks that fail or ask for a look, and count all.

    Parameters
    ----------
    proposal : ProposalResults
        The proposal.
    audience : Audience
        What is to be done about a check is an internal remark.
    """
    if not proposal.effects:
        return (Paragraph("No change counts, so there is nothing to check.", "note"),)
    checks = tuple(dict.fromkeys(proposal.checks))
    asking = [one for grade in _ASKING for one in checks if one.grade is grade]
    blocks: list[Block] = [Paragraph(_counted(checks), "note")]
    is_internal = audience is Audience.INTERNAL
    if asking:
        columns = (
            Column("stands"),
            Column("check"),
            Column("result, and what to do" if is_internal else "result"),
        )
        rows = tuple(
            (
                str(check.grade),
                f"{check.kind}, {check.record}",
                _result(check, with_remedy=is_internal),
            )
            for check in asking
        )
        blocks.append(Table("", columns, rows))
    return tuple(blocks)


def _result(check: Check, *, with_remedy: bool) -> str:
    """Give the first sentence; how it comes about is told where the change is made."""
    result = _SENTENCE_END.split(check.words, maxsplit=1)[0]
    return f"{result} {check.remedy}".strip() if with_remedy else result


def _counted(checks: tuple[Check, ...]) -> str:
    """Count all checks by how they stand."""
    counts = Counter(check.grade for check in checks)
    words = {
        Grade.FAIL: "fail",
        Grade.LOOK: "look",
        Grade.GOOD: "good",
        Grade.NONE: "not to be said",
    }
    said = tuple(
        f"{counts[grade]} {word}" for grade, word in words.items() if counts[grade]
    )
    if not said:
        return "No check applies to these changes."
    return f"{len(checks)} {plural('check', len(checks))}: {listed(said)}."
